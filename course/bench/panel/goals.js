/** The goals: each is text in the page with what has to be measured, and is done when all of that lies where it should. */

import { remember, remembered } from "../../theme/scripts/memory.js";
import { link, part, parts, tell, textOf } from "./page.js";
import { decibels, kilohertz, quantity } from "./quantities.js";

/** @typedef {import("./measured.js").Measured} Measured */
/** @typedef {[what: keyof Measured, range: string | [number, number]]} Wanted */
/** @typedef {{item: HTMLElement, name: string, turn: string, wanted: Wanted[]}} Goal */

/** @type {Record<string, (value: number) => string>} */
const SAYS = {
  above: (value) => `${decibels(value)} above hearing`,
  apart: (value) => (Number.isFinite(value) ? `${decibels(value)} over the next station` : "no station by itself"),
  width: (value) => `${kilohertz(value, 2)} wide`,
  quieting: (value) => `rush ${decibels(value)} down`,
  whistle: (value) => (value ? `whistle ${Math.round(value)} Hz` : "no whistle"),
  spoiled: (value) => (value ? `spoils it as far as ${quantity(value, "m", 2)}` : "spoils nothing"),
  oscillates: (value) => (value ? "oscillating" : "not oscillating"),
};
const KEPT = "bench-goals";

/**
 * @param {HTMLElement} root
 * @param {string[]} sets those that are on the bench
 * @param {(setting: string, knob: string) => void} begin puts the bench where a goal begins, with a hand on the knob to turn first
 * @returns {(measured: Measured, turned: boolean) => void} looks whether a goal has been reached; a setting that was only opened reaches none
 */
export function goals(root, sets, begin) {
  /** @type {Goal[]} */
  const list = parts(root, ".goal").map((item) => ({
    item,
    name: item.dataset.name ?? "",
    turn: item.dataset.turn ?? "",
    wanted: Object.entries(JSON.parse(item.dataset.goal ?? "{}")).map(([what, range]) => /** @type {Wanted} */ ([what, range])),
  }));
  const done = new Set(reachedBefore());
  const show = aim(root);
  /** @type {Goal | null} */ let aimed = null;
  for (const goal of list) {
    goal.item.hidden = !goal.wanted.every(([what, wanted]) => what !== "set" || sets.includes(String(wanted)));
    if (done.has(goal.name)) mark(goal.item);
    const start = link(goal.item, ".begin");
    start.addEventListener("click", (event) => {
      if (event.ctrlKey || event.metaKey || event.shiftKey) return; // it is wanted in another window
      event.preventDefault();
      aimed = goal;
      show(goal, null);
      begin(start.hash.slice(1), goal.turn);
    });
  }
  return (measured, turned) => {
    for (const goal of turned ? list : []) {
      if (done.has(goal.name) || !goal.wanted.every((each) => reached(measured, each))) continue;
      done.add(goal.name);
      remember(KEPT, JSON.stringify([...done]));
      mark(goal.item);
      aimed = goal;
    }
    if (aimed) show(aimed, measured);
  };
}

/** The goal that was begun, under the picture: what to do, how far it is, and once it is reached what it shows. @param {HTMLElement} root */
function aim(root) {
  const box = part(root, ".aim");
  const task = part(box, ".aim-task");
  const now = part(box, ".aim-now");
  return (/** @type {Goal} */ { item, wanted }, /** @type {Measured | null} */ measured) => {
    box.hidden = false;
    if (!measured) {
      box.classList.remove("is-done");
      tell(task, textOf(item, ".goal-task"));
      return tell(now, "");
    }
    const there = wanted.every((each) => reached(measured, each));
    const onTheWay = wanted.every(([what, range]) => Array.isArray(range) || measured[what] === range);
    const numbers = wanted.filter(([, range]) => Array.isArray(range)).map(([what]) => SAYS[what](Number(measured[what])));
    box.classList.toggle("is-done", there);
    tell(task, there ? `Done: ${textOf(item, ".goal-title")}.` : textOf(item, ".goal-task"));
    tell(now, there ? textOf(item, ".goal-learnt") : `Now: ${onTheWay ? numbers.join(", ") : measured.station}.`);
  };
}

/** One thing measured is what it should be, or lies where it should. @param {Measured} measured @param {Wanted} wanted */
function reached(measured, [what, wanted]) {
  const value = measured[what];
  return typeof wanted === "string" ? value === wanted : Number(value) >= wanted[0] && Number(value) <= wanted[1];
}

/** @param {HTMLElement} item */
function mark(item) {
  item.classList.add("is-done");
  part(item, ".goal-learnt").hidden = false;
}

/** The goals that were reached on another day; none if the browser kept something else. @returns {string[]} */
function reachedBefore() {
  try {
    return JSON.parse(remembered(KEPT) ?? "[]");
  } catch {
    return [];
  }
}
