/** What was said of a setup or of one of its pictures. */

import {button, el, Rows, shows, theirs, words} from './dom.js';

/** A list of comments that follows the state. Own ones can be taken back. */
export function commentsOf(session, picked = () => {}) {
  const {texts} = session;
  const element = el('ul.comments');
  element.setAttribute('aria-label', texts.say('comments'));
  const rows = new Rows(element, () => row(session, texts, picked));
  return {
    element,
    show(state, comments) {
      const pictures = new Set([
        ...(state.client?.pictures ?? []).map((one) => one.token),
        ...[...state.setups.values()].flatMap((setup) => setup.pictures ?? []),
      ]);
      rows.show(
        comments.map((one) => ({...one, picture: pictures.has(one.picture) ? one.picture : null})),
        (one) => `${one.at} ${one.by} ${one.text}`,
      );
      shows(element, comments.length > 0);
    },
  };
}

function row(session, texts, picked) {
  const text = el('p.comment-text');
  const who = el('p.comment-who.quiet');
  const img = el('img.comment-picture');
  img.alt = '';
  const back = button('.slight', texts.say('comment.takeBack'), () => session.takeBack([{number: value.number}]));
  const show = button('.comment-show', '', () => picked(value.picture));
  show.append(img);
  show.setAttribute('aria-label', texts.say('comment.show'));
  const element = el('li.comment', show, el('div.comment-words', text, who), back);
  let value = null;
  return {
    element,
    show(one) {
      value = one;
      theirs(text, one.text);
      const said = texts.say('comment.by', one.by, texts.time(one.at));
      words(who, one.waits ? texts.say('row.waits', said) : said);
      session.pictures.show(img, one.picture, 320);
      shows(show, one.picture);
      shows(back, one.own && one.number !== undefined);
    },
  };
}

/** Asks for a comment, in place: {element, open(setup, picture)}. */
export function commentForm(session, by) {
  const {texts} = session;
  const field = el('textarea');
  field.id = 'comment';
  field.rows = 2;
  field.maxLength = 500;
  field.dir = 'auto';
  const label = el('label');
  label.htmlFor = field.id;
  const send = el('button.does-it.act', texts.say('comment.do'));
  const element = el('form.comment-form', label, field, send);
  let about = {};
  element.addEventListener('submit', (event) => {
    event.preventDefault();
    const text = field.value.trim();
    const {setup, picture} = about;
    if (text && session.does({do: 'comment', setup, picture: picture ?? undefined, text, by: by()})) {
      field.value = '';
      session.say(texts.say('comment.said'));
      about.done?.();
    }
  });
  return {
    element,
    /** What the next comment is of. */
    of(setup, picture, title, done) {
      about = {setup, picture, done};
      words(label, title);
    },
    focus: () => field.focus(),
    hasWords: () => field.value.trim() !== '',
  };
}
