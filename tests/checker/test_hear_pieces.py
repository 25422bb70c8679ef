"""`checker hear NAME`: each sound is measured, and says what its words say; made short here, of the reference's functions."""

import wave

import numpy as np
import pytest

from checker import cli
from checker.course import UNITS, find
from checker.hear import pieces
from checker.hear.listening import FAR, LOCAL, RATE
from checker.hear.own import OwnFunctions, Unheard
from checker.hear.own_files import SOFT, levelled, write_own
from checker.hear.pieces import PIECES
from checker.sandbox.workers import start_worker
from solutions.unit06_reaction import club_set
from solutions.unit07_oscillation.build_up import growth_rate
from solutions.unit09_feedback_receivers import evening
from solutions.unit09_feedback_receivers import receiver as club
from tests.exercises.every_mutant import sources

SHORT = 0.2


@pytest.fixture(scope="module")
def worker():
    with start_worker() as warm:
        yield warm


@pytest.fixture(scope="module")
def sounds(worker):
    own = OwnFunctions(unguarded(), worker)
    return {name: piece.play(own, SHORT) for name, piece in PIECES.items()}


def unguarded():
    """The references without the check of their ranges, as a member would write them: that takes most of the time."""
    return {path: source.replace("@check_ranges\n", "") for path, source in sources("solutions").items()}


def passages(sound, count):
    length = sound.size // count
    return [sound[place * length : (place + 1) * length] for place in range(count)]


def power(sound, low, high):
    spectrum = np.abs(np.fft.rfft(sound * np.hanning(sound.size))) ** 2
    pitch = np.fft.rfftfreq(sound.size, 1 / RATE)
    return np.sum(spectrum[(pitch >= low) & (pitch < high)])


def decibels(one, other):
    return 10 * np.log10(one / other)


def pitch_of(sound):
    return np.argmax(np.abs(np.fft.rfft(sound * np.hanning(sound.size), 8 * RATE))) / 8


def test_every_unit_has_a_sound_of_ones_own():
    assert {find(name).partition("/")[0] for name in PIECES} == {unit.folder for unit in UNITS}


@pytest.mark.parametrize("name", PIECES)
def test_each_is_neither_too_loud_nor_too_soft_and_begins_and_ends_softly(name, sounds):
    heard = levelled(sounds[name])
    assert -30 < 20 * np.log10(np.sqrt(np.mean(heard**2))) < -12
    assert np.max(np.abs(heard)) <= 0.9
    assert abs(heard[0]) < 1e-3 and abs(heard[-1]) < 1e-3
    assert np.max(np.abs(heard[: round(0.1 * SOFT * RATE)])) < 0.11 * np.max(np.abs(heard))
    assert abs(np.mean(heard)) < 0.05 * np.std(heard)


@pytest.mark.parametrize(
    ("name", "count"), [("response_curve", 3), ("q_multiplication", 4), ("swing_step", 4), ("far_station", 3)]
)
def test_each_passage_is_loud_enough_to_hear_and_not_too_loud(name, count, sounds):
    for passage in passages(levelled(sounds[name]), count):
        assert -30 < 20 * np.log10(np.std(passage)) < -12


def test_the_tones_are_those_of_the_scale(sounds):
    for passage, wanted in zip(passages(sounds["tone"], 8), pieces.NOTES, strict=True):
        assert pitch_of(passage) == pytest.approx(wanted, abs=2)


def test_the_station_is_modulated_as_deep_as_it_says(sounds):
    for passage, depth in zip(passages(sounds["am_waveform"], 3), (0.3, 0.7, 1.0), strict=True):
        assert pitch_of(passage) == pytest.approx(LOCAL / 1000, abs=1)
        time = np.arange(passage.size) / RATE
        level = np.abs(passage + 1j * np.gradient(passage, time) / (2 * np.pi * LOCAL / 1000))
        assert np.max(level[50:-50]) / np.std(passage) > 1 and np.ptp(level[50:-50]) == pytest.approx(2 * depth, rel=0.1)


