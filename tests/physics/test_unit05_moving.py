"""The moving pictures show what the laws compute, in numbers of dots and in their times; they stop when they are asked to."""

import re

import numpy as np
import pytest
from scipy.integrate import quad

from course.figures.unit05_valve import moving
from solutions.unit05_valve.emission import emission_density
from solutions.unit05_valve.one_valve_set import HT, LAW
from solutions.unit05_valve.space_charge import anode_density, transit_time
from solutions.unit05_valve.triode_current import triode_current

SCENES = ("hot_filament", "space_charge", "to_the_anode", "grid_control", "signal_on_the_grid")
DOT = re.compile(r'<circle cx="([\d.]+)" cy="([\d.]+)" r="2\.3" class="[\w-]+-(\d+)" style="animation-delay:(-?[\d.]+)s"/>')


def drawn(scene):
    """A picture, and its electrons as rows of: height, number of the journey, moment of leaving, units that it goes."""
    picture = getattr(moving, scene)()
    ends = [float(re.findall(r"translate\(([-\d.e]+)px", way)[-1]) for way in picture.journeys]
    found = [match.groups() for match in map(DOT.fullmatch, picture.parts) if match]
    electrons = np.array([(float(y), int(way), float(delay) + picture.seconds, ends[int(way)]) for _, y, way, delay in found])
    assert electrons[:, 3].max() <= moving.RIGHT - moving.LEFT  # none flies through the anode
    return picture, electrons


def counted(electrons, rows):
    """Electrons of each row that end at the anode, and that fall back to the filament."""
    row = np.round((electrons[:, 0] - 36) / moving.ROW).astype(int)
    over = electrons[:, 3] > 0.9 * (moving.RIGHT - moving.LEFT)
    return [int(np.sum((row == n) & over)) for n in range(rows)], [int(np.sum((row == n) & ~over)) for n in range(rows)]


def test_a_hot_filament_throws_out_what_richardson_says():
    over, back = counted(drawn("hot_filament")[1], 3)
    emitted = emission_density(np.array([900.0, 950.0, 1000.0]), *moving.OXIDE)
    assert over == [0, 0, 0]
    assert back == pytest.approx(emitted / 9, abs=0.5)


def test_the_space_charge_thickens_and_the_current_stays():
    over, back = counted(drawn("space_charge")[1], 3)
    emitted = emission_density(np.array([900.0, 950.0, 1000.0]), *moving.OXIDE)
    across = anode_density(45.0, 2.5e-3, emitted)
    assert len(set(over)) == 1 and over == pytest.approx(across / 7, abs=0.5)
    assert back == pytest.approx((emitted - across) / 7, abs=0.5)


def test_the_anode_draws_what_child_and_langmuir_say():
    over, back = counted(drawn("to_the_anode")[1], 4)
    emitted = emission_density(moving.HOT, *moving.OXIDE)
    across = anode_density(np.array([22.5, 45.0, 90.0, 180.0]), 2.5e-3, emitted)
    assert over == pytest.approx(across / 7, abs=0.5)
    assert np.add(over, back) == pytest.approx(emitted / 7, abs=1)


@pytest.mark.parametrize("voltage", [22.5, 45.0, 90.0])
def test_an_electron_takes_the_time_that_it_takes(voltage):
    density = anode_density(voltage, 2.5e-3, 1e6)
    time, place = moving.crossing(voltage, 2.5e-3, density)
    assert time[-1] == pytest.approx(transit_time(voltage, 2.5e-3), rel=1e-3)
    assert place == pytest.approx((time / time[-1]) ** 3, abs=1e-3)  # Child and Langmuir: as the cube of the time
    fewer, _ = moving.crossing(voltage, 2.5e-3, density / 1e6)
    assert fewer[-1] == pytest.approx(time[-1] * 2 / 3, rel=1e-3)  # no crowd: even acceleration, twice the gap over the speed


