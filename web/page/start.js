// Starts the program: as the page, or as the worker whose name it has. A worker is handed the compiled module.
import init, { initSync } from './page.js';

if (typeof document === 'undefined') {
  addEventListener('message', ({ data }) => initSync({ module: data }), { once: true });
} else {
  // What can wait until there is a first answer: the page calls it then.
  globalThis.answered = (range) => import('./offline.js').then(({ begin }) => begin(range));
  init();
}
