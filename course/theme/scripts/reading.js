/** Reads a quantity as it is typed. The tables are the checker's own; what is more than it reads is what a telephone types more easily. */

/** How units are spelt out, and the sign for them. @type {[RegExp, string][]} */
const SPELT = [[/ohms?$/i, "Ω"], [/deg(rees?)?$/i, "°"], [/°c$/i, "°C"], [/db$/i, "dB"], [/2$/, "²"], [/per\s?cent$/i, "%"]];

const NUMBER = /^\s*([-+]?(?:\d+[.,]?\d*|[.,]\d+))(?:e([-+]?\d{1,3})|\s*[×x*·]\s*10\s*\^?\s*([-+]?\d{1,3}))?\s*(.*?)\s*$/i;

/** Look-alikes written in one way. @param {string} text */
const written = (text) => READER.alike.reduce((so, [sign, as]) => so.replaceAll(sign, as), text);

/**
 * The number in a text such as "1.592 MHz", "1592 kHz", "1,592e6" or "1592000", in the unit asked for; null if it is none.
 *
 * @param {string} text
 * @param {string} unit without prefix; "" for a pure number
 * @returns {number | null}
 */
export function quantityIn(text, unit) {
  const found = NUMBER.exec(written(text));
  if (!found) return null;
  const power = powerOf(found[4], written(unit));
  if (power === null) return null;
  const value = Number(`${found[1].replace(",", ".")}e${Number(found[2] ?? found[3] ?? 0) + power}`);
  return Number.isFinite(value) ? value : null;
}

/** The power of ten that a symbol stands for: 6 for "MHz"; null if it is not this unit. @param {string} symbol @param {string} unit */
function powerOf(symbol, unit) {
  if (!symbol) return 0;
  const spelt = SPELT.reduce((so, [words, sign]) => so.replace(words, sign), symbol);
  if (spelt === "%") return unit ? null : -2;
  for (const candidate of [symbol, spelt]) {
    const its = READER.prefixes.find(([prefix]) => candidate === prefix + unit);
    if (its) return its[1];
  }
  return null;
}

const RAISED = "⁰¹²³⁴⁵⁶⁷⁸⁹";

/** A quantity of the checker's as it is printed: true minus signs, powers as powers, the unit with its number. @param {string} text */
export const printed = (text) =>
  text
    .replace(/(\d)e\+?(-?)0?(\d+)/, (_, digit, minus, power) => `${digit} × 10${minus && "⁻"}${[...power].map((each) => RAISED[Number(each)]).join("")}`)
    .replace("^1.5", "¹·⁵")
    .replace(/^-/, "−")
    .replace(/(\d) (?=\S)/g, "$1\u00a0");
