"""Likeness: copies are listed with the evidence, whatever was renamed; what everyone shares never is."""

import random
import re
import time

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from checker.course import PATHS, ROOT
from checker.submissions.likeness import IN_SHAPE, WORD_FOR_WORD, compare_submissions
from checker.submissions.tokens import GRAM, MOST_WORDS, Handout, code_lines, grams, inside, words
from tests.checker import made
from tests.checker.sample import as_handed_in

SOLENOID, RESONANCE, QUALITY = (
    "unit02_coil_and_condenser/solenoid_inductance",
    "unit03_tuned_circuit/resonance",
    "unit03_tuned_circuit/quality_factor",
)
STUB = {
    path: (ROOT / "exercises" / f"{path}.py").read_text("utf-8")
    for path in PATHS
    if (ROOT / "exercises" / f"{path}.py").exists()
}

UNWRITTEN = "    raise NotImplementedError\n"


def find_alike(members, paths):
    """The pairs alone; nothing failed on the way."""
    alike, faults = compare_submissions(members, paths)
    assert faults == {}
    return alike


def filled(path, *bodies):
    """The stub with its bodies written, in order; those that are not given stay as they are."""
    first, *parts = STUB[path].split(UNWRITTEN)
    bodies = [*bodies, *[UNWRITTEN] * (len(parts) - len(bodies))]
    return first + "".join(body + part for body, part in zip(bodies, parts, strict=True))


# An unusual way to the elliptic integrals and Nagaoka's coefficient, invented for this test: nobody comes to it twice.
ODD_WAY = """\
    # walk down the ladder of means until the rungs touch
    upper, lower = 1.0, np.sqrt(1 - parameter)
    leftover = parameter / 2
    weight = 0.5
    for rung in range(40):
        gap = (upper - lower) / 2
        upper, lower = (upper + lower) / 2, np.sqrt(upper * lower)
        weight = 2 * weight
        leftover = leftover + weight * gap * gap
        if np.max(np.abs(gap)) < 1e-17:
            break
    first = np.pi / (upper + lower)
    return first, first * (1 - leftover)
"""
SERIES = """\
    total, piece = np.sin(1 + parameter), np.sqrt(1 + parameter)
    for order in range(30):
        piece = np.exp(piece) * np.sin(order + parameter) / np.sqrt(order + 3)
        total = total - np.sqrt(piece) * np.sin(total) / np.exp(order)
    return np.sqrt(np.exp(total)), np.sin(np.exp(piece))
"""
RENAMED = """\
    a, b = 1.0, np.sqrt(1 - parameter)

    s = parameter / 2
    w = 0.5
    for n in range(40):
        d = (a - b) / 2
        a, b = (a + b) / 2, np.sqrt(a * b)  # means
        w = 2 * w

        s = s + w * d * d
        if np.max(np.abs(d)) < 1e-17: break
    k = np.pi / (a + b)
    return k, k * (1 - s)
"""


