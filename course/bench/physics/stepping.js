/**
 * The march of the envelope through time, step by step: the same scheme as `solutions/unit07_oscillation/stepping`, where its
 * reasons stand. Complex numbers are written out here, `…R` and `…I`: this is what runs a hundred thousand times a second.
 */

import { anodeTable, CURRENTS, gridLaw } from "./cycle.js";
import * as p from "./parts.js";
import { fillParts, throughAStep } from "./parts.js";
import {
  ANODE,
  ASIDE_I,
  ASIDE_R,
  BIAS,
  EXCESS_I,
  EXCESS_R,
  GRID_I,
  GRID_R,
  MODE_I,
  MODE_R,
  OVERTONE,
  PASSING,
  TURNING,
} from "./state.js";

/** @typedef {import("./cycle.js").CycleTables} CycleTables */
/** @typedef {import("./slow-mode.js").Net} Net */
/** @typedef {import("./slow-mode.js").Stage} Stage */

// A place at which `pushes` is asked.
const AT_MODE_R = 0;
const AT_MODE_I = 1;
const AT_EMF_R = 2;
const AT_EMF_I = 3;
const AT_BIAS = 4;
const AT_ANODE = 5;
const AT_FREQUENCY = 6; // radian a second
const AT_PASSING = 7;

const MOST_TURN = 1;
const TINY = 1e-30;
const MOST_GAIN = 500; // of the grid current's logarithm, within a step

/**
 * A march that goes on from step to step; what it marches for may be changed between two steps.
 *
 * @param {CycleTables} tables
 */
