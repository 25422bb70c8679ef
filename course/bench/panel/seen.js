/** Everything that is to be seen of a state, worked out once for all the views. */

import { band, dialFrequency, dialOf, edge, quenchedOf, response, ring, stations } from "../physics/bench.js";
import { inDecibels } from "./quantities.js";

/** @typedef {import("../physics/bench.js").Figures} Figures */
/** @typedef {import("../physics/bench.js").State} State */
/** @typedef {{frequency: Float64Array, gain: Float64Array}} Curve hertz, and decibel: volts at the grid for each in the aerial */
/** @typedef {{curve: Curve | null, colour: "plum" | "kelp", dash: number[]}} Kept */

/**
 * @typedef {object} Seen
 * @property {import("../physics/bench.js").Dial} dial
 * @property {number} pointer hertz
 * @property {{frequency: number, growth: number}} ring
 * @property {ReturnType<typeof band>} band null beyond the threshold
 * @property {Curve | null} curve null beyond the threshold
 * @property {ReturnType<typeof edge>} edge
 * @property {import("../physics/quenched.js").Bursts | undefined} bursts of a quenched set
 * @property {boolean} reacts whether the set has a knob for reaction at all
 * @property {ReturnType<typeof stations>} stations
 * @property {ReturnType<typeof stations>[0]} tuned the one of them that is strongest at the grid, or nearest if it oscillates
 * @property {import("../physics/bench.js").ControlName} by what turns its reaction up
 * @property {Kept[]} kept
 */

const POINTS = 121;
/** Places from -1 to 1, close together about the middle, where a sharp circuit has its peak. */
const SPREAD = Float64Array.from({ length: POINTS }, (_, n) => {
  const part = (2 * n) / (POINTS - 1) - 1;
  return 0.03 * part + 0.97 * part ** 3;
});

/**
 * @param {Figures} figures
 * @param {State} state
 * @param {Kept[]} kept
 * @returns {Seen}
 */
export function seenOf(figures, state, kept) {
  const rings = ring(figures, state);
  const onAir = stations(figures, state);
  return {
    dial: dialOf(figures, state.set),
    pointer: dialFrequency(figures, state),
    ring: rings,
    band: band(figures, state),
    curve: curveAbout(figures, state, rings.frequency),
    edge: edge(figures, state),
    bursts: quenchedOf(figures, state),
    reacts: figures.sets[state.set].knobs[state.by] !== undefined,
    by: state.by,
    stations: onAir,
    tuned: tunedTo(onAir, rings.frequency),
    kept,
  };
}

/** @param {Figures} figures @param {State} state @param {number} middle hertz @returns {Curve | null} */
function curveAbout(figures, state, middle) {
  const { span } = dialOf(figures, state.set);
  const frequency = SPREAD.map((part) => middle + span * part);
  const volts = response(figures, state, frequency);
  return volts && { frequency, gain: volts.map(inDecibels) };
}

/** @param {Seen["stations"]} onAir @param {number} frequency hertz */
function tunedTo(onAir, frequency) {
  const worth = (/** @type {Seen["tuned"]} */ station) => station.grid ?? -Math.abs(station.frequency - frequency);
  return onAir.reduce((best, next) => (worth(next) > worth(best) ? next : best));
}

/**
 * Decibels of the response at some offsets from the place where it rings; null beyond the threshold.
 *
 * @param {Figures} figures
 * @param {State} state
 * @param {number[]} offsets hertz
 */
export function gainsAt(figures, state, offsets) {
  const middle = ring(figures, state).frequency;
  const volts = response(figures, state, Float64Array.from(offsets, (offset) => middle + offset));
  return volts && Array.from(volts, inDecibels);
}
