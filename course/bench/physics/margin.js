/** How much of the reaction's margin is left on the station that is tuned in. */

import { carried } from "./ahead.js";
import { networkOf, tunedStation } from "./bench.js";
import { cycleTables } from "./cycle.js";
import { createStationOn } from "./station-on.js";

/** @typedef {import("./bench.js").Figures} Figures */
/** @typedef {import("./bench.js").State} State */
/** @typedef {{silent: number, threshold: number}} Thresholds farad: in silence, and with the station's carrier on */
/** @typedef {Thresholds & {used: number, left: number}} Margin what the carrier has used up of the way; how much more throttle, beside what is set */

/** @type {WeakMap<Figures, {stationOn: ReturnType<typeof createStationOn>, known: Map<string, Thresholds | null>}>} */
const kept = new WeakMap();

/**
 * How far the throttle may go on until the tuned station's carrier leaves the set singing, and what that carrier has used up of the
 * way; null for a set without a throttle, or where none within its stops does it.
 *
 * @param {Figures} figures
 * @param {State} state
 * @returns {Margin | null}
 */
export function margin(figures, state) {
  const { quenched, knobs } = figures.sets[state.set];
  if (!knobs.throttle || quenched) return null;
  const its = kept.get(figures) ?? { stationOn: createStationOn(cycleTables(figures.cycle), figures.coil), known: new Map() };
  kept.set(figures, its);
  const { network, fed, ahead } = networkOf(figures, state);
  const { name, frequency, emf } = tunedStation(figures, state);
  const asked = [state.set, state.feed, state.coupling, name].join();
  let found = its.known.get(asked);
  if (found === undefined) {
    found = its.stationOn.thresholds(network, fed, frequency, emf * carried(ahead, frequency), knobs.throttle);
    its.known.set(asked, found);
  }
  return found && { ...found, used: 1 - found.threshold / found.silent, left: found.threshold / state.throttle - 1 };
}
