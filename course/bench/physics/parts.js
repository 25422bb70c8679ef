/**
 * What the march looks up in every step, in one array of floats: to read from those costs least. Complex numbers stand as two, `…_R`
 * before `…_I`.
 */

import { scale } from "./complex.js";

/** @typedef {import("./complex.js").Complex} Complex */
/** @typedef {import("./slow-mode.js").Net} Net */
/** @typedef {import("./slow-mode.js").Stage} Stage */

export const MU = 0;
export const PERVEANCE = 1;
export const OFFSET = 2;
export const SUPPLY = 3;
export const LOAD = 4;
export const BYPASS = 5;
export const SLOPE_VOLTAGE = 6;
export const ZERO_CURRENT = 7;
export const LEAK = 8;
export const LEAK_RETURN = 9;
export const LEAKING = 10;
export const SLOPE = 11;
export const GRID_SLOPE = 12;
export const GRID_NODE = 13;
export const GRID_FED = 14;
export const CARRIER = 15;
export const STEP = 16;
export const ANODE_RATE = 17;
export const ANODE_WHOLE = 18;
export const ANODE_RAMP = 19;
export const RATE_R = 20;
export const RATE_I = 21;
export const DRIVE_R = 22;
export const DRIVE_I = 23;
export const BY_ANODE_R = 24;
export const BY_ANODE_I = 25;
export const BY_GRID_R = 26;
export const BY_GRID_I = 27;
export const BY_EMF_R = 28;
export const BY_EMF_I = 29;
export const GRID_AT_ONCE_R = 30;
export const GRID_AT_ONCE_I = 31;
export const DRIVE_AT_ONCE_R = 32;
export const DRIVE_AT_ONCE_I = 33;
export const GRID_BY_ANODE_R = 34;
export const GRID_BY_ANODE_I = 35;
export const GRID_BY_GRID_R = 36;
export const GRID_BY_GRID_I = 37;
export const DRIVE_BY_ANODE_R = 38;
export const DRIVE_BY_ANODE_I = 39;
export const DRIVE_BY_GRID_R = 40;
export const DRIVE_BY_GRID_I = 41;
export const SECOND_DRIVE_R = 42;
export const SECOND_DRIVE_I = 43;
export const THIRD_DRIVE_R = 44;
export const THIRD_DRIVE_I = 45;
export const FOURTH_DRIVE_R = 46;
export const FOURTH_DRIVE_I = 47;
export const SECOND_GRID_R = 48;
export const SECOND_GRID_I = 49;
export const THIRD_GRID_R = 50;
export const THIRD_GRID_I = 51;
export const FOURTH_GRID_R = 52;
export const FOURTH_GRID_I = 53;
export const PARTS = 54;

const TERMS = 14; // of the exponential's series
const FEW_TERMS = 8; // that serve as well while the exponent's parts are below `SMALL`
const SMALL = 0.1;
const LARGE = 1; // squared: beyond it the exponential itself loses no figures
const ONE_OVER = Float64Array.from({ length: TERMS + 1 }, (_, n) => 1 / n);

/**
 * What becomes, by a step's end, of 1 at its start, of a push of 1, and of one that grows from 0 to 1: six numbers.
 *
 * @param {number} re the exponent
 * @param {number} im
 * @param {Float64Array} into
 */
export function throughAStep(re, im, into) {
  const size = re * re + im * im;
  if (size > LARGE) {
    const keepR = Math.exp(re) * Math.cos(im);
    const keepI = Math.exp(re) * Math.sin(im);
    const pushR = ((keepR - 1) * re + keepI * im) / size;
    const pushI = (keepI * re - (keepR - 1) * im) / size;
    into[0] = keepR;
    into[1] = keepI;
    into[2] = pushR;
    into[3] = pushI;
    into[4] = ((pushR - 1) * re + pushI * im) / size;
    into[5] = (pushI * re - (pushR - 1) * im) / size;
    return;
  }
  let rampR = 0;
  let rampI = 0;
  const terms = Math.abs(re) < SMALL && Math.abs(im) < SMALL ? FEW_TERMS : TERMS;
  for (let n = terms; n > 2; n--) {
    const r = 1 + (rampR * re - rampI * im) * ONE_OVER[n];
    rampI = (rampR * im + rampI * re) * ONE_OVER[n];
    rampR = r;
  }
  rampR /= 2;
  rampI /= 2;
  const pushR = 1 + re * rampR - im * rampI;
  const pushI = re * rampI + im * rampR;
  into[0] = 1 + re * pushR - im * pushI;
  into[1] = re * pushI + im * pushR;
  into[2] = pushR;
  into[3] = pushI;
  into[4] = rampR;
  into[5] = rampI;
}

/**
 * Fill in all parts for a set and a length of step.
 *
 * @param {Float64Array} parts
 * @param {Net} net
 * @param {Stage} stage
 * @param {number} reference hertz
 * @param {number} rate steps a second
 */
export function fillParts(parts, net, stage, reference, rate) {
  const step = 1 / rate;
  const complexes = /** @type {[number, Complex][]} */ ([
    [RATE_R, net.rate],
    [DRIVE_R, net.drive],
    [BY_ANODE_R, net.byAnode],
    [BY_GRID_R, net.byGrid],
    [BY_EMF_R, scale(net.byEmf, step)],
    [GRID_AT_ONCE_R, net.gridAtOnce],
    [DRIVE_AT_ONCE_R, net.driveAtOnce],
    [GRID_BY_ANODE_R, net.gridByAnode],
    [GRID_BY_GRID_R, net.gridByGrid],
    [DRIVE_BY_ANODE_R, net.driveByAnode],
    [DRIVE_BY_GRID_R, net.driveByGrid],
    [SECOND_DRIVE_R, net.secondDrive],
    [THIRD_DRIVE_R, net.thirdDrive],
    [FOURTH_DRIVE_R, net.fourthDrive],
    [SECOND_GRID_R, net.secondGrid],
    [THIRD_GRID_R, net.thirdGrid],
    [FOURTH_GRID_R, net.fourthGrid],
  ]);
  for (const [place, { re, im }] of complexes) parts.set([re, im], place);
  parts[MU] = stage.amplification_factor;
  parts[PERVEANCE] = stage.perveance;
  parts[OFFSET] = stage.offset;
  parts[SUPPLY] = stage.supply;
  parts[LOAD] = stage.load_resistance;
  parts[BYPASS] = stage.bypass_capacitance;
  parts[SLOPE_VOLTAGE] = stage.slope_voltage;
  parts[ZERO_CURRENT] = stage.zero_current;
  parts[LEAK] = stage.leak_resistance;
  parts[LEAK_RETURN] = stage.leak_return;
  parts[LEAKING] = step / (stage.leak_resistance * net.gridNode);
  parts[SLOPE] = net.slope;
  parts[GRID_SLOPE] = net.gridSlope;
  parts[GRID_NODE] = net.gridNode;
  parts[GRID_FED] = net.gridFed;
  parts[CARRIER] = 2 * Math.PI * reference;
  parts[STEP] = step;
  const anodeRate = -(1 / stage.load_resistance + net.slope / stage.amplification_factor) / stage.bypass_capacitance;
  const passed = -anodeRate * step;
  const anodeWhole = -Math.expm1(-passed) / passed;
  parts[ANODE_RATE] = anodeRate;
  parts[ANODE_WHOLE] = anodeWhole;
  parts[ANODE_RAMP] = passed > 1e-4 ? (1 - anodeWhole) / passed : 0.5;
}
