/** The goals: each is text in the page with what has to be measured, and is done when all of that lies where it should. */

import { decibels, kilohertz, quantity } from './words.js';

const SAYS = {
  above: value => `${decibels(value)} above hearing`,
  apart: value => Number.isFinite(value) ? `${decibels(value)} over the next station` : 'no station by itself',
  gained: value => `${decibels(value)} gained`,
  whistle: value => value ? `whistle ${Math.round(value)} Hz` : 'no whistle',
  oscillates: value => value ? 'oscillating' : 'not oscillating',
  spoiled: value => value ? `spoils it as far as ${quantity(value, 'm', 2)}` : 'spoils nothing',
  width: value => `${kilohertz(value, 2)} wide`,
};
const KEPT = 'bench-goals';

/**
 * @param {HTMLElement} root
 * @returns {(measured: Record<string, any>) => void} looks whether a goal has been reached
 */
export function goals(root) {
  const list = [...root.querySelectorAll('.goal')].map(item => ({
    item,
    name: item.dataset.name,
    wanted: Object.entries(JSON.parse(item.dataset.goal)),
  }));
  const done = new Set(remembered());
  const show = aim(root);
  let aimed = null;
  for (const goal of list) {
    if (done.has(goal.name)) mark(goal.item);
    goal.item.querySelector('.begin').addEventListener('click', () => { aimed = goal; });
  }
  return measured => {
    for (const goal of list) {
      if (done.has(goal.name) || !goal.wanted.every(wanted => reached(measured, wanted))) continue;
      done.add(goal.name);
      remember([...done]);
      mark(goal.item);
      aimed = goal;
    }
    if (aimed) show(aimed, measured);
  };
}

/** The goal that was begun, over the knobs: what to do, how far it is, and once it is reached what it shows. */
function aim(root) {
  const box = root.querySelector('.aim'), task = box.querySelector('.aim-task'), now = box.querySelector('.aim-now');
  return ({ item, wanted }, measured) => {
    const there = wanted.every(each => reached(measured, each));
    const numbers = wanted.filter(([, range]) => Array.isArray(range));
    const here = wanted.every(([what, range]) => Array.isArray(range) || measured[what] === range);
    const lines = there
      ? [`Done: ${text(item, '.goal-title')}.`, text(item, '.goal-learnt')]
      : [text(item, '.goal-task'), here ? `Now: ${numbers.map(([what]) => SAYS[what](measured[what])).join(', ')}.` : `Now: ${measured.station}.`];
    box.hidden = false;
    box.classList.toggle('is-done', there);
    [task, now].forEach((place, n) => { if (place.textContent !== lines[n]) place.textContent = lines[n]; });
  };
}

const text = (item, part) => item.querySelector(part).textContent;

/** One thing measured is what it should be, or lies where it should. */
const reached = (measured, [what, wanted]) =>
  Array.isArray(wanted) ? measured[what] >= wanted[0] && measured[what] <= wanted[1] : measured[what] === wanted;

function mark(item) {
  item.classList.add('is-done');
  item.querySelector('.goal-learnt').hidden = false;
}

function remembered() {
  try { return JSON.parse(localStorage.getItem(KEPT)) ?? []; } catch { return []; }
}

function remember(names) {
  try { localStorage.setItem(KEPT, JSON.stringify(names)); } catch { /* some browsers keep nothing for files on disk */ }
}