def honest(number):
    """A member who works alone: natural answers in their own spelling."""
    chance = random.Random(number)
    w, q = chance.choice(["w", "omega", "angular"]), chance.choice(["q", "Q", "quality"])
    remark = chance.choice(
        ["", "    # two pi, do not forget\n", "    # Thomson's formula\n", f"    # tried it {number} times\n"]
    )
    resonance = chance.choice(
        [
            "    return 1 / (2 * np.pi * np.sqrt(inductance * capacitance))\n",
            "    return 1 / (2 * np.pi * np.sqrt(capacitance * inductance))\n",
            "    return 1 / (2 * np.pi * (inductance * capacitance) ** 0.5)\n",
            f"    {w} = 1 / np.sqrt(inductance * capacitance)\n    return {w} / (2 * np.pi)\n",
            f"    {w} = (inductance * capacitance) ** -0.5\n    return {w} / 2 / np.pi\n",
        ]
    )
    condition = chance.choice(
        [
            "    return 1 / sympy.sqrt(inductance * capacitance)\n",
            "    return (inductance * capacitance) ** sympy.Rational(-1, 2)\n",
            "    w = sympy.Symbol('w', positive=True)\n    return sympy.solve(w * inductance - 1 / (w * capacitance), w)[0]\n",
        ]
    )
    quality = chance.choice(
        [
            "    return 2 * np.pi * frequency * inductance / resistance\n",
            "    return (2 * np.pi * frequency * inductance) / resistance\n",
            f"    {w} = 2 * np.pi * frequency\n    return {w} * inductance / resistance\n",
        ]
    )
    halves = chance.choice(
        [
            f"    {q} = 1 / (2 * quality_factor)\n    root = np.sqrt(1 + {q}**2)\n"
            f"    return resonant_frequency * (root - {q}), resonant_frequency * (root + {q})\n",
            "    half = resonant_frequency / quality_factor / 2\n    middle = np.sqrt(resonant_frequency**2 + half**2)\n"
            "    return middle - half, middle + half\n",
        ]
    )
    return {
        f"{RESONANCE}.py": filled(RESONANCE, remark + resonance, condition),
        f"{QUALITY}.py": filled(
            QUALITY,
            remark + quality,
            "    return resonant_frequency / quality_factor\n",
            halves,
            "    return inductance / (capacitance * resistance)\n",
        ),
    }


CLASS = [(f"member {number}", honest(number)) for number in range(30)]
COMPARED = (SOLENOID, RESONANCE, QUALITY)


def with_solenoid(members, *bodies_of):
    """The class with a solenoid file, by member's place: one body each."""
    bodies = dict(bodies_of)
    return [
        (name, files | ({f"{SOLENOID}.py": filled(SOLENOID, bodies[place])} if place in bodies else {}))
        for place, (name, files) in enumerate(members)
    ]


def test_honest_members_are_not_listed():
    assert find_alike(CLASS, COMPARED) == []


@pytest.mark.parametrize("size", [2, 3, 5, 12])
def test_honest_members_of_a_small_class_are_not_listed(size):
    assert find_alike(CLASS[:size], COMPARED) == []


def test_stubs_and_the_reference_itself_are_not_listed():
    reference = {f"{path}.py": as_handed_in((ROOT / "solutions" / f"{path}.py").read_text("utf-8")) for path in COMPARED}
    stubs = {f"{path}.py": STUB[path] for path in COMPARED}
    assert (
        find_alike(
            [
                ("Isla Marrow", reference),
                ("Orla Quill", reference),
                ("Jasper Thrift", stubs),
                ("Kit Harrow", stubs),
                ("Nell Samphire", {}),
            ],
            COMPARED,
        )
        == []
    )


def test_a_copy_is_listed_word_for_word_with_its_lines():
    members = with_solenoid(CLASS, (3, ODD_WAY), (17, ODD_WAY))
    [alike] = find_alike(members, COMPARED)
    assert alike.members == ("member 3", "member 17")
    [on] = alike.exercises
    assert (on.exercise, on.manner, on.held_by) == (SOLENOID, "word for word", 2)
    assert on.shared == on.of > 90
    for side, place in zip(on.sides, (3, 17), strict=True):
        text = members[place][1][f"{SOLENOID}.py"].split("\n")
        assert side.member == f"member {place}"
        assert all(text[number - 1] == line for number, line, _ in side.lines)
        marked = [line for _, line, is_shared in side.lines if is_shared]
        assert "\n".join(marked) + "\n" == ODD_WAY
        assert any("def nagaoka_coefficient" in line and not is_shared for _, line, is_shared in side.lines)


def test_renaming_and_remarks_and_blank_lines_hide_nothing():
    [alike] = find_alike(with_solenoid(CLASS, (3, ODD_WAY), (17, RENAMED)), COMPARED)
    [on] = alike.exercises
    assert on.manner == "in shape"
    assert on.shared >= 90