def test_the_condenser_falls_fast_and_then_slowly(sounds):
    pitches = [pitch_of(passage) for passage in passages(sounds["condenser"], 10)]
    assert np.all(np.diff(pitches[:9]) < 0)
    assert pitches[0] - pitches[1] > 4 * (pitches[6] - pitches[7])
    assert pitches[9] == pytest.approx(1e-3 / (2 * np.pi * np.sqrt(200e-6 * 400e-12)), rel=0.01)


def test_a_sharper_circuit_leaves_less_of_the_neighbour(sounds):
    both = np.stack([pieces.tune(number, 3 * SHORT) for number in (1, 2)], 1)
    left = [np.linalg.lstsq(both, passage, rcond=None)[0] for passage in passages(sounds["response_curve"], 3)]
    np.testing.assert_allclose(left, [[0.844, 1], [0.509, 1], [0.230, 1]], atol=2e-3)


def test_the_detector_leaves_the_carrier_then_is_clear_then_is_rough(sounds):
    short, right, long = passages(sounds["detect_step"], 3)
    whistle = [decibels(power(one, 7.5e3, 8.5e3), power(one, 150, 320)) for one in (short, right)]
    rough = [decibels(power(one, 420, 3000), power(one, 150, 320)) for one in (right, long)]
    assert whistle[0] > 0 and whistle[1] < -12
    assert rough[0] < -25 and rough[1] > -12


def test_a_large_swing_is_harsh_and_a_small_one_pure(sounds):
    small, large = (passage[: round(0.5 * SHORT * RATE)] for passage in passages(sounds["triode_current"], 2))
    harsh = [decibels(power(one, 840, 920), power(one, 400, 480)) for one in (small, large)]
    assert harsh[0] < -30 and harsh[1] > -14


def test_reaction_makes_it_louder_and_duller(sounds):
    four = passages(sounds["q_multiplication"], 4)
    assert np.all(np.diff([np.std(one) for one in four]) > 0)
    treble = [decibels(power(one, 1000, 4000), power(one, 100, 1000)) for one in four]
    assert treble[3] < treble[0] - 5


def test_oscillation_grows_by_one_factor_each_moment_and_stops_at_its_limit(sounds):
    loud = [20 * np.log10(np.std(one)) for one in passages(sounds["build_up"], 8)]
    assert loud[2] - loud[1] == pytest.approx(loud[3] - loud[2], abs=0.5) and loud[2] - loud[1] > 15
    assert loud[7] == pytest.approx(loud[6], abs=0.5) and pitch_of(sounds["build_up"]) == pytest.approx(1000, abs=3)


def test_the_whistle_falls_to_nothing_and_rises_again(sounds):
    pitches = [pitch_of(one) for one in passages(sounds["beat_note"], 10)]
    assert pitches[0] == pytest.approx(pitches[9], rel=0.03) and 2e3 < pitches[0] < 2.5e3
    assert np.all(np.diff(pitches[:5]) < 0) and np.all(np.diff(pitches[5:]) > 0)


def test_the_tune_stands_above_the_noise_as_it_says(sounds):
    programme = pieces.tune(2, 2 * SHORT)
    for passage, wanted in zip(passages(sounds["signal_to_noise"], 4), (30, 20, 10, 0), strict=True):
        signal = programme * (passage @ programme) / (programme @ programme)
        assert 20 * np.log10(np.std(signal) / np.std(passage - signal)) == pytest.approx(wanted, abs=0.5)


@pytest.mark.parametrize(("name", "count"), [("swing_step", 4), ("far_station", 3)])
def test_the_far_station_comes_out_from_under_the_local(name, count, sounds):
    above = [decibels(power(one, 320, 700), power(one, 130, 310)) for one in passages(sounds[name], count)]
    assert above[0] < -6 and above[-1] > 10


@pytest.mark.parametrize(("name", "count"), [("swing_step", 4), ("far_station", 3)])
def test_no_overtone_of_the_beat_of_9_khz_folds_down_among_the_tunes(name, count, sounds):
    """In samples of 24 kHz the second, of 18 kHz, would be heard at 6 kHz."""
    for passage in passages(sounds[name], count):
        assert decibels(power(passage, 5900, 6100), power(passage, 100, 3000)) < -60


