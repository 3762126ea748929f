/** The head of a page: the job, how the line to the computer is, and what a person has to read. */

import {button, el, Rows, shows, theirs, words} from './dom.js';
import {lineMark, showLine} from './marks.js';
import {openMore} from './more.js';

export class HeadLine {
  element;
  notices;
  #session;
  #job;
  #mark = lineMark();
  #words = el('span.line-words');
  #status = el('p.status');
  #rows;

  constructor(session) {
    this.#session = session;
    const {say} = session.texts.spoken;
    // The other pages have a heading of their own.
    const isHeading = session.kind === 'job' && session.role === 'assistant';
    this.#job = theirs(el(isHeading ? 'h1.job' : 'p.job'), session.job);
    this.#status.setAttribute('role', 'status');
    this.#status.append(this.#mark, this.#words);
    const more = button('.slight.more', say('more'), () => openMore(session));
    this.element = el('header.head', this.#job, this.#status);
    if (session.role !== 'viewer') {
      this.element.append(more);
    }
    this.notices = el('div.notices');
    this.#rows = new Rows(this.notices, () => notice());
  }

  /**
   * @param line {connected, since, unpaired, trouble}
   * @param waiting how many ticks wait
   */
  show(line, waiting, state) {
    const {say, time} = this.#said();
    const waits = waiting > 0 ? say('line.waiting', waiting) : '';
    const lost = line.unpaired
      ? say('line.unpaired')
      : line.since
        ? say('line.lost', time(line.since))
        : say('line.connecting');
    const told = line.connected ? waits || say('line.connected') : [lost, waits].filter(Boolean).join(' · ');
    words(this.#words, told);
    const gone = line.unpaired || line.since;
    const word = gone ? 'lost' : line.connected && waiting === 0 ? 'connected' : 'waiting';
    showLine(this.#mark, word);
    this.#status.dataset.is = word;
    this.#rows.show(this.#notices(line, waiting, state), (one) => one.key);
    shows(this.notices, this.notices.childElementCount > 0);
  }

  #said() {
    const {texts} = this.#session;
    return {say: (...asked) => texts.say(...asked), time: (millis) => texts.time(millis)};
  }

  #notices(line, waiting, state) {
    const session = this.#session;
    const {say} = this.#said();
    const found = [];
    if (line.unpaired) {
      const how = waiting > 0 ? say('unpaired.waiting', waiting) : say('unpaired.how');
      found.push({key: 'unpaired', what: say('unpaired.what'), how, acts: []});
    }
    const {clash} = session.queue;
    if (clash) {
      const acts = [
        {words: say('clash.anew'), act: () => session.settle(true)},
        {words: say('clash.drop'), act: () => session.settle(false)},
      ];
      const what = say('clash.what', session.texts.event(clash));
      found.push({key: 'clash' + clash.at, what, how: say('clash.how'), acts});
    }
    for (const refusal of session.queue.refused) {
      const acts = [{words: say('refused.dismiss'), act: () => session.dismiss(refusal)}];
      found.push({
        key: 'refused' + refusal.event.at,
        what: say('refused.what', session.texts.event(refusal.event)),
        how: [refusal.what, refusal.remedy].filter(Boolean).join(' '),
        acts,
      });
    }
    if (state?.lost === 'store') {
      const what = say('store.lost', session.texts.time(state.lostSince));
      found.push({key: 'lost', what, how: say('store.lost.how'), acts: []});
    } else if (state?.lost) {
      found.push({key: 'lost', what: say('job.lost'), how: say('job.lost.how'), acts: []});
    }
    if (line.trouble) {
      found.push({key: 'trouble', what: line.trouble, how: '', acts: []});
    }
    for (const {job, queue} of session.others) {
      const what = say('others.what', queue.waiting.length, job);
      found.push({key: 'other' + job, what, how: say('others.how'), acts: []});
    }
    return found;
  }
}

/** One thing to read, with what can be done about it. */
function notice() {
  const what = el('p.notice-what');
  const how = el('p.notice-how');
  const acts = el('div.notice-acts');
  const element = el('section.notice', what, how, acts);
  element.setAttribute('role', 'alert');
  let now = null;
  const buttons = new Rows(acts, (label) => {
    const act = () => now.acts.find((one) => one.words === label).act();
    return {element: button('.act', label, act), show: () => {}};
  });
  return {
    element,
    show(value) {
      now = value;
      theirs(what, value.what);
      theirs(shows(how, value.how), value.how);
      buttons.show(value.acts, (one) => one.words);
    },
  };
}
