/**
 * Three coupled windings and a valve with its capacitances, for weak signals: the network of `solutions/unit06_reaction`.
 *
 * Round the meshes of aerial, tuned circuit and tickler the voltages add up to nothing. Unknown are the aerial's current, the
 * tuned circuit's voltage and the anode's, at a complex frequency s in radians a second; the two other currents follow from
 * these. All is polynomials in s, the meshes of aerial and tickler being multiplied by s and their condenser. Three things may
 * drive the network: a volt in the aerial, and an ampere drawn from the tuned circuit or from the anode.
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
 * @property {number} grid_anode_capacitance
 * @property {number} anode_capacitance
 * @property {number} tickler_conductance siemens, of a resistor across the tickler
 * @property {number} [grid_anode_conductance] siemens, in parallel with that capacitance: what the march has of the grid's
 */

/**
 * One way in which the network swings by itself.
 *
 * @typedef {object} Mode
 * @property {Complex} pole radian a second: real part growth, imaginary part turning
 * @property {Three} tuned what the three drives push the tuned circuit's voltage, V/s
 * @property {Three} anode the same of the anode's voltage
 */

/** @template T @typedef {[T, T, T]} Triple */
/** @typedef {Triple<Complex>} Three */
/** @typedef {number[]} Polynomial */

const THROTTLE = 2; // the mesh in which it stands

/**
 * The three meshes, each with what the unknowns count for in it; and the drives, each with what it is in each mesh.
 *
 * @param {Network} n
 * @returns {{matrix: Triple<Triple<Polynomial>>, drives: Triple<Triple<Polynomial>>}}
 */
function meshes(n) {
  const [inAerial, inThrottle] = [n.aerial_capacitance, n.throttle_capacitance];
  const between = [n.grid_anode_conductance ?? 0, n.grid_anode_capacitance];
  const fromTuned = sum([n.grid_conductance, n.tuning_capacitance], between);
  const fromAnode = sum([1 / n.anode_resistance, n.anode_capacitance], between);
  const forward = sum([n.transconductance], negative(between));
  /** Of the aerial's current, the tuned winding's and the tickler's, what each counts for. @type {Triple<Triple<Polynomial>>} */
  const currents = [
    [
      [1, inAerial * n.aerial_resistance, inAerial * n.aerial_inductance],
      [0, 0, inAerial * n.aerial_tuned],
      [0, 0, inAerial * n.aerial_tickler],
    ],
    [[0, n.aerial_tuned], [n.tuned_resistance, n.tuned_inductance], [0, n.tuned_tickler]],
    [
      [0, 0, inThrottle * n.aerial_tickler],
      [0, 0, inThrottle * n.tuned_tickler],
      [0, inThrottle * n.tickler_resistance, inThrottle * n.tickler_inductance],
    ],
  ];
  /** What the throttle's current counts for, which is the tickler's and that of the resistor across it. */
  const throttle = currents.map(([, , tickler], mesh) =>
    sum(tickler, tickler.slice(1).map((part) => (part * n.tickler_conductance) / inThrottle), mesh === THROTTLE ? [1] : [0]),
  );
  const beside = currents.map(([, , tickler]) => tickler.map((part) => -part * n.tickler_conductance));
  const voltages = [[[0], [0]], [[1], [0]], [[0], [0, -inThrottle]]];
  const each = (/** @type {(row: Triple<Polynomial>, mesh: number) => any} */ one) => /** @type {Triple<any>} */ (currents.map(one));
  return {
    matrix: each(([aerial, tuned], mesh) => [
      aerial,
      sum(voltages[mesh][0], product(tuned, fromTuned), negative(product(throttle[mesh], forward))),
      sum(voltages[mesh][1], beside[mesh], negative(product(tuned, between)), negative(product(throttle[mesh], fromAnode))),
    ]),
    drives: [[[0, inAerial], [0], [0]], each(([, tuned]) => negative(tuned)), each((_, mesh) => throttle[mesh])],
  };
}

/** A mesh's part in the determinant. @param {Triple<Polynomial>} upper @param {Triple<Polynomial>} lower @param {number} left @param {number} right */
const minor = (upper, lower, left, right) => sum(product(upper[left], lower[right]), negative(product(upper[right], lower[left])));

/**
 * Volts on the tuned circuit for each volt in the aerial as a ratio of two polynomials, from their constants upwards; the lower
 * is the determinant of the three meshes, as `full_polynomial` has it.
 *
 * @param {Network} n
 */
export function transfer(n) {
  const [first, second, third] = meshes(n).matrix;
  const crossed = minor(second, third, 2, 0);
  return {
    above: product([0, n.aerial_capacitance], crossed),
    below: sum(
      product(first[0], minor(second, third, 1, 2)),
      product(first[1], crossed),
      product(first[2], minor(second, third, 0, 1)),
    ),
  };
}

/** @param {Triple<Polynomial>} row @param {Complex} s */
const at = (row, s) => /** @type {Three} */ (row.map((polynomial) => valueAndSlope(polynomial, s)[0]));

