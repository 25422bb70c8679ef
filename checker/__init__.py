"""Judging exercises: what a check is written with, and the engine that runs it."""
from .exercise import (Exercise, Question, absolute, at_most, equal, exactly, invariant, less, measurement, refusal,  # noqa: F401
                       relative, slip, value)
from .given import (amperes, celsius, decibels, degrees, drawn, farads, henries, hertz, metres, number,  # noqa: F401
                    ohm_metres, ohms, one_of, physical, radians, seconds, siemens, siemens_per_metre, volts,
                    volts_per_metre, watts, whole)
