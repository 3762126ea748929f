/** The client's page: the picture, large; what it is; their agreement and their comments, asked beside it. */

import {commentForm, commentsOf} from './comments.js';
import {button, el, Rows, shows, theirs, words} from './dom.js';
import {Pegs, showState, stateMark} from './marks.js';
import {complete} from './model.js';
import {keep, kept} from './store.js';

const SWIPE = 50;

export class ClientPage {
  elements;
  #session;
  #say;
  #state = null;

  /** What is shown: it stays while the client is asked, whatever comes on set meanwhile. */
  #shown = null;

  /** The picture that was gone back to, or null for the newest: it stays though it is none of the last any more. */
  #looked = null;
  #asked = '';
  #main;
  #img = el('img.picture');
  #waiting = el('p.client-waiting');
  #strip = el('div.strip');
  #prints;
  #code = el('p.code');
  #title = el('h1.title');
  #progress = el('p.progress.quiet');
  #mark = stateMark();
  #standing = el('span');
  #views = el('div.views');
  #viewRows;
  #comments;
  #agree;
  #comment;
  #newest;
  #only;
  #agreeForm;
  #name = el('input');
  #nameLabel = el('label');
  #agreeDo = el('button.does-it.act');
  #commentForm;
  #asking;
  #keys;
  #left;

