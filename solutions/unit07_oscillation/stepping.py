"""The march of the envelope through time, step by step; compiled by numba where that is installed.

The mode's own growth and turning are followed exactly through a step. What pushes it is taken at the step's start and again
at its first guessed end (S. M. Cox and P. C. Matthews, Journal of Computational Physics 176, 2002, their scheme of
second order, from memory); the valve's push is taken to turn, within the step, as fast as the envelope last did.
The grid's current, which an eighth of a volt multiplies by 2.7, would want very short steps. But each bit of charge
that it takes lowers bias and crest, and with them the current that brings the next: the current's reciprocal then
obeys a linear equation, and the charge taken in a step is known.

A few small things depend on the valve's answer, which depends on them: found last time, they serve the next. They are
kept together as `lasting`: what the grid's voltage has beside the mode, as a share of it; by how much the valve's slope to
the carrier differs from that at rest; what its current's overtones add to the grid's crest, in volts, with, as
imaginary part, by what share they bend it more sharply; and the overtones of its drive.
"""

import cmath
import math

import numpy as np

from solutions.unit07_oscillation.compiling import COMPILED, INTO_ITS_CALLER, njit
from solutions.unit07_oscillation.cycle import GRID_LIMIT, GRID_POINTS, anode_cycle

MOST_TURN = 1.0  # radian a step, of the envelope in its frame
MOST_GROWTH = 0.2  # neper a step
SMALL = 0.5  # an exponent below which the exponential's series serves better than its closed form
FRACTIONS = tuple(1 / n for n in range(12, 2, -1))  # of the exponential's series
TINY = 1e-30  # volt
NO_OVERTONES = 0.003  # of the crest: fewer do not shift it
CREST_STEPS, MOST_LEAN = 3, 1.0  # of Newton's, radian
MOST_BENT = 4.0  # likewise, at most
FLATTEST = 0.25  # how sharply the wave on the grid is bent at its crest, as a share of a sine's, at least
LEAST_CREST = 1e-7  # volt: below it the valve's slope is that of a weak signal, and rounding would spoil it
MOST_FALL = 500.0  # of the grid current's logarithm, within a step: beyond it nothing is left


@njit(**INTO_ITS_CALLER)
def through_a_step(exponent):
    """What becomes, by a step's end, of 1 at its start, of a push of 1, and of one that grows from 0 to 1."""
    if abs(exponent) > SMALL:
        left = cmath.exp(exponent)
        push = (left - 1) / exponent
        return left, push, (push - 1) / exponent
    ramp = 0j
    for fraction in FRACTIONS:
        ramp = 1 + ramp * (exponent * fraction)
    ramp = ramp / 2
    push = 1 + exponent * ramp
    return 1 + exponent * push, push, ramp


@njit(**INTO_ITS_CALLER)
def overtone_drive(impedance, current, before, slope):
    """An overtone of the drive from that of the current that it helped to make: one step of Newton's towards agreement."""
    return impedance * (current - slope * before) / (1 - impedance * slope)


@njit(**INTO_ITS_CALLER)
def crest_with_overtones(crest, second, third, fourth):
    """By how much overtones raise a wave's crest; and, as imaginary part, by what share more sharply it is bent there."""
    if abs(second) + abs(third) + abs(fourth) < NO_OVERTONES * crest:
        return complex((second + third + fourth).real, 0.0)
    at = 1.0 + 0j
    least = FLATTEST * crest + TINY
    angle = 0.0
    for _ in range(CREST_STEPS):
        first, twice, thrice, fourfold = crest * at, second * at * at, third * at**3, fourth * at**4
        slope = first.imag + 2 * twice.imag + 3 * thrice.imag + 4 * fourfold.imag
        bent = first.real + 4 * twice.real + 9 * thrice.real + 16 * fourfold.real
        angle = min(max(angle - slope / max(bent, least), -MOST_LEAN), MOST_LEAN)
        at = cmath.rect(1.0, angle)
    first, twice, thrice, fourfold = crest * at, second * at * at, third * at**3, fourth * at**4
    bent = first.real + 4 * twice.real + 9 * thrice.real + 16 * fourfold.real
    return complex(first.real + twice.real + thrice.real + fourfold.real - crest, min(max(bent, least) / crest, MOST_BENT) - 1)


