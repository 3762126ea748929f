/**
 * A paired device at work. What a person does goes to the {@link Queue} first, and from there to the
 * computer; each new state of the computer, with what waits on top of it, goes to the page of the role.
 */

import {AssistantPage} from './assistant.js';
import {ClientPage} from './client.js';
import {Connection, Patience, Unreachable} from './connection.js';
import {byId, words} from './dom.js';
import {HeadLine} from './head.js';
import {Live} from './live.js';
import {merged, shown} from './model.js';
import {Pictures} from './pictures.js';
import {Queue} from './queue.js';
import {merged as mergedSets} from './sets-model.js';
import {SetsPage} from './sets.js';
import {forget, keep, kept, names} from './store.js';
import {ViewerPage} from './viewer.js';

const PAGES = {assistant: AssistantPage, client: ClientPage, viewer: ViewerPage};

/** What is served: one job, or all sets of a studio. */
const KINDS = {
  job: {page: (session) => new PAGES[session.role](session), merged, shown},
  sets: {page: (session) => new SetsPage(session), merged: mergedSets, shown: (state) => state},
};
const QUEUE = 'queue.';

/** What a device did for a job, by its name there. */
export function queueOf({device, job}) {
  return queueNamed(`${device}.${job}`);
}

function queueNamed(name) {
  return new Queue(
    () => kept(QUEUE + name),
    (value) => keep(QUEUE + name, value),
  );
}

/** A paired device at work: the line to the computer, the queue, and the page of its role. */
export class Session {
  #app;
  #tabs;
  #device;
  #live;
  #state = null;
  #patience = new Patience();
  #sending = false;
  #over = false;
  #drawing = false;
  #line = {connected: false, since: null, unpaired: false, trouble: ''};
  #listening = new AbortController();
  #others;
  #kind;

