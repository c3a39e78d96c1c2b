// What the page keeps in the browser: texts by name in IndexedDB, which tab has which of them, and a word between tabs.
// What fails is told by the name of its error; nothing throws.

const ALL = 'drafts';
const TAB = 'slotwright-tab';
const PATIENCE = 1500;
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

/** One transaction; its result once all of it is written. */
const transact = async (mode, act) => {
  try {
    const store = await open();
    return await new Promise((good, bad) => {
      const work = store.transaction(ALL, mode, { durability: 'relaxed' });
      const result = act(work.objectStore(ALL));
      work.oncomplete = () => good(result);
      work.onabort = () => bad(work.error);
      // A page that is being left hears of nothing any more.
      work.commit?.();
    });
  } catch (error) {
    return `${error?.name}`;
  }
};

/** Whether there is any, for what paints the page before this can be read: watch.js. */
const hint = (is) => {
  try {
    is ? localStorage.setItem('slotwright-desk-kept', 1) : localStorage.removeItem('slotwright-desk-kept');
  } catch {
    // The first drawing is shown, whatever unit comes.
  }
};

/** Name, text and whether another tab has it, of each: one list. */
export const read = async () => {
  const found = await transact('readonly', (all) => [all.getAllKeys(), all.getAll()]);
  if (typeof found === 'string') return found;
  const held = await navigator.locks?.query().catch(() => {});
  const [keys, texts] = found.map((asked) => asked.result);
  hint(keys.length > 0);
  const isHeld = (key) => held?.held.some(({ name }) => name === key);
  return keys.flatMap((key, at) => [key, texts[at], isHeld(key) ? '1' : '']);
};

/** Writes texts by their names, all or none; an empty text goes. Tells nothing if that was done. */
export const write = (pairs) => transact('readwrite', (all) => {
  if (pairs.some((text, at) => at % 2 === 1 && text)) hint(true);
  for (let at = 0; at < pairs.length; at += 2) pairs[at + 1] ? all.put(pairs[at + 1], pairs[at]) : all.delete(pairs[at]);
  return '';
});

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
