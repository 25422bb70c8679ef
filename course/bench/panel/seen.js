/** Everything that is to be seen of a state, worked out once for all the views. */

import { band, dialFrequency, edge, response, ring, stations } from '../physics/bench.js';
import { SPAN } from './closeup.js';
import { inDecibels } from './words.js';

const POINTS = 141;
/** Places from -1 to 1, close together about the middle, where a sharp circuit has its peak. */
const SPREAD = Float64Array.from({ length: POINTS }, (_, n) => {
  const part = 2 * n / (POINTS - 1) - 1;
  return 0.03 * part + 0.97 * part ** 3;
});

/**
 * @typedef {object} Seen
 * @property {{low: number, high: number}} dial
 * @property {number} pointer  hertz
 * @property {{frequency: number, growth: number}} ring
 * @property {{frequency: number, gain: number, low: number, high: number, width: number} | null} band
 * @property {{throttle: number | null, share: number}} edge
 * @property {boolean} reacts  whether the set has a throttle at all
 * @property {Curve | null} curve  null beyond the threshold
 * @property {{name: string, frequency: number, field: number, emf: number, grid: number | null}[]} stations
 * @property {Seen['stations'][0]} tuned
 * @property {{curve: Curve | null, colour: string, dash: number[]}[]} kept
 *
 * @typedef {{frequency: Float64Array, gain: Float64Array}} Curve  hertz, and decibel: volts at the grid for each volt in the aerial
 */

/**
 * @param {object} figures
 * @param {import('../physics/bench.js').State} state
 * @param {Seen['kept']} kept
 * @returns {Seen}
 */
export function seen(figures, state, kept) {
  const rings = ring(figures, state), onAir = stations(figures, state);
  return {
    dial: figures.dial,
    pointer: dialFrequency(figures, state),
    ring: rings,
    band: band(figures, state),
    edge: edge(figures, state),
    reacts: Boolean(figures.sets[state.set].knobs.throttle),
    curve: curveAbout(figures, state, rings.frequency),
    stations: onAir,
    tuned: tunedTo(onAir, rings.frequency),
    kept,
  };
}

/** The station that is strongest at the grid; of an oscillating set, the nearest. */
function tunedTo(onAir, frequency) {
  const worth = station => station.grid ?? -Math.abs(station.frequency - frequency);
  return onAir.reduce((best, next) => worth(next) > worth(best) ? next : best);
}

/** The response about a frequency. @returns {Curve | null} */
function curveAbout(figures, state, middle) {
  const frequency = SPREAD.map(part => middle + SPAN * part);
  const volts = response(figures, state, frequency);
  return volts && { frequency, gain: volts.map(inDecibels) };
}

/** Decibels of the response at some offsets from the place where it rings, for reading rather than looking. */
export function gainsAt(figures, state, middle, offsets) {
  const volts = response(figures, state, Float64Array.from(offsets, offset => middle + offset));
  return volts && Array.from(volts, inDecibels);
}
