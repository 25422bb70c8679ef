"""What stands on a design sheet: against printed tables, against the course's own sets, and as the parts spread."""

from dataclasses import replace

import numpy as np
import pytest

from checker.course import ROOT
from checker.sheet import physics, read_parts, sets, spread, work_out
from checker.sheet.keys import CRYSTAL, FILAMENTS, QUENCHED, SECTIONS, SETS, VALVE
from checker.sheet.reaction import reaction_set, settings
from checker.sheet.sample import capacitance_for, coupled_circuit, sample_of, with_windings
from checker.sheet.supply import rating, shorted
from checker.sheet.windings import crowding
from solutions.unit00_bench.dropper_resistor import PREFERRED
from solutions.unit04_crystal_set.crystal_set import aerial_impedance
from solutions.unit04_crystal_set.crystal_set import crystal_set as course_crystal_set
from solutions.unit05_valve.one_valve_set import one_valve_set
from solutions.unit06_reaction.network import SALTMARSH_SET
from solutions.unit06_reaction.stability import at_threshold, retuned
from tests.physics.conftest import table

FOLDER = ROOT / "checker" / "examples" / "sheets"
EXAMPLES = {"isla": "isla_marrow_crystal", "orla": "orla_quill_reaction", "jasper": "jasper_thrift_isolated"}

# The course's own set: 75 mm, 26 SWG, 8 m and 20 m of aerial, 30 ohms, type 30, 90 V.
CLUB = (FOLDER / "isla_marrow_crystal.toml").read_text("utf-8") + '\n[valve]\ntype = "30"\n'
NO_SPREAD = "\n[spread]\n" + "".join(f'{key.name} = "0 {key.takes.unit}"\n' for key in SECTIONS["spread"])


def parts_of(text):
    return read_parts(text.encode())


@pytest.fixture(scope="module")
def sheets():
    return {name: work_out(read_parts(FOLDER / f"{file}.toml"), draws=40) for name, file in EXAMPLES.items()}


@pytest.fixture(scope="module")
def exact():
    return work_out(parts_of(CLUB + NO_SPREAD), draws=8)


@pytest.fixture(scope="module")
def club_bench():
    """The club's parts without spread, the tickler of unit 06's bench page."""
    return with_windings(sample_of(parts_of(CLUB + NO_SPREAD), 2), 19)


def test_the_course_s_own_coil_comes_out_on_the_sheet(exact):
    """Unit 02: 44 turns of 26 SWG on 75 mm; unit 06's bench page: 19 on the tickler, 10.4 m of wire."""
    aerial, tuned = exact.windings
    assert (aerial.name, tuned.name, tuned.turns) == ("aerial", "tuned", 44)
    assert tuned.wire == pytest.approx(10.4, abs=0.05)


def test_inductance_against_nagaoka_s_coefficient_as_printed(exact):
    """NBS Circular 74, 1924, (153): 0.03948 a² n² K / b µH, in centimetres (constant found); K by its Table 10 (memory)."""
    tuned = exact.windings[1]
    diameter, length = 7.55, 2.2  # centimetre: 75 mm and a wire of 0.5 mm; 44 turns
    printed = table("coils/nagaoka_nbs_c74_table10")
    shape, k = printed["diameter_over_length"], printed["K_table"]
    order = np.argsort(shape)
    k_here = np.interp(diameter / length, shape[order], k[order])
    microhenries = 0.03948 * (diameter / 2) ** 2 * 44**2 * k_here / length
    assert 1e6 * tuned.inductance.nominal == pytest.approx(microhenries, rel=2e-3)


def test_turns_put_the_lowest_station_at_the_end_by_the_printed_lc_product(exact):
    """NBS Circular 74's table of L × C for wavelengths (memory; recomputed): the sheet's coil tunes 530 kHz with all of C."""
    tabled = table("coils/lc_product_wavelength")
    tuned, parts = exact.windings[1], exact.parts
    microfarads = 1e6 * (parts["condenser.maximum"] + parts["condenser.stray"] + 4.6e-12)  # 4.6 pF: the coil's own
    product = 1e6 * tuned.inductance.nominal * microfarads
    metres = 299.8e6 / exact.reach[0].nominal
    square_root = np.interp(metres, tabled["wavelength_m"], np.sqrt(tabled["LC_uH_uF_table"]))
    assert np.sqrt(product) == pytest.approx(square_root, rel=5e-3)


