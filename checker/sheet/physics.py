"""The reference physics that the sheet works with, by short names."""

from solutions.unit00_bench import dropper_resistor as dropper
from solutions.unit00_bench import ht_faults as faults
from solutions.unit01_signal import aerial_voltage as aerial
from solutions.unit01_signal import field_strength as field
from solutions.unit01_signal import radiation_resistance as radiation
from solutions.unit02_coil_and_condenser import club_coil, self_capacitance
from solutions.unit02_coil_and_condenser import mutual_inductance as mutual
from solutions.unit02_coil_and_condenser import vane_capacitance as vanes
from solutions.unit02_coil_and_condenser import winding_sheet as winding
from solutions.unit02_coil_and_condenser import wire_resistance as wire
from solutions.unit03_tuned_circuit import reflected_impedance as reflected
from solutions.unit03_tuned_circuit import resonance
from solutions.unit03_tuned_circuit import tuning_range as tuning
from solutions.unit04_crystal_set import crystal_set as crystal
from solutions.unit04_crystal_set import detector_load as detector
from solutions.unit04_crystal_set import phone_loudness as phones
from solutions.unit05_valve import grid_leak as grid
from solutions.unit05_valve import load_line, triodes
from solutions.unit05_valve import one_valve_set as one_valve
from solutions.unit05_valve import triode_current as triode
from solutions.unit06_reaction import choosing, network
from solutions.unit06_reaction import treble_loss as treble
from solutions.unit07_oscillation import build_up, hysteresis
from solutions.unit07_oscillation import limit_amplitude as limit
from solutions.unit07_oscillation import radiated_field as radiated
from solutions.unit08_two_stations import rejection
from solutions.unit09_feedback_receivers import isolating_stage as isolating
from solutions.unit09_feedback_receivers import quench

__all__ = [
    "aerial",
    "build_up",
    "choosing",
    "club_coil",
    "crystal",
    "detector",
    "dropper",
    "faults",
    "field",
    "grid",
    "hysteresis",
    "isolating",
    "limit",
    "load_line",
    "mutual",
    "network",
    "one_valve",
    "phones",
    "quench",
    "radiated",
    "radiation",
    "reflected",
    "rejection",
    "resonance",
    "self_capacitance",
    "treble",
    "triode",
    "triodes",
    "tuning",
    "vanes",
    "winding",
    "wire",
]
