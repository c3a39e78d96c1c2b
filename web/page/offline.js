// Keeps the page there without a network, and offers what is new. It is loaded when there is a first answer.

/** The start goes first, in milliseconds. */
const PAUSE = 2000;
const HOUR = 3_600_000;
/** Where the app is: the folder of its program lies in it, whatever page this is. */
const ROOT = new URL('..', import.meta.url);
const RANGE = new URL('ranges/fenland.toml', ROOT);

/** Begins, with the range file that the page works with; it has none where that is empty. */
export function begin(range) {
  const idle = globalThis.requestIdleCallback ?? setTimeout;
  setTimeout(() => idle(() => watch(range)), PAUSE);
}

/** Whether there is a network stands beside what is saved. */
function tellNetwork() {
  document.documentElement.toggleAttribute('data-offline', !navigator.onLine);
}

async function watch(range) {
  tellNetwork();
  for (const event of ['online', 'offline']) addEventListener(event, tellNetwork);
  const { serviceWorker } = navigator;
  // Some browsers have none, or none here.
  const registration = await serviceWorker?.register(new URL('sw.js', ROOT)).catch(() => undefined);
  let isAsked = false;
  const tell = bulletin(() => {
    isAsked = true;
    if (registration?.waiting) registration.waiting.postMessage('take over');
    else location.reload();
  });
  if (registration) {
    follow(registration, () => tell('version'), () => isAsked);
  }
  const look = async () => {
    registration?.update().catch(() => undefined);
    const now = await fetch(RANGE).then((response) => (response.ok ? response.text() : range), () => range);
    if (range && now !== range) tell('range');
  };
  // A file that came too late for the page was not the newest.
  look();
  setInterval(look, HOUR);
  document.addEventListener('visibilitychange', () => document.hidden || look());
}

/** Tells of versions that wait, and loads the page anew for the one that was asked for. */
function follow(registration, tell, isAsked) {
  const { serviceWorker } = navigator;
  const look = () => registration.waiting && serviceWorker.controller && tell();
  registration.addEventListener('updatefound', () => registration.installing?.addEventListener('statechange', look));
  look();
  let isControlled = serviceWorker.controller !== null;
  serviceWorker.addEventListener('controllerchange', () => {
    if (isAsked()) location.reload();
    // Asked for in another tab; this one goes on with what it began with.
    else if (isControlled) tell();
    isControlled = true;
  });
  serviceWorker.ready.then(({ active }) => {
    active.postMessage(import.meta.url);
    if (document.documentElement.hasAttribute('data-workshop')) active.postMessage('workshop');
  });
}

/** What tells news, each once, with a button that loads them and one that puts them off. */
function bulletin(load) {
  const board = document.getElementById('news');
  const [said, version, range, now, later] = board.children;
  const news = { version, range };
  let before;
  board.addEventListener('focusin', ({ relatedTarget }) => {
    if (!board.contains(relatedTarget)) before = relatedTarget;
  });
  now.addEventListener('click', load);
  later.addEventListener('click', () => {
    // The focus goes back to where it came from.
    (before ?? document.querySelector('.skip'))?.focus();
    board.classList.add('empty');
  });
  return (which) => {
    const text = news[which]?.textContent;
    delete news[which];
    if (!text) return;
    board.classList.remove('empty');
    // What comes after its place is heard.
    setTimeout(() => { said.textContent = text; }, 100);
  };
}
