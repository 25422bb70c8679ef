/** Gauges: what is in the ear, how far it is to oscillation, in silence and on this station, what is heard next door. Each is a bar and a sentence. */

import { reachesLimit } from "../physics/quenched.js";
import { part, tell } from "./page.js";
import { decibels, inDecibels, kilohertz, quantity } from "./quantities.js";

/** @typedef {import("../physics/bench.js").Figures} Figures */
/** @typedef {import("./measured.js").Heard} Heard */
/** @typedef {import("./seen.js").Seen} Seen */

const QUIETEST = -40; // decibel over what an ear can just hear, ends of the first bar
const LOUDEST = 100;
const FARTHEST = 1.25; // of the way to the edge, end of the next two
const LITTLE = 0.005; // of the way to the edge
const UNITS = { throttle: "F", swinging: "H", shunt: "Ω" };
const STRONGEST = 100; // decibel over the noise, end of the last

/**
 * @param {HTMLElement} root
 * @param {Figures} figures
 * @returns {(seen: Seen, heard: Heard, gained: number) => void}
 */
export function gauges(root, figures) {
  const ear = gauge(root, "ear");
  const edge = gauge(root, "edge");
  const margin = gauge(root, "margin");
  const neighbour = gauge(root, "neighbour");
  return (seen, heard, gained) => {
    const next = heard.neighbour;
    const sings = seen.ring.growth > 0;
    ear(share(heard.above, QUIETEST, LOUDEST), earSays(heard, seen), heard.above < 0 ? "faint" : "", true);
    const unit = UNITS[seen.by];
    edge(share(seen.edge.share, 0, FARTHEST), edgeSays(seen, gained), sings ? "hot" : "", seen.reacts);
    const used = heard.margin ? 1 / (1 + heard.margin.left) : 0;
    margin(share(used, 0, FARTHEST), marginSays(heard, unit), used > 1 ? "hot" : "", heard.margin !== null);
    neighbour(next ? share(inDecibels(next.field / next.noise), 0, STRONGEST) : 0, neighbourSays(heard, figures, seen), "hot", seen.reacts);
  };
}

/** @param {number} value @param {number} low @param {number} high */
const share = (value, low, high) => Math.min(Math.max((value - low) / (high - low), 0), 1);

/** @param {Heard} heard @param {Seen} seen */
function earSays({ above, level, noise, quieting, station, whistle }, { bursts, tuned }) {
  if (bursts && tuned.grid !== null && tuned.grid < bursts.heat) return `only the rush, ${decibels(noise)} of sound`;
  if (bursts && noise > level) return `${station}, ${decibels(noise - level)} under the noise`;
  if (quieting >= 1) return `${station}, ${decibels(above)} above hearing, the rush ${decibels(quieting)} down`;
  if (whistle) return `${station}, under a whistle of ${quantity(whistle, "Hz", 2)}`;
  return above < 0 ? `${station}, ${decibels(-above)} too faint to hear` : `${station}, ${decibels(above)} above hearing`;
}

/** @param {Seen} seen @param {number} gained decibel */
function edgeSays({ edge, ring, bursts, tuned }, gained) {
  const sings = ring.growth > 0;
  if (bursts) {
    const nepers = `grows by ${bursts.grown.toFixed(1)} Np, dies by ${bursts.died.toFixed(1)}`;
    if (sings) return `past it: ${nepers}, so no burst ends`;
    return `${reachesLimit(bursts, tuned.grid ?? 0) ? "logarithmic" : "linear"}: ${nepers}`;
  }
  if (sings) return `past it: the set oscillates at ${kilohertz(ring.frequency)}`;
  return edge.at === null
    ? `beyond this knob’s reach, which adds ${decibels(gained)}`
    : `${Math.floor(100 * edge.share)} % of the way, adds ${decibels(gained)}`;
}

/** How much more there may be of what turns reaction up until the station, going, would leave the set singing. @param {Heard} heard @param {string} unit */
function marginSays({ margin, station }, unit) {
  if (!margin) return "";
  const { left, threshold, used } = margin;
  if (left < 0) return `on ${station}: none. Should its carrier fade, the set sings on`;
  const carrier = used < LITTLE ? "none" : `${Math.round(100 * used)} %`;
  return `on ${station}: up to ${quantity(threshold, unit)}. Its carrier has used up ${carrier} of the way`;
}

/** @param {Heard} heard @param {Figures} figures @param {Seen} seen */
function neighbourSays({ neighbour, station }, figures, { bursts }) {
  if (bursts) return `nothing, as the bench is screened. On an aerial: a comb, a line every ${kilohertz(0.5 / bursts.half)}`;
  if (!neighbour) return "nothing: it does not oscillate";
  const field = quantity(neighbour.field, "V/m", 2);
  const reach = neighbour.spoiled < 1 ? `does not spoil ${station}` : `spoils ${station} as far as ${quantity(neighbour.spoiled, "m", 2)}`;
  return `${field} at ${figures.neighbour.distance} m: ${reach}`;
}

/** @param {HTMLElement} root @param {string} name @returns {(part: number, words: string, look: string, there: boolean) => void} */
function gauge(root, name) {
  const whole = part(root, `[data-gauge=${name}]`);
  const says = part(whole, ".gauge-says");
  const bar = part(whole, ".gauge-bar");
  const fill = part(bar, "i");
  return (filled, words, look, there) => {
    whole.hidden = !there;
    whole.dataset.look = look;
    fill.style.transform = `scaleX(${filled.toFixed(4)})`;
    tell(says, words);
    bar.setAttribute("aria-valuenow", String(Math.round(100 * filled)));
    bar.setAttribute("aria-valuetext", words);
  };
}
