// Answers questions put to the bench's modules: JSON in, [{ask, given}, …]; JSON out, one answer each.
import { readFileSync } from "node:fs";

import * as aerial from "../../course/bench/physics/aerial.js";
import { besselAverages } from "../../course/bench/physics/bessel.js";
import { coilResistance } from "../../course/bench/physics/coil.js";
import { CONTROLS } from "../../course/bench/physics/controls.js";
import { anodeCycle, cycleTables } from "../../course/bench/physics/cycle.js";
import { createTelephones, hearingThreshold } from "../../course/bench/physics/ear.js";
import { poles, steadyFormula } from "../../course/bench/physics/network.js";
import { slowMode } from "../../course/bench/physics/slow-mode.js";
import { nearer } from "../../course/bench/physics/gliding.js";
import * as quenched from "../../course/bench/physics/quenched.js";
import { band, response, retuned, ring, settled, threshold } from "../../course/bench/physics/stability.js";

import { ANODE, BIAS, GRID_I, GRID_R, start } from "../../course/bench/physics/state.js";
import { createCrystalMarch } from "../../course/bench/physics/crystal.js";
import { createMarch } from "../../course/bench/physics/stepping.js";
import { margin } from "../../course/bench/physics/margin.js";
import * as bench from "../../course/bench/physics/bench.js";
import { measured } from "../../course/bench/panel/measured.js";
import { seenOf } from "../../course/bench/panel/seen.js";
import { faultsOf, settingOf, stateOf } from "../../course/bench/panel/setting.js";
import { FIRST_LEVEL } from "../../course/bench/panel/level.js";
import { createAutomaticGain } from "../../course/bench/sound/automatic-gain.js";
import { createLimiter } from "../../course/bench/sound/limiter.js";
import { registerSet } from "../../course/bench/sound/worklet.js";

const { figures, questions } = JSON.parse(readFileSync(0, "utf8"));
const tables = cycleTables(figures.cycle);

/** A function of a module, by its name. @param {object} module @param {string} call @returns {Function} */
const of = (module, call) => /** @type {Record<string, Function>} */ (module)[call];

/** Tuned circuit, bias and anode after each step, in so many parts, of an e.m.f. given as pairs of numbers. @param {any} given */
function envelope({ network, stage, rest, reference, rate, parts = 1, emf, seed }) {
  const march = (stage.perveance > 0 ? createMarch : createCrystalMarch)(tables);
  const net = slowMode(network, stage, reference);
  march.turn(net, stage, reference, parts * rate);
  const state = start(rest, stage, seed);
  state[GRID_R] += net.gridAtOnce.re * emf[0][0] - net.gridAtOnce.im * emf[0][1];
  state[GRID_I] += net.gridAtOnce.re * emf[0][1] + net.gridAtOnce.im * emf[0][0];
  return emf.slice(1).map((/** @type {[number, number]} */ there, /** @type {number} */ n) => {
    const along = (/** @type {number} */ axis, /** @type {number} */ part) => emf[n][axis] + (there[axis] - emf[n][axis]) * (part / parts);
    for (let part = 0; part < parts; part++) {
      march.advance(state, along(0, part), along(1, part), along(0, part + 1), along(1, part + 1));
    }
    const { re, im } = net.tuned;
    const tuned = [re * state[GRID_R] - im * state[GRID_I], re * state[GRID_I] + im * state[GRID_R]];
    return [...tuned, state[BIAS], state[ANODE]];
  });
}

/**
 * What the audio thread sends out from when "Listen" is pressed: its own class, in what a browser gives it.
 *
 * @param {bench.State} state
 * @param {number[]} programme
 * @param {number} rate
 */
function sentOut(state, programme, rate) {
  /** @type {any} */ let SetThatPlays;
  const port = { onmessage: (/** @type {unknown} */ _) => {}, postMessage() {} };
  Object.assign(globalThis, {
    sampleRate: rate,
    AudioWorkletProcessor: class {
      port = port;
    },
    registerProcessor: (/** @type {string} */ _, /** @type {unknown} */ made) => (SetThatPlays = made),
  });
  registerSet();
  const playing = new SetThatPlays({ processorOptions: { figures, state: { ...state, ...FIRST_LEVEL } } });
  port.onmessage({ data: { programme: Float32Array.from(programme) } });
  return Array.from({ length: Math.floor(programme.length / 128) }, () => {
    const block = new Float32Array(128);
    playing.process([], [[block]]);
    return [...block];
  }).flat();
}

