/** What every page and booklet has. Nothing here is needed to read. */

import { parts } from "./dom.js";
import { keepForOffline } from "./offline.js";
import { switchLight } from "./light.js";
import { switchWords } from "./vocabulary.js";

switchWords();
switchLight();
keepForOffline(new URL(".", /** @type {HTMLScriptElement} */ (document.currentScript).src).href);

for (const box of parts(document, ".formula, .wide, pre")) {
  if (box.scrollWidth > box.clientWidth) box.tabIndex = 0; // so that it can be scrolled by keys
}
