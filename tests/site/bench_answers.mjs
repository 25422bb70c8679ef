// Answers questions put to the bench's modules: JSON in, [{ask, given}, …]; JSON out, one answer each.
import { readFileSync } from "node:fs";

import * as aerial from "../../course/bench/physics/aerial.js";
import { besselAverages } from "../../course/bench/physics/bessel.js";
import { anodeTable, cycleTables } from "../../course/bench/physics/cycle.js";
import { createTelephones, hearingThreshold } from "../../course/bench/physics/ear.js";
import { poles, steadyFormula } from "../../course/bench/physics/network.js";
import { slowMode } from "../../course/bench/physics/slow-mode.js";
import { nearer } from "../../course/bench/physics/gliding.js";
import * as quenched from "../../course/bench/physics/quenched.js";
import { band, response, retuned, ring, thresholdThrottle } from "../../course/bench/physics/stability.js";

import { ANODE, BIAS, GRID_I, GRID_R, start } from "../../course/bench/physics/state.js";
import { createCrystalMarch } from "../../course/bench/physics/crystal.js";
import { createMarch } from "../../course/bench/physics/stepping.js";
import * as bench from "../../course/bench/physics/bench.js";
import { faultsOf, settingOf, stateOf } from "../../course/bench/panel/setting.js";
import { createLimiter } from "../../course/bench/sound/limiter.js";

const { figures, questions } = JSON.parse(readFileSync(0, "utf8"));
const tables = cycleTables(figures.cycle);

/** A function of a module, by its name. @param {object} module @param {string} call @returns {Function} */
const of = (module, call) => /** @type {Record<string, Function>} */ (module)[call];

/** Grid, bias and anode after each step of an e.m.f. given as pairs of numbers. @param {any} given */
function envelope({ network, stage, rest, reference, rate, emf, seed }) {
  const march = (stage.perveance > 0 ? createMarch : createCrystalMarch)(tables);
  const net = slowMode(network, stage, reference);
  march.turn(net, stage, reference, rate);
  const state = start(rest, stage, seed);
  state[GRID_R] += net.gridAtOnce.re * emf[0][0] - net.gridAtOnce.im * emf[0][1];
  state[GRID_I] += net.gridAtOnce.re * emf[0][1] + net.gridAtOnce.im * emf[0][0];
  return emf.slice(1).map((/** @type {[number, number]} */ there, /** @type {number} */ n) => {
    march.advance(state, .../** @type {[number, number]} */ (emf[n]), ...there);
    return [state[GRID_R], state[GRID_I], state[BIAS], state[ANODE]];
  });
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
  threshold: ({ network }) => thresholdThrottle(network),
  slowMode: ({ network, stage, reference }) => slowMode(network, stage, reference),
  bessel: ({ x }) => besselAverages(x),
  anodeTable: ({ coil }) => [...anodeTable(tables, coil)],
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
