/** Numbers in words: what a knob, a gauge and a screen reader say. */

/** @type {[number, string][]} */
const PREFIXES = [[1e9, "G"], [1e6, "M"], [1e3, "k"], [1, ""], [1e-3, "m"], [1e-6, "µ"], [1e-9, "n"], [1e-12, "p"]];

/**
 * A quantity with the prefix that fits: "12.8 pF".
 *
 * @param {number} value SI
 * @param {string} unit without prefix
 * @param {number} [figures] significant
 */
export function quantity(value, unit, figures = 3) {
  const size = Math.abs(value) * (1 + 0.5 * 10 ** -figures);
  const [factor, prefix] = value === 0 ? [1, ""] : PREFIXES.find(([least]) => size >= least) ?? [1e-12, "p"];
  const text = (value / factor).toPrecision(figures);
  return `${minus(text.includes("e") ? Math.round(value / factor) : text)} ${prefix}${unit}`;
}

/** With a true minus sign. @param {number | string} number */
export const minus = (number) => String(number).replace("-", "−");

/** A frequency as dials have it: "855.0 kHz", or "29.200 MHz". @param {number} hertz @param {number} [decimals] of kilohertz */
export const kilohertz = (hertz, decimals = 1) =>
  hertz < 1e7 ? `${minus((hertz / 1e3).toFixed(decimals))} kHz` : `${(hertz / 1e6).toFixed(decimals ? 3 : 2)} MHz`;

/** Whole decibels. @param {number} value */
export const decibels = (value) => `${minus(Math.round(value) || 0)} dB`;

/** Decibels of a ratio of amplitudes. @param {number} ratio */
export const inDecibels = (ratio) => 20 * Math.log10(Math.max(ratio, 1e-12));
