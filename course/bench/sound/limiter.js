/**
 * A limiter that looks ahead: what comes out is never beyond 1, and no sample is cut.
 *
 * For each sample there is a greatest gain that keeps it within 1. The least of these over the last `length` samples, let rise only
 * slowly, is averaged over as many; that is the gain of the sample that came in `length` − 1 ago. Each of the averaged gains had
 * that sample in sight, so none is greater than it allows, and nor is their average.
 */

const LOOK = 0.002; // second
const RECOVER = 0.25; // second

/** @param {number} sampleRate hertz */
export function createLimiter(sampleRate) {
  const length = Math.max(1, Math.round(LOOK * sampleRate));
  const recovering = 1 - Math.exp(-1 / (RECOVER * sampleRate));
  const samples = new Float64Array(length);
  const allowed = new Float64Array(length).fill(1);
  const held = new Float64Array(length).fill(1);
  let gain = 1;
  let place = 0;
  return {
    delay: length - 1,

    /** The next sample in, the one of `delay` ago out, within ±1. @param {number} sample */
    pass(sample) {
      const size = Math.abs(sample);
      samples[place] = sample;
      allowed[place] = size > 1 ? 1 / size : 1;
      let least = 1;
      for (let k = 0; k < length; k++) if (allowed[k] < least) least = allowed[k];
      gain = Math.min(least, gain + (1 - gain) * recovering);
      held[place] = gain;
      place = (place + 1) % length;
      let sum = 0;
      for (let k = 0; k < length; k++) sum += held[k];
      return Math.max(-1, Math.min(1, (samples[place] * sum) / length));
    },

    /** Decibels by which it holds the sound down. */
    held: () => -20 * Math.log10(gain) + 0,
  };
}
