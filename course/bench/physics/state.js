/** Where a set has got to, in one array of floats, which costs no memory to write to: what stands where. */

/** @typedef {import("./slow-mode.js").Stage} Stage */

export const MODE_R = 0; // volt: the slow mode's share of the grid's voltage
export const MODE_I = 1;
export const BIAS = 2; // volt
export const ANODE = 3; // volt
export const TURNING = 4; // radian a second: the envelope's in its frame
export const PASSING = 5; // ampere: the grid's mean current
export const ASIDE_R = 6; // what the grid has beside the mode, as a share of it
export const ASIDE_I = 7;
export const EXCESS_R = 8; // siemens: by how much the valve's slope to the carrier differs from that at rest
export const EXCESS_I = 9;
export const OVERTONE = 10; // volt: what the current's harmonics add to the grid's crest
export const BENT = 11; // by what share it is bent more sharply than a sine's
export const DRIVES = 12; // volt: second to fourth harmonic of the valve's drive, real and imaginary
export const GRID_R = 18; // volt: mode and all
export const GRID_I = 19;
const STATE_SIZE = 20;

/** A set just switched on, warm and at rest but for a small swing. @param {{bias: number, anode: number}} rest @param {Stage} stage @param {number} [seed] volt, crest on the grid */
export function start({ bias, anode }, stage, seed = 0) {
  const state = new Float64Array(STATE_SIZE);
  state[MODE_R] = state[GRID_R] = seed;
  state[BIAS] = bias;
  state[ANODE] = anode;
  state[PASSING] = (stage.leak_return - bias) / stage.leak_resistance;
  return state;
}
