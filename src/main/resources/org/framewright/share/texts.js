/** What the page says, in the person's language, and how numbers and times are written there. */

export const LANGUAGES = {en: 'English', de: 'Deutsch', fr: 'Français'};
const RIGHT_TO_LEFT = /[\u0590-\u08ff\ufb1d-\ufdff\ufe70-\ufefc]/;

/** The language to begin with: the first one of the browser's that there is. */
export function usual(wanted) {
  return wanted.map((tag) => tag.slice(0, 2).toLowerCase()).find((tag) => tag in LANGUAGES) ?? 'en';
}

export class Texts {
  #texts;
  #plural;
  #number;
  #time;
  #day;
  #weekday;
  #language;

  constructor(language, texts, zone = undefined) {
    this.#language = language;
    this.#texts = texts;
    this.#plural = new Intl.PluralRules(language);
    this.#number = new Intl.NumberFormat(language);
    this.#time = new Intl.DateTimeFormat(language, {
      hour: '2-digit',
      minute: '2-digit',
      hourCycle: 'h23',
      timeZone: zone,
    });
    this.#day = new Intl.DateTimeFormat(language, {dateStyle: 'short', timeZone: zone});
    this.#weekday = new Intl.DateTimeFormat(language, {weekday: 'short', timeZone: zone});
  }

  static async of(language) {
    const response = await fetch(`/texts-${language}.json`);
    return new Texts(language, await response.json());
  }

  get language() {
    return this.#language;
  }

  /** A text with its values; where it has plurals, the first value is the number that decides. */
  say(key, ...values) {
    const found = this.#texts[key] ?? key;
    const pattern =
      typeof found === 'string' ? found : (found[this.#plural.select(values[0])] ?? found.other);
    return pattern.replace(/\{(\d)\}/g, (_, i) => this.#written(values[i]));
  }

  #written(value) {
    if (typeof value === 'number') {
      return this.#number.format(value);
    }
    // So that the words of another direction do not turn the sentence around.
    return RIGHT_TO_LEFT.test(value) ? `\u2068${value}\u2069` : value;
  }

  /** {@link #say} alone. */
  get spoken() {
    return {say: (...asked) => this.say(...asked)};
  }

  number(value) {
    return this.#number.format(value);
  }

  /** The time of day of an instant in milliseconds. */
  time(millis) {
    return this.#time.format(millis);
  }

  /** The time of day, with the day of the week where it is another day. */
  moment(millis, now) {
    const isToday = this.#day.format(millis) === this.#day.format(now);
    return isToday ? this.time(millis) : `${this.#weekday.format(millis)} ${this.time(millis)}`;
  }

  /** A duration in milliseconds: 4 min, 1 h 20 min. */
  duration(millis) {
    const minutes = Math.max(0, Math.round(millis / 60_000));
    const hours = Math.floor(minutes / 60);
    return hours === 0
      ? this.say('time.minutes', minutes)
      : minutes % 60 === 0
        ? this.say('time.hours', hours)
        : this.say('time.both', hours, minutes % 60);
  }

  /** Frames counted, of those wanted where the list says how many. */
  frames(count, wanted) {
    return wanted ? this.say('frames.of', count, wanted) : this.say('frames', count);
  }

  /** What a person did, in words: "014: shot". */
  event(event) {
    switch (event.do) {
      case 'comment':
        return this.say('told.comment', event.setup, event.text);
      case 'take-back':
        return this.say('told.takeBack');
      default:
        return this.say('told.tick', event.setup, this.say('state.' + event.state));
    }
  }

  /** Several names in one. */
  list(names) {
    return new Intl.ListFormat(this.#language, {type: 'conjunction'}).format(names);
  }
}
