/** A setting as the text after # in an address: "set=reaction&tuning=855kHz&coupling=20uH&reaction=12.8pF". */

import { dialFrequency, dialled, startingState } from '../physics/bench.js';

const UNITS = { kHz: 1e3, uH: 1e-6, 'µH': 1e-6, pF: 1e-12, Hz: 1, '': 1 };

/** Each knob: its name in the address, the unit it is written in, and its field of the state (tuning is read off the dial). */
const WRITTEN = [
  { name: 'coupling', field: 'coupling', unit: 'uH', decimals: 2 },
  { name: 'reaction', field: 'throttle', unit: 'pF', decimals: 3 },
  { name: 'quench', field: 'quench', unit: 'kHz', decimals: 2 },
];

/**
 * @param {object} figures
 * @param {import('../physics/bench.js').State} state
 * @returns {string}
 */
export function settingOf(figures, state) {
  const knobs = figures.sets[state.set].knobs;
  const parts = [`set=${state.set}`, `tuning=${short(dialFrequency(figures, state) / 1e3, 2)}kHz`];
  for (const { name, field, unit, decimals } of WRITTEN) {
    if (knobs[field]) parts.push(`${name}=${short(state[field] / UNITS[unit], decimals)}${unit}`);
  }
  if (figures.sets[state.set].feeds.length > 1) parts.push(`feed=${state.feed}`);
  if (state.night) parts.push('night=yes');
  return parts.join('&');
}

const short = (value, decimals) => String(Number(value.toFixed(decimals)));

/**
 * The state that a text asks for, and one sentence for each part of it that could not be had.
 * @param {object} figures
 * @param {string} text without the #
 * @returns {{state: import('../physics/bench.js').State, faults: string[]} | null} null if it is no setting
 */
export function stateOf(figures, text) {
  const asked = new Map(new URLSearchParams(text.replace(/\+/g, '%2B')));
  if (!asked.has('set')) return null;
  const faults = [];
  let set = asked.get('set');
  if (!figures.order.includes(set)) {
    faults.push(`There is no set called "${set}" here: this is the first one.`);
    set = figures.order[0];
  }
  let state = startingState(figures, set);
  const knobs = figures.sets[set].knobs;
  for (const { name, field } of WRITTEN) {
    if (!asked.has(name) || !knobs[field]) continue;
    state = { ...state, [field]: within(asked.get(name), knobs[field].low, knobs[field].high, state[field], name, faults) };
  }
  if (asked.has('tuning')) {
    const { low, high } = figures.dial;
    state = dialled(figures, state, within(asked.get('tuning'), low, high, dialFrequency(figures, state), 'tuning', faults));
  }
  if (figures.sets[set].feeds.includes(asked.get('feed'))) state = { ...state, feed: asked.get('feed') };
  return { state: { ...state, night: asked.get('night') === 'yes' }, faults };
}

/** A number with its unit, brought into a range; what stood there before if it is none. */
function within(text, low, high, before, name, faults) {
  const found = /^([0-9.]+)\s*(kHz|Hz|uH|µH|pF|)$/.exec(text);
  const value = found ? Number(found[1]) * UNITS[found[2]] : NaN;
  if (!Number.isFinite(value)) {
    faults.push(`"${text}" is no value for ${name}: it stays where it was.`);
    return before;
  }
  const least = low * (1 - 1e-9), most = high * (1 + 1e-9);
  if (value < least || value > most) faults.push(`${name} ${text} is beyond the knob's range: it stands at the end.`);
  return Math.min(Math.max(value, low), high);
}
