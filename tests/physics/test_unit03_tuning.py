"""The tuning condenser against a recomputed table of resonances and the wavelength table's product of coil and condenser."""

import csv

from checker.course import ROOT
from solutions.unit03_tuned_circuit.tuning import tuning_capacitance


def rows(name):
    with open(ROOT / f"tests/published/coils/{name}.csv", encoding="utf-8") as file:
        return list(csv.DictReader(line for line in file if not line.startswith("#")))


def test_coil_times_condenser_at_the_wavelengths_of_circular_74():
    table = rows("lc_product_wavelength")
    assert len(table) >= 9
    for row in table:
        frequency = 3e8 / float(row["wavelength_m"])
        product = tuning_capacitance(frequency, 200e-6) * 200e-6 * 1e12  # microhenry times microfarad
        assert abs(product / float(row["LC_recomputed_c3e8"]) - 1) < 1e-9
        assert abs(product / float(row["LC_uH_uF_table"]) - 1) < 6e-4  # printed to four figures
