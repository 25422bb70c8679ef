/** Every bench in the page. */

import { benchIn } from "./bench.js";
import { parts } from "./page.js";

const figures = /** @type {import("../physics/bench.js").Figures} */ (/** @type {any} */ (globalThis).SALTMARSH_BENCH);
for (const root of parts(document, ".turning")) benchIn(root, figures);
