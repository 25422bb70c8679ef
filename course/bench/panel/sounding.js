/** The sound: silent until asked for, soft at first, never louder than the volume says; the page warns when it is loud. */

import { createPlayer } from "../sound/player.js";
import { say } from "./knobs.js";
import { input as inputIn, part, select, tell } from "./page.js";

/** @typedef {import("../physics/bench.js").State} State */

const STEPS = 100; // of the volume's slider
const SOFT = 25; // where it stands when the sound is first asked for
const LINGER = 2e3; // milliseconds that a warning stays at least

/**
 * @param {HTMLElement} root
 * @param {import("../physics/bench.js").Figures} figures
 * @param {() => State} state
 * @returns {() => void} to be called when the state has changed
 */
export function sounding(root, figures, state) {
  const button = part(root, ".listen");
  const now = part(root, ".sounding-now");
  const input = inputIn(root, "[data-knob=volume] input");
  const output = part(root, "[data-knob=volume] output");
  const magnify = select(root, ".magnify");
  Object.assign(input, { min: 0, max: STEPS, step: 1, valueAsNumber: 0 });

  const player = createPlayer(figures, {
    programme: root.dataset.programme ?? "",
    onFault: (sentence) => tell(now, sentence),
    onReport: ({ held, level }) => {
      if (input.valueAsNumber > 0 && (held > 0 || level > figures.loud)) louder = performance.now();
      show();
    },
  });
  let louder = -Infinity;
  const show = () => {
    const loud = player.running && performance.now() - louder < LINGER;
    now.classList.toggle("is-loud", loud);
    tell(now, loud ? "Loud for an ear: volume down, or less coupling." : player.running ? "Playing." : "");
  };
  const sounded = () => ({ ...state(), volume: (input.valueAsNumber / STEPS) ** 2, magnify: Number(magnify.value) });
  const pass = () => {
    if (player.running) player.set(sounded());
  };
  const turn = () => {
    say(input, output, input.valueAsNumber ? `${input.valueAsNumber} of ${STEPS}` : "muted");
    pass();
  };
  const begin = async () => {
    if (input.valueAsNumber === 0) input.valueAsNumber = SOFT;
    turn();
    try {
      await player.start(sounded());
      show();
    } catch (error) {
      tell(now, `This browser plays no sound from the bench: ${error instanceof Error ? error.message : error}`);
    }
  };

  input.addEventListener("input", turn);
  magnify.addEventListener("change", turn);
  button.addEventListener("click", async () => {
    await (player.running ? player.stop() : begin());
    button.setAttribute("aria-pressed", String(player.running));
    if (!player.running) show();
  });
  addEventListener("pagehide", () => player.stop());
  turn();
  return pass;
}
