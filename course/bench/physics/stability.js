/** What a set does at weak signals, from its poles: where it rings, when it sings, what it takes in. */

import { abs, add, complex, div, mul, scale, sqrt, sub } from "./complex.js";
import { poles, ringing, steadyFormula, transfer } from "./network.js";
import { valueAndSlope } from "./polynomial.js";

/** @typedef {import("./controls.js").Control} Control */
/** @typedef {import("./network.js").Network} Network */

const ROUNDS = 12; // of correcting the tuning
const TURNS = 50; // at most, of setting a knob and the tuning in turn
const AT_REST = 1e-13; // of a frequency
const STEPS = 20; // of the secant rule
const REAL = 1e-9; // of its size: a number as near as this to real is real
const UNTUNED = 1e-10; // farad: any
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
 * Where a knob has to stand for the set to swing by itself with some growth, its tuning condenser left alone: with none, at the
 * threshold.
 *
 * The determinant is P + x Q + x² R, x being what the knob turns. It vanishes for a frequency and that growth where x is the lesser
 * root, which is real near the frequency at which the set rings with its knob about right.
 *
 * @param {Network} n as wound, the knob never turned
 * @param {Control} control
 * @param {number} [growth] neper a second
 * @returns {number} SI; not above 0, or no number, if no place of the knob does it
 */
export function threshold(n, control, growth = 0) {
  const [one, two, three] = [1, 2, 3].map((times) => transfer(control.turned(n, control.counted(times * control.unit))).below);
  const square = one.map((a, power) => (a + three[power]) / 2 - two[power]);
  const by = one.map((a, power) => two[power] - a - 3 * square[power]);
  const without = one.map((a, power) => a - by[power] - square[power]);
  const countedAt = (/** @type {number} */ angular) => {
    const place = complex(growth, angular);
    const [c, b, a] = [without, by, square].map((polynomial) => valueAndSlope(polynomial, place)[0]);
    const under = sqrt(sub(mul(b, b), scale(mul(a, c), 4)));
    const [sum, difference] = [add(b, under), sub(b, under)];
    return div(scale(c, -2 * control.unit), abs(sum) > abs(difference) ? sum : difference);
  };
  let before = 2 * Math.PI * ring(control.turned(n, control.counted(control.unit))).frequency;
  let now = before * (1 + 1e-4);
  let missedBefore = countedAt(before).im;
  for (let step = 0; step < STEPS; step++) {
    const missed = countedAt(now).im;
    if (missed === missedBefore || Math.abs(now - before) < 1e-15 * now) break;
    [before, now] = [now, now - (missed * (now - before)) / (missed - missedBefore)];
    missedBefore = missed;
  }
  const { re, im } = countedAt(now);
  return Math.abs(im) < REAL * Math.abs(re) ? control.counted(re) : NaN;
}

/**
 * Where knob and tuning condenser have to stand for the set to ring at a frequency with some growth; null if that is beyond the
 * knob's stops.
 *
 * @param {(tuning: number) => Network} wound the set with its tuning condenser so, the knob never turned
 * @param {Control} control
 * @param {{low: number, high: number}} knob
 * @param {number} frequency hertz
 * @param {number} [growth] neper a second
 * @returns {{value: number, tuning: number} | null} SI
 * @throws {RangeError} if the set cannot be tuned so with least reaction
 */
export function settled(wound, control, knob, frequency, growth = 0) {
  let value = knob.low;
  const begun = wound(1 / ((2 * Math.PI * frequency) ** 2 * wound(UNTUNED).tuned_inductance));
  let tuning = retuned(control.turned(begun, value), frequency).tuning_capacitance;
  let off = Infinity;
  for (let turn = 0; turn < TURNS && off > AT_REST; turn++) {
    value = threshold(wound(tuning), control, growth);
    if (!(value > 0 && Number.isFinite(value))) return null;
    const there = ring(control.turned(wound(tuning), value));
    off = Math.abs(there.frequency / frequency - 1) + Math.abs(there.growth - growth) / (2 * Math.PI * frequency);
    if (off > AT_REST) tuning *= (there.frequency / frequency) ** 2;
  }
  return off < ON_STATION && value >= knob.low && value <= knob.high ? { value, tuning } : null;
}
