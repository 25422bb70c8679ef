/** The bench with which the course opens: a station, another under it, and the knob that parts them. */

import { startingState } from "../physics/bench.js";
import { sharp } from "./canvas.js";
import { palette, whenLightChanges } from "./colours.js";
import { drawDial } from "./dial.js";
import { plainKnob } from "./knobs.js";
import { canvas, part, tell } from "./page.js";
import { dialSays } from "./picture.js";
import { decibels, inDecibels } from "./quantities.js";
import { seenOf } from "./seen.js";
import { stateOf } from "./setting.js";
import { sounding } from "./sounding.js";

/** @typedef {import("../physics/bench.js").Figures} Figures */
/** @typedef {import("../physics/bench.js").State} State */

const BESIDE = 40e3; // hertz of the dial on either side of the two stations

/** @param {HTMLElement} root @param {Figures} all */
export function openingIn(root, all) {
  let state = stateOf(all, root.dataset.setting ?? "")?.state ?? startingState(all, all.order[0]);
  const figures = withTwoStations(all, state);
  let colours = palette();
  let frame = 0;
  const view = canvas(root, ".dial-view");
  const sheet = sharp(view, soon);
  const setKnob = plainKnob(root, "throttle", figures, (turn) => change(turn(state)));
  const pass = sounding(root, figures, () => state);

  /** @param {State} next */
  function change(next) {
    state = next;
    setKnob(state);
    pass();
    soon();
  }

  function soon() {
    frame ||= requestAnimationFrame(draw);
  }

  function draw() {
    frame = 0;
    const seen = seenOf(figures, state, []);
    drawDial(sheet, seen, colours);
    tell(part(root, ".standing"), standing(seen));
    view.setAttribute("aria-label", dialSays(seen));
  }

  whenLightChanges(() => {
    colours = palette();
    soon();
  });
  change(state);
}

/** A coast with only the two stations that are strongest in the set as it stands, and the dial about them. @param {Figures} figures @param {State} state @returns {Figures} */
function withTwoStations(figures, state) {
  const strongest = seenOf(figures, state, []).stations.sort((one, other) => (other.grid ?? 0) - (one.grid ?? 0)).slice(0, 2);
  const stations = figures.stations.filter(({ name }) => strongest.some((station) => station.name === name));
  const places = stations.map(({ frequency }) => frequency);
  return { ...figures, stations, dial: { ...figures.dial, low: Math.min(...places) - BESIDE, high: Math.max(...places) + BESIDE } };
}

/** @param {import("./seen.js").Seen} seen */
function standing({ tuned, stations }) {
  if (tuned.grid === null) return `It oscillates on ${tuned.name}.`;
  const under = stations.find((station) => station !== tuned)?.grid ?? 0;
  return `${tuned.name}, ${decibels(inDecibels(tuned.grid / under))} over the other.`;
}
