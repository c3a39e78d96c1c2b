// Starts the program: as the page, or as the worker whose name it has. A worker is handed the compiled module.
// What fails here is told by watch.js, or by the worker's own error.

// The least module that has all that the compiler uses of WebAssembly: `FEATURES` in the build.
const FEATURES = 'AGFzbQEAAAABCQJgAABgAAJ/fgMEAwEAAAQEAW8AAQUDAQABBgYBfwFBAAsHBQEBZwMACiADBwBBAMBCAAsKAEMAAAAA/AAaCwsAQQBBAEEA/AsACw==';

/** Whether this browser can run the program at all. */
function isAble() {
  try {
    return WebAssembly.validate(Uint8Array.from(atob(FEATURES), (letter) => letter.charCodeAt(0)));
  } catch {
    return false;
  }
}

/** Longest wait for that, in milliseconds: not every browser tells of it. */
const UNTOLD = 500;

/** When what stands in the page is painted: what the program needs is not to be in its way. */
function painted() {
  return new Promise((resolve) => {
    // A page that nobody looks at paints nothing.
    if (document.hidden) return resolve();
    setTimeout(resolve, UNTOLD);
    try {
      new PerformanceObserver(resolve).observe({ type: 'paint', buffered: true });
    } catch {
      // The wait ends by itself.
    }
  });
}

async function begin() {
  if (!isAble()) throw new Error('old');
  await painted();
  const program = fetch(new URL('page_bg.wasm', import.meta.url)).then((response) => {
    if (!response.ok) throw new Error(response.status);
    return response;
  });
  // It says so where it is awaited.
  program.catch(() => {});
  const [{ default: init }] = await Promise.all([import('./page.js'), import('./__wasm_split.js')]);
  await init({ module_or_path: program });
}

if (typeof document === 'undefined') {
  const page = import('./page.js');
  // An error within a promise is none of the worker, and the page would not hear of it.
  const fail = (error) => setTimeout(() => { throw error; });
  addEventListener('message', ({ data }) => {
    page.then(({ initSync }) => initSync({ module: data })).catch(fail);
  }, { once: true });
} else {
  // What can wait until there is a first answer: the page calls it then.
  globalThis.answered = (range) => import('./offline.js').then(({ begin }) => begin(range));
  begin().catch((error) => {
    console.error(error);
    const message = error.message === 'old' ? 'old' : 'missing';
    dispatchEvent(new ErrorEvent('notstarted', { error, message }));
  });
}
