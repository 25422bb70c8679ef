/** The curve in numbers, for reading rather than looking. */

import { gainsAt } from './seen.js';
import { decibels } from './words.js';

const OFFSETS = [-18e3, -9e3, -4.5e3, -1e3, 0, 1e3, 4.5e3, 9e3, 18e3];

/** @param {HTMLElement} root @param {object} figures */
export function numbers(root, figures) {
  const body = root.querySelector('.numbers tbody');
  for (const offset of OFFSETS) {
    const kilo = String(Math.abs(offset) / 1e3);
    body.insertAdjacentHTML('beforeend', `<tr><th scope="row">${offset < 0 ? '−' : offset ? '+' : ''}${kilo} kHz</th><td></td></tr>`);
  }
  return (state, seen) => {
    const gains = gainsAt(figures, state, seen.ring.frequency, OFFSETS);
    OFFSETS.forEach((_, row) => {
      body.rows[row].cells[1].textContent = gains ? `${gains[row].toFixed(1).replace('-', '−')} dB` : 'it oscillates';
    });
  };
}
