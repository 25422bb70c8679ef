/**
 * Three coupled windings and a valve, for weak signals: the network of `solutions/unit06_reaction`.
 *
 * Unknown are the aerial's current, the grid's voltage and the tickler's current, at a complex frequency s in radians a
 * second. Three things may drive them: a volt in the aerial, an ampere that the valve passes beyond its slope, and an
 * ampere that the grid takes.
 */

import { abs, add, complex, div, mul, scale, sub } from "./complex.js";
import { negative, product, roots, sizeAt, stretched, sum, valueAndSlope } from "./polynomial.js";

/** @typedef {import("./complex.js").Complex} Complex */

/**
 * @typedef {object} Network as `ReactionSet` in Python; SI units
 * @property {number} aerial_resistance
 * @property {number} aerial_capacitance
 * @property {number} aerial_inductance
 * @property {number} tuned_inductance
 * @property {number} tuned_resistance
 * @property {number} tuning_capacitance
 * @property {number} tickler_inductance
 * @property {number} tickler_resistance
 * @property {number} throttle_capacitance
 * @property {number} aerial_tuned
 * @property {number} tuned_tickler
 * @property {number} aerial_tickler
 * @property {number} grid_conductance
 * @property {number} transconductance
 * @property {number} anode_resistance
 */

/**
 * One way in which the network swings by itself.
 *
 * @typedef {object} Mode
 * @property {Complex} pole radian a second: real part growth, imaginary part turning
 * @property {Three} grid what a volt in the aerial, the anode's and the grid's ampere push its grid voltage, V/s
 * @property {Three} tickler the same of its tickler current, A/s
 */

/** @typedef {[Complex, Complex, Complex]} Three */

/**
 * Volts on the grid for each volt in the aerial as a ratio of two polynomials in s, from their constants upwards; the lower is the
 * determinant of the three meshes, as `three_winding_polynomial` has it.
 *
 * @param {Network} n
 */
export function transfer(n) {
  const by = (/** @type {number} */ factor) => [0, factor];
  const intoGrid = [n.grid_conductance, n.tuning_capacitance];
  const a = [1, n.aerial_capacitance * n.aerial_resistance, n.aerial_capacitance * n.aerial_inductance];
  const b = product([0, 0, n.aerial_capacitance * n.aerial_tuned], intoGrid);
  const c = [0, 0, n.aerial_capacitance * n.aerial_tickler];
  const d = by(n.aerial_tuned);
  const e = sum([1], product([n.tuned_resistance, n.tuned_inductance], intoGrid));
  const f = by(n.tuned_tickler);
  const g = [0, 0, n.throttle_capacitance * n.aerial_tickler];
  const feedback = n.transconductance * n.anode_resistance;
  const h = product(by(n.throttle_capacitance), sum([feedback], product(by(n.tuned_tickler), intoGrid)));
  const i = [
    1,
    n.throttle_capacitance * (n.anode_resistance + n.tickler_resistance),
    n.throttle_capacitance * n.tickler_inductance,
  ];
  const less = negative;
  const crossed = sum(product(d, i), less(product(f, g)));
  return {
    above: product(by(-n.aerial_capacitance), crossed),
    below: sum(
      product(a, sum(product(e, i), less(product(f, h)))),
      less(product(b, crossed)),
      product(c, sum(product(d, h), less(product(e, g)))),
    ),
  };
}

/** @param {Network} n @param {Complex} s @returns {[Three, Three, Three]} rows: aerial, tuned circuit, tickler */
function meshes(n, s) {
  const intoGrid = add(scale(s, n.tuning_capacitance), complex(n.grid_conductance));
  const inCondenser = (/** @type {number} */ capacitance) => div(complex(1), scale(s, capacitance));
  const winding = (/** @type {number} */ resistance, /** @type {number} */ inductance) =>
    add(complex(resistance), scale(s, inductance));
  const [m12, m13, m23] = [n.aerial_tuned, n.aerial_tickler, n.tuned_tickler].map((mutual) => scale(s, mutual));
  const feedback = complex(n.transconductance * n.anode_resistance);
  return [
    [add(winding(n.aerial_resistance, n.aerial_inductance), inCondenser(n.aerial_capacitance)), mul(m12, intoGrid), m13],
    [m12, add(complex(1), mul(winding(n.tuned_resistance, n.tuned_inductance), intoGrid)), m23],
    [
      m13,
      add(feedback, mul(m23, intoGrid)),
      add(winding(n.tickler_resistance + n.anode_resistance, n.tickler_inductance), inCondenser(n.throttle_capacitance)),
    ],
  ];
}

/** @param {Network} n @param {Complex} s @returns {[Three, Three, Three]} e.m.f.s round the meshes of the three drives */
function drives(n, s) {
  const none = complex(0);
  return [
    [complex(1), none, none],
    [none, none, complex(-n.anode_resistance)],
    [
      scale(s, -n.aerial_tuned),
      sub(scale(s, -n.tuned_inductance), complex(n.tuned_resistance)),
      scale(s, -n.tuned_tickler),
    ],
  ];
}

