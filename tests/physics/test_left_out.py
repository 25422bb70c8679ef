"""What units 4, 5, 8 and 9 leave out: each size once more, from outside or from the exact model."""

import re
from importlib import import_module
from pathlib import Path

import numpy as np
import pytest
from scipy.integrate import solve_ivp
from scipy.optimize import brentq
from scipy.special import iv, ive

from solutions.unit01_signal.aerial_voltage import aerial_capacitance
from solutions.unit01_signal.field_strength import ground_wave_field
from solutions.unit01_signal.radiation_resistance import radiation_resistance
from solutions.unit02_coil_and_condenser.club_coil import coil_resistance as by_wire
from solutions.unit04_crystal_set import left_out as crystal
from solutions.unit05_valve import left_out as valve
from solutions.unit06_reaction.network import saltmarsh_set
from solutions.unit08_two_stations import left_out as stations
from solutions.unit09_feedback_receivers import left_out as receivers

DIAL = 531e3, 1107e3, 1602e3


def tone(frequency=1107e3, coil=None, earth=30.0, current=1e-6, load=20e3, leak=1e12):
    """Two coupled circuits as a matrix, the diode's law by SciPy's Bessel functions; r.m.s. of the load's first harmonic."""
    angular = 2 * np.pi * frequency
    height = 8.0 * (20.0 + 4.0) / 28.0
    aerial = complex(
        earth + radiation_resistance(height, frequency), angular * 50e-6 - 1 / (angular * aerial_capacitance(8.0, 20.0, 1e-3))
    )
    circuit = (coil or by_wire(frequency)) + 1j * angular * 200e-6 + (angular * 20e-6) ** 2 / aerial
    resistance = abs(circuit.imag) ** 2 / circuit.real
    crest = np.sqrt(2) * crystal.FIELD * height * angular * 20e-6 / abs(aerial) * circuit.imag / circuit.real
    n = 30e-3

    def output(source):
        def rectified(v):
            both = 1 / load + 1 / leak
            return brentq(lambda u: current * (np.exp(-u / n) * iv(0, v / n) - 1) - u * both, 0, v + 1e-12, xtol=1e-15)

        def missing(v):
            u = rectified(v)
            taken = 2 * current * np.exp((v - u) / n) * ive(1, v / n) + v / leak
            return v + resistance * taken - source

        return rectified(brentq(missing, 0, min(source, 5.0), xtol=1e-13))

    turns = np.cos(np.pi * (np.arange(16) + 0.5) / 16)
    heard = 2 * np.mean([output(crest * (1 + 0.3 * turn)) * turn for turn in turns])
    return heard**2 / (2 * load)


@pytest.mark.parametrize(("found", "changed"), [
    (lambda: crystal.poorer_coil(), {"coil": 1.2 * by_wire(1107e3)}),
    (lambda: crystal.earth_of(15.0), {"earth": 15.0}),
    (lambda: crystal.earth_of(60.0), {"earth": 60.0}),
    (lambda: crystal.crystal_of(0.3e-6), {"current": 0.3e-6}),
    (lambda: crystal.crystal_of(3e-6), {"current": 3e-6}),
    (lambda: crystal.telephones_of(10e3), {"load": 10e3}),
    (lambda: crystal.backward_leak(), {"leak": 500e3}),
])  # fmt: skip
def test_crystal_set_s_rows_by_bessel_functions_and_a_root_finder(found, changed):
    assert found() == pytest.approx(10 * np.log10(tone(**changed) / tone()), rel=1e-3, abs=5e-5)


@pytest.mark.parametrize("frequency", [531e3, 1602e3])
def test_a_constant_coil_by_the_same(frequency):
    wanted = 10 * np.log10(tone(frequency, coil=6.0) / tone(frequency))
    assert crystal.constant_coil(frequency) == pytest.approx(wanted, rel=0.03)  # its wire's law in two forms, 0.7 % apart


def test_a_crystal_s_picofarad_moves_the_tuning_as_thomson_s_formula_says():
    condenser = 1 / ((2 * np.pi * 1107e3) ** 2 * 200e-6)
    wanted = 1107e3 - 1 / (2 * np.pi * np.sqrt(200e-6 * (condenser + 1e-12)))
    assert crystal.diode_detunes() == pytest.approx(wanted, rel=0.01)


