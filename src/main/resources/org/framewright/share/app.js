/** Where the page begins: this device is paired, or paired already, or another tab is the active one. */

import {Connection, Unreachable} from './connection.js';
import {byId} from './dom.js';
import {MessagePage, PairingPage} from './pairing.js';
import {queueOf, Session} from './session.js';
import {deviceKey, invitation, newDevice} from './signing.js';
import {forget, keep, kept} from './store.js';
import {Tabs} from './tabs.js';
import {Texts, usual} from './texts.js';

/** Said where not even the texts can be read. */
const NO_ROOM = {
  en: 'This page cannot work here: either the browser lets it keep nothing, or it did not load whole.',
  de: 'Diese Seite kann hier nicht arbeiten: Der Browser lässt sie nichts speichern, oder sie lud nicht ganz.',
  fr: 'Cette page ne peut pas travailler ici\u202f: le navigateur ne la laisse rien garder, ou elle est incomplète.',
};

/** As many pairings of other days are kept. */
const MOST_JOBS = 8;

/** What is served: one job, or all sets of a studio. */
const KIND = document.documentElement.dataset.page;

class App {
  #texts;
  #tabs = new Tabs((active) => (active ? this.#begin() : this.#rest()));
  #page = null;
  #session = null;

  async start() {
    const invited = this.#takeInvitation();
    addEventListener('hashchange', () => this.#takeInvitation() && this.#tabs.take());
    await this.speak(kept('language') ?? usual(navigator.languages));
    matchMedia('(prefers-color-scheme: dark)').addEventListener('change', () => this.look());
    if (invited) {
      this.#tabs.take();
    } else {
      this.#tabs.begin();
    }
  }

  /** An invitation in the address is taken out of it at once; only the key made from it is kept. */
  #takeInvitation() {
    const found = invitation(location.hash);
    if (location.hash) {
      history.replaceState(null, '', location.pathname);
    }
    if (found) {
      // A device that is paired under its name cannot be paired under it once more.
      const ids = [kept('device')?.device ?? newDevice(), newDevice()];
      keep('invited', {
        role: found.role,
        as: ids.map((device) => ({device, key: deviceKey(found.secret, device)})),
      });
    }
    return found !== null;
  }

  /** Goes on in a language, with everything that is on the screen. */
  async speak(language) {
    this.#texts = await Texts.of(language);
    document.documentElement.lang = language;
  }

  async speakNow(language) {
    try {
      await this.speak(language);
    } catch {
      return; // no line: the language stays
    }
    keep('language', language);
    this.#begin();
  }

  /** The chosen look, else the one that the device's wish and the role ask for. */
  look(chosen = kept('look')) {
    const role = kept('device')?.role;
    const bright = role === 'assistant' && !matchMedia('(prefers-color-scheme: dark)').matches;
    document.documentElement.dataset.look = chosen ?? (bright ? 'sunlight' : 'neutral');
  }

  /** This tab is the active one: it shows what there is to do. */
  #begin() {
    this.#end();
    this.look();
    const invited = kept('invited');
    const device = kept('device');
    if (invited) {
      const pair = (name) => this.#pair(invited, name);
      const stay = device && (() => this.#stay());
      this.#show(new PairingPage(this.#texts, invited, device?.name, pair, stay, KIND));
    } else if (device) {
      this.#session = new Session(this, this.#texts, device, this.#tabs, KIND);
      this.#show(this.#session.page);
      this.#session.begin();
    } else {
      this.#show(new MessagePage(this.#texts.say('pair.none'), this.#texts.say('pair.none.how')));
    }
  }

  /** Another tab is the active one. */
  #rest() {
    this.#end();
    const {say} = this.#texts.spoken;
    this.#show(new MessagePage(say('tab.other'), say('tab.other.what'), say('tab.take'), () => this.#tabs.take()));
  }

  #end() {
    this.#session?.end();
    this.#session = null;
  }

  #show(page) {
    this.#page?.close?.();
    this.#page = page;
    byId('page').replaceChildren(...page.elements);
    page.begin?.();
  }

  /** Answers what was wrong, or null; then the page goes on. */
  async #pair(invited, name) {
    const {say} = this.#texts.spoken;
    try {
      const before = await pairedBefore(invited.role);
      if (before) {
        return this.#paired(before);
      }
      let {device, status, body} = await askToPair(invited.as[0], name);
      if (body.why === 'taken') {
        ({device, status, body} = await askToPair(invited.as[1], name));
      }
      if (status === 200) {
        const paired = {...device, name, role: body.role, job: body.job};
        queueOf(paired).paired(body.last);
        return this.#paired(paired);
      }
      if (status === 410 || status === 401) {
        forget('invited');
        return say(body.why === 'spent' ? 'pair.spent' : 'pair.old');
      }
      return body.what ? `${body.what} ${body.remedy ?? ''}` : say('pair.later');
    } catch (failure) {
      if (failure instanceof Unreachable) {
        return say('pair.unreachable');
      }
      throw failure;
    }
  }

  /** The invitation is not taken. */
  #stay() {
    forget('invited');
    this.#begin();
  }

  /** From now on this device works as this one. */
  #paired(device) {
    const others = kept('devices', []).filter((one) => one.job !== device.job);
    keep('devices', [device, ...others].slice(0, MOST_JOBS));
    keep('device', device);
    forget('invited');
    this.#begin();
    return null;
  }
}

/**
 * Who this device is to the computer already, if that is in this role. Before it gets another role, what
 * waits is sent.
 */
async function pairedBefore(role) {
  for (const device of kept('devices', [])) {
    const connection = new Connection(device);
    const queue = queueOf(device);
    for (;;) {
      const batch = device.role === role ? [] : queue.batch();
      const {status, body} = await connection.ask('POST', '/events', batch);
      if (status !== 200) {
        if (status === 403 && device.role === role) {
          return device; // a display may send nothing, but it is known
        }
        break;
      }
      queue.answered(body);
      if (batch.length === 0) {
        if (device.role === role) {
          return device;
        }
        break;
      }
    }
  }
  return null;
}

async function askToPair(device, name) {
  const asked = {device: device.device, name};
  const {status, body} = await new Connection(device).ask('POST', '/pair', asked);
  return {device, status, body};
}

new App().start().catch((failure) => {
  // Without a place to keep things, nothing that is done here would be safe.
  byId('page').textContent = NO_ROOM[usual(navigator.languages)];
  throw failure;
});
