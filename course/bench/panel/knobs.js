/** The knobs: native sliders, each bound to one field of the state, with a button at either end for the last little bit. */

import { dialFrequency, dialled, dialOf } from "../physics/bench.js";
import { CONTROLS } from "../physics/controls.js";
import { input as inputIn, part, parts, tell } from "./page.js";
import { kilohertz, quantity } from "./quantities.js";

/** @typedef {import("../physics/bench.js").Figures} Figures */
/** @typedef {import("../physics/bench.js").State} State */
/** @typedef {{input: HTMLInputElement, output: HTMLElement}} Slider */
/** @typedef {(turn: (state: State) => State, knob: string) => void} Turned */

const HOLD = 400; // milliseconds until a button that is held goes on by itself
const REPEAT = 50;

/** How a value goes with a knob's turn, both as parts of their most; and back. @typedef {{bend: (part: number) => number, unbend: (part: number) => number}} Law */
/** @type {Law} */ const EVEN = { bend: (part) => part, unbend: (part) => part };
/** @type {Law} */ const SQUARE = { bend: (part) => part ** 2, unbend: Math.sqrt };
/** @type {Law} */ const SINE = { bend: (part) => Math.sin((part * Math.PI) / 2), unbend: (part) => Math.asin(Math.min(part, 1)) / (Math.PI / 2) };

/** What a slider stands for: how many places it has, and its law. The throttle's vanes are cut square-law; the tickler turns through a right angle. */
const PLAIN = {
  coupling: { places: 380, law: EVEN },
  throttle: { places: 2000, law: SQUARE },
  swinging: { places: 2000, law: SINE },
  shunt: { places: 2000, law: EVEN },
  quench: { places: 600, law: EVEN },
};

/** A knob's value in words, by the unit in which settings write it. @type {Record<string, (value: number) => string>} */
const SAYS = {
  uH: (value) => quantity(value, "H"),
  nH: (value) => quantity(value, "H"),
  pF: (value) => quantity(value, "F", 4),
  ohm: (value) => quantity(value, "Ω", 4),
  kHz: (value) => kilohertz(value),
  "": (value) => `${value.toFixed(3)} of the loss`,
};

/** A knob that the set has, and that does not stand idle while another turns reaction up. @param {Figures} figures @param {State} state @param {keyof typeof PLAIN} name */
const inUse = (figures, { set, by }, name) => (name in CONTROLS && name !== by ? undefined : figures.sets[set].knobs[name]);

/** Where a knob stands, in words; "by" is that which turns reaction up. @param {Figures} figures @param {State} state @param {keyof typeof PLAIN | "by"} name */
export function says(figures, state, name) {
  const its = name === "by" ? state.by : name;
  const knob = inUse(figures, state, its);
  return knob ? SAYS[knob.unit ?? ""](state[its]) : "–";
}

/**
 * @param {HTMLElement} root
 * @param {Figures} figures
 * @param {Turned} turned
 * @returns {(state: State) => void} puts all knobs where a state has them
 */
export function knobs(root, figures, turned) {
  const names = /** @type {(keyof typeof PLAIN)[]} */ (Object.keys(PLAIN));
  const show = [tuning(root, figures, turned), ...names.map((name) => plainKnob(root, name, figures, turned))];
  return (state) => show.forEach((each) => each(state));
}

/**
 * A knob that stands for one value of the state.
 *
 * @param {HTMLElement} root
 * @param {keyof typeof PLAIN} name
 * @param {Figures} figures
 * @param {Turned} turned
 * @returns {(state: State) => void} puts it where a state has it
 */
export function plainKnob(root, name, figures, turned) {
  const knob = part(root, `[data-knob=${name}]`);
  const { places, law } = PLAIN[name];
  const { input, output } = slider(knob, () =>
    turned((state) => {
      const ends = inUse(figures, state, name);
      return ends ? { ...state, [name]: valueAt(input.valueAsNumber / places, ends, law) } : state;
    }, name),
  );
  range(input, 0, places, 1);
  return (/** @type {State} */ state) => {
    const ends = inUse(figures, state, name);
    knob.hidden = !ends;
    if (!ends) return;
    stand(input, Math.round(places * placeOf(state[name], ends, law)));
    say(input, output, says(figures, state, name));
  };
}

/** @param {number} place 0 to 1 @param {{low: number, high: number}} ends @param {Law} law */
function valueAt(place, { low, high }, { bend, unbend }) {
  const least = unbend(low / high);
  return Math.min(Math.max(high * bend(least + (1 - least) * place), low), high);
}

/** @param {number} value @param {{low: number, high: number}} ends @param {Law} law */
function placeOf(value, { low, high }, { unbend }) {
  const least = unbend(low / high);
  return (unbend(value / high) - least) / (1 - least);
}

/**
 * The tuning condenser by two sliders: coarse in kilohertz, fine about it in hertz; the dial shows their sum.
 *
 * @param {HTMLElement} root
 * @param {Figures} figures
 * @param {Turned} turned
 */
function tuning(root, figures, turned) {
  /** @type {import("../physics/bench.js").Dial} */ let dial;
  const turn = () => turned((state) => dialled(figures, state, sum()), "tuning");
  const coarse = slider(part(root, "[data-knob=tuning]"), turn);
  const fine = slider(part(root, "[data-knob=fine]"), turn);
  const sum = () => Math.min(Math.max(coarse.input.valueAsNumber * 1e3 + fine.input.valueAsNumber, dial.low), dial.high);
  return (/** @type {State} */ state) => {
    const hertz = dialFrequency(figures, state);
    if (dial !== dialOf(figures, state.set)) {
      dial = dialOf(figures, state.set);
      range(coarse.input, Math.ceil(dial.low / 1e3), Math.floor(dial.high / 1e3), dial.step / 1e3);
      range(fine.input, -dial.fine, dial.fine, dial.least);
    }
    if (Math.abs(sum() - hertz) > 1) {
      stand(coarse.input, (dial.step / 1e3) * Math.round(hertz / dial.step));
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
 * @param {() => void} moved
 * @returns {Slider}
 */
function slider(knob, moved) {
  const input = inputIn(knob, "input");
  input.addEventListener("input", moved);
  for (const button of parts(knob, ".step")) {
    onAndOn(button, () => {
      input.valueAsNumber += Number(input.step) * Number(button.dataset.step);
      moved();
    });
  }
  return { input, output: part(knob, "output") };
}

/** @param {HTMLInputElement} input @param {number} min @param {number} max @param {number} step */
const range = (input, min, max, step) => Object.assign(input, { min, max, step });

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
