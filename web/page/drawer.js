// What the page keeps in the browser: texts by name in IndexedDB, which tab has which of them, and a word between tabs.
// What fails is told by the name of its error; nothing throws.

const ALL = 'drafts';
const TAB = 'slotwright-tab';
const PATIENCE = 1500;
/** Steps of a unit are kept beside it, by its name behind this letter: so many of them. */
const STEPS = 'h';
const STEPS_MOST = 200;
/** What was found of them, by the names of their units. */
const found = {};
/** Steps as texts, the numbers of the first and of the present one, and of the one with which the last visitor came. */
let steps = [];
let first = 0;
let at = 0;
let visitor = 0;
let base;
let free;
let channel;

// A store that could not be opened is tried again the next time.
const open = () => base ??= new Promise((good, bad) => {
  const asked = indexedDB.open('slotwright', 1);
  asked.onupgradeneeded = () => asked.result.createObjectStore(ALL);
  asked.onsuccess = () => {
    const store = asked.result;
    store.onversionchange = close;
    store.onclose = () => base = undefined;
    good(store);
  };
  asked.onerror = () => bad(asked.error);
  // A browser may never answer.
  setTimeout(bad, PATIENCE, {});
}).catch((error) => {
  base = undefined;
  throw error;
});

const close = () => {
  base?.then((store) => store.close(), () => {});
  base = undefined;
};

/** One transaction, which `goesOn` if it asks for more once something is answered; its result once all of it is written. */
const transact = async (mode, act, goesOn) => {
  try {
    const store = await open();
    return await new Promise((good, bad) => {
      const work = store.transaction(ALL, mode, { durability: 'relaxed' });
      const result = act(work.objectStore(ALL));
      work.oncomplete = () => good(result);
      work.onabort = () => bad(work.error);
      // A page that is being left hears of nothing any more.
      goesOn || work.commit?.();
    });
  } catch (error) {
    return `${error?.name}`;
  }
};

/** Whether there is any, for what paints the page before this can be read: watch.js. Told once: a write waits for the disk. */
let hinted;
const hint = (is) => {
  if (is === hinted) return;
  hinted = is;
  try {
    is ? localStorage.setItem('slotwright-desk-kept', 1) : localStorage.removeItem('slotwright-desk-kept');
  } catch {
    // The first drawing is shown, whatever unit comes.
  }
};

/** Name, text and whether another tab has it, of each: one list. */
export const read = async () => {
  const asked = await transact('readonly', (all) => [all.getAllKeys(), all.getAll()]);
  if (typeof asked === 'string') return asked;
  const held = await navigator.locks?.query().catch(() => {});
  const [keys, texts] = asked.map(({ result }) => result);
  const isHeld = (key) => held?.held.some(({ name }) => name === key);
  const units = keys.flatMap((key, at) => {
    if (key[0] !== STEPS) return [key, texts[at], isHeld(key) ? '1' : ''];
    found[key.slice(1)] = texts[at];
    return [];
  });
  hint(units.length > 0);
  // Steps of a unit that is gone go as well.
  const left = keys.filter((key) => key[0] === STEPS && !keys.includes(key.slice(1)) && !isHeld(key.slice(1)));
  if (left.length) transact('readwrite', (all) => left.forEach((key) => all.delete(key)));
  return units;
};

/** Writes texts by their names, all or none; an empty text goes. Tells nothing if that was done. */
export const write = (pairs) => transact('readwrite', (all) => {
  if (pairs.some((text, at) => at % 2 === 1 && text)) hint(true);
  for (let at = 0; at < pairs.length; at += 2) {
    if (pairs[at + 1]) all.put(pairs[at + 1], pairs[at]);
    else for (const key of [pairs[at], STEPS + pairs[at]]) all.delete(key);
  }
  return '';
});

/** Deletes texts by their names, if no tab has them and they are still the same. */
export const drop = (pairs) => {
  for (let at = 0; at < pairs.length; at += 2) {
    navigator.locks?.request(pairs[at], { ifAvailable: true }, (lock) => lock && transact('readwrite', (all) => {
      const asked = all.get(pairs[at]);
      asked.onsuccess = () => asked.result === pairs[at + 1] && all.delete(pairs[at]);
    }, true)).catch(() => {});
  }
};

/** Keeps the steps of a unit. Those before a visitor came are kept no more, and those after it no more once it is taken back. */
const keepSteps = (unit) => {
  const [from, to] = at < visitor ? [first, visitor] : [Math.max(first, visitor), first + steps.length];
  const own = steps.slice(from - first, to - first);
  if (own.length > 1) transact('readwrite', (all) => { all.put(JSON.stringify([from, at, ...own]), STEPS + unit); });
};

/** Nothing was done yet. */
export const beginSteps = (text) => {
  steps = [text];
  first = at = visitor = 0;
};

/** A step: what was undone is done again no longer. */
export const step = (unit, number, text, isVisitor) => {
  steps.splice(number - first, Infinity, text);
  at = number;
  if (isVisitor) visitor = number;
  const more = Math.max(0, steps.length - STEPS_MOST);
  steps.splice(0, more);
  first += more;
  keepSteps(unit);
};

/** The person went to the step of that number. */
export const goTo = (unit, number) => {
  at = number;
  keepSteps(unit);
};

/** Steps before that one are forgotten. */
export const forgetSteps = (number) => {
  steps.splice(0, Math.max(0, number - first));
  first = Math.max(first, number);
};

/** The steps that were found with a unit: the numbers of the first and of the present one, then each. */
export const earlier = (unit) => {
  try {
    const [from, now, ...texts] = JSON.parse(found[unit]);
    [steps, first, at, visitor] = [[...texts], from, now, 0];
    return [from, now, ...texts];
  } catch {
    return [];
  }
};

/** Takes a name for this tab alone, and gives the one before back; whether no other tab has it. */
export const hold = (name) => new Promise((done) => {
  const held = navigator.locks?.request(name, { ifAvailable: true }, (lock) => {
    done(Boolean(lock));
    if (!lock) return;
    free?.();
    return new Promise((good) => free = good);
  });
  // Where there are no locks, there is one tab.
  held ? held.catch(() => done(true)) : done(true);
});

/** Hears what other tabs say, and that the page is there again: then nothing is its own any more. */
export const hear = (on) => {
  const listen = () => {
    channel = self.BroadcastChannel && new BroadcastChannel('slotwright');
    if (channel) channel.onmessage = ({ data }) => on(data);
  };
  listen();
  addEventListener('pageshow', ({ persisted }) => {
    if (!persisted) return;
    listen();
    on('back');
  });
};

export const say = (word) => channel?.postMessage(word);

/** A page that is left, perhaps to be come back to, keeps nothing from others. */
export const leave = () => {
  free?.();
  free = undefined;
  channel?.close();
  close();
};

/** The present moment, as a text that sorts. */
export const stamp = () => String(Date.now());

/** A name that nothing has yet. */
export const fresh = (kind) => `${kind}${Date.now()}-${Math.random().toString(36).slice(2)}`;

/** What this tab has of its own, for when it is loaded anew: a name, and the text if that may not be written in time. */
export const note = (name, text) => {
  try {
    sessionStorage[TAB] = `${name} ${text}`;
  } catch {
    // The tab begins as a new one.
  }
};

export const before = () => {
  try {
    return sessionStorage[TAB] ?? '';
  } catch {
    return '';
  }
};

/** Asks that nothing be cleared for want of room. */
export const persist = () => navigator.storage?.persist?.().catch(() => {});
