/** SHA-256 (FIPS 180-4) and HMAC (RFC 2104) of bytes: a page on plain HTTP has no crypto.subtle. */

const BLOCK = 64;

/** The first 32 bits of the fractional parts of a root of the first primes (FIPS 180-4, 4.2.2 and 5.3.3). */
function fractions(count, root) {
  const found = [];
  for (let n = 2; found.length < count; n++) {
    if (!found.some((prime) => n % prime.of === 0)) {
      const power = Math.pow(n, 1 / root);
      found.push({of: n, bits: ((power - Math.floor(power)) * 2 ** 32) | 0});
    }
  }
  return Int32Array.from(found, (prime) => prime.bits);
}

const ROUNDS = fractions(64, 3);
const START = fractions(8, 2);

/** The 32 bytes of the hash of a Uint8Array. */
export function sha256(bytes) {
  const padded = new Uint8Array((((bytes.length + 8) >> 6) + 1) * BLOCK);
  padded.set(bytes);
  padded[bytes.length] = 0x80;
  const view = new DataView(padded.buffer);
  view.setUint32(padded.length - 8, Math.floor(bytes.length / 2 ** 29));
  view.setUint32(padded.length - 4, (bytes.length << 3) >>> 0);
  const hash = Int32Array.from(START);
  const words = new Int32Array(64);
  for (let at = 0; at < padded.length; at += BLOCK) {
    mix(hash, words, view, at);
  }
  const out = new DataView(new ArrayBuffer(32));
  hash.forEach((word, i) => out.setInt32(4 * i, word));
  return new Uint8Array(out.buffer);
}

function mix(hash, words, view, at) {
  for (let i = 0; i < 64; i++) {
    if (i < 16) {
      words[i] = view.getInt32(at + 4 * i);
    } else {
      const before = words[i - 15];
      const late = words[i - 2];
      const low = turned(before, 7) ^ turned(before, 18) ^ (before >>> 3);
      const high = turned(late, 17) ^ turned(late, 19) ^ (late >>> 10);
      words[i] = words[i - 16] + low + words[i - 7] + high;
    }
  }
  let [a, b, c, d, e, f, g, h] = hash;
  for (let i = 0; i < 64; i++) {
    const high = turned(e, 6) ^ turned(e, 11) ^ turned(e, 25);
    const one = (h + high + ((e & f) ^ (~e & g)) + ROUNDS[i] + words[i]) | 0;
    const low = turned(a, 2) ^ turned(a, 13) ^ turned(a, 22);
    const two = (low + ((a & b) ^ (a & c) ^ (b & c))) | 0;
    [h, g, f, e, d, c, b, a] = [g, f, e, (d + one) | 0, c, b, a, (one + two) | 0];
  }
  [a, b, c, d, e, f, g, h].forEach((word, i) => (hash[i] += word));
}

function turned(word, by) {
  return (word >>> by) | (word << (32 - by));
}

/** The 32 bytes of the HMAC of a message with a key, both Uint8Array. */
export function hmac(key, message) {
  const block = new Uint8Array(BLOCK);
  block.set(key.length > BLOCK ? sha256(key) : key);
  const inner = sha256(joined(block.map((byte) => byte ^ 0x36), message));
  return sha256(joined(block.map((byte) => byte ^ 0x5c), inner));
}

function joined(first, second) {
  const both = new Uint8Array(first.length + second.length);
  both.set(first);
  both.set(second, first.length);
  return both;
}
