"""Every sound comes to one loudness and none clips, whatever it was made of."""

import io

import numpy as np
import pytest
import soundfile
from hypothesis import given, settings
from hypothesis import strategies as st
from hypothesis.extra.numpy import arrays

from course.sounds import sound
from course.sounds.kit.level import PEAK, brought_to_level, files_of, softened

USUAL = {"level": -20.0, "full_scale": None}
RATE = 16_000
TONE = np.sin(2 * np.pi * 440 * np.arange(RATE) / RATE)


@given(arrays(float, st.integers(1, 400), elements=st.floats(-1e6, 1e6)), st.floats(-60, 0))
def test_no_sample_passes_the_peak_and_no_sound_passes_its_level(samples, level):
    if np.abs(samples).max() < 1e-100:
        return
    levelled = brought_to_level(samples, level, None)
    rms = np.sqrt(np.mean(levelled**2))
    assert np.abs(levelled).max() <= PEAK * (1 + 1e-12)
    assert rms <= 10 ** (level / 20) * (1 + 1e-9)
    reached = np.isclose(rms, 10 ** (level / 20)) or np.isclose(np.abs(levelled).max(), PEAK)
    assert reached


@given(st.floats(1e-6, 1e6))
def test_the_scale_of_the_samples_does_not_matter(scale):
    assert np.allclose(brought_to_level(TONE * scale, -20, None), brought_to_level(TONE, -20, None))


def test_a_tone_of_the_usual_level_has_the_peak_that_its_rms_gives():
    """r.m.s. 0.1, so a sine's peak is 0.1 sqrt 2."""
    assert np.isclose(np.abs(brought_to_level(TONE, -20, None)).max(), 0.1 * np.sqrt(2), rtol=1e-4)


def test_sounds_that_share_a_full_scale_keep_their_ratio():
    loud, quiet = (brought_to_level(size * TONE, -20, 4.0) for size in (2.0, 0.5))
    assert np.allclose(loud, 4 * quiet)
    with pytest.raises(ValueError, match="full_scale must be at least"):
        brought_to_level(5 * TONE, -20, 4.0)


def test_both_ends_are_soft():
    ends = softened(np.ones(RATE), RATE)
    assert ends[0] == ends[-1] == 0 and ends[RATE // 2] == 1
    assert np.abs(np.diff(ends)).max() < 0.01


def test_files_are_the_same_each_time_and_decode_to_what_was_meant():
    files, again = files_of((TONE, RATE), "x/y", USUAL), files_of((TONE, RATE), "x/y", USUAL)
    assert files == again
    wav, rate = soundfile.read(io.BytesIO(files[".wav"]))
    mp3, mp3_rate = soundfile.read(io.BytesIO(files[".mp3"]))
    assert rate == mp3_rate == RATE
    assert abs(len(mp3) - len(wav)) < 3000
    middle = slice(RATE // 4, 3 * RATE // 4)
    for decoded in (wav, mp3):
        assert np.isclose(np.sqrt(np.mean(decoded[middle] ** 2)), 0.1, rtol=0.02)
    assert len(files[".mp3"]) < len(files[".wav"]) / 5


@settings(max_examples=5, deadline=None)
@given(st.integers(0, 2**32 - 1))
def test_even_noise_and_clicks_decode_below_full_scale(seed):
    random = np.random.default_rng(seed)
    for samples in (random.standard_normal(4000), np.where(random.random(4000) > 0.999, 1.0, 0.0) + 1e-6):
        mp3, _ = soundfile.read(io.BytesIO(files_of((samples, RATE), "x/y", USUAL)[".mp3"]))
        assert np.abs(mp3).max() < 1


@pytest.mark.parametrize(
    ("samples", "rate", "sentence"),
    [
        (np.zeros(100), RATE, "silent"),
        (np.ones((2, 100)), RATE, "one channel"),
        (np.ones(100), 12_345, "sample rate"),
        ([np.inf, 1], RATE, "finite"),
        (np.ones(31 * 8000), 8000, "up to 30 s"),
        ([], RATE, "one channel"),
    ],
)
def test_what_cannot_be_played_is_refused(samples, rate, sentence):
    with pytest.raises(ValueError, match=sentence):
        files_of((samples, rate), "x/y", USUAL)


@pytest.mark.parametrize("more", [{"caption": " "}, {"transcript": ""}, {"level": 3}, {"full_scale": 0}])
def test_a_sound_needs_caption_transcript_and_a_level_in_range(more):
    with pytest.raises(ValueError):
        sound(**({"caption": "x", "transcript": "y"} | more))
