/** All sets as a page shows them: what the computer told, and which of them a person looks for. */

/** The state after a message: a full one stands alone, another one holds what changed. */
export function merged(before, message) {
  const had = message.full || !before ? [] : before.sets;
  const order = message.order ?? before?.order ?? [];
  const byId = new Map([...had, ...(message.sets ?? [])].map((set) => [set.id, set]));
  return {...message, order, sets: order.filter((id) => byId.has(id)).map((id) => byId.get(id))};
}

/** The sets that have every word that was typed, in their name, what is on set there, or what they need. */
export function found(sets, typed) {
  const wanted = typed.toLowerCase().split(/\s+/).filter(Boolean);
  return sets.filter((set) => {
    const text = [
      set.name,
      set.onSet?.code,
      set.onSet?.title,
      ...(set.waiting ?? []),
      ...(set.urgent ?? []),
      ...(set.troubles ?? []),
    ]
      .join(' ')
      .toLowerCase();
    return wanted.every((word) => text.includes(word));
  });
}

/** How many sets need a person. */
export function needing(sets) {
  return sets.filter((set) => set.need !== 'nothing').length;
}
