/** One player for all sets: those with windings and the quenched one have nothing in common but the ear. */

/** @typedef {import("./bench.js").State} State */
/** @typedef {ReturnType<typeof import("./receiver.js").createReceiver> | ReturnType<typeof import("./bursting.js").createBursting>} Player */

const JOINT = 0.004; // second: in which the last sound of a set that was changed dies away
const FAINT = 1e-9; // pascal

/** @param {(state: State) => Player} playerOf @param {number} sampleRate hertz */
export function oneOf(playerOf, sampleRate) {
  const fade = Math.exp(-1 / (JOINT * sampleRate));
  /** @type {Player} */ let playing;
  let jump = 0; // pascal: what is left of the last player's sound
  let last = 0;
  return {
    /** @param {State} to */
    turn(to) {
      const next = playerOf(to);
      if (playing && next !== playing) {
        jump = last;
        next.restart(to, 0);
      } else {
        next.turn(to);
      }
      playing = next;
    },

    /** @param {State} to @param {number} swing volt, crest */
    restart(to, swing) {
      jump = last = 0;
      playing = playerOf(to);
      playing.restart(to, swing);
    },

    /** @param {Float32Array | Float64Array} out @param {import("./receiver.js").Programme} programme */
    play(out, programme) {
      playing.play(out, programme);
      for (let n = 0; jump !== 0 && n < out.length; n++) {
        out[n] += jump;
        jump = Math.abs(jump) > FAINT ? jump * fade : 0;
      }
      last = out[out.length - 1];
    },

    stand: () => playing.stand(),
  };
}