export function createMarch(tables) {
  const { angles, shares, lowest_angle, lowest_share } = tables.figures;
  const anodeNodes = new Float64Array(tables.plain.length);
  const angleStep = (angles - 1) / (0.5 * Math.PI - lowest_angle);
  const shareStep = (shares - 1) / (1 - lowest_share);
  const row = (shares + 2) * CURRENTS;
  const parts = new Float64Array(p.PARTS);
  const turned = new Float64Array(6);
  const answer = new Float64Array(8); // pushR, pushI, charging, alongR, alongI, level, steer
  const weights = new Float64Array(4); // of four neighbouring rows, by Catmull and Rom's spline
  const currents = new Float64Array(4); // mean, fundamental's two parts, overtones
  const drive = new Float64Array(3); // crest, steady, the throttle's siemens
  const fall = new Float64Array(2); // logarithm at the step's start, I1/I0
  const free = new Float64Array(3); // mode and bias if the grid took nothing
  const there = new Float64Array(8);
  const law = new Float64Array(2); // logarithm of the grid's current in zero currents, I1/I0

  /**
   * Have it march for this set from now on.
   *
   * @param {Net} net
   * @param {Stage} stage
   * @param {number} reference hertz
   * @param {number} rate steps a second
   */
  function turn(net, stage, reference, rate) {
    fillParts(parts, net, stage, reference, rate);
    anodeTable(tables, net.coil, anodeNodes);
  }

  /** Mean anode current, the carrier's in siemens of its crest, and overtones. */
  function anodeCurrents() {
    const mu = parts[p.MU];
    const perveance = parts[p.PERVEANCE];
    const crest = drive[0];
    const steady = drive[1];
    const atCarrier = drive[2]; // siemens of the throttle
    const angle = Math.atan2(steady, crest);
    if (angle <= lowest_angle) {
      currents.fill(0);
      return;
    }
    const size = Math.sqrt(steady * steady + crest * crest);
    const scale = perveance * Math.sqrt(size);
    const kappa = (mu * atCarrier) / scale;
    const share = Math.max(kappa / (1 + kappa), lowest_share);
    const down = (angle - lowest_angle) * angleStep;
    const across = (share - lowest_share) * shareStep;
    const top = Math.min(Math.floor(down), angles - 2);
    const left = Math.min(Math.floor(across), shares - 2);
    const d = down - top;
    const dRest = 1 - d;
    const a = across - left;
    const aRest = 1 - a;
    const a0 = -0.5 * a * aRest * aRest;
    const a1 = 1 + a * a * (1.5 * a - 2.5);
    const a2 = 1 + aRest * aRest * (1.5 * aRest - 2.5);
    const a3 = -0.5 * aRest * a * a;
    let mean = 0;
    let real = 0;
    let imaginary = 0;
    let overtones = 0;
    let at = top * row + left * CURRENTS;
    weights[0] = -0.5 * d * dRest * dRest;
    weights[1] = 1 + d * d * (1.5 * d - 2.5);
    weights[2] = 1 + dRest * dRest * (1.5 * dRest - 2.5);
    weights[3] = -0.5 * dRest * d * d;
    for (let i = 0; i < 4; i++, at += row) {
      const weight = weights[i];
      const n = anodeNodes;
      mean += weight * (a0 * n[at] + a1 * n[at + 4] + a2 * n[at + 8] + a3 * n[at + 12]);
      real += weight * (a0 * n[at + 1] + a1 * n[at + 5] + a2 * n[at + 9] + a3 * n[at + 13]);
      imaginary += weight * (a0 * n[at + 2] + a1 * n[at + 6] + a2 * n[at + 10] + a3 * n[at + 14]);
      overtones += weight * (a0 * n[at + 3] + a1 * n[at + 7] + a2 * n[at + 11] + a3 * n[at + 15]);
    }
    currents[0] = scale * size * Math.max(mean, 0);
    currents[1] = scale * real;
    currents[2] = scale * imaginary;
    currents[3] = scale * size * overtones;
  }

  /** Charge through the grid in a step, at whose ends the current's logarithm would be `fall`'s if none were taken. */
  function chargeTaken() {
    const slopeVoltage = parts[p.SLOPE_VOLTAGE];
    const zeroCurrent = parts[p.ZERO_CURRENT];
    const condenser = parts[p.CONDENSER];
    const byGridR = parts[p.BY_GRID_R];
    const step = parts[p.STEP];
    const level = fall[0];
    const gain = Math.min(Math.max(law[0] - level, -MOST_GAIN), MOST_GAIN);
    const steer = fall[1];
    const yielding = slopeVoltage / (1 / condenser - 2 * steer * steer * byGridR);
    const average = Math.abs(gain) > 1e-9 ? Math.expm1(gain) / gain : 1;
    return yielding * Math.log1p(Math.exp(level) * average * ((zeroCurrent * step) / yielding));
  }

  /** What pushes mode and anode there, into `answer`; what changes little by little, into the state. @param {Float64Array} s */
  function pushes(s) {
    const slopeVoltage = parts[p.SLOPE_VOLTAGE];
    const mu = parts[p.MU];
    const offset = parts[p.OFFSET];
    const supply = parts[p.SUPPLY];
    const load = parts[p.LOAD];
    const bypass = parts[p.BYPASS];
    const condenser = parts[p.CONDENSER];
    const leak = parts[p.LEAK];
    const slope = parts[p.SLOPE];
    const gridSlope = parts[p.GRID_SLOPE];
    const resistance = parts[p.RESISTANCE];
    const leakage = parts[p.LEAKAGE];
    const throttle = parts[p.THROTTLE];
    const tunedTickler = parts[p.TUNED_TICKLER];
    const anodeCurrentR = parts[p.ANODE_CURRENT_R];
    const anodeCurrentI = parts[p.ANODE_CURRENT_I];
    const byAnodeR = parts[p.BY_ANODE_R];
    const byAnodeI = parts[p.BY_ANODE_I];
    const byGridR = parts[p.BY_GRID_R];
    const byGridI = parts[p.BY_GRID_I];
    const gridAtOnceR = parts[p.GRID_AT_ONCE_R];
    const gridAtOnceI = parts[p.GRID_AT_ONCE_I];
    const anodeAtOnceR = parts[p.ANODE_AT_ONCE_R];
    const anodeAtOnceI = parts[p.ANODE_AT_ONCE_I];
    const anodeByGridR = parts[p.ANODE_BY_GRID_R];
    const anodeByGridI = parts[p.ANODE_BY_GRID_I];
    const gridByAnodeR = parts[p.GRID_BY_ANODE_R];
    const gridByAnodeI = parts[p.GRID_BY_ANODE_I];
    const gridByGridR = parts[p.GRID_BY_GRID_R];
    const gridByGridI = parts[p.GRID_BY_GRID_I];
    const echoR = parts[p.ECHO_R];
    const echoI = parts[p.ECHO_I];
    const modeR = there[AT_MODE_R];
    const modeI = there[AT_MODE_I];
    const emfR = there[AT_EMF_R];
    const emfI = there[AT_EMF_I];
    const bias = there[AT_BIAS];
    const anode = there[AT_ANODE];
    const frequency = there[AT_FREQUENCY];
    const passing = there[AT_PASSING];
    const aloneR = modeR + gridAtOnceR * emfR - gridAtOnceI * emfI;
    const aloneI = modeI + gridAtOnceR * emfI + gridAtOnceI * emfR;
    const gridR = aloneR * (1 + s[ASIDE_R]) - aloneI * s[ASIDE_I];
    const gridI = aloneI * (1 + s[ASIDE_R]) + aloneR * s[ASIDE_I];
    const crest = Math.sqrt(gridR * gridR + gridI * gridI) + TINY;
    const alongR = gridR / crest;
    const alongI = gridI / crest;
    gridLaw(tables, crest, bias + s[OVERTONE], slopeVoltage, law);
    const steer = law[1];
    answer[3] = alongR;
    answer[4] = alongI;
    answer[5] = law[0];
    answer[6] = steer;
    const takenR = 2 * steer * passing * alongR;
    const takenI = 2 * steer * passing * alongI;
    const restR = gridSlope * gridR;
    const restI = gridSlope * gridI;
    const moreR = takenR - restR;
    const moreI = takenI - restI;
    let pushR = -(byGridR * restR - byGridI * restI);
    let pushI = -(byGridR * restI + byGridI * restR);
    let besideR = gridByGridR * moreR - gridByGridI * moreI;
    let besideI = gridByGridR * moreI + gridByGridI * moreR;
    const through = frequency * condenser;
    const droppedR = (takenI + gridI / leak) / through;
    const droppedI = -(takenR + gridR / leak) / through;
    const linearR =
      anodeCurrentR * modeR - anodeCurrentI * modeI + anodeAtOnceR * emfR - anodeAtOnceI * emfI + anodeByGridR * moreR - anodeByGridI * moreI;
    const linearI =
      anodeCurrentR * modeI + anodeCurrentI * modeR + anodeAtOnceR * emfI + anodeAtOnceI * emfR + anodeByGridR * moreI + anodeByGridI * moreR;
    const reactance = frequency * leakage - 1 / (frequency * throttle);
    const standsR = 1 + (resistance * slope) / mu;
    const standsI = (reactance * slope) / mu;
    const wantR = (linearR * standsR - linearI * standsI) / slope - droppedR;
    const wantI = (linearR * standsI + linearI * standsR) / slope - droppedI;
    const overR = 1 - (echoR * s[EXCESS_R] - echoI * s[EXCESS_I]);
    const overI = -(echoR * s[EXCESS_I] + echoI * s[EXCESS_R]);
    const over = overR * overR + overI * overI;
    const driveR = (wantR * overR + wantI * overI) / over;
    const driveI = (wantI * overR - wantR * overI) / over;
    drive[0] = Math.sqrt(driveR * driveR + driveI * driveI);
    drive[1] = bias + anode / mu + offset;
    drive[2] = -1 / reactance;
    anodeCurrents();
    const mean = currents[0];
    const lossR = 1 + (resistance * currents[1]) / mu;
    const lossI = (resistance * currents[2]) / mu;
    const loss = lossR * lossR + lossI * lossI;
    const shareR = (currents[1] * lossR + currents[2] * lossI) / loss;
    const shareI = (currents[2] * lossR - currents[1] * lossI) / loss;
    s[EXCESS_R] = (standsR * shareR - standsI * shareI) / slope - 1;
    s[EXCESS_I] = (standsR * shareI + standsI * shareR) / slope;
    s[OVERTONE] = frequency * tunedTickler * currents[3];
    const beyondR = slope * (s[EXCESS_R] * driveR - s[EXCESS_I] * driveI - droppedR);
    const beyondI = slope * (s[EXCESS_R] * driveI + s[EXCESS_I] * driveR - droppedI);
    answer[2] = ((supply - anode) / load - mean) / bypass;
    pushR += byAnodeR * beyondR - byAnodeI * beyondI;
    pushI += byAnodeR * beyondI + byAnodeI * beyondR;
    besideR += gridByAnodeR * beyondR - gridByAnodeI * beyondI;
    besideI += gridByAnodeR * beyondI + gridByAnodeI * beyondR;
    const alone = aloneR * aloneR + aloneI * aloneI;
    if (alone > TINY * TINY) {
      s[ASIDE_R] = (besideR * aloneR + besideI * aloneI) / alone;
      s[ASIDE_I] = (besideI * aloneR - besideR * aloneI) / alone;
    }
    answer[0] = pushR;
    answer[1] = pushI;
  }

  /** The grid's law for a mode by itself with the e.m.f. that is there. @param {Float64Array} s */
  function freeLaw(s) {
    const gridAtOnceR = parts[p.GRID_AT_ONCE_R];
    const gridAtOnceI = parts[p.GRID_AT_ONCE_I];
    const aloneR = free[0] + gridAtOnceR * there[AT_EMF_R] - gridAtOnceI * there[AT_EMF_I];
    const aloneI = free[1] + gridAtOnceR * there[AT_EMF_I] + gridAtOnceI * there[AT_EMF_R];
    const factorR = 1 + s[ASIDE_R];
    const factorI = s[ASIDE_I];
    const crest = Math.sqrt((aloneR * aloneR + aloneI * aloneI) * (factorR * factorR + factorI * factorI));
    gridLaw(tables, crest, free[2] + s[OVERTONE], parts[p.SLOPE_VOLTAGE], law);
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
    const condenser = parts[p.CONDENSER];
    const leakReturn = parts[p.LEAK_RETURN];
    const leaking = parts[p.LEAKING];
    const rateR = parts[p.RATE_R];
    const rateI = parts[p.RATE_I];
    const byGridR = parts[p.BY_GRID_R];
    const byGridI = parts[p.BY_GRID_I];
    const byEmfR = parts[p.BY_EMF_R];
    const byEmfI = parts[p.BY_EMF_I];
    const gridAtOnceR = parts[p.GRID_AT_ONCE_R];
    const gridAtOnceI = parts[p.GRID_AT_ONCE_I];
    const carrier = parts[p.CARRIER];
    const step = parts[p.STEP];
    const anodeRate = parts[p.ANODE_RATE];
    const anodeWhole = parts[p.ANODE_WHOLE];
    const anodeRamp = parts[p.ANODE_RAMP];
    const keepR = parts[p.KEEP_R];
    const keepI = parts[p.KEEP_I];
    const wholeR = parts[p.WHOLE_R];
    const wholeI = parts[p.WHOLE_I];
    const rampR = parts[p.RAMP_R];
    const rampI = parts[p.RAMP_I];
    const modeR = s[MODE_R];
    const modeI = s[MODE_I];
    const bias = s[BIAS];
    const anode = s[ANODE];
    const turn = s[TURNING] * step;
    const turnedR = Math.cos(turn);
    const turnedI = Math.sin(turn);
    throughAStep(rateR * step, rateI * step - turn, turned);
    const turnWholeR = turned[2];
    const turnWholeI = turned[3];
    const turnRampR = turned[4];
    const turnRampI = turned[5];
    there[AT_MODE_R] = modeR;
    there[AT_MODE_I] = modeI;
    there[AT_EMF_R] = hereR;
    there[AT_EMF_I] = hereI;
    there[AT_BIAS] = bias;
    there[AT_ANODE] = anode;
    there[AT_FREQUENCY] = carrier + s[TURNING];
    there[AT_PASSING] = s[PASSING];
    pushes(s);
    const pushR = answer[0];
    const pushI = answer[1];
    const charging = answer[2];
    const alongR = answer[3];
    const alongI = answer[4];
    const steer = answer[6];
    fall[0] = answer[5];
    fall[1] = steer;

    there[AT_EMF_R] = thereR;
    there[AT_EMF_I] = thereI;
    const bringR = turnedR * turnWholeR - turnedI * turnWholeI;
    const bringI = turnedR * turnWholeI + turnedI * turnWholeR;
    const inR = wholeR * hereR - wholeI * hereI + rampR * (thereR - hereR) - rampI * (thereI - hereI);
    const inI = wholeR * hereI + wholeI * hereR + rampR * (thereI - hereI) + rampI * (thereR - hereR);
    free[0] = keepR * modeR - keepI * modeI + byEmfR * inR - byEmfI * inI + step * (bringR * pushR - bringI * pushI);
    free[1] = keepR * modeI + keepI * modeR + byEmfR * inI + byEmfI * inR + step * (bringR * pushI + bringI * pushR);
    free[2] = bias + (leakReturn - bias) * leaking;
    freeLaw(s);
    const first = chargeTaken();
    const onwardR = bringR * alongR - bringI * alongI;
    const onwardI = bringR * alongI + bringI * alongR;
    const tookFirst = 2 * steer * first;
    const biasThen = free[2] - first / condenser;
    const anodeThen = anode + step * anodeWhole * charging;

    there[AT_MODE_R] = free[0] + tookFirst * (byGridR * onwardR - byGridI * onwardI);
    there[AT_MODE_I] = free[1] + tookFirst * (byGridR * onwardI + byGridI * onwardR);
    there[AT_BIAS] = biasThen;
    there[AT_ANODE] = anodeThen;
    there[AT_PASSING] = first / step;
    pushes(s);
    const differR = answer[0] - (turnedR * pushR - turnedI * pushI);
    const differI = answer[1] - (turnedR * pushI + turnedI * pushR);
    free[0] += step * (turnRampR * differR - turnRampI * differI);
    free[1] += step * (turnRampR * differI + turnRampI * differR);
    free[2] = bias + (leakReturn - (bias + biasThen) / 2) * leaking;
    freeLaw(s);
    const meanSteer = (steer + answer[6]) / 2;
    fall[1] = meanSteer;
    const charge = chargeTaken();
    const earlyR = turnWholeR - turnRampR;
    const earlyI = turnWholeI - turnRampI;
    const swungR = turnedR * alongR - turnedI * alongI;
    const swungI = turnedR * alongI + turnedI * alongR;
    const towardsR = earlyR * swungR - earlyI * swungI + turnRampR * answer[3] - turnRampI * answer[4];
    const towardsI = earlyR * swungI + earlyI * swungR + turnRampR * answer[4] + turnRampI * answer[3];
    const took = 2 * meanSteer * charge;
    s[MODE_R] = free[0] + took * (byGridR * towardsR - byGridI * towardsI);
    s[MODE_I] = free[1] + took * (byGridR * towardsI + byGridI * towardsR);
    s[BIAS] = free[2] - charge / condenser;
    s[PASSING] = charge / step;
    s[ANODE] = anodeThen + step * anodeRamp * (answer[2] - charging - anodeRate * (anodeThen - anode));

    const aloneR = s[MODE_R] + gridAtOnceR * thereR - gridAtOnceI * thereI;
    const aloneI = s[MODE_I] + gridAtOnceR * thereI + gridAtOnceI * thereR;
    const gridR = aloneR * (1 + s[ASIDE_R]) - aloneI * s[ASIDE_I];
    const gridI = aloneI * (1 + s[ASIDE_R]) + aloneR * s[ASIDE_I];
    const swing = Math.atan2(gridI * s[GRID_R] - gridR * s[GRID_I], gridR * s[GRID_R] + gridI * s[GRID_I]);
    s[TURNING] = Math.min(Math.max(swing, -MOST_TURN), MOST_TURN) / step;
    s[GRID_R] = gridR;
    s[GRID_I] = gridI;
  }

  return { turn, advance };
}
