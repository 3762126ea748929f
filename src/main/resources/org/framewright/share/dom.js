/** Elements made and kept up to date. Other people's words only ever become text, never markup. */

/** An element with classes, as in `el('p.quiet', 'words')`, and children: texts or elements. */
export function el(name, ...children) {
  const [tag, ...classes] = name.split('.');
  const element = document.createElement(tag);
  if (classes.length > 0) {
    element.className = classes.join(' ');
  }
  element.append(...children);
  return element;
}

/** The element of the page with that id. */
export function byId(id) {
  return document.getElementById(id);
}

/** A button that says what it does. */
export function button(name, words, act) {
  const made = el('button' + name, words);
  made.type = 'button';
  made.addEventListener('click', act);
  return made;
}

/** Sets a text only where it changed: a screen reader says it once, a selection stays. */
export function words(element, text) {
  if (element.textContent !== text) {
    element.textContent = text;
  }
  return element;
}

/** Other people's words, which may run in another direction than the page. */
export function theirs(element, text) {
  element.dir = 'auto';
  return words(element, text);
}

export function shows(element, there) {
  element.hidden = !there;
  return element;
}

/** The elements of a list by key: updated where they stand, never drawn anew, so that a tap is not lost. */
export class Rows {
  #parent;
  #make;
  #rows = new Map();

  /** @param make makes {element, show(value)} of a key */
  constructor(parent, make) {
    this.#parent = parent;
    this.#make = make;
  }

  /** Shows these values, in this order. */
  show(values, keyOf) {
    const wanted = new Map(values.map((value) => [keyOf(value), value]));
    for (const [key, row] of this.#rows) {
      if (!wanted.has(key)) {
        row.element.remove();
        this.#rows.delete(key);
      }
    }
    let after = null;
    for (const [key, value] of wanted) {
      let row = this.#rows.get(key);
      if (!row) {
        row = this.#make(key);
        this.#rows.set(key, row);
      }
      const place = after ? after.nextSibling : this.#parent.firstChild;
      if (place !== row.element) {
        this.#parent.insertBefore(row.element, place);
      }
      after = row.element;
      if (row.value !== value) {
        row.value = value;
        row.show(value);
      }
    }
  }

  /** Does something with each row, in no order. */
  each(act) {
    this.#rows.forEach(act);
  }

  /** The row of a key, or undefined. */
  of(key) {
    return this.#rows.get(key);
  }
}
