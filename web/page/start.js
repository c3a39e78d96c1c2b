// Starts the program: as the page, or as the worker whose name it has. A worker is handed the compiled module.
// What fails here is told by watch.js, or by the worker's own error.

/** When what stands in the page is painted: what the program needs is not to be in its way. */
function painted() {
  return new Promise((resolve) => {
    // A page that nobody looks at paints nothing.
    if (document.hidden) resolve();
    else requestAnimationFrame(() => setTimeout(resolve));
  });
}

async function begin() {
  await painted();
  const program = fetch(new URL('page_bg.wasm', import.meta.url));
  // It says so where it is awaited.
  program.catch(() => {});
  const [{ default: init }] = await Promise.all([import('./page.js'), import('./__wasm_split.js')]);
  await init({ module_or_path: program });
}

if (typeof document === 'undefined') {
  const page = import('./page.js');
  const fail = (error) => setTimeout(() => { throw error; });
  addEventListener('message', ({ data }) => {
    page.then(({ initSync }) => initSync({ module: data })).catch(fail);
  }, { once: true });
} else {
  begin().catch((error) => dispatchEvent(new ErrorEvent('notstarted', { error })));
}
