/** The job as a page shows it: what the computer told, and on top of it what waits on this device. */

export const STATES = ['to-shoot', 'on-set', 'shot', 'signed-off', 'pickup', 'dropped'];
const AHEAD = 3;

/** The state after a message: a full one stands alone, another one holds what changed. */
export function merged(before, message) {
  if (message.full || !before) {
    return {...message, setups: message.setups ?? [], order: message.order ?? codes(message.setups)};
  }
  const order = message.order ?? before.order;
  const changed = new Map((message.setups ?? []).map((setup) => [setup.code, setup]));
  const listed = new Set(order);
  const setups = before.setups.map((setup) => taken(changed, setup.code) ?? setup);
  return {
    ...before,
    ...message,
    order,
    setups: [...setups, ...changed.values()].filter((setup) => listed.has(setup.code)),
  };
}

function taken(changed, code) {
  const found = changed.get(code);
  changed.delete(code);
  return found;
}

function codes(setups) {
  return (setups ?? []).map((setup) => setup.code);
}

/**
 * The state as it will be once the computer has what waits.
 *
 * @returns {state} with setups by code, in the list's order, each with `waits` where something of it waits
 */
export function shown(state, waiting) {
  const given = new Map(state.setups.map((setup) => [setup.code, setup]));
  const setups = new Map();
  for (const code of state.order ?? []) {
    if (given.has(code)) {
      setups.set(code, given.get(code));
    }
  }
  const next = {
    ...state,
    setups,
    onSet: state.onSet ?? null,
    client: state.client ?? null,
    comments: state.comments ?? [],
  };
  const back = new Set(waiting.filter((event) => event.do === 'take-back').map((event) => event.of));
  for (const event of waiting) {
    if (event.do === 'tick' && !back.has(event.number)) {
      ticked(next, event);
    } else if (event.do === 'comment') {
      next.comments = [...next.comments, {...event, own: true}];
    }
  }
  // What was kept and is taken back now: its comment goes at once, a tick with the computer's answer.
  next.comments = next.comments.filter((one) => !one.own || !back.has(one.number));
  return next;
}

function ticked(next, event) {
  const {setups} = next;
  const setup = setups.get(event.setup);
  if (event.state === 'on-set') {
    const before = next.onSet && setups.get(next.onSet.code);
    if (before && before.code !== event.setup && before.state === 'on-set') {
      setups.set(before.code, {...before, state: 'to-shoot'});
    }
    next.onSet = {code: event.setup, view: event.view ?? null, since: event.at};
  } else if (next.onSet?.code === event.setup) {
    next.onSet = null;
  }
  if (setup) {
    setups.set(event.setup, {
      ...setup,
      state: event.state,
      since: event.at,
      reason: event.reason ?? null,
      signedOffBy: event.state === 'signed-off' ? event.by : setup.signedOffBy,
      views: (setup.views ?? []).map((view) => ({
        ...view,
        before: event.state === 'on-set' && view.code === event.view,
      })),
      waits: event.waits || setup.waits,
    });
  }
  if (next.client?.code === event.setup && event.state === 'signed-off') {
    next.client = {...next.client, state: event.state, agreedBy: event.by, canAgree: false, waits: event.waits};
  }
}

/** The setups that come next, at most three: pickups after everything that was never shot. */
export function ahead(state) {
  const all = [...state.setups.values()];
  const from = all.findIndex((setup) => setup.code === state.onSet?.code) + 1;
  const turned = [...all.slice(from), ...all.slice(0, from)];
  return ['to-shoot', 'pickup']
    .flatMap((word) => turned.filter((setup) => setup.state === word))
    .slice(0, AHEAD);
}

/** The view that comes before the camera first. */
export function firstView(setup) {
  return setup.views?.find((view) => view.code)?.code;
}

/** The views that are wanted and have no frame, of a setup that was worked on. */
export function missing(setup) {
  if (!['shot', 'signed-off', 'pickup'].includes(setup.state)) {
    return [];
  }
  return (setup.views ?? []).filter((view) => view.code && view.wanted !== 0 && view.frames === 0);
}

/** Whether a view has the frames that are wanted of it. */
export function complete(view) {
  return view.frames >= (view.wanted ?? 1);
}

/** How many setups there are of each state. */
export function counts(state) {
  const counted = Object.fromEntries(STATES.map((word) => [word, 0]));
  state.setups.forEach((setup) => counted[setup.state]++);
  return counted;
}

/** The setups that a scanned code finds, by the codes that the computer told: for when it cannot be asked. */
export function bearing(state, scanned) {
  const text = scanned.trim().toUpperCase();
  const product = /^\d{8,14}$/.test(text) ? text.padStart(14, '0') : text;
  return [...state.setups.values()]
    .filter((setup) => setup.codes?.some((code) => code === text || code === product))
    .map((setup) => setup.code);
}