def test_self_capacitance_against_medhurst(exact):
    """R. G. Medhurst, Wireless Engineer 24, 1947: 0.60 to 0.64 pF a centimetre of diameter at l/D of 0.25 to 0.30 (found)."""
    own = with_windings(sample_of(exact.parts, 1), 8).windings.own_capacitance[0]
    assert 0.60 * 7.55 < 1e12 * own < 0.64 * 7.55


def test_preferred_values_are_those_of_iec_60063(sheets):
    """IEC 60063:2015, E12 (found in public listings)."""
    for sheet in sheets.values():
        for value in filter(None, (sheet.supply.dropper, sheet.supply.leak, sheet.supply.anode_resistor)):
            assert round(value / 10.0 ** (np.floor(np.log10(value)) - 1), 6) in PREFERRED["E12"]


def test_the_dropper_of_a_type_30_from_a_4_volt_accumulator(sheets):
    """Ohm's law, by hand: 2 V over 60 mA is 33.3 ohms, next up 39; 4 V over 39 and 33.3 ohms is 55.3 mA."""
    supply = sheets["orla"].supply
    assert supply.exact == pytest.approx(33.333, abs=1e-3) and supply.dropper == 39
    assert supply.filament_current.nominal == pytest.approx(55.3e-3, abs=0.1e-3)
    assert sheets["jasper"].supply.valves == 2


def test_the_guard_in_the_ht_lead_saves_every_filament_and_bears_a_short():
    """By hand: ten fresh 9 V batteries, 96 V, less 2 V over 60 mA: 1.57 kilohms, next up 1.8; 96 V on 10 kilohms: 0.92 W."""
    orla = work_out(read_parts(FOLDER / "orla_quill_reaction.toml"), draws=2).supply
    assert (orla.guard, orla.guarded, orla.anode_rating, orla.guard_rating) == (1.8e3, True, 1.0, 10.0)
    for ht in (20, 67.5, 90, 200):
        for volts, amperes, _ in FILAMENTS.values():
            guard = physics.dropper.next_preferred(physics.dropper.dropper_resistance(9.6 / 9 * ht, volts, amperes))
            assert (9.6 / 9 * ht - volts) / guard <= amperes
            assert shorted(9.6 / 9 * ht, guard) <= rating(shorted(9.6 / 9 * ht, guard)) < np.inf
    text = (FOLDER / "orla_quill_reaction.toml").read_text("utf-8").replace('lt = "4 V"', 'lt = "4 V"\nanode_resistor = "1 kΩ"')
    assert not work_out(parts_of(text), draws=2).supply.guarded


def test_a_dropper_is_left_out_where_the_accumulator_fits():
    sheet = work_out(parts_of(CLUB + '[supply]\nlt = "2 V"\n'), draws=2)
    assert sheet.supply.dropper is None and sheet.supply.filament_current.nominal == pytest.approx(60e-3)


def test_the_crystal_set_is_unit_04_s(club_bench):
    """The whole chain of `crystal_set`, with the sheet's windings in place of the club's, and the crystal at the top."""
    sample, of = club_bench, club_bench.windings
    frequency, field = 846e3, 2e-3
    own = sample.wire_resistance(of.tuned, frequency)
    impedance = aerial_impedance(frequency, 8.0, 20.0, 1e-3, 30.0, of.aerial_inductance + sample.wire_inductance)
    assert sample.aerial_impedance(frequency) == pytest.approx(impedance, rel=1e-12)
    voltage, resistance = physics.crystal.tuned_source(
        field * sample.effective_height, frequency, of.aerial_tuned, impedance, of.tuned_inductance, own
    )
    here = coupled_circuit(sample, frequency, np.full(2, field))
    assert here.voltage == pytest.approx(voltage, rel=1e-12) and here.resistance == pytest.approx(resistance, rel=1e-12)
    tap = sets.tapping(sample)
    *_, tone = physics.detector.detector_powers(tap * voltage[0], tap**2 * resistance[0], sets.DEPTH, 20e3, 1e-6, 30e-3)
    wanted = physics.phones.sound_pressure_level(tone, 110.0) - physics.phones.hearing_threshold(1e3)
    assert sets.crystal_set(sample, frequency, np.full(2, field)).level[0] == pytest.approx(
        wanted, abs=0.3
    )  # overtones left out
    assert course_crystal_set(1e3, 4e3, frequency, 0.03, 40.0, 20e-6, 0.3, 1e3) == pytest.approx(85, abs=8)


