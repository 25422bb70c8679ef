"""`checker see`: every exercise gives a picture or says why not, a value is answered with its unit, and nothing half done breaks it."""

import re
import xml.etree.ElementTree as ElementTree

import numpy as np
import pytest

from checker import cli
from checker.checks.given import Given
from checker.course import PATHS, UnknownExercise, load_exercise
from checker.sandbox.workers import start_worker
from checker.see import page, sealed
from checker.see.asking import Own, ask_own
from checker.see.chart import Panel, Trace, draw_panel
from checker.see.names import find_asked
from checker.see.page import look, write_page
from checker.see.panels import panels_of
from checker.see.reading import UnreadableValue, as_typed, read_values
from checker.see.views import views_of
from tests.exercises.answering import Answering
from tests.exercises.every_mutant import sources

RESONANCE = "unit03_tuned_circuit/resonance"


@pytest.fixture(scope="module")
def worker():
    with start_worker() as warm:
        yield warm


@pytest.fixture(scope="module")
def right():
    return sources("solutions")


def view(path, function, most=3):
    return next(one for one in views_of(load_exercise(path), most) if one.function == function)


@pytest.mark.parametrize("path", PATHS)
def test_every_exercise_gives_a_picture_or_a_sentence(path, right):
    answering = Answering({question.name: question.asks for question in load_exercise(path).questions})
    for one in views_of(load_exercise(path), 7):
        if one.none:
            assert one.none.endswith(".") and not one.points
            continue
        own = ask_own(path, one, one.points, one.reference, right, answering)
        assert not own.trouble, one.function
        panels = panels_of(one, own, Own(()), with_reference=True)
        assert panels, one.function
        for panel in panels:
            ElementTree.fromstring(draw_panel(panel, "p"))
            assert {trace.name.split(",")[0] for trace in panel.traces} == {"yours", "the reference"}
            assert all(np.isfinite(trace.heights).sum() > 1 or one.along < 0 for trace in panel.traces), one.function


def test_only_texts_lists_and_one_polynomial_have_no_picture():
    without = {one.function for path in PATHS for one in views_of(load_exercise(path), 2) if one.none}
    assert without == {
        *("from_engineering", "to_engineering", "leading_pole", "crossing", "threshold_from_clicks"),
        *("fitted_line", "scatter_about", "tuned_grid_polynomial"),
    }


@pytest.fixture
def member(tmp_path, right):
    """A student's folder in which resonance is right but for its formula, tuning is wrong, and all else is a stub."""
    files = dict(sources("exercises")) | {"ranges.py": right["ranges.py"]}
    stub = files[f"{RESONANCE}.py"].replace(
        "raise NotImplementedError", "return 1 / (2 * np.pi * np.sqrt(inductance * capacitance))", 1
    )
    files[f"{RESONANCE}.py"] = stub
    wrong = "def tuning_capacitance(frequency, inductance):\n    print('here')\n    return -1 / inductance if frequency > 1e6 else None\n"
    files["unit03_tuned_circuit/tuning.py"] = wrong
    for name, text in files.items():
        file = tmp_path / "exercises" / name
        file.parent.mkdir(parents=True, exist_ok=True)
        file.write_text(text, "utf-8")
    return tmp_path


def see(member, *arguments):
    return cli.main(["see", *arguments, "--folder", str(member / "exercises"), "--into", str(member / "seen")])


def test_a_value_is_answered_with_its_unit(member, capsys):
    assert see(member, "resonance", "200 µH", "177 pF") == cli.DONE
    assert capsys.readouterr().out.splitlines() == [
        "resonant_frequency",
        "  inductance  200 µH",
        "  capacitance 177 pF",
        "  answer      845.9 kHz",
    ]


def test_what_gives_no_number_says_why_and_what_it_printed(member, capsys):
    assert see(member, "tuning", "500 kHz", "1 mH") == cli.DONE
    assert "None" in capsys.readouterr().out
    assert see(member, "quality_factor.bandwidth", "1 MHz", "100") == cli.NOT_YET
    assert "still the stub" in capsys.readouterr().out
    assert see(member, "tuning") == cli.DONE
    said = capsys.readouterr().out
    assert "tuning_capacitance returned nothing (None) where a number was wanted" in said and "It printed: here" in said


def test_a_page_is_written_while_half_is_a_stub(member, capsys):
    assert see(member, "resonance") == cli.DONE
    said = capsys.readouterr().out
    assert "resonant_frequency: drawn, beside the reference." in said
    assert "resonance_condition: nothing to draw yet." in said
    html = (member / "seen/resonance.html").read_text("utf-8")
    assert html.count('role="img"') == 1 and "the reference" in html and "still the stub" in html
    assert "judged in practice" in html
    pictures = re.findall(r'<svg viewBox="0 0 360.*?</svg>', html, re.DOTALL)
    [drawn] = map(ElementTree.fromstring, pictures)
    assert drawn.find("title").text == "resonant_frequency, along capacitance"
    assert "from left to right" in drawn.find("desc").text


def test_the_references_line_is_not_shown_before_it_passes(worker, right):
    wrong = right | {f"{RESONANCE}.py": right[f"{RESONANCE}.py"].replace("1 / (2 * np.pi *", "2 / (2 * np.pi *")}
    first, formula = look(RESONANCE, views_of(load_exercise(RESONANCE), 5), wrong, worker)
    assert not first.passed and [trace.name for trace in first.panels[0].traces] == ["yours"]
    assert formula.passed and len(formula.panels[0].traces) == 2


