"""What a fuse and a resistor in the HT lead can stop, and what they cannot.   Lesson: Safety, high tension.

ht                  voltage of the HT battery, volt
guard               the resistor in the HT lead, ohm
filament_voltage    what a filament is rated for, volt
filament_current    what it draws at that voltage, ampere
"""

import numpy as np

from solutions.ranges import check_ranges

FRESH = 9.6 / 9  # a fresh dry battery's voltage over what is printed on it; from memory
# Quick-acting miniature fuses of 32 to 100 mA: at so many times its rating a fuse lasts at least, and at most, so many
# seconds. IEC 60127-2, standard sheets for cartridge fuse-links (sheet 2). From memory.
QUICK_FUSE = ((1.5, 3600.0, np.inf), (2.1, 0.0, 1800.0), (2.75, 0.01, 0.5), (4.0, 3e-3, 0.1), (10.0, 0.0, 0.02))


@check_ranges
def fault_current(ht: float, battery_resistance: float, guard: float = 0.0, load: float = 0.0) -> float:
    """Current from the HT battery through all that is in its way.

    Parameters
    ----------
    ht : float or ndarray, volt, >= 0
    battery_resistance : float or ndarray, ohm, >= 0, broadcast with `ht`
    guard : float or ndarray, ohm, >= 0, broadcast with `ht`
    load : float or ndarray, ohm, >= 0, broadcast with `ht`
        What is touched by mistake: 0 for a short circuit.

    Returns
    -------
    float or ndarray, ampere

    Raises
    ------
    ValueError
        If nothing at all is in the way.

    Source
    ------
    Ohm's law.
    """
    whole = np.asarray(battery_resistance) + guard + load
    if np.any(whole <= 0):
        raise ValueError("with no resistance anywhere the current has no bound: give that of the battery")
    return (ht / whole)[()]


@check_ranges
def fuse_time(current: float, rating: float) -> tuple[float, float]:
    """The least and the most seconds that a quick-acting fuse lasts.

    Parameters
    ----------
    current : float, ampere, >= 0
    rating : float, ampere, > 0; 32 to 100 mA

    Returns
    -------
    tuple of float
        Seconds, least and most; the most is infinite where the standard sets no end.

    Raises
    ------
    ValueError
        If a current is below zero, or the rating not above it.

    Source
    ------
    IEC 60127-2, sheet 2: QUICK_FUSE.
    """
    overload = current / rating
    least = max((seconds for times, seconds, _ in QUICK_FUSE if overload <= times * (1 + 1e-9)), default=0.0)
    most = min((seconds for times, _, seconds in QUICK_FUSE if overload >= times * (1 - 1e-9)), default=np.inf)
    return (np.inf if overload <= 1 else least), (np.inf if overload <= 1 else most)


@check_ranges
def fuse_verdict(current: float, rating: float) -> str:
    """What a quick-acting fuse does, in words.

    Parameters
    ----------
    current : float, ampere, >= 0
    rating : float, ampere, > 0; 32 to 100 mA

    Returns
    -------
    str

    Raises
    ------
    ValueError
        If a current is below zero, or the rating not above it.

    Source
    ------
    `fuse_time`.
    """
    least, most = fuse_time(current, rating)
    if most < 60:
        return f"opens within {most:g} s"
    if least == np.inf:
        return "stays whole"
    if least >= 3600:
        return "stays whole for an hour"
    return "may take half an hour" if most < np.inf else "may never open"


@check_ranges
def filament_in_fault(
    ht: float, guard: float, filament_voltage: float, filament_current: float, lt: float = 0.0, dropper: float = np.inf
) -> float:
    """Current through a filament while HT touches its positive end behind the guard resistor.

    The filament is taken as the resistance it has when hot; a colder one takes no more than the guard lets through.

    Parameters
    ----------
    ht : float or ndarray, volt, >= 0
    guard : float or ndarray, ohm, > 0, broadcast with `ht`
    filament_voltage : float or ndarray, volt, > 0, broadcast with `ht`
    filament_current : float or ndarray, ampere, > 0, broadcast with `ht`
    lt : float or ndarray, volt, >= 0, broadcast with `ht`
        The LT supply; it counts only behind a finite dropper.
    dropper : float or ndarray, ohm, > 0, broadcast with `ht`
        Between LT and the filament; infinite where LT is unplugged.

    Returns
    -------
    float or ndarray, ampere

    Raises
    ------
    ValueError
        If guard or dropper is not above zero: the current would have no bound.

    Source
    ------
    Kirchhoff's current law at the filament's positive end.
    """
    hot = filament_voltage / np.asarray(filament_current, float)
    sent = ht / np.asarray(guard, float) + lt / np.asarray(dropper, float)
    return (sent / (1 + hot / guard + hot / np.asarray(dropper, float)))[()]


@check_ranges
def discharge_time(capacitance: float, resistance: float, full: float, left: float) -> float:
    """Time in which a resistor empties a condenser from one voltage to another.

    Parameters
    ----------
    capacitance : float or ndarray, farad, >= 0
    resistance : float or ndarray, ohm, >= 0, broadcast with `capacitance`
    full : float or ndarray, volt, > 0, broadcast with `capacitance`
    left : float or ndarray, volt, > 0, at most `full`, broadcast with `capacitance`

    Returns
    -------
    float or ndarray, second

    Raises
    ------
    ValueError
        If the voltage left is not above zero, or is more than the full one.

    Source
    ------
    The exponential discharge, v = V exp(−t/RC).
    """
    return resistance * capacitance * np.log(full / np.asarray(left))[()]


@check_ranges
def pulse(capacitance: float, resistance: float, voltage: float) -> float:
    """What a fuse is given while a condenser behind it charges: the integral of the current's square.

    Parameters
    ----------
    capacitance : float or ndarray, farad, >= 0
    resistance : float or ndarray, ohm, > 0, broadcast with `capacitance`
        All that is in the way.
    voltage : float or ndarray, volt, broadcast with `capacitance`

    Returns
    -------
    float or ndarray, ampere squared times second

    Raises
    ------
    ValueError
        If the resistance is not above zero.

    Source
    ------
    The energy lost in charging a condenser, half C V², over the resistance that it is lost in.
    """
    return 0.5 * capacitance * voltage**2 / resistance
