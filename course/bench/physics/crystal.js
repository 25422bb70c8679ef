/**
 * The march of the envelope for a set whose detector is a crystal, in step's length and state like that for a valve.
 *
 * A crystal answers at once, and loads the tuned circuit so heavily that neither may run ahead of the other: the charge that it passes
 * in a step is such that the current at the step's end brings it, while the crest and the voltage on the telephones' condenser have
 * already yielded to it. There is one such charge only, for the more is passed the less would flow.
 *
 * Source of the crystal's law for a carrier: `solutions/unit04_crystal_set/detector_load`.
 */

import { gridLaw } from "./cycle.js";
import { throughAStep } from "./parts.js";
import { BIAS, GRID_I, GRID_R, MODE_I, MODE_R, TURNING } from "./state.js";

/** @typedef {import("./cycle.js").CycleTables} CycleTables */
/** @typedef {import("./slow-mode.js").Net} Net of the windings alone: the crystal is no part of it */
/** @typedef {import("./slow-mode.js").Stage} Stage */

const ROUNDS = 50; // of Newton's rule or, where that leads astray, of halving; a few are enough but when a station comes on suddenly
const CLOSE = 1e-6; // of the charge
const TINY = 1e-20; // volt

/** @param {CycleTables} tables */
export function createCrystalMarch(tables) {
  const own = new Float64Array(6);
  const law = new Float64Array(2); // logarithm of the mean current in zero currents, I1/I0
  const given = new Float64Array(5); // V/C: to grid and condenser, by a coulomb; and what the aerial brings in a step
  /** @type {Net} */ let net;
  /** @type {Stage} */ let stage;
  let step = 0;

  /** Have it march for this set from now on. @param {Net} itsNet @param {Stage} itsStage @param {number} _reference hertz @param {number} rate steps a second */
  function turn(itsNet, itsStage, _reference, rate) {
    net = itsNet;
    stage = itsStage;
    step = 1 / rate;
    throughAStep(net.rate.re * step, net.rate.im * step, own);
    given[0] = net.byGrid.re * own[2] - net.byGrid.im * own[3];
    given[1] = net.byGrid.re * own[3] + net.byGrid.im * own[2];
    given[2] = 1 / stage.grid_capacitance;
    given[3] = net.byEmf.re * step;
    given[4] = net.byEmf.im * step;
  }

  /**
   * Charge that the crystal passes in a step.
   *
   * Sought is the crest that is left: the charge that takes off the rest of it must be what the current then brings. The one falls and
   * the other rises with the crest that is left.
   *
   * @param {number} crest at the step's end, if no charge were passed
   * @param {number} bias the same
   * @param {number} before crest at the step's start
   */
  function chargePassed(crest, bias, before) {
    const { zero_current: zeroCurrent, slope_voltage: slopeVoltage } = stage;
    const inAStep = Math.log(zeroCurrent * step);
    let low = 0;
    let high = crest;
    let left = before < crest ? before : crest / 2;
    let charge = 0;
    for (let round = 0; round < ROUNDS; round++) {
      gridLaw(tables, left, 0, bias, slopeVoltage, law);
      const steer = law[1];
      charge = (crest - left) / (-2 * steer * given[0]);
      const over = law[0] - (charge * given[2]) / slopeVoltage + inAStep - Math.log(charge);
      if (over > 0) high = left;
      else low = left;
      const steerRise = (1 - steer * steer) / slopeVoltage - steer / left;
      const fall = 1 / (crest - left) + steerRise / steer; // of the charge's logarithm
      const rise = steer / slopeVoltage + fall * (1 + (charge * given[2]) / slopeVoltage);
      const next = left - over / rise;
      if (Math.abs(over) < CLOSE) break;
      left = next > low && next < high ? next : (low + high) / 2;
    }
    return charge;
  }

  /**
   * One step, in which the aerial's e.m.f. goes evenly from here to there (volt, crest, in the frame).
   *
   * @param {Float64Array} s changed to what it is at the step's end
   * @param {number} hereR
   * @param {number} hereI
   * @param {number} thereR
   * @param {number} thereI
   */
  function advance(s, hereR, hereI, thereR, thereI) {
    const { gridAtOnce } = net;
    const inR = own[2] * hereR - own[3] * hereI + own[4] * (thereR - hereR) - own[5] * (thereI - hereI);
    const inI = own[2] * hereI + own[3] * hereR + own[4] * (thereI - hereI) + own[5] * (thereR - hereR);
    const freeR = own[0] * s[MODE_R] - own[1] * s[MODE_I] + given[3] * inR - given[4] * inI;
    const freeI = own[0] * s[MODE_I] + own[1] * s[MODE_R] + given[3] * inI + given[4] * inR;
    const besideR = gridAtOnce.re * thereR - gridAtOnce.im * thereI;
    const besideI = gridAtOnce.re * thereI + gridAtOnce.im * thereR;
    const crest = Math.sqrt((freeR + besideR) ** 2 + (freeI + besideI) ** 2) + TINY;
    const free = s[BIAS] + ((stage.leak_return - s[BIAS]) * step) / (stage.leak_resistance * stage.grid_capacitance);
    const charge = chargePassed(crest, free, Math.sqrt(s[GRID_R] ** 2 + s[GRID_I] ** 2));
    const took = (2 * law[1] * charge) / crest;
    const alongR = took * (freeR + besideR);
    const alongI = took * (freeI + besideI);
    s[MODE_R] = freeR + given[0] * alongR - given[1] * alongI;
    s[MODE_I] = freeI + given[0] * alongI + given[1] * alongR;
    s[BIAS] = free - charge * given[2];
    const gridR = s[MODE_R] + besideR;
    const gridI = s[MODE_I] + besideI;
    s[TURNING] = Math.atan2(gridI * s[GRID_R] - gridR * s[GRID_I], gridR * s[GRID_R] + gridI * s[GRID_I]) / step;
    s[GRID_R] = gridR;
    s[GRID_I] = gridI;
  }

  return { turn, advance };
}
