"""Answers in numbers: the pages' reader of quantities and their verdicts, held to the checker's own; and what a reader sees and hears of it."""

import html
import json
import os
import re
import shutil
import subprocess
from dataclasses import asdict
from pathlib import Path

import pytest

from checker.checks.exercise import Exercise, relative
from checker.checks.given import drawn, farads, one_of, whole
from checker.checks.units import any_quantity, quantity
from checker.course import UNITS, load_exercise
from checker.judging.compare import NAMED_RATIOS, ratio_in_words
from course.answers.instances import asked_in_numbers, roundings_for, shown_input
from course.answers.reader import reader_tables
from course.press.boxes.typed_box import TypedAnswers
from course.press.media.sources import MediaSources
from course.press.publishing.booklet import Finished, join_pages
from course.press.publishing.kept import Kept

from .conftest import ROOT
from .test_browser import Watched

PHONE = {"width": 360, "height": 780}
ANSWERS = Path(__file__).with_name("typed_answers.mjs")
NONSENSE = "abc", "1.2.3 Hz", "12 parsec", "--4", "1,592,000"


def node(read=(), judge=()) -> tuple[list, list]:
    """What the pages' modules read in (text, unit) pairs, and how they judge (text, asked) pairs."""
    program = shutil.which("node")
    if not program:
        (pytest.fail if os.environ.get("CI") == "true" else pytest.skip)("Node.js is not installed: no typed answer was judged")
    put = json.dumps({"reader": reader_tables(), "read": list(read), "judge": list(judge)})
    done = subprocess.run([program, str(ANSWERS)], input=put, capture_output=True, encoding="utf-8")
    assert done.returncode == 0, done.stderr
    answered = json.loads(done.stdout.replace("\N{NO-BREAK SPACE}", " "))
    return answered["read"], answered["judge"]


# What is typed, the unit asked for, and the same as the checker's own reader takes it.
READ = [
    *((text, unit, text) for text, unit in [
        ("1.592 MHz", "Hz"), ("1592 kHz", "Hz"), ("365 pF", "F"), ("200 uH", "H"), ("200µH", "H"), ("200 \u03bcH", "H"),
        ("-3.1 dB", "dB"), ("\u22123.1 dB", "dB"), ("4.7 kΩ", "Ω"), ("4.7 k\u2126", "Ω"), (".5 V", "V"), ("5. V", "V"),
        ("+2e-3 A", "A"), ("12 mV/m", "V/m"), ("3 °", "°"), ("0.25", ""), ("2e5", ""), ("1e-400", ""), ("7 m", "m"), ("7 mm", "m"),
        ("80 µA/V^1.5", "A/V^1.5"), ("3 turns", "turns"), ("1.2 MNp/s", "Np/s"), ("6 days", "days"),
    ]),
    ("1.6e6", "Hz", "1.6e6 Hz"), ("1,592 MHz", "Hz", "1.592 MHz"), ("1,592e6", "Hz", "1.592e6 Hz"), (",5", "V", "0.5 V"),
    ("1.6 x 10^6 Hz", "Hz", "1.6e6 Hz"), ("1.6×10^-6", "F", "1.6e-6 F"), ("1.6*10^6", "Hz", "1.6e6 Hz"),
    ("4.7 kohm", "Ω", "4.7 kΩ"), ("4.7 ohms", "Ω", "4.7 Ω"), ("4.7 Mohm", "Ω", "4.7 MΩ"), ("10 Ohm", "Ω", "10 Ω"),
    ("30 deg", "°", "30 °"), ("30 degrees", "°", "30 °"), ("30°", "°", "30 °"), ("3 db", "dB", "3 dB"),
    ("50 %", "", "0.5"), ("50%", "", "0.5"), ("50 percent", "", "0.5"), ("12 per cent", "", "0.12"), ("4 A/m2", "A/m²", "4 A/m²"),
    ("365pF", "F", "365 pF"), ("  365 pF ", "F", "365 pF"),
]  # fmt: skip
REFUSED = [
    ("", "Hz"), ("MHz", "Hz"), ("1.5 mhz", "Hz"), ("1.5 KHz", "Hz"), ("1.5 M", "Hz"), ("5 V", "A"), ("5 Hz Hz", "Hz"), ("1e999", ""),
    ("0x10", ""), ("١٢ V", "V"), ("nan", ""), ("Infinity", ""), ("1_000 Hz", "Hz"), *((text, "Hz") for text in NONSENSE),
]  # fmt: skip


