/** What a state is worth to the ear and to the goals: measured a few times a second, not in each frame. */

import { band, listen, neighbour } from "../physics/bench.js";
import { inDecibels } from "./words.js";

/** @typedef {import("../physics/bench.js").Figures} Figures */
/** @typedef {import("../physics/bench.js").State} State */
/** @typedef {import("./seen.js").Seen} Seen */

/**
 * @typedef {object} Heard
 * @property {Seen["tuned"]} station
 * @property {number} above decibel over the threshold of hearing
 * @property {number} whistle hertz, 0 for none
 * @property {number} gained decibel that the reaction adds
 * @property {ReturnType<typeof neighbour> | null} neighbour null if it does not oscillate
 */

/**
 * @param {Figures} figures
 * @param {State} state
 * @param {Seen} seen
 * @returns {Heard}
 */
export function heardOf(figures, state, seen) {
  const { above, whistle, grid, oscillates } = listen(figures, state);
  return {
    station: seen.tuned,
    above,
    whistle,
    gained: gained(figures, state, seen),
    neighbour: oscillates ? neighbour(figures, state, grid) : null,
  };
}

/** What the reaction adds to the gain, against the throttle nearly shut. @param {Figures} figures @param {State} state @param {Seen} seen */
function gained(figures, state, seen) {
  const knob = figures.sets[state.set].knobs.throttle;
  const without = knob && band(figures, { ...state, throttle: knob.low });
  return seen.band && without ? inDecibels(seen.band.gain / without.gain) : 0;
}

/** @typedef {{set: string, station: string} & Record<"above" | "apart" | "width" | "whistle" | "spoiled" | "oscillates", number>} Measured */

/**
 * All that goals may ask for, by name.
 *
 * @param {State} state
 * @param {Seen} seen
 * @param {Heard} heard
 * @returns {Measured}
 */
export function measured(state, seen, heard) {
  const others = seen.stations.filter((station) => station !== seen.tuned);
  const next = Math.max(...others.map((station) => station.grid ?? 0));
  return {
    set: state.set,
    station: seen.tuned.name,
    above: heard.above,
    apart: seen.tuned.grid === null ? -Infinity : inDecibels(seen.tuned.grid / next),
    width: seen.band ? seen.band.width : 0,
    whistle: heard.whistle,
    spoiled: heard.neighbour ? heard.neighbour.spoiled : 0,
    oscillates: heard.neighbour ? 1 : 0,
  };
}
