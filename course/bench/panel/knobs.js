/** The knobs: native sliders, each bound to one field of the state, with a button at either end for the last little bit. */

import { dialFrequency, dialled } from "../physics/bench.js";
import { input as inputIn, part, parts, tell } from "./page.js";
import { kilohertz, quantity } from "./words.js";

/** @typedef {import("../physics/bench.js").Figures} Figures */
/** @typedef {import("../physics/bench.js").State} State */
/** @typedef {{input: HTMLInputElement, output: HTMLElement}} Slider */
/** @typedef {(turn: (state: State) => State, knob: string) => void} Turned */

const FINE = 6e3; // hertz to either side
const HOLD = 400; // milliseconds until a button that is held goes on by itself
const REPEAT = 50;

/** What a slider stands for: how many places it has, whether it is even in ratios, and a value in words. */
const PLAIN = /** @type {const} */ ({
  coupling: { places: 380, ratios: false, says: (/** @type {number} */ value) => quantity(value, "H") },
  throttle: { places: 2000, ratios: true, says: (/** @type {number} */ value) => quantity(value, "F", 4) },
});

/**
 * @param {HTMLElement} root
 * @param {Figures} figures
 * @param {Turned} turned
 * @returns {(state: State) => void} puts all knobs where a state has them
 */
export function knobs(root, figures, turned) {
  const show = [tuning(root, figures, turned), plain(root, "coupling", figures, turned), plain(root, "throttle", figures, turned)];
  return (state) => show.forEach((each) => each(state));
}

/**
 * @param {HTMLElement} root
 * @param {keyof typeof PLAIN} name
 * @param {Figures} figures
 * @param {Turned} turned
 */
function plain(root, name, figures, turned) {
  const knob = part(root, `[data-knob=${name}]`);
  const { places, ratios, says } = PLAIN[name];
  const { input, output } = slider(knob, { low: 0, high: places, step: 1 }, () =>
    turned((state) => {
      const ends = figures.sets[state.set].knobs[name];
      return ends ? { ...state, [name]: valueAt(input.valueAsNumber / places, ends, ratios) } : state;
    }, name),
  );
  return (/** @type {State} */ state) => {
    const ends = figures.sets[state.set].knobs[name];
    knob.hidden = !ends;
    if (!ends) return;
    stand(input, Math.round(places * placeOf(state[name], ends, ratios)));
    say(input, output, says(state[name]));
  };
}

/** @param {number} place 0 to 1 @param {{low: number, high: number}} ends @param {boolean} ratios */
const valueAt = (place, { low, high }, ratios) => (ratios ? low * (high / low) ** place : low + (high - low) * place);

/** @param {number} value @param {{low: number, high: number}} ends @param {boolean} ratios */
const placeOf = (value, { low, high }, ratios) =>
  ratios ? Math.log(value / low) / Math.log(high / low) : (value - low) / (high - low);

/**
 * The tuning condenser by two sliders: coarse in whole kilohertz, fine about it; the dial shows their sum.
 *
 * @param {HTMLElement} root
 * @param {Figures} figures
 * @param {Turned} turned
 */
function tuning(root, figures, turned) {
  const { low, high } = figures.dial;
  const turn = () => turned((state) => dialled(figures, state, sum()), "tuning");
  const range = { low: Math.ceil(low / 1e3), high: Math.floor(high / 1e3), step: 1 };
  const coarse = slider(part(root, "[data-knob=tuning]"), range, turn);
  const fine = slider(part(root, "[data-knob=fine]"), { low: -FINE, high: FINE, step: 20 }, turn);
  const sum = () => Math.min(Math.max(coarse.input.valueAsNumber * 1e3 + fine.input.valueAsNumber, low), high);
  return (/** @type {State} */ state) => {
    const hertz = dialFrequency(figures, state);
    if (Math.abs(sum() - hertz) > 1) {
      stand(coarse.input, Math.round(hertz / 1e3));
      stand(fine.input, hertz - coarse.input.valueAsNumber * 1e3);
    }
    const off = fine.input.valueAsNumber;
    say(coarse.input, coarse.output, kilohertz(hertz));
    say(fine.input, fine.output, `${off < 0 ? "" : "+"}${kilohertz(off, 2)}`);
  };
}

/**
 * The slider of a knob and its buttons.
 *
 * @param {HTMLElement} knob
 * @param {{low: number, high: number, step: number}} range
 * @param {() => void} moved
 * @returns {Slider}
 */
function slider(knob, { low, high, step }, moved) {
  const input = inputIn(knob, "input");
  Object.assign(input, { min: low, max: high, step });
  input.addEventListener("input", moved);
  for (const button of parts(knob, ".step")) {
    onAndOn(button, () => {
      stand(input, Math.min(Math.max(input.valueAsNumber + step * Number(button.dataset.step), low), high));
      moved();
    });
  }
  return { input, output: part(knob, "output") };
}

/** Do something at each press of a button, and on and on while it is held. @param {HTMLElement} button @param {() => void} once */
function onAndOn(button, once) {
  let wait = 0;
  let repeat = 0;
  const stop = () => {
    clearTimeout(wait);
    clearInterval(repeat);
  };
  button.addEventListener("pointerdown", () => {
    stop();
    wait = setTimeout(() => (repeat = setInterval(once, REPEAT)), HOLD);
  });
  for (const end of ["pointerup", "pointercancel", "pointerleave", "blur"]) button.addEventListener(end, stop);
  button.addEventListener("click", once);
  button.addEventListener("contextmenu", (event) => event.preventDefault());
}

/** @param {HTMLInputElement} input @param {number} value */
function stand(input, value) {
  if (input.valueAsNumber !== value) input.valueAsNumber = value;
}

/** Say a slider's value beside it and to a screen reader. @param {HTMLInputElement} input @param {HTMLElement} output @param {string} words */
export function say(input, output, words) {
  tell(output, words);
  if (input.getAttribute("aria-valuetext") !== words) input.setAttribute("aria-valuetext", words);
}
