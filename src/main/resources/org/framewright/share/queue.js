/**
 * What a person did and the computer does not have yet. Everything is written down before it is
 * sent, with numbers that go on from the last one that the computer kept: so a tick that is sent
 * twice is kept once (docs/sharing.md).
 *
 * Knows neither page nor network: a {@link Queue} is given where to keep and what the time is.
 */

const MOST = 100;
const LARGEST = 60_000;
const REMEMBERED = 120;

const EMPTY = {last: 1, lastAt: 0, steps: 0, waiting: [], done: [], refused: [], clash: null};

/** What is sent of an event; the rest is for this device only. */
const SENT = ['number', 'at', 'do', 'setup', 'state', 'view', 'reason', 'by', 'picture', 'text', 'of'];

export class Queue {
  #read;
  #write;

  /**
   * @param read gives what was written, or null
   * @param write keeps it, or throws: then nothing was done
   */
  constructor(read, write) {
    this.#read = read;
    this.#write = write;
  }

  #now() {
    return {...EMPTY, ...this.#read()};
  }

  /** What the computer does not have yet, in order. */
  get waiting() {
    return this.#now().waiting;
  }

  /** What is not in a state of the computer that ends with that number: what it kept since, and what waits. */
  after(last) {
    const now = this.#now();
    return [
      ...now.done.filter((event) => event.number > last),
      ...now.waiting.map((event) => ({...event, waits: true})),
    ];
  }

  /** What it refused and nobody dismissed: [{event, what, remedy}]. */
  get refused() {
    return this.#now().refused;
  }

  /** The event in whose place the computer has another one, or null. Nothing is sent until a person says. */
  get clash() {
    const now = this.#now();
    return now.waiting.find((event) => event.number === now.clash) ?? null;
  }

  /** The last number that the computer kept. */
  get last() {
    return this.#now().last;
  }

  /**
   * Writes down what a person did in one step.
   *
   * @param asked what it is, without numbers
   * @param at the time, in milliseconds; each event gets a later one than those before
   */
  add(asked, at) {
    const now = this.#now();
    const steps = now.steps + 1;
    const added = [];
    let {lastAt} = now;
    let number = lastOf(now);
    for (const one of asked) {
      lastAt = Math.max(at, lastAt + 1);
      added.push({...one, number: ++number, at: lastAt, step: steps});
    }
    this.#write({...now, steps, lastAt, waiting: [...now.waiting, ...added]});
  }

  /** The events of the newest step that can be taken back, the last one first; none if there is none. */
  get newest() {
    const now = this.#now();
    const all = [...now.done, ...now.waiting];
    const back = new Set(all.filter((event) => event.do === 'take-back').map((event) => event.of));
    const left = all.filter((event) => event.do === 'tick' && !back.has(event.number));
    return left.filter((event) => event.step === left.at(-1).step).reverse();
  }

  /** Takes own events back: those that were never sent are gone, the others are told to the computer. */
  takeBack(events, at) {
    const now = this.#now();
    const unsent = new Set(now.waiting.filter((one) => !one.tried).map((one) => one.number));
    const gone = new Set(events.map((one) => one.number).filter((number) => unsent.has(number)));
    this.#write(numbered(now, now.waiting.filter((one) => !gone.has(one.number))));
    const told = events.filter((one) => !gone.has(one.number));
    if (told.length > 0) {
      this.add(
        told.map((one) => ({do: 'take-back', of: one.number})),
        at,
      );
    }
  }

  /** What is to be sent next, [] for nothing; it counts as sent from now on. */
  batch() {
    const now = this.#now();
    if (now.clash !== null || now.waiting.length === 0) {
      return [];
    }
    const sent = [];
    let size = 2;
    for (const event of now.waiting.slice(0, MOST)) {
      const bare = Object.fromEntries(SENT.filter((key) => event[key] !== undefined).map((key) => [key, event[key]]));
      // In the worst case a sign takes three bytes.
      size += 3 * JSON.stringify(bare).length + 1;
      if (size > LARGEST && sent.length > 0) {
        break;
      }
      sent.push(bare);
    }
    if (now.waiting.slice(0, sent.length).some((event) => !event.tried)) {
      const waiting = now.waiting.map((event, i) => (i < sent.length ? {...event, tried: true} : event));
      this.#write({...now, waiting});
    }
    return sent;
  }

  /** Takes an answer of the computer to a batch. */
  answered(answer) {
    if (answer.clash !== undefined) {
      // What it has under that number is not what waits here, so this was not kept.
      const before = without(this.#now(), answer.clash - 1);
      this.#write({...before, last: answer.last, clash: answer.clash});
      return;
    }
    const now = without(this.#now(), answer.last);
    if (answer.refused) {
      const {number, what, remedy} = answer.refused;
      const event = now.waiting.find((one) => one.number === number);
      const rest = now.waiting.filter(
        (one) => one.number !== number && !(one.do === 'take-back' && one.of === number),
      );
      const refused = event ? [...now.refused, {event, what, remedy}] : now.refused;
      this.#write(numbered({...now, refused}, rest));
    } else if (answer.gap) {
      this.#write(numbered(now, now.waiting));
    } else {
      this.#write(now);
    }
  }

  /** What a person says of a clash: it is sent once more, after all others that are kept, or dropped. */
  settle(anew, at) {
    const now = this.#now();
    const clash = now.waiting.find((event) => event.number === now.clash);
    const rest = now.waiting.filter((event) => event !== clash);
    const had = rest.filter((event) => event.number <= now.last);
    const later = rest.filter((event) => event.number > now.last);
    let {lastAt} = now;
    const again = (anew && clash ? [clash, ...later] : later).map((event) => {
      if (!anew) {
        return event;
      }
      // Those behind it are still to come later than it does.
      lastAt = Math.max(at, lastAt + 1);
      return {...event, at: lastAt, tried: false};
    });
    const settled = numbered({...now, clash: null, lastAt}, again);
    this.#write({...settled, waiting: [...had, ...settled.waiting]});
  }

  /** Somebody read it. */
  dismiss(refusal) {
    const now = this.#now();
    this.#write({...now, refused: now.refused.filter((one) => one.event.at !== refusal.event.at)});
  }

  /** The computer told which number of this device it has last, when they were paired. */
  paired(last) {
    const now = this.#now();
    if (now.waiting.length === 0) {
      this.#write({...now, last});
    }
  }
}

function lastOf(now) {
  return Math.max(now.last, now.waiting.at(-1)?.number ?? 0);
}

/** Those up to a number are kept; of them the last ones are remembered, so that they can be taken back. */
function without(now, last) {
  const kept = now.waiting.filter((event) => event.number <= last);
  return {
    ...now,
    last,
    done: [...now.done, ...kept].slice(-REMEMBERED),
    waiting: now.waiting.filter((event) => event.number > last),
  };
}

/** These wait, numbered from the last one kept; what takes one of them back goes with its new number. */
function numbered(now, events) {
  const renamed = new Map();
  let number = now.last;
  const waiting = events.map((event) => {
    number++;
    renamed.set(event.number, number);
    return event.do === 'take-back' && renamed.has(event.of)
      ? {...event, number, of: renamed.get(event.of)}
      : {...event, number};
  });
  return {...now, waiting};
}
