/** Two settings that are kept: their curves in the picture, their figures in a table, and the way back to each. */

import { parts, tell } from "./page.js";
import { decibels, inDecibels, kilohertz } from "./quantities.js";

/** @typedef {import("../physics/bench.js").State} State */
/** @typedef {import("./seen.js").Seen} Seen */

/**
 * @typedef {object} Reading
 * @property {State} state
 * @property {Seen} seen
 * @property {import("./measured.js").Heard} heard
 * @property {import("./measured.js").Measured} measured
 * @property {string} title of the set
 * @property {(knob: "coupling" | "by" | "quench") => string} says where a knob stood; "by", that which turns reaction up
 */

/** @type {Pick<import("./seen.js").Kept, "colour" | "dash">[]} */
const LOOKS = [{ colour: "plum", dash: [7, 4] }, { colour: "kelp", dash: [2, 3] }];

/**
 * What stands in each row of the table, by the name that the row has in the page.
 * @type {Record<string, (reading: Reading) => string>}
 */
const ROWS = {
  set: ({ title }) => title,
  dial: ({ seen }) => kilohertz(seen.pointer),
  coupling: ({ says }) => says("coupling"),
  throttle: ({ says }) => says("by"),
  quench: ({ says }) => says("quench"),
  station: ({ heard }) => heard.station,
  band: ({ seen }) => (seen.band ? kilohertz(seen.band.width, 2) : "oscillates"),
  gain: ({ seen }) => (seen.band ? decibels(inDecibels(seen.band.gain)) : "oscillates"),
  apart: ({ measured }) => (Number.isFinite(measured.apart) ? decibels(measured.apart) : "–"),
  above: ({ heard }) => decibels(heard.above),
};

/**
 * @param {HTMLElement} root
 * @param {() => Promise<Reading | null>} now
 * @param {(state: State) => void} goBack
 * @param {() => void} changed
 */
export function comparing(root, now, goBack, changed) {
  /** @type {(Reading | null)[]} */ const kept = [null, null];
  const rows = /** @type {HTMLTableRowElement[]} */ (parts(root, ".compared [data-row]"));
  const back = /** @type {HTMLButtonElement[]} */ (parts(root, ".back-to"));
  const fill = (/** @type {number} */ column, /** @type {Reading} */ reading) =>
    rows.forEach((row) => tell(row.cells[column], ROWS[row.dataset.row ?? ""](reading)));
  parts(root, ".keep-as").forEach((button, place) =>
    button.addEventListener("click", async () => {
      const reading = await now();
      if (!reading) return;
      kept[place] = reading;
      fill(place + 2, reading);
      back[place].disabled = false;
      changed();
    }),
  );
  back.forEach((button, place) =>
    button.addEventListener("click", () => {
      const reading = kept[place];
      if (reading) goBack(reading.state);
    }),
  );
  return {
    curves: () => kept.flatMap((reading, place) => (reading ? [{ curve: reading.seen.curve, ...LOOKS[place] }] : [])),
    show: (/** @type {Reading} */ reading) => fill(1, reading),
  };
}
