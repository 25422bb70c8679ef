/** What a state is worth to the ear and to the goals: measured a few times a second, not in each frame. */

import { band, listen, neighbour } from '../physics/bench.js';
import { inDecibels } from './words.js';

/**
 * @typedef {object} Heard
 * @property {import('./seen.js').Seen['tuned']} station
 * @property {number} above  decibel over the threshold of hearing
 * @property {number} whistle  hertz, 0 for none
 * @property {number} grid  volt
 * @property {number} gained  decibel that the reaction adds
 * @property {{field: number, power: number, noise: number, spoiled: number} | null} neighbour  null if it does not oscillate
 */

/**
 * @param {object} figures
 * @param {import('../physics/bench.js').State} state
 * @param {import('./seen.js').Seen} seen
 * @returns {Heard}
 */
export function heardOf(figures, state, seen) {
  const heard = listen(figures, state, { tone: 1000, depth: 0.3 });
  return {
    station: seen.tuned,
    above: heard.above,
    whistle: heard.whistle,
    grid: heard.grid,
    gained: gained(figures, state, seen),
    neighbour: heard.oscillates ? neighbour(figures, state, heard.grid) : null,
  };
}

/** What the reaction adds to the gain, against the throttle nearly shut. */
function gained(figures, state, seen) {
  const knob = figures.sets[state.set].knobs.throttle;
  return knob && seen.band ? inDecibels(seen.band.gain / band(figures, { ...state, throttle: knob.low }).gain) : 0;
}

/**
 * All that goals may ask for, by name.
 * @param {import('../physics/bench.js').State} state
 * @param {import('./seen.js').Seen} seen
 * @param {Heard} heard
 */
export function measured(state, seen, heard) {
  const others = seen.stations.filter(station => station.name !== seen.tuned.name);
  const next = Math.max(...others.map(station => station.grid ?? 0));
  return {
    set: state.set,
    station: seen.tuned.name,
    above: heard.above,
    apart: seen.tuned.grid === null ? -Infinity : inDecibels(seen.tuned.grid / next),
    gained: heard.gained,
    width: seen.band ? seen.band.width : 0,
    whistle: heard.whistle,
    spoiled: heard.neighbour ? heard.neighbour.spoiled : 0,
    oscillates: heard.neighbour ? 1 : 0,
  };
}
