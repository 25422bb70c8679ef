"""Each picture of a unit's pages can be drawn: for one unit, `pytest -m unit03`; a whole run draws them for the site.

In every circuit diagram the HT goes first through a resistor, which saves a filament from a slipped wire.
"""

import inspect
import re

import pytest
import schemdraw

from checker.course import ROOT
from course import make
from course.figures import bench

LESSONS = ROOT / "course" / "lessons"
NAMES = sorted(
    {
        name
        for page in LESSONS.glob("unit??_*/*.md")
        for name in re.findall(r'\{\{ figure\("(unit[^"]+)"\) \}\}', page.read_text("utf-8"))
    }
)


@pytest.mark.pictures
@pytest.mark.parametrize("name", NAMES)
def test_it_can_be_drawn(name, tmp_path):
    assert make.main(["figure", name, "--into", str(tmp_path)]) in (None, 0)
    files = {file.suffix: file for file in tmp_path.rglob("*") if file.is_file()}
    assert ".txt" in files and max(file.stat().st_size for file in files.values()) > 2000


def schematics():
    for name, function in make.makers(make.FIGURE):
        if inspect.signature(function).return_annotation is schemdraw.Drawing or "schematic()" in inspect.getsource(function):
            yield name, function


SCHEMATICS = dict(schematics())
FED = (
    "sets/one_valve",
    "sets/quenched_set",
    "bench/quenched",
    "unit05_valve_detector/set_with_places",
    "unit09_audio_reflex/reflex_set",
)


def unguarded(drawing):
    """Places of the HT where no resistor, and no fuse with a resistor behind it, begins."""
    ends = [
        (type(part).__name__, [tuple(part.absanchors[end]) for end in ("start", "end")])
        for part in drawing.elements
        if type(part).__name__ in ("ResistorIEC", "FuseIEC")
    ]

    def near(one, other):
        return max(abs(one[0] - other[0]), abs(one[1] - other[1])) < 1e-3

    def kinds(place):
        return {kind: found for kind, found in ends if any(near(place, end) for end in found)}

    def guarded(place):
        past_the_fuse = next((end for end in kinds(place).get("FuseIEC", []) if not near(place, end)), place)
        return "ResistorIEC" in kinds(past_the_fuse)

    feet = [
        (label.label, tuple(part.absanchors["foot"]))
        for part in drawing.elements
        if type(part).__name__ == "Supply"
        for label in part._userlabels
    ]
    ht = [place for name, place in feet if re.match(r"HT|\+90 V", name)]
    return len(ht), [place for place in ht if not guarded(place)]


@pytest.mark.parametrize("name", sorted(SCHEMATICS))
def test_the_ht_goes_first_through_a_resistor(name):
    supplies, bare = unguarded(SCHEMATICS[name]())
    assert bare == []
    assert supplies or name not in FED


@pytest.mark.parametrize("name", sorted(name for name in SCHEMATICS if name.startswith("bench/")))
def test_a_knob_of_the_bench_lights_its_own_part(name):
    """Tuning and reaction are each a variable condenser; the coupling's light stands at its windings."""
    parts = SCHEMATICS[name]().elements
    condensers = [part.absanchors["center"] for part in parts if type(part).__name__ == "CapacitorVar"]
    windings = next(part.absanchors["middle1"] for part in parts if type(part).__name__ == "Windings")
    lights = [part for part in parts if type(part).__name__ == "Light"]
    assert lights
    for light in lights:
        of_its_own = {bench.COUPLING: [windings], bench.TUNING: condensers, bench.REACTION: condensers}
        colour, (x, y) = light.segments[0].color, light.absanchors["xy"]
        for part in [of_its_own[colour]] if colour in of_its_own else []:
            assert min(max(abs(x - place[0]), abs(y - place[1])) for place in part) < 0.35, colour
