/** What a state is worth to the ear and to the goals: asked of the listener a few times a second, not in each frame. */

import { band } from "../physics/bench.js";
import { inDecibels } from "./quantities.js";

/** @typedef {import("../physics/bench.js").Figures} Figures */
/** @typedef {import("../physics/bench.js").State} State */
/** @typedef {import("../sound/listener.js").Heard} Heard what the listener tells */
/** @typedef {import("./seen.js").Seen} Seen */

/** Decibel that the reaction adds to the gain, against its knob at the lower stop. @param {Figures} figures @param {State} state @param {Seen} seen */
export function gained(figures, state, seen) {
  const knob = figures.sets[state.set].knobs[state.by];
  const without = knob && band(figures, { ...state, [state.by]: knob.low });
  return seen.band && without ? inDecibels(seen.band.gain / without.gain) : 0;
}

/** @typedef {{set: string, station: string} & Record<"above" | "apart" | "width" | "quieting" | "whistle" | "spoiled" | "oscillates", number>} Measured */

/**
 * All that goals may ask for, by name.
 *
 * @param {State} state
 * @param {Seen} seen
 * @param {Omit<Heard, "margin">} heard
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
    quieting: heard.quieting,
    whistle: heard.whistle,
    spoiled: heard.neighbour ? heard.neighbour.spoiled : 0,
    oscillates: heard.oscillates ? 1 : 0,
  };
}
