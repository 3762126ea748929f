/** One tab of this device is the active one: it alone writes and sends. The others offer to take over. */

import {isOf, keep, kept, forget} from './store.js';

const NAME = 'tab';
const BEAT = 1_000;
const DEAD = 3_500;

export class Tabs {
  #id = Math.random().toString(36).slice(2);
  #beat = null;
  #wait = null;
  #is = null;
  #changed;

  /** @param changed hears whether this tab is active now */
  constructor(changed) {
    this.#changed = changed;
    addEventListener('storage', (event) => {
      if (!isOf(event, NAME) || this.isActive()) {
        return;
      }
      if (this.#beat !== null) {
        this.#yield();
      } else if (event.newValue === null) {
        this.begin(); // the active one was closed
      }
    });
    addEventListener('pagehide', () => this.#leave());
    addEventListener('pageshow', (event) => event.persisted && this.begin());
  }

  /** Becomes the active tab, unless another one is alive. */
  begin() {
    const other = kept(NAME);
    if (other && other.id !== this.#id && Date.now() - other.at < DEAD) {
      this.#be(false);
      // It may end without a word.
      clearTimeout(this.#wait);
      this.#wait = setTimeout(() => this.#is || this.begin(), DEAD);
    } else {
      this.take();
    }
  }

  /** Becomes the active tab, whatever the others are. */
  take() {
    this.#mark();
    clearInterval(this.#beat);
    clearTimeout(this.#wait);
    this.#beat = setInterval(() => (this.isActive() ? this.#mark() : this.#yield()), BEAT);
    this.#is = null;
    this.#be(true);
  }

  /** Whether this tab may write: asked anew each time, since it may have slept. */
  isActive() {
    return kept(NAME)?.id === this.#id;
  }

  #mark() {
    keep(NAME, {id: this.#id, at: Date.now()});
  }

  #yield() {
    clearInterval(this.#beat);
    this.#beat = null;
    this.begin();
  }

  #be(active) {
    if (this.#is !== active) {
      this.#is = active;
      this.#changed(active);
    }
  }

  #leave() {
    clearInterval(this.#beat);
    this.#beat = null;
    if (this.isActive()) {
      forget(NAME);
    }
  }
}