  constructor(session) {
    this.#session = session;
    const say = (this.#say = session.texts.spoken.say);
    this.#prints = new Rows(this.#strip, (token) => this.#print(token));
    this.#viewRows = new Rows(this.#views, () => viewLine(session.texts));
    this.#comments = commentsOf(session, (token) => this.#look(token));
    this.#agree = button('.does-it.act', '', () => this.#ask('agree'));
    this.#agree.id = 'agree';
    this.#comment = button('.act', say('comment.open'), () => this.#ask('comment'));
    this.#newest = button('.act', say('client.toNewest'), () => this.#look(null));
    this.#only = button('.act', say('client.pictureOnly'), () => this.#pictureOnly(true));
    this.#agreeForm = this.#makeAgreeForm();
    this.#commentForm = commentForm(session, () => kept('name', '') || session.name);
    this.#commentForm.element.append(button('.act', say('cancel'), () => this.#ask('')));
    this.#asking = el('div.asking', this.#agreeForm, this.#commentForm.element);
    const stage = el('div.stage', this.#img, this.#waiting);
    this.#moves(stage);
    const side = el('section.pictures', stage, this.#strip);
    side.setAttribute('aria-label', say('client.pictures'));
    this.#strip.setAttribute('aria-label', say('client.strip'));
    this.#strip.setAttribute('role', 'group');
    const state = el('p.standing', this.#mark, this.#standing);
    const acts = el('div.client-acts', this.#agree, this.#comment, this.#newest, this.#only);
    const about = [this.#code, this.#progress, this.#title, state, this.#views, this.#comments.element];
    const told = el('div.client-told', ...about);
    const column = el('section.column', session.head.element, session.head.notices, told, this.#asking, acts);
    column.setAttribute('aria-label', say('client.about'));
    this.#main = el('main.client', side, column);
    this.elements = [this.#main];
  }

  show(state) {
    this.#state = state;
    const now = state.client;
    if (!this.#asked || !this.#shown?.code || this.#shown.code === now?.code) {
      if (now?.code !== this.#shown?.code) {
        this.#looked = null;
      }
      this.#shown = now;
    }
    this.#draw();
  }

  #draw() {
    const say = this.#say;
    const now = this.#shown ?? {code: '', title: '', views: [], pictures: [], agreed: 0, setups: 0};
    const begun = Boolean(now.code);
    words(this.#code, now.code);
    theirs(this.#title, begun ? now.title : say('client.notBegun'));
    words(this.#progress, say('list.agreed', now.agreed, now.setups));
    shows(this.#mark.parentElement, begun);
    showState(this.#mark, now.state);
    const standing = now.agreedBy ? say('agreedBy', now.agreedBy) : begun ? say('state.' + now.state) : '';
    theirs(this.#standing, now.waits ? say('row.waits', standing) : standing);
    this.#viewRows.show((now.views ?? []).filter((view) => view.code || view.frames > 0), (view) => view.code);
    const said = this.#state.comments.filter((one) => one.setup === now.code);
    this.#comments.show(this.#state, said);
    theirs(this.#agree, say('agree.open', now.code));
    shows(this.#agree, begun && now.canAgree && !this.#asked);
    shows(this.#comment, begun && !this.#asked);
    this.#drawPictures(now, begun);
    shows(this.#only, this.#img.dataset.picture && !this.#asked);
    shows(this.#agreeForm, this.#asked === 'agree');
    shows(this.#commentForm.element, this.#asked === 'comment');
    words(this.#nameLabel, say('agree.title', now.code));
    words(this.#agreeDo, say('agree.do', now.code));
    const picture = this.#picture();
    const about = picture ? say('comment.of', this.#caption(picture)) : say('comment.setup', now.code);
    this.#commentForm.of(now.code, picture?.token, about, () => this.#ask(''));
  }

  #drawPictures(now, begun) {
    const say = this.#say;
    const {pictures} = this.#session;
    const all = now.pictures ?? [];
    const picture = this.#picture();
    this.#prints.show(all, (one) => one.token);
    all.forEach((one) => {
      this.#prints.of(one.token).element.setAttribute('aria-pressed', one.token === picture?.token);
    });
    shows(this.#strip, all.length > 0);
    pictures.show(this.#img, picture?.token, 1600);
    this.#img.alt = picture ? say('picture.named', now.code, now.title, this.#caption(picture)) : '';
    words(this.#waiting, begun ? say('client.waiting') : say('client.notBegun'));
    shows(this.#waiting, !picture);
    shows(this.#newest, this.#looked !== null && !this.#asked);
  }

  /** The picture that is looked at, or undefined. */
  #picture() {
    return this.#looked ?? this.#shown?.pictures?.[0];
  }

  #look(token) {
    const all = this.#shown?.pictures ?? [];
    const found = all.find((one) => one.token === token) ?? null;
    this.#looked = found === all[0] ? null : found;
    this.#draw();
  }

  /** The view and the number of a picture: "front 3". */
  #caption(picture) {
    const view = this.#shown?.views?.find((one) => one.code && one.code === picture.view);
    return this.#say('client.print', view?.label || picture.view || this.#say('client.frame'), picture.number);
  }

  /** Towards older ones with 1, towards newer ones with -1. */
  #turn(by) {
    const all = this.#shown?.pictures ?? [];
    const at = all.findIndex((one) => one.token === this.#picture()?.token);
    const next = all[Math.max(0, Math.min(all.length - 1, at + by))];
    this.#look(next?.token ?? null);
  }

  #print(token) {
    const img = el('img');
    img.alt = '';
    const label = el('span.print-words');
    const element = button('.print', '', () => this.#look(token));
    element.append(img, label);
    return {
      element,
      show: (one) => {
        theirs(label, this.#caption(one));
        this.#session.pictures.show(img, token, 320);
      },
    };
  }

  /** Fingers and keys turn the pictures. */
  #moves(stage) {
    let from = null;
    stage.addEventListener('pointerdown', (event) => (from = event.isPrimary ? event.clientX : null));
    stage.addEventListener('pointercancel', () => (from = null));
    stage.addEventListener('pointerup', (event) => {
      const way = from === null ? 0 : event.clientX - from;
      from = null;
      if (Math.abs(way) > SWIPE) {
        this.#turn(way > 0 ? -1 : 1);
      } else if (this.#main.classList.contains('only')) {
        this.#pictureOnly(false);
      }
    });
    this.#keys = (event) => {
      const typing = event.target instanceof HTMLInputElement || event.target instanceof HTMLTextAreaElement;
      if (typing || document.querySelector('dialog[open]')) {
        return;
      }
      if (event.key === 'ArrowRight') {
        this.#turn(1);
      } else if (event.key === 'ArrowLeft') {
        this.#turn(-1);
      } else if (event.key === 'Escape') {
        this.#pictureOnly(false);
      }
    };
    addEventListener('keydown', this.#keys);
    document.addEventListener('fullscreenchange', (this.#left = () => this.#leftFullscreen()));
  }

  close() {
    removeEventListener('keydown', this.#keys);
    document.removeEventListener('fullscreenchange', this.#left);
  }

  #pictureOnly(only) {
    this.#main.classList.toggle('only', only);
    if (only) {
      this.#session.say(this.#say('client.only'));
      document.documentElement.requestFullscreen?.().catch(() => {}); // where it is not allowed, the page is all
    } else if (document.fullscreenElement) {
      document.exitFullscreen();
    }
  }

  #leftFullscreen() {
    if (!document.fullscreenElement) {
      this.#main.classList.remove('only');
    }
  }

  #ask(what) {
    this.#asked = what;
    if (!what) {
      this.show(this.#state);
    } else {
      this.#draw();
    }
    if (what === 'agree') {
      this.#name.focus();
    } else if (what === 'comment') {
      this.#commentForm.focus();
    }
  }

  #makeAgreeForm() {
    const say = this.#say;
    this.#name.id = 'agree-name';
    this.#name.maxLength = 80;
    this.#name.dir = 'auto';
    this.#name.required = true;
    this.#name.autocomplete = 'name';
    this.#name.value = kept('name', '');
    this.#nameLabel.htmlFor = this.#name.id;
    const form = el('form.agree-form', this.#nameLabel, this.#name, this.#agreeDo);
    form.append(button('.act', say('cancel'), () => this.#ask('')));
    form.addEventListener('submit', (event) => {
      event.preventDefault();
      const name = this.#name.value.trim();
      if (!name) {
        this.#name.focus();
        return;
      }
      keep('name', name);
      const {code} = this.#shown;
      if (this.#session.does({do: 'tick', setup: code, state: 'signed-off', by: name})) {
        this.#session.say(say('told.tick', code, say('state.signed-off')));
        this.#ask('');
      }
    });
    return form;
  }
}

/** A view with its frames; nothing is pressed here. */
function viewLine(texts) {
  const name = el('span.view-word');
  const now = el('span.view-now');
  const count = el('span.view-count');
  const wanted = el('span.view-wanted.quiet');
  const pegs = new Pegs();
  const numbers = el('span.view-numbers', count, wanted);
  const element = el('div.view-block', el('span.view-names', name, now), numbers, pegs.element);
  return {
    element,
    show(view) {
      theirs(name, view.label || view.code || texts.say('view.none'));
      const whole = Boolean(view.code) && complete(view);
      words(now, whole ? texts.say('view.complete') : '');
      words(count, texts.number(view.frames));
      words(wanted, view.wanted ? texts.say('of', view.wanted) : '');
      pegs.show(view.frames, view.wanted);
      element.classList.toggle('complete', whole);
    },
  };
}
