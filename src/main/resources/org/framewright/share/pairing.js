/** What is there before a device is at work: who it is, or why it cannot be. */

import {button, el, shows, words} from './dom.js';

/** A page that says one thing, and what can be done. */
export class MessagePage {
  elements;

  constructor(what, how, act, done) {
    const card = el('section.card.paper', el('h1', what), el('p', how));
    if (act) {
      card.append(button('.does-it.act', act, done));
    }
    const main = el('main.message', card);
    this.elements = [main];
  }
}

/** Asks how the device is called, and pairs it. */
export class PairingPage {
  elements;
  #name;
  #pair;
  #role;
  #wrong = el('p.wrong');
  #act;
  #texts;

  /**
   * @param name how it was called before, if it was
   * @param pair pairs it under a name, and answers what was wrong or null
   * @param stay goes on without; none where it is not paired yet
   * @param kind what is served, one of `job` and `sets`
   */
  constructor(texts, invited, name, pair, stay, kind = 'job') {
    this.#texts = texts;
    this.#pair = pair;
    this.#role = invited.role;
    const role = kind === 'sets' ? 'sets.' + invited.role : invited.role;
    this.#name = el('input');
    this.#name.id = 'device-name';
    this.#name.maxLength = 60;
    this.#name.autocomplete = 'off';
    this.#name.value = name ?? texts.say('pair.name.' + role);
    const label = el('label', texts.say('pair.name'));
    label.htmlFor = this.#name.id;
    this.#act = el('button.does-it.act', texts.say('pair.do'));
    this.#wrong.setAttribute('role', 'alert');
    const form = el('form', label, this.#name, this.#act, shows(this.#wrong, false));
    if (stay) {
      form.append(button('.act', texts.say('cancel'), stay));
    }
    form.addEventListener('submit', (event) => {
      event.preventDefault();
      this.#go();
    });
    const about = el('p', texts.say('pair.role.' + role));
    this.elements = [el('main.message', el('section.card.paper', el('h1', texts.say('pair.title')), about, form))];
  }

  begin() {
    if (this.#role === 'viewer') {
      this.#go(); // nobody sits at it
    } else {
      this.#act.focus();
    }
  }

  async #go() {
    const name = this.#name.value.trim();
    if (!name) {
      this.#name.focus();
      return;
    }
    this.#act.disabled = true;
    shows(this.#wrong, false);
    const wrong = await this.#pair(name);
    this.#act.disabled = false;
    words(this.#wrong, wrong ?? '');
    shows(this.#wrong, Boolean(wrong));
  }
}
