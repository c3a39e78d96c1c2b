// Keeps the page there without a network, and offers what is new. It is loaded when the first answer has been painted.

/** The start goes first, in milliseconds. */
const PAUSE = 2000;
const HOUR = 3_600_000;
const RANGE = 'ranges/fenland.toml';

/** Begins, with the range file that the page works with; it has none where that is empty. */
export function begin(range) {
  const idle = globalThis.requestIdleCallback ?? setTimeout;
  setTimeout(() => idle(() => watch(range)), PAUSE);
}

async function watch(range) {
  const tell = bulletin(() => load());
  const { serviceWorker } = navigator;
  // Some browsers have none, or none here.
  const registration = await serviceWorker?.register('sw.js').catch(() => undefined);

  let asked = false;
  function load() {
    asked = true;
    if (registration?.waiting) registration.waiting.postMessage('take over');
    else location.reload();
  }
  if (registration) follow(registration);

  function follow(registration) {
    const look = () => registration.waiting && serviceWorker.controller && tell('version');
    registration.addEventListener('updatefound', () => registration.installing?.addEventListener('statechange', look));
    look();
    let controlled = serviceWorker.controller !== null;
    serviceWorker.addEventListener('controllerchange', () => {
      if (asked) location.reload();
      // Another tab has loaded it. This one goes on with what it began with.
      else if (controlled) tell('version');
      controlled = true;
    });
    serviceWorker.ready.then(({ active }) => active.postMessage(import.meta.url));
  }

  async function look() {
    registration?.update().catch(() => undefined);
    const now = await fetch(RANGE).then((response) => (response.ok ? response.text() : range), () => range);
    if (range && now !== range) tell('range');
  }
  // A file that came too late for the page was not the newest.
  look();
  setInterval(look, HOUR);
  document.addEventListener('visibilitychange', () => document.hidden || look());
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
    const text = news[which];
    delete news[which];
    if (!text) return;
    board.classList.remove('empty');
    // What is said is heard when it comes after its place.
    setTimeout(() => { said.textContent = text.textContent; }, 100);
  };
}
