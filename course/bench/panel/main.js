/** Every bench in the page. */

import { benchIn } from './bench.js';

const figures = globalThis.SALTMARSH_BENCH;
for (const root of document.querySelectorAll('.turning')) benchIn(root, figures);
