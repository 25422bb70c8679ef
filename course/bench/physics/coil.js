/** What the tuned coil loses: more at the upper end of the dial, where the current keeps to the wire's skin. */

/** @typedef {number[]} CoilFigures ohm: what counts for the root of the frequency in megahertz, for 1, for one over the root, and so on */

/** Resistance in series with it, in ohm. @param {CoilFigures} coil @param {number} frequency hertz */
export function coilResistance(coil, frequency) {
  const root = Math.sqrt(frequency / 1e6);
  return coil.reduce((total, part, power) => total + part * root ** (1 - power), 0);
}
