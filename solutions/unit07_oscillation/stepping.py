"""The march of the envelope through time, step by step; compiled by numba where that is installed.

The mode's own growth and turning are followed exactly through a step. What pushes it is taken at the step's start and again
at its first guessed end (S. M. Cox and P. C. Matthews, Journal of Computational Physics 176, 2002, their scheme of
second order, from memory); the valve's push is taken to turn, within the step, as fast as the envelope last did.
The grid's current, which an eighth of a volt multiplies by 2.7, would want very short steps. But each bit of charge
that it takes lowers bias and crest, and with them the current that brings the next: the current's reciprocal then
obeys a linear equation, and the charge taken in a step is known.

Three small things depend on the valve's answer, which depends on them: found last time, they serve the next. They are
kept together as `lasting`: what the grid's voltage has beside the mode, as a share of it; by what share the valve's answer
differs from that of its slope at rest; and what the current's overtones add to the grid at the carrier's crest, in volts.
"""
import cmath
import math

import numpy as np

from solutions.unit07_oscillation.cycle import ANGLES, GRID_LIMIT, GRID_POINTS, LOWEST_ANGLE, LOWEST_SHARE, SHARES

try:
    from numba import njit
except ImportError:  # the same, slower

    def njit(**_):
        return lambda function: function


COMPILED = {"cache": True, "error_model": "numpy", "fastmath": True}
INTO_ITS_CALLER = {**COMPILED, "inline": "always"}
MOST_TURN = 1.0  # radian a step, of mode and envelope in their frame
FRACTIONS = tuple(1 / n for n in range(14, 2, -1))  # of the exponential's series
TINY = 1e-30  # volt
MOST_FALL = 500.0  # of the grid current's logarithm, within a step: beyond it nothing is left


@njit(**INTO_ITS_CALLER)
def through_a_step(exponent):
    """What becomes, by a step's end, of 1 at its start, of a push of 1, and of one that grows from 0 to 1."""
    ramp = 0j
    for fraction in FRACTIONS:
        ramp = 1 + ramp * (exponent * fraction)
    ramp = ramp / 2
    push = 1 + exponent * ramp
    return 1 + exponent * push, push, ramp


@njit(**INTO_ITS_CALLER)
def cubic_weights(part):
    """Weights of four neighbouring nodes, `part` of the way from the second to the third (Catmull and Rom's spline)."""
    rest = 1 - part
    return (
        -0.5 * part * rest * rest,
        1 + part * part * (1.5 * part - 2.5),
        1 + rest * rest * (1.5 * rest - 2.5),
        -0.5 * rest * part * part,
    )


@njit(**INTO_ITS_CALLER)
def anode_currents(crest, steady, throttle, amplification_factor, perveance, table):
    """Mean anode current, the carrier's in siemens of `crest`, and overtones; `throttle` in siemens at the carrier."""
    size = math.hypot(steady, crest)
    angle = math.atan2(steady, crest)
    if angle <= LOWEST_ANGLE:
        return 0.0, 0j, 0.0
    scale = perveance * math.sqrt(size)
    kappa = amplification_factor * throttle / scale
    share = max(kappa / (1 + kappa), LOWEST_SHARE)
    row = (angle - LOWEST_ANGLE) * ((ANGLES - 1) / (0.5 * math.pi - LOWEST_ANGLE))
    column = (share - LOWEST_SHARE) * ((SHARES - 1) / (1 - LOWEST_SHARE))
    top, left = min(int(row), ANGLES - 2), min(int(column), SHARES - 2)
    down, across = cubic_weights(row - top), cubic_weights(column - left)
    mean, real, imaginary, overtones = 0.0, 0.0, 0.0, 0.0
    for i in range(4):
        for j in range(4):
            weight = down[i] * across[j]
            mean += weight * table[top + i, left + j, 0]
            real += weight * table[top + i, left + j, 1]
            imaginary += weight * table[top + i, left + j, 2]
            overtones += weight * table[top + i, left + j, 3]
    return scale * size * max(mean, 0.0), scale * complex(real, imaginary), scale * size * overtones


