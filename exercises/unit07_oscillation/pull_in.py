"""When does the station take hold of it?   Lesson: Oscillation, section 5 (course/lessons/unit07_oscillation/whistle.md).

offset     hertz: the station's carrier less the frequency at which the set would oscillate by itself
hold       hertz: the largest offset, either way, at which the station still holds the oscillation
"""

import numpy as np


def locking_range(frequency: float, quality_factor: float, injected: float, oscillation: float) -> float:
    """Offset up to which a station holds an oscillation to its own frequency, either way.

    Parameters
    ----------
    frequency : float or ndarray, hertz, > 0
    quality_factor : float or ndarray, a pure number, > 0, of the tuned circuit as the oscillation loads it
    injected : float or ndarray, volt, crest, >= 0, at most `oscillation`, that the station brings into the circuit
    oscillation : float or ndarray, volt, crest, > 0, in the same place; the law is good where it is far above `injected`

    Returns
    -------
    float or ndarray, hertz; the arguments broadcast together

    Raises
    ------
    ValueError
        If there is no oscillation, or the station is the stronger: then nothing is held, the station drives the circuit.

    Source
    ------
    R. Adler, Proc. IRE 34, 351 (1946) (from memory): f/(2Q) × injected/oscillation.
    """
    raise NotImplementedError


def locked_phase(offset: float, hold: float) -> float:
    """Angle by which the held oscillation differs from the station's carrier.

    Parameters
    ----------
    offset : float or ndarray, hertz, of either sign
    hold : float or ndarray, hertz, > 0, as `locking_range` gives it

    Returns
    -------
    float or ndarray, degree, −90 to 90, of the sign of the offset; the arguments broadcast together

    Raises
    ------
    ValueError
        Where the offset is beyond the hold: then there is no steady angle.

    Source
    ------
    R. Adler, Proc. IRE 34, 351 (1946) (from memory): dφ/dt = 2π (offset − hold × sin φ) is at rest.
    """
    raise NotImplementedError


def pulled_beat(offset: float, hold: float) -> float:
    """Pitch of the whistle near zero beat: lower than the offset, and nothing at all where the station holds.

    Parameters
    ----------
    offset : float or ndarray, hertz, of either sign
    hold : float or ndarray, hertz, >= 0

    Returns
    -------
    float or ndarray, hertz; the arguments broadcast together

    Source
    ------
    R. Adler, Proc. IRE 34, 351 (1946) (from memory): sqrt(offset² − hold²).
    """
    raise NotImplementedError


def holding_signal(offset: float, frequency: float, quality_factor: float, oscillation: float) -> float:
    """Least swing of a station that holds an oscillation across a given offset.

    Parameters
    ----------
    offset : float or ndarray, hertz, of either sign
    frequency, quality_factor, oscillation
        As in `locking_range`.

    Returns
    -------
    float or ndarray, volt, crest, true while it is far below `oscillation`; the arguments broadcast together

    Source
    ------
    `locking_range` equal to the size of the offset.
    """
    raise NotImplementedError


def slipping_phase(time: float, offset: float, hold: float) -> float:
    """Angle between station and oscillation, running on, when the station cannot hold it.

    It lingers near 90 degrees, where the station almost holds it, and then hurries round: near zero beat the whistle is
    a growl of clicks.

    Parameters
    ----------
    time : float or ndarray, second, >= 0, since the angle was nothing
    offset : float or ndarray, hertz, > `hold`
    hold : float or ndarray, hertz, >= 0

    Returns
    -------
    float or ndarray, radian, always growing; the arguments broadcast together

    Raises
    ------
    ValueError
        Where the offset is not above the hold: then the angle does not run on.

    Source
    ------
    dφ/dt = 2π (offset − hold × sin φ), solved for tan(φ/2): with u = π × beat × time it is
    offset sin u/(beat cos u + hold sin u); each half turn of u is a whole turn of φ.
    """
    raise NotImplementedError
