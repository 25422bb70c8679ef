"""How fast does it start?   Lesson: Oscillation, section 1 (course/lessons/unit07_oscillation/index.md).

feedback    part of the tuned circuit's loss that reaction makes good: 1 at the edge, more beyond it
growth      neper a second: a swing left to itself is multiplied by 2.718 in one second divided by it
"""

import numpy as np

BOLTZMANN = 1.380649e-23  # J/K, exact by definition


def growth_rate(resonant_frequency: float, quality_factor: float, feedback: float) -> float:
    """Rate at which a small swing grows in a tuned circuit with reaction; below zero, at which it dies away.

    Parameters
    ----------
    resonant_frequency : float or ndarray, hertz, > 0
    quality_factor : float or ndarray, a pure number, > 0, of the circuit without reaction
    feedback : float or ndarray, a pure number, >= 0

    Returns
    -------
    float or ndarray, neper a second; the arguments broadcast together

    Source
    ------
    Without reaction a swing dies away at the rate π f/Q (unit 03); reaction takes its share off, or more than all.
    """
    raise NotImplementedError


def starting_voltage(capacitance: float, temperature: float) -> float:
    """Voltage that heat alone keeps a tuned circuit swinging with: what an oscillation starts from if nothing else comes.

    Parameters
    ----------
    capacitance : float or ndarray, farad, > 0, of the whole tuned circuit
    temperature : float or ndarray, kelvin, > 0

    Returns
    -------
    float or ndarray, volt, r.m.s.; the arguments broadcast together

    Source
    ------
    Equipartition: the condenser's energy C V²/2 is on average k T/2.
    """
    raise NotImplementedError


def free_growth_time(start: float, end: float, growth: float) -> float:
    """Time in which a swing grows from one amplitude to another while nothing limits it.

    Parameters
    ----------
    start : float or ndarray, volt, > 0
    end : float or ndarray, volt, > `start`
    growth : float or ndarray, neper a second, > 0

    Returns
    -------
    float or ndarray, second; the arguments broadcast together

    Raises
    ------
    ValueError
        If `growth` is anywhere zero or less: below the edge nothing grows.

    Source
    ------
    start × exp(growth × time) = end.
    """
    raise NotImplementedError


def amplitude(time: float, start: float, limit: float, growth: float) -> float:
    """Amplitude of an oscillation whose growth slackens with the square of its amplitude until it stops at the limit.

    Parameters
    ----------
    time : float or ndarray, second, >= 0
    start : float or ndarray, volt, > 0, at time 0; above the limit it sinks towards it
    limit : float or ndarray, volt, > 0
    growth : float or ndarray, neper a second, > 0, of a very small swing

    Returns
    -------
    float or ndarray, volt; the arguments broadcast together

    Raises
    ------
    ValueError
        If `start` is anywhere zero or less: from nothing nothing grows.

    Source
    ------
    B. van der Pol, Phil. Mag. 3, 65 (1927) (citation from memory): da/dt = growth × a (1 − a²/limit²). In 1/a² that
    equation is linear: limit²/a² − 1 dies away at twice the growth rate.
    """
    raise NotImplementedError


def time_to_limit(start: float, limit: float, growth: float, fraction: float) -> float:
    """Time in which such an oscillation grows to a given fraction of its limit.

    Parameters
    ----------
    start, limit, growth
        As in `amplitude`.
    fraction : float or ndarray, of the limit, above `start`/`limit` and below 1

    Returns
    -------
    float or ndarray, second; the arguments broadcast together

    Raises
    ------
    ValueError
        If `growth` is anywhere zero or less, or `fraction` 1 or more: the limit itself is never quite reached.

    Source
    ------
    `amplitude`, solved for the time.
    """
    raise NotImplementedError
