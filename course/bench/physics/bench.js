/** The bench's physics as the page asks for it: everything takes the figures and a state of the knobs. */

import { aerialCrest, aerialCurrent, nearbyField, noiseField, radiatedPower, spoiledDistance } from "./aerial.js";
import { carried, currentAhead } from "./ahead.js";
import { createBursting } from "./bursting.js";
import { coilResistance } from "./coil.js";
import { CONTROLS } from "./controls.js";
import { cycleTables } from "./cycle.js";
import { hearingThreshold as thresholdOf, pressureLevel } from "./ear.js";
import { steadyFormula } from "./network.js";
import { oneOf } from "./players.js";
import { bandwidth, burstsOf, neverDies, startAt } from "./quenched.js";
import { createReceiver } from "./receiver.js";
import * as stability from "./stability.js";
import { reached } from "./station-on.js";

/** @typedef {import("./network.js").Network} Network */
/** @typedef {import("./slow-mode.js").Stage} Stage */
/** @typedef {import("./aerial.js").Station} Station */
/** @typedef {{low: number, high: number, start: number, unit?: string}} Knob unit: in which a setting writes it */
/**
 * @typedef {object} Dial
 * @property {number} low hertz
 * @property {number} high
 * @property {number} step of the tuning knob
 * @property {number} fine how far fine tuning goes to either side
 * @property {number} least step of fine tuning
 * @property {number} tick between two short strokes of the scale
 * @property {number} span of the close-up to either side
 * @property {number} weakest decibel over 1 volt, at the foot of the dial's masts
 * @property {number} gain decibel, at the foot of the close-up
 */
/** @typedef {{network: Network, stage: Stage, rest: {bias: number, anode: number}}} Fed */
/** @typedef {Pick<Network, "tuned_inductance" | "grid_anode_capacitance">} Coil */
/** @typedef {import("./controls.js").ControlName} ControlName */
/** @typedef {"coupling" | "tuning" | "quench" | ControlName} KnobName */

/**
 * @typedef {object} SetFigures
 * @property {string} title
 * @property {Partial<Record<KnobName, Knob>> & {coupling: Knob, tuning: Knob}} knobs
 * @property {Partial<Record<ControlName, Partial<Network>>>} [controls] ways to turn reaction up, if there is a choice: what stands fixed behind each
 * @property {string[]} feeds
 * @property {Record<string, Fed>} stages
 * @property {import("./ahead.js").Ahead} [ahead]
 * @property {import("./quenched.js").Quenched} [quenched] if it is quenched; then it has no stages
 * @property {import("./quenched.js").Tin[]} [stations] its own
 * @property {Dial} [dial] its own
 */

/**
 * @typedef {object} Figures what `course/bench/sets.py` writes
 * @property {string[]} order
 * @property {Record<string, SetFigures>} sets
 * @property {Dial} dial of all sets that have none of their own
 * @property {Station[]} stations
 * @property {{effective_height: number}} aerial
 * @property {{level_at_1_mhz: number, fall: number}} noise
 * @property {{distance: number, protection: number}} neighbour
 * @property {import("./ear.js").EarFigures} ear
 * @property {{depth: number, top: number}} programme
 * @property {number} full_scale pascal, played as 1
 * @property {number} loud decibel of sound pressure
 * @property {import("./cycle.js").CycleFigures} cycle
 * @property {import("./coil.js").CoilFigures} coil of all sets that have windings
 */

/**
 * @typedef {object} State where the knobs are; SI units
 * @property {string} set
 * @property {number} coupling henry
 * @property {number} tuning farad
 * @property {ControlName} by the knob that turns reaction up; the two others of these three count for nothing
 * @property {number} throttle farad; of a quenched set, the part of the loss that is made good
 * @property {number} swinging henry, of tickler and tuned coil
 * @property {number} shunt ohm, across the tickler
 * @property {number} quench hertz
 * @property {string} feed
 * @property {boolean} night
 * @property {number | null} magnify times as strong as in life; null: what an automatic gain finds
 * @property {number} volume 0 to 1
 */

const SLACK = 1e-6; // by which a knob may pass its stop
const LISTEN_RATE = 48e3; // hertz
const SETTLE = 0.03; // second
const HEAR = 0.04; // second: whole cycles of a tone in steps of 25 Hz
const OTHERS = 1.35; // of the tone: what all other stations send
const ROUNDS = 4; // of correcting a quenched set's tuning
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