@njit(**INTO_ITS_CALLER)
def anode_push(undisturbed, dropped, steady, grid, excess, drives, net, stage):
    """Current beyond the slope at rest, mean current, the valve's slope beyond that at rest, overtone on the grid, on the drive.

    `undisturbed` is the drive that slopes at rest would give, `dropped` the carrier left on the grid condenser, `steady` the
    steady drive, `excess` and `drives` what was found last.
    """
    drive = (undisturbed - dropped - net.drive_by_anode * net.slope * dropped) / (1 - net.drive_by_anode * excess)
    crest = abs(drive) + LEAST_CREST
    mean, first, second, third, fourth, slope = anode_cycle(steady, crest, drives[0], drives[1], drives[2], stage.perveance)
    behind = grid * drive.conjugate()
    behind = behind / (abs(behind) + TINY)
    square = behind * behind
    twice, thrice = net.second_grid * second * square, net.third_grid * third * square * behind
    fourfold = net.fourth_grid * fourth * square * square
    overtone = crest_with_overtones(abs(grid) + TINY, twice, thrice, fourfold)
    drives = (
        overtone_drive(net.second_drive, second, drives[0], slope),
        overtone_drive(net.third_drive, third, drives[1], slope),
        overtone_drive(net.fourth_drive, fourth, drives[2], slope),
    )
    excess = first / crest - net.slope
    return excess * drive - net.slope * dropped, mean, excess, overtone, drives


@njit(**INTO_ITS_CALLER)
def grid_law(crest, overtone, bias, slope_voltage, table):
    """Logarithm of the mean grid current, in zero currents; and I1/I0. How long it flows follows from how the crest is bent."""
    ratio = crest * (1 + overtone.imag) / slope_voltage
    place = min(math.log1p(ratio) / math.log1p(GRID_LIMIT), 1.0) * (GRID_POINTS - 1)
    node = min(int(place), GRID_POINTS - 2)
    part = place - node
    logarithm = (1 - part) * table[node, 0] + part * table[node + 1, 0]
    share = (1 - part) * table[node, 1] + part * table[node + 1, 1]
    return (bias + crest + overtone.real) / slope_voltage + logarithm, 0.5 * ratio * share


@njit(**INTO_ITS_CALLER)
def charge_taken(level, level_free, steer, by_grid, step, net, stage):
    """Charge through the grid in a step, at whose ends the current's logarithm would be these if none were taken."""
    gain = max(level_free - level, -MOST_FALL)
    yielding = stage.slope_voltage / (1 / net.grid_node - 2 * steer * steer * by_grid)
    average = (1 - math.exp(-gain)) / gain if abs(gain) > 1e-9 else 1.0
    supplied = level + math.log(stage.zero_current * step / yielding * average)
    larger = max(supplied, -gain)
    return yielding * (gain + larger + math.log(math.exp(supplied - larger) + math.exp(-gain - larger)))


@njit(**INTO_ITS_CALLER)
def state_pushes(mode, emf, bias, anode, frequency, passing, lasting, net, stage, grid_nodes):
    """What pushes mode and anode; the grid's direction, its current's logarithm, I1/I0; and what changes little by little.

    `passing` is the mean grid current of the last step; the valve's push is without what the grid takes in this one.
    """
    aside, excess, overtone, drives = lasting[0], lasting[1], lasting[2], lasting[3:]
    alone = mode + net.grid_at_once * emf
    grid = alone * (1 + aside)
    crest = abs(grid) + TINY
    along = grid / crest
    level, steer = grid_law(crest, overtone, bias, stage.slope_voltage, grid_nodes)
    at_rest = net.grid_slope * grid
    taken = 2 * steer * passing * along
    dropped = (taken + grid / stage.leak_resistance) / complex(0.0, frequency * net.grid_node)
    undisturbed = net.drive * mode + net.drive_at_once * emf + net.drive_by_grid * (taken - at_rest)
    steady = bias + anode / stage.amplification_factor + stage.offset
    beyond, mean, excess, overtone, drives = anode_push(undisturbed, dropped, steady, grid, excess, drives, net, stage)
    charging = ((stage.supply - anode) / stage.load_resistance - mean) / stage.bypass_capacitance
    if abs(alone) > TINY:
        aside = (net.grid_by_anode * beyond + net.grid_by_grid * (taken - at_rest)) / alone
    lasting = aside, excess, overtone, drives[0], drives[1], drives[2]
    return net.by_anode * beyond - net.by_grid * at_rest, charging, along, level, steer, lasting


