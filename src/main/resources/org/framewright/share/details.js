/** All that is known of a setup, with what can be done with it. */

import {commentForm, commentsOf} from './comments.js';
import {button, el, Rows, shows, theirs, words} from './dom.js';
import {Pegs, showState, stateMark} from './marks.js';
import {openDialog} from './questions.js';

/**
 * @param page ticks: onSet(code), tick(code, state), askPickup(code), askDrop(code)
 * @param state gives the state of now
 */
export function openDetails(session, page, state, code) {
  const {texts} = session;
  const {say} = texts.spoken;
  const mark = stateMark();
  const standing = el('p.details-state', mark, el('span'));
  const reason = el('p.details-reason');
  const views = el('p.details-views');
  const pegs = new Pegs();
  const columns = el('dl.details-columns');
  const strip = el('div.strip');
  const large = el('img.large');
  const comments = commentsOf(session, (token) => look(token));
  const form = commentForm(session, () => session.name);
  let looked = null;

  const close = (act) => () => {
    dialog.close();
    act();
  };
  const onSet = button('.act', say('act.putOnSet'), close(() => page.onSet(code)));
  const shot = button('.act', say('act.shot'), close(() => page.tick(code, 'shot')));
  const pickup = button('.act', say('act.pickup'), close(() => page.askPickup(code)));
  const drop = button('.act', say('act.drop'), close(() => page.askDrop(code)));
  const again = button('.act', say('act.toShoot'), close(() => page.tick(code, 'to-shoot')));
  const acts = el('div.details-acts', onSet, shot, pickup, drop, again);

  const prints = new Rows(strip, (token) => {
    const img = el('img');
    const element = button('.print', '', () => look(token));
    element.append(img);
    img.alt = '';
    return {
      element,
      show({place}) {
        element.setAttribute('aria-label', place === 0 ? say('picture.newest') : say('picture.before', place));
        session.pictures.show(img, token, 320);
      },
    };
  });

  function look(token) {
    looked = looked === token ? null : token;
    show();
  }

  function show() {
    const now = state();
    const setup = now.setups.get(code);
    if (!setup) {
      dialog.close();
      return;
    }
    showState(mark, setup.state);
    const word = say('state.' + setup.state);
    const by = setup.state === 'signed-off' && setup.signedOffBy ? say('agreedBy', setup.signedOffBy) : word;
    const since = setup.since ? `${by} · ${texts.time(setup.since)}` : by;
    theirs(standing.lastChild, setup.waits ? say('row.waits', since) : since);
    theirs(shows(reason, setup.reason), setup.reason ?? '');
    const told = (setup.views ?? [])
      .filter((view) => view.code || view.frames > 0)
      .map((view) => {
        const key = view.wanted ? 'view.told.of' : 'view.told';
        return say(key, view.label || view.code || say('view.none'), view.frames, view.wanted ?? 0);
      });
    words(views, [texts.frames(setup.frames, setup.wanted), ...told].join(' · '));
    pegs.show(setup.frames, setup.wanted);
    const entries = Object.entries(setup.columns ?? {}).filter(([, value]) => value);
    columns.replaceChildren(...entries.flatMap(([name, value]) => [theirs(el('dt'), name), theirs(el('dd'), value)]));
    shows(columns, entries.length > 0);
    const tokens = setup.pictures ?? [];
    looked = tokens.includes(looked) ? looked : null;
    prints.show(tokens.map((token, place) => ({token, place})), (one) => one.token);
    tokens.forEach((token) => prints.of(token).element.setAttribute('aria-pressed', token === looked));
    shows(strip, tokens.length > 0);
    session.pictures.show(large, looked, 1600);
    large.alt = looked ? say('picture.of', code, setup.title) : '';
    const said = now.comments.filter((one) => one.setup === code);
    comments.show(now, said);
    form.of(code, looked, looked ? say('comment.picture') : say('comment.setup', code));
    shows(onSet, setup.state !== 'on-set');
    shows(shot, setup.state !== 'shot');
    shows(drop, setup.state !== 'dropped');
    shows(again, setup.state !== 'to-shoot');
  }

  const title = say('details.title', code, state().setups.get(code)?.title ?? '');
  const frames = el('div.details-frames', views, pegs.element);
  const said = [comments.element, form.element];
  const dialog = openDialog(title, say('close'), standing, reason, frames, acts, strip, large, ...said, columns);
  dialog.classList.add('details');
  dialog.addEventListener('close', () => (page.redraw = null));
  page.redraw = show;
  show();
}
