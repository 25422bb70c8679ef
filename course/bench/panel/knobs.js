/** The knobs: native sliders, each bound to one field of the state, with a button at either end for the last little bit. */

import { dialFrequency, dialled } from '../physics/bench.js';
import { kilohertz, quantity } from './words.js';

/** @typedef {import('../physics/bench.js').State} State */

const FINE = 6e3; // hertz to either side
const COARSE_STEPS = 1e3, LOG_STEPS = 2000;

/** What a slider stands for. `range` gives its ends; `says` puts a value in words; `places` is how many it has. */
const KNOBS = {
  coupling: { range: knobRange('coupling'), says: value => quantity(value, 'H'), places: 380 },
  throttle: { range: knobRange('throttle'), says: value => quantity(value, 'F', 4), places: LOG_STEPS, log: true },
  quench: { range: knobRange('quench'), says: value => quantity(value, 'Hz'), places: LOG_STEPS, log: true },
};

function knobRange(field) {
  return (figures, state) => figures.sets[state.set].knobs[field];
}

/**
 * @param {HTMLElement} root
 * @param {object} figures
 * @param {(turn: (state: State) => State, knob: string) => void} turned
 * @returns {(state: State) => void} puts all knobs where a state has them
 */
export function knobs(root, figures, turned) {
  const show = [tuning(root, figures, turned), ...Object.keys(KNOBS).map(name => plain(root, name, figures, turned))];
  return state => show.forEach(each => each(state));
}

function plain(root, name, figures, turned) {
  const knob = root.querySelector(`[data-knob=${name}]`), { range, says, places, log } = KNOBS[name];
  const value = (part, { low, high }) => log ? low * (high / low) ** part : low + (high - low) * part;
  const place = (value, { low, high }) => log ? Math.log(value / low) / Math.log(high / low) : (value - low) / (high - low);
  const { input, output } = slider(knob, 0, places, 1, () => {
    const part = input.valueAsNumber / places;
    turned(state => ({ ...state, [name]: value(part, range(figures, state)) }), name);
  });
  return state => {
    const ends = range(figures, state);
    knob.hidden = !ends;
    if (!ends) return;
    const at = Math.round(places * place(state[name], ends));
    if (input.valueAsNumber !== at) input.valueAsNumber = at;
    say(input, output, says(state[name]));
  };
}

/** The tuning condenser by two sliders: coarse in whole kilohertz, fine about it; the dial shows their sum. */
function tuning(root, figures, turned) {
  const coarseKnob = root.querySelector('[data-knob=tuning]'), fineKnob = root.querySelector('[data-knob=fine]');
  const { low, high } = figures.dial;
  const sum = () => Math.min(Math.max(coarse.input.valueAsNumber * 1e3 + fine.input.valueAsNumber, low), high);
  const turn = () => turned(state => dialled(figures, state, sum()), 'tuning');
  const coarse = slider(coarseKnob, Math.ceil(low / 1e3), Math.floor(high / 1e3), 1, turn);
  const fine = slider(fineKnob, -FINE, FINE, 20, turn);
  return state => {
    const hertz = dialFrequency(figures, state);
    if (Math.abs(sum() - hertz) > 1) {
      coarse.input.valueAsNumber = Math.round(hertz / COARSE_STEPS);
      fine.input.valueAsNumber = hertz - coarse.input.valueAsNumber * 1e3;
    }
    say(coarse.input, coarse.output, kilohertz(hertz));
    const off = fine.input.valueAsNumber;
    say(fine.input, fine.output, `${off < 0 ? '−' : '+'}${(Math.abs(off) / 1e3).toFixed(2)} kHz`);
  };
}

/** The slider of a knob and its buttons, which step it once, or on and on while they are held. */
function slider(knob, low, high, step, moved) {
  const input = knob.querySelector('input'), output = knob.querySelector('output');
  Object.assign(input, { min: low, max: high, step });
  input.addEventListener('input', moved);
  for (const button of knob.querySelectorAll('.step')) {
    const once = () => {
      input.valueAsNumber = Math.min(Math.max(input.valueAsNumber + step * Number(button.dataset.step), low), high);
      moved();
    };
    held(button, once);
  }
  return { input, output };
}

function held(button, once) {
  let timer = 0;
  const stop = () => clearInterval(timer);
  button.addEventListener('pointerdown', () => {
    stop();
    timer = setTimeout(() => { timer = setInterval(once, 50); }, 400);
  });
  for (const end of ['pointerup', 'pointercancel', 'pointerleave', 'blur']) button.addEventListener(end, stop);
  button.addEventListener('click', once);
  button.addEventListener('contextmenu', event => event.preventDefault());
}

/** @param {HTMLInputElement} input @param {HTMLOutputElement} output @param {string} text */
export function say(input, output, text) {
  if (output.textContent === text) return;
  output.textContent = text;
  input.setAttribute('aria-valuetext', text);
}
