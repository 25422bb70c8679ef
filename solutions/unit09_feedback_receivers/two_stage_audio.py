"""Is it enough for a loudspeaker?   Lesson: Feedback receivers, sections 6 to 8.

A first stage hands its tone on to an output valve, by a condenser or by a transformer; the output valve works the
loudspeaker through a transformer of its own.
"""

import numpy as np

from solutions.ranges import check_ranges
from solutions.unit05_valve.load_line import operating_point
from solutions.unit05_valve.stage_gain import band_edges, stage_gain
from solutions.unit05_valve.triode_current import triode_current


@check_ranges
def resistance_gain(
    amplification_factor: float,
    anode_resistance: float,
    load: float,
    leak: float,
    coupling_capacitance: float,
    shunt_capacitance: float,
    tone: float,
) -> float:
    """Tone on the next grid for a volt of it on this one, the stages being coupled by a resistor and a condenser.

    Parameters
    ----------
    amplification_factor : float or ndarray, a pure number, > 0
    anode_resistance : float or ndarray, ohm, > 0
    load : float or ndarray, ohm, > 0, between battery and anode
    leak : float or ndarray, ohm, > 0, of the next grid
    coupling_capacitance : float or ndarray, farad, > 0, from anode to the next grid
    shunt_capacitance : float or ndarray, farad, > 0, across the next grid; far below `coupling_capacitance`
    tone : float or ndarray, hertz, > 0

    Returns
    -------
    float or ndarray, a pure number; the arguments broadcast together

    Source
    ------
    F. E. Terman, Radio Engineers' Handbook, 1943, section 5 (from memory): the gain into load and leak side by side; each
    edge of the band takes its own root of one and the square of how far the tone lies beyond it.
    """
    lowest, highest = band_edges(anode_resistance, load, leak, coupling_capacitance, shunt_capacitance)
    middle = stage_gain(amplification_factor, anode_resistance, load * leak / (load + leak))
    return middle / np.sqrt((1 + (lowest / tone) ** 2) * (1 + (tone / highest) ** 2))


@check_ranges
def transformer_gain(
    amplification_factor: float,
    anode_resistance: float,
    ratio: float,
    primary_inductance: float,
    leakage_inductance: float,
    shunt_capacitance: float,
    tone: float,
) -> float:
    """Tone on the next grid for a volt of it on this one, the stages being coupled by a transformer.

    Parameters
    ----------
    amplification_factor : float or ndarray, a pure number, > 0
    anode_resistance : float or ndarray, ohm, > 0
    ratio : float or ndarray, a pure number, > 0, turns of the secondary to turns of the primary
    primary_inductance : float or ndarray, henry, > 0, with nothing on the secondary
    leakage_inductance : float or ndarray, henry, >= 0, below `primary_inductance`, left of it with the secondary shorted
    shunt_capacitance : float or ndarray, farad, >= 0, across the secondary, its own and the next grid's
    tone : float or ndarray, hertz, > 0

    Returns
    -------
    float or ndarray, a pure number; the arguments broadcast together

    Source
    ------
    F. E. Terman, Radio Engineers' Handbook, 1943, section 5 (from memory). Seen from the primary's side the shunt is
    ratio² times as large and sits behind the leakage inductance; the primary inductance lies across both. With s = 2πj
    times the tone: μ × ratio / |(1 + r/(s Lp)) (1 + s² l n² C) + s r n² C|.
    """
    s = 2j * np.pi * tone
    seen = ratio**2 * shunt_capacitance
    lost = 1 + anode_resistance / (s * primary_inductance)
    return amplification_factor * ratio / np.abs(lost * (1 + s**2 * leakage_inductance * seen) + s * anode_resistance * seen)