def test_a_quantity_is_read_as_the_checker_reads_it():
    read, _ = node(read=[(text, unit) for text, unit, _ in READ])
    assert dict(zip([case[:2] for case in READ], read, strict=True)) == {
        (text, unit): quantity(as_checker, unit) for text, unit, as_checker in READ
    }


def test_what_the_checker_does_not_read_is_not_read_here():
    read, _ = node(read=REFUSED)
    assert [case for case, value in zip(REFUSED, read, strict=True) if value is not None] == []
    for text, unit in REFUSED:
        with pytest.raises(ValueError):
            quantity(text, unit)


def asked(unit="Hz", wanted="1.592 MHz", slips=(), relative=0.005, absolute=0.0) -> dict:
    return {"unit": unit, "wanted": wanted, "slips": list(slips), "relative": relative, "absolute": absolute}


def test_a_ratio_is_named_as_the_checker_names_it():
    ratios = [sign * ratio**power for ratio in (*NAMED_RATIOS.values(), 3.7) for sign in (1, -1) for power in (1, -1)] + [-1.0]
    _, judged = node(judge=[(repr(ratio * 3.0), asked(wanted="3.000 Hz")) for ratio in ratios])
    for ratio, verdict in zip(ratios, judged, strict=True):
        assert verdict["kind"] == "off"
        assert verdict["says"].endswith(f": {ratio_in_words([(ratio * 3.0, 3.0)] * 3)}.")
    steps = [1.0, -3.01, 10.0]
    _, judged = node(judge=[(f"{5 + step:.2f} dB", asked("dB", "5.000 dB", (), 0.0, 0.05)) for step in steps])
    for step, verdict in zip(steps, judged, strict=True):
        assert verdict["says"].endswith(f": {ratio_in_words([(5 + step, 5.0)] * 3, 'dB')}.")


VERDICTS = [  # what is typed, what is asked, the kind of verdict and its words
    ("1.592 MHz", asked(), "right", "Right: 1.592 MHz."),
    ("1.6e6", asked(), "off", "Not 1.6 × 10⁶: yours is 1.005 times too large."),
    ("1.599 MHz", asked(), "right", "Right: 1.592 MHz."),
    ("1592", asked(), "off", "Not 1592: yours is 1000 times too small."),
    ("0", asked(), "off", "Not 0: the answer is not zero."),
    ("828 kHz", asked(wanted="828 kHz", relative=0.0), "right", "Right: 828 kHz."),
    ("829 kHz", asked(wanted="828 kHz", relative=0.0), "off", "Not 829 kHz: yours is 1.001 times too large."),
    ("-45", asked("°", "45.00°", (), 0.0, 0.05), "off", "Not −45: yours is 90° too low."),
    ("4.5e-6", asked("", "4.500e-6"), "right", "Right: 4.500 × 10⁻⁶."),
    ("five", asked(), "unread", "“five” is not a quantity in Hz: write a number, a space and the unit."),
    ("five", asked("", "5"), "unread", "“five” is not a plain number: write one such as 0.25."),
]


def test_each_verdict_is_one_plain_sentence():
    _, judged = node(judge=[(typed, asks) for typed, asks, _, _ in VERDICTS])
    assert [(verdict["kind"], verdict["says"], verdict["slip"]) for verdict in judged] == [(*case[2:], -1) for case in VERDICTS]
    with pytest.raises(ValueError) as told:
        quantity("five", "Hz")
    assert f"{told.value}.".replace("'five'", "“five”") in [verdict["says"] for verdict in judged]


@pytest.fixture(scope="module")
def every_question(course) -> list[tuple[str, dict]]:
    """(exercise, question in numbers) of the whole course, as the site was built with them."""
    folder = course / "course" / "build" / "answers"
    typed = TypedAnswers(ROOT, MediaSources(ROOT).modules, folder)
    found = []
    for path in (f"{unit.folder}/{name}" for unit in UNITS for name in unit.exercises):
        record = folder / f"{path}.json"  # there, unless it was taken away from beside pages that are kept
        asked = json.loads(record.read_text("utf-8"))["asked"] if record.is_file() else typed.of(load_exercise(path))
        found += [(path, one) for one in asked.values()]
    assert len(found) > 240
    return found


