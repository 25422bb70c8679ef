"""With w = 2π × frequency. ValueError where tuned_resistance is 0 and, for each winding on the tuned coil, where the
square of its mutual inductance is above its inductance/(w² × tuning_capacitance) (np.any), which no coils can have.
np.abs(amplification_factor × mutual_inductance/(tuning_capacitance × tuned_resistance × (anode_resistance + load)))
with load = 1j × w × winding_inductance + reflected_impedance(…);   −w² × mutual_inductance × tuning_capacitance × swing
× anode_resistance/(anode_resistance + 1j × w × winding_inductance);   1j × w × (anode_grid × anode_swing + stray ×
tuned_swing)/(1/grid_impedance + 1j × w × (anode_grid + stray));   20 np.log10(direct/np.abs(grid/aerial_impedance/√2)),
direct with aerial_impedance + 1j × w × its winding, the grid's impedance 1/(1/aerial_impedance + 1/grid_resistance);
np.sqrt(2 × transconductance/(w × anode_grid)).
"""

import numpy as np

from exercises.unit03_tuned_circuit.reflected_impedance import reflected_impedance
from exercises.unit07_oscillation.radiated_field import aerial_current


def tuned_too_closely(mutual, winding, w, capacitance):
    return np.any(mutual**2 > winding / (w**2 * capacitance))


def carried_gain(
    frequency,
    amplification_factor,
    anode_resistance,
    winding_inductance,
    mutual_inductance,
    tuned_resistance,
    tuning_capacitance,
):
    w = 2 * np.pi * frequency
    if tuned_too_closely(mutual_inductance, winding_inductance, w, tuning_capacitance) or np.any(tuned_resistance == 0):
        raise ValueError("no coils are coupled so closely, or no loss is left")
    load = 1j * w * winding_inductance + reflected_impedance(frequency, mutual_inductance, tuned_resistance)
    way = tuning_capacitance * tuned_resistance * (anode_resistance + load)
    return np.abs(amplification_factor * mutual_inductance / way)


def anode_swing(swing, frequency, tuning_capacitance, mutual_inductance, winding_inductance, anode_resistance):
    w = 2 * np.pi * frequency
    if tuned_too_closely(mutual_inductance, winding_inductance, w, tuning_capacitance):
        raise ValueError("no coils are coupled so closely")
    share = anode_resistance / (anode_resistance + 1j * w * winding_inductance)
    return -(w**2) * mutual_inductance * tuning_capacitance * swing * share


def grid_swing(frequency, anode_swing, anode_grid, tuned_swing, stray, grid_impedance):
    w = 2 * np.pi * frequency
    brought = 1j * w * (anode_grid * anode_swing + stray * tuned_swing)
    return brought / (1 / grid_impedance + 1j * w * (anode_grid + stray))


def isolation(frequency, tuning_capacitance, aerial_winding, aerial_impedance, grid_resistance, anode_winding, valve, stray):
    winding_inductance, mutual_inductance = anode_winding
    anode_resistance, anode_grid = valve
    own, coupling = aerial_winding
    if tuned_too_closely(coupling, own, 2 * np.pi * frequency, tuning_capacitance):
        raise ValueError("no coils are coupled so closely")
    joined = aerial_impedance + 2j * np.pi * frequency * own
    direct = aerial_current(1.0, frequency, tuning_capacitance, coupling, joined)
    anode = anode_swing(1.0, frequency, tuning_capacitance, mutual_inductance, winding_inductance, anode_resistance)
    grid_impedance = 1 / (1 / aerial_impedance + 1 / grid_resistance)
    grid = grid_swing(frequency, anode, anode_grid, 1.0, stray, grid_impedance)
    return 20 * np.log10(direct / np.abs(grid / aerial_impedance / np.sqrt(2)))


def stable_gain(transconductance, anode_grid, frequency):
    return np.sqrt(2 * transconductance / (2 * np.pi * frequency * anode_grid))
