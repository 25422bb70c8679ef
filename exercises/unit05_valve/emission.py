"""Where do the electrons come from?   Lesson: Valve, section 1 (course/lessons/unit05_valve/index.md)."""

import numpy as np

VOLTS_PER_KELVIN = 8.617333262e-5  # Boltzmann's constant over the charge of the electron, CODATA


def emission_density(temperature: float, constant: float, work_function: float) -> float:
    """Current that each square metre of a hot surface can give, when every electron is drawn away.

    Parameters
    ----------
    temperature : float or ndarray, kelvin, > 0
    constant : float or ndarray, ampere per square metre and kelvin squared, > 0, of the surface
    work_function : float or ndarray, volt (its electron-volts), > 0, of the surface

    Returns
    -------
    float or ndarray, ampere per square metre; the arguments broadcast together

    Source
    ------
    O. W. Richardson's law as S. Dushman wrote it, Phys. Rev. 21, 623 (1923) (citation from memory): A T² exp(-φ/(kT/e)).
    """
    raise NotImplementedError


def emission_current(temperature: float, constant: float, work_function: float, length: float, diameter: float) -> float:
    """Current that a straight filament can give from the whole of its round surface.

    Parameters
    ----------
    temperature, constant, work_function
        As in `emission_density`.
    length : float or ndarray, metre, > 0, of the filament
    diameter : float or ndarray, metre, > 0, of the filament

    Returns
    -------
    float or ndarray, ampere; the arguments broadcast together

    Source
    ------
    The emission of each square metre times the surface of a cylinder without its ends.
    """
    raise NotImplementedError


def temperature_for(density: float, constant: float, work_function: float) -> float:
    """Temperature at which a surface emits a wanted current.

    Parameters
    ----------
    density : float or ndarray, ampere per square metre, > 0
    constant, work_function
        As in `emission_density`.

    Returns
    -------
    float or ndarray, kelvin; the arguments broadcast together

    Raises
    ------
    ValueError
        If the surface gives so much, or so little, at no temperature from 300 to 4000 K.

    Source
    ------
    `emission_density` turned round, by halving the interval.
    """
    raise NotImplementedError
