/** The set that plays, in the audio thread. It is sent states and the programme, and reports what is to be seen. */

import { receiverOf } from "../physics/bench.js";
import { pressureLevel } from "../physics/ear.js";
import { createAutomaticGain } from "./automatic-gain.js";
import { createLimiter } from "./limiter.js";

/** @typedef {import("../physics/bench.js").Figures} Figures */
/** @typedef {import("../physics/bench.js").State} State */

const REPORT = 0.05; // second
const SMOOTH = 0.008; // second: in which a change of loudness is made
const SECONDS_APART = 1.7; // what one station sends, another sent so long ago
const WARMING = 40; // blocks played to nobody: a browser makes code fast only once it has run for a while
const SILENT = 1e-4;

/** Let the audio thread have the set; only there can its class be made. */
export function registerSet() {
  class SetThatPlays extends AudioWorkletProcessor {
    /** @param {{processorOptions: {figures: Figures, state: State}}} options */
    constructor({ processorOptions: { figures, state } }) {
      super();
      this.figures = figures;
      this.receiver = receiverOf(figures, sampleRate);
      this.limiter = createLimiter(sampleRate);
      this.state = state;
      this.volume = 0;
      this.asLife = 1 / figures.full_scale;
      this.automatic = createAutomaticGain(sampleRate, this.asLife);
      this.gain = (state.magnify ?? 0) * this.asLife;
      this.pressure = new Float64Array(128);
      /** @type {Float32Array} */ this.sent = new Float32Array(1);
      this.running = true;
      this.seen = { samples: 0, power: 0, peak: 0, busy: 0 };
      this.programme = (/** @type {number} */ station, /** @type {number} */ sample) =>
        this.sent[Math.floor(sample + station * SECONDS_APART * sampleRate) % this.sent.length];
      this.port.onmessage = ({ data }) => this.told(data);
      this.receiver.turn(state);
      for (let block = 0; block < WARMING; block++) this.receiver.play(this.pressure, this.programme);
      this.receiver.restart(state, 0);
    }

    /** @param {{state?: State, programme?: Float32Array, stop?: boolean}} data */
    told({ state, programme, stop }) {
      if (state) {
        this.state = state;
        this.receiver.turn(state);
      }
      if (programme) this.sent = programme.map((sample) => sample * this.figures.programme.depth);
      if (stop) this.running = false;
    }

    /** @param {Float32Array[][]} _inputs @param {Float32Array[][]} outputs */
    process(_inputs, [[out, ...others]]) {
      const began = Date.now();
      if (this.pressure.length !== out.length) this.pressure = new Float64Array(out.length);
      this.receiver.play(this.pressure, this.programme);
      if (!Number.isFinite(this.pressure[out.length - 1])) {
        this.pressure.fill(0);
        this.receiver.restart(this.state, 0);
      }
      this.sendOut(out);
      for (const other of others) other.set(out);
      this.seen.busy += Date.now() - began;
      if (this.seen.samples >= REPORT * sampleRate) this.report();
      return this.running || this.volume > SILENT;
    }

    /** Pascals through gain, limiter and volume to what is played. @param {Float32Array} out */
    sendOut(out) {
      const { pressure, limiter, seen } = this;
      const automatic = this.automatic.after(pressure);
      const gain = this.state.magnify === null ? automatic : this.state.magnify * this.asLife;
      const volume = this.running ? Math.min(Math.max(this.state.volume, 0), 1) : 0;
      const towards = 1 - Math.exp(-1 / (SMOOTH * sampleRate));
      for (let n = 0; n < out.length; n++) {
        this.gain += (gain - this.gain) * towards;
        this.volume += (volume - this.volume) * towards;
        out[n] = limiter.pass(pressure[n] * this.gain) * this.volume;
        seen.power += pressure[n] * pressure[n];
        seen.peak = Math.max(seen.peak, Math.abs(out[n]));
      }
      seen.samples += out.length;
    }

    report() {
      const { samples, power, peak, busy } = this.seen;
      this.port.postMessage({
        ...this.receiver.stand(),
        level: pressureLevel(this.figures.ear, Math.sqrt(power / samples)),
        peak,
        held: this.limiter.held(),
        louder: 20 * Math.log10(this.gain / this.asLife),
        load: busy / (1e3 * (samples / sampleRate)),
      });
      this.seen = { samples: 0, power: 0, peak: 0, busy: 0 };
    }
  }
  registerProcessor("set-that-plays", SetThatPlays);
}
