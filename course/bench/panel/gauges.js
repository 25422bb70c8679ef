/** Three gauges: what is in the ear, how far it is to oscillation, and what is heard next door. Each is a bar and a sentence. */

import { decibels, kilohertz, quantity } from './words.js';

const QUIETEST = -40, LOUDEST = 100; // decibel over what an ear can just hear, ends of the first bar

/**
 * @param {HTMLElement} root
 * @param {object} figures
 * @returns {(seen: import('./seen.js').Seen, heard: import('./measured.js').Heard) => void}
 */
export function gauges(root, figures) {
  const ear = gauge(root, 'ear'), edge = gauge(root, 'edge'), neighbour = gauge(root, 'neighbour');
  return (seen, heard) => {
    const { above, station } = heard;
    ear(share(above, QUIETEST, LOUDEST), earSays(above, station), above < 0 ? 'faint' : '');
    edge(Math.min(seen.edge.share, 1.25) / 1.25, edgeSays(seen, heard), seen.edge.share >= 1 ? 'hot' : '', !seen.reacts);
    neighbour(neighbourShare(heard.neighbour), neighbourSays(heard, figures), heard.neighbour ? 'hot' : '', !seen.reacts);
  };
}

const share = (value, low, high) => Math.min(Math.max((value - low) / (high - low), 0), 1);

function earSays(above, station) {
  if (above < 0) return `${station.name}, ${decibels(-above)} too faint to hear`;
  return `${station.name}, ${decibels(above)} above hearing`;
}

function edgeSays({ edge, ring }, { gained }) {
  if (ring.growth > 0) return `past it: the set oscillates at ${kilohertz(ring.frequency)}`;
  return `${Math.floor(100 * edge.share)} % of the way, adds ${decibels(gained)}`;
}

/** From the noise to a hundred thousand times as much. */
function neighbourShare(next) {
  return next ? share(20 * Math.log10(next.field / next.noise), 0, 100) : 0;
}

function neighbourSays({ neighbour: next, station }, figures) {
  if (!next) return 'nothing: it does not oscillate';
  const there = `${quantity(next.field, 'V/m', 2)} at ${figures.neighbour.distance} m`;
  return `${there}: spoils ${station.name} as far as ${quantity(next.spoiled, 'm', 2)}`;
}

function gauge(root, name) {
  const whole = root.querySelector(`[data-gauge=${name}]`);
  const says = whole.querySelector('.gauge-says'), bar = whole.querySelector('.gauge-bar'), fill = bar.firstElementChild;
  return (part, text, look, absent = false) => {
    whole.hidden = absent;
    if (absent) return;
    fill.style.transform = `scaleX(${part.toFixed(4)})`;
    whole.dataset.look = look;
    if (says.textContent === text) return;
    says.textContent = text;
    bar.setAttribute('aria-valuenow', String(Math.round(100 * part)));
    bar.setAttribute('aria-valuetext', text);
  };
}
