/** Language, look, and what this device is to the computer. */

import {el} from './dom.js';
import {openDialog} from './questions.js';
import {kept} from './store.js';
import {LANGUAGES} from './texts.js';

export function openMore(session) {
  const {say} = session.texts.spoken;
  const language = choice(say('more.language'), LANGUAGES, session.texts.language, (word) => {
    dialog.close();
    session.speak(word);
  });
  const looks = {'': say('look.device'), neutral: say('look.neutral'), sunlight: say('look.sunlight')};
  const look = choice(say('more.look'), looks, kept('look') ?? '', (word) => session.look(word));
  const device = el('p.quiet', say('more.device', session.name, say('role.' + (session.kind === 'sets' ? 'sets.' : '') + session.role)));
  const dialog = openDialog(say('more.title'), say('close'), language, look, device);
}

/** A choice of one word out of some, {word: label}. */
function choice(title, words, chosen, change) {
  const set = el('fieldset.choice', el('legend', title));
  for (const [word, label] of Object.entries(words)) {
    const radio = el('input');
    radio.type = 'radio';
    radio.name = title;
    radio.checked = word === chosen;
    radio.addEventListener('change', () => change(word));
    set.append(el('label', radio, el('span', label)));
  }
  return set;
}
