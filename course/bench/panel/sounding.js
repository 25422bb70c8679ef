/** The sound: silent until asked for, held for the ear or as loud as life, never louder than the volume says; the page warns when it is loud. */

import { createPlayer } from "../sound/player.js";
import { say } from "./knobs.js";
import { FIRST, FIRST_LEVEL, loudness, STEPS } from "./level.js";
import { input as inputIn, part, parts, select, tell } from "./page.js";
import { decibels } from "./quantities.js";

/** @typedef {import("../physics/bench.js").State} State */

const LINGER = 2e3; // milliseconds that a warning stays at least
const COUNT = 400; // milliseconds between two numbers of how much louder it is made

/**
 * @param {HTMLElement} root
 * @param {import("../physics/bench.js").Figures} figures
 * @param {() => State} state
 * @returns {() => void} to be called when the state has changed
 */
export function sounding(root, figures, state) {
  const button = part(root, ".listen");
  const now = part(root, ".sounding-now");
  const made = part(root, ".made");
  let louder = -Infinity;
  let counted = -Infinity;

  const player = createPlayer(figures, {
    programme: root.dataset.programme ?? "",
    onFault: (sentence) => tell(now, sentence),
    onReport: (report) => {
      const { volume, magnify } = level.read();
      if (magnify !== null && volume > 0 && (report.held > 0 || report.level > figures.loud)) louder = performance.now();
      show();
      if (performance.now() - counted < COUNT) return;
      counted = performance.now();
      tell(made, madeLouder(report.louder));
    },
  });
  const show = () => {
    const loud = player.running && performance.now() - louder < LINGER;
    now.classList.toggle("is-loud", loud);
    tell(now, loud ? "Loud for an ear: volume down, or less coupling." : player.running ? "Playing." : "");
  };
  const sounded = () => ({ ...state(), ...level.read() });
  const pass = () => {
    if (player.running) player.set(sounded());
  };
  const level = parts(root, "[data-knob=volume]").length ? levelOf(root, pass) : { read: () => FIRST_LEVEL, begin: () => {} };
  const begin = async () => {
    level.begin();
    try {
      await player.start(sounded());
      show();
    } catch (error) {
      tell(now, `This browser plays no sound from the bench: ${error instanceof Error ? error.message : error}`);
    }
  };

  button.addEventListener("click", async () => {
    if (player.running) {
      await player.stop();
      show();
      tell(made, "");
    } else {
      await begin();
    }
    button.setAttribute("aria-pressed", String(player.running));
  });
  addEventListener("pagehide", () => player.stop());
  return pass;
}

/** @param {number} louder decibel */
function madeLouder(louder) {
  if (Math.round(louder) === 0) return "As loud as life.";
  return `Made ${decibels(Math.abs(louder))} ${louder > 0 ? "louder" : "softer"} for you.`;
}

/**
 * Volume and strength as they are set in the page; the volume stands at nothing until the sound is first asked for.
 *
 * @param {HTMLElement} root
 * @param {() => void} turned
 */
function levelOf(root, turned) {
  const input = inputIn(root, "[data-knob=volume] input");
  const output = part(root, "[data-knob=volume] output");
  const strength = select(root, ".magnify");
  const turn = () => {
    say(input, output, input.valueAsNumber ? `${input.valueAsNumber} of ${STEPS}` : "muted");
    turned();
  };
  Object.assign(input, { min: 0, max: STEPS, step: 1, valueAsNumber: 0 });
  input.addEventListener("input", turn);
  strength.addEventListener("change", turn);
  say(input, output, "muted");
  return {
    /** @returns {typeof FIRST_LEVEL} */
    read: () => ({ volume: loudness(input.valueAsNumber), magnify: strength.value ? Number(strength.value) : null }),
    begin() {
      if (input.valueAsNumber === 0) input.valueAsNumber = FIRST;
      turn();
    },
  };
}
