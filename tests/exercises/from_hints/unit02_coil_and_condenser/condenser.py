"""plates is (count - 1) * PERMITTIVITY * area / gap; parallel is first + second; series is first * second / (first +
second)."""

PERMITTIVITY = 8.8541878128e-12


def plates(count, area, gap):
    return (count - 1) * PERMITTIVITY * area / gap


def parallel(first, second):
    return first + second


def series(first, second):
    return first * second / (first + second)
