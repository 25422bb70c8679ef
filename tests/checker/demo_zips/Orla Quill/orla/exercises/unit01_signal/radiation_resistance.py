# O. Quill.  120 π ohm, β = 2π/λ:  Rr = 40 (β h)².
import math

SPEED_OF_LIGHT = 299792458.0


def radiation_resistance(effective_height, frequency):
    beta = 2 * math.pi / (SPEED_OF_LIGHT / frequency)
    return 40 * beta * effective_height * beta * effective_height


def available_power(emf, resistance):
    current = emf / (resistance + resistance)
    return current * current * resistance
