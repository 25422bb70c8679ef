/** One bench: a state, the knobs that change it, and the views that show it. */

import { dialOf, exchanged, startingState, stationsOf } from "../physics/bench.js";
import { createListener } from "../sound/listener.js";
import { sharp } from "./canvas.js";
import { drawCloseUp } from "./closeup.js";
import { palette, whenLightChanges } from "./colours.js";
import { comparing } from "./comparing.js";
import { drawDial } from "./dial.js";
import { gauges } from "./gauges.js";
import { goals } from "./goals.js";
import { knobs, says } from "./knobs.js";
import { gained, measured } from "./measured.js";
import { numbers } from "./numbers.js";
import { canvas, input, link, part, parts, tell, textOf } from "./page.js";
import { pictures } from "./picture.js";
import { seenOf } from "./seen.js";
import { settingOf, stateOf } from "./setting.js";
import { inAddressBar, sharing } from "./sharing.js";
import { sounding } from "./sounding.js";

/** @typedef {import("../physics/bench.js").Figures} Figures */
/** @typedef {import("../physics/bench.js").State} State */

const PAUSE = 180; // milliseconds between two questions to the listener
const SAME = "The parts are exchanged, and the tuning is put right: the set rings where it did, its band as wide as it was.";
const LEAST = "The parts are exchanged. This knob cannot bring the set to where it was: it begins with least reaction.";
const REST = 350; // milliseconds after the last turn, until all that stands beside the picture is put right

/** @param {HTMLElement} root @param {Figures} figures */
export function benchIn(root, figures) {
  const working = part(root, ".working");
  let state = stateOf(figures, root.dataset.setting ?? "")?.state ?? startingState(figures, figures.order[0]);
  /** @type {import("./seen.js").Seen} */ let seen;
  let colours = palette();
  let frame = 0;
  let asking = 0;
  let rest = 0;
  let turned = false;
  /** @type {ReturnType<typeof createListener> | null} */ let listener = null; // made once there is something to see

  const dialSheet = sharp(canvas(root, ".dial-view"), soon);
  const closeSheet = sharp(canvas(root, ".close-view"), soon);
  const setKnobs = knobs(root, figures, (turn, knob) => change(turn(state), knob));
  const setGauges = gauges(root, figures);
  const setPictures = pictures(root);
  const pass = sounding(root, figures, () => state);
  const setChoices = choices(root, figures, () => state, change);
  const extras = root.classList.contains("whole") ? beneath() : null;

  /** What only the whole bench has. */
  function beneath() {
    return {
      numbers: numbers(root, figures),
      goals: goals(root, figures.order, begin),
      sharing: sharing(root),
      comparing: comparing(root, read, (kept) => change(kept, "back"), soon),
    };
  }

  /** A new state: knobs and sound at once, the pictures in the next frame, the rest when there is time. */
  function change(/** @type {State} */ next, /** @type {string} */ knob = "") {
    const chosen = next.set !== state.set || next.feed !== state.feed || next.by !== state.by || next.night !== state.night;
    state = next;
    turned = knob !== "";
    if (turned) root.dataset.lit = knob;
    root.dataset.read = "no";
    setKnobs(state);
    if (chosen) setChoices(state);
    pass();
    soon();
  }

  function soon() {
    frame ||= requestAnimationFrame(draw);
  }

  function draw() {
    frame = 0;
    seen = seenOf(figures, state, extras ? extras.comparing.curves() : []);
    drawDial(dialSheet, seen, colours);
    drawCloseUp(closeSheet, seen, colours);
    asking ||= setTimeout(settle, PAUSE);
  }

  /** All that can be read of the bench as it stands; null if it was turned on meanwhile and is being read again. */
  async function read() {
    const looked = { state, seen, title: textOf(root, ".which :checked + span"), says: says.bind(null, figures, state) };
    try {
      listener ??= createListener(figures);
      const heard = await listener.ask(state);
      return heard && { ...looked, heard, measured: measured(looked.state, looked.seen, heard) };
    } catch (fault) {
      complain([fault instanceof Error ? fault.message : String(fault)]);
      return null;
    }
  }

  /** The ear and the goals, a few times a second; all else once the knobs rest. */
  async function settle() {
    asking = 0;
    const byHand = turned;
    const reading = await read();
    if (!reading) return;
    setGauges(reading.seen, reading.heard, gained(figures, reading.state, reading.seen));
    extras?.goals(reading.measured, byHand);
    clearTimeout(rest);
    rest = setTimeout(() => putRight(reading, byHand), byHand ? REST : 0);
  }

  /** @param {import("./comparing.js").Reading} reading @param {boolean} byHand */
  function putRight(reading, byHand) {
    if (reading.state !== state) return;
    const setting = settingOf(figures, state);
    setPictures(reading.seen);
    if (extras) {
      extras.numbers(state);
      extras.comparing.show(reading);
      if (byHand) extras.sharing(setting);
    } else {
      link(root, ".whole-link").hash = setting;
    }
    root.dataset.read = "yes";
  }

  /** @param {string[]} sentences */
  function complain(sentences) {
    const fault = part(root, ".turning-fault");
    fault.hidden = sentences.length === 0;
    tell(fault, sentences.join(" "));
  }

  /** Stand as a setting says; whether it is one. @param {string} setting */
  function open(setting) {
    const asked = stateOf(figures, setting);
    if (!asked) return false;
    complain(asked.faults);
    change(asked.state);
    return true;
  }

  /** Go where the page's address points, if that is a setting. */
  function follow() {
    if (open(decodeURIComponent(location.hash.slice(1)))) root.scrollIntoView();
  }

  /** Begin at a setting, with the focus on the knob to turn first and the picture over it. @param {string} setting @param {string} knob */
  function begin(setting, knob) {
    open(setting);
    inAddressBar(`#${setting}`);
    const hand = input(root, `[data-knob=${knob}] input`);
    hand.focus({ preventScroll: true });
    bringIntoView(hand);
  }

  /** A knob with the picture that it changes. @param {HTMLElement} hand */
  function bringIntoView(hand) {
    working.scrollIntoView({ behavior: "instant" });
    hand.scrollIntoView({ behavior: "instant", block: "nearest" });
  }

  whenLightChanges(() => {
    colours = palette();
    soon();
  });
  setKnobs(state);
  setChoices(state);
  if (extras) {
    addEventListener("hashchange", follow);
    follow();
    const first = input(root, "[data-knob=tuning] input");
    if (!location.hash && first.getBoundingClientRect().bottom > innerHeight) bringIntoView(first);
  }
  soon();
}

