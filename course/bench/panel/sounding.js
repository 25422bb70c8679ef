/** The sound: silent until asked for, soft at first, never louder than the volume says; the page warns when it is loud. */

import { createPlayer } from '../sound/player.js';
import { say } from './knobs.js';

const STEPS = 100, SOFT = 0.25; // where the volume stands when the sound is first asked for, of the slider's way

/**
 * @param {HTMLElement} root
 * @param {object} figures
 * @param {() => import('../physics/bench.js').State} state
 * @param {(report: object | null) => void} reported  what is heard now; null once it is silent
 * @returns {(state: import('../physics/bench.js').State) => void} hands a new state to the sound
 */
export function sounding(root, figures, state, reported) {
  const button = root.querySelector('.listen'), now = root.querySelector('.sounding-now');
  const knob = root.querySelector('[data-knob=volume]'), input = knob.querySelector('input'), output = knob.querySelector('output');
  const magnify = root.querySelector('.magnify');
  Object.assign(input, { min: 0, max: STEPS, step: 1, valueAsNumber: 0 });

  const tell = text => { if (now.textContent !== text) now.textContent = text; };
  const player = createPlayer(figures, {
    programme: root.dataset.programme,
    onFault: tell,
    onReport: report => {
      if (!player.running) return;
      const loud = input.valueAsNumber > 0 && (report.held > 0 || report.level > figures.loud);
      now.classList.toggle('is-loud', loud);
      tell(loud ? 'Loud: turn the volume down, or take the headphones off.' : playing());
      reported(report);
    },
  });
  const playing = () => input.valueAsNumber > 0 ? 'Playing.' : 'Playing, with the volume at nothing: turn it up slowly.';
  const sounded = () => ({ ...state(), volume: (input.valueAsNumber / STEPS) ** 2, magnify: Number(magnify.value) });

  const turn = () => {
    say(input, output, `${input.valueAsNumber} of ${STEPS}`);
    if (player.running) player.set(sounded());
  };
  const show = on => {
    button.setAttribute('aria-pressed', String(on));
    root.classList.toggle('is-sounding', on);
    now.classList.remove('is-loud');
    tell(on ? playing() : 'Silent.');
    if (!on) reported(null);
  };

  input.addEventListener('input', turn);
  magnify.addEventListener('change', turn);
  turn();
  button.addEventListener('click', async () => {
    if (player.running) {
      await player.stop();
      return show(false);
    }
    if (input.valueAsNumber === 0) input.valueAsNumber = STEPS * SOFT;
    turn();
    try {
      await player.start(sounded());
      show(true);
    } catch (error) {
      tell(`This browser plays no sound from the bench: ${error.message}`);
    }
  });
  addEventListener('pagehide', () => { if (player.running) player.stop(); });
  return () => { if (player.running) player.set(sounded()); };
}
