/** Shapes drawn by the page: the same marks of states as in the app, and what the connection is. */

const SVG = 'http://www.w3.org/2000/svg';

/**
 * Drawn as with tape on the floor or with a pencil on a list: a T of tape to stand on, somebody on it,
 * a stroke, the stroke twice underlined, the caret of a proofreader, and the loop of what goes.
 */
const STATES = {
  'to-shoot': 'M4 6H20M12 6V20',
  'on-set': 'M8 6A4 4 0 1 0 16 6A4 4 0 1 0 8 6ZM3 15H21M12 15V23',
  shot: 'M6 21L18 3',
  'signed-off': 'M8 14L16 2M4 18H20M4 22H20',
  pickup: 'M5 19L12 6L19 19',
  dropped: 'M2 14H15C21 14 21 5 16 5C12 5 12 11 14 15L17 21',
};

const RING = 'M3 12A9 9 0 1 0 21 12A9 9 0 1 0 3 12Z';

/** A disk; a clock; a ring that is struck through. */
const LINES = {
  connected: 'M5 12A7 7 0 1 0 19 12A7 7 0 1 0 5 12Z',
  waiting: `${RING}M12 6V12L16 15`,
  lost: `${RING}M6 18L18 6`,
};

/** What a set needs a person for: a full square with a gap, and so on; each is told by its outline alone. */
const NEEDS = {
  urgent: 'M3 3H21V21H3ZM8 12H16',
  'sign-off': LINES.waiting,
  pickup: STATES.pickup,
  late: 'M3 12H15M10 6L16 12L10 18M20 4V20',
  trouble: 'M12 3L22 12L12 21L2 12Z',
  silent: LINES.lost,
  nothing: 'M4 12H20',
};

function drawn(kind, path) {
  const picture = document.createElementNS(SVG, 'svg');
  picture.setAttribute('viewBox', '0 0 24 24');
  picture.setAttribute('class', kind);
  picture.setAttribute('aria-hidden', 'true');
  const line = document.createElementNS(SVG, 'path');
  line.setAttribute('d', path);
  picture.append(line);
  return picture;
}

/** A mark of no state yet; {@link showState} gives it one. Its word stands beside it. */
export function stateMark() {
  return drawn('mark', '');
}

export function showState(mark, state) {
  show(mark, state, STATES);
}

export function lineMark() {
  return drawn('mark line', '');
}

export function showLine(mark, line) {
  show(mark, line, LINES);
}

export function needMark() {
  return drawn('mark need', '');
}

export function showNeed(mark, need) {
  show(mark, need, NEEDS);
}

function show(mark, word, paths) {
  if (mark.dataset.is !== word) {
    mark.dataset.is = word;
    mark.firstChild.setAttribute('d', paths[word] ?? '');
  }
}

const HEIGHTS = {'on-set': 1, 'signed-off': 0.7, shot: 0.45, pickup: 0.45, 'to-shoot': 0.15, dropped: 0};

/** The whole list as a ruler: a tick a setup, by its height how far it is; what is dropped is a gap. */
export class Ruler {
  element = document.createElementNS(SVG, 'svg');
  #paths = new Map();

  constructor() {
    this.element.setAttribute('class', 'ruler');
    this.element.setAttribute('preserveAspectRatio', 'none');
    this.element.setAttribute('role', 'img');
    for (const state of Object.keys(HEIGHTS)) {
      const path = document.createElementNS(SVG, 'path');
      path.setAttribute('class', state);
      this.#paths.set(state, path);
      this.element.append(path);
    }
  }

  show(states, spoken) {
    this.element.setAttribute('viewBox', `0 0 ${Math.max(1, states.length) * 10} 100`);
    this.element.setAttribute('aria-label', spoken);
    const width = states.length > 150 ? 10 : 8;
    for (const [state, path] of this.#paths) {
      const top = 100 - HEIGHTS[state] * 100;
      path.setAttribute(
        'd',
        states.map((one, i) => (one === state && top < 100 ? `M${i * 10} 100V${top}h${width}V100Z` : '')).join(''),
      );
    }
  }
}

/** One peg for each frame that is wanted, full once it is there; past sixteen, one for several. */
export class Pegs {
  element = document.createElement('span');

  constructor() {
    this.element.className = 'pegs';
    this.element.setAttribute('aria-hidden', 'true');
  }

  show(frames, wanted) {
    const pegs = Math.min(wanted ?? 0, 16);
    this.element.hidden = pegs === 0;
    while (this.element.childElementCount > pegs) {
      this.element.lastChild.remove();
    }
    while (this.element.childElementCount < pegs) {
      this.element.append(document.createElement('i'));
    }
    Array.from(this.element.children).forEach((peg, i) =>
      peg.classList.toggle('full', frames * pegs >= (i + 1) * wanted),
    );
  }
}
