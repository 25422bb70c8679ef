/** The page's side of the sound: starts and stops it, hands it the knobs, brings it the stations' programme. */

import { threadsAddress } from "./text.js";

/** @typedef {import("../physics/bench.js").Figures} Figures */
/** @typedef {import("../physics/bench.js").State} State */

/**
 * What the sound tells, some twenty times a second.
 *
 * @typedef {object} Report
 * @property {number} level decibel of sound pressure in the ear, before any limiter
 * @property {number} peak 0 to 1: the greatest sample that was sent out
 * @property {number} held decibel by which the limiter holds the sound down
 * @property {number} louder decibel by which the sound is stronger than in life, before volume and limiter
 * @property {number} grid volt, crest
 * @property {number} bias volt
 * @property {number} beat hertz of the set's swing above the nearest station
 * @property {boolean} oscillates
 * @property {string} fault why the knobs were not followed, if they were not
 * @property {number} load share of the time there is that the sound takes to work out
 */

const FADE = 0.05; // second
const PATIENCE = 8e3; // milliseconds that a sound device is given to answer

/** @param {string} address of a classic script that leaves the programme in `SALTMARSH_PROGRAMME` @returns {Promise<string>} */
function programmeFrom(address) {
  const left = () => /** @type {any} */ (globalThis).SALTMARSH_PROGRAMME;
  if (left()) return Promise.resolve(left());
  return new Promise((resolve, reject) => {
    const script = document.createElement("script");
    script.src = address;
    script.onload = () => resolve(left());
    script.onerror = () => reject(new Error("The stations' programme is missing beside the page: only carriers are heard."));
    document.head.append(script);
  });
}

/** The context begins to run, or a sentence says why nothing is heard: without a device some browsers wait for ever. @param {AudioContext} context */
function awake(context) {
  const silent = "no sound device answers. Connect one, or turn it on, and press Listen again.";
  return Promise.race([context.resume(), new Promise((_, reject) => setTimeout(() => reject(new Error(silent)), PATIENCE))]);
}

/** @param {string} base64 */
const bytesOf = (base64) => Uint8Array.from(atob(base64), (digit) => digit.charCodeAt(0)).buffer;

/**
 * The set as a node of an audio context, live or offline.
 *
 * @param {BaseAudioContext} context
 * @param {Figures} figures
 * @param {State} state
 */
export async function setNode(context, figures, state) {
  await context.audioWorklet.addModule(threadsAddress());
  return new AudioWorkletNode(context, "set-that-plays", {
    numberOfInputs: 0,
    outputChannelCount: [2],
    processorOptions: { figures, state },
  });
}

/**
 * @param {Figures} figures
 * @param {{programme: string, onReport?: (report: Report) => void, onFault?: (sentence: string) => void}} options
 */
export function createPlayer(figures, { programme, onReport = () => {}, onFault = () => {} }) {
  /** @type {AudioContext | null} */ let context = null;
  /** @type {AudioWorkletNode | null} */ let node = null;
  /** @type {State | null} */ let last = null;

  /** @param {AudioContext} sounding @param {AudioWorkletNode} to */
  async function bringProgramme(sounding, to) {
    try {
      const decoded = await sounding.decodeAudioData(bytesOf(await programmeFrom(programme)));
      to.port.postMessage({ programme: decoded.getChannelData(0) });
    } catch (error) {
      onFault(/** @type {Error} */ (error).message);
    }
  }

  return {
    get running() {
      return node !== null;
    },

    /** Call it from a click or a key: browsers let no page begin to sound by itself. @param {State} state */
    async start(state) {
      last = state;
      if (context) return;
      context = new AudioContext({ latencyHint: "interactive" });
      const sounding = context;
      let made;
      try {
        [made] = await Promise.all([setNode(sounding, figures, state), awake(sounding)]);
      } catch (fault) {
        context = null;
        sounding.close();
        throw fault;
      }
      if (context !== sounding) return;
      node = made;
      node.port.onmessage = ({ data }) => {
        if (data.fault) onFault(data.fault);
        onReport(data);
      };
      node.port.postMessage({ state: last });
      node.connect(sounding.destination);
      bringProgramme(sounding, node);
    },

    /** @param {State} state */
    set(state) {
      last = state;
      node?.port.postMessage({ state });
    },

    async stop() {
      const [sounding, playing] = [context, node];
      context = node = null;
      playing?.port.postMessage({ stop: true });
      if (playing) await new Promise((resolve) => setTimeout(resolve, 1e3 * FADE));
      await sounding?.close();
    },
  };
}