/**
 * The cofactors of one column: what each mesh's e.m.f. counts for in that unknown, times the determinant.
 *
 * @param {[Three, Three, Three]} m
 * @param {number} column
 * @returns {Three}
 */
function cofactors(m, column) {
  const [left, right] = [(column + 1) % 3, (column + 2) % 3];
  const minor = (/** @type {Three} */ upper, /** @type {Three} */ lower) =>
    sub(mul(upper[left], lower[right]), mul(upper[right], lower[left]));
  return [minor(m[1], m[2]), minor(m[2], m[0]), minor(m[0], m[1])];
}

/** @param {Three} a @param {Three} b */
const dot = (a, b) => add(mul(a[0], b[0]), mul(a[1], b[1]), mul(a[2], b[2]));

const TURNS = 1e-9; // of its dying away: a pole that turns less does not turn at all
const GRID = 1;
const TICKLER = 2;

/**
 * The six poles, in no order.
 *
 * @param {Network} n
 * @returns {Complex[]} radian a second
 */
export function poles(n) {
  const unit = 1 / Math.sqrt(n.tuned_inductance * n.tuning_capacitance);
  const aerial = 1.001 / Math.sqrt(n.aerial_inductance * n.aerial_capacitance) / unit;
  const damping = (n.aerial_resistance / 2) * Math.sqrt(n.aerial_capacitance / n.aerial_inductance);
  const slack = (n.anode_resistance + n.tickler_resistance) / unit;
  const guesses = [
    complex(-0.01, 1),
    complex(-0.01, -1),
    ...(damping < 1
      ? [complex(-0.03, aerial), complex(-0.03, -aerial)]
      : [complex(-2 * damping * aerial), complex(-aerial / (2 * damping))]),
    complex(-1 / (slack * unit * unit * n.throttle_capacitance)),
    complex(-slack / n.tickler_inductance),
  ];
  return roots(stretched(transfer(n).below, unit), guesses).map((root) => scale(root, unit));
}

/**
 * All modes, each with what the three drives push it.
 *
 * A determinant D that vanishes at p is D'(p) (s − p) nearby, so the part of any unknown that swings at p is Cramer's numerator
 * over D'(p). The polynomial is D times s² and both condensers.
 *
 * @param {Network} n
 * @returns {Mode[]}
 */
export function modes(n) {
  const { below } = transfer(n);
  return poles(n).map((pole) => {
    const [, slope] = valueAndSlope(below, pole);
    const over = div(slope, scale(mul(pole, pole), n.aerial_capacitance * n.throttle_capacitance));
    const matrix = meshes(n, pole);
    const driven = drives(n, pole);
    const pushed = (/** @type {number} */ unknown) => {
      const counts = cofactors(matrix, unknown);
      return /** @type {Three} */ (driven.map((drive) => div(dot(counts, drive), over)));
    };
    return { pole, grid: pushed(GRID), tickler: pushed(TICKLER) };
  });
}

/**
 * Volts on the grid for each volt in the aerial by the steady-state formula, in size; beyond the threshold it is false.
 *
 * @param {Network} n
 * @returns {(frequency: number) => number} of hertz
 */
export function steadyFormula(n) {
  const { above, below } = transfer(n);
  return (frequency) => sizeAt(above, 2 * Math.PI * frequency) / sizeAt(below, 2 * Math.PI * frequency);
}

/** Inductance of the tickler with the other windings shorted, in henry. @param {Network} n */
export function ticklerLeakage(n) {
  const [l1, l2, l3] = [n.aerial_inductance, n.tuned_inductance, n.tickler_inductance];
  const [m12, m13, m23] = [n.aerial_tuned, n.aerial_tickler, n.tuned_tickler];
  const all = l1 * (l2 * l3 - m23 * m23) - m12 * (m12 * l3 - m23 * m13) + m13 * (m12 * m23 - l2 * m13);
  return all / (l1 * l2 - m12 * m12);
}

/**
 * Of the pair of poles that outlasts all other pairs: frequency in hertz at which the set rings by itself, and the rate per second
 * at which that grows.
 *
 * @param {Complex[]} found
 */
export function ringing(found) {
  const pole = found.filter(({ re, im }) => im > TURNS * Math.abs(re)).reduce((best, next) => (next.re > best.re ? next : best));
  return { frequency: pole.im / (2 * Math.PI), growth: pole.re };
}

/**
 * The mode nearest to a frequency; and the distance, in radians a second, of the next nearest.
 *
 * @param {Mode[]} all
 * @param {number} frequency hertz
 */
export function nearest(all, frequency) {
  const carrier = complex(0, 2 * Math.PI * frequency);
  const away = (/** @type {Mode} */ mode) => abs(sub(mode.pole, carrier));
  const [slow, second] = [...all].sort((a, b) => away(a) - away(b));
  return { slow, fast: all.filter((mode) => mode !== slow), apart: away(second) };
}
