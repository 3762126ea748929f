/** One question at a time, over the page. */

import {button, el, theirs} from './dom.js';

/** A dialog with a title and a way out; it goes away when it is closed. */
export function openDialog(title, away, ...children) {
  const heading = theirs(el('h2'), title);
  const close = button('.slight.close', away, () => dialog.close());
  const dialog = el('dialog.paper', el('header.dialog-head', heading, close), ...children);
  heading.id = 'dialog-title';
  dialog.setAttribute('aria-labelledby', heading.id);
  dialog.addEventListener('close', () => dialog.remove());
  dialog.addEventListener('click', (event) => {
    const {left, right, top, bottom} = dialog.getBoundingClientRect();
    const {clientX: x, clientY: y} = event;
    // A key that presses a button has no place.
    if (event.target === dialog && (x < left || x > right || y < top || y > bottom)) {
      dialog.close();
    }
  });
  document.body.append(dialog);
  dialog.showModal();
  return dialog;
}

/** Closes what is open. */
export function closeDialogs() {
  document.querySelectorAll('dialog[open]').forEach((dialog) => dialog.close());
}

/**
 * Asks for a text and does something with it.
 *
 * @param asked {title, label, act, away, needed, value}
 * @param done gets the text
 */
export function askText(asked, done) {
  const field = el('input');
  field.id = 'asked';
  field.maxLength = 200;
  field.dir = 'auto';
  field.required = asked.needed ?? false;
  field.value = asked.value ?? '';
  field.autocomplete = 'off';
  const label = el('label', asked.label);
  label.htmlFor = field.id;
  const form = el('form', label, field, el('button.does-it.act', asked.act));
  const dialog = openDialog(asked.title, asked.away, form);
  dialog.classList.add('question');
  form.addEventListener('submit', (event) => {
    event.preventDefault();
    dialog.close();
    done(field.value.trim());
  });
  field.focus();
}

/** Says something large, and offers what can be done: [{words, act}]. */
export function tell(title, what, away, ...acts) {
  const buttons = acts.map((one) =>
    button('.act.does-it', one.words, () => {
      dialog.close();
      one.act();
    }),
  );
  const text = theirs(el('p'), what);
  const dialog = openDialog(title, away, text, ...buttons);
  dialog.classList.add('told');
  return dialog;
}