def test_of_every_instance_what_is_right_is_right_each_slip_has_its_sentence_and_nonsense_one(every_question):
    cases = []  # what is typed, what is asked, the kind of verdict, and the texts of slips of which one is to be named
    for _, one in every_question:
        assert len(one["instances"]) == 3
        for instance in one["instances"]:
            for part in instance["parts"]:
                asks = asked(part["unit"], part["wanted"], part["slips"], one["relative"], one["absolute"])
                assert len(part["slips"]) == len(one["slips"])
                cases += [(part["wanted"], asks, "right", ""), ("what?", asks, "unread", "")]
                cases += [(slip, asks, "off", slip) for slip in part["slips"] if slip]
    _, judged = node(judge=[(typed, asks) for typed, asks, _, _ in cases])
    named = 0
    for (typed, asks, kind, slip), verdict in zip(cases, judged, strict=True):
        assert verdict["kind"] == kind, (typed, asks, verdict)
        assert (verdict["slip"] >= 0) == bool(slip)
        assert not slip or asks["slips"][verdict["slip"]] == slip, (typed, asks, verdict)
        named += bool(slip)
    assert named > 3000


def test_nearly_every_slip_of_the_checks_can_be_told_in_some_instance(every_question):
    """A check that names no slip by its number would be none: the rounding is fine enough to tell slips from what is right."""
    told = [
        any(part["slips"][place] for instance in one["instances"] for part in instance["parts"])
        for _, one in every_question
        for place in range(len(one["slips"]))
    ]
    assert sum(told) > 0.95 * len(told)


LOADED = {"unit00", "unit01", "unit02", "unit03"}  # checks of which to load all would take seconds


def inputs_as_shown(question, instance: dict) -> tuple | None:
    """The inputs read back from what a reader sees; None if one of them is no single number or word."""
    inputs = []
    for (name, text), (argument, given) in zip(instance["given"], question.given.items(), strict=True):
        assert name == argument.replace("_", " ")
        if any(isinstance(value, str) for value in given.values[:1]):
            inputs.append(text)
            continue
        try:
            value = any_quantity(text.replace(",", ""))[0]
        except ValueError:
            return None
        if given.ends:
            assert given.ends[0] <= value <= given.ends[-1], (name, text)
        inputs.append(int(value) if isinstance(given.values[0], int) else value)
    return tuple(inputs)


def test_what_is_wanted_is_the_references_answer_to_what_is_shown(every_question):
    compared = 0
    for path, one in every_question:
        if path.split("_")[0] not in LOADED:
            continue
        question = next(q for q in load_exercise(path).questions if q.name == one["name"])
        for instance in one["instances"]:
            [part, *more] = instance["parts"]
            inputs = None if more else inputs_as_shown(question, instance)
            if inputs is None:
                continue
            assert question.where(*inputs)
            wanted = quantity(part["wanted"], part["unit"])
            assert (
                abs(float(question.asks(*inputs)) - wanted) <= 0.2 * (one["relative"] or 1e-9) * abs(wanted) + one["absolute"]
            ), (
                path,
                instance,
            )
            compared += 1
    assert compared > 150


def test_a_coil_and_a_condenser_tune_where_a_handbook_says():
    """The handbooks' constant: MHz² µH pF = 25 330 (US National Bureau of Standards, Circular 74, 1924; from memory)."""
    [one] = asked_in_numbers(load_exercise("unit03_tuned_circuit/resonance"))
    assert one.name == "resonant_frequency" and one.slips[0].startswith("You may have returned the angular frequency")
    for instance in one.instances:
        (_, inductance), (_, capacitance) = instance.given
        product = quantity(inductance, "H") * 1e6 * quantity(capacitance, "F") * 1e12
        assert quantity(instance.parts[0].wanted, "Hz") == pytest.approx(1e6 * (25330 / product) ** 0.5, rel=5e-4)