@njit(**COMPILED)
def march(emf, step, parts, carrier, mode, bias, anode, turning, passing, lasting, net, stage, grid_nodes):
    """Grid voltage, bias and anode voltage at the second and later samples of `emf`, `step` apart, in so many parts each."""
    step = step / parts
    leaking = step / (stage.leak_resistance * net.grid_node)
    anode_rate = -(1 / stage.load_resistance + net.slope / stage.amplification_factor) / stage.bypass_capacitance
    passed = -anode_rate * step
    anode_whole = -math.expm1(-passed) / passed
    anode_ramp = (1 - anode_whole) / passed if passed > 1e-4 else 0.5
    keep, whole, ramp = through_a_step(net.rate * step)
    by_emf, by_grid = net.by_emf * step, net.by_grid
    grids = np.empty(len(emf) - 1, np.complex128)
    biases, anodes = np.empty((2, len(emf) - 1))
    grid = (mode + net.grid_at_once * emf[0]) * (1 + lasting[0])
    for n in range((len(emf) - 1) * parts):
        sample = n // parts
        rise = (emf[sample + 1] - emf[sample]) / parts
        here = emf[sample] + (n % parts) * rise
        there = here + rise
        turned = cmath.rect(1.0, turning * step)
        _, turn_whole, turn_ramp = through_a_step(complex(net.rate.real, net.rate.imag - turning) * step)
        push, charging, along, level, steer, lasting = state_pushes(
            mode, here, bias, anode, carrier + turning, passing, lasting, net, stage, grid_nodes
        )
        mode_free = keep * mode + by_emf * (whole * here + ramp * rise) + step * turned * turn_whole * push
        anode_then = anode + step * anode_whole * charging
        bias_free = bias + (stage.leak_return - bias) * leaking + net.grid_fed * (anode_then - anode)
        crest_free = abs((mode_free + net.grid_at_once * there) * (1 + lasting[0]))
        level_free, _ = grid_law(crest_free, lasting[2], bias_free, stage.slope_voltage, grid_nodes)
        charge = charge_taken(level, level_free, steer, by_grid.real, step, net, stage)
        mode_then = mode_free + 2 * steer * charge * by_grid * turned * turn_whole * along
        bias_then = bias_free - charge / net.grid_node

        push_then, charging_then, along_then, _, steer_then, lasting = state_pushes(
            mode_then, there, bias_then, anode_then, carrier + turning, charge / step, lasting, net, stage, grid_nodes
        )
        mode_free += step * turn_ramp * (push_then - turned * push)
        anode_then += step * anode_ramp * (charging_then - charging - anode_rate * (anode_then - anode))
        bias_free = bias + (stage.leak_return - (bias + bias_then) / 2) * leaking + net.grid_fed * (anode_then - anode)
        crest_free = abs((mode_free + net.grid_at_once * there) * (1 + lasting[0]))
        level_free, _ = grid_law(crest_free, lasting[2], bias_free, stage.slope_voltage, grid_nodes)
        steer = (steer + steer_then) / 2
        charge = charge_taken(level, level_free, steer, by_grid.real, step, net, stage)
        mode = mode_free + 2 * steer * charge * by_grid * ((turn_whole - turn_ramp) * turned * along + turn_ramp * along_then)
        bias = bias_free - charge / net.grid_node
        anode = anode_then
        passing = charge / step
        after = (mode + net.grid_at_once * there) * (1 + lasting[0])
        if not abs(after) < GRID_LIMIT * stage.slope_voltage:
            grids[sample:], biases[sample:], anodes[sample:] = complex(math.inf, 0.0), bias, anode
            break
        turning = min(max(cmath.phase(after * grid.conjugate()), -MOST_TURN), MOST_TURN) / step
        grid = after
        if n % parts == parts - 1:
            grids[sample], biases[sample], anodes[sample] = grid, bias, anode
    return grids, biases, anodes, mode, bias, anode, turning, passing, lasting
