/** A display on the wall: what is on set, what comes next, how far the day is. Nobody touches it. */

import {el, Rows, shows, theirs, words} from './dom.js';
import {Pegs, Ruler, showState, stateMark} from './marks.js';
import {ahead, counts} from './model.js';

export class ViewerPage {
  elements;
  #session;
  #say;
  #state = null;
  #code = el('p.code');
  #title = el('h1.title');
  #since = el('p.wall-since');
  #frames = el('p.wall-frames');
  #frameWords = el('span');
  #pegs = new Pegs();
  #next = el('ol.wall-next');
  #nextRows;
  #nextHead;
  #done = el('p.wall-number');
  #ruler = new Ruler();
  #totals = el('p.wall-totals.quiet');
  #pace;
  #finish;
  #clock = el('p.wall-clock');

  constructor(session) {
    this.#session = session;
    const say = (this.#say = session.texts.spoken.say);
    this.#nextRows = new Rows(this.#next, () => nextLine());
    this.#frames.append(this.#frameWords, this.#pegs.element);
    this.#nextHead = el('h2', say('wall.next'));
    const set = el('section.wall-set', this.#code, this.#since, this.#title, this.#frames);
    const next = el('section.wall-ahead', this.#nextHead, this.#next);
    this.#pace = figure(say('wall.pace'));
    this.#finish = figure(say('wall.finish'));
    const figures = el('div.wall-figures', this.#pace.element, this.#finish.element);
    const day = el('section.wall-day', this.#done, this.#ruler.element, this.#totals, figures);
    const head = session.head.element;
    head.append(this.#clock);
    this.elements = [el('main.wall', head, set, next, day)];
    session.every(1000, () => this.#tick());
    this.#tick();
  }

  show(state) {
    this.#state = state;
    const say = this.#say;
    const {texts} = this.#session;
    const setup = state.onSet && state.setups.get(state.onSet.code);
    words(this.#code, setup?.code ?? '');
    theirs(this.#title, setup?.title ?? say('set.nothing'));
    shows(this.#frames, setup);
    words(this.#frameWords, setup ? texts.frames(setup.frames, setup.wanted) : '');
    this.#pegs.show(setup?.frames ?? 0, setup?.wanted);
    const next = ahead(state);
    this.#nextRows.show(next, (one) => one.code);
    words(this.#nextHead, say(next.length ? 'wall.next' : 'wall.nothingLeft'));
    const day = state.day ?? {done: 0, planned: 0, signedOff: 0, frames: 0, pace: null, finish: null};
    words(this.#done, say('wall.done', day.done, day.planned));
    const counted = counts(state);
    const totals = [
      say('wall.signedOff', day.signedOff),
      ...['pickup', 'dropped']
        .filter((word) => counted[word] > 0)
        .map((word) => say('list.count.' + word, counted[word])),
      say('frames', day.frames),
    ].join(' · ');
    words(this.#totals, totals);
    this.#ruler.show([...state.setups.values()].map((one) => one.state), `${this.#done.textContent}. ${totals}`);
    this.#pace.show(day.pace === null ? say('wall.noPace') : texts.duration(day.pace * 1000), '');
    const {finish} = day;
    const now = this.#session.connection.now();
    const from = finish && texts.moment(finish.from, now);
    const to = finish && texts.moment(finish.to, now);
    this.#finish.show(
      finish ? (from === to ? from : say('wall.range', from, to)) : say('wall.noFinish'),
      finish ? '' : (day.why ?? ''),
    );
    this.#tick();
  }

  #tick() {
    const {texts, connection} = this.#session;
    const now = connection.now();
    words(this.#clock, texts.time(now));
    const onSet = this.#state?.onSet;
    const since = onSet?.since ?? (onSet && this.#state.setups.get(onSet.code)?.since);
    words(this.#since, since ? this.#say('set.since', texts.time(since), texts.duration(now - since)) : '');
  }
}

function nextLine() {
  const mark = stateMark();
  const code = el('span.next-code');
  const title = el('span.next-title');
  const element = el('li', mark, code, title);
  return {
    element,
    show(setup) {
      showState(mark, setup.state);
      words(code, setup.code);
      theirs(title, setup.title);
    },
  };
}

function figure(name) {
  const number = el('p.figure-number');
  const why = el('p.figure-why.quiet');
  const element = el('div.figure', el('p.figure-name.quiet', name), number, why);
  return {
    element,
    show(value, reason) {
      words(number, value);
      words(shows(why, reason), reason);
    },
  };
}
