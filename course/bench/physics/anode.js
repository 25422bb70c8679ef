/** The valve's answer to its drive, as `anode_push` of `solutions/unit07_oscillation/stepping`; complex numbers are written out. */

import { anodeCycle } from "./cycle.js";
import * as p from "./parts.js";
import { BENT, DRIVES, EXCESS_I, EXCESS_R, OVERTONE } from "./state.js";

const TINY = 1e-30; // volt
const LEAST_CREST = 1e-7; // volt: below it the valve's slope is that of a weak signal, and rounding would spoil it
const HARMONICS = 3;
const NO_OVERTONES = 0.003; // of the crest: fewer do not shift it
const CREST_STEPS = 3; // of Newton's
const MOST_LEAN = 1; // radian
const FLATTEST = 0.25; // how sharply the wave on the grid is bent at its crest, as a share of a sine's, at least
const MOST_BENT = 4; // likewise, at most

/**
 * By how much overtones raise a wave's crest, and by what share more sharply it is bent there, into the state.
 *
 * @param {Float64Array} s
 * @param {number} crest volt, without them
 * @param {Float64Array} overtones volt, second to fourth harmonic, real and imaginary
 */
function bendCrest(s, crest, overtones) {
  const least = FLATTEST * crest + TINY;
  const squares = (/** @type {number} */ k) => Math.sqrt(overtones[k] * overtones[k] + overtones[k + 1] * overtones[k + 1]);
  if (squares(0) + squares(2) + squares(4) < NO_OVERTONES * crest) {
    s[OVERTONE] = overtones[0] + overtones[2] + overtones[4];
    s[BENT] = 0;
    return;
  }
  let angle = 0;
  for (let turns = CREST_STEPS; ; turns--) {
    const atR = Math.cos(angle);
    const atI = Math.sin(angle);
    let height = crest * atR;
    let slope = crest * atI;
    let bent = height;
    let r = atR;
    let i = atI;
    for (let k = 0, harmonic = 2; k < 2 * HARMONICS; k += 2, harmonic++) {
      const turned = r * atR - i * atI;
      i = r * atI + i * atR;
      r = turned;
      const real = overtones[k] * r - overtones[k + 1] * i;
      height += real;
      slope += harmonic * (overtones[k] * i + overtones[k + 1] * r);
      bent += harmonic * harmonic * real;
    }
    if (turns === 0) {
      s[OVERTONE] = height - crest;
      s[BENT] = Math.min(Math.max(bent, least) / crest, MOST_BENT) - 1;
      return;
    }
    angle = Math.min(Math.max(angle - slope / Math.max(bent, least), -MOST_LEAN), MOST_LEAN);
  }
}

/**
 * @param {import("./cycle.js").CycleTables} tables
 * @param {Float64Array} parts as `fillParts` has them
 */
