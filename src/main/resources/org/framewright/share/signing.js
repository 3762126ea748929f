/** How a device signs what it asks for. The secret of the invitation is used once and never sent. */

import {hmac} from './sha256.js';

const BASE32 = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ234567';
const SECRET = /^#([A-Z2-7]{26})\.([acv])$/;
const ROLES = {a: 'assistant', c: 'client', v: 'viewer'};

/** What an address invites to, {secret, role}, or null where it is no invitation. */
export function invitation(fragment) {
  const found = SECRET.exec(fragment);
  return found && {secret: decoded(found[1]), role: ROLES[found[2]]};
}

/** The bytes of base32 (RFC 4648, 6) without padding. */
export function decoded(letters) {
  const bytes = new Uint8Array(Math.floor((letters.length * 5) / 8));
  let bits = 0;
  let held = 0;
  let at = 0;
  for (const letter of letters) {
    held = (held << 5) | BASE32.indexOf(letter);
    bits += 5;
    if (bits >= 8) {
      bits -= 8;
      bytes[at++] = held >>> bits;
      held &= (1 << bits) - 1;
    }
  }
  return bytes;
}

/** A new name of a device: so many that two are never the same. */
export function newDevice() {
  return 'page-' + random(4);
}

/** The key of a device, in hex. */
export function deviceKey(secret, device) {
  return hex(hmac(secret, utf8('device ' + device)));
}

/** The header by which the server knows the device; the body is the text that is sent, '' for none. */
export function authorization({device, key}, method, path, time, body) {
  const nonce = random(8);
  const mac = hex(hmac(unhex(key), utf8([method, path, time, nonce, body].join('\n'))));
  return `Fw device=${device}, time=${time}, nonce=${nonce}, mac=${mac}`;
}

function random(bytes) {
  return hex(crypto.getRandomValues(new Uint8Array(bytes)));
}

export function utf8(text) {
  return new TextEncoder().encode(text);
}

export function hex(bytes) {
  return Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('');
}

export function unhex(text) {
  return Uint8Array.from(text.match(/../g) ?? [], (pair) => parseInt(pair, 16));
}
