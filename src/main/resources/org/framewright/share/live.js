/** Hears what changes: text/event-stream (WHATWG HTML, 9.2), read by fetch, since an EventSource cannot sign. */

import {Patience} from './connection.js';

/** The computer says something every 5 s; after so long without a word the line is dead. */
const SILENCE = 12_000;

/** Cuts a stream of text into events {event, data, id}. Lines end as the standard has it. */
export class EventCutter {
  #rest = '';
  #event = {};

  /** The events that a piece of text ends. */
  take(text) {
    const lines = (this.#rest + text).split(/\r\n|\n|\r(?!$)/);
    this.#rest = lines.pop();
    return lines.map((line) => this.#line(line)).filter(Boolean);
  }

  #line(line) {
    if (line === '') {
      const event = this.#event;
      this.#event = {};
      return event.data === undefined ? null : event;
    }
    const colon = line.indexOf(':');
    const name = colon < 0 ? line : line.slice(0, colon);
    const value = colon < 0 ? '' : line.slice(colon + 1).replace(/^ /, '');
    if (name === 'data') {
      this.#event.data = this.#event.data === undefined ? value : this.#event.data + '\n' + value;
    } else if (name === 'event' || name === 'id') {
      this.#event[name] = value;
    }
    return null;
  }
}

export class Live {
  #connection;
  #heard;
  #stop = null;
  #lastWord = 0;
  #patience = new Patience();
  #ended = false;

  /**
   * @param heard is told: state(message), connected(), lost(), unpaired(), answered(status)
   */
  constructor(connection, heard) {
    this.#connection = connection;
    this.#heard = heard;
  }

  /** Listens until it is ended, whatever happens to the line. */
  async run() {
    while (!this.#ended) {
      const wait = await this.#listen();
      if (this.#ended) {
        return;
      }
      this.#heard.lost();
      await this.#patience.sleep(wait);
    }
  }

  /** The line may be dead, since the device slept or the network changed: it is tried now. */
  tryNow() {
    this.#patience.over();
    if (Date.now() - this.#lastWord > SILENCE / 2) {
      this.#stop?.abort();
    }
    this.#patience.wake();
  }

  end() {
    this.#ended = true;
    this.#stop?.abort();
    this.#patience.wake();
  }

  /** One line, until it ends; answers how long to wait. */
  async #listen() {
    const stop = new AbortController();
    this.#stop = stop;
    this.#lastWord = Date.now();
    const watch = setInterval(() => {
      if (Date.now() - this.#lastWord > SILENCE) {
        stop.abort();
      }
    }, 1000);
    try {
      const response = await this.#connection.send('GET', '/live', '', stop.signal);
      if (!response.ok) {
        const body = await response.json().catch(() => ({}));
        this.#heard.answered(response.status, body);
        return this.#patience.next(Number(response.headers.get('Retry-After')) || 0);
      }
      this.#patience.over();
      await this.#read(response.body.pipeThrough(new TextDecoderStream()).getReader());
    } catch {
      // A line that broke is the usual case here.
    } finally {
      clearInterval(watch);
      stop.abort();
    }
    return this.#patience.next();
  }

  async #read(reader) {
    const cutter = new EventCutter();
    for (;;) {
      const {done, value} = await reader.read();
      if (done) {
        return;
      }
      this.#lastWord = Date.now();
      const events = cutter.take(value);
      this.#heard.connected();
      for (const event of events) {
        if (event.event === 'unpaired') {
          this.#heard.unpaired();
        } else if (event.event === 'state') {
          this.#heard.state(JSON.parse(event.data));
        }
      }
    }
  }
}
