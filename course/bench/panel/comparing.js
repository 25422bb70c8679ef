/** Two settings that are kept: their curves in the picture, their figures in a table, and the way back to each. */

import { decibels, inDecibels, kilohertz, quantity } from './words.js';

const LOOKS = [{ colour: 'plum', dash: [7, 4] }, { colour: 'kelp', dash: [2, 3] }];

/** What stands in each row of the table, by the name that the row has in the page. */
const ROWS = {
  set: ({ title }) => title,
  dial: ({ seen }) => kilohertz(seen.pointer),
  coupling: ({ state }) => quantity(state.coupling, 'H'),
  throttle: ({ state, seen }) => seen.reacts ? quantity(state.throttle, 'F', 4) : '–',
  station: ({ heard }) => heard.station.name,
  band: ({ seen }) => seen.band ? kilohertz(seen.band.width, 2) : 'oscillates',
  gain: ({ seen }) => seen.band ? decibels(inDecibels(seen.band.gain)) : 'oscillates',
  apart: ({ measured }) => Number.isFinite(measured.apart) ? decibels(measured.apart) : '–',
  above: ({ heard }) => decibels(heard.above),
};

/**
 * @typedef {{state: object, seen: import('./seen.js').Seen, heard: import('./measured.js').Heard, measured: object, title: string}} Reading
 * @param {HTMLElement} root
 * @param {() => Reading} now
 * @param {(state: object) => void} goBack
 * @param {() => void} changed
 */
export function comparing(root, now, goBack, changed) {
  const kept = [null, null];
  const rows = [...root.querySelectorAll('.compared [data-row]')];
  const column = (place, reading) => rows.forEach(row => {
    const cell = row.cells[place + 1], text = ROWS[row.dataset.row](reading);
    if (cell.textContent !== text) cell.textContent = text;
  });
  root.querySelectorAll('[data-keep-as]').forEach(button => button.addEventListener('click', () => {
    const place = Number(button.dataset.keepAs);
    kept[place] = now();
    column(place + 1, kept[place]);
    root.querySelector(`[data-back-to="${place}"]`).disabled = false;
    changed();
  }));
  root.querySelectorAll('[data-back-to]').forEach(button =>
    button.addEventListener('click', () => goBack(kept[Number(button.dataset.backTo)].state)));
  return {
    curves: () => kept.flatMap((reading, place) => reading ? [{ curve: reading.seen.curve, ...LOOKS[place] }] : []),
    show: reading => column(0, reading),
  };
}
