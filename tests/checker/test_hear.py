"""`checker hear`: whose functions play, what stands in for the rest, how loud it is, and what is left behind."""

import wave
import xml.etree.ElementTree as ElementTree

import numpy as np
import pytest

from checker import cli
from checker.hear import receiver
from checker.hear import sealed as sealed_hear
from checker.hear.answers import NO_SOUND, MemberAnswers, ReferenceAnswers
from checker.hear.chain import LENT, YOURS, Origin, reference_chain
from checker.hear.listening import FAR, LOCAL, MOVES, RATE, moves, setting_times, tune
from checker.hear.receiver import play, set_level
from checker.judging.sealed import BrokenSeal
from checker.sandbox.workers import start_worker
from tests.exercises.every_mutant import sources

RECEIVER = "unit09_feedback_receivers/receiver.py"


@pytest.fixture(scope="module")
def chain():
    return reference_chain()


@pytest.fixture(scope="module")
def worker():
    with start_worker() as warm:
        yield warm


@pytest.fixture
def short(monkeypatch):
    """A second of the demonstration and a tenth on each station."""
    monkeypatch.setattr(receiver, "SECONDS", 1.0)
    monkeypatch.setattr(receiver, "EACH", 0.1)


@pytest.fixture
def reference(chain, short):
    return play(chain, ReferenceAnswers(chain)).sound


def answered(*exercises):
    """A member's files: stubs, but for the exercises named, which are the reference's."""
    right = sources("solutions")
    return {"ranges.py": right["ranges.py"]} | {
        path: right[path] if path.rpartition("/")[2].removesuffix(".py") in exercises else source
        for path, source in sources("exercises").items()
    }


def test_with_nothing_done_all_of_it_is_the_references_and_named(chain, worker, reference):
    played = play(chain, MemberAnswers(chain, sources("exercises"), worker))
    assert {source.whose for source in played.sources.values()} == {LENT}
    assert str(played.sources["receiver", "knobs"]) == "lent by the course: not written yet"
    assert str(played.sources["three_knobs", "tuned_to"]).endswith(
        "the core's way waits for quality_factor, far_station, q_multiplication"
    )
    assert len(played.sources) == 18
    assert np.array_equal(played.sound, reference)


def test_with_all_done_all_of_it_is_the_members(chain, worker, reference):
    played = play(chain, MemberAnswers(chain, sources("solutions"), worker))
    assert set(played.sources.values()) == {Origin(YOURS)}
    assert played.sound.shape == reference.shape
    assert np.max(np.abs(played.sound - reference)) < 0.1 * np.max(np.abs(reference))
    assert not np.array_equal(played.sound, reference)  # it did not come from the same process


def test_half_a_course_plays_and_the_missing_and_wrong_are_named(chain, worker, reference):
    files = answered("field_strength", "aerial_voltage", "grid_leak", "rectified_voltage", "receiver")
    files["unit01_signal/aerial_voltage.py"] = files["unit01_signal/aerial_voltage.py"].replace(
        "return field * effective_height", "return field * effective_height / 2"
    )
    del files["unit05_valve/load_line.py"]
    played = play(chain, MemberAnswers(chain, files, worker))
    assert played.sources["field_strength", "ground_wave_field"] == Origin(YOURS)
    assert played.sources["grid_leak", "bias_with_carrier"] == Origin(YOURS)
    assert played.sources["aerial_voltage", "aerial_emf"] == Origin(LENT, "it does not give the right values")
    assert played.sources["load_line", "operating_point"].note.startswith("its file is not there; ")
    assert played.sources["receiver", "knobs"] == Origin(LENT, "load_line, which it uses, is not there")
    assert played.sources["tuning_range", "dial_angle"] == Origin(LENT, "not written yet")
    assert np.array_equal(played.sound, reference)


def test_an_earlier_function_that_is_missing_is_named(chain, worker):
    files = sources("solutions") | {"unit06_reaction/three_knobs.py": sources("exercises")["unit06_reaction/three_knobs.py"]}
    [knobs] = [link for link in chain.links if link.function == "knobs"]
    values, whose = MemberAnswers(chain, files, worker).link(knobs)
    assert (values, whose) == (knobs.wanted, Origin(LENT, "three_knobs, which it uses, is not written yet"))


def test_a_receiver_of_the_members_own_choice_is_heard_as_it_is(chain, worker, reference):
    source = sources("solutions")[RECEIVER]
    assert "knobs(frequency, 700.0)" in source
    files = sources("solutions") | {RECEIVER: source.replace("knobs(frequency, 700.0)", "knobs(frequency - 9e3, 700.0)")}
    played = play(chain, MemberAnswers(chain, files, worker))
    assert set(played.sources.values()) == {Origin(YOURS)}
    stations = slice(RATE, None)
    assert np.std(played.sound[stations] - reference[stations]) > 0.5 * np.std(reference[stations])


