/** How loud the sound is when it is first asked for. */

export const STEPS = 100; // of the volume's slider
export const FIRST = 70; // where it stands then

/** What a place of the slider makes of the sound. @param {number} place */
export const loudness = (place) => (place / STEPS) ** 2;

/** @type {Pick<import("../physics/bench.js").State, "volume" | "magnify">} */
export const FIRST_LEVEL = { volume: loudness(FIRST), magnify: null };
