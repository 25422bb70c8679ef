/** A setting as the text after # in an address: "set=reaction&tuning=855kHz&coupling=20uH&reaction=80pF". */

import { dialFrequency, dialled, dialOf, startingState } from "../physics/bench.js";

/** @typedef {import("../physics/bench.js").Figures} Figures */
/** @typedef {import("../physics/bench.js").State} State */

/** @type {Record<string, number>} */
const UNITS = { kHz: 1e3, uH: 1e-6, µH: 1e-6, nH: 1e-9, pF: 1e-12, Hz: 1, "": 1 };

/** The knobs by the name each has in the address; tuning stands apart, as it is read off the dial. */
const WRITTEN = /** @type {const} */ ([
  { name: "coupling", knob: "coupling", decimals: 2 },
  { name: "reaction", knob: "throttle", decimals: 3 },
  { name: "quench", knob: "quench", decimals: 1 },
]);

/** @param {Figures} figures @param {State} state */
export function settingOf(figures, state) {
  const { knobs, feeds } = figures.sets[state.set];
  const parts = [`set=${state.set}`, `tuning=${short(dialFrequency(figures, state) / 1e3, 2)}kHz`];
  for (const { name, knob, decimals } of WRITTEN) {
    const unit = knobs[knob]?.unit;
    if (unit !== undefined) parts.push(`${name}=${short(state[knob] / UNITS[unit], decimals)}${unit}`);
  }
  if (feeds.length > 1) parts.push(`feed=${state.feed}`);
  if (state.night) parts.push("night=yes");
  return parts.join("&");
}

/** @param {number} value @param {number} decimals */
const short = (value, decimals) => String(Number(value.toFixed(decimals)));

/**
 * The state that a text asks for, and one sentence for each part of it that could not be had; null if it is no setting.
 *
 * @param {Figures} figures
 * @param {string} text without the #
 * @returns {{state: State, faults: string[]} | null}
 */
export function stateOf(figures, text) {
  const asked = new URLSearchParams(text);
  const wanted = asked.get("set");
  if (wanted === null) return null;
  /** @type {string[]} */ const faults = [];
  const set = figures.order.includes(wanted) ? wanted : figures.order[0];
  if (set !== wanted) faults.push(`There is no set called "${wanted}" on this bench: it begins with the first one.`);
  let state = startingState(figures, set);
  const { knobs, feeds } = figures.sets[set];
  for (const { name, knob } of WRITTEN) {
    const ends = knobs[knob];
    if (ends) state = { ...state, [knob]: within(asked.get(name), ends, state[knob], name, faults) };
  }
  state = dialled(figures, state, within(asked.get("tuning"), dialOf(figures, set), dialFrequency(figures, state), "tuning", faults));
  return { state: { ...state, feed: feeds.find((feed) => feed === asked.get("feed")) ?? state.feed, night: asked.get("night") === "yes" }, faults };
}

/**
 * A number with its unit, brought into a knob's range; what stood there before if none is asked for or it is none.
 *
 * @param {string | null} text
 * @param {{low: number, high: number}} ends
 * @param {number} before
 * @param {string} name
 * @param {string[]} faults
 */
function within(text, { low, high }, before, name, faults) {
  if (text === null) return before;
  const found = /^([0-9.]+)(kHz|Hz|uH|µH|nH|pF|)$/.exec(text);
  const value = found ? Number(found[1]) * UNITS[found[2]] : NaN;
  if (Number.isNaN(value)) {
    faults.push(`"${text}" is no value for ${name}: it stays where it was.`);
    return before;
  }
  const inside = Math.min(Math.max(value, low), high);
  if (Math.abs(inside - value) > 1e-6 * value) faults.push(`${name} ${text} is beyond the knob's stop: it stands at the stop.`);
  return inside;
}
