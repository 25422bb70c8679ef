/** What is said to a typed answer: right, the slip by its name, or by what ratio it is off. Values alone; nothing is looked up. */

import { printed, quantityIn } from "./reading.js";

/**
 * @typedef {{unit: string, wanted: string, relative: number, absolute: number, slips: string[]}} Asked quantities as the build wrote them
 * @typedef {{kind: "right" | "off" | "unread", says: string, slip: number}} Verdict `slip`: its place in the list, or -1
 */

/** @param {string} text @param {Asked} asked @returns {Verdict} */
export function verdictOf(text, asked) {
  const { unit, relative, absolute } = asked;
  const got = quantityIn(text, unit);
  const wanted = /** @type {number} */ (quantityIn(asked.wanted, unit));
  const says = (/** @type {Verdict["kind"]} */ kind, /** @type {string} */ words, slip = -1) => ({ kind, says: words, slip });
  if (got === null) {
    const what = unit ? `a quantity in ${printed(unit)}: write a number, a space and the unit` : "a plain number: write one such as 0.25";
    return says("unread", `“${text.trim()}” is not ${what}.`);
  }
  /** How far two numbers are apart, 1 where it is only just allowed. @param {number} other */
  const distance = (other) => Math.abs(got - other) / ((relative || (absolute ? 0 : 1e-9)) * Math.abs(other) + absolute);
  if (distance(wanted) <= 1) return says("right", `Right: ${printed(asked.wanted)}.`);
  let slip = -1;
  let nearest = 1;
  asked.slips.forEach((other, place) => {
    const value = other ? quantityIn(other, unit) : null;
    const away = value === null ? Infinity : value === got ? 0 : distance(value);
    if (away < nearest || (slip < 0 && away <= nearest)) [slip, nearest] = [place, away];
  });
  return says("off", `Not ${printed(text.trim())}: ${howFarOff(got, wanted, asked)}.`, slip);
}

/** By what ratio, or by how much on a scale with a zero of its own. @param {number} got @param {number} wanted @param {Asked} asked */
function howFarOff(got, wanted, { unit, relative, absolute }) {
  if (absolute && !relative) return `yours is ${short(Math.abs(got - wanted))}${unit === "°" ? "" : " "}${unit} too ${got > wanted ? "high" : "low"}`;
  if (got === 0) return "the answer is not zero";
  const ratio = got / wanted;
  const size = Math.max(Math.abs(ratio), 1 / Math.abs(ratio));
  const near = (/** @type {number} */ other) => Math.abs(size / other - 1) <= Math.max(relative, 1e-6);
  if (ratio < 0 && near(1)) return "yours has the opposite sign";
  const [name] = READER.ratios.find(([, value]) => near(value)) ?? [short(size)];
  return `yours is ${name} times too ${Math.abs(ratio) > 1 ? "large" : "small"}${ratio < 0 ? " and has the opposite sign" : ""}`;
}

/** To four figures. @param {number} value */
const short = (value) => printed(String(Number(value.toPrecision(4))));