def test_the_grid_lets_through_what_the_triodes_law_says():
    over, back = counted(drawn("grid_control")[1], 3)
    current = triode_current(HT, np.array([0.0, -4.5, -9.0]), *LAW)
    assert over == pytest.approx(60 * current / current[0], abs=0.5)
    assert over[2] == 0 and np.add(over, back) == pytest.approx([66] * 3)


def test_a_signal_sends_electrons_off_in_time_with_the_current():
    picture, electrons = drawn("signal_on_the_grid")
    current = lambda t: triode_current(HT, -4.5 + 3 * np.sin(2 * np.pi * t / picture.seconds), *LAW)  # noqa: E731
    whole = quad(current, 0, picture.seconds)[0]
    for start in np.arange(0, picture.seconds, 1.0):
        share = quad(current, start, start + 1)[0] / whole
        sent = np.sum((electrons[:, 2] >= start) & (electrons[:, 2] < start + 1))
        assert sent == pytest.approx(len(electrons) * share, abs=1.5)


@pytest.mark.parametrize("scene", SCENES)
def test_it_is_small_and_its_words_serve_the_still(scene):
    picture, electrons = drawn(scene)
    assert len(picture.get_imagedata()) < 40_000
    about = getattr(moving, scene).about
    assert "Hold still" in about["caption"] and len(about["alt"]) > 150
    # Each dot has started its journey before the loop's first moment, so that the printed still is as full as the rest.
    assert np.all(electrons[:, 2] < picture.seconds)


@pytest.fixture(scope="module")
def page(chromium, tmp_path_factory):
    figures = "".join(
        f"<figure>{getattr(moving, scene)().get_imagedata().decode()}<figcaption>{getattr(moving, scene).about['caption']}"
        "</figcaption></figure>"
        for scene in SCENES
    )
    file = tmp_path_factory.mktemp("moving") / "page.html"
    file.write_text(f"<!doctype html><meta charset=utf-8><title>moving</title>{figures}", "utf-8")
    page = chromium.new_page()
    page.goto(file.as_uri())
    yield page
    page.close()


def states(page):
    """What every moving part of every picture does now."""
    return set(page.evaluate("document.getAnimations().map(a => a.playState)"))


def places(page):
    return page.evaluate("[...document.querySelectorAll('circle')].slice(0, 60).map(c => getComputedStyle(c).transform)")


def tick(page):
    for box in page.get_by_role("checkbox").all():
        box.focus()
        page.keyboard.press("Space")


def test_they_run_and_the_box_holds_them_still(page):
    page.emulate_media(reduced_motion="no-preference", media="screen")
    assert page.get_by_role("checkbox", name="Hold still").count() == len(SCENES)
    assert states(page) == {"running"}
    tick(page)
    assert states(page) == {"paused"}
    before = places(page)
    page.wait_for_timeout(120)
    assert places(page) == before
    tick(page)
    assert states(page) == {"running"}
    page.wait_for_timeout(120)
    assert places(page) != before


def test_who_asked_for_less_motion_gets_none_until_they_ask(page):
    page.emulate_media(reduced_motion="reduce", media="screen")
    page.reload()
    assert states(page) == {"paused"}
    assert page.get_by_text("Set moving").count() == page.get_by_text("Set moving").filter(visible=True).count() == len(SCENES)
    tick(page)
    assert states(page) == {"running"}
    tick(page)


def test_on_paper_they_stand_and_the_box_is_gone(page):
    page.emulate_media(reduced_motion="no-preference", media="print")
    page.reload()
    assert states(page) == {"paused"}
    assert not any(box.is_visible() for box in page.get_by_role("checkbox").all())
    for picture in page.locator("svg").all():
        seen = picture.evaluate("s => [...s.querySelectorAll('circle')].filter(c => getComputedStyle(c).opacity > 0).length")
        assert seen > 10  # the still is no empty stage
