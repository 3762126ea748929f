/** The producer's page: every set, those that need a person first; updated where they stand. */

import {el, Rows, shows, theirs, words} from './dom.js';
import {lineMark, needMark, showLine, showNeed} from './marks.js';
import {found, needing} from './sets-model.js';

/** So many matters are said of a set; the rest is counted. */
const MOST_MATTERS = 4;
const MOST_CODES = 8;

export class SetsPage {
  elements;
  #session;
  #say;
  #state = null;
  #typed = '';
  #summary = el('p.sets-summary');
  #find = el('input.find');
  #list = el('ol.sets-list');
  #rows;
  #none;

  constructor(session) {
    this.#session = session;
    const say = (this.#say = session.texts.spoken.say);
    this.#rows = new Rows(this.#list, () => setLine(session));
    this.#summary.setAttribute('role', 'status');
    this.#find.type = 'search';
    this.#find.autocomplete = 'off';
    this.#find.placeholder = say('sets.find');
    this.#find.setAttribute('aria-label', say('sets.find'));
    this.#find.addEventListener('input', () => this.#look(this.#find.value));
    this.#none = shows(el('p.none.quiet', ''), false);
    const head = el('div.sets-head', el('h1', say('sets.title')), this.#summary, this.#find);
    this.elements = [el('main.sets', session.head.element, session.head.notices, head, this.#list, this.#none)];
    session.listen('keydown', (event) => this.#pressed(event));
    session.every(15_000, () => this.#rows.each((row) => row.tick()));
  }

  show(state) {
    this.#state = state;
    this.#draw();
  }

  #look(typed) {
    this.#typed = typed;
    if (this.#state) {
      this.#draw();
    }
  }

  #draw() {
    const say = this.#say;
    const {sets} = this.#state;
    const shown = found(sets, this.#typed);
    const need = needing(sets);
    const summary = [say('sets.count', sets.length), need === 0 ? say('sets.needNobody') : say('sets.need', need)];
    words(this.#summary, summary.join(' · '));
    this.#rows.show(shown, (set) => set.id);
    words(this.#none, say(sets.length === 0 ? 'sets.none' : 'sets.notFound'));
    shows(this.#none, shown.length === 0);
  }

  /** A slash leads to the field; Escape empties it; the arrows go from set to set. */
  #pressed(event) {
    if (event.ctrlKey || event.metaKey || event.altKey || document.querySelector('dialog[open]')) {
      return;
    }
    const typing = document.activeElement === this.#find;
    if (event.key === '/' && !typing) {
      event.preventDefault();
      this.#find.focus();
    } else if (event.key === 'Escape' && typing && this.#find.value) {
      event.preventDefault();
      this.#find.value = '';
      this.#look('');
    } else if (event.key === 'ArrowDown' || event.key === 'ArrowUp') {
      this.#go(event, event.key === 'ArrowDown' ? 1 : -1);
    }
  }

  #go(event, by) {
    const lines = [...this.#list.children];
    const at = lines.indexOf(document.activeElement);
    const next = at < 0 ? (by > 0 ? lines[0] : null) : lines[at + by];
    if (next) {
      event.preventDefault();
      next.focus();
    } else if (at === 0) {
      event.preventDefault();
      this.#find.focus();
    }
  }
}

function setLine(session) {
  const {texts} = session;
  const {say} = texts.spoken;
  const mark = needMark();
  const name = el('h2.sets-name');
  const need = el('span.sets-need-words');
  const code = el('span.sets-code');
  const title = el('span.sets-title');
  const since = el('span.sets-since.quiet');
  const onSet = el('p.sets-on', code, title, since);
  const number = el('p.sets-number');
  const bar = el('progress.sets-bar');
  const signedOff = el('p.sets-small.quiet');
  const pace = el('p.sets-small.quiet');
  const finish = el('p.sets-finish');
  const matters = el('ul.sets-matters');
  const lost = lineMark();
  const silence = el('span.sets-silence', lost);
  const ageWords = el('span');
  const age = el('p.sets-age.quiet', silence, ageWords);
  showLine(lost, 'lost');
  const lines = new Rows(matters, () => matter());
  const element = el(
    'li.sets-line',
    el('div.sets-who', name, el('p.sets-need', mark, need)),
    onSet,
    el('div.sets-done', number, bar, signedOff),
    el('div.sets-ahead', finish, pace),
    el('div.sets-told', matters, age),
  );
  element.tabIndex = 0;
  let set = null;
  const line = {
    element,
    show(value) {
      set = value;
      element.dataset.need = set.need;
      theirs(name, set.name);
      showNeed(mark, set.need);
      words(need, say('sets.need.' + set.need));
      words(code, set.onSet?.code ?? '');
      theirs(title, set.onSet?.title ?? say(set.known ? 'set.nothing' : 'sets.unknown'));
      const done = set.done ?? 0;
      const planned = set.planned ?? 0;
      words(number, say('wall.done', done, planned));
      bar.max = Math.max(1, planned);
      bar.value = done;
      bar.setAttribute('aria-label', number.textContent);
      words(signedOff, say('wall.signedOff', set.signedOff ?? 0));
      words(pace, set.pace == null ? '' : say('sets.pace', texts.duration(set.pace * 1000)));
      lines.show(matterWords(session, set), (text) => text);
      shows(matters, matters.childElementCount > 0);
      shows(silence, set.silent);
      for (const part of [onSet, number.parentElement, finish.parentElement, age]) {
        part.classList.toggle('old', set.silent);
      }
      line.tick();
    },
    /** What changes with the time alone. */
    tick() {
      const now = session.connection.now();
      const begun = set.onSet?.since;
      words(since, begun ? say('set.since', texts.moment(begun, now), texts.duration(now - begun)) : '');
      words(finish, forecast(texts, set, now));
      words(ageWords, heard(texts, set, now));
    },
  };
  return line;
}

function matter() {
  const element = el('li');
  return {element, show: (text) => theirs(element, text)};
}

/** What of a set a person should know, the most urgent first. */
function matterWords(session, set) {
  const {texts} = session;
  const {say} = texts.spoken;
  const all = [...(set.urgent ?? [])];
  if (set.waiting?.length) {
    const more = set.waiting.length - MOST_CODES;
    const codes = set.waiting.slice(0, MOST_CODES).join(', ') + (more > 0 ? ' …' : '');
    const since = set.waitingSince;
    all.push(
      since
        ? say('sets.waits', codes, texts.moment(since, session.connection.now()))
        : say('sets.waits.always', codes),
    );
  }
  if (set.pickups) {
    all.push(say('list.count.pickup', set.pickups));
  }
  if (set.late) {
    all.push(say('sets.late'));
  }
  all.push(...(set.troubles ?? []));
  const unique = [...new Set(all)];
  const more = unique.length - MOST_MATTERS;
  return more > 1 ? [...unique.slice(0, MOST_MATTERS), say('sets.more', more)] : unique;
}

/** When the set is likely done, or why nobody can say. */
function forecast(texts, set, now) {
  const {say} = texts.spoken;
  if (!set.known) {
    return '';
  }
  if (set.done >= set.planned) {
    return say(set.planned === 0 ? 'set.noList' : 'wall.nothingLeft');
  }
  if (set.from && set.to) {
    return say('sets.range', texts.moment(set.from, now), texts.moment(set.to, now));
  }
  return set.finish
    ? say('sets.about', texts.moment(set.finish, now))
    : say(set.pace == null ? 'sets.tooEarly' : 'sets.noForecast');
}

/** When the set was heard of last, and whether that is too long ago. */
function heard(texts, set, now) {
  const {say} = texts.spoken;
  if (!set.told) {
    return say('sets.never');
  }
  const at = texts.moment(set.told, now);
  const told = say(set.silent ? 'sets.silent' : 'sets.heard', at, set.toldBy ?? '');
  return set.behind > 0 ? `${told} · ${say('sets.behind', set.behind)}` : told;
}