def test_functions_in_another_order_hide_nothing():
    first = filled(SOLENOID, ODD_WAY)
    head, *functions = re.split(r"(?=^def )", first, flags=re.MULTILINE)
    turned = head + "".join(reversed(functions))
    members = [
        (name, files | {f"{SOLENOID}.py": text}) for (name, files), text in zip(CLASS[:2], (first, turned), strict=True)
    ] + CLASS[2:]
    assert [alike.members for alike in find_alike(members, COMPARED)] == [("member 0", "member 1")]


def test_what_a_large_part_of_the_class_has_is_not_listed():
    assert find_alike(with_solenoid(CLASS, *((place, ODD_WAY) for place in range(15))), COMPARED) == []
    assert (
        find_alike(with_solenoid(CLASS, *((place, RENAMED if place % 2 else ODD_WAY) for place in range(26))), COMPARED) == []
    )


def test_a_group_is_listed_pair_by_pair_and_says_how_many_hold_it():
    found = find_alike(with_solenoid(CLASS, (1, ODD_WAY), (2, ODD_WAY), (3, ODD_WAY)), COMPARED)
    assert {alike.members for alike in found} == {
        ("member 1", "member 2"),
        ("member 1", "member 3"),
        ("member 2", "member 3"),
    }
    assert {on.held_by for alike in found for on in alike.exercises} == {3}


def test_a_short_piece_in_a_long_program_is_not_listed():
    own = "".join(f"    step{n} = parameter * {n} + np.sin({n} * parameter) ** {n}\n" for n in range(40))
    other = "".join(f"    part_{n} = np.cos(parameter / {n + 1}) - {n} / (1 + parameter * {n})\n" for n in range(40))
    half = "\n".join(ODD_WAY.split("\n")[:7]) + "\n"
    assert find_alike(with_solenoid(CLASS, (3, own + half), (17, other + half)), COMPARED) == []


def test_the_most_alike_come_first():
    found = find_alike(with_solenoid(CLASS, (1, SERIES), (2, SERIES), (5, ODD_WAY), (9, ODD_WAY)), COMPARED)
    assert [alike.members for alike in found] == [("member 5", "member 9"), ("member 1", "member 2")]


def test_one_line_is_never_enough():
    line = "    return " + " + ".join(f"(parameter - {n}) ** {n + 1} / {n + 3}" for n in range(20)) + "\n"
    assert find_alike(with_solenoid(CLASS, (3, line), (17, line)), COMPARED) == []


def test_the_same_steps_with_other_functions_are_not_the_same_shape():
    other = SERIES.replace("np.sin", "np.cos").replace("np.sqrt", "np.log").replace("np.exp", "np.tanh")
    renamed = other.replace("total", "sum_").replace("piece", "p").replace("order", "k")
    assert find_alike(with_solenoid(CLASS, (3, SERIES), (17, renamed)), COMPARED) == []


def test_those_who_left_the_stub_do_not_make_a_crowd_look_small():
    members = [(name, files | {f"{SOLENOID}.py": STUB[SOLENOID]}) for name, files in CLASS]
    assert find_alike(with_solenoid(members, *((place, ODD_WAY) for place in range(5))), COMPARED) == []


def test_a_remark_of_signs_alone_is_no_stumbling_block():
    rule = f"# {'-' * 70}\n#\n"
    marked = with_solenoid(CLASS, (3, rule + ODD_WAY), (17, ODD_WAY + rule))
    assert [alike.members for alike in find_alike(marked, COMPARED)] == [("member 3", "member 17")]


def test_what_is_not_python_is_compared_all_the_same():
    broken = ODD_WAY.replace("for rung in range(40):", "for rung in range(40")
    assert [alike.members for alike in find_alike(with_solenoid(CLASS, (3, broken), (17, broken)), COMPARED)] == [
        ("member 3", "member 17")
    ]


@settings(deadline=None)
@given(st.lists(made.any_text | st.text("#\"'\\\n def(){}.-=x", max_size=60), max_size=4))
def test_any_text_can_be_compared(texts):
    find_alike([(f"member {n}", {f"{RESONANCE}.py": text}) for n, text in enumerate(texts)], COMPARED)


