/** The isolating stage between aerial and reaction set: what it carries forward, and what of an oscillation gets back. */

import { abs, add, complex, div, mul, scale } from "./complex.js";

/** @typedef {import("./complex.js").Complex} Complex */
/** @typedef {import("./network.js").Network} Network */

/**
 * @typedef {object} Ahead SI units
 * @property {number} amplification_factor
 * @property {number} anode_resistance
 * @property {number} anode_grid farad, from anode to grid
 * @property {number} grid_resistance
 * @property {number} winding_inductance in its anode
 * @property {number} stray farad, from the tuned circuit to the aerial's lead
 * @property {number} aerial_resistance
 * @property {number} aerial_capacitance
 * @property {number} aerial_inductance
 */

/** Impedance all the way round the aerial, without a coil. @param {Ahead} stage @param {number} angular radian a second @returns {Complex} */
const aerialImpedance = (stage, angular) =>
  complex(stage.aerial_resistance, angular * stage.aerial_inductance - 1 / (angular * stage.aerial_capacitance));

/** Volts in the set's first mesh for each volt in the aerial; 1 for a set with no stage ahead. @param {Ahead | undefined} stage @param {number} frequency hertz */
export function carried(stage, frequency) {
  if (!stage) return 1;
  const { re, im } = aerialImpedance(stage, 2 * Math.PI * frequency);
  return (stage.amplification_factor * stage.grid_resistance) / Math.hypot(stage.grid_resistance + re, im);
}

/**
 * Current in amperes r.m.s. that a swing on the tuned circuit leaves in the aerial ahead of the stage.
 *
 * Source: `anode_swing` and `grid_swing` of `solutions/unit09_feedback_receivers/isolating_stage`.
 *
 * @param {Ahead} stage
 * @param {Network} n
 * @param {number} frequency hertz
 * @param {number} swing volt, crest
 */
export function currentAhead(stage, n, frequency, swing) {
  const angular = 2 * Math.PI * frequency;
  const induced = -angular * n.aerial_tuned * angular * n.tuning_capacitance * swing;
  const behind = complex(stage.anode_resistance, angular * stage.winding_inductance);
  const anode = div(complex(induced * stage.anode_resistance), behind);
  const aerial = aerialImpedance(stage, angular);
  const admittance = add(div(complex(1), aerial), complex(1 / stage.grid_resistance));
  const brought = mul(complex(0, angular), add(scale(anode, stage.anode_grid), complex(stage.stray * swing)));
  const grid = div(brought, add(admittance, complex(0, angular * (stage.anode_grid + stage.stray))));
  return abs(div(grid, aerial)) / Math.SQRT2;
}
