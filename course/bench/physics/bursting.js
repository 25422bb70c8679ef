/** A quenched set that plays, burst by burst: stations and heat begin each, its mean swing is what the telephones get. */

import { createTelephones, pascalsPerVolt } from "./ear.js";
import { HOLD, nearer } from "./gliding.js";
import { NOISE_BITS, NOISES, noises } from "./noise.js";
import { amplitude, burstsOf, meanSwing, neverDies, startAt } from "./quenched.js";

/** @typedef {import("./bench.js").State} State */
/** @typedef {import("./quenched.js").Bursts} Bursts */

const QUIET = 0.012; // second: unheard, while the telephones find their rest
const HIGHEST = 0.9; // of the limit: no burst begins above

/**
 * @param {import("./ear.js").EarFigures} ear
 * @param {{quenched: import("./quenched.js").Quenched, stations: import("./quenched.js").Tin[]}} set
 * @param {number} sampleRate hertz, of the sound
 * @param {(state: State) => void} check throws if a knob is beyond its stops
 */
export function createBursting(ear, { quenched, stations }, sampleRate, check) {
  const telephones = createTelephones(ear, sampleRate);
  const pascals = pascalsPerVolt(ear, quenched.load_resistance);
  const follows = -Math.expm1(-1 / (quenched.audio_time * sampleRate));
  const noise = noises();
  const turns = stations.map(() => ({ angle: 0, turn: 0, crest: 0 }));
  const left = { re: 0, im: 0 }; // volt: what a burst leaves for the next
  /** @type {State | null} */ let wanted = null;
  /** @type {State | null} */ let knobs = null;
  /** @type {Bursts} */ let bursts;
  let share = 0; // of a burst that is still to be heard
  let mean = 0; // volt
  let anode = 0; // volt
  let filtered = 0;
  let hold = 0; // samples until the knobs may move again
  let sample = 0;
  let drawn = 1;
  let tops = 0; // volt
  let count = 0;
  let fault = "";

  /** @param {State} now */
  function takeUp(now) {
    check(now);
    bursts = burstsOf(quenched, now);
    stations.forEach(({ frequency, emf }, k) => {
      turns[k].turn = 2 * Math.PI * (((frequency - bursts.frequency) / now.quench) % 1);
      turns[k].crest = Math.SQRT2 * emf * startAt(bursts, frequency);
    });
    knobs = now;
  }

  function glide() {
    if (!knobs || !wanted || knobs === wanted) return;
    const next = nearer(knobs, wanted);
    try {
      takeUp(next);
      fault = "";
    } catch (error) {
      if (!(error instanceof RangeError)) throw error;
      fault = error.message;
      knobs = next;
    }
  }

  /** The next burst. @param {import("./receiver.js").Programme} programme */
  function burst(programme) {
    const { growth, decay, half, heat, limit, died } = bursts;
    drawn = (Math.imul(drawn, 1664525) + 1013904223) | 0;
    const place = (drawn >>> (32 - NOISE_BITS)) & (NOISES - 2);
    let re = left.re + heat * noise[place];
    let im = left.im + heat * noise[place + 1];
    turns.forEach((station, k) => {
      station.angle = (station.angle + station.turn) % (2 * Math.PI);
      const crest = station.crest * (1 + programme(k, sample));
      re += crest * Math.cos(station.angle);
      im += crest * Math.sin(station.angle);
    });
    const size = Math.hypot(re, im);
    const start = Math.min(size, HIGHEST * limit);
    const top = amplitude(half, start, limit, growth);
    const keeps = (top * Math.exp(-died)) / size;
    left.re = keeps * re;
    left.im = keeps * im;
    mean = meanSwing(start, limit, growth, decay, half, half);
    tops += top;
    count++;
  }

  return {
    /** Turn the knobs; from the next samples on they go there. @param {State} to */
    turn(to) {
      if (!knobs) takeUp(to);
      wanted = to;
    },

    /** Begin afresh, with a swing left over. @param {State} to @param {number} swing volt, crest */
    restart(to, swing) {
      wanted = to;
      takeUp(to);
      turns.forEach((station) => (station.angle = 0));
      share = sample = tops = count = left.im = 0;
      left.re = swing;
      drawn = 1;
    },

    /** Play on. @param {Float32Array | Float64Array} out filled with pascals @param {import("./receiver.js").Programme} programme */
    play(out, programme) {
      for (let n = 0; n < out.length; n++, sample++) {
        if (hold-- <= 0) {
          glide();
          hold = HOLD * sampleRate;
        }
        const each = /** @type {State} */ (knobs).quench / sampleRate;
        let volts = 0;
        for (let needed = each; needed > 0; ) {
          if (share <= 0) {
            burst(programme);
            share = 1;
          }
          const taken = Math.min(share, needed);
          volts += (taken / each) * mean;
          share -= taken;
          needed -= taken;
        }
        anode += follows * (quenched.audio_gain * volts - anode);
        filtered += follows * (anode - filtered);
        if (sample < QUIET * sampleRate) telephones.settle();
        out[n] = telephones.heard(filtered, pascals);
      }
    },

    /** How the set stands since the last time this was asked; `grid` is the height of its bursts. */
    stand() {
      const grid = count ? tops / count : 0;
      tops = count = 0;
      return { grid, bias: 0, beat: 0, oscillates: neverDies(bursts), fault };
    },
  };
}
