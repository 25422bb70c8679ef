/** The curve in numbers, for reading rather than looking. */

import { part, tell } from "./page.js";
import { gainsAt } from "./seen.js";
import { kilohertz, minus } from "./words.js";

const OFFSETS = [-18e3, -9e3, -4.5e3, -1e3, 0, 1e3, 4.5e3, 9e3, 18e3]; // hertz

/** @param {HTMLElement} root @param {import("../physics/bench.js").Figures} figures */
export function numbers(root, figures) {
  const body = part(root, ".numbers tbody");
  const cells = OFFSETS.map((offset) => {
    const row = document.createElement("tr");
    const head = document.createElement("th");
    head.scope = "row";
    head.textContent = `${offset > 0 ? "+" : ""}${kilohertz(offset)}`;
    body.append(row);
    row.append(head);
    return row.insertCell();
  });
  return (/** @type {import("../physics/bench.js").State} */ state) => {
    const gains = gainsAt(figures, state, OFFSETS);
    cells.forEach((cell, n) => tell(cell, gains ? `${minus(gains[n].toFixed(1))} dB` : "it oscillates"));
  };
}
