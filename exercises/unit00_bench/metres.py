"""What does the dial say?   Lesson: Bench, section 4 (course/lessons/unit00_bench/tools.md)."""

SPEED_OF_LIGHT = 299_792_458.0  # metres a second, exact by definition


def wavelength(frequency: float) -> float:
    """Length of one wave: how far it goes while it swings once.

    Parameters
    ----------
    frequency : float or ndarray, hertz, > 0

    Returns
    -------
    float or ndarray, metre

    Source
    ------
    BIPM, The International System of Units (SI Brochure), 9th edition, 2019 (from memory): the speed of light is exact. The
    wave goes that far in a second, and swings `frequency` times.
    """
    raise NotImplementedError