@check_ranges
def output_power(
    anode_voltage: float,
    bias: float,
    swing: float,
    load: float,
    amplification_factor: float,
    perveance: float,
    offset: float,
) -> tuple[float, float]:
    """Power of the tone from an output valve that works into a transformer, and how much second harmonic is in it.

    Parameters
    ----------
    anode_voltage : float or ndarray, volt, > 0, at rest: nearly the whole of the HT, as a transformer drops little
    bias : float or ndarray, volt, < 0, of the grid at rest
    swing : float or ndarray, volt, crest, > 0, of the tone on the grid, at most as large as the bias
    load : float or ndarray, ohm, > 0, that the tone finds at the anode
    amplification_factor, perveance, offset
        As in `triode_current`; current flows at rest.

    Returns
    -------
    power : float or ndarray, watt
    second_harmonic : float or ndarray, a fraction of the fundamental; the arguments broadcast together

    Raises
    ------
    ValueError
        If the swing is larger than the bias: the grid would go positive and take current.

    Source
    ------
    F. E. Terman, Radio Engineers' Handbook, 1943, section 5 (from memory). The load line goes through the point of rest;
    with i0, i1 and i2 the currents at rest, at the crest and in the trough: load × (i1 − i2)²/8 and
    (i1 + i2 − 2 i0)/(2 (i1 − i2)).
    """
    if np.any(swing > -bias):
        raise ValueError("the swing is larger than the bias, so the grid would take current: turn down, or bias it lower")
    law = (amplification_factor, perveance, offset)
    rest = triode_current(anode_voltage, bias, *law)
    _, crest = operating_point(anode_voltage + rest * load, load, bias + swing, *law)
    _, trough = operating_point(anode_voltage + rest * load, load, bias - swing, *law)
    change = crest - trough
    lopsided = np.divide(crest + trough - 2 * rest, 2 * change, out=np.zeros(np.shape(change)), where=change > 0)
    return load * change**2 / 8, lopsided[()]


@check_ranges
def best_tap(
    ratios: float,
    speaker_resistance: float,
    most_harmonic: float,
    anode_voltage: float,
    bias: float,
    amplification_factor: float,
    perveance: float,
    offset: float,
) -> float:
    """Which tap of an output transformer gives most power, its second harmonic no more than is allowed, at full swing.

    Parameters
    ----------
    ratios : ndarray of shape (n,), pure numbers, > 1, turns of the primary to turns of the secondary, tap by tap
    speaker_resistance : float, ohm, > 0
    most_harmonic : float, a fraction of the fundamental, above 0 to 1
    anode_voltage, bias, amplification_factor, perveance, offset : float
        As in `output_power`; the swing is as large as the bias.

    Returns
    -------
    float, one of `ratios`

    Raises
    ------
    ValueError
        If no tap keeps the second harmonic within what is allowed.

    Source
    ------
    A transformer shows the valve ratio² times the speaker's resistance.
    """
    ratios = np.asarray(ratios)
    power, harmonic = output_power(
        anode_voltage, bias, -bias, ratios**2 * speaker_resistance, amplification_factor, perveance, offset
    )
    if np.all(harmonic > most_harmonic):
        raise ValueError("no tap keeps the second harmonic within what is allowed: take a higher ratio or a smaller swing")
    return ratios[np.argmax(np.where(harmonic > most_harmonic, 0.0, power))]


@check_ranges
def speaker_level(power: float, sensitivity: float, distance: float) -> float:
    """Sound pressure level that a loudspeaker makes in front of it, out of doors or so near that the room does not count.

    Parameters
    ----------
    power : float or ndarray, watt, > 0, electrical, into the loudspeaker
    sensitivity : float or ndarray, decibel, sound pressure level from 1 watt, 1 metre away
    distance : float or ndarray, metre, > 0, several times the loudspeaker's width

    Returns
    -------
    float or ndarray, decibel above 20 micropascal; the arguments broadcast together

    Source
    ------
    Definition of the sensitivity; the pressure falls as the distance grows.
    """
    return sensitivity + 10 * np.log10(power) - 20 * np.log10(distance)


@check_ranges
def battery_needs(supply: float, steady_current: float, tone_power: float, capacity: float) -> tuple[float, float, float]:
    """What an output stage takes from its HT battery, what of that heats the valve, and how long the battery lasts.

    Parameters
    ----------
    supply : float or ndarray, volt, > 0
    steady_current : float or ndarray, ampere, > 0, whether a tone comes or not
    tone_power : float or ndarray, watt, >= 0, that goes on to the loudspeaker
    capacity : float or ndarray, coulomb, > 0, of the battery: 3600 coulombs are an ampere-hour

    Returns
    -------
    battery : float or ndarray, watt
    heat : float or ndarray, watt, left in the valve
    time : float or ndarray, second; the arguments broadcast together

    Raises
    ------
    ValueError
        If the tone has more than half of the battery's power: a valve whose current never stops cannot give so much.

    Source
    ------
    Power, heat and charge are conserved. Half at most: F. E. Terman, Radio Engineers' Handbook, 1943, section 5 (from
    memory), class A.
    """
    battery = supply * steady_current
    if np.any(tone_power > battery / 2):
        raise ValueError("the tone cannot have more than half of what the battery gives: check the power and the current")
    return battery, battery - tone_power, capacity / steady_current