/** @param {Figures} figures @param {string} set */
export const dialOf = (figures, set) => figures.sets[set].dial ?? figures.dial;

/** @param {Figures} figures @param {string} set */
export const stationsOf = (figures, set) => figures.sets[set].stations ?? figures.stations;

/** The set, if its knobs are within their stops. @param {Figures} figures @param {State} state @throws {RangeError} if one is beyond */
function turnedSet(figures, state) {
  const set = setOf(figures, state);
  if (state.by !== "throttle" && !set.controls?.[state.by]) {
    throw new RangeError(`The set "${state.set}" has no "${state.by}" to turn reaction up by.`);
  }
  for (const [name, knob] of Object.entries(set.knobs)) {
    if (name in CONTROLS && name !== state.by) continue;
    const value = state[/** @type {KnobName} */ (name)];
    if (!(value >= knob.low * (1 - SLACK) && value <= knob.high * (1 + SLACK))) {
      throw new RangeError(`The knob "${name}" goes from ${knob.low} to ${knob.high}; ${value} is beyond its stops.`);
    }
  }
  return set;
}

/** A quenched set with its knobs so; undefined if it is another. @param {Figures} figures @param {State} state */
export function quenchedOf(figures, state) {
  const { quenched } = turnedSet(figures, state);
  return quenched && burstsOf(quenched, state);
}

/** @param {SetFigures} set @param {string} feed */
const fedBy = (set, feed) => set.stages[feed] ?? set.stages[set.feeds[0]];

/** Where the dial's pointer stands, in hertz: its scale is drawn with the valve in, the anode held still. @param {Coil} coil @param {number} tuning farad */
const pointer = ({ tuned_inductance, grid_anode_capacitance }, tuning) =>
  1 / (2 * Math.PI * Math.sqrt(tuned_inductance * (tuning + grid_anode_capacitance)));

/** The network of a set with its knobs so, its coil losing what it does where the dial stands; how it is wound, before reaction is turned up; and how it is fed. @param {Figures} figures @param {State} state */
export function networkOf(figures, state) {
  const set = turnedSet(figures, state);
  const fed = fedBy(set, state.feed);
  const wound = woundAs(figures, state);
  const network = set.knobs[state.by] ? CONTROLS[state.by].turned(wound, state[state.by]) : wound;
  return { network, wound, fed, ahead: set.ahead };
}

/** The network of a set before its reaction is turned up. @param {Figures} figures @param {State} state whatever the stops */
function woundAs(figures, { set, feed, by, coupling, tuning }) {
  const { network } = fedBy(figures.sets[set], feed);
  return {
    ...network,
    ...figures.sets[set].controls?.[by],
    aerial_tuned: coupling,
    tuning_capacitance: tuning,
    tuned_resistance: coilResistance(figures.coil, pointer(network, tuning)),
  };
}

/** @param {Figures} figures @param {string} set @returns {State} */
export function startingState(figures, set) {
  const { knobs, feeds } = figures.sets[set];
  return {
    set,
    coupling: knobs.coupling.start,
    tuning: knobs.tuning.start,
    by: "throttle",
    throttle: knobs.throttle?.start ?? 1e-12,
    swinging: knobs.swinging?.start ?? 1e-6,
    shunt: knobs.shunt?.start ?? 1,
    quench: knobs.quench?.start ?? 1,
    feed: feeds[0],
    night: false,
    magnify: 1,
    volume: 0,
  };
}

/** The tuned coil, and what else than the condenser lies across it. @param {Figures} figures @param {State} state @returns {Coil} */
function coilOf(figures, state) {
  const set = turnedSet(figures, state);
  return set.quenched ? { tuned_inductance: set.quenched.inductance, grid_anode_capacitance: 0 } : fedBy(set, state.feed).network;
}

/** What the dial's pointer says, in hertz. @param {Figures} figures @param {State} state */
export const dialFrequency = (figures, state) => pointer(coilOf(figures, state), state.tuning);