@pytest.mark.parametrize("field", [2e-4, 2e-3, 2e-2])
def test_the_one_valve_set_is_unit_05_s(club_bench, field):
    circuit = coupled_circuit(club_bench, 846e3, np.full(2, field))
    tone = one_valve_set(circuit.voltage[0], circuit.resistance[0], sets.DEPTH, sets.TONE)
    wanted = physics.phones.sound_pressure_level(tone, 110.0) - physics.phones.hearing_threshold(1e3)
    assert sets.one_valve(club_bench, 846e3, np.full(2, field)).level[0] == pytest.approx(
        wanted, abs=0.15
    )  # fit to the manual, grid of swings


def test_the_reaction_set_is_unit_06_s(club_bench):
    """The same aerial, valve and tube: the threshold of unit 06's set within a fifth: the aerial's winding is another."""
    ours = reaction_set(club_bench, 1107e3, 10e-12)
    for name in ("transconductance", "anode_resistance", "grid_conductance", "aerial_capacitance", "tuned_inductance"):
        assert np.broadcast_to(getattr(ours, name), 2)[0] == pytest.approx(getattr(SALTMARSH_SET, name), rel=0.02)
    for name in ("anode_capacitance", "grid_anode_capacitance"):
        assert getattr(ours, name) == pytest.approx(getattr(SALTMARSH_SET, name), rel=0.02)
    for name in ("tuned_tickler", "tickler_inductance"):  # 26 mm away there, 28 mm here
        assert getattr(ours, name)[0] == pytest.approx(getattr(SALTMARSH_SET, name), rel=0.1)
    there = at_threshold(ours, 1107e3).throttle_capacitance[0]
    assert there == pytest.approx(at_threshold(SALTMARSH_SET, 1107e3).throttle_capacitance, rel=0.2)


@pytest.mark.parametrize("frequency", [600e3, 1000e3, 1450e3])
def test_the_dial_counts_the_aerial_in_as_unit_06_s_network_does(club_bench, frequency):
    """The whole network with a cold valve, tuned by its poles, against the coil and what the aerial reflects into it."""
    cold = replace(reaction_set(club_bench, frequency, 1e-15), transconductance=0.0, grid_anode_capacitance=0.0)
    wanted = retuned(cold, frequency).tuning_capacitance
    with_aerial, alone = (capacitance_for(club_bench, frequency, aerial)[0] for aerial in (True, False))
    assert with_aerial == pytest.approx(wanted[0], rel=2e-3)
    assert frequency < 900e3 or abs(alone / wanted[0] - 1) > 0.01


def test_the_edge_on_the_sheet_is_where_unit_06_s_network_begins_to_oscillate(club_bench):
    found = settings(club_bench, 1107e3, True)
    wanted = at_threshold(reaction_set(club_bench, 1107e3, 50e-12), 1107e3)
    assert found.throttle == pytest.approx(wanted.throttle_capacitance, rel=1e-6)
    assert found.tuning == pytest.approx(wanted.tuning_capacitance, rel=1e-6)
    assert np.all(np.isnan(settings(with_windings(club_bench, 2), 1107e3, True).throttle))  # two turns never get there


def test_the_course_s_coil_has_6_ohms(club_bench):
    assert club_bench.wire_resistance(44, 1e6)[0] == pytest.approx(6.0, rel=1e-9) and 2 < crowding() < 4


def test_each_set_of_the_course_brings_a_weak_station_out_further(sheets):
    for reception in sheets["orla"].receptions:
        levels = {name: reception.levels[name].nominal for name in SETS}
        if reception.field < 1e-3:
            assert levels[SETS[0]] + 15 < levels[SETS[1]] and levels[SETS[1]] + 10 < levels[SETS[2]]
        assert all(np.isfinite(list(levels.values())))


def test_a_quenched_set_is_equally_loud_on_strong_and_weak_and_lets_the_neighbour_in(sheets):
    levels = [reception.levels[QUENCHED].nominal for reception in sheets["orla"].receptions]
    assert max(levels) - min(levels) < 12
    gannet = sheets["orla"].receptions[1]
    assert gannet.above_locals[QUENCHED][0][1].nominal < gannet.above_locals[CRYSTAL][0][1].nominal


def test_a_stronger_station_is_no_fainter(club_bench):
    fields = np.geomspace(1e-6, 1e-1, 11)
    for name, heard in sets.FIVE.items():
        levels = [heard(club_bench, 1e6, np.full(2, field)).level[0] for field in fields]
        fall = -np.diff(levels)
        assert np.max(fall) < (0.1 if name == CRYSTAL else 4.0), name  # a grid far down its bend gives a little less
        assert levels[0] < levels[5]


