/** What the stations bring into the aerial, what an oscillating set sends out of it, and the noise of the air. */

import { abs, complex } from "./complex.js";

/** @typedef {import("./network.js").Network} Network */
/** @typedef {{name: string, frequency: number, field: number, power: number, distance: number, night?: boolean}} Station hertz, V/m r.m.s., W, m; heard by night only */

const SPEED_OF_LIGHT = 299_792_458; // m/s

/** Volts, crest, that a field brings into an aerial. @param {number} field V/m r.m.s. @param {number} effectiveHeight metre */
export const aerialCrest = (field, effectiveHeight) => Math.SQRT2 * field * effectiveHeight;

/**
 * R.m.s. field of the radio noise in a band, Recommendation ITU-R P.372.
 *
 * @param {number} frequency hertz
 * @param {number} bandwidth hertz
 * @param {{level_at_1_mhz: number, fall: number}} noise decibel, decibel a decade
 */
export function noiseField(frequency, bandwidth, noise) {
  const megahertz = Math.log10(frequency / 1e6);
  const decibels =
    noise.level_at_1_mhz - noise.fall * megahertz + 20 * megahertz + 10 * Math.log10(bandwidth) - 95.5;
  return 1e-6 * 10 ** (decibels / 20);
}

/** Current in amperes r.m.s. that a swing on the grid drives in the aerial. @param {Network} n @param {number} frequency hertz @param {number} swing volt, crest */
export function aerialCurrent(n, frequency, swing) {
  const angular = 2 * Math.PI * frequency;
  const circulating = (angular * n.tuning_capacitance * swing) / Math.SQRT2;
  const reactance = angular * n.aerial_inductance - 1 / (angular * n.aerial_capacitance);
  return (angular * n.aerial_tuned * circulating) / abs(complex(n.aerial_resistance, reactance));
}

/** Watts that a short earthed aerial sends out. @param {number} current ampere, r.m.s. @param {number} effectiveHeight metre @param {number} frequency hertz */
export const radiatedPower = (current, effectiveHeight, frequency) =>
  current ** 2 * 160 * Math.PI ** 2 * ((effectiveHeight * frequency) / SPEED_OF_LIGHT) ** 2;

/** Field in V/m r.m.s. at a distance, the nearest yards included. @param {number} power watt @param {number} distance metre @param {number} frequency hertz */
export function nearbyField(power, distance, frequency) {
  const x = (2 * Math.PI * distance * frequency) / SPEED_OF_LIGHT;
  return (Math.sqrt(90 * power) / distance) * Math.sqrt(1 - 1 / x ** 2 + 1 / x ** 4);
}

/** Metres up to which an oscillation spoils a station, by Newton's steps. @param {number} power watt @param {number} wanted V/m @param {number} protection decibel @param {number} frequency hertz */
export function spoiledDistance(power, wanted, protection, frequency) {
  if (!(power > 0)) return 0;
  const one = SPEED_OF_LIGHT / (2 * Math.PI * frequency);
  const sought = (wanted * 10 ** (-protection / 20) * one) ** 2 / (90 * power);
  let found = Math.min(sought, Math.cbrt(sought)); // 1/x²
  for (let n = 0; n < 12; n++) found -= (found - found ** 2 + found ** 3 - sought) / (1 - 2 * found + 3 * found ** 2);
  return one / Math.sqrt(found);
}
