import numpy as np

PERMITTIVITY = 8.8541878128e-12


def effective_height(height, top_length):
    at_the_bend = top_length / (height + top_length)
    return height * (1 + at_the_bend) / 2


def aerial_emf(field, effective_height):
    return field * effective_height


def aerial_capacitance(height, top_length, wire_radius):
    one_metre = 2 * np.pi * PERMITTIVITY / np.log(2 * height / wire_radius)
    return one_metre * (height + top_length)
