"""A sound's picture follows the sound, keeps still for those who want that, and is a picture without any script."""

import re

import numpy as np
import pytest

from course.sounds.kit.picture import COLUMNS, LEFT, RIGHT, ROWS, picture, seen

from .test_browser import NARROW, Watched

RATE = 16_000
TIME = np.arange(2 * RATE) / RATE
STEPS = 0.1 * np.sin(2 * np.pi * np.where(TIME < 1, 1000, 3000) * TIME)


def test_each_moment_shows_its_pitch_and_loudness():
    spectra, loudness = seen(STEPS, RATE)
    assert spectra.shape == (ROWS, COLUMNS)
    strongest = spectra.argmax(axis=0) * 5000 / ROWS
    assert np.allclose(strongest[20 : COLUMNS // 2 - 20], 1000, atol=60)
    assert np.allclose(strongest[COLUMNS // 2 + 20 : -20], 3000, atol=60)
    assert np.allclose(spectra[:, 40].max(), -20, atol=0.3)
    assert np.allclose(loudness[40], -23, atol=0.2)  # a sine's r.m.s. is 3 dB below its crest


def test_the_picture_is_the_same_each_time_and_names_its_moments():
    drawn = picture(STEPS, RATE, [(0.0, "low"), (1.0, "high & thin")])
    assert drawn == picture(STEPS, RATE, [(0.0, "low"), (1.0, "high & thin")])
    assert "high &amp; thin" in drawn
    middle = (LEFT + RIGHT) / 2
    assert f'd="M{middle:.1f} ' in drawn


@pytest.fixture
def listening(chromium, course):
    page = (course / "course" / "site" / "unit07_oscillation" / "index.html").as_uri()

    def opened(**context):
        watched = Watched(chromium, viewport=NARROW, **context)
        watched.page.goto(page)
        return watched

    return opened


FIGURE = "#sound-over-the-edge"


def place(page):
    """Where the line of the moment stands, and the pitches drawn."""
    return page.get_attribute(f"{FIGURE} .heard-now", "transform"), page.get_attribute(f"{FIGURE} .heard-pitches", "points")


def played(page, seconds):
    page.evaluate(f"const a = document.querySelector('{FIGURE} audio'); a.muted = true; a.play()")
    page.wait_for_function(f"document.querySelector('{FIGURE} audio').currentTime > {seconds}")


def test_it_moves_with_the_sound(listening):
    with listening(reduced_motion="no-preference") as watched:
        page = watched.page
        assert place(page) == (None, "")
        played(page, 0.5)
        first = place(page)
        page.wait_for_function(f"document.querySelector('{FIGURE} audio').currentTime > 1.5")
        page.evaluate(f"document.querySelector('{FIGURE} audio').pause()")
        page.wait_for_timeout(200)
        then, pitches = place(page)
        now = page.evaluate(f"document.querySelector('{FIGURE} audio').currentTime")
        across = float(re.search(r"translate\(([\d.]+)", then)[1])
        assert across == pytest.approx(LEFT + (RIGHT - LEFT) * now / 24, abs=1)
        assert then != first[0] and len(pitches.split()) == ROWS
        assert not watched.wrong, watched.wrong


def test_it_keeps_still_when_asked_and_shows_the_moment_at_which_it_is_stopped(listening):
    for wish, held in (("reduce", False), ("no-preference", True)):
        with listening(reduced_motion=wish) as watched:
            page = watched.page
            if held:
                page.check(f"{FIGURE} .hold input")
            played(page, 1.0)
            page.wait_for_timeout(300)
            early = place(page)
            page.wait_for_timeout(700)
            assert place(page) == early
            page.evaluate(f"document.querySelector('{FIGURE} audio').pause()")
            page.wait_for_timeout(200)
            assert place(page) != early


def test_on_paper_it_is_a_picture_without_a_moment(listening):
    with listening() as watched:
        watched.page.emulate_media(media="print")
        assert watched.page.is_visible(f"{FIGURE} svg")
        assert not watched.page.is_visible(f"{FIGURE} .hold")
        assert not watched.page.is_visible(f"{FIGURE} .heard-now")
