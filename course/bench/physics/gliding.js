/** Knobs that are turned from one place to another, a little at a time, so that no step is heard. */

/** @typedef {import("./bench.js").State} State */

export const HOLD = 0.01; // second: how long knobs stand still while they are turned
const GLIDE = 0.6; // of the way that is left, a knob goes in that time
const THERE = 1e-4; // a knob as near as this to where it should be is there
const LEAST = 1e-13; // SI: below all knobs but one, which may stand at nothing
const KNOBS = /** @type {const} */ (["coupling", "tuning", "quench", "throttle", "swinging", "shunt"]);

/** Where the knobs are next; `to` itself once they are there, or at once if it is another set, or wired otherwise. @param {State} from @param {State} to @returns {State} */
export function nearer(from, to) {
  if (from.set !== to.set || from.feed !== to.feed || from.by !== to.by) return to;
  const next = { ...to };
  for (const knob of KNOBS) {
    const begun = Math.max(from[knob], LEAST);
    const way = Math.max(to[knob], LEAST) / begun;
    if (Math.abs(way - 1) >= THERE) next[knob] = begun * way ** GLIDE;
  }
  return KNOBS.every((knob) => next[knob] === to[knob]) ? to : next;
}
