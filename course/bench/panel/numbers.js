/** The curve in numbers, for reading rather than looking. */

import { dialOf } from "../physics/bench.js";
import { part, tell } from "./page.js";
import { gainsAt } from "./seen.js";
import { kilohertz, minus } from "./quantities.js";

const OFFSETS = [-18, -9, -4.5, -1, 0, 1, 4.5, 9, 18].map((part) => part / 24); // of the close-up's span

/** @param {HTMLElement} root @param {import("../physics/bench.js").Figures} figures */
export function numbers(root, figures) {
  const body = part(root, ".numbers tbody");
  const rows = OFFSETS.map(() => {
    const row = document.createElement("tr");
    const head = document.createElement("th");
    head.scope = "row";
    row.append(head);
    return { row, head, cell: row.insertCell() };
  });
  return (/** @type {import("../physics/bench.js").State} */ state) => {
    const { span } = dialOf(figures, state.set);
    const offsets = OFFSETS.map((part) => part * span);
    const gains = gainsAt(figures, state, offsets);
    rows.forEach(({ head, cell }, n) => {
      tell(head, `${offsets[n] > 0 ? "+" : ""}${kilohertz(offsets[n])}`);
      tell(cell, gains ? `${minus(gains[n].toFixed(1))} dB` : "it oscillates");
    });
    if (!body.childElementCount) body.append(...rows.map(({ row }) => row));
  };
}