export function createAnode(tables, parts) {
  const drive = new Float64Array(8);
  const currents = new Float64Array(10);
  const overtones = new Float64Array(2 * HARMONICS);
  const passed = new Float64Array(3); // beyond the slope at rest, real and imaginary; mean: ampere

  /**
   * What it passes, into `passed`; its slope to the carrier and the overtones, into the state.
   *
   * @param {Float64Array} s
   * @param {number} undisturbedR the drive that slopes at rest would give
   * @param {number} undisturbedI
   * @param {number} droppedR the carrier left on the grid condenser
   * @param {number} droppedI
   * @param {number} steady
   * @param {number} gridR
   * @param {number} gridI
   */
  function pass(s, undisturbedR, undisturbedI, droppedR, droppedI, steady, gridR, gridI) {
    const slope = parts[p.SLOPE];
    const byAnodeR = parts[p.DRIVE_BY_ANODE_R];
    const byAnodeI = parts[p.DRIVE_BY_ANODE_I];
    const wantR = undisturbedR - droppedR - slope * (byAnodeR * droppedR - byAnodeI * droppedI);
    const wantI = undisturbedI - droppedI - slope * (byAnodeR * droppedI + byAnodeI * droppedR);
    const overR = 1 - (byAnodeR * s[EXCESS_R] - byAnodeI * s[EXCESS_I]);
    const overI = -(byAnodeR * s[EXCESS_I] + byAnodeI * s[EXCESS_R]);
    const over = overR * overR + overI * overI;
    const driveR = (wantR * overR + wantI * overI) / over;
    const driveI = (wantI * overR - wantR * overI) / over;
    const crest = Math.sqrt(driveR * driveR + driveI * driveI) + LEAST_CREST;
    drive[0] = steady;
    drive[1] = crest;
    for (let k = 0; k < 2 * HARMONICS; k++) drive[2 + k] = s[DRIVES + k];
    anodeCycle(tables, drive, parts[p.PERVEANCE], currents);

    let behindR = gridR * driveR + gridI * driveI;
    let behindI = gridI * driveR - gridR * driveI;
    const size = Math.sqrt(behindR * behindR + behindI * behindI) + TINY;
    behindR /= size;
    behindI /= size;
    let turnR = behindR;
    let turnI = behindI;
    const meanSlope = currents[9];
    for (let k = 0; k < 2 * HARMONICS; k += 2) {
      const r = turnR * behindR - turnI * behindI;
      turnI = turnR * behindI + turnI * behindR;
      turnR = r;
      const currentR = currents[3 + k];
      const currentI = currents[4 + k];
      const gridByR = parts[p.SECOND_GRID_R + k];
      const gridByI = parts[p.SECOND_GRID_I + k];
      const onGridR = gridByR * currentR - gridByI * currentI;
      const onGridI = gridByR * currentI + gridByI * currentR;
      overtones[k] = onGridR * turnR - onGridI * turnI;
      overtones[k + 1] = onGridR * turnI + onGridI * turnR;
      const byR = parts[p.SECOND_DRIVE_R + k];
      const byI = parts[p.SECOND_DRIVE_I + k];
      const lessR = currentR - meanSlope * drive[2 + k];
      const lessI = currentI - meanSlope * drive[3 + k];
      const belowR = 1 - byR * meanSlope;
      const belowI = -byI * meanSlope;
      const below = belowR * belowR + belowI * belowI;
      const aboveR = byR * lessR - byI * lessI;
      const aboveI = byR * lessI + byI * lessR;
      s[DRIVES + k] = (aboveR * belowR + aboveI * belowI) / below;
      s[DRIVES + k + 1] = (aboveI * belowR - aboveR * belowI) / below;
    }
    bendCrest(s, Math.sqrt(gridR * gridR + gridI * gridI) + TINY, overtones);
    s[EXCESS_R] = currents[1] / crest - slope;
    s[EXCESS_I] = currents[2] / crest;
    passed[0] = s[EXCESS_R] * driveR - s[EXCESS_I] * driveI - slope * droppedR;
    passed[1] = s[EXCESS_R] * driveI + s[EXCESS_I] * driveR - slope * droppedI;
    passed[2] = currents[0];
  }

  /** By how much its yielding changes the mode's growth and turning, 1/s, into `passed`'s first two. @param {Float64Array} s */
  function yielded(s) {
    const byR = parts[p.BY_ANODE_R] * parts[p.DRIVE_R] - parts[p.BY_ANODE_I] * parts[p.DRIVE_I];
    const byI = parts[p.BY_ANODE_R] * parts[p.DRIVE_I] + parts[p.BY_ANODE_I] * parts[p.DRIVE_R];
    const aboveR = byR * s[EXCESS_R] - byI * s[EXCESS_I];
    const aboveI = byR * s[EXCESS_I] + byI * s[EXCESS_R];
    const belowR = 1 - (parts[p.DRIVE_BY_ANODE_R] * s[EXCESS_R] - parts[p.DRIVE_BY_ANODE_I] * s[EXCESS_I]);
    const belowI = -(parts[p.DRIVE_BY_ANODE_R] * s[EXCESS_I] + parts[p.DRIVE_BY_ANODE_I] * s[EXCESS_R]);
    const below = belowR * belowR + belowI * belowI;
    passed[0] = (aboveR * belowR + aboveI * belowI) / below;
    passed[1] = (aboveI * belowR - aboveR * belowI) / below;
  }

  return { pass, passed, yielded };
}
