"""Resistance: carrier/(2 × (mean_current + saturation_current) × i1_over_i0(carrier/slope_voltage)). The Q left:
quality_factor/(1 + dynamic_resistance/detector_resistance). Working point: least = 0, most = source_voltage; forty
times: v = (least + most)/2, y = detector_output(v, load_resistance, saturation_current, slope_voltage), and where v +
source_resistance × 2 × (y/load_resistance + saturation_current) × i1_over_i0(v/slope_voltage) > source_voltage set most
= v, elsewhere least = v (np.where does it for arrays). Powers: v, y = working_point(source_voltage × (1 + depth ×
MOMENTS), …), the carrier and the output at 24 moments; mean of v² over twice the detector's resistance; mean of
y²/load_resistance; (2 × mean of y × MOMENTS)²/(2 × load_resistance).
"""

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
