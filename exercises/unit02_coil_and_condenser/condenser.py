"""Plates, and condensers together.   Lesson: Coil and condenser, section 6
(course/lessons/unit02_coil_and_condenser/dial_and_sheet.md)."""

PERMITTIVITY = 8.8541878128e-12  # farad per metre, of empty space


def plates(count: int, area: float, gap: float) -> float:
    """Capacitance of a stack of plates in air, every other one joined.

    Parameters
    ----------
    count : int or ndarray, at least 2
    area : float or ndarray, square metre, > 0, over which two neighbours face each other
    gap : float or ndarray, metre, > 0, between two neighbours

    Returns
    -------
    float or ndarray, farad; the arguments broadcast together

    Source
    ------
    The capacitance of parallel plates, once for each gap; the permittivity is CODATA 2018's.
    """
    raise NotImplementedError


def parallel(first: float, second: float) -> float:
    """Capacitance of two condensers side by side: one voltage, and the charges add.

    Parameters
    ----------
    first, second : float or ndarray, farad, > 0

    Returns
    -------
    float or ndarray, farad; the arguments broadcast together
    """
    raise NotImplementedError


def series(first: float, second: float) -> float:
    """Capacitance of two condensers end to end: one charge, and the voltages add.

    Parameters
    ----------
    first, second : float or ndarray, farad, > 0

    Returns
    -------
    float or ndarray, farad; the arguments broadcast together
    """
    raise NotImplementedError
