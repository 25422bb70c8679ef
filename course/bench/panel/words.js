/** Numbers in words: what a knob, a gauge and a screen reader say. */

const PREFIXES = [[1e9, 'G'], [1e6, 'M'], [1e3, 'k'], [1, ''], [1e-3, 'm'], [1e-6, 'µ'], [1e-9, 'n'], [1e-12, 'p']];

/**
 * A quantity with the prefix that fits: "12.8 pF".
 * @param {number} value SI
 * @param {string} unit without prefix
 * @param {number} [figures] significant
 */
export function quantity(value, unit, figures = 3) {
  const size = Math.abs(value) * (1 + 0.5 * 10 ** -figures);
  const [factor, prefix] = PREFIXES.find(([least]) => size >= least) ?? PREFIXES[PREFIXES.length - 1];
  const scaled = value / factor;
  const text = scaled === 0 ? '0' : scaled.toPrecision(figures);
  return `${(text.includes('e') ? String(Math.round(scaled)) : text).replace('-', '−')} ${scaled === 0 ? '' : prefix}${unit}`;
}

/** A frequency as dials have it: "855.0 kHz". @param {number} hertz @param {number} [decimals] */
export const kilohertz = (hertz, decimals = 1) => `${(hertz / 1e3).toFixed(decimals)} kHz`;

/** Whole decibels, with a true minus sign. @param {number} value */
export const decibels = value => `${String(Math.round(value) || 0).replace('-', '−')} dB`;

/** Decibels of a ratio of amplitudes. @param {number} ratio */
export const inDecibels = ratio => 20 * Math.log10(Math.max(ratio, 1e-12));
