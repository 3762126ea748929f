/**
 * Tells a barcode scanner from a person: it is a keyboard that types fast and evenly, and ends with
 * Enter or Tab. What it typed into a field by accident is taken out again. The limits are those of the app.
 */

const LIMITS = [45, 80, 200];
const EVEN = 35;
const SHORTEST = 4;
const END = 100;

/** The rule alone, without a page: keys with their times in milliseconds. */
export class ScanWatch {
  #text = '';
  #gaps = [];
  #last = 0;
  #ended = -END - 1;

  /** Whether the next keys may belong to a scan that has begun. */
  get begun() {
    return this.#text.length > 1 && this.#isFast();
  }

  /** A key that writes. Answers whether it is the first one of what may be a scan. */
  writes(sign, now) {
    const limit = LIMITS[Math.min(this.#text.length, LIMITS.length) - 1];
    const first = this.#text === '' || now - this.#last > limit;
    if (first) {
      this.#text = '';
      this.#gaps = [];
    } else {
      this.#gaps.push(now - this.#last);
    }
    this.#text += sign;
    this.#last = now;
    return first;
  }

  /** Enter or Tab. Answers the scan, '' where it ends one once more, null where a person pressed it. */
  ends(now) {
    if (this.#text === '' && now - this.#ended <= END) {
      return '';
    }
    const text = this.#text;
    const limit = LIMITS[Math.min(Math.max(1, text.length), LIMITS.length) - 1];
    const whole = text.length >= SHORTEST && this.#isFast() && now - this.#last <= limit;
    this.clear();
    if (!whole) {
      return null;
    }
    this.#ended = now;
    return text;
  }

  /** Another key: it was a person. */
  clear() {
    this.#text = '';
    this.#gaps = [];
  }

  #isFast() {
    const sorted = [...this.#gaps].sort((a, b) => a - b);
    return sorted.length > 0 && sorted[Math.floor(sorted.length / 2)] <= EVEN;
  }
}

/** Listens to all keys of the page before anything else does. */
export class Scanner {
  #watch = new ScanWatch();
  #before = null;
  #scanned;
  #listening = new AbortController();

  /** @param scanned hears what was scanned */
  constructor(scanned) {
    this.#scanned = scanned;
    const {signal} = this.#listening;
    addEventListener('keydown', (event) => this.#key(event), {capture: true, signal});
    addEventListener('blur', () => this.#watch.clear(), {signal});
  }

  end() {
    this.#listening.abort();
  }

  #key(event) {
    if (event.isComposing || event.repeat || event.ctrlKey || event.metaKey || event.altKey) {
      this.#watch.clear();
    } else if (event.key === 'Enter' || event.key === 'Tab') {
      this.#end(event);
    } else if (Array.from(event.key).length === 1) {
      if (this.#watch.writes(event.key, event.timeStamp)) {
        this.#before = remembered(event.target);
      } else if (event.key === ' ' && this.#watch.begun && this.#before === null) {
        event.preventDefault(); // it would press the button that has the focus
      }
    } else if (event.key !== 'Shift') {
      this.#watch.clear();
    }
  }

  #end(event) {
    const scan = this.#watch.ends(event.timeStamp);
    if (scan === null) {
      return;
    }
    event.preventDefault();
    event.stopImmediatePropagation();
    if (scan) {
      this.#before?.();
      this.#before = null;
      this.#scanned(scan);
    }
  }
}

/** What puts a field back as it is now; null where the focus is in no field. */
function remembered(field) {
  if (!(field instanceof HTMLInputElement || field instanceof HTMLTextAreaElement)) {
    return null;
  }
  const {value, selectionStart, selectionEnd} = field;
  return () => {
    field.value = value;
    field.setSelectionRange(selectionStart, selectionEnd);
    field.dispatchEvent(new Event('input', {bubbles: true}));
  };
}

/** Whether this browser reads codes by the camera: only where the connection is secure. */
export function camera() {
  return isSecureContext && 'BarcodeDetector' in window && Boolean(navigator.mediaDevices?.getUserMedia);
}

/**
 * Reads one code by the camera.
 *
 * @param video shows what the camera sees
 * @param signal ends it
 * @returns what was read, or null where it was ended
 */
export async function readByCamera(video, signal) {
  const stream = await navigator.mediaDevices.getUserMedia({video: {facingMode: 'environment'}});
  try {
    video.srcObject = stream;
    await video.play();
    const detector = new window.BarcodeDetector();
    while (!signal.aborted) {
      const [found] = await detector.detect(video);
      if (found) {
        return found.rawValue;
      }
      await new Promise((next) => setTimeout(next, 120));
    }
    return null;
  } finally {
    stream.getTracks().forEach((track) => track.stop());
    video.srcObject = null;
  }
}
