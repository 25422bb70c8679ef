/** Every bench in the page. */

import { benchIn } from "./bench.js";
import { openingIn } from "./opening.js";
import { parts } from "./page.js";

const figures = /** @type {import("../physics/bench.js").Figures} */ (/** @type {any} */ (globalThis).SALTMARSH_BENCH);
for (const root of parts(document, ".turning")) (root.classList.contains("opening-bench") ? openingIn : benchIn)(root, figures);
