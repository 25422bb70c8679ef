/**
 * The march of the envelope through time, step by step: the scheme of `solutions/unit07_oscillation/stepping`, where its
 * reasons stand, with one thing more. By how much the valve has yielded when a step begins is counted with the mode's own growth, so
 * that a set far past its edge, which no longer grows, may be followed in steps ten times as long. Complex numbers are
 * written out here, `…R` and `…I`: this is what runs a hundred thousand times a second.
 */

import { createAnode } from "./anode.js";
import { gridLaw } from "./cycle.js";
import * as p from "./parts.js";
import { fillParts, throughAStep } from "./parts.js";
import { ANODE, ASIDE_I, ASIDE_R, BENT, BIAS, GRID_I, GRID_R, MODE_I, MODE_R, OVERTONE, PASSING, TURNING } from "./state.js";

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
const MOST_FALL = 500; // of the grid current's logarithm, within a step

/**
 * A march that goes on from step to step; what it marches for may be changed between two steps.
 *
 * @param {CycleTables} tables
 */
export function createMarch(tables) {
  const parts = new Float64Array(p.PARTS);
  const own = new Float64Array(6); // what becomes of mode and push in a step
  const turned = new Float64Array(6); // the same of a push that turns with the envelope
  const answer = new Float64Array(7); // pushR, pushI, charging, alongR, alongI, level, steer
  const valve = createAnode(tables, parts);
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
  }

  /** Charge through the grid in a step, at whose ends the current's logarithm would be `fall`'s and `law`'s if none were taken. */
  function chargeTaken() {
    const level = fall[0];
    const steer = fall[1];
    const gain = Math.max(law[0] - level, -MOST_FALL);
    const yielding = parts[p.SLOPE_VOLTAGE] / (1 / parts[p.GRID_NODE] - 2 * steer * steer * parts[p.BY_GRID_R]);
    const average = Math.abs(gain) > 1e-9 ? -Math.expm1(-gain) / gain : 1;
    const supplied = level + Math.log(((parts[p.ZERO_CURRENT] * parts[p.STEP]) / yielding) * average);
    const larger = Math.max(supplied, -gain);
    return yielding * (gain + larger + Math.log(Math.exp(supplied - larger) + Math.exp(-gain - larger)));
  }

  /** What pushes mode and anode there, into `answer`; what changes little by little, into the state. @param {Float64Array} s */
  function pushes(s) {
    const leak = parts[p.LEAK];
    const gridSlope = parts[p.GRID_SLOPE];
    const anode = there[AT_ANODE];
    const bias = there[AT_BIAS];
    const emfR = there[AT_EMF_R];
    const emfI = there[AT_EMF_I];
    const modeR = there[AT_MODE_R];
    const modeI = there[AT_MODE_I];
    const aloneR = modeR + parts[p.GRID_AT_ONCE_R] * emfR - parts[p.GRID_AT_ONCE_I] * emfI;
    const aloneI = modeI + parts[p.GRID_AT_ONCE_R] * emfI + parts[p.GRID_AT_ONCE_I] * emfR;
    const gridR = aloneR * (1 + s[ASIDE_R]) - aloneI * s[ASIDE_I];
    const gridI = aloneI * (1 + s[ASIDE_R]) + aloneR * s[ASIDE_I];
    const crest = Math.sqrt(gridR * gridR + gridI * gridI) + TINY;
    const alongR = gridR / crest;
    const alongI = gridI / crest;
    gridLaw(tables, crest, s[BENT], bias + s[OVERTONE], parts[p.SLOPE_VOLTAGE], law);
    const steer = law[1];
    answer[3] = alongR;
    answer[4] = alongI;
    answer[5] = law[0];
    answer[6] = steer;
    const taken = 2 * steer * there[AT_PASSING];
    const restR = gridSlope * gridR;
    const restI = gridSlope * gridI;
    const moreR = taken * alongR - restR;
    const moreI = taken * alongI - restI;
    const through = there[AT_FREQUENCY] * parts[p.GRID_NODE];
    const droppedR = (taken * alongI + gridI / leak) / through;
    const droppedI = -(taken * alongR + gridR / leak) / through;
    const undisturbedR =
      parts[p.DRIVE_R] * modeR - parts[p.DRIVE_I] * modeI + parts[p.DRIVE_AT_ONCE_R] * emfR - parts[p.DRIVE_AT_ONCE_I] * emfI +
      parts[p.DRIVE_BY_GRID_R] * moreR - parts[p.DRIVE_BY_GRID_I] * moreI;
    const undisturbedI =
      parts[p.DRIVE_R] * modeI + parts[p.DRIVE_I] * modeR + parts[p.DRIVE_AT_ONCE_R] * emfI + parts[p.DRIVE_AT_ONCE_I] * emfR +
      parts[p.DRIVE_BY_GRID_R] * moreI + parts[p.DRIVE_BY_GRID_I] * moreR;
    valve.pass(s, undisturbedR, undisturbedI, droppedR, droppedI, bias + anode / parts[p.MU] + parts[p.OFFSET], gridR, gridI);
    const beyondR = valve.passed[0];
    const beyondI = valve.passed[1];
    answer[2] = ((parts[p.SUPPLY] - anode) / parts[p.LOAD] - valve.passed[2]) / parts[p.BYPASS];
    const alone = aloneR * aloneR + aloneI * aloneI;
    if (alone > TINY * TINY) {
      const byAnodeR = parts[p.GRID_BY_ANODE_R];
      const byAnodeI = parts[p.GRID_BY_ANODE_I];
      const byGridR = parts[p.GRID_BY_GRID_R];
      const byGridI = parts[p.GRID_BY_GRID_I];
      const besideR = byAnodeR * beyondR - byAnodeI * beyondI + byGridR * moreR - byGridI * moreI;
      const besideI = byAnodeR * beyondI + byAnodeI * beyondR + byGridR * moreI + byGridI * moreR;
      s[ASIDE_R] = (besideR * aloneR + besideI * aloneI) / alone;
      s[ASIDE_I] = (besideI * aloneR - besideR * aloneI) / alone;
    }
    answer[0] =
      parts[p.BY_ANODE_R] * beyondR - parts[p.BY_ANODE_I] * beyondI - parts[p.BY_GRID_R] * restR + parts[p.BY_GRID_I] * restI;
    answer[1] =
      parts[p.BY_ANODE_R] * beyondI + parts[p.BY_ANODE_I] * beyondR - parts[p.BY_GRID_R] * restI - parts[p.BY_GRID_I] * restR;
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
    gridLaw(tables, crest, s[BENT], free[2] + s[OVERTONE], parts[p.SLOPE_VOLTAGE], law);
  }

  /**
   * One step, in which the aerial's e.m.f. goes evenly from here to there (volt, crest, in the frame). A swing that no valve would stand
   * is cut off at what the tables hold.
   *
   * @param {Float64Array} s changed to what it is at the step's end
   * @param {number} hereR
   * @param {number} hereI
   * @param {number} thereR
   * @param {number} thereI
   */
  function advance(s, hereR, hereI, thereR, thereI) {
    const condenser = parts[p.GRID_NODE];
    const gridFed = parts[p.GRID_FED];
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
    const modeR = s[MODE_R];
    const modeI = s[MODE_I];
    const bias = s[BIAS];
    const anode = s[ANODE];
    const turn = s[TURNING] * step;
    const turnedR = Math.cos(turn);
    const turnedI = Math.sin(turn);
    there[AT_MODE_R] = modeR;
    there[AT_MODE_I] = modeI;
    there[AT_EMF_R] = hereR;
    there[AT_EMF_I] = hereI;
    there[AT_BIAS] = bias;
    there[AT_ANODE] = anode;
    there[AT_FREQUENCY] = carrier + s[TURNING];
    there[AT_PASSING] = s[PASSING];
    pushes(s);
    valve.yielded(s);
    const yieldR = valve.passed[0];
    const yieldI = valve.passed[1];
    const pushR = answer[0] - yieldR * modeR + yieldI * modeI;
    const pushI = answer[1] - yieldR * modeI - yieldI * modeR;
    const charging = answer[2];
    throughAStep((rateR + yieldR) * step, (rateI + yieldI) * step, own);
    const keepR = own[0];
    const keepI = own[1];
    const wholeR = own[2];
    const wholeI = own[3];
    const rampR = own[4];
    const rampI = own[5];
    throughAStep((rateR + yieldR) * step, (rateI + yieldI) * step - turn, turned);
    const turnWholeR = turned[2];
    const turnWholeI = turned[3];
    const turnRampR = turned[4];
    const turnRampI = turned[5];
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
    const anodeThen = anode + step * anodeWhole * charging;
    free[2] = bias + (leakReturn - bias) * leaking + gridFed * (anodeThen - anode);
    freeLaw(s);
    const first = chargeTaken();
    const onwardR = bringR * alongR - bringI * alongI;
    const onwardI = bringR * alongI + bringI * alongR;
    const tookFirst = 2 * steer * first;
    const biasThen = free[2] - first / condenser;

    there[AT_MODE_R] = free[0] + tookFirst * (byGridR * onwardR - byGridI * onwardI);
    there[AT_MODE_I] = free[1] + tookFirst * (byGridR * onwardI + byGridI * onwardR);
    there[AT_BIAS] = biasThen;
    there[AT_ANODE] = anodeThen;
    there[AT_PASSING] = first / step;
    pushes(s);
    const thenR = answer[0] - yieldR * there[AT_MODE_R] + yieldI * there[AT_MODE_I];
    const thenI = answer[1] - yieldR * there[AT_MODE_I] - yieldI * there[AT_MODE_R];
    const differR = thenR - (turnedR * pushR - turnedI * pushI);
    const differI = thenI - (turnedR * pushI + turnedI * pushR);
    free[0] += step * (turnRampR * differR - turnRampI * differI);
    free[1] += step * (turnRampR * differI + turnRampI * differR);
    s[ANODE] = anodeThen + step * anodeRamp * (answer[2] - charging - anodeRate * (anodeThen - anode));
    free[2] = bias + (leakReturn - (bias + biasThen) / 2) * leaking + gridFed * (s[ANODE] - anode);
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

    const aloneR = s[MODE_R] + gridAtOnceR * thereR - gridAtOnceI * thereI;
    const aloneI = s[MODE_I] + gridAtOnceR * thereI + gridAtOnceI * thereR;
    const gridR = aloneR * (1 + s[ASIDE_R]) - aloneI * s[ASIDE_I];
    const gridI = aloneI * (1 + s[ASIDE_R]) + aloneR * s[ASIDE_I];
    const swing = Math.atan2(gridI * s[GRID_R] - gridR * s[GRID_I], gridR * s[GRID_R] + gridI * s[GRID_I]);
    s[TURNING] = Math.min(Math.max(swing, -MOST_TURN), MOST_TURN) / step;
    const most = tables.limit * parts[p.SLOPE_VOLTAGE];
    const within = Math.min(most / (Math.sqrt(gridR * gridR + gridI * gridI) + TINY), 1);
    s[MODE_R] *= within;
    s[MODE_I] *= within;
    s[BIAS] = Math.max(s[BIAS], -most);
    s[GRID_R] = within * gridR;
    s[GRID_I] = within * gridI;
  }

  return { turn, advance };
}