def test_what_a_student_wrote_is_escaped_on_the_page(tmp_path, worker):
    files = {f"{RESONANCE}.py": "def resonant_frequency(a, b):\n    raise ValueError('<script>alert(1)</script>')\n"}
    seen = look(RESONANCE, views_of(load_exercise(RESONANCE), 2), files, worker)
    write_page(tmp_path / "page.html", "resonance", "<b>", seen, "checker")
    html = (tmp_path / "page.html").read_text("utf-8")
    assert "<script" not in html and "<b>" not in html and "&lt;script&gt;" in html


@pytest.mark.parametrize(
    ("path", "function", "texts", "values"),
    [
        (
            "unit03_tuned_circuit/aerial_coupling",
            "best_mutual_inductance",
            ("1 MHz", "30-950j Ω", "10"),
            (1e6, 30 - 950j, 10.0),
        ),
        ("unit03_tuned_circuit/aerial_coupling", "best_mutual_inductance", ("1 MHz", "30 Ω", "10"), (1e6, 30 + 0j, 10.0)),
        ("unit02_coil_and_condenser/wire_resistance", "swg_diameter", ("22",), (22,)),
        (
            "unit07_oscillation/hysteresis",
            "swing_at",
            ("1", "false", "9 µS", "1 MΩ", "1 V", "70 V"),
            (1.0, False, 9e-6, 1e6, 1.0, 70.0),
        ),
        (RESONANCE, "resonant_frequency", ("200uH", "177e-12"), (200e-6, 177e-12)),
        ("unit00_bench/prefixes", "from_engineering", ("365 pF",), ("365 pF",)),
        ("unit09_feedback_receivers/isolating_stage", "stable_gain", ("1 mS", "1 pF", "1 MHz"), (1e-3, 1e-12, 1e6)),
    ],
)
def test_values_are_read_as_they_are_written(path, function, texts, values):
    assert read_values(view(path, function), texts) == values


def test_lists_and_groups_are_read():
    losses = view("unit04_crystal_set/crystal_set", "losses")
    assert read_values(losses, ["[1 µW, 1 W, 1 mW]"])[0].tolist() == [1e-6, 1.0, 1e-3]
    polynomial = view("unit06_reaction/characteristic_polynomial", "three_winding_polynomial")
    texts = [argument.shown for argument in polynomial.arguments]
    values = read_values(polynomial, texts)
    np.testing.assert_allclose(values[3], polynomial.arguments[3].example)


def test_every_example_that_a_message_shows_can_be_read():
    for path in PATHS:
        for one in views_of(load_exercise(path), 2):
            texts = [as_typed(argument).strip('"') for argument in one.arguments]
            if not any("…" in argument.shown for argument in one.arguments):
                assert len(read_values(one, texts)) == len(one.arguments)


def test_a_value_that_cannot_be_read_is_named_with_an_example():
    one = view(RESONANCE, "resonant_frequency")
    with pytest.raises(UnreadableValue, match='capacitance: .3 m. cannot be read. Write it as in "100 pF"'):
        read_values(one, ["1 mH", "3 m"])
    with pytest.raises(UnreadableValue, match="takes 2 values, and 1 came"):
        read_values(one, ["1 mH"])


def test_names():
    assert find_asked("resonance") == (RESONANCE, "")
    assert find_asked("resonant_frequency") == (RESONANCE, "resonant_frequency")
    assert find_asked("metres.wavelength") == ("unit00_bench/metres", "wavelength")
    with pytest.raises(UnknownExercise, match=r"metres\.wavelength or channel_plan\.wavelength"):
        find_asked("wavelength")
    with pytest.raises(UnknownExercise, match="Did you mean resonant_frequency"):
        find_asked("resonent_frequency")


@pytest.mark.parametrize("path", ["unit00_bench/tone", "unit03_tuned_circuit/response_curve"])
def test_a_pack_holds_the_views_and_no_reference(path, tmp_path, monkeypatch):
    monkeypatch.setattr(sealed, "views_of", lambda exercise: views_of(exercise, 4))
    file = tmp_path / sealed.file_of(path)
    file.parent.mkdir(parents=True)
    file.write_bytes(sealed.seal_views(path))
    monkeypatch.setattr(sealed, "ROOT", tmp_path)
    for mine, theirs in zip(sealed.read_sealed_views(path), views_of(load_exercise(path), 4), strict=True):
        assert repr(mine.points) == repr(theirs.points) and mine.needed == theirs.needed and mine.none == theirs.none
        assert [one.name for one in mine.arguments] == [one.name for one in theirs.arguments]
        np.testing.assert_array_equal(np.array(mine.reference, complex), np.array(theirs.reference, complex))


def test_a_picture_of_numbers_that_are_not_there_is_drawn_all_the_same():
    heights = np.array([np.nan, 1.0, np.nan, 5.0, 5.0])
    panel = Panel("f", "x", "Hz", "V", np.arange(5.0), False, (Trace("yours", "yours dash0", heights),), ((1.0, 1.0),), (9.0,))
    drawn = draw_panel(panel, "p")
    assert 'class="yours dash0"' in drawn and drawn.count("<circle") == 1 and "nan" not in drawn


def test_each_argument_says_its_unit():
    """What has a unit in words has it as data."""
    for path in PATHS:
        for question in load_exercise(path).questions:
            for name, given in question.given.items():
                assert isinstance(given, Given)
                shown = given.show(given.values[0])
                if given.unit:
                    assert given.unit.rstrip("s") in shown or given.unit in shown, (path, name)


def test_a_page_needs_nothing_but_itself():
    html = (page.Path(page.__file__).with_name("pages") / "see.html").read_text("utf-8")
    assert "http:" not in html and "https:" not in html and "<script" not in html
