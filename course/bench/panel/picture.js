/** What the two pictures show, in words, for someone who cannot see them. */

import { decibels, inDecibels, kilohertz } from './words.js';

/** @param {HTMLElement} root */
export function pictureSays(root) {
  const dial = root.querySelector('.dial-view'), close = root.querySelector('.close-view');
  return seen => {
    dial.setAttribute('aria-label', dialSays(seen));
    close.setAttribute('aria-label', closeSays(seen));
  };
}

function dialSays({ pointer, stations, tuned }) {
  const list = stations.map(station => `${station.name} ${kilohertz(station.frequency, 0)}`).join(', ');
  return `The dial, pointer at ${kilohertz(pointer)}. Strongest at the grid: ${tuned.name}. Stations: ${list}.`;
}

function closeSays({ ring, band }) {
  if (!band) return `The set oscillates at ${kilohertz(ring.frequency)}: it has no steady response.`;
  return `A peak of ${decibels(inDecibels(band.gain))} at ${kilohertz(ring.frequency)}, ${kilohertz(band.width, 2)} wide at 3 dB down.`;
}