def test_rejection_is_that_of_the_circuit(club_bench):
    """9 kHz off, the crystal set's loaded Q by the universal curve (unit 08's `circuit_rejection`)."""
    held = sets.FIVE[VALVE](club_bench, 846e3, np.full(2, 1e-3)).holds_down
    assert held(0.0)[0] == 0 and held(9e3)[0] < held(18e3)[0] and held(-9e3)[0] == pytest.approx(held(9e3)[0], rel=0.05)


def widths(sheet):
    some = [sheet.needed, *sheet.reach, sheet.supply.filament_current, sheet.supply.anode_current]
    some += [mark.angle for mark in sheet.marks if mark.angle.share == 1]
    some += [level for one in sheet.receptions for level in one.levels.values()]
    return np.array([one.high - one.low for one in some])


def test_no_tolerance_no_width_and_twice_the_tolerance_more(exact):
    assert np.all(widths(exact) <= 1e-9 * 1e7)
    assert exact.needed.most is None and spread.text(exact.needed, "") == "43.8"

    def with_tolerance(size):
        tolerances = NO_SPREAD.replace('condenser = "0 %"', f'condenser = "{size} %"').replace(
            'former = "0 %"', f'former = "{size / 2} %"'
        )
        return work_out(parts_of(CLUB + tolerances), draws=30)

    narrow, wide = with_tolerance(1), with_tolerance(2)
    assert np.all(widths(wide)[:3] > 1.5 * widths(narrow)[:3]) and np.all(widths(narrow)[:3] > 0)


@pytest.mark.parametrize(("most", "least"), [("condenser", "former"), ("former", "condenser")])
def test_the_part_that_spreads_most_is_the_one_that_matters_most(most, least):
    tolerances = NO_SPREAD.replace(f'{most} = "0 %"', f'{most} = "5 %"').replace(f'{least} = "0 %"', f'{least} = "0.5 %"')
    sample = sample_of(parts_of(CLUB + tolerances), 20)
    assert spread.spread(sample.tuned_needed, sample.off).most == spread.NAMES[most]


def test_the_first_set_drawn_is_the_file_s_own():
    sample = sample_of(parts_of(CLUB), 5)
    assert (sample.former[0], sample.maximum[0], sample.ht[0]) == (75e-3, 440e-12, 90.0) and len(set(sample.former)) == 5


def test_an_interval_holds_nine_in_ten_and_the_same_file_gives_the_same_numbers():
    values = np.linspace(0, 100, 201)
    found = spread.spread(values, {"former": values})
    assert (found.low, found.high, found.most) == (5, 95, "the tube's diameter")
    again = [sample_of(parts_of(CLUB), 20).tuned_needed for _ in range(2)]
    assert np.array_equal(*again) and np.array_equal(sample_of(parts_of(CLUB), 5).tuned_needed, again[0][:5])


@pytest.mark.parametrize(
    ("low", "high", "unit", "words"),
    [
        (511.7e3, 543.2e3, "kHz", "512 to 543 kHz"),
        (199.97e-6, 204.4e-6, "H", "200 to 204 µH"),
        (9.96e-12, 11.2e-12, "F", "10.0 to 11.2 pF"),
        (980e-9, 1.2e-6, "F", "980 nF to 1.2 µF"),
        (34.2, 55.4, "dB", "34 to 55 dB"),
        (-0.2, 4.0, "dB", "0 to 4 dB"),
        (2.0, 2.0, "V", "2 V"),
    ],
)
def test_a_number_is_no_finer_than_its_spread(low, high, unit, words):
    assert spread.text(spread.Spread((low + high) / 2, low, high, None), unit) == words


def test_filaments_have_a_fitted_law_each():
    assert set(FILAMENTS) == set(physics.triodes.MANUAL)


@pytest.mark.parametrize("name", ["orla", "jasper"])
def test_reaction_comes_in_between_50_and_300_pf_of_a_500_pf_condenser_over_the_whole_dial(sheets, name):
    """Common practice, no source: an edge in the first tenth of the travel cannot be set, one in the last third runs out."""
    found = [mark.throttle.nominal for mark in sheets[name].marks]
    assert len(found) >= 5 and all(50e-12 <= throttle <= 300e-12 for throttle in found)
