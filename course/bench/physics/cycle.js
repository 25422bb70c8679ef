/** The two tables that the envelope's equation looks things up in: the valve's currents, and an exponential grid's. */

import { besselAverages } from "./bessel.js";

/** @typedef {{scale: number, data: string}} Packed */

/**
 * @typedef {object} CycleFigures as `course/bench/sets.py` writes them
 * @property {number} angles
 * @property {number} shares
 * @property {number} lowest_angle
 * @property {number} lowest_share
 * @property {number} grid_points
 * @property {number} grid_limit
 * @property {Packed} plain
 * @property {Packed} by_coil
 */

/**
 * @typedef {object} CycleTables
 * @property {CycleFigures} figures
 * @property {Float64Array} plain with margins, angles by shares by `CURRENTS`
 * @property {Float64Array} byCoil
 * @property {number} crestStep nodes of `grid` for each unit of ln(1 + a)
 * @property {Float64Array} grid pairs: ln I0(a) − a and 2 I1(a)/(a I0(a)), evenly spaced in ln(1 + a)
 */

export const CURRENTS = 4; // mean, fundamental's real and imaginary part, overtones
const DIGITS = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";

/** Whole numbers of either sign, five bits a digit, the lowest first; a digit of 32 or more has another after it. @param {string} text */
function wholeNumbers(text) {
  /** @type {number[]} */ const found = [];
  let held = 0;
  let bits = 0;
  for (const character of text) {
    const digit = DIGITS.indexOf(character);
    held |= (digit & 31) << bits;
    bits += 5;
    if (digit < 32) {
      found.push(held & 1 ? -(held >> 1) : held >> 1);
      held = bits = 0;
    }
  }
  return found;
}

/** A table from its second differences both ways. @param {Packed} packed @param {number} columns */
function unpacked({ scale, data }, columns) {
  const table = wholeNumbers(data);
  const row = columns * CURRENTS;
  for (const [back, starts] of [[row, Infinity], [CURRENTS, row]]) {
    for (let twice = 0; twice < 2; twice++) {
      for (let k = back; k < table.length; k++) if (k % starts >= back) table[k] += table[k - back];
    }
  }
  return Float64Array.from(table, (whole) => whole * scale);
}

/**
 * A table with one more row and column all round, as `with_margins` in Python: continued with the same curvature, but mirrored
 * beyond the last row, where the carrier vanishes.
 *
 * @param {Float64Array} table
 * @param {number} rows
 * @param {number} columns
 */
function withMargins(table, rows, columns) {
  const at = (/** @type {number} */ r, /** @type {number} */ c, /** @type {number} */ k) => table[(r * columns + c) * CURRENTS + k];
  const onward = (/** @type {(n: number) => number} */ value) => 3 * value(0) - 3 * value(1) + value(2);
  const inRow = (/** @type {number} */ r, /** @type {number} */ c, /** @type {number} */ k) => {
    if (r < 0) return onward((n) => at(n, c, k));
    return at(r === rows ? rows - 2 : r, c, k);
  };
  const anywhere = (/** @type {number} */ r, /** @type {number} */ c, /** @type {number} */ k) => {
    if (c < 0) return onward((n) => inRow(r, n, k));
    if (c === columns) return onward((n) => inRow(r, columns - 1 - n, k));
    return inRow(r, c, k);
  };
  const wide = new Float64Array((rows + 2) * (columns + 2) * CURRENTS);
  let place = 0;
  for (let r = -1; r <= rows; r++) {
    for (let c = -1; c <= columns; c++) {
      for (let k = 0; k < CURRENTS; k++) wide[place++] = anywhere(r, c, k);
    }
  }
  return wide;
}

/** @param {CycleFigures} figures @returns {Float64Array} */
function gridTable({ grid_points, grid_limit }) {
  const table = new Float64Array(2 * grid_points);
  for (let k = 0; k < grid_points; k++) {
    const crest = k ? Math.expm1((k * Math.log1p(grid_limit)) / (grid_points - 1)) : 1e-9;
    const { logarithm, ratio } = besselAverages(crest);
    table[2 * k] = logarithm;
    table[2 * k + 1] = (2 * ratio) / crest;
  }
  return table;
}

/** @param {CycleFigures} figures @returns {CycleTables} */
export function cycleTables(figures) {
  const wide = (/** @type {Packed} */ packed) => withMargins(unpacked(packed, figures.shares), figures.angles, figures.shares);
  const crestStep = (figures.grid_points - 1) / Math.log1p(figures.grid_limit);
  return { figures, plain: wide(figures.plain), byCoil: wide(figures.by_coil), grid: gridTable(figures), crestStep };
}

/** The valve's table for one set's coils. @param {CycleTables} tables @param {number} coil @param {Float64Array} [into] */
export function anodeTable({ plain, byCoil }, coil, into = new Float64Array(plain.length)) {
  for (let k = 0; k < plain.length; k++) into[k] = plain[k] + coil * byCoil[k];
  return into;
}

/**
 * An exponential grid's law: the logarithm of its mean current, in zero currents, and I1/I0.
 *
 * @param {CycleTables} tables
 * @param {number} crest volt
 * @param {number} bias volt
 * @param {number} slopeVoltage
 * @param {Float64Array} into
 */
export function gridLaw({ grid, crestStep }, crest, bias, slopeVoltage, into) {
  const ratio = crest / slopeVoltage;
  const last = grid.length / 2 - 1;
  const place = Math.min(Math.log1p(ratio) * crestStep, last);
  const node = Math.min(Math.floor(place), last - 1);
  const part = place - node;
  const at = 2 * node;
  into[0] = bias / slopeVoltage + ratio + (1 - part) * grid[at] + part * grid[at + 2];
  into[1] = 0.5 * ratio * ((1 - part) * grid[at + 1] + part * grid[at + 3]);
}
