/** The bench's physics as the page asks for it: everything takes the figures and a state of the knobs. */

import { aerialCrest, aerialCurrent, nearbyField, noiseField, radiatedPower, spoiledDistance } from "./aerial.js";
import { carried, currentAhead } from "./ahead.js";
import { cycleTables } from "./cycle.js";
import { hearingThreshold as thresholdOf, pressureLevel } from "./ear.js";
import { steadyFormula } from "./network.js";
import { createReceiver } from "./receiver.js";
import * as stability from "./stability.js";

/** @typedef {import("./network.js").Network} Network */
/** @typedef {import("./slow-mode.js").Stage} Stage */
/** @typedef {import("./aerial.js").Station} Station */
/** @typedef {{low: number, high: number, start: number}} Knob */
/** @typedef {{network: Network, stage: Stage, rest: {bias: number, anode: number}}} Fed */
/** @typedef {"coupling" | "tuning" | "throttle"} KnobName */

/**
 * @typedef {object} SetFigures
 * @property {string} title
 * @property {Partial<Record<KnobName, Knob>> & {coupling: Knob, tuning: Knob}} knobs
 * @property {string[]} feeds
 * @property {Record<string, Fed>} stages
 * @property {import("./ahead.js").Ahead} [ahead]
 */

/**
 * @typedef {object} Figures what `course/bench/sets.py` writes
 * @property {string[]} order
 * @property {Record<string, SetFigures>} sets
 * @property {Knob} dial hertz
 * @property {Station[]} stations
 * @property {{effective_height: number}} aerial
 * @property {{level_at_1_mhz: number, fall: number}} noise
 * @property {{distance: number, protection: number}} neighbour
 * @property {import("./ear.js").EarFigures} ear
 * @property {{depth: number, top: number}} programme
 * @property {number} full_scale pascal, played as 1
 * @property {number} loud decibel of sound pressure
 * @property {import("./cycle.js").CycleFigures} cycle
 */

/**
 * @typedef {object} State where the knobs are; SI units
 * @property {string} set
 * @property {number} coupling henry
 * @property {number} tuning farad
 * @property {number} throttle farad
 * @property {string} feed
 * @property {boolean} night
 * @property {number} magnify
 * @property {number} volume 0 to 1
 */

const SLACK = 1e-6; // by which a knob may pass its stop
const LISTEN_RATE = 48e3; // hertz
const SETTLE = 0.03; // second
const HEAR = 0.04; // second: whole cycles of a tone in steps of 25 Hz
const OTHERS = 1.35; // of the tone: what all other stations send
const SWING = 0.3; // volt: from where an oscillation is let settle

/** @type {WeakMap<object, ReturnType<typeof receiverOf>>} */ const listeners = new WeakMap();

/** The set that `listen` plays, made once: a march that has run before runs faster. @param {Figures} figures */
function listenerOf(figures) {
  let listener = listeners.get(figures);
  if (!listener) listeners.set(figures, (listener = receiverOf(figures, LISTEN_RATE)));
  return listener;
}

/** @param {Figures} figures @param {State} state */
function setOf(figures, state) {
  const set = figures.sets[state.set];
  if (!set) throw new RangeError(`There is no set "${state.set}" on this bench: choose one of ${figures.order.join(", ")}.`);
  return set;
}

/**
 * The network of a set with its knobs so, and how it is fed.
 *
 * @param {Figures} figures
 * @param {State} state
 * @throws {RangeError} if a knob is beyond its stops
 */
export function networkOf(figures, state) {
  const set = setOf(figures, state);
  for (const [name, knob] of Object.entries(set.knobs)) {
    const value = state[/** @type {KnobName} */ (name)];
    if (!(value >= knob.low * (1 - SLACK) && value <= knob.high * (1 + SLACK))) {
      throw new RangeError(`The knob "${name}" goes from ${knob.low} to ${knob.high}; ${value} is beyond its stops.`);
    }
  }
  const fed = set.stages[state.feed] ?? set.stages[set.feeds[0]];
  const network = { ...fed.network, aerial_tuned: state.coupling, tuning_capacitance: state.tuning };
  if (set.knobs.throttle) network.throttle_capacitance = state.throttle;
  return { network, fed, ahead: set.ahead };
}

/** @param {Figures} figures @param {string} set @returns {State} */
export function startingState(figures, set) {
  const { knobs, feeds } = figures.sets[set];
  return {
    set,
    coupling: knobs.coupling.start,
    tuning: knobs.tuning.start,
    throttle: knobs.throttle?.start ?? 1e-12,
    feed: feeds[0],
    night: false,
    magnify: 1,
    volume: 0,
  };
}

/** What the dial's pointer says, in hertz: the tuned coil with this condenser by itself. @param {Figures} figures @param {State} state */
export const dialFrequency = (figures, state) =>
  1 / (2 * Math.PI * Math.sqrt(networkOf(figures, state).network.tuned_inductance * state.tuning));

/** The same with the dial's pointer elsewhere. @param {Figures} figures @param {State} state @param {number} frequency hertz @returns {State} */
export function dialled(figures, state, frequency) {
  const { network } = networkOf(figures, state);
  return { ...state, tuning: 1 / ((2 * Math.PI * frequency) ** 2 * network.tuned_inductance) };
}

/** The same with the set ringing at a frequency. @param {Figures} figures @param {State} state @param {number} frequency hertz @returns {State} */
export function tunedTo(figures, state, frequency) {
  const tuned = { ...state, tuning: stability.retuned(networkOf(figures, state).network, frequency).tuning_capacitance };
  networkOf(figures, tuned);
  return tuned;
}