@pytest.mark.parametrize(
    ("value", "given", "shown"),
    [
        (True, one_of(True, False), "yes"),
        (False, one_of(True, False), "no"),
        ("E24", one_of("E6", "E24"), "E24"),
        (2005, whole(2000, 2100), "2005"),
        (2.5e-12, farads("1 pF", "1 nF"), "2.5 pF"),
        (30 - 800j, drawn([30 - 800j], "an aerial", unit="Ω"), "(30 - 800j) Ω"),
    ],
)
def test_what_is_given_reads_as_a_person_writes_it(value, given, shown):
    assert shown_input(value, given) == shown


def test_instances_are_the_same_each_time_and_no_formula_or_array_is_asked():
    exercise = load_exercise("unit01_signal/channel_plan")
    assert asked_in_numbers(exercise) == asked_in_numbers(exercise)
    assert [one.name for one in asked_in_numbers(exercise)] == ["nearest_channel", "wavelength", "image_reading"]
    assert asked_in_numbers(load_exercise("unit08_two_stations/dial_log")) == []


def test_the_rounding_is_as_wide_as_tells_the_slips_from_what_is_right():
    tolerance = relative(1e-9, because="one formula")
    assert [rounding.relative for rounding in roundings_for(tolerance, ("Hz",))] == pytest.approx([5e-3, 5e-4, 5e-5])
    assert [rounding.absolute for rounding in roundings_for(tolerance, ("dB", "dB"))] == pytest.approx([0.05, 0.005, 0.0005])
    loose = relative(0.01, because="a table")
    assert {rounding.relative for rounding in roundings_for(loose, ("Ω",))} == {0.01}
    question = load_exercise("unit03_tuned_circuit/quality_factor").questions
    [edges] = [each for each in question if each.name == "half_power_frequencies"]
    [one] = [each for each in asked_in_numbers(Exercise("edges", [edges], ["", "", ""])) if each.name == edges.name]
    assert one.relative < 5e-3  # the two edges lie nearer together than that


def test_instances_are_kept_until_what_they_are_made_from_changes(tmp_path, monkeypatch):
    exercise = load_exercise("unit03_tuned_circuit/resonance")
    typed = TypedAnswers(ROOT, MediaSources(ROOT).modules, tmp_path)
    first = typed.of(exercise)
    assert first == json.loads(json.dumps({one.name: asdict(one) for one in asked_in_numbers(exercise)}))
    monkeypatch.setattr("course.answers.instances.asked_in_numbers", lambda exercise: [])
    assert typed.of(exercise) == first
    typed.maker = "another"
    assert typed.of(exercise) == {}


def boxes(page: str) -> list[str]:
    return re.findall(r'<fieldset class="typed".*?</fieldset>', page, re.S)


def test_what_is_wanted_stands_nowhere_in_the_text_and_slips_in_both_vocabularies(course):
    page = (course / "course" / "site" / "unit03_tuned_circuit" / "index.html").read_text("utf-8")
    found = boxes(page)
    assert len(found) >= 8
    for box in found:
        text = html.unescape(re.sub(r"<[^>]*>", "", box))
        for wanted in re.findall(r'data-wanted="([^"]*)"', box):
            assert wanted not in text
    slips = "".join(re.findall(r'<ul class="typed-slips".*?</ul>', page, re.S))
    assert "data-us=" in slips and "You may have" in slips
    assert not re.search(
        r"`|e[+-]\d\d|[^\w]-\d",
        html.unescape(re.sub(r"<[^>]*>", "", "".join(re.findall(r"<form.*?</form>", "".join(found), re.S)))),
    )


def test_on_paper_the_instances_are_numbered_and_their_answers_stand_at_the_end(tmp_path):
    box = (
        '<fieldset class="typed" data-asks="a"><legend>Answer in numbers</legend><p class="typed-how">…</p>'
        '<form><p class="typed-given">voltage <b>{} V</b></p><p class="typed-part"><label>power, <b>W</b></label>'
        '<input data-unit="W" data-wanted="-{} W" data-slips=""><output></output></p><p class="typed-do"><button>Check</button></p>'
        "</form></fieldset>"
    )
    pages = [
        Finished(name, name, box.format(n, 10 * n) + box.format(n + 1, 10 * n + 10))
        for name, n in (("a.html", 1), ("b.html", 3))
    ]
    joined = join_pages(pages, Kept(tmp_path, ""))
    before, after = joined.split('<section class="page" id="numbers">')
    assert re.findall(r'asked-number">(\d)</b>voltage <b>(\d) V', before) == [(str(n), str(n)) for n in (1, 2, 3, 4)]
    assert re.findall(r'asked-number">(\d)</b>([^<]*)</p>', after) == [
        (str(n), f"−{10 * n}\N{NO-BREAK SPACE}W") for n in (1, 2, 3, 4)
    ]
    assert "<input" not in joined and "data-wanted" not in joined