/** The same with the dial's pointer elsewhere. @param {Figures} figures @param {State} state @param {number} frequency hertz @returns {State} */
export function dialled(figures, state, frequency) {
  const { tuned_inductance, grid_anode_capacitance } = coilOf(figures, state);
  return { ...state, tuning: 1 / ((2 * Math.PI * frequency) ** 2 * tuned_inductance) - grid_anode_capacitance };
}

/** The same with the set ringing at a frequency. @param {Figures} figures @param {State} state @param {number} frequency hertz @returns {State} */
export function tunedTo(figures, state, frequency) {
  const quenched = figures.sets[state.set].quenched;
  const tuned = quenched ? { ...state } : dialled(figures, state, frequency);
  if (!quenched) {
    tuned.tuning = stability.retuned(networkOf(figures, tuned).network, frequency).tuning_capacitance;
  } else {
    for (let round = 0; round < ROUNDS; round++) tuned.tuning *= (ring(figures, tuned).frequency / frequency) ** 2;
  }
  turnedSet(figures, tuned);
  return tuned;
}

/** Hertz at which the set swings by itself, and nepers a second by which that grows. @param {Figures} figures @param {State} state */
export function ring(figures, state) {
  const bursts = quenchedOf(figures, state);
  if (!bursts) return stability.ring(networkOf(figures, state).network);
  return { frequency: bursts.frequency, growth: (bursts.grown - bursts.died) * state.quench };
}

/**
 * Volts on the grid for each that comes in, where a quenched set begins its bursts; null for a set that oscillates.
 *
 * @param {Figures} figures
 * @param {State} state
 * @param {ArrayLike<number>} frequencies hertz
 */
export function response(figures, state, frequencies) {
  const bursts = quenchedOf(figures, state);
  if (bursts) return neverDies(bursts) ? null : Float64Array.from(frequencies, (frequency) => startAt(bursts, frequency));
  const { network, ahead } = networkOf(figures, state);
  return stability.response(network, frequencies)?.map((gain, k) => gain * carried(ahead, frequencies[k])) ?? null;
}

/** @param {Figures} figures @param {State} state */
export function band(figures, state) {
  const bursts = quenchedOf(figures, state);
  if (bursts) return quenchedBand(bursts);
  const { network, ahead } = networkOf(figures, state);
  const found = stability.band(network);
  return found && { ...found, gain: found.gain * carried(ahead, found.frequency) };
}

/** @param {import("./quenched.js").Bursts} bursts */
function quenchedBand(bursts) {
  const { frequency, gain, growth, decay } = bursts;
  const width = bandwidth(growth, decay);
  return neverDies(bursts) ? null : { frequency, gain, low: frequency - width / 2, high: frequency + width / 2, width };
}

/**
 * Where the reaction's knob would have to stand for the set to oscillate, and how much of the way is gone: of nepers died away, those
 * that a burst has grown.
 *
 * The other knobs stand as they are. `at` is null if no place of the knob does it, or the set has none.
 *
 * @param {Figures} figures
 * @param {State} state
 */
export function edge(figures, state) {
  const bursts = quenchedOf(figures, state);
  if (bursts) return { at: null, share: bursts.grown / bursts.died };
  if (!setOf(figures, state).knobs[state.by]) return { at: null, share: 0 };
  const at = stability.threshold(networkOf(figures, state).wound, CONTROLS[state.by]);
  return at > 0 && Number.isFinite(at) ? { at, share: state[state.by] / at } : { at: null, share: 0 };
}

/**
 * The set with another way to turn reaction up: ringing where it did, its band as wide as it was, if that way can do it; else with
 * least reaction, and ringing there if it can.
 *
 * @param {Figures} figures
 * @param {State} state
 * @param {ControlName} by
 * @returns {{state: State, same: boolean}}
 */
export function exchanged(figures, state, by) {
  const knob = /** @type {Knob} */ (figures.sets[state.set].knobs[by]);
  const least = { ...state, by, [by]: knob.low };
  const { frequency, growth } = ring(figures, state);
  const wound = (/** @type {number} */ tuning) => woundAs(figures, { ...least, tuning });
  const there = reached(() => {
    const found = stability.settled(wound, CONTROLS[by], knob, frequency, growth);
    const turned = found && { ...least, [by]: found.value, tuning: found.tuning };
    return turned && turnedSet(figures, turned) && turned;
  });
  return { state: there ?? reached(() => tunedTo(figures, least, frequency)) ?? least, same: there !== null };
}

