/**
 * A set that plays: stations and noise in at the aerial, pascals in the ear out, its knobs turned as it goes.
 *
 * The envelope's frame turns at the frequency where the set rings. A station too far from it to be followed is heard as if it
 * stood at the rim of what can be, as strong on the grid as it truly is; there its beat with the wanted one is beyond hearing.
 */

import { aerialCrest, noiseField } from "./aerial.js";
import { carried } from "./ahead.js";
import { abs, add, complex, div, exp, mul, scale, sub } from "./complex.js";
import { createCrystalMarch } from "./crystal.js";
import { createTelephones, pascalsPerVolt } from "./ear.js";
import { HOLD, nearer } from "./gliding.js";
import { modes, ringing, steadyFormula } from "./network.js";
import { NOISE_BITS, NOISES, noises } from "./noise.js";
import { throughAStep } from "./parts.js";
import { behindGridCondenser, slowMode } from "./slow-mode.js";
import { ANODE, BIAS, GRID_I, GRID_R, MODE_R, start, TURNING } from "./state.js";
import { createMarch } from "./stepping.js";

/** @typedef {import("./bench.js").Figures} Figures */
/** @typedef {import("./bench.js").State} State */
/** @typedef {import("./aerial.js").Station} Station */
/** @typedef {import("./slow-mode.js").Net} Net */
/** @typedef {(station: number, sample: number) => number} Programme modulation of a station, by its place among the figures' */

const EVERY = 2; // steps of the envelope to each sample of the sound, or more
const MOST_GROWTH = 2; // neper a step
const NEAR = 16e3; // hertz from the frame: a station farther off is put at the rim
const RIM = 24e3; // hertz
const SEED = 1e-6; // volt
const FAINT = 1e-9; // pascal
const QUIET = 0.012; // second: unheard, while a set that was changed finds its rest
const BEYOND = 1.5; // times what the stations drive: a swing as great as that keeps itself up
const LITTLE = 0.05; // volt
const NEARLY = 0.99; // of the largest swing
const JOINT = 0.004; // second: in which the last sound of a set that was changed dies away

/**
 * Volts on the tuned circuit that the march gives for a weak volt in the aerial, so far from the frame.
 *
 * @param {Net} net
 * @param {number} conductance siemens of a crystal that is no part of the net: it answers at a step's end
 * @param {number} offset hertz
 * @param {number} rate steps a second
 */
function marched(net, conductance, offset, rate) {
  const through = new Float64Array(6);
  throughAStep(net.rate.re / rate, net.rate.im / rate, through);
  const [keep, whole, ramp] = [0, 2, 4].map((k) => complex(through[k], through[k + 1]));
  const z = exp(complex(0, (2 * Math.PI * offset) / rate));
  const taken = scale(mul(net.byGrid, whole), conductance / rate);
  const brought = scale(mul(net.byEmf, add(whole, mul(ramp, sub(z, complex(1))))), 1 / rate);
  const above = add(brought, mul(mul(taken, net.gridAtOnce), z));
  const below = sub(mul(z, sub(complex(1), taken)), keep);
  return abs(mul(net.tuned, add(div(above, below), net.gridAtOnce)));
}

/**
 * @param {Figures} figures
 * @param {import("./cycle.js").CycleTables} tables
 * @param {number} sampleRate hertz, of the sound
 * @param {{networkOf: (state: State) => {network: import("./network.js").Network, fed: import("./bench.js").Fed, ahead: import("./ahead.js").Ahead | undefined}, onAir: (state: State) => boolean[]}} set
 */