/**
 * What is chosen rather than turned: the set, what turns its reaction up, how it is fed, day or night.
 *
 * @param {HTMLElement} root
 * @param {Figures} figures
 * @param {() => State} state
 * @param {(state: State, knob: string) => void} change
 * @returns {(state: State) => void} shows what a state has chosen
 */
function choices(root, figures, state, change) {
  const sets = /** @type {HTMLInputElement[]} */ (parts(root, ".which input"));
  const [control] = parts(root, ".by"); // not on a small bench
  const ways = control ? /** @type {HTMLInputElement[]} */ (parts(control, "input")) : [];
  const fierce = part(root, "[data-choice=fierce]");
  const night = part(root, "[data-choice=night]");
  for (const radio of sets) {
    const label = /** @type {HTMLElement} */ (radio.parentElement);
    label.hidden = !figures.order.includes(radio.value);
    radio.addEventListener("change", () => change(withSet(figures, state(), radio.value), "set"));
  }
  for (const radio of ways) {
    radio.addEventListener("change", () => {
      const by = /** @type {import("../physics/bench.js").ControlName} */ (radio.value);
      const next = exchanged(figures, state(), by);
      change(next.state, by);
      tell(part(control, ".by-says"), next.same ? SAME : LEAST);
    });
  }
  const isFierce = input(fierce, "input");
  const isNight = input(night, "input");
  isFierce.addEventListener("change", () => change({ ...state(), feed: isFierce.checked ? "fierce" : "gentle" }, "feed"));
  isNight.addEventListener("change", () => change({ ...state(), night: isNight.checked }, "night"));
  return ({ set, by, feed, night: dark }) => {
    for (const radio of sets) radio.checked = radio.value === set;
    for (const radio of ways) radio.checked = radio.value === by;
    root.dataset.by = by;
    for (const its of parts(root, "[data-set]")) its.hidden = its.dataset.set !== set || (its.dataset.by ?? by) !== by;
    if (control) {
      control.hidden = !figures.sets[set].controls;
      tell(part(control, ".by-says"), "");
    }
    night.hidden = !stationsOf(figures, set).some((station) => "night" in station);
    fierce.hidden = figures.sets[set].feeds.length < 2;
    isFierce.checked = feed === "fierce";
    isNight.checked = dark;
  };
}

/** Another set, its knobs where they were as far as it has them and shares the dial. @param {Figures} figures @param {State} state @param {string} set @returns {State} */
function withSet(figures, state, set) {
  if (dialOf(figures, set) !== dialOf(figures, state.set)) return { ...startingState(figures, set), night: state.night };
  const { coupling, tuning } = figures.sets[set].knobs;
  return {
    ...startingState(figures, set),
    coupling: Math.min(Math.max(state.coupling, coupling.low), coupling.high),
    tuning: Math.min(Math.max(state.tuning, tuning.low), tuning.high),
    night: state.night,
  };
}
