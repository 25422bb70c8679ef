/** A setting as the text after # in an address: "set=reaction&tuning=855kHz&coupling=20uH&reaction=80pF".
 *  The grammar is in setting.json; `course/press/boxes/bench_setting.py` reads lessons' settings by the same table. */

import { dialFrequency, dialled, dialOf, startingState } from "../physics/bench.js";
import grammar from "./setting.json" with { type: "json" };

/** @typedef {import("../physics/bench.js").Figures} Figures */
/** @typedef {import("../physics/bench.js").State} State */
/** @typedef {import("../physics/bench.js").ControlName} ControlName */
/** @typedef {keyof typeof grammar.knobs} KnobText the name of a knob in a setting */
/** @typedef {keyof typeof grammar.faults} FaultName */
/** @typedef {{low: number, high: number}} Ends */
/** @typedef {{fault: FaultName, name: string, text: string}} Fault */
/** @typedef {{set: string, by: ControlName, numbers: Map<string, number>, words: Map<string, string>, faults: Fault[]}} Asked */

const KNOBS = /** @type {[KnobText, {knob: "coupling" | "by" | "quench", decimals: number}][]} */ (Object.entries(grammar.knobs));
const SIZES = /** @type {Record<string, Record<string, number>>} */ (grammar.units);
const USUAL = "throttle"; // what turns reaction up, unless a setting says otherwise

/** The knob that a setting's part stands for: "by", the one by which reaction is turned up. @param {"coupling" | "by" | "quench"} knob @param {ControlName} by */
const knobOf = (knob, by) => (knob === "by" ? by : knob);

/** What became of a part that could not be had. @type {Record<FaultName, string>} */
const INSTEAD = {
  set: "it begins with the first one",
  name: "it is left out",
  twice: "the first holds",
  value: "it stays where it was",
  stop: "it stands at the stop",
};

/** @param {Figures} figures @param {State} state */
export function settingOf(figures, state) {
  const { knobs, feeds } = figures.sets[state.set];
  const { unit, decimals } = grammar.tuning;
  const parts = [`set=${state.set}`, `tuning=${written(dialFrequency(figures, state), unit, decimals)}`];
  if (state.by !== USUAL) parts.push(`by=${state.by}`);
  for (const [name, { knob, decimals }] of KNOBS) {
    const its = knobOf(knob, state.by);
    const unit = knobs[its]?.unit;
    if (unit !== undefined) parts.push(`${name}=${written(state[its], unit, decimals)}`);
  }
  if (feeds.length > 1) parts.push(`feed=${state.feed}`);
  if (state.night) parts.push("night=yes");
  return parts.join("&");
}

/** @param {number} value SI @param {string} unit @param {number} decimals */
const written = (value, unit, decimals) => `${Number((value / SIZES[unit][unit]).toFixed(decimals))}${unit}`;

/**
 * The state that a text asks for, and one sentence for each part of it that could not be had; null if it is no setting.
 *
 * @param {Figures} figures
 * @param {string} text without the #
 * @returns {{state: State, faults: string[]} | null}
 */
export function stateOf(figures, text) {
  const asked = askedBy(figures, text);
  if (!asked) return null;
  let state = { ...startingState(figures, asked.set), by: asked.by };
  for (const [name, { knob }] of KNOBS) {
    const its = knobOf(knob, state.by);
    state = { ...state, [its]: asked.numbers.get(name) ?? state[its] };
  }
  state = dialled(figures, state, asked.numbers.get("tuning") ?? dialFrequency(figures, state));
  state = { ...state, feed: asked.words.get("feed") ?? state.feed, night: asked.words.get("night") === "yes" };
  return { state, faults: asked.faults.map((fault) => `${capital(sentence(fault))}: ${INSTEAD[fault.fault]}.`) };
}

/** What is wrong with a text, in the words that an author reads too. @param {Figures} figures @param {string} text */
export const faultsOf = (figures, text) => askedBy(figures, text)?.faults.map(sentence) ?? null;

/** @param {Fault} fault */
const sentence = (fault) => grammar.faults[fault.fault].replace(/\{(name|text)\}/g, (_, part) => fault[/** @type {"name" | "text"} */ (part)]);

/** @param {string} words */
const capital = (words) => words[0].toUpperCase() + words.slice(1);

/**
 * What a text asks for, each number within its knob's stops; null if it names no set.
 *
 * @param {Figures} figures
 * @param {string} text
 * @returns {Asked | null}
 */
function askedBy(figures, text) {
  const parts = text.split("&").map((part) => {
    const [name, ...rest] = part.split("=");
    return { name, text: rest.join("=") };
  });
  const named = parts.find(({ name }) => name === "set");
  if (!named) return null;
  const known = figures.order.includes(named.text);
  const set = known ? named.text : figures.order[0];
  const { feeds, controls } = figures.sets[set];
  const words = new Map([["feed", feeds], ["night", grammar.night]]);
  if (controls) words.set("by", Object.keys(controls));
  const chosen = parts.find(({ name }) => name === "by")?.text ?? USUAL;
  const by = /** @type {ControlName} */ (words.get("by")?.includes(chosen) ? chosen : USUAL);
  /** @type {Asked} */
  const asked = { set, by, numbers: new Map(), words: new Map(), faults: [] };
  const ends = numbersOf(figures, set, by);
  const seen = new Set();
  for (const part of parts) {
    const { name, text } = part;
    const fault = (/** @type {FaultName} */ fault) => asked.faults.push({ fault, ...part });
    const range = ends.get(name);
    if (seen.has(name)) {
      fault("twice");
    } else if (name === "set") {
      if (!known) fault("set");
    } else if (range) {
      const value = numberIn(text, range.unit);
      const inside = value === null ? null : Math.min(Math.max(value, range.low), range.high);
      if (value === null || inside === null) fault("value");
      else {
        if (Math.abs(inside - value) > grammar.slack * value) fault("stop");
        asked.numbers.set(name, inside);
      }
    } else if (words.has(name)) {
      if (words.get(name)?.includes(text)) asked.words.set(name, text);
      else fault("value");
    } else {
      fault("name");
    }
    seen.add(name);
  }
  return asked;
}

/** The parts of a set's settings that are numbers: their unit and how far each goes. @param {Figures} figures @param {string} set @param {ControlName} by */
function numbersOf(figures, set, by) {
  const { low, high } = dialOf(figures, set);
  /** @type {Map<string, Ends & {unit: string}>} */
  const ends = new Map([["tuning", { low, high, unit: grammar.tuning.unit }]]);
  for (const [name, { knob }] of KNOBS) {
    const its = figures.sets[set].knobs[knobOf(knob, by)];
    if (its?.unit !== undefined) ends.set(name, { low: its.low, high: its.high, unit: its.unit });
  }
  return ends;
}

/** A number with its unit, in SI; null if it is none. @param {string} text @param {string} unit */
function numberIn(text, unit) {
  const sizes = SIZES[unit];
  const found = new RegExp(`^(${grammar.number})(${Object.keys(sizes).join("|")})$`).exec(text);
  return found && Number(found[1]) * sizes[found[2]];
}
