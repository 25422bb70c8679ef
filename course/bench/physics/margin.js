/** How much of the reaction's margin is left on the station that is tuned in. */

import { carried } from "./ahead.js";
import { networkOf, tunedStation } from "./bench.js";
import { CONTROLS } from "./controls.js";
import { cycleTables } from "./cycle.js";
import { createStationOn } from "./station-on.js";

/** @typedef {import("./bench.js").Figures} Figures */
/** @typedef {import("./bench.js").State} State */
/** @typedef {{silent: number, threshold: number}} Thresholds of the reaction's knob, SI: in silence, and with the station's carrier on */
/** @typedef {Thresholds & {used: number, left: number}} Margin what the carrier has used up of the way; how much more, beside what is set */

/** @type {WeakMap<Figures, {stationOn: ReturnType<typeof createStationOn>, known: Map<string, Thresholds | null>}>} */
const kept = new WeakMap();

/**
 * How far the reaction's knob may go on until the tuned station's carrier leaves the set singing, and what that carrier has used up
 * of the way; null for a set without reaction, or where no place of the knob does it.
 *
 * @param {Figures} figures
 * @param {State} state
 * @returns {Margin | null}
 */
export function margin(figures, state) {
  const { quenched, knobs } = figures.sets[state.set];
  const knob = knobs[state.by];
  if (!knob || quenched) return null;
  const its = kept.get(figures) ?? { stationOn: createStationOn(cycleTables(figures.cycle), figures.coil), known: new Map() };
  kept.set(figures, its);
  const { wound, fed, ahead } = networkOf(figures, state);
  const { name, frequency, emf } = tunedStation(figures, state);
  const asked = [state.set, state.feed, state.by, state.coupling, name].join();
  let found = its.known.get(asked);
  if (found === undefined) {
    found = its.stationOn.thresholds(wound, fed, frequency, emf * carried(ahead, frequency), CONTROLS[state.by], knob);
    its.known.set(asked, found);
  }
  return found && { ...found, used: 1 - found.threshold / found.silent, left: found.threshold / state[state.by] - 1 };
}