@pytest.mark.parametrize("frequency", DIAL)
def test_grid_to_anode_costs_what_miller_s_conductance_takes(frequency):
    """Behind its by-pass the anode is a condenser: gain −g/(1/ra + jωC), and the grid's admittance from that by hand."""
    of = saltmarsh_set(frequency)
    angular = 2 * np.pi * frequency
    by_pass = of.anode_capacitance - 200e-12 + 2e-9
    feed = 1j * angular * of.grid_anode_capacitance
    # the throttle and the tickler that the figure keeps, uncoupled, are one more way to earth
    rest = of.tickler_resistance + 1j * angular * of.tickler_inductance + 1 / (1j * angular * of.throttle_capacitance)
    anode = (feed - of.transconductance) / (1 / of.anode_resistance + 1j * angular * by_pass + feed + 1 / rest)
    taken = (feed * (1 - anode)).real
    aerial = complex(of.aerial_resistance, angular * of.aerial_inductance - 1 / (angular * of.aerial_capacitance))
    reflected = (angular * of.aerial_tuned) ** 2 / aerial
    reactance = angular * of.tuned_inductance + reflected.imag
    before = of.tuned_resistance + reflected.real + of.grid_conductance * reactance**2
    wanted = -20 * np.log10(1 + taken * reactance**2 / before)
    assert valve.own_capacitances(frequency) == pytest.approx(wanted, abs=0.05)


def test_valve_rows_by_the_slopes_of_the_law(published):
    rows = published("valve/triode_spread")
    thirty = {
        name: row
        for kind, name, *row in zip(rows["type"], rows["specimen"], rows["mu"], rows["ra_kohm"], strict=True)
        if kind == "30"
    }
    sheet = thirty["sheet (RCA)"]
    worst = max((row for name, row in thirty.items() if name != "mean of 6"), key=lambda row: row[1])
    assert pytest.approx([w / s for w, s in zip(worst, sheet, strict=True)]) == [valve.WORST_FACTOR, valve.WORST_RESISTANCE]
    anode = brentq(lambda v: 267e-6 * max(valve.REST_BIAS + v / 9.29 - 0.67, 0) ** 1.5 - (90 - v) / 14e3, 0, 90)
    slope = 1.5 * 267e-6 * np.sqrt(valve.REST_BIAS + anode / 9.29 - 0.67)
    wanted = 20 * np.log10(9.22 / 9.3 * (20e3 + 9.29 / slope) / (20e3 + 13.64 / 10.3 * 9.29 / slope))
    assert valve.worst_specimen() == pytest.approx(wanted, abs=1e-6)
    higher = brentq(lambda v: 267e-6 * max(valve.REST_BIAS + v / 9.29 - 0.37, 0) ** 1.5 - (90 - v) / 14e3, 0, 90)
    steeper = 1.5 * 267e-6 * np.sqrt(valve.REST_BIAS + higher / 9.29 - 0.37)
    moved = 20 * np.log10((20e3 + 9.29 / slope) / (20e3 + 9.29 / steeper))
    assert valve.contact_potential() == pytest.approx(moved, abs=1e-6)
    at_zero = brentq(lambda v: 267e-6 * max(v / 9.29 - 0.67, 0) ** 1.5 - (90 - v) / 14e3, 0, 90)
    assert valve.most_current() == pytest.approx((90 - at_zero) / 14e3)


def test_a_flat_earth_is_too_strong_by_what_the_ntia_gives():
    ntia = pytest.importorskip("ITS.Propagation.LFMF", reason="the NTIA's library is made for x86-64 alone")
    for name, power, distance, frequency, conductivity, permittivity in (
        ("Gannet Rock", 1e3, 80e3, 855e3, 3e-3, 22),
        ("Curlew Bank", 5e3, 60e3, 1107e3, 5.0, 70),
        ("Merrow Sound", 50e3, 280e3, 693e3, 5.0, 70),
    ):
        flat = 20 * np.log10(ground_wave_field(power, distance, frequency, conductivity, permittivity) / 1e-6)
        given = 0, 0, frequency / 1e6, power, 315, distance / 1e3, permittivity, conductivity, 1
        assert stations.flat_earth(name) == pytest.approx(flat - ntia.LFMF(*given).E__dBuVm, abs=0.005)


def test_fading_by_sampling():
    turned = np.abs(1 + 0.5 * np.exp(1j * np.linspace(0, 2 * np.pi, 1001)))
    assert stations.fading("Skerry Vore") == pytest.approx(20 * np.log10(turned.max() / turned.min()), abs=1e-3)


