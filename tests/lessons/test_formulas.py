"""Every formula of every lesson, as it stands in the page, is worked out and holds.

Held are all formulas set on lines of their own, and those within a line that relate something worked out to something else
(`$X_L X_C = L/C$`, not `$p = 1$` nor `$R_L = R$`). What each letter stands for is in the tables, a module a unit.
"""

import importlib
import re
from dataclasses import replace
from pathlib import Path

import pytest

from tests.lessons.holding import Words, fault, found
from tests.lessons.latex import LESSONS, formulas

UNITS = sorted(file.stem for file in Path(__file__).parent.glob("unit??.py"))
PAGES = {page.path: page for unit in UNITS for page in importlib.import_module(f"tests.lessons.{unit}").PAGES}
WITH_FORMULAS = [path for path in sorted(str(file.relative_to(LESSONS)) for file in LESSONS.rglob("*.md")) if formulas(path)]


def test_every_page_with_formulas_has_a_table():
    assert sorted(PAGES) == WITH_FORMULAS


@pytest.mark.parametrize("path", WITH_FORMULAS)
def test_every_formula_holds(path):
    page = PAGES[path]
    faults = [fault(formula, page) for formula in formulas(path) if not isinstance(page.of(formula), Words)]
    assert not list(filter(None, faults)), "\n".join(filter(None, faults))


@pytest.mark.parametrize("path", sorted(PAGES))
def test_every_entry_finds_its_formula(path):
    for one in PAGES[path].special:
        times = [formula.text for formula in formulas(path) if found(one.find, formula)]
        assert len(times) == 1, f"{path}: {one.find!r} is found in {len(times)} formulas"


def test_reasons_are_given():
    for page in PAGES.values():
        for one in page.special:
            assert one.because or not isinstance(one, Words) and one.within == 1e-9, f"{page.path}: {one.find!r} needs a reason"


# One thing changed in one place: a sign, a power, a root, a factor.
MISPRINTS = [
    (r"\+(?!\s*\\c?dots)", "-"),
    (r"(?<=[\w})] )-(?!\s*\\c?dots)|(?<={)-", "+"),
    (r"\^2", "^3"),
    (r"\\sqrt\s*{", r"\\sqrt[3]{"),
    (r"(?<![\d.^_{])2(?![\d.])", "3"),
    (r"(=|\\approx|\\to)(?!\s*[-0])", r"\1 2 \\cdot "),
    (r"^(?!.*\\ge 0$|\()", r"2 \\cdot "),
]
# No misprint: the size of a complex number is that of its conjugate.
AS_TRUE = {
    r"E = \frac{\sqrt{90 P}}{d}\, \left|1 + \frac{j}{x} - \frac{1}{x^2}\right|",
    r"\left|1 - jQd\right| \quad\text{times, with}\quad d = \frac{f}{f_0} - \frac{f_0}{f}",
    r"\frac{v_\text{tuned}}{v} = \left|\frac{\mu\, M}{C\, r\,\left(r_a - j\omega L + (\omega M)^2/r\right)}\right|",
}


@pytest.mark.slow
@pytest.mark.parametrize("path", sorted(PAGES))
def test_every_misprint_is_found(path):
    page = PAGES[path]
    for formula in formulas(path):
        for old, new in MISPRINTS if not isinstance(page.of(formula), Words) else ():
            if re.search(old, formula.text):
                misprint = replace(formula, text=re.sub(old, new, formula.text, count=1))
                wrong = fault(misprint, page, page.of(formula)) or misprint.text in AS_TRUE
                assert wrong, f"{path}: this passed: {misprint.text}"