@given(made.any_text)
def test_lines_keep_their_numbers(text):
    assert len(code_lines(text)) == len(text.split("\n"))


def test_words_and_signs_of_a_line():
    assert words("x = 2*np.pi # Two pi!") == ["x", "=", "2.0", "*", "np", ".", "pi", "#two", "#pi"]
    assert words("a**2 >= 1e-3 - b'\\'#' // .5") == ["a", "**", "2.0", ">=", "0.001", "-", "b'\\'#'", "//", "0.5"]
    assert words('s = "# not a remark"') == ["s", "=", '"# not a remark"']


def test_heads_of_functions_are_given_however_they_are_written():
    given_to_all = Handout(STUB[RESONANCE])
    text = "import numpy as np\n\ndef resonant_frequency(\n    L, C=(1, 2),\n) -> float: return 1 / L\n"
    text += "\ndef mine(x):\n    return x\n"
    assert [[word for word, _ in stretch] for stretch in given_to_all.own_stretches(text)] == [
        ["return", "1.0", "/", "L", "def", "mine", "(", "x", ")", ":", "return", "x"]
    ]


def test_few_are_a_sixth_or_three_but_never_a_crowd():
    assert [WORD_FOR_WORD.few(size) for size in (1, 12, 30, 72, 5000)] == [3, 3, 5, 12, 12]
    assert [IN_SHAPE.few(size) for size in (1, 12, 30, 72, 5000)] == [3, 3, 4, 4, 4]


def test_two_hundred_members_take_seconds():
    """Not a race: ten times the time that it should take is allowed for."""
    members = [(f"member {n}", honest(n)) for n in range(200)]
    began = time.process_time()
    find_alike(members, (RESONANCE, QUALITY))
    assert time.process_time() - began < 10 * 2 * 0.15


@pytest.mark.parametrize(
    "text",
    ['"""' + ' \\"""' * 50_000, "'''" + " \\'''" * 50_000, '"a\\' * 80_000, "'\\" * 120_000, "." * 250_000, "(" * 250_000],
    ids=["docstring", "other docstring", "string", "other string", "dots", "brackets"],
)
def test_no_text_keeps_the_comparison_busy(text):
    """Time grows with the length alone: each of these took minutes when an opened string was looked for again and again."""
    started = time.process_time()
    assert [words(line) for line in code_lines(text)]
    find_alike([(name, {f"{RESONANCE}.py": text}) for name in ("Rufus Tern", "Silas Groyne")], COMPARED)
    assert time.process_time() - started < 20


def test_of_a_long_program_the_beginning_is_compared_and_the_time_is_bounded():
    """Three members with one and the same forty thousand characters in each file; it took ten seconds, and should take one."""
    text = "".join(f"a{n} = b{n} * {n} + c - {n} / (d{n} + 1)\n" for n in range(1500))
    own = Handout(STUB[RESONANCE]).own_stretches(text)
    assert sum(map(len, own)) == MOST_WORDS
    members = [(f"member {n}", {f"{path}.py": text for path in list(STUB)[:10]}) for n in range(3)]
    began = time.process_time()
    found = find_alike(members, list(STUB)[:10])
    assert time.process_time() - began < 5
    assert len(found) == 3 and all(on.shared == on.of == MOST_WORDS for alike in found for on in alike.exercises)


@given(st.lists(st.sampled_from("abc"), max_size=40), st.lists(st.sampled_from("abc"), max_size=40))
def test_what_two_rows_share_is_every_run_of_ten(one, other):
    runs = [{tuple(row[place : place + GRAM]) for place in range(len(row) - GRAM + 1)} for row in (one, other)]
    marked = [
        any(tuple(one[place : place + GRAM]) in runs[1] for place in range(max(0, at - GRAM + 1), at + 1))
        for at in range(len(one))
    ]
    [mine], [yours] = (grams([[(word, 1) for word in row]]) for row in (one, other))
    assert len(mine) == max(0, len(one) - GRAM + 1)
    assert not len(mine) or inside(mine, yours).tolist() == marked