@pytest.mark.parametrize(
    ("body", "reason"),
    [
        ("return emf[:-1].real", NO_SOUND),
        ("return emf.real * float('nan')", NO_SOUND),
        ("return 1 / 0", "it stopped with ZeroDivisionError"),
    ],
)
def test_a_receiver_that_gives_no_sound_is_refused_and_says_why(chain, worker, body, reason):
    files = {RECEIVER: f"def receiver(emf, rate, frame, frequency, crest):\n    {body}\n"}
    inputs = np.full(100, 1e-3 + 0j), 24e3, 855e3, 855e3, 1e-3
    assert MemberAnswers(chain, files, worker).receiver(*inputs) == (None, reason)


def test_sound_is_on_one_scale_and_never_clips():
    tone = np.sin(np.arange(4800) / 5)
    quiet, turned_down = set_level(0.25 * tone, tone)
    assert 20 * np.log10(np.sqrt(2) * np.std(quiet)) == pytest.approx(20 * np.log10(0.25) - 20 + 3.01, abs=0.05)
    assert not turned_down
    loud, turned_down = set_level(100 * tone, tone)
    assert np.max(np.abs(loud)) <= 0.9 and turned_down
    assert not np.any(set_level(0 * tone, tone)[0])


def test_knobs_go_where_the_moves_say():
    frequency, width, volume = moves(setting_times())
    assert frequency[0] == LOCAL and frequency[-1] == FAR
    assert np.min(width) < 0 < width[-1]
    assert {move[0] for move in MOVES} <= set(setting_times())
    assert np.max(np.abs(tune(2, 1.0))) == 1.0 and not np.array_equal(tune(1, 1.0), tune(2, 1.0))


def test_command_writes_sounds_picture_and_page(tmp_path, capsys):
    (tmp_path / "exercises").mkdir()
    assert cli.main(["hear", "--folder", str(tmp_path / "exercises"), "--into", str(tmp_path / "heard")]) == cli.NOT_YET
    said = capsys.readouterr().out
    assert said.startswith("0 of the 18 links of this receiver are your own.")
    assert "three_knobs tuned_to:                  its file is not there; the core's way" in said
    assert "Headphones: begin with the volume low" in said
    for name in ("yours", "reference"):
        with wave.open(str(tmp_path / "heard" / f"{name}.wav")) as file:
            assert (file.getnchannels(), file.getframerate(), file.getnframes()) == (1, RATE, 28 * RATE)
            samples = np.frombuffer(file.readframes(28 * RATE), "<i2") / 32767
        assert 20 * np.log10(np.std(samples)) == pytest.approx(-20, abs=0.5)
        assert np.max(np.abs(samples)) <= 0.9
    assert ElementTree.parse(tmp_path / "heard/dial.svg").getroot().get("viewBox")
    page = (tmp_path / "heard/index.html").read_text("utf-8")
    assert 'src="yours.wav"' in page and "http" not in page.replace("http-equiv", "").replace("http://www.w3.org/2000/svg", "")


def test_a_pack_holds_the_sound_and_says_what_it_cannot_play(chain, worker, short, reference, tmp_path, monkeypatch):
    (tmp_path / "practice").mkdir()
    file = tmp_path / sealed_hear.PATH
    file.write_bytes(sealed_hear.seal_hear())
    monkeypatch.setattr(sealed_hear, "ROOT", tmp_path)
    opened, sound = sealed_hear.read_sealed_hear()
    assert not opened.stages
    np.testing.assert_allclose(sound, reference, atol=1e-4 * np.max(np.abs(reference)))
    nothing = play(opened, MemberAnswers(opened, {}, worker))
    assert nothing.missing == ["circuit_voltage", "receiver"] and nothing.sound.size == 0
    assert {source.whose for source in nothing.sources.values()} == {LENT}
    everything = play(opened, MemberAnswers(opened, sources("solutions"), worker))
    assert everything.missing == [] and set(everything.sources.values()) == {Origin(YOURS)}
    assert np.max(np.abs(everything.sound - reference)) < 0.1 * np.max(np.abs(reference))
    assert [one.function for one in opened.link("gain").core] == ["quality_factor", "feedback", "gain_and_bandwidth"]
    _, source = MemberAnswers(opened, answered("swing_step"), worker).link(opened.link("circuit_voltage"))
    assert str(source) == "yours, the core's way: swing_step"
    file.write_bytes(file.read_bytes()[100:])
    with pytest.raises(BrokenSeal, match="Unpack the student pack again"):
        sealed_hear.read_sealed_hear()