@pytest.mark.parametrize("strong", [0.3, 1.0])
def test_a_grid_leak_holds_down_by_scipy(strong):
    """The grid condenser's charge through a beat of 9 kHz, integrated; 10 mV of weak carrier, 30 % modulated."""

    def mean(other, weak):
        def slope(time, voltage):
            crest = np.sqrt(other**2 + weak**2 + 2 * other * weak * np.cos(2 * np.pi * 9e3 * time))
            taken = 0.5e-6 * ive(0, crest / 0.12) * np.exp((voltage[0] + crest) / 0.12)
            return [((2.0 - voltage[0]) / 2e6 - taken) / 100e-12]

        solved = solve_ivp(slope, (0, 40 / 9e3), [-other], method="LSODA", rtol=1e-9, atol=1e-12, dense_output=True)
        return np.mean(solved.sol((39 + np.arange(256) / 256) / 9e3)[0])

    beside, alone = (mean(other, 13e-3) - mean(other, 7e-3) for other in (strong, 0.0))
    assert stations.grid_leak_holds_down(strong) == pytest.approx(20 * np.log10(beside / alone), rel=0.01)


@pytest.mark.parametrize("frequency", DIAL)
def test_the_winding_left_out_is_the_ratio_of_two_impedances(frequency):
    """The same e.m.f. in the aerial, with 25 µH in it and without."""
    angular, of = 2 * np.pi * frequency, saltmarsh_set(frequency)
    bare = complex(of.aerial_resistance, angular * 15e-6 - 1 / (angular * of.aerial_capacitance))
    wanted = 20 * np.log10(abs(bare + 1j * angular * 25e-6) / abs(bare))
    assert receivers.winding_left_out(frequency, "type 32") == pytest.approx(wanted, abs=1e-6)


@pytest.mark.parametrize("turns", [1, 2, 3])
def test_sine_against_step_by_bessel_functions_and_two_poles(turns):
    offset, rate = turns * 20e3, 400e3
    step = 1 / np.hypot(1, 2 * np.pi * offset / rate) ** 2
    assert receivers.sine_against_step(offset) == pytest.approx(20 * np.log10(iv(turns, 5) / iv(0, 5) / step), abs=1e-3)


def of_the_capstone_s_triode(offset):
    """Grid driven with a volt; anode, its winding and the second circuit's mesh solved at once."""
    frequency = 1107e3
    angular, second = 2 * np.pi * (frequency + offset), 2 * np.pi * 200e-6 * complex(700.0, 2 * offset)
    mutual, feed = 1j * angular * 20e-6, 1j * angular * 6e-12
    # unknowns: current through ra and winding, current in the second mesh
    mesh = [[10.6e3 + 1j * angular * 40e-6, mutual], [mutual, second]]
    current, other = np.linalg.solve(mesh, [-9.29, 0])
    anode = current * 1j * angular * 40e-6 + mutual * other
    taken = (feed * (1 - anode)).real
    own = 2 * np.pi * receivers.first_circuit(frequency)[0] / ((2 * np.pi * frequency) ** 2 * 200e-6)
    return taken / own


def test_the_capstone_s_triode_by_a_network_of_two_nodes():
    assert receivers.grid_anode_conductance(-400.0) == pytest.approx(of_the_capstone_s_triode(-400.0), rel=1e-9)
    worst = min(map(of_the_capstone_s_triode, np.linspace(-1400.0, 1400.0, 1001)))
    assert receivers.grid_anode_worst() == pytest.approx(worst, rel=1e-3)


LESSONS = Path(__file__).parents[2] / "course" / "lessons"
PAGES = sorted(LESSONS.glob("unit0[4-9]_*/instructor.md"))


@pytest.mark.parametrize("page", PAGES, ids=lambda page: page.parent.name)
def test_one_page_shows_all_that_every_unit_leaves_out(page):
    """Row for row the table of the unit's page for instructors, which leads to the page of all."""
    unit = page.parent.name
    _, _, text = page.read_text("utf-8").partition("## What these figures leave out, and how large each is\n")
    text = text.partition("\n## ")[0]
    rows = [line for line in text.splitlines() if line.startswith("|")]
    assert len(rows) > 5 and "(../left_out.md)" in text
    for row in rows:
        row = re.sub(r"\]\((?!\.\.)", f"]({unit}/", row).replace("](../", "](")
        assert row in (LESSONS / "left_out.md").read_text("utf-8").splitlines()


@pytest.mark.parametrize("unit", ["unit06_reaction", "unit07_oscillation"])
def test_every_row_that_is_sized_stands_in_the_table(unit):
    text = (LESSONS / unit / "instructor.md").read_text("utf-8")
    for row in import_module(f"solutions.{unit}.left_out").LEFT_OUT:
        assert f"| {row.name} | " in text


def test_there_are_six_such_pages():
    assert [page.parent.name[4:6] for page in PAGES] == ["04", "05", "06", "07", "08", "09"]
