/** What valve and grid do, averaged round a carrier's cycle, as `solutions/unit07_oscillation/cycle`. */

import { besselAverages } from "./bessel.js";

/**
 * @typedef {object} CycleFigures as `course/bench/sets.py` writes them
 * @property {number} moments of a cycle at which the valve's current is summed
 * @property {number} grid_points
 * @property {number} grid_limit
 */

/**
 * @typedef {object} CycleTables
 * @property {Float64Array} waves at each moment cosine and minus sine of the carrier's phase, of twice that, and so on to four times
 * @property {number} limit slope voltages: the largest crest that the grid's table holds
 * @property {number} crestStep nodes of `grid` for each unit of ln(1 + a)
 * @property {Float64Array} grid pairs: ln I0(a) − a and 2 I1(a)/(a I0(a)), evenly spaced in ln(1 + a)
 */

const WAVES = 8; // numbers at each moment
const MEAN = 0;
const SLOPE = 9;

/** @param {CycleFigures} figures @returns {CycleTables} */
export function cycleTables(figures) {
  const waves = new Float64Array(figures.moments * WAVES);
  for (let k = 0; k < waves.length; k += 2) {
    const phase = (2 * Math.PI * (Math.floor(k / WAVES) + 0.5)) / figures.moments;
    const harmonic = (k % WAVES) / 2 + 1;
    waves[k] = Math.cos(harmonic * phase);
    waves[k + 1] = -Math.sin(harmonic * phase);
  }
  const limit = figures.grid_limit;
  return { waves, limit, grid: gridTable(figures), crestStep: (figures.grid_points - 1) / Math.log1p(figures.grid_limit) };
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

/**
 * A three-halves law's current round a cycle.
 *
 * @param {CycleTables} tables
 * @param {Float64Array} drive its steady part, the carrier's crest, and second to fourth harmonic, real and imaginary: eight volts
 * @param {number} perveance
 * @param {Float64Array} into mean; fundamental to fourth harmonic, real and imaginary; mean slope: ten numbers
 */
export function anodeCycle({ waves }, drive, perveance, into) {
  const steady = drive[0];
  const crest = drive[1];
  const secondR = drive[2];
  const secondI = drive[3];
  const thirdR = drive[4];
  const thirdI = drive[5];
  const fourthR = drive[6];
  const fourthI = drive[7];
  let mean = 0;
  let slope = 0;
  let oneR = 0;
  let oneI = 0;
  let twoR = 0;
  let twoI = 0;
  let threeR = 0;
  let threeI = 0;
  let fourR = 0;
  let fourI = 0;
  const end = waves.length;
  for (let at = 0; at < end; at += WAVES) {
    const cosine = waves[at];
    const cosine2 = waves[at + 2];
    const sine2 = waves[at + 3];
    const cosine3 = waves[at + 4];
    const sine3 = waves[at + 5];
    const cosine4 = waves[at + 6];
    const sine4 = waves[at + 7];
    const volts =
      steady + crest * cosine + secondR * cosine2 + secondI * sine2 + thirdR * cosine3 + thirdI * sine3 + fourthR * cosine4 + fourthI * sine4;
    if (volts > 0) {
      const root = Math.sqrt(volts);
      const current = volts * root;
      slope += root;
      mean += current;
      oneR += current * cosine;
      oneI += current * waves[at + 1];
      twoR += current * cosine2;
      twoI += current * sine2;
      threeR += current * cosine3;
      threeI += current * sine3;
      fourR += current * cosine4;
      fourI += current * sine4;
    }
  }
  const share = (perveance * WAVES) / end;
  const twice = 2 * share;
  into[MEAN] = share * mean;
  into[1] = twice * oneR;
  into[2] = twice * oneI;
  into[3] = twice * twoR;
  into[4] = twice * twoI;
  into[5] = twice * threeR;
  into[6] = twice * threeI;
  into[7] = twice * fourR;
  into[8] = twice * fourI;
  into[SLOPE] = 1.5 * share * slope;
}

/**
 * An exponential grid's law: the logarithm of its mean current, in zero currents, and I1/I0.
 *
 * @param {CycleTables} tables
 * @param {number} crest volt, overtones left out
 * @param {number} bent by what share the wave is bent more sharply there than a sine: how long the current flows follows from it
 * @param {number} bias volt, and what overtones add to the crest
 * @param {number} slopeVoltage
 * @param {Float64Array} into
 */
export function gridLaw({ grid, crestStep }, crest, bent, bias, slopeVoltage, into) {
  const ratio = (crest * (1 + bent)) / slopeVoltage;
  const last = grid.length / 2 - 1;
  const place = Math.min(Math.log1p(ratio) * crestStep, last);
  const node = Math.min(Math.floor(place), last - 1);
  const part = place - node;
  const at = 2 * node;
  into[0] = (bias + crest) / slopeVoltage + (1 - part) * grid[at] + part * grid[at + 2];
  into[1] = 0.5 * ratio * ((1 - part) * grid[at + 1] + part * grid[at + 3]);
}
