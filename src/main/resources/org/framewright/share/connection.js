/** Asks the computer, signed; knows how far its clock is from ours, and waits longer after each failure. */

import {authorization} from './signing.js';

const PATIENCE = 12_000;

/** The computer could not be reached, or did not answer in time. */
export class Unreachable extends Error {}

export class Connection {
  #device;
  #fetch;
  #offset = 0;

  /** @param device {device, key}: its name and its key in hex */
  constructor(device, fetching = (...asked) => fetch(...asked)) {
    this.#device = device;
    this.#fetch = fetching;
  }

  /** The computer's time, as far as we know, in milliseconds. */
  now() {
    return Date.now() + this.#offset;
  }

  /** Takes a time that the computer told just now. */
  isNow(time) {
    if (typeof time === 'number') {
      this.#offset = time - Date.now();
    }
  }

  /** Asks with JSON and answers {status, body, after}: the body of JSON, after the seconds to wait. */
  async ask(method, path, value) {
    const response = await this.send(method, path, value === undefined ? '' : JSON.stringify(value));
    let body;
    try {
      body = await inTime(response.json());
    } catch {
      throw new Unreachable('an answer without JSON');
    }
    this.isNow(body.time);
    return {status: response.status, body, after: Number(response.headers.get('Retry-After')) || 0};
  }

  /** The answer as it comes. A clock that was wrong is put right, and it is asked once more. */
  async send(method, path, body = '', signal = undefined) {
    const first = await this.#once(method, path, body, signal);
    if (first.status !== 401) {
      return first;
    }
    const {time} = await first.json().catch(() => ({}));
    this.isNow(time);
    return this.#once(method, path, body, signal);
  }

  async #once(method, path, body, signal) {
    const stop = new AbortController();
    const late = setTimeout(() => stop.abort(), PATIENCE);
    signal?.addEventListener('abort', () => stop.abort(), {once: true});
    const headers = {
      Authorization: authorization(this.#device, method, path, this.now(), body),
      'Accept-Language': document.documentElement.lang,
    };
    if (body) {
      headers['Content-Type'] = 'application/json';
    }
    try {
      return await this.#fetch(path, {
        method,
        headers,
        body: body || undefined,
        cache: path.startsWith('/picture/') ? 'default' : 'no-store',
        credentials: 'omit',
        redirect: 'error',
        signal: stop.signal,
      });
    } catch (failure) {
      throw new Unreachable(failure.message, {cause: failure});
    } finally {
      clearTimeout(late); // who reads a stream has a patience of their own
    }
  }
}

function inTime(promise) {
  return new Promise((done, failed) => {
    const late = setTimeout(() => failed(new Unreachable('half an answer')), PATIENCE);
    promise.then(done, failed).finally(() => clearTimeout(late));
  });
}

/** How long to wait before the next try, in milliseconds: longer each time, never the same on two devices. */
export class Patience {
  #failures = 0;
  #wake = null;

  next(atLeast = 0) {
    const wait = Math.min(8_000, 400 * 2 ** this.#failures++);
    return Math.max(atLeast * 1000, wait * (0.6 + 0.4 * Math.random()));
  }

  over() {
    this.#failures = 0;
  }

  /** Lets so much time pass, unless it is woken. */
  sleep(wait) {
    return new Promise((done) => {
      const timer = setTimeout(done, wait);
      this.#wake = () => {
        clearTimeout(timer);
        done();
      };
    });
  }

  /** Ends the sleep; nothing where nobody sleeps. */
  wake() {
    this.#wake?.();
  }
}
