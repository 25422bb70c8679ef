/** The network reduced to the one mode that is slow beside the carrier, as `solutions/unit07_oscillation/slow_mode`. */

import { add, complex, div, scale, sub } from "./complex.js";
import { drawnFromAnode, modes, nearest } from "./network.js";

/** @typedef {import("./complex.js").Complex} Complex */
/** @typedef {import("./network.js").Mode} Mode */
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
 * @property {number} grid_anode
 * @property {number} grid_filament
 */

/**
 * The mode scaled to 1 V on the valve's grid, and what all other modes do at once; the drive is the voltage that the valve's
 * current obeys.
 *
 * @typedef {object} Net
 * @property {Complex} rate 1/s, in the frame
 * @property {Complex} tuned voltage of the tuned circuit for each volt of the mode
 * @property {Complex} drive for each volt of the mode
 * @property {Complex} byAnode V/s for each ampere that the anode passes beyond its slope
 * @property {Complex} byGrid V/s for each ampere that the grid takes
 * @property {Complex} byEmf V/s for each volt in the aerial
 * @property {Complex} gridAtOnce for each volt in the aerial
 * @property {Complex} driveAtOnce for each volt in the aerial
 * @property {Complex} gridByAnode ohm
 * @property {Complex} gridByGrid ohm
 * @property {Complex} driveByAnode ohm
 * @property {Complex} driveByGrid ohm
 * @property {Complex} secondDrive ohm: drive for each ampere of the anode current's second harmonic
 * @property {Complex} thirdDrive
 * @property {Complex} fourthDrive
 * @property {Complex} secondGrid ohm: grid voltage, likewise
 * @property {Complex} thirdGrid
 * @property {Complex} fourthGrid
 * @property {number} slope siemens: the valve's at rest
 * @property {number} gridSlope siemens: the grid's at rest
 * @property {number} gridNode farad: all that meets at the grid
 * @property {number} gridFed of a slow change of the anode's voltage, what its capacitance brings to the grid
 */

const EMF = 0;
const FROM_TUNED = 1;
const FROM_ANODE = 2;
const OPEN = 1e15; // ohm: the anode's resistance where the valve's current is put in from outside
const TOO_NEAR = 2 * Math.PI * 50e3; // radian a second: a second mode as near as this would have to be followed too

/** How a grid's voltage is made up of the tuned circuit's and the anode's, and how its current is shared. @param {Stage} stage */
function shares({ grid_capacitance, grid_anode, grid_filament }) {
  const node = grid_capacitance + grid_anode + grid_filament;
  return { node, share: grid_capacitance / node, fed: grid_anode / node };
}

/**
 * The network that the march goes by: the grid's conductance lies at the grid itself, behind its condenser.
 *
 * @param {Network} n valve and grid in it by their slopes at rest, as weak signals find them
 * @param {Stage} stage
 * @returns {Network}
 */
export function behindGridCondenser(n, stage) {
  const { share, fed } = shares(stage);
  const across = (n.grid_conductance / share) * fed;
  return {
    ...n,
    grid_conductance: n.grid_conductance + across,
    grid_anode_conductance: -across,
    anode_resistance: 1 / (1 / n.anode_resistance + across + (across * fed) / share),
  };
}

/**
 * @param {Network} n valve and grid in it by their slopes at rest, as weak signals find them
 * @param {Stage} stage
 * @param {number} reference hertz, of the frame
 * @param {Mode[]} [all] the modes of the network that the march goes by, if they are known
 * @returns {Net}
 * @throws {RangeError} in words, where the reduction would not hold
 */
export function slowMode(n, stage, reference, all = modes(behindGridCondenser(n, stage))) {
  const carrier = complex(0, 2 * Math.PI * reference);
  const { slow, fast, apart } = nearest(all, reference);
  if (apart < TOO_NEAR) {
    throw new RangeError("The aerial's circuit is tuned close to the set's: loosen the coupling or shorten the aerial.");
  }
  const { node, share, fed } = shares(stage);
  /** @typedef {{tuned: Complex, anode: Complex}} Voltages */
  const onGrid = (/** @type {Voltages} */ v) => add(scale(v.tuned, share), scale(v.anode, fed));
  const inDrive = (/** @type {Voltages} */ v) => add(onGrid(v), scale(v.anode, 1 / stage.amplification_factor));
  /** @type {Record<"emf" | "anode" | "grid", (mode: Mode) => Voltages>} */
  const pushedBy = {
    emf: ({ tuned, anode }) => ({ tuned: tuned[EMF], anode: anode[EMF] }),
    anode: ({ tuned, anode }) => ({ tuned: tuned[FROM_ANODE], anode: anode[FROM_ANODE] }),
    grid: ({ tuned, anode }) => ({
      tuned: add(scale(tuned[FROM_TUNED], share), scale(tuned[FROM_ANODE], fed)),
      anode: add(scale(anode[FROM_TUNED], share), scale(anode[FROM_ANODE], fed)),
    }),
  };
  const atOnce = (/** @type {(v: Voltages) => Complex} */ seen, /** @type {keyof typeof pushedBy} */ source) =>
    fast.reduce((total, mode) => add(total, div(seen(pushedBy[source](mode)), sub(carrier, mode.pole))), complex(0));
  const shape = pushedBy.grid(slow);
  const byGrid = onGrid(shape);
  const alone = { ...n, transconductance: 0, anode_resistance: OPEN };
  const [second, third, fourth] = [2, 3, 4].map((harmonic) => drawnFromAnode(alone, scale(carrier, harmonic)));
  const conductance = n.grid_conductance / share ** 2;
  return {
    rate: sub(slow.pole, carrier),
    tuned: div(shape.tuned, byGrid),
    drive: div(inDrive(shape), byGrid),
    byAnode: onGrid(pushedBy.anode(slow)),
    byGrid,
    byEmf: onGrid(pushedBy.emf(slow)),
    gridAtOnce: atOnce(onGrid, "emf"),
    driveAtOnce: atOnce(inDrive, "emf"),
    gridByAnode: atOnce(onGrid, "anode"),
    gridByGrid: atOnce(onGrid, "grid"),
    driveByAnode: atOnce(inDrive, "anode"),
    driveByGrid: atOnce(inDrive, "grid"),
    secondDrive: inDrive(second),
    thirdDrive: inDrive(third),
    fourthDrive: inDrive(fourth),
    secondGrid: onGrid(second),
    thirdGrid: onGrid(third),
    fourthGrid: onGrid(fourth),
    slope: n.transconductance / share,
    gridSlope: conductance - (stage.perveance > 0 ? 1 / stage.leak_resistance : 0),
    gridNode: node,
    gridFed: fed,
  };
}
