"""Resistance: Rd = V/(2 (i + Is) i1_over_i0(V/n)). The Q left: Q/(1 + Rs/Rd). Working point: least = 0, most = E; forty
times: V = (least + most)/2, y = detector_output(V, R, Is, n), and where V + Rs × 2 (y/R + Is) i1_over_i0(V/n) > E set
most = V, elsewhere least = V (np.where does it for arrays). Powers: θ = π (k + ½)/24, k = 0 … 23; V, y = working_point(E
(1 + m cos θ), …); mean of V²/(2 Rd); mean of y²/R; (2 × mean of y cos θ)²/(2R)."""

import numpy as np

from exercises.unit04_crystal_set.rectified_voltage import detector_output, i1_over_i0

MOMENTS = np.cos(np.pi * (np.arange(24) + 0.5) / 24)  # a tone of crest 1, at 24 moments of half a cycle


def detector_resistance(carrier, mean_current, saturation_current, slope_voltage):
    return carrier / (2 * (mean_current + saturation_current) * i1_over_i0(carrier / slope_voltage))


def quality_factor_with_detector(quality_factor, dynamic_resistance, detector_resistance):
    return quality_factor / (1 + dynamic_resistance / detector_resistance)


def working_point(source_voltage, source_resistance, load_resistance, saturation_current, slope_voltage):
    least, most = 0.0, source_voltage
    for _ in range(40):
        carrier = (least + most) / 2
        output = detector_output(carrier, load_resistance, saturation_current, slope_voltage)
        current = 2 * (output / load_resistance + saturation_current) * i1_over_i0(carrier / slope_voltage)
        too_much = carrier + source_resistance * current > source_voltage
        least, most = np.where(too_much, least, carrier), np.where(too_much, carrier, most)
    carrier = (least + most) / 2
    return carrier, detector_output(carrier, load_resistance, saturation_current, slope_voltage)


def detector_powers(source_voltage, source_resistance, depth, load_resistance, saturation_current, slope_voltage):
    carrier, output = working_point(
        source_voltage * (1 + depth * MOMENTS), source_resistance, load_resistance, saturation_current, slope_voltage
    )
    felt = detector_resistance(carrier, output / load_resistance, saturation_current, slope_voltage)
    into_diode = np.mean(carrier**2 / (2 * felt))
    rectified = np.mean(output**2 / load_resistance)
    tone = (2 * np.mean(output * MOMENTS)) ** 2 / (2 * load_resistance)
    return into_diode, rectified, tone
