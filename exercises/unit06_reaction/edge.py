"""Round and round, and over the edge.   Lesson: Reaction, section 1 (course/lessons/unit06_reaction/index.md)."""


def loop_gain(conductance: float, mutual: float, capacitance: float, resistance: float) -> float:
    """Share of its loss that the tuned circuit gets back from the tickler; at 1 the set begins to sing.

    Parameters
    ----------
    conductance : float or ndarray, siemens, >= 0: the valve's mutual conductance
    mutual : float or ndarray, henry: the inductance that tickler and coil share; below 0 if one of them is the wrong way round
    capacitance : float or ndarray, farad, > 0, of the tuned circuit
    resistance : float or ndarray, ohm, > 0, in series in the tuned circuit

    Returns
    -------
    float or ndarray, a ratio; the arguments broadcast together

    Source
    ------
    The handbooks' tuned-grid case, g M/(C R): F. E. Terman, Radio Engineers' Handbook, 1943, section 6 (from memory).
    """
    raise NotImplementedError


def after_rounds(loop_gain: float, rounds: int) -> float:
    """What a signal of 1 has become after it has gone round so many times: 1 + k + k² + …, with k the loop gain.

    Parameters
    ----------
    loop_gain : float or ndarray, a ratio; it may be 1 or more, and below 0
    rounds : int, >= 0; after 0 rounds there is the signal alone, after 1 round 1 + k

    Returns
    -------
    float or ndarray, a ratio

    Source
    ------
    Euclid, Elements, book IX, proposition 35: the sum of a geometric series.
    """
    raise NotImplementedError