  /** @param kind one of `job` and `sets` */
  constructor(app, texts, device, tabs, kind) {
    this.#app = app;
    this.#kind = KINDS[kind];
    this.kind = kind;
    this.#tabs = tabs;
    this.#device = device;
    this.texts = texts;
    this.queue = queueOf(device);
    this.connection = new Connection(device);
    this.pictures = new Pictures(this.connection);
    this.head = new HeadLine(this);
    this.page = this.#kind.page(this);
    this.#live = new Live(this.connection, {
      state: (message) => this.#heard(message),
      connected: () => this.#connected(true),
      lost: () => this.#connected(false),
      unpaired: () => this.#unpaired(),
      answered: (status, body) => this.#refused(status, body),
    });
    this.#others = names(QUEUE)
      .filter((name) => name !== `${device.device}.${device.job}`)
      .map((name) => ({job: name.slice(name.indexOf('.') + 1), queue: queueNamed(name)}))
      .filter(({queue}) => queue.waiting.length > 0);
  }

  /** Does something again and again until this session ends. */
  every(millis, act) {
    const timer = setInterval(act, millis);
    this.#listening.signal.addEventListener('abort', () => clearInterval(timer));
  }

  /** Hears what happens to the document until this session ends. */
  listen(event, act) {
    document.addEventListener(event, act, {signal: this.#listening.signal});
  }

  get name() {
    return this.#device.name;
  }

  get role() {
    return this.#device.role;
  }

  get job() {
    return this.#device.job;
  }

  /** Whether the computer was heard of just now. */
  get isConnected() {
    return this.#line.connected;
  }

  /** Jobs for which this device still has ticks: [{job, queue}]. */
  get others() {
    return this.#others;
  }

  begin() {
    const options = {signal: this.#listening.signal};
    const look = () => document.visibilityState === 'visible' && this.#tryNow();
    document.addEventListener('visibilitychange', look, options);
    addEventListener('online', () => this.#tryNow(), options);
    addEventListener('pageshow', () => this.#tryNow(), options);
    addEventListener('focus', () => this.#tryNow(), options);
    this.#live.run();
    this.#send();
    this.draw();
  }

  end() {
    this.#over = true;
    this.#listening.abort();
    this.#live.end();
    this.pictures.close();
    this.#patience.wake();
  }

  /** The computer's time now, later than anything that the job has. */
  now() {
    return Math.max(this.connection.now(), (this.#state?.seen ?? 0) + 1);
  }

  /** What a person did: [{do, setup, ...}] in one step. Answers whether it could be kept. */
  does(...asked) {
    return this.#writes(() => this.queue.add(asked, this.now()));
  }

  takeBack(events) {
    return this.#writes(() => this.queue.takeBack(events, this.now()));
  }

  settle(anew) {
    return this.#writes(() => this.queue.settle(anew, this.now()));
  }

  dismiss(refusal) {
    return this.#writes(() => this.queue.dismiss(refusal));
  }

  #writes(change) {
    if (!this.#tabs.isActive()) {
      this.#tabs.begin();
      return false;
    }
    try {
      change();
      this.#line = {...this.#line, trouble: ''};
    } catch {
      this.#line = {...this.#line, trouble: this.texts.say('line.noRoom')};
      this.draw();
      return false;
    }
    this.draw();
    this.#send();
    return true;
  }

  /** Says something that a screen reader is to hear. */
  say(text) {
    words(byId('said'), text);
  }

  /** Chooses a look, or none for the device's own. */
  look(word) {
    if (word) {
      keep('look', word);
    } else {
      forget('look');
    }
    this.#app.look();
  }

  speak(language) {
    return this.#app.speakNow(language);
  }

  #tryNow() {
    this.#live.tryNow();
    this.#patience.over();
    this.#patience.wake();
    this.draw();
  }

  #heard(message) {
    this.connection.isNow(message.time);
    this.#state = this.#kind.merged(this.#state, message);
    this.draw();
  }

  #connected(now) {
    if (now !== this.#line.connected || (!now && !this.#line.since)) {
      const since = now ? null : Date.now();
      this.#line = {...this.#line, connected: now, since, trouble: now ? '' : this.#line.trouble};
      this.draw();
      if (now) {
        this.#patience.wake();
      }
    }
  }

  #unpaired() {
    this.#line = {...this.#line, connected: false, since: Date.now(), unpaired: true};
    this.#live.end();
    this.draw();
  }

  #refused(status, body) {
    if (status === 410) {
      this.#unpaired();
    } else if (body.what) {
      this.#line = {...this.#line, trouble: [body.what, body.remedy].filter(Boolean).join(' ')};
      this.draw();
    }
  }

  /** Sends what waits, a batch at a time, until the computer has it all. */
  async #send() {
    if (this.#sending) {
      this.#patience.wake();
      return;
    }
    this.#sending = true;
    while (!this.#over && !this.#line.unpaired && this.#tabs.isActive()) {
      const batch = this.queue.batch();
      if (batch.length === 0) {
        break;
      }
      const wait = await this.#sent(batch);
      this.draw();
      if (wait > 0) {
        await this.#patience.sleep(wait);
      }
    }
    this.#sending = false;
  }

  /** Sends a batch once. Answers how long to wait before the next one. */
  async #sent(batch) {
    try {
      const {status, body, after} = await this.connection.ask('POST', '/events', batch);
      if (this.#over || !this.#tabs.isActive()) {
        return 0;
      }
      if ((status === 200 || status === 409) && typeof body.last === 'number') {
        this.queue.answered(body);
        this.#line = {...this.#line, trouble: ''};
        const next = this.queue.waiting[0];
        if (!next || next.number !== batch[0].number || body.refused) {
          this.#patience.over();
          return 0;
        }
      } else {
        this.#refused(status, body);
      }
      return this.#patience.next(after);
    } catch (failure) {
      if (!(failure instanceof Unreachable)) {
        throw failure;
      }
      return this.#patience.next();
    }
  }

  /** Draws once for everything that changed meanwhile. */
  draw() {
    if (this.#drawing || this.#over) {
      return;
    }
    this.#drawing = true;
    requestAnimationFrame(() => {
      this.#drawing = false;
      if (!this.#over) {
        this.#draw();
      }
    });
  }

  #draw() {
    const {waiting} = this.queue;
    this.head.show(this.#line, waiting.length, this.#state);
    if (this.#state) {
      const recent = this.queue.after(this.#state.last ?? 0);
      this.page.show(this.#kind.shown(this.#state, recent), this.#line);
    }
  }
}
