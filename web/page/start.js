// Starts the program: as the page, or as the worker whose name it has. A worker is handed the compiled module.
import init, { initSync } from './page.js';

if (typeof document === 'undefined') {
  addEventListener('message', ({ data }) => initSync({ module: data }), { once: true });
} else {
  init();
}
