// The service worker: it keeps the page with all that a visit can need, so that it is there without a network. Page and
// workers are always of one build: the page comes from this build alone, and names the folder of its program by hash.
//
// The build puts in BUILD, the name of the list; FILES, each file with the beginning of its SHA-256; LATER, the same of
// files that are kept once somebody has loaded them; and FRESH, files that change without a build.

const HERE = registration.scope;
const PREFIX = `slotwright ${HERE} `;
const OWN = PREFIX + BUILD;
const RANGES = `${PREFIX}ranges`;

const PAGE = './';
const WORKSHOP = 'workshop/index.html';
const PROGRAM = 'app-';
const files = new Map(Object.entries(FILES));
const later = new Map(Object.entries(LATER));

/** Where the pages of this build are noted that are open. */
const PAGES = 'pages';

/** Longest wait for a fresh file, in milliseconds, where an earlier one is there. */
const PATIENCE = 3000;

/** The path of an address beside the page. */
function pathOf(address) {
  return address.startsWith(HERE) ? address.slice(HERE.length).split(/[?#]/)[0] : undefined;
}

/** Whether a file came whole, and of this build. */
async function fits(response, hash) {
  const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', await response.clone().arrayBuffer()));
  return [...digest].map((byte) => byte.toString(16).padStart(2, '0')).join('').startsWith(hash);
}

/** The file from what is kept of other builds, or else from the network. */
async function find(path, hash) {
  const tries = [() => caches.match(path), () => fetch(path), () => fetch(path, { cache: 'reload' })];
  for (const attempt of tries) {
    const response = await attempt();
    if (response?.ok && (await fits(response, hash))) return response;
  }
  throw new Error(path);
}

/** Keeps all files, one after the other: the page that is open goes first. */
async function fill() {
  const cache = await caches.open(OWN);
  for (const [path, hash] of files) {
    // What an installation that was broken off has left is there already.
    if (!(await cache.match(path))) await cache.put(path, await find(path, hash));
  }
  for (const [path, hash] of later) {
    const known = await caches.match(path);
    if (known && (await fits(known, hash))) await cache.put(path, known);
  }
  const ranges = await caches.open(RANGES);
  for (const path of FRESH) {
    // Without it the page is there all the same, and says so.
    if (!(await ranges.match(path))) await ranges.add(path).catch(() => undefined);
  }
}

/** Takes away what earlier builds left, unless a page that is open may be of one. A page of this build says itself. */
async function sweep(page, script = '') {
  const cache = await caches.open(OWN);
  const windows = await clients.matchAll({ type: 'window', includeUncontrolled: true });
  const open = windows.filter(({ url }) => url.startsWith(HERE)).map(({ id }) => id);
  const known = (await (await cache.match(PAGES))?.json()) ?? [];
  if (files.has(pathOf(script))) known.push(page);
  const own = open.filter((id) => known.includes(id));
  await cache.put(PAGES, new Response(JSON.stringify(own)));
  if (own.length < open.length) return;
  const names = await caches.keys();
  // What a later build has gathered is no rest of an earlier one.
  if (registration.installing || registration.waiting) return;
  for (const name of names) {
    if (name.startsWith(PREFIX) && name !== OWN && name !== RANGES) await caches.delete(name);
  }
}

/** What is kept of a file; nothing where the browser's storage fails. */
function lookUp(name, path) {
  return caches.open(name).then((cache) => cache.match(path)).catch(() => undefined);
}

/** Keeps a file, where there is room. */
function keep(name, path, response) {
  return caches.open(name).then((cache) => cache.put(path, response)).catch(() => undefined);
}

/** A file of this build, or of the program of an earlier one: that is kept for as long as its page is open. */
async function kept(path, request) {
  const ofAnyBuild = () => caches.match(path).catch(() => undefined);
  const known = (await lookUp(OWN, path)) ?? (path.startsWith(PROGRAM) && (await ofAnyBuild()));
  if (known) return known;
  const response = await fetch(request);
  const hash = later.get(path);
  if (hash && response.ok && (await fits(response, hash))) await keep(OWN, path, response.clone());
  return response;
}

/** Keeps all that the workshop's page can need: it asks for that, and no customer loads any of it. */
async function keepWorkshop() {
  const cache = await caches.open(OWN);
  for (const [path, hash] of later) {
    if (path.startsWith('room/') || (await cache.match(path))) continue;
    // What does not arrive is kept once it is loaded.
    await find(path, hash).then((response) => cache.put(path, response)).catch(() => undefined);
  }
}

/** A file as it is now, or as it was where there is no network. */
async function fresh(path, event) {
  const known = await lookUp(RANGES, path);
  const now = fetch(event.request, { cache: 'no-cache' }).then(async (response) => {
    // What asks a visitor to sign in answers for every file.
    if (/html/.test(response.headers.get('content-type') ?? '')) return known ?? Response.error();
    if (response.ok) await keep(RANGES, path, response.clone());
    return response;
  });
  if (!known) return now;
  const answered = now.then((response) => (response.status < 500 ? response : known)).catch(() => known);
  // One that comes too late for this page is kept for the next.
  event.waitUntil(answered);
  return Promise.race([answered, new Promise((resolve) => setTimeout(resolve, PATIENCE, known))]);
}

addEventListener('install', (event) => event.waitUntil(fill()));

addEventListener('activate', (event) => event.waitUntil(sweep().then(() => clients.claim())));

addEventListener('message', (event) => {
  if (event.data === 'take over') event.waitUntil(skipWaiting());
  else if (event.data === 'workshop') event.waitUntil(keepWorkshop());
  else event.waitUntil(sweep(event.source.id, event.data));
});

addEventListener('fetch', (event) => {
  const { request } = event;
  const path = pathOf(request.url);
  if (path === undefined || request.method !== 'GET') return;
  if (path === '' || path === 'index.html') event.respondWith(kept(PAGE, request));
  // Its addresses lead one folder up, so it needs its slash.
  else if (path === 'workshop') event.respondWith(Response.redirect(`${HERE}workshop/`));
  else if (path === 'workshop/' || path === WORKSHOP) event.respondWith(kept(WORKSHOP, request));
  else if (FRESH.includes(path)) event.respondWith(fresh(path, event));
  else if (files.has(path) || later.has(path) || path.startsWith(PROGRAM)) event.respondWith(kept(path, request));
});