/**
 * The cofactors of one column: what each mesh's e.m.f. counts for in that unknown, times the determinant.
 *
 * @param {Three[]} m
 * @param {number} column
 * @returns {Three}
 */
function cofactors(m, column) {
  const [left, right] = [(column + 1) % 3, (column + 2) % 3];
  const crossed = (/** @type {Three} */ upper, /** @type {Three} */ lower) =>
    sub(mul(upper[left], lower[right]), mul(upper[right], lower[left]));
  return [crossed(m[1], m[2]), crossed(m[2], m[0]), crossed(m[0], m[1])];
}

/** @param {Three} a @param {Three} b */
const dot = (a, b) => add(mul(a[0], b[0]), mul(a[1], b[1]), mul(a[2], b[2]));

const TURNS = 1e-9; // of its dying away: a pole that turns less does not turn at all
const TUNED = 1;
const ANODE = 2;

/**
 * The seven poles, in no order.
 *
 * @param {Network} n
 * @returns {Complex[]} radian a second
 */
export function poles(n) {
  const unit = 1 / Math.sqrt(n.tuned_inductance * n.tuning_capacitance);
  const aerial = 1.001 / Math.sqrt(n.aerial_inductance * n.aerial_capacitance) / unit;
  const damping = (n.aerial_resistance / 2) * Math.sqrt(n.aerial_capacitance / n.aerial_inductance);
  const [throttle, anode] = [n.throttle_capacitance, n.anode_capacitance];
  const tickler = 1.002 / Math.sqrt((n.tickler_inductance * throttle * anode) / (throttle + anode)) / unit;
  const guesses = [
    complex(-0.01, 1),
    complex(-0.01, -1),
    ...(damping < 1
      ? [complex(-0.03, aerial), complex(-0.03, -aerial)]
      : [complex(-2 * damping * aerial), complex(-aerial / (2 * damping))]),
    complex(-0.02 * tickler, tickler),
    complex(-0.02 * tickler, -tickler),
    complex(-1 / (unit * n.anode_resistance * (throttle + anode))),
  ];
  return roots(stretched(transfer(n).below, unit), guesses).map((root) => scale(root, unit));
}

/**
 * All modes, each with what the three drives push it.
 *
 * A determinant D that vanishes at p is D'(p) (s − p) nearby, so the part of any unknown that swings at p is Cramer's numerator
 * over D'(p).
 *
 * @param {Network} n
 * @returns {Mode[]}
 */
export function modes(n) {
  const { below } = transfer(n);
  const { matrix, drives } = meshes(n);
  return poles(n).map((pole) => {
    const [, slope] = valueAndSlope(below, pole);
    const rows = matrix.map((row) => at(row, pole));
    const driven = drives.map((drive) => at(drive, pole));
    const pushed = (/** @type {number} */ unknown) => {
      const counts = cofactors(rows, unknown);
      return /** @type {Three} */ (driven.map((drive) => div(dot(counts, drive), slope)));
    };
    return { pole, tuned: pushed(TUNED), anode: pushed(ANODE) };
  });
}

/**
 * Volts on the tuned circuit and on the anode for each ampere drawn from the anode.
 *
 * @param {Network} n
 * @param {Complex} s
 */
export function drawnFromAnode(n, s) {
  const { matrix, drives } = meshes(n);
  const rows = matrix.map((row) => at(row, s));
  const drive = at(drives[2], s);
  const [counts, determinant] = [cofactors(rows, TUNED), dot(cofactors(rows, 0), /** @type {Three} */ (rows.map((row) => row[0])))];
  return { tuned: div(dot(counts, drive), determinant), anode: div(dot(cofactors(rows, ANODE), drive), determinant) };
}

/**
 * Volts on the tuned circuit for each volt in the aerial by the steady-state formula, in size; beyond the threshold it is false.
 *
 * @param {Network} n
 * @returns {(frequency: number) => number} of hertz
 */
export function steadyFormula(n) {
  const { above, below } = transfer(n);
  return (frequency) => sizeAt(above, 2 * Math.PI * frequency) / sizeAt(below, 2 * Math.PI * frequency);
}

/**
 * Frequency in hertz at which the set rings, or sings, by itself, and the rate per second at which that grows: of the pair of poles
 * that grows, if one does; else of that which the tuning condenser moves most, for its size.
 *
 * @param {Network} n
 * @param {Complex[]} [found] its poles, if they are known
 */
export function ringing(n, found = poles(n)) {
  const turning = found.filter(({ re, im }) => im > TURNS * Math.abs(re));
  const most = (/** @type {(pole: Complex) => number} */ worth) => {
    const worths = turning.map(worth);
    return turning[worths.indexOf(Math.max(...worths))];
  };
  const { below } = transfer(n);
  const shut = transfer({ ...n, tuning_capacitance: 0 }).below;
  const byTuning = below.map((a, power) => a - (shut[power] ?? 0));
  const moved = (/** @type {Complex} */ pole) =>
    abs(div(valueAndSlope(byTuning, pole)[0], mul(pole, valueAndSlope(below, pole)[1])));
  const pole = most(turning.some(({ re }) => re > 0) ? ({ re }) => re : moved);
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
