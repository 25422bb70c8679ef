/** Ways to turn reaction up, as `CONTROLS` in `solutions/unit06_reaction/reaction_controls`: what each knob makes of the network. */

/** @typedef {import("./network.js").Network} Network */
/** @typedef {"throttle" | "swinging" | "shunt"} ControlName */

/**
 * @typedef {object} Control
 * @property {(n: Network, value: number) => Network} turned the network with its knob so; n itself as wound, the knob never turned
 * @property {(value: number) => number} counted of what the determinant is a polynomial, of second degree at most; its own inverse
 * @property {number} unit about its size at the edge
 */

const itself = (/** @type {number} */ value) => value;

/** @type {Record<ControlName, Control>} */
export const CONTROLS = {
  throttle: { turned: (n, throttle_capacitance) => ({ ...n, throttle_capacitance }), counted: itself, unit: 1e-10 },
  // The tickler swings away from the aerial's winding as it does from the tuned one.
  swinging: {
    turned: (n, mutual) => ({ ...n, tuned_tickler: mutual, aerial_tickler: (n.aerial_tickler * mutual) / n.tuned_tickler }),
    counted: itself,
    unit: 1e-5,
  },
  shunt: { turned: (n, resistance) => ({ ...n, tickler_conductance: 1 / resistance }), counted: (value) => 1 / value, unit: 1e-3 },
};