/** What is given comes from Python as JSON, and may be anything. @type {Record<string, (given: any) => unknown>} */
const answers = {
  poles: ({ network }) => poles(network).map(({ re, im }) => [re, im]),
  formula: ({ network, frequency }) => steadyFormula(network)(frequency),
  response: ({ network, frequencies }) => {
    const found = response(network, frequencies);
    return found && [...found];
  },
  band: ({ network }) => band(network),
  ring: ({ network }) => ring(network),
  retuned: ({ network, frequency }) => retuned(network, frequency).tuning_capacitance,
  threshold: ({ network, control }) => threshold(network, CONTROLS[/** @type {bench.ControlName} */ (control)]),
  settled: ({ network, control, knob, frequency, growth }) =>
    settled((tuning_capacitance) => ({ ...network, tuning_capacitance }), CONTROLS[/** @type {bench.ControlName} */ (control)], knob, frequency, growth),
  slowMode: ({ network, stage, reference }) => slowMode(network, stage, reference),
  bessel: ({ x }) => besselAverages(x),
  anodeCycle: ({ drive, perveance }) => {
    const into = new Float64Array(10);
    anodeCycle(tables, Float64Array.from(drive), perveance, into);
    return [...into];
  },
  coil: ({ frequency }) => coilResistance(figures.coil, frequency),
  gridTable: () => [...tables.grid],
  envelope,
  threshold_of_hearing: ({ frequency }) => hearingThreshold(figures.ear, frequency),
  telephones: ({ volts, pascals, sampleRate }) => {
    const telephones = createTelephones(figures.ear, sampleRate);
    return volts.map((/** @type {number} */ volt) => telephones.heard(volt, pascals));
  },
  aerial: ({ call, args }) => of(aerial, call)(...args),
  played: ({ change, state, seconds, sampleRate }) => {
    const receiver = bench.receiverOf({ ...figures, ...change }, sampleRate);
    receiver.turn(state);
    const out = new Float64Array(seconds * sampleRate);
    receiver.play(out, () => 0);
    return { ...receiver.stand(), last: [...out.slice(-sampleRate * 0.05)] };
  },
  quenched: ({ call, args }) => of(quenched, call)(...args),
  measured: ({ setting }) => {
    const found = stateOf(figures, setting);
    if (!found) throw new RangeError(`${setting} is no setting`);
    const { state, faults } = found;
    return { ...measured(state, seenOf(figures, state, []), bench.listen(figures, state)), faults };
  },
  nearer: ({ from, to }) => nearer(from, to),
  switched: ({ states, seconds, sampleRate }) => {
    const receiver = bench.receiverOf(figures, sampleRate);
    return states.map((/** @type {bench.State} */ state) => {
      receiver.turn(state);
      const out = new Float64Array(seconds * sampleRate);
      receiver.play(out, () => 0);
      return [...out];
    });
  },
  setting: ({ text }) => ({ faults: faultsOf(figures, text), opened: stateOf(figures, text)?.state ?? null }),
  written: ({ state }) => settingOf(figures, state),
  bench: ({ call, args }) => of(bench, call)(figures, ...args),
  margin: ({ state }) => margin(figures, state),
  sentOut: ({ states, programme, sampleRate }) =>
    states.map((/** @type {bench.State} */ state) => sentOut(state, programme, sampleRate)),
  gained: ({ pressure, sampleRate, block }) => {
    const automatic = createAutomaticGain(sampleRate, 1);
    return Array.from({ length: Math.floor(pressure.length / block) }, (_, n) => automatic.after(pressure.slice(n * block, (n + 1) * block)));
  },
  limited: ({ samples, sampleRate }) => {
    const limiter = createLimiter(sampleRate);
    return { delay: limiter.delay, out: samples.map((/** @type {number} */ sample) => limiter.pass(sample)) };
  },
};

process.stdout.write(
  JSON.stringify(
    questions.map((/** @type {{ask: string, given: unknown}} */ { ask, given }) => {
      try {
        return answers[ask](given);
      } catch (error) {
        if (error instanceof RangeError) return { refused: error.message };
        throw error;
      }
    }),
  ),
);