/** Which of the figures' stations are on the air. @param {Figures} figures @param {State} state */
export const onAir = (figures, state) =>
  figures.stations.map((station) => state.night || !station.night);

/** Stations on the air, with crest in the aerial and on the grid. @param {Figures} figures @param {State} state */
export function stations(figures, state) {
  const bursts = quenchedOf(figures, state);
  if (bursts) return (figures.sets[state.set].stations ?? []).map((tin) => inLoop(bursts, tin));
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

/** A test oscillator, with crest in the loop and where it begins a burst. @param {import("./quenched.js").Bursts} bursts @param {import("./quenched.js").Tin} tin */
function inLoop(bursts, { name, frequency, emf }) {
  const crest = Math.SQRT2 * emf;
  return { name, frequency, field: 0, emf: crest, grid: neverDies(bursts) ? null : crest * startAt(bursts, frequency) };
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
  const wanted = stationsOf(figures, state.set).findIndex(({ name }) => name === station.name);
  const turn = (2 * Math.PI * tone) / LISTEN_RATE;
  const programme = (/** @type {number} */ k, /** @type {number} */ n) =>
    depth * Math.sin((k === wanted ? 1 : OTHERS) * turn * n);
  receiver.play(new Float64Array(SETTLE * LISTEN_RATE), programme);
  receiver.stand();
  const heard = new Float64Array(HEAR * LISTEN_RATE);
  receiver.play(heard, programme);
  const { grid, beat } = receiver.stand();
  let re = 0;
  let im = 0;
  heard.forEach((pressure, n) => {
    re += pressure * Math.cos(turn * n);
    im += pressure * Math.sin(turn * n);
  });
  const tonePower = (2 * (re * re + im * im)) / heard.length ** 2;
  const level = pressureLevel(figures.ear, Math.sqrt(tonePower));
  const rest = heard.map((pressure, n) => pressure - (2 * (re * Math.cos(turn * n) + im * Math.sin(turn * n))) / heard.length);
  const noise = pressureLevel(figures.ear, audible(rest));
  const screened = figures.sets[state.set].quenched !== undefined;
  return {
    station: station.name,
    level,
    above: level - hearingThreshold(figures, tone),
    noise,
    quieting: screened && !sounding ? rush(figures, receiver) - noise : 0,
    whistle: sounding && !screened ? Math.abs(beat) : 0,
    grid,
    oscillates: sounding,
    neighbour: sounding && !screened ? neighbour(figures, state, grid) : null,
  };
}

/** Pascals, r.m.s., of a sound without what lies beyond hearing: averaged over 62 µs. @param {Float64Array} sound */
function audible(sound) {
  const smooth = sound.subarray(2).map((pressure, n) => (sound[n] + sound[n + 1] + pressure) / 3);
  return Math.sqrt(smooth.reduce((sum, pressure) => sum + pressure * pressure, 0) / smooth.length);
}

/** What is heard when no station is there: modulated all the way down. @param {Figures} figures @param {ReturnType<typeof receiverOf>} receiver */
function rush(figures, receiver) {
  const sound = new Float64Array(HEAR * LISTEN_RATE);
  for (let twice = 0; twice < 2; twice++) receiver.play(sound, () => -1);
  return pressureLevel(figures.ear, audible(sound));
}

/** A set that plays, at a sample rate. @param {Figures} figures @param {number} sampleRate hertz */
export function receiverOf(figures, sampleRate) {
  const wound = createReceiver(figures, cycleTables(figures.cycle), sampleRate, {
    networkOf: (state) => networkOf(figures, state),
    onAir: (state) => onAir(figures, state),
  });
  /** @type {Record<string, ReturnType<typeof createBursting>>} */ const bursting = {};
  for (const [name, { quenched, stations = [] }] of Object.entries(figures.sets)) {
    if (quenched) bursting[name] = createBursting(figures.ear, { quenched, stations }, sampleRate, (state) => turnedSet(figures, state));
  }
  return oneOf(({ set }) => bursting[set] ?? wound, sampleRate);
}

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
    spoiled: spoiledDistance(power, wanted, figures.neighbour.protection, frequency),
  };
}

/** @param {Figures} figures @param {number} frequency hertz */
export const hearingThreshold = (figures, frequency) => thresholdOf(figures.ear, frequency);
