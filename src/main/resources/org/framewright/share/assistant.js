/** The assistant's page: what is on set, large; the list; one tap a tick. */

import {commentsOf} from './comments.js';
import {openDetails} from './details.js';
import {button, el, Rows, shows, theirs, words} from './dom.js';
import {Pegs, Ruler, showState, stateMark} from './marks.js';
import {ahead, bearing, complete, counts, firstView, missing} from './model.js';
import {askText, closeDialogs, openDialog, tell} from './questions.js';
import {camera, readByCamera, Scanner} from './scan.js';

/** Nobody means two ticks that follow so fast. */
const ONE_TAP = 450;

/** So long the computer may take to find a code. */
const SOON = 2_500;

export class AssistantPage {
  elements;
  #session;
  #say;
  #state = null;
  #set;
  #list;
  #acts;
  #scanner;
  #tapped = -ONE_TAP;

  constructor(session) {
    this.#session = session;
    this.#say = session.texts.spoken.say;
    const doing = {
      view: (code) => this.onSet(this.#state.onSet.code, code),
      onSet: (code) => this.onSet(code),
      open: (code) => this.#open(code),
      scan: () => this.#scanByCamera(),
    };
    this.#set = new SetPart(session, doing);
    this.#list = new ListPart(session, doing);
    this.#acts = this.#actions();
    const left = el('section.side', session.head.element, session.head.notices, this.#set.element, this.#acts.element);
    left.setAttribute('aria-label', this.#say('set.part'));
    this.elements = [el('main.assistant', left, this.#list.element)];
    this.#scanner = new Scanner((code) => this.#scanned(code));
  }

  close() {
    closeDialogs();
    this.#scanner.end();
  }

  show(state) {
    this.#state = state;
    const next = ahead(state);
    this.#set.show(state);
    this.#list.show(state, next[0]?.code);
    this.#acts.show(state, next[0]);
    this.redraw?.(state);
  }

  #actions() {
    const say = this.#say;
    const main = button('.does-it.act.main', '', () => this.#once(() => this.#shotAndNext()));
    main.id = 'shot-next';
    const shot = button('.act', say('act.shot'), () => this.#once(() => this.tick(this.#state.onSet.code, 'shot')));
    const pickup = button('.act', say('act.pickup'), () => this.askPickup(this.#state.onSet.code));
    const drop = button('.act', say('act.drop'), () => this.askDrop(this.#state.onSet.code));
    const back = button('.act', say('act.takeBack'), () => this.#askTakeBack());
    shot.id = 'shot';
    pickup.id = 'pickup';
    drop.id = 'drop';
    back.id = 'take-back';
    const element = el('div.acts', main, shot, pickup, drop, back);
    return {
      element,
      show: (state, next) => {
        const set = state.onSet && state.setups.get(state.onSet.code);
        const goes = set && next ? 'act.shotNext' : set ? 'act.shotLast' : next ? 'act.onSet' : null;
        theirs(main, goes ? say(goes, next?.code ?? '', next?.title ?? '') : say('act.nothing'));
        main.disabled = goes === null;
        shot.disabled = pickup.disabled = drop.disabled = !set;
        back.disabled = this.#session.queue.newest.length === 0;
      },
    };
  }

  /** A finger that bounces ticks once. */
  #once(act) {
    const now = performance.now();
    if (now - this.#tapped >= ONE_TAP) {
      this.#tapped = now;
      act();
    }
  }

  #shotAndNext() {
    const {onSet} = this.#state;
    const [next] = ahead(this.#state);
    const asked = [];
    if (onSet) {
      asked.push(this.#ticked(onSet.code, 'shot'));
    }
    if (next) {
      asked.push(this.#ticked(next.code, 'on-set', {view: firstView(next)}));
    }
    if (asked.length > 0) {
      this.#session.does(...asked);
      this.#session.say(asked.map((one) => this.#session.texts.event(one)).join(', '));
    }
  }

  #ticked(setup, state, more = {}) {
    return {do: 'tick', setup, state, by: this.#session.name, ...more};
  }

  /** A setup gets a state. */
  tick(setup, state, more) {
    const one = this.#ticked(setup, state, more);
    if (this.#session.does(one)) {
      this.#session.say(this.#session.texts.event(one));
    }
  }

  /** A setup goes on set with a view, else with its first one. */
  onSet(code, view) {
    const setup = this.#state.setups.get(code);
    if (setup) {
      this.tick(code, 'on-set', {view: view ?? firstView(setup)});
    }
  }

  askPickup(code) {
    const say = this.#say;
    const title = say('pickup.title', code);
    askText({title, label: say('why'), act: say('pickup.do', code), away: say('cancel')}, (reason) =>
      this.tick(code, 'pickup', reason ? {reason} : {}),
    );
  }

  askDrop(code) {
    const say = this.#say;
    const title = say('drop.title', code);
    askText({title, label: say('why'), act: say('drop.do', code), away: say('cancel')}, (reason) =>
      this.tick(code, 'dropped', reason ? {reason} : {}),
    );
  }

  #askTakeBack() {
    const say = this.#say;
    const {texts, queue} = this.#session;
    const events = queue.newest;
    if (events.length === 0) {
      return;
    }
    const what = texts.list(events.toReversed().map((one) => texts.event(one)));
    tell(say('takeBack.title'), say('takeBack.what', what, texts.time(events.at(-1).at)), say('cancel'), {
      words: say('takeBack.do'),
      act: () => this.#session.takeBack(events),
    });
  }

  #open(code) {
    openDetails(this.#session, this, () => this.#state, code);
  }

  async #scanByCamera() {
    const say = this.#say;
    const video = el('video');
    video.playsInline = true;
    video.muted = true;
    const stop = new AbortController();
    const dialog = openDialog(say('scan.camera'), say('cancel'), video);
    dialog.addEventListener('close', () => stop.abort());
    try {
      const code = await readByCamera(video, stop.signal);
      dialog.close();
      if (code) {
        this.#scanned(code);
      }
    } catch {
      dialog.close();
      tell(say('scan.camera'), say('scan.noCamera'), say('close'));
    }
  }

  async #scanned(code) {
    const say = this.#say;
    if (document.querySelector('dialog.question[open]')) {
      this.#session.say(say('scan.notNow', code));
      return;
    }
    closeDialogs();
    const found = await this.#find(code);
    if (!this.#state) {
      return;
    }
    if (found.stray) {
      tell(say('scan.stray.title'), say('scan.stray', found.stray), say('close'));
    } else if (!found.setups?.length) {
      tell(say('scan.unknown.title'), say('scan.unknown', found.unknown ?? code), say('close'));
    } else if (found.setups.length === 1) {
      this.#found(found.setups[0]);
    } else {
      const acts = found.setups.map((one) => ({
        words: say('scan.one', one, this.#state.setups.get(one)?.title ?? ''),
        act: () => this.#found(one),
      }));
      tell(say('scan.several.title', acts.length), say('scan.several'), say('cancel'), ...acts);
    }
  }

  #found(code) {
    if (this.#state.onSet?.code === code) {
      tell(this.#say('scan.already', code), this.#state.setups.get(code)?.title ?? '', this.#say('close'));
    } else {
      this.onSet(code);
    }
  }

  /** What the computer finds for a code; where it cannot be asked, what the list here has. */
  async #find(typed) {
    const here = {setups: bearing(this.#state, typed)};
    if (!this.#session.isConnected) {
      return here;
    }
    const asked = this.#session.connection.ask('POST', '/code', {typed}).then(
      ({status, body}) => (status === 200 ? body : here),
      () => here,
    );
    // Nobody stands at the rack and waits for a line that is dead.
    return Promise.race([asked, new Promise((done) => setTimeout(() => done(here), SOON))]);
  }
}

/** What is on set. */
class SetPart {
  element;
  #session;
  #say;
  #code = el('span.code');
  #since = el('span.since');
  #title = el('span.title');
  #columns = el('p.columns.quiet');
  #frames = el('p.frames-line');
  #frameWords = el('span');
  #pegs = new Pegs();
  #views = el('div.views');
  #viewRows;
  #comments;
  #open;
  #img = el('img.last');
  #state = null;

  constructor(session, doing) {
    this.#session = session;
    this.#say = session.texts.spoken.say;
    this.#frames.append(this.#frameWords, this.#pegs.element);
    this.#viewRows = new Rows(this.#views, (code) => viewBlock(session.texts, code, doing.view));
    this.#comments = commentsOf(session);
    this.#img.alt = '';
    this.#open = button('.set-open', '', () => this.#state.onSet && doing.open(this.#state.onSet.code));
    this.#open.append(el('span.set-words', el('span.set-line', this.#code, this.#since), this.#title), this.#img);
    this.element = el('div.set', this.#open, this.#columns, this.#frames, this.#views, this.#comments.element);
    session.every(15_000, () => this.#state && this.#tellSince());
  }

  show(state) {
    this.#state = state;
    const say = this.#say;
    const setup = state.onSet && state.setups.get(state.onSet.code);
    words(this.#code, setup?.code ?? '');
    theirs(this.#title, setup ? setup.title : say(state.setups.size ? 'set.nothing' : 'set.noList'));
    this.#title.classList.toggle('quiet', !setup);
    this.#open.disabled = !setup;
    this.#tellSince();
    const columns = Object.values(setup?.columns ?? {}).filter(Boolean).join(' · ');
    theirs(shows(this.#columns, columns), columns);
    const views = (setup?.views ?? []).filter((view) => view.code || view.frames > 0);
    shows(this.#frames, Boolean(setup));
    words(this.#frameWords, setup ? this.#session.texts.frames(setup.frames, setup.wanted) : '');
    this.#pegs.show(setup?.frames ?? 0, setup?.wanted);
    this.#viewRows.show(views, (view) => view.code);
    shows(this.#views, views.length > 0);
    this.#comments.show(state, setup ? state.comments.filter((one) => one.setup === setup.code).slice(-3) : []);
    this.#session.pictures.show(this.#img, setup?.pictures?.[0], 320);
  }

  #tellSince() {
    const {onSet} = this.#state;
    const {texts} = this.#session;
    const since = onSet?.since ?? (onSet && this.#state.setups.get(onSet.code)?.since);
    words(
      this.#since,
      since ? this.#say('set.since', texts.time(since), texts.duration(this.#session.connection.now() - since)) : '',
    );
  }
}

/** A view of the setup on set: a tap brings it before the camera. */
function viewBlock(texts, code, bring) {
  const name = el('span.view-word');
  const now = el('span.view-now');
  const count = el('span.view-count');
  const wanted = el('span.view-wanted.quiet');
  const pegs = new Pegs();
  const element = button('.view-block', '', () => code && bring(code));
  element.append(el('span.view-names', name, now), el('span.view-numbers', count, wanted), pegs.element);
  return {
    element,
    show(view) {
      theirs(name, view.label || view.code || texts.say('view.none'));
      words(now, view.before ? texts.say('view.now') : complete(view) ? texts.say('view.complete') : '');
      words(count, texts.number(view.frames));
      words(wanted, view.wanted ? texts.say('of', view.wanted) : '');
      pegs.show(view.frames, view.wanted);
      element.classList.toggle('before', view.before);
      element.classList.toggle('complete', Boolean(view.code) && complete(view));
      element.setAttribute('aria-pressed', view.before);
      element.disabled = !code;
    },
  };
}

/** The list, and how far it is. */
class ListPart {
  element;
  #session;
  #say;
  #head = el('h2.agreed');
  #ruler = new Ruler();
  #totals = el('p.totals.quiet');
  #field = el('input.find');
  #left;
  #rows;
  #none = el('p.none');
  #state = null;
  #next;
  #before;

  constructor(session, doing) {
    this.#session = session;
    const say = (this.#say = session.texts.spoken.say);
    this.#field.type = 'search';
    this.#field.placeholder = say('list.findShort');
    this.#field.setAttribute('aria-label', say('list.find'));
    this.#field.autocomplete = 'off';
    this.#field.dir = 'auto';
    this.#field.addEventListener('input', () => this.#filter());
    this.#left = button('.act.toggle', say('list.left'), () => {
      this.#left.setAttribute('aria-pressed', this.#left.getAttribute('aria-pressed') !== 'true');
      this.#filter();
    });
    this.#left.setAttribute('aria-pressed', 'false');
    const tools = el('div.tools', this.#field, this.#left);
    if (camera()) {
      tools.append(button('.act', say('scan.do'), () => doing.scan()));
    }
    const list = el('ul.rows');
    list.setAttribute('aria-label', say('list'));
    this.#rows = new Rows(list, (code) => listRow(session.texts, code, doing));
    const head = el('div.list-head', this.#head, this.#ruler.element, this.#totals, tools);
    this.element = el('section.list.paper', head, shows(this.#none, false), list);
    this.element.setAttribute('aria-label', say('list'));
  }

  show(state, next) {
    const say = this.#say;
    this.#state = state;
    this.#next = next;
    const counted = counts(state);
    const planned = state.setups.size - counted.dropped;
    words(this.#head, say('list.agreed', counted['signed-off'], planned));
    const totals = ['shot', 'to-shoot', 'pickup', 'dropped']
      .filter((word) => counted[word] > 0)
      .map((word) => say('list.count.' + word, counted[word]))
      .concat((state.day?.given ?? []).map((one) => say(one.arrived ? 'list.given' : 'list.onItsWay', one.code, one.to)))
      .join(' · ');
    words(this.#totals, totals);
    this.#ruler.show(
      [...state.setups.values()].map((setup) => setup.state),
      `${this.#head.textContent}, ${totals}`,
    );
    this.#filter();
    if (state.onSet?.code !== this.#before) {
      this.#before = state.onSet?.code;
      this.#bring(this.#before);
    }
  }

  /** Where the list scrolls by itself, a setup is brought into its sight. */
  #bring(code) {
    const row = this.#rows.of(code)?.element;
    if (row && getComputedStyle(this.element).overflowY === 'auto') {
      row.scrollIntoView({block: 'center'});
    }
  }

  #filter() {
    if (!this.#state) {
      return;
    }
    const all = [...this.#state.setups.values()];
    const wanted = this.#field.value.toLocaleLowerCase().split(/\s+/).filter(Boolean);
    const left = this.#left.getAttribute('aria-pressed') === 'true';
    const rows = all
      .filter((setup) => !left || isLeft(setup))
      .filter((setup) => wanted.length === 0 || has(setup, wanted));
    this.#rows.show(rows, (setup) => setup.code);
    rows.forEach((setup) => this.#rows.of(setup.code).next(setup.code === this.#next));
    words(this.#none, this.#say(all.length === 0 ? 'set.noList' : 'list.none'));
    shows(this.#none, rows.length === 0);
  }
}

function isLeft(setup) {
  return ['to-shoot', 'pickup', 'on-set'].includes(setup.state) || missing(setup).length > 0;
}

function has(setup, wanted) {
  const all = [setup.code, setup.title, ...Object.values(setup.columns ?? {})].join(' ').toLocaleLowerCase();
  return wanted.every((word) => all.includes(word));
}

/** A line of the list: a tap opens it, one on the right puts it on set. */
function listRow(texts, code, doing) {
  const mark = stateMark();
  const number = el('span.row-code');
  const title = el('span.row-title');
  const chip = el('span.next', texts.say('row.next'));
  const state = el('span.row-state');
  const lacks = el('span.row-lacks');
  const count = el('span');
  const spoken = el('span.spoken');
  const frames = el('span.row-frames', count, spoken);
  count.setAttribute('aria-hidden', 'true');
  const open = button('.row-open', '', () => doing.open(code));
  open.append(mark, number, el('span.row-words', title, el('span.row-below', chip, state, lacks)), frames);
  const put = button('.row-put', '', () => doing.onSet(code));
  const putMark = stateMark();
  showState(putMark, 'on-set');
  put.append(putMark);
  put.setAttribute('aria-label', texts.say('row.put', code));
  put.title = texts.say('row.put', code);
  const element = el('li.row', open, put);
  words(number, code);
  return {
    element,
    show(setup) {
      showState(mark, setup.state);
      theirs(title, setup.title);
      const word = texts.say('state.' + setup.state);
      const stands = setup.waits ? texts.say('row.waits', word) : word;
      words(state, setup.from ? `${stands} · ${texts.say('row.from', setup.from)}` : stands);
      const without = missing(setup).map((view) => view.label || view.code);
      words(lacks, without.length > 0 ? texts.say('row.lacks', texts.list(without)) : '');
      words(count, setup.frames > 0 ? texts.number(setup.frames) : '');
      words(spoken, setup.frames > 0 ? texts.say('frames', setup.frames) : '');
      element.dataset.state = setup.state;
      element.classList.toggle('waits', Boolean(setup.waits));
      put.disabled = setup.state === 'on-set';
    },
    next(now) {
      shows(chip, now);
    },
  };
}
