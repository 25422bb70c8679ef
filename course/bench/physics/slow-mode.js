/** The network reduced to the one mode that is slow beside the carrier, as `solutions/unit07_oscillation/slow_mode`. */

import { add, complex, div, mul, scale, sub } from "./complex.js";
import { modes, nearest, ticklerLeakage } from "./network.js";

/** @typedef {import("./complex.js").Complex} Complex */
/** @typedef {import("./network.js").Network} Network */

/**
 * @typedef {object} Stage as `Stage` in Python; SI units. A perveance of 0: no valve, only what lies across grid and leak.
 * @property {number} amplification_factor
 * @property {number} perveance
 * @property {number} offset
 * @property {number} supply
 * @property {number} load_resistance
 * @property {number} bypass_capacitance
 * @property {number} leak_resistance
 * @property {number} leak_return
 * @property {number} grid_capacitance
 * @property {number} zero_current
 * @property {number} slope_voltage
 */

/**
 * The mode scaled to 1 V on the grid, and what all other modes do at once.
 *
 * @typedef {object} Net
 * @property {Complex} rate 1/s, in the frame
 * @property {Complex} anodeCurrent siemens: what the anode passes for each volt of the mode
 * @property {Complex} byAnode V/s for each ampere that the anode passes beyond its slope
 * @property {Complex} byGrid V/s for each ampere that the grid takes
 * @property {Complex} byEmf V/s for each volt in the aerial
 * @property {Complex} gridAtOnce for each volt in the aerial
 * @property {Complex} anodeAtOnce siemens, for each volt in the aerial
 * @property {Complex} anodeByGrid for each ampere that the grid takes
 * @property {Complex} gridByAnode ohm
 * @property {Complex} gridByGrid ohm
 * @property {Complex} echo how far the rest of the network is from a tickler and throttle by themselves
 * @property {number} slope siemens: the valve's at rest
 * @property {number} gridSlope siemens: the grid's at rest
 * @property {number} resistance ohm: the tickler's
 * @property {number} leakage henry
 * @property {number} throttle farad
 * @property {number} coil a fraction
 * @property {number} tunedTickler henry
 */

const EMF = 0;
const ANODE = 1;
const GRID = 2;
const TOO_NEAR = 2 * Math.PI * 50e3; // radian a second: a second mode as near as this would have to be followed too

/**
 * @param {Network} n valve and grid in it by their slopes at rest
 * @param {Stage} stage
 * @param {number} reference hertz, of the frame
 * @param {import("./network.js").Mode[]} [all] the network's modes, if they are known
 * @returns {Net}
 * @throws {RangeError} in words, where the reduction would not hold
 */
export function slowMode(n, stage, reference, all = modes(n)) {
  const carrier = complex(0, 2 * Math.PI * reference);
  const { slow, fast, apart } = nearest(all, reference);
  if (apart < TOO_NEAR) {
    throw new RangeError("The aerial's circuit is tuned close to the set's: loosen the coupling or shorten the aerial.");
  }
  const leakage = ticklerLeakage(n);
  const own = add(
    complex(n.tickler_resistance),
    scale(carrier, leakage),
    div(complex(1), scale(carrier, n.throttle_capacitance)),
  );
  if (own.im >= 0) {
    throw new RangeError("Tickler and throttle resonate below the carrier: take less throttle or fewer turns.");
  }
  const atOnce = (/** @type {"grid" | "tickler"} */ where, /** @type {number} */ source) =>
    fast.reduce((total, mode) => add(total, div(mode[where][source], sub(carrier, mode.pole))), complex(0));
  const stands = add(complex(1), scale(own, n.transconductance / stage.amplification_factor));
  const opposite = (/** @type {Complex} */ a) => scale(a, -1);
  return {
    rate: sub(slow.pole, carrier),
    anodeCurrent: opposite(div(slow.tickler[EMF], slow.grid[EMF])),
    byAnode: slow.grid[ANODE],
    byGrid: slow.grid[GRID],
    byEmf: slow.grid[EMF],
    gridAtOnce: atOnce("grid", EMF),
    anodeAtOnce: opposite(atOnce("tickler", EMF)),
    anodeByGrid: opposite(atOnce("tickler", GRID)),
    gridByAnode: atOnce("grid", ANODE),
    gridByGrid: atOnce("grid", GRID),
    echo: sub(opposite(mul(stands, atOnce("tickler", ANODE))), complex(1)),
    slope: n.transconductance,
    gridSlope: n.grid_conductance - (stage.perveance > 0 ? 1 / stage.leak_resistance : 0),
    resistance: n.tickler_resistance,
    leakage,
    throttle: n.throttle_capacitance,
    coil: (-carrier.im * (leakage + (4 / 9) * stage.amplification_factor * n.tuned_tickler)) / own.im,
    tunedTickler: n.tuned_tickler,
  };
}