def test_the_constants_are_those_of_the_circles_sets():
    _, width = club_set.without_reaction(FAR)
    first, _ = club.first_circuit(FAR)
    assert width == pytest.approx(pieces.WIDTH, rel=1e-3)
    assert first == pytest.approx(pieces.FIRST_WIDTH, rel=1e-3)
    assert club.LAW == pieces.TRIODE
    assert growth_rate(FAR, 90.0, 1.05) == pytest.approx(pieces.GROWTH, rel=1e-3)
    crests = dict(zip(evening.FREQUENCIES, evening.CRESTS, strict=True))
    assert crests[LOCAL] == pytest.approx(pieces.LOCAL_CREST, rel=1e-2)
    assert crests[FAR] == pytest.approx(pieces.FAR_CREST, rel=1e-2)


@pytest.mark.parametrize(
    ("body", "says"),
    [
        ("raise NotImplementedError", "still the stub"),
        ("return None", r"nothing \(None\) where a number was wanted"),
        ("return [1.0]", "list where a number was wanted"),
        ("return float('nan')", "not finite"),
        ("return 1 / 0", "ZeroDivisionError"),
    ],
)
def test_what_gives_no_sound_says_why(body, says, worker):
    files = {"unit00_bench/tone.py": f"def tone(time, frequency, amplitude):\n    {body}\n"}
    with pytest.raises(Unheard, match=says):
        PIECES["tone"].play(OwnFunctions(files, worker), SHORT)


def test_a_function_is_heard_as_it_is_and_without_arrays(worker):
    """Right or wrong, and made with `math` and `if`, which take one number."""
    source = "import math\n\n\ndef tone(time, frequency, amplitude):\n    return amplitude * math.sin(frequency * time) if time else 0\n"
    sound = PIECES["tone"].play(OwnFunctions({"unit00_bench/tone.py": source}, worker), 1.0)
    assert pitch_of(passages(sound, 8)[0]) == pytest.approx(440 / (2 * np.pi), abs=3)


def test_a_pitch_beyond_hearing_is_said_and_not_played(worker):
    source = "def plates(n, area, gap):\n    return (n - 1) * 8.854e-15 * area / gap\n\n\ndef parallel(a, b):\n    return a * b / (a + b)\n"
    with pytest.raises(Unheard, match="too high to be heard"):
        PIECES["condenser"].play(OwnFunctions({"unit02_coil_and_condenser/condenser.py": source}, worker), SHORT)


def test_a_swing_is_carried_from_one_piece_to_the_next(worker, monkeypatch):
    monkeypatch.setattr("checker.hear.own.PIECE", 100)
    own = OwnFunctions(sources("solutions"), worker)
    swing = own.at_each("swing_step", "swing_step", np.zeros(250), 1e3, -1e3, 1e-5, carry=0)
    np.testing.assert_allclose(swing, 1 - np.exp(-0.01 * np.arange(1, 251)), rtol=1e-9)


def test_a_page_holds_sound_words_and_a_picture(tmp_path, sounds):
    page, says = write_own(tmp_path, PIECES["beat_note"], sounds["beat_note"], "checker")
    with wave.open(str(tmp_path / "beat_note.wav")) as file:
        assert (file.getnchannels(), file.getframerate(), file.getnframes()) == (1, RATE, sounds["beat_note"].size)
    html = page.read_text("utf-8")
    assert 'src="beat_note.wav"' in html and "Caution" in html and 'role="img"' in html and "<desc" in html
    assert says.startswith("beat_note.wav  1 s, loudness -20.")


def test_silence_stays_silent():
    assert not np.any(levelled(np.zeros(1000)))


def test_command_names_what_can_be_heard_and_says_what_is_missing(tmp_path, capsys):
    (tmp_path / "exercises").mkdir()
    at = ["--folder", str(tmp_path / "exercises"), "--into", str(tmp_path)]
    assert cli.main(["hear", "prefixes", *at]) == cli.USAGE_ERROR
    assert "prefixes has no sound of its own. These have: tone, am_waveform" in capsys.readouterr().err
    assert cli.main(["hear", "tone", *at]) == cli.NOT_YET
    assert "unit00_bench/tone.py is not among your files" in " ".join(capsys.readouterr().out.split())