@njit(**INTO_ITS_CALLER)
def anode_push(linear, dropped, drift, frequency, excess, net, stage, table):
    """Current beyond the slope at rest, mean current, how far the valve's answer is from that slope, overtone on the grid.

    `linear` is the current that slopes at rest would give, `dropped` the carrier left on the grid condenser, `drift` the
    steady drive, `excess` the answer found last. The overtone is what the current's harmonics, by way of tickler and
    tuned winding, add to the grid's voltage at the carrier's crest.
    """
    reactance = frequency * net.leakage - 1 / (frequency * net.throttle)
    stands = 1 + complex(net.resistance, reactance) * net.slope / stage.amplification_factor
    drive = (linear * stands / net.slope - dropped) / (1 - net.echo * excess)
    mean, share, overtones = anode_currents(
        abs(drive), drift, -1 / reactance, stage.amplification_factor, stage.perveance, table
    )
    share = share / (1 + net.resistance * share / stage.amplification_factor)
    excess = stands * share / net.slope - 1
    overtone = frequency * net.tuned_tickler * overtones
    return net.slope * (excess * drive - dropped), mean, excess, overtone


@njit(**INTO_ITS_CALLER)
def grid_law(crest, bias, slope_voltage, table):
    """Logarithm of the mean grid current, in zero currents; and I1/I0."""
    ratio = crest / slope_voltage
    place = min(math.log1p(ratio) / math.log1p(GRID_LIMIT), 1.0) * (GRID_POINTS - 1)
    node = min(int(place), GRID_POINTS - 2)
    part = place - node
    logarithm = (1 - part) * table[node, 0] + part * table[node + 1, 0]
    share = (1 - part) * table[node, 1] + part * table[node + 1, 1]
    return bias / slope_voltage + ratio + logarithm, 0.5 * ratio * share


@njit(**INTO_ITS_CALLER)
def charge_taken(level, level_free, steer, by_grid, step, stage):
    """Charge through the grid in a step, at whose ends the current's logarithm would be these if none were taken."""
    gain = max(level_free - level, -MOST_FALL)
    yielding = stage.slope_voltage / (1 / stage.grid_capacitance - 2 * steer * steer * by_grid)
    average = (1 - math.exp(-gain)) / gain if abs(gain) > 1e-9 else 1.0
    supplied = level + math.log(stage.zero_current * step / yielding * average)
    larger = max(supplied, -gain)
    return yielding * (gain + larger + math.log(math.exp(supplied - larger) + math.exp(-gain - larger)))


@njit(**INTO_ITS_CALLER)
def state_pushes(mode, emf, bias, anode, frequency, passing, lasting, net, stage, anode_nodes, grid_nodes):
    """What pushes mode and anode; the grid's direction, its current's logarithm, I1/I0; and what changes little by little.

    `passing` is the mean grid current of the last step; the valve's push is without what the grid takes in this one.
    """
    aside, excess, overtone = lasting
    alone = mode + net.grid_at_once * emf
    grid = alone * (1 + aside)
    crest = abs(grid) + TINY
    along = grid / crest
    level, steer = grid_law(crest, bias + overtone.real, stage.slope_voltage, grid_nodes)
    at_rest = net.grid_slope * grid
    taken = 2 * steer * passing * along
    dropped = (taken + grid / stage.leak_resistance) / complex(0.0, frequency * stage.grid_capacitance)
    linear = net.anode_current * mode + net.anode_at_once * emf + net.anode_by_grid * (taken - at_rest)
    drift = bias + anode / stage.amplification_factor + stage.offset
    beyond, mean, excess, overtone = anode_push(linear, dropped, drift, frequency, excess, net, stage, anode_nodes)
    charging = ((stage.supply - anode) / stage.load_resistance - mean) / stage.bypass_capacitance
    if abs(alone) > TINY:
        aside = (net.grid_by_anode * beyond + net.grid_by_grid * (taken - at_rest)) / alone
    return net.by_anode * beyond - net.by_grid * at_rest, charging, along, level, steer, (aside, excess, complex(overtone))


