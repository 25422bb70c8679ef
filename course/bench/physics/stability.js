/** What a set does at weak signals, from its poles: where it rings, when it sings, what it takes in. */

import { complex, div, scale } from "./complex.js";
import { poles, ringing, steadyFormula, transfer } from "./network.js";
import { valueAndSlope } from "./polynomial.js";

/** @typedef {import("./complex.js").Complex} Complex */
/** @typedef {import("./network.js").Network} Network */

const ROUNDS = 12; // of correcting the tuning
const STEPS = 20; // of the secant rule
const UNIT = 1e-11; // farad
const ON_STATION = 1e-5;

/** Where a set rings by itself, in hertz, and the rate per second at which that grows. @param {Network} n */
export const ring = (n) => ringing(n);

/** Whether any swing grows. @param {Network} n */
export const oscillates = (n) => poles(n).some((pole) => pole.re >= 0);

/**
 * Volts on the grid for each volt in the aerial, or null for a set that oscillates and never settles.
 *
 * @param {Network} n
 * @param {ArrayLike<number>} frequencies hertz
 */
export function response(n, frequencies) {
  return oscillates(n) ? null : Float64Array.from(frequencies, steadyFormula(n));
}

/** Gain at the frequency where the set rings, and the −3 dB band about it, in hertz; null if it oscillates. @param {Network} n */
export function band(n) {
  const found = poles(n);
  if (found.some((pole) => pole.re >= 0)) return null;
  const { frequency, growth } = ringing(n, found);
  const width = -growth / Math.PI;
  const gain = steadyFormula(n)(frequency);
  return { frequency, gain, low: frequency - width / 2, high: frequency + width / 2, width };
}

/**
 * The set with its tuning condenser such that it rings at a frequency, all else left alone.
 *
 * @param {Network} n
 * @param {number} frequency hertz
 * @returns {Network}
 * @throws {RangeError} if no condenser does
 */
export function retuned(n, frequency) {
  let tuning = 1 / ((2 * Math.PI * frequency) ** 2 * n.tuned_inductance);
  for (let round = 0; round < ROUNDS; round++) {
    tuning *= (ring({ ...n, tuning_capacitance: tuning }).frequency / frequency) ** 2;
  }
  const there = { ...n, tuning_capacitance: tuning };
  if (!(Math.abs(ring(there).frequency / frequency - 1) < ON_STATION)) {
    throw new RangeError("No setting of the tuning condenser makes this set ring there: loosen the aerial's coupling.");
  }
  return there;
}

/**
 * Throttle capacitance, in farads, at which the set begins to oscillate, its tuning condenser left alone.
 *
 * The determinant is P + C Q, C being the throttle. At the threshold it vanishes for a real frequency: C = −P/Q there,
 * which is real at one frequency only, near that at which the set rings.
 *
 * @param {Network} n
 * @returns {number} farad; not above 0 if no throttle does it
 */
export function thresholdThrottle(n) {
  const once = transfer({ ...n, throttle_capacitance: UNIT }).below;
  const twice = transfer({ ...n, throttle_capacitance: 2 * UNIT }).below;
  const by = twice.map((a, power) => a - once[power]);
  const shut = once.map((a, power) => a - by[power]);
  const throttleAt = (/** @type {number} */ angular) => {
    const place = complex(0, angular);
    return scale(div(valueAndSlope(shut, place)[0], valueAndSlope(by, place)[0]), -UNIT);
  };
  let before = 2 * Math.PI * ring(n).frequency;
  let now = before * (1 + 1e-4);
  let missedBefore = throttleAt(before).im;
  for (let step = 0; step < STEPS; step++) {
    const missed = throttleAt(now).im;
    if (missed === missedBefore || Math.abs(now - before) < 1e-15 * now) break;
    [before, now] = [now, now - (missed * (now - before)) / (missed - missedBefore)];
    missedBefore = missed;
  }
  return throttleAt(now).re;
}
