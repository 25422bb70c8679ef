/**
 * A quenched set for weak signals and strong: `solutions/unit09_feedback_receivers/quench` and unit 7's growth, on one tuned circuit.
 *
 * Where bursts begin, and how that falls off tune, are as for a growth and a decay of several nepers. The loop is coupled to the
 * coil and takes from it what `reflected_impedance` says. Growth and decay are in nepers a second, both above 0.
 */

/** @typedef {import("./bench.js").State} State */

/** @typedef {{name: string, frequency: number, emf: number}} Tin a test oscillator: hertz, volt r.m.s. in the loop */

/**
 * @typedef {object} Quenched figures of the set
 * @property {number} inductance
 * @property {number} quality of the circuit without loop and reaction
 * @property {number} temperature
 * @property {number} limit volt, crest
 * @property {number} loop_inductance
 * @property {number} loop_resistance all the way round
 * @property {number} audio_gain volts across the telephones for each volt of mean swing
 * @property {number} audio_time second that these need to follow; so does a filter
 * @property {number} load_resistance of the telephones
 */

/**
 * @typedef {object} Bursts what the knobs make of it
 * @property {number} frequency hertz at which it swings
 * @property {number} growth
 * @property {number} decay
 * @property {number} half second, of growing, and of dying
 * @property {number} gain volts from which a burst grows, for each volt in the loop, in tune
 * @property {number} heat the same from heat alone: volts r.m.s. of either part
 * @property {number} limit volt, crest
 * @property {number} grown neper, of a burst that heat begins
 * @property {number} died neper
 */

const NEARLY = 0.9;
const BOLTZMANN = 1.380649e-23; // J/K

/** @param {number} frequency hertz @param {number} quality @param {number} feedback part of the loss made good */
export const growthRate = (frequency, quality, feedback) => (Math.PI * frequency * (feedback - 1)) / quality;

/** Volts r.m.s. that heat keeps a circuit swinging with. @param {number} capacitance @param {number} temperature */
export const startingVoltage = (capacitance, temperature) => Math.sqrt((BOLTZMANN * temperature) / capacitance);

/** Swing after a time, from a start, towards a limit. @param {number} time @param {number} start @param {number} limit @param {number} growth */
export const amplitude = (time, start, limit, growth) =>
  limit / Math.sqrt(1 + ((limit / start) ** 2 - 1) * Math.exp(-2 * growth * time));

/** Swing from which a burst grows. @param {number} frequency hertz @param {number} emf volt, crest, in the coil @param {number} growth @param {number} decay */
export const signalStart = (frequency, emf, growth, decay) => Math.PI * frequency * emf * (1 / decay + 1 / growth);

/** The same off tune, against in tune. @param {number} offset hertz @param {number} growth @param {number} decay */
export function relativeResponse(offset, growth, decay) {
  const angular = 2 * Math.PI * offset;
  return 1 / Math.sqrt((1 + (angular / growth) ** 2) * (1 + (angular / decay) ** 2));
}

/** Hertz from −3 dB to −3 dB: where both factors of `relativeResponse` together come to 2. @param {number} growth @param {number} decay */
export function bandwidth(growth, decay) {
  const [g, d] = [growth ** 2, decay ** 2];
  return Math.sqrt((2 * g * d) / (g + d + Math.sqrt((g + d) ** 2 + 4 * g * d))) / Math.PI;
}

/**
 * Swing averaged over a quench cycle.
 *
 * @param {number} start volt, below the limit
 * @param {number} limit volt
 * @param {number} growth
 * @param {number} decay
 * @param {number} growing second
 * @param {number} dying second
 */
export function meanSwing(start, limit, growth, decay, growing, dying) {
  const begun = start / Math.sqrt(limit ** 2 - start ** 2);
  const burst = (limit / growth) * (Math.asinh(begun * Math.exp(growth * growing)) - Math.asinh(begun));
  const tail = (amplitude(growing, start, limit, growth) / decay) * -Math.expm1(-decay * dying);
  return (burst + tail) / (growing + dying);
}

/** @param {Quenched} set @param {State} state @returns {Bursts} */
export function burstsOf(set, { coupling, tuning, throttle, quench }) {
  const angular = 1 / Math.sqrt(set.inductance * tuning);
  const [reactance, into] = [angular * set.inductance, angular * coupling];
  const [loopR, loopX] = [set.loop_resistance, angular * set.loop_inductance];
  const loop = loopR ** 2 + loopX ** 2;
  const loss = reactance / set.quality;
  const loaded = loss + (into ** 2 * loopR) / loop;
  const left = reactance - (into ** 2 * loopX) / loop;
  const frequency = (angular * Math.sqrt(reactance / left)) / (2 * Math.PI);
  const decay = -growthRate(frequency, left / loaded, 0);
  const growth = growthRate(frequency, left / loaded, (throttle * loss) / loaded);
  const half = 0.5 / quench;
  const heat = startingVoltage(tuning, set.temperature) * Math.sqrt(1 + decay / growth);
  const begun = heat * Math.SQRT2;
  return {
    frequency,
    growth,
    decay,
    half,
    gain: signalStart(frequency, into / Math.sqrt(loop), growth, decay),
    heat,
    limit: set.limit,
    grown: Math.log(amplitude(half, begun, set.limit, growth) / begun),
    died: decay * half,
  };
}

/** A burst that dies by less than heat makes it grow leaves more than heat for the next one: it never ends. @param {Bursts} bursts */
export const neverDies = ({ grown, died }) => grown >= died;

/** Whether a burst that heat and a station begin comes up to its limit. @param {Bursts} bursts @param {number} station volt, crest */
export const reachesLimit = ({ half, heat, limit, growth }, station) =>
  amplitude(half, Math.hypot(heat * Math.SQRT2, station), limit, growth) > NEARLY * limit;

/** What a volt in the loop begins a burst with, in volts, at a frequency. @param {Bursts} bursts @param {number} frequency hertz */
export const startAt = (bursts, frequency) =>
  bursts.gain * relativeResponse(frequency - bursts.frequency, bursts.growth, bursts.decay);
