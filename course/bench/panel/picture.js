/** What the two pictures show, in words, for someone who cannot see them. */

import { canvas } from "./page.js";
import { decibels, inDecibels, kilohertz } from "./quantities.js";

/** @typedef {import("./seen.js").Seen} Seen */

/** @param {HTMLElement} root @returns {(seen: Seen) => void} */
export function pictures(root) {
  const dial = canvas(root, ".dial-view");
  const close = canvas(root, ".close-view");
  return (seen) => {
    dial.setAttribute("aria-label", dialSays(seen));
    close.setAttribute("aria-label", closeSays(seen));
  };
}

/** @param {Seen} seen */
export function dialSays({ pointer, stations, tuned }) {
  const list = stations.map((station) => `${station.name} ${kilohertz(station.frequency, 0)}`).join(", ");
  return `The dial, its pointer at ${kilohertz(pointer)}. Strongest in the set: ${tuned.name}. Stations: ${list}.`;
}

/** @param {Seen} seen */
function closeSays({ ring, band }) {
  if (!band) return `The set oscillates at ${kilohertz(ring.frequency)}: it has no steady response.`;
  return `A peak of ${decibels(inDecibels(band.gain))} at ${kilohertz(ring.frequency)}, ${kilohertz(band.width, 2)} wide at 3 dB down.`;
}