def test_the_booklet_holds_every_instance_of_its_pages(course):
    site = course / "course" / "site"
    asked_for = sum(
        len(re.findall(r"<form\b", box))
        for page in (site / "unit03_tuned_circuit").glob("*.html")
        for box in boxes(page.read_text("utf-8"))
    )
    before, after = (site / "print" / "unit03_tuned_circuit.html").read_text("utf-8").split('id="numbers"')
    assert asked_for > 40
    assert after.count("asked-number") == before.count("typed-paper") == asked_for


FIELD = ".typed form:not([hidden]) input"
HEARD = """field => [document.getElementById(field.id).labels[0].textContent,
  ...["aria-labelledby", "aria-describedby"].map(name =>
    field.getAttribute(name).split(" ").map(id => document.getElementById(id).textContent).join(" "))]"""


@pytest.mark.parametrize("storage", ["kept", "refused"])
def test_an_answer_is_judged_as_it_is_typed_on_a_phone_and_kept_on_that_device(chromium, course, every_question, storage):
    site = course / "course" / "site"
    [one] = [one for path, one in every_question if path == "unit00_bench/metres"]
    [first, second, _] = one["instances"]
    with Watched(chromium, viewport=PHONE) as watched:
        page = watched.page
        if storage == "refused":
            page.add_init_script("Object.defineProperty(window, 'localStorage', { get() { throw new Error('refused') } })")
        page.goto((site / "unit00_bench" / "tools.html").as_uri())
        page.evaluate("for (const fold of document.querySelectorAll('.exercise details')) fold.open = true")
        form = page.locator("#exercise-metres .typed form:not([hidden])")
        field, said, given = form.locator("input"), form.locator("output"), form.locator(".typed-given")

        def answer(text):
            field.fill(text)
            field.press("Enter")
            return plain(said)

        label, name, described = field.evaluate(HEARD)
        assert label == "wavelength, m" and name == f"{given.text_content()} {label}"
        assert "0.05\N{NO-BREAK SPACE}% is right" in described
        assert answer("what?") == "“what?” is not a quantity in m: write a number, a space and the unit."
        assert answer(first["parts"][0]["slips"][0]).endswith(f" times too small. {one['slips'][0]}")
        assert answer(first["parts"][0]["wanted"]) == f"✓ Right: {first['parts'][0]['wanted']}."
        assert field.evaluate(HEARD)[2].endswith(said.text_content()) and said.evaluate("said => said.tagName") == "OUTPUT"
        form.locator(".typed-next").click()
        assert plain(given) == "; ".join(f"{name} {value}" for name, value in second["given"])
        assert page.evaluate("document.activeElement.dataset.wanted") == second["parts"][0]["wanted"]
        dial = page.locator(".dial a", has_text="Bench")
        assert re.search(r": 0 of \d pages read, 1 of \d+ answers right$", dial.text_content())
        if storage == "kept":
            page.locator(".onward").scroll_into_view_if_needed()
            page.locator(".dial a", has_text="Bench: 1 of").wait_for(state="attached")
            page.reload()
            assert said.text_content() == "✓ Answered right before."
            page.goto((site / "index.html").as_uri())
            unit = page.locator(".units li:has([href*=unit00])")
            assert re.search(r"1 of \d pages read, 1 of \d+ answers right", plain(unit))
            page.click(".forget")
            assert "pages read" not in plain(unit) and not page.is_visible(".forget")
            assert json.loads(page.evaluate("localStorage.getItem('standing')")) == {"right": [], "read": []}
        assert not watched.wrong, watched.wrong


def plain(part) -> str:
    """The text of a part of a page, with plain spaces."""
    return part.inner_text().replace("\N{NO-BREAK SPACE}", " ")
