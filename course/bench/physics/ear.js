/** From the telephones to the ear: sound pressure, its level, and the faintest that is heard. */

/**
 * @typedef {object} EarFigures
 * @property {number} sensitivity decibel of sound pressure from a milliwatt
 * @property {number} reference_pressure pascal
 * @property {number[]} threshold_frequency hertz
 * @property {number[]} threshold_level decibel
 * @property {number} lowest hertz: what changes more slowly is not heard
 * @property {number} loudest pascal: no telephone follows a click beyond it
 */

/** Pascals in the ear for each volt across telephones of a resistance. @param {EarFigures} ear @param {number} resistance ohm */
export const pascalsPerVolt = (ear, resistance) =>
  (ear.reference_pressure * 10 ** (ear.sensitivity / 20)) / Math.sqrt(1e-3 * resistance);

/** Decibels of sound pressure. @param {EarFigures} ear @param {number} pressure pascal, r.m.s. */
export const pressureLevel = (ear, pressure) => 20 * Math.log10(Math.max(pressure, 1e-30) / ear.reference_pressure);

/**
 * Level of the faintest tone that young, healthy ears hear: ISO 226:2003, Table 1, on a straight line between its entries against the
 * logarithm of the frequency; held at the ends.
 *
 * @param {EarFigures} ear
 * @param {number} frequency hertz
 */
export function hearingThreshold(ear, frequency) {
  const at = ear.threshold_frequency;
  const level = ear.threshold_level;
  const next = at.findIndex((entry) => entry >= frequency);
  if (next < 0) return level[level.length - 1];
  if (next === 0) return level[0];
  const part = Math.log(frequency / at[next - 1]) / Math.log(at[next] / at[next - 1]);
  return level[next - 1] + part * (level[next] - level[next - 1]);
}

/**
 * Telephones: from volts to pascals. Twice a first-order high pass, as the course's sounds have it, and between them a soft stop:
 * what it leaves of a lopsided sound has no steady part.
 *
 * @param {EarFigures} ear
 * @param {number} sampleRate hertz
 */
export function createTelephones(ear, sampleRate) {
  const keep = 1 / (1 + (2 * Math.PI * ear.lowest) / sampleRate);
  const held = new Float64Array(4); // input, first pass, what the stop left of it, and second pass as they were
  let fresh = true;
  return {
    /** Whatever comes next is taken for rest. */
    settle() {
      fresh = true;
    },
    /** @param {number} volts @param {number} pascals for each volt */
    heard(volts, pascals) {
      if (fresh) {
        held[0] = volts;
        held[1] = held[2] = held[3] = 0;
        fresh = false;
      }
      const once = keep * (held[1] + volts - held[0]);
      const stopped = ear.loudest * Math.tanh((once * pascals) / ear.loudest);
      const twice = keep * (held[3] + stopped - held[2]);
      held[0] = volts;
      held[1] = once;
      held[2] = stopped;
      held[3] = twice;
      return twice;
    },
  };
}