export function createReceiver(figures, tables, sampleRate, { networkOf, onAir }) {
  let every = EVERY; // steps to each sample: more where a swing grows fast
  let rate = every * sampleRate;
  const valveMarch = createMarch(tables);
  const crystalMarch = createCrystalMarch(tables);
  let march = valveMarch;
  const telephones = createTelephones(figures.ear, sampleRate);
  const noise = noises();
  const count = figures.stations.length;
  // Each station's phasor in the frame, what turns it in a step, its crest in volts, and its modulation as it was.
  const phasors = new Float64Array(6 * count);
  const heard = new Int32Array(count);
  /** @type {State | null} */ let wanted = null;
  /** @type {State | null} */ let knobs = null;
  let hearing = 0;
  let reference = 0;
  let state = new Float64Array(0);
  let spread = 0;
  let pascals = 0;
  let supply = 0;
  let outside = 1; // volts on the tuned circuit for each on the grid behind its condenser
  let mostSwing = 0; // volt: where the march cuts a swing off
  const emf = new Float64Array(2); // volt, in the frame, at the last step
  let left = 0; // samples until the knobs may move again
  let sample = 0;
  let age = 0; // samples since the set was changed
  const quiet = QUIET * sampleRate;
  let jump = 0; // pascal: what is left of a set's last sound
  let last = 0;
  let nearestOffset = 0;
  let turned = 0; // radian: the swing's from the tuned station since the last report
  let swung = 0; // volt: crests on the grid since then
  let samples = 0;
  let growing = false;
  let forced = 0; // volt: the most that the stations drive on to the tuned circuit
  let fault = "";
  let drawn = 1;

  /** Take up the knobs as they stand now. @param {State} now */
  function takeUp(now) {
    const { network, fed, ahead } = networkOf(now);
    const hasValve = fed.stage.perveance > 0;
    const windings = hasValve ? network : { ...network, grid_conductance: 0 };
    const marched = behindGridCondenser(windings, fed.stage);
    const all = modes(marched);
    const { frequency, growth } = ringing(marched, all.map((mode) => mode.pole));
    const net = slowMode(windings, fed.stage, frequency, all);
    const restarted = !knobs || knobs.set !== now.set || knobs.feed !== now.feed || knobs.by !== now.by;
    if (restarted) {
      state = start(fed.rest, fed.stage, SEED);
      age = 0;
      jump = last;
    } else {
      state[TURNING] -= 2 * Math.PI * (frequency - reference);
    }
    reference = frequency;
    growing = growth > 0;
    march = hasValve ? valveMarch : crystalMarch;
    every = Math.max(EVERY, Math.ceil(net.rate.re / (MOST_GROWTH * sampleRate)));
    rate = every * sampleRate;
    march.turn(net, fed.stage, reference, rate);
    supply = fed.stage.supply;
    outside = abs(net.tuned);
    mostSwing = tables.limit * fed.stage.slope_voltage;
    pascals = pascalsPerVolt(figures.ear, fed.stage.load_resistance);
    const air = carried(ahead, reference);
    spread = (air * aerialCrest(noiseField(reference, rate, figures.noise), figures.aerial.effective_height)) / Math.SQRT2;
    hear(now, net, network, ahead, hasValve ? 0 : network.grid_conductance);
    knobs = now;
  }

  /** Choose the stations that are followed. @param {State} now @param {Net} net @param {import("./network.js").Network} network @param {import("./ahead.js").Ahead | undefined} ahead @param {number} conductance siemens of a crystal */
  function hear(now, net, network, ahead, conductance) {
    const air = onAir(now);
    /** @type {Map<number, {station: number, grid: number}>} */ const rim = new Map();
    const onTuned = steadyFormula(network);
    hearing = 0;
    forced = 0;
    nearestOffset = Infinity;
    figures.stations.forEach((station, k) => {
      if (!air[k]) return;
      const offset = station.frequency - reference;
      const crest = carried(ahead, station.frequency) * aerialCrest(station.field, figures.aerial.effective_height);
      const grid = crest * onTuned(station.frequency);
      if (Math.abs(offset) < Math.abs(nearestOffset)) nearestOffset = offset;
      forced += 2 * grid;
      if (Math.abs(offset) <= NEAR) return follow(k, offset, crest);
      const side = Math.sign(offset);
      if (grid > (rim.get(side)?.grid ?? 0)) rim.set(side, { station: k, grid });
    });
    rim.forEach(({ station, grid }, side) => follow(station, side * RIM, grid / marched(net, conductance, side * RIM, rate)));
  }

  /** @param {number} station @param {number} offset hertz @param {number} crest volt */
  function follow(station, offset, crest) {
    const at = 6 * station;
    if (phasors[at] === 0 && phasors[at + 1] === 0) phasors[at] = 1;
    const angle = (2 * Math.PI * offset) / rate;
    phasors[at + 2] = Math.cos(angle);
    phasors[at + 3] = Math.sin(angle);
    phasors[at + 4] = crest;
    heard[hearing++] = station;
  }

  /** Bring the knobs nearer to where they should be. */
  function glide() {
    if (!wanted || !knobs || knobs === wanted) return;
    const taken = nearer(knobs, wanted);
    try {
      takeUp(taken);
      fault = "";
    } catch (error) {
      if (!(error instanceof RangeError)) throw error;
      fault = error.message;
      knobs = taken;
    }
  }

  return {
    /** Turn the knobs; from the next samples on they go there. @param {State} to */
    turn(to) {
      if (!knobs) takeUp(to);
      wanted = to;
    },

    /** Begin afresh, with a swing on the grid itself. @param {State} to @param {number} swing volt, crest */
    restart(to, swing) {
      knobs = null;
      wanted = to;
      phasors.fill(0);
      takeUp(to);
      jump = last = emf[0] = emf[1] = sample = 0;
      state[MODE_R] = state[GRID_R] = swing;
    },

    /**
     * Play on.
     *
     * @param {Float32Array | Float64Array} out filled with pascals
     * @param {Programme} programme
     */
    play(out, programme) {
      const fade = Math.exp(-1 / (JOINT * sampleRate));
      let emfR = emf[0];
      let emfI = emf[1];
      let turning = 0;
      let crests = 0;
      let sounded = last;
      for (let n = 0; n < out.length; n++, sample++) {
        if (left-- <= 0) {
          last = sounded;
          glide();
          left = HOLD * sampleRate;
        }
        for (let h = 0; h < hearing; h++) {
          const at = 6 * heard[h];
          phasors[at + 5] = phasors[at + 4] * (1 + programme(heard[h], sample));
        }
        let volts = 0;
        let turn = 0;
        drawn = (Math.imul(drawn, 1664525) + 1013904223) | 0;
        let place = drawn >>> (32 - NOISE_BITS);
        for (let e = 0; e < every; e++) {
          let nextR = spread * noise[place++ % NOISES];
          let nextI = spread * noise[place++ % NOISES];
          for (let h = 0; h < hearing; h++) {
            const at = 6 * heard[h];
            const re = phasors[at] * phasors[at + 2] - phasors[at + 1] * phasors[at + 3];
            const im = phasors[at] * phasors[at + 3] + phasors[at + 1] * phasors[at + 2];
            phasors[at] = re;
            phasors[at + 1] = im;
            nextR += phasors[at + 5] * re;
            nextI += phasors[at + 5] * im;
          }
          march.advance(state, emfR, emfI, nextR, nextI);
          emfR = nextR;
          emfI = nextI;
          volts += march === valveMarch ? supply - state[ANODE] : -state[BIAS];
          turn += state[TURNING];
        }
        turning += turn / every;
        crests += outside * Math.hypot(state[GRID_R], state[GRID_I]);
        if (age++ < quiet) telephones.settle();
        sounded = telephones.heard(volts / every, pascals);
        if (jump !== 0) {
          sounded += jump;
          jump = Math.abs(jump) > FAINT ? jump * fade : 0;
        }
        out[n] = sounded;
      }
      emf[0] = emfR;
      emf[1] = emfI;
      last = sounded;
      turned += turning;
      swung += crests;
      samples += out.length;
      for (let h = 0; h < hearing; h++) {
        const at = 6 * heard[h];
        const size = Math.hypot(phasors[at], phasors[at + 1]);
        phasors[at] /= size;
        phasors[at + 1] /= size;
      }
    },

    /**
     * How the set stands since the last time this was asked. `grid` is the mean crest on the tuned circuit, `beat` hertz of its swing above the nearest station; `fault` says in
     * words why the knobs were not followed, if they were not.
     */
    stand() {
      const beat = samples ? turned / samples / (2 * Math.PI) - nearestOffset : 0;
      const grid = samples ? swung / samples : outside * Math.hypot(state[GRID_R], state[GRID_I]);
      turned = swung = samples = 0;
      const cut = march === valveMarch && grid > NEARLY * outside * mostSwing;
      const said = cut ? "The grid swings further than any valve would stand: turn the reaction back." : fault;
      return { grid, bias: state[BIAS], beat, oscillates: growing || grid > BEYOND * forced + LITTLE, fault: said };
    },
  };
}