@njit(**COMPILED)
def march(emf, step, carrier, mode, bias, anode, turning, passing, lasting, net, stage, anode_nodes, grid_nodes):
    """Grid voltage, bias and anode voltage after each of the steps to the second and later samples of `emf`."""
    leaking = step / (stage.leak_resistance * stage.grid_capacitance)
    anode_rate = -(1 / stage.load_resistance + net.slope / stage.amplification_factor) / stage.bypass_capacitance
    passed = -anode_rate * step
    anode_whole = -math.expm1(-passed) / passed
    anode_ramp = (1 - anode_whole) / passed if passed > 1e-4 else 0.5
    keep, whole, ramp = through_a_step(net.rate * step)
    by_emf, by_grid = net.by_emf * step, net.by_grid
    grids = np.empty(len(emf) - 1, np.complex128)
    biases, anodes = np.empty((2, len(emf) - 1))
    grid = (mode + net.grid_at_once * emf[0]) * (1 + lasting[0])
    for n in range(len(emf) - 1):
        here, there = emf[n], emf[n + 1]
        turned = cmath.rect(1.0, turning * step)
        _, turn_whole, turn_ramp = through_a_step(complex(net.rate.real, net.rate.imag - turning) * step)
        push, charging, along, level, steer, lasting = state_pushes(
            mode, here, bias, anode, carrier + turning, passing, lasting, net, stage, anode_nodes, grid_nodes
        )
        mode_free = keep * mode + by_emf * (whole * here + ramp * (there - here)) + step * turned * turn_whole * push
        bias_free = bias + (stage.leak_return - bias) * leaking
        crest_free = abs((mode_free + net.grid_at_once * there) * (1 + lasting[0]))
        level_free, _ = grid_law(crest_free, bias_free + lasting[2].real, stage.slope_voltage, grid_nodes)
        charge = charge_taken(level, level_free, steer, by_grid.real, step, stage)
        mode_then = mode_free + 2 * steer * charge * by_grid * turned * turn_whole * along
        bias_then = bias_free - charge / stage.grid_capacitance
        anode_then = anode + step * anode_whole * charging

        push_then, charging_then, along_then, _, steer_then, lasting = state_pushes(
            mode_then, there, bias_then, anode_then, carrier + turning, charge / step, lasting, net, stage, anode_nodes,
            grid_nodes,
        )  # fmt: skip
        mode_free += step * turn_ramp * (push_then - turned * push)
        bias_free = bias + (stage.leak_return - (bias + bias_then) / 2) * leaking
        crest_free = abs((mode_free + net.grid_at_once * there) * (1 + lasting[0]))
        level_free, _ = grid_law(crest_free, bias_free + lasting[2].real, stage.slope_voltage, grid_nodes)
        steer = (steer + steer_then) / 2
        charge = charge_taken(level, level_free, steer, by_grid.real, step, stage)
        mode = mode_free + 2 * steer * charge * by_grid * ((turn_whole - turn_ramp) * turned * along + turn_ramp * along_then)
        bias = bias_free - charge / stage.grid_capacitance
        passing = charge / step
        anode = anode_then + step * anode_ramp * (charging_then - charging - anode_rate * (anode_then - anode))
        after = (mode + net.grid_at_once * there) * (1 + lasting[0])
        turning = min(max(cmath.phase(after * grid.conjugate()), -MOST_TURN), MOST_TURN) / step
        grid = after
        grids[n], biases[n], anodes[n] = grid, bias, anode
    return grids, biases, anodes, mode, bias, anode, turning, passing, lasting
