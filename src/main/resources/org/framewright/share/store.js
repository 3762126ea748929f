/** What this device keeps, as JSON in localStorage: it is there on plain HTTP, and written at once. */

const PREFIX = 'framewright.';

/** What is kept under a name, else what is given. */
export function kept(name, otherwise = null) {
  const text = localStorage.getItem(PREFIX + name);
  if (text === null) {
    return otherwise;
  }
  try {
    return JSON.parse(text);
  } catch {
    return otherwise; // somebody else wrote it
  }
}

/** Keeps a value; throws where the device has no room or no leave for it. */
export function keep(name, value) {
  localStorage.setItem(PREFIX + name, JSON.stringify(value));
}

export function forget(name) {
  localStorage.removeItem(PREFIX + name);
}

/** The rest of the names that begin so. */
export function names(beginning) {
  return Array.from({length: localStorage.length}, (_, i) => localStorage.key(i))
    .filter((key) => key.startsWith(PREFIX + beginning))
    .map((key) => key.slice((PREFIX + beginning).length));
}

/** Whether a change of the storage by another tab is of that name. */
export function isOf(event, name) {
  return event.key === PREFIX + name;
}