/** @param {Figures} figures @param {State} state */
export const ring = (figures, state) => stability.ring(networkOf(figures, state).network);

/** @param {Figures} figures @param {State} state @param {ArrayLike<number>} frequencies hertz */
export function response(figures, state, frequencies) {
  const { network, ahead } = networkOf(figures, state);
  return stability.response(network, frequencies)?.map((gain, k) => gain * carried(ahead, frequencies[k])) ?? null;
}

/** @param {Figures} figures @param {State} state */
export function band(figures, state) {
  const { network, ahead } = networkOf(figures, state);
  const found = stability.band(network);
  return found && { ...found, gain: found.gain * carried(ahead, found.frequency) };
}

/**
 * Throttle at which the set would oscillate, the other knobs as they are; null if none within its reach does, or it has none.
 *
 * @param {Figures} figures
 * @param {State} state
 */
export function edge(figures, state) {
  const knob = setOf(figures, state).knobs.throttle;
  if (!knob) return { throttle: null, share: 0 };
  const throttle = stability.thresholdThrottle(networkOf(figures, state).network);
  return throttle > 0 ? { throttle, share: state.throttle / throttle } : { throttle: null, share: 0 };
}

/** Which of the figures' stations are on the air. @param {Figures} figures @param {State} state */
export const onAir = (figures, state) =>
  figures.stations.map((station) => state.night || !station.night);

/** Stations on the air, with crest in the aerial and on the grid. @param {Figures} figures @param {State} state */
export function stations(figures, state) {
  const { network, ahead } = networkOf(figures, state);
  const silent = !stability.oscillates(network);
  const onGrid = steadyFormula(network);
  const air = onAir(figures, state);
  return figures.stations
    .filter((_, k) => air[k])
    .map(({ name, frequency, field }) => {
      const emf = aerialCrest(field, figures.aerial.effective_height);
      return { name, frequency, field, emf, grid: silent ? emf * carried(ahead, frequency) * onGrid(frequency) : null };
    });
}

/** The station that is loudest on the grid; if the set oscillates, the nearest. @param {Figures} figures @param {State} state */
export function tunedStation(figures, state) {
  const { frequency } = ring(figures, state);
  const nearness = (/** @type {ReturnType<typeof stations>[0]} */ s) => s.grid ?? 1 / (1 + Math.abs(s.frequency - frequency));
  return stations(figures, state).reduce((best, next) => (nearness(next) > nearness(best) ? next : best));
}

/**
 * What is heard, and what the neighbour has of it, when the tuned station sends one tone and all others another: the envelope's equation, run for a moment.
 *
 * @param {Figures} figures
 * @param {State} state
 * @param {{tone?: number, depth?: number}} [sent] hertz in steps of 25, a fraction
 */
export function listen(figures, state, { tone = 1000, depth = 0.3 } = {}) {
  const station = tunedStation(figures, state);
  const sounding = ring(figures, state).growth > 0;
  const receiver = listenerOf(figures);
  receiver.restart(state, sounding ? SWING : 0);
  const wanted = figures.stations.findIndex(({ name }) => name === station.name);
  const turn = (2 * Math.PI * tone) / LISTEN_RATE;
  const programme = (/** @type {number} */ k, /** @type {number} */ n) =>
    depth * Math.sin((k === wanted ? 1 : OTHERS) * turn * n);
  receiver.play(new Float64Array(SETTLE * LISTEN_RATE), programme);
  receiver.stand();
  const heard = new Float64Array(HEAR * LISTEN_RATE);
  receiver.play(heard, programme);
  const { grid, beat } = receiver.stand();
  let power = 0;
  let re = 0;
  let im = 0;
  heard.forEach((pressure, n) => {
    power += pressure * pressure;
    re += pressure * Math.cos(turn * n);
    im += pressure * Math.sin(turn * n);
  });
  const tonePower = (2 * (re * re + im * im)) / heard.length ** 2;
  const level = pressureLevel(figures.ear, Math.sqrt(tonePower));
  return {
    station: station.name,
    level,
    above: level - hearingThreshold(figures, tone),
    noise: pressureLevel(figures.ear, Math.sqrt(Math.max(power / heard.length - tonePower, 0))),
    whistle: sounding ? Math.abs(beat) : 0,
    grid,
    oscillates: sounding,
    neighbour: sounding ? neighbour(figures, state, grid) : null,
  };
}

/** A set that plays, at a sample rate. @param {Figures} figures @param {number} sampleRate hertz */
export const receiverOf = (figures, sampleRate) =>
  createReceiver(figures, cycleTables(figures.cycle), sampleRate, {
    networkOf: (state) => networkOf(figures, state),
    onAir: (state) => onAir(figures, state),
  });

/** What the neighbour has of a swing on this set's grid. @param {Figures} figures @param {State} state @param {number} gridCrest volt */
export function neighbour(figures, state, gridCrest) {
  const { network, ahead } = networkOf(figures, state);
  const { frequency } = ring(figures, state);
  const height = figures.aerial.effective_height;
  const current = ahead
    ? currentAhead(ahead, network, frequency, gridCrest)
    : aerialCurrent(network, frequency, gridCrest);
  const power = radiatedPower(current, height, frequency);
  const wanted = tunedStation(figures, state).field;
  return {
    current,
    power,
    field: nearbyField(power, figures.neighbour.distance, frequency),
    wanted,
    noise: noiseField(frequency, 2 * figures.programme.top, figures.noise),
    spoiled: spoiledDistance(power, wanted, figures.neighbour.protection),
  };
}

/** @param {Figures} figures @param {number} frequency hertz */
export const hearingThreshold = (figures, frequency) => thresholdOf(figures.ear, frequency);
