/**
 * The threshold with a station on, as `solutions/unit07_oscillation/station_on`: a carrier swings the grid, the set is another while
 * it lasts, and one with backlash may go on singing when it has gone, with its reaction at a place that would be safe in silence.
 */

import { coilResistance } from "./coil.js";
import { slowMode } from "./slow-mode.js";
import { retuned, settled } from "./stability.js";
import { GRID_I, GRID_R, start } from "./state.js";
import { createMarch } from "./stepping.js";

/** @typedef {import("./network.js").Network} Network */
/** @typedef {import("./bench.js").Fed} Fed */

const RATE = 96e3; // hertz: steps a second
const SETTLE = 12e-3; // second with the carrier: sixty times the grid leak's time constant
const GROWS = 2e-3; // second: by the growth between these times after the carrier is gone, the set sings or does not
const SPAN = 10e-3;
const TRACE = 1e-4; // volt: too small a swing to tell from silence
const HALVINGS = 9; // of the knob's way
const LEAST_PART = 0.05; // of the threshold in silence: below it no place is tried
const JUST_BELOW = 0.998;

/** @template T @param {() => T} asked @returns {T | null} null where the set cannot be turned so, or its network reduced */
export function reached(asked) {
  try {
    return asked();
  } catch (error) {
    if (error instanceof RangeError) return null;
    throw error;
  }
}

/**
 * @param {import("./cycle.js").CycleTables} tables
 * @param {import("./coil.js").CoilFigures} coil
 */
export function createStationOn(tables, coil) {
  const march = createMarch(tables);

  /** Whether a set goes on by itself when a carrier that was on has gone. @param {Network} n @param {Fed} fed @param {number} frequency hertz @param {number} emf volt, crest */
  function singsAfter(n, { stage, rest }, frequency, emf) {
    const net = slowMode(n, stage, frequency);
    const state = start(rest, stage);
    march.turn(net, stage, frequency, RATE);
    const play = (/** @type {number} */ seconds, /** @type {number} */ volts) => {
      for (let steps = Math.round(seconds * RATE); steps > 0; steps--) march.advance(state, volts, 0, volts, 0);
      return Math.hypot(net.tuned.re, net.tuned.im) * Math.hypot(state[GRID_R], state[GRID_I]);
    };
    play(SETTLE, emf);
    const first = play(GROWS, 0);
    const last = play(SPAN - GROWS, 0);
    return last > TRACE && last > 0.9 * first;
  }

  return {
    /**
     * Least reaction at which a carrier leaves the set singing, and that in silence, both as the knob's value; null where no place of
     * the knob does it or no tuning reaches the station.
     *
     * @param {Network} wound whatever its tuning, the reaction's knob never turned
     * @param {Fed} fed
     * @param {number} frequency hertz
     * @param {number} emf volt, crest, in the set's first mesh
     * @param {import("./controls.js").Control} control
     * @param {{low: number, high: number}} knob
     */
    thresholds(wound, fed, frequency, emf, control, knob) {
      const n = { ...wound, tuned_resistance: coilResistance(coil, frequency) };
      const silent = reached(() => settled((tuning_capacitance) => ({ ...n, tuning_capacitance }), control, knob, frequency))?.value;
      if (silent === undefined) return null;
      const sings = (/** @type {number} */ value) =>
        reached(() => singsAfter(retuned(control.turned(n, value), frequency), fed, frequency, emf)) ?? true;
      let high = silent;
      let low = Math.max(LEAST_PART * high, knob.low);
      if (!sings(JUST_BELOW * high)) return { silent, threshold: silent };
      for (let halving = 0; halving < HALVINGS; halving++) {
        const middle = (low + high) / 2;
        if (sings(middle)) high = middle;
        else low = middle;
      }
      return { silent, threshold: (low + high) / 2 };
    },
  };
}
