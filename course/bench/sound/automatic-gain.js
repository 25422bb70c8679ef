/**
 * Automatic gain: one loudness for the ear, whatever the set gives it.
 *
 * It goes by the loudest moment of the last second or so, so that it holds still in the pauses of speech. What grows louder is
 * held down at once; what grows fainter is brought up steadily, and so is the first sound.
 */

const AIM = 0.25; // of full scale, r.m.s., in the loudest moment
const MOMENT = 0.02; // second
const SPELL = 0.6; // second: the loudest moment of two of them counts
const RISING = 50; // decibel a second, at most
const FIRST = 0.1; // times as loud as life
const MOST = 1e4; // times as loud as life

/** @param {number} sampleRate hertz @param {number} asLife gain to full scale, for each pascal, of what is as loud as life */
export function createAutomaticGain(sampleRate, asLife) {
  let power = 0; // pascal², mean of a moment
  let before = 0; // pascal²: the loudest moment of the spell before this
  let loudest = 0;
  let left = SPELL * sampleRate;
  let gain = FIRST * asLife;
  return {
    /** The gain after these samples. @param {ArrayLike<number>} pressure pascal */
    after(pressure) {
      let sum = 0;
      for (let n = 0; n < pressure.length; n++) sum += pressure[n] * pressure[n];
      power += (sum / pressure.length - power) * (1 - Math.exp(-pressure.length / (MOMENT * sampleRate)));
      if ((left -= pressure.length) <= 0) {
        before = loudest;
        loudest = 0;
        left = SPELL * sampleRate;
      }
      loudest = Math.max(loudest, power);
      const risen = gain * 10 ** ((RISING * pressure.length) / sampleRate / 20);
      gain = Math.min(AIM / Math.sqrt(Math.max(loudest, before)), risen, MOST * asLife);
      return gain;
    },
  };
}
