/** The set that plays, in the audio thread. It is sent states and the programme, and reports what is to be seen. */

import { receiverOf } from "../physics/bench.js";
import { pressureLevel } from "../physics/ear.js";
import { createLimiter } from "./limiter.js";

/** @typedef {import("../physics/bench.js").Figures} Figures */
/** @typedef {import("../physics/bench.js").State} State */

const REPORT = 0.05; // second
const SMOOTH = 0.008; // second: in which a change of volume is made
const SECONDS_APART = 1.7; // what one station sends, another sent so long ago

class Set extends AudioWorkletProcessor {
  /** @param {{processorOptions: {figures: Figures, state: State}}} options */
  constructor({ processorOptions: { figures, state } }) {
    super();
    this.figures = figures;
    this.receiver = receiverOf(figures, sampleRate);
    this.receiver.turn(state);
    this.limiter = createLimiter(sampleRate);
    this.state = state;
    this.volume = 0;
    this.pressure = new Float64Array(128);
    /** @type {Float32Array} */ this.sent = new Float32Array(1);
    this.running = true;
    this.seen = { samples: 0, power: 0, peak: 0, busy: 0 };
    this.programme = (/** @type {number} */ station, /** @type {number} */ sample) =>
      this.sent[Math.floor(sample + station * SECONDS_APART * sampleRate) % this.sent.length];
    this.port.onmessage = ({ data }) => {
      if (data.state) this.turn(data.state);
      if (data.programme) this.sent = data.programme.map((/** @type {number} */ s) => s * figures.programme.depth);
      if (data.stop) this.running = false;
    };
  }

  /** @param {State} state */
  turn(state) {
    try {
      this.receiver.turn(state);
      this.state = state;
    } catch (error) {
      this.port.postMessage({ fault: String(/** @type {Error} */ (error).message) });
    }
  }

  /** @param {Float32Array[][]} _inputs @param {Float32Array[][]} outputs */
  process(_inputs, [[out, ...others]]) {
    const began = Date.now();
    const { pressure, seen } = this;
    if (pressure.length !== out.length) this.pressure = new Float64Array(out.length);
    this.receiver.play(this.pressure, this.programme);
    const gain = this.state.magnify / this.figures.full_scale;
    const louder = Math.min(Math.max(this.running ? this.state.volume : 0, 0), 1);
    const towards = 1 - Math.exp(-1 / (SMOOTH * sampleRate));
    for (let n = 0; n < out.length; n++) {
      const pascals = this.pressure[n];
      this.volume += (louder - this.volume) * towards;
      out[n] = this.limiter.pass(Number.isFinite(pascals) ? pascals * gain : 0) * this.volume;
      seen.power += pascals * pascals;
      seen.peak = Math.max(seen.peak, Math.abs(out[n]));
    }
    for (const other of others) other.set(out);
    seen.samples += out.length;
    seen.busy += Date.now() - began;
    if (seen.samples >= REPORT * sampleRate) this.report();
    return this.running || this.volume > 1e-4;
  }

  report() {
    const { samples, power, peak, busy } = this.seen;
    this.port.postMessage({
      ...this.receiver.stand(),
      level: pressureLevel(this.figures.ear, Math.sqrt(power / samples)),
      peak,
      held: this.limiter.held(),
      load: busy / (1e3 * (samples / sampleRate)),
    });
    this.seen = { samples: 0, power: 0, peak: 0, busy: 0 };
  }
}

registerProcessor("set-that-plays", Set);
