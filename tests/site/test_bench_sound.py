"""The bench's sound in a real browser, from the disk: silent until asked, and never above what is set."""

import numpy as np
import pytest

from course.press.publishing.bench_files import write_bench

from .conftest import ROOT

RATE = 48_000
BLOCKS = 188  # half a second
EXPONENTIALS = 1_000_000
THEIR_SECONDS = 0.032  # on a processor a quarter as fast as that on which this was measured, where they take 8 ms
CURLEW = "stations: SALTMARSH_BENCH.stations.filter((s) => s.name === 'Curlew Bank')"
FAINT = f"{CURLEW}.map((s) => ({{ ...s, field: s.field / 100 }}))"  # so that it does not pull the set along


@pytest.fixture(scope="module")
def page(chromium, tmp_path_factory):
    """An empty page from the disk with the bench's modules in it; no request leaves the disk."""
    folder = tmp_path_factory.mktemp("bench")
    write_bench(ROOT / "course", folder, ROOT / "tests" / "site" / "bench_open.js")
    scripts = "".join(f'<script src="{name}.js"></script>' for name in ("figures", "bench"))
    (folder / "index.html").write_text(f'<!doctype html><meta charset="utf-8"><title>bench</title>{scripts}', "utf-8")
    opened, wrong = chromium.new_page(), []
    opened.on("pageerror", lambda error: wrong.append(str(error)))
    opened.on("console", lambda said: wrong.append(said.text) if said.type == "error" else None)
    opened.on("request", lambda asked: None if asked.url.startswith(("file:", "data:")) else wrong.append(asked.url))
    opened.goto((folder / "index.html").as_uri())
    yield opened
    opened.close()
    assert not wrong, wrong


def rendered(page, state, seconds=0.4, change="", turned=None, told=None):
    """Samples of a set with its knobs at `state`; after a tenth of a second `turned` is laid over it, or it is told so."""
    told = {"state": {**state, **turned}} if turned else told
    script = """async ([state, seconds, told, rate]) => {
      const figures = { ...SALTMARSH_BENCH, CHANGE };
      const context = new OfflineAudioContext(2, seconds * rate, rate);
      const node = await Bench.setNode(context, figures, state);
      node.connect(context.destination);
      if (told) context.suspend(0.1).then(async () => {
        node.port.postMessage(told);
        await new Promise((resolve) => setTimeout(resolve, 50));
        context.resume();
      });
      const sound = await context.startRendering();
      return [0, 1].map((channel) => Array.from(sound.getChannelData(channel)));
    }"""
    left, right = np.array(page.evaluate(script.replace("CHANGE", change), [state, seconds, told, RATE]))
    assert np.array_equal(left, right)
    return left


def state_of(page, set_, kilohertz, **knobs):
    return page.evaluate(
        """([set, hertz, knobs]) => ({
          ...Bench.tunedTo(SALTMARSH_BENCH, { ...Bench.startingState(SALTMARSH_BENCH, set), ...knobs }, hertz), ...knobs })""",
        [set_, 1e3 * kilohertz, knobs],
    )


def tone_of(sound):
    """Frequency and crest of the strongest tone."""
    window = np.hanning(sound.size)
    spectrum = np.abs(np.fft.rfft(sound * window, 8 * sound.size))
    peak = spectrum.argmax()
    return peak * RATE / (8 * sound.size), 2 * spectrum[peak] / window.sum()


def test_it_is_silent_until_it_is_turned_up(page):
    state = state_of(page, "reaction", 1107, throttle=100e-12)
    assert state["volume"] == 0
    assert not rendered(page, state).any()
    sound = rendered(page, state, turned={"volume": 0.5, "magnify": 10})
    assert not sound[: RATE // 10].any()
    assert np.abs(sound[RATE // 5 :]).max() > 1e-3


def test_the_whistle_has_the_pitch_that_the_envelope_gives(page):
    state = {**state_of(page, "reaction", 1109.5, throttle=107e-12), "volume": 1.0}
    script = f"(state) => Bench.listen({{ ...SALTMARSH_BENCH, {FAINT} }}, state, {{ depth: 0 }})"
    heard = page.evaluate(script, state)
    assert heard["oscillates"] and 300 < heard["whistle"] < 3000
    pitch, _ = tone_of(rendered(page, state, change=FAINT)[RATE // 5 :])
    assert pitch == pytest.approx(heard["whistle"], abs=10.0)


def test_volume_and_magnifying_go_by_their_numbers(page):
    state = state_of(page, "reaction", 1109.5, throttle=107e-12)
    crests = {}
    for volume, magnify in ((0.1, 1), (0.2, 1), (0.2, 3)):
        sound = rendered(page, {**state, "volume": volume, "magnify": magnify}, change=FAINT)
        crests[volume, magnify] = tone_of(sound[RATE // 5 :])[1]
    assert crests[0.2, 1] / crests[0.1, 1] == pytest.approx(2, rel=0.01)
    assert crests[0.2, 3] / crests[0.2, 1] == pytest.approx(3, rel=0.01)


@pytest.mark.parametrize("feed", ["gentle", "fierce"])
def test_nothing_is_louder_than_set_however_it_howls(page, feed):
    state = {**state_of(page, "reaction", 846, throttle=60e-12), "feed": feed, "volume": 0.3, "magnify": 100}
    sound = rendered(page, state, seconds=0.6, turned={"throttle": 400e-12, "coupling": 40e-6})
    assert np.abs(sound).max() <= np.float32(0.3)
    assert np.abs(sound[RATE // 3 :]).max() > 0.05
    flat = (np.diff(sound) == 0) & (np.abs(sound[1:]) > 0.2)
    assert not (flat[1:] & flat[:-1]).any()  # a cut crest would be flat
    quieter = rendered(page, state, seconds=0.6, turned={"volume": 0.05})
    assert np.abs(quieter[round(0.16 * RATE) :]).max() <= 0.0501


def test_the_quenched_set_rushes_and_a_carrier_brings_silence(page):
    """Measured without the stations' programme: the rush is noise at all pitches, and what is left in tune is 9 dB below it."""
    state = {**state_of(page, "quenched", 30_912, coupling=20e-9, throttle=1.6), "volume": 1.0}
    aside = {**state_of(page, "quenched", 31_900, coupling=1e-9, throttle=1.6), "volume": 1.0}
    quiet, rush = (rendered(page, at, seconds=0.6)[RATE // 5 :] for at in (state, aside))
    power = np.abs(np.fft.rfft(rush * np.hanning(rush.size))) ** 2
    pitch = np.fft.rfftfreq(rush.size, 1 / RATE)
    low, high = (power[(pitch > a) & (pitch < b)].mean() for a, b in ((300, 1500), (1500, 6000)))
    assert 0.5 < low / high < 2
    assert 20 * np.log10(rush.std() / quiet.std()) > 9
    assert np.abs(rush).max() <= 1


def test_the_quenched_set_is_no_louder_than_set_and_comes_and_goes_without_a_click(page):
    state = {**state_of(page, "quenched", 29_200, coupling=20e-9, throttle=1.6), "volume": 0.3, "magnify": 100}
    sound = rendered(page, state, seconds=0.6, turned={"throttle": 2.4, "quench": 80e3, "coupling": 1e-9})
    assert 0.05 < np.abs(sound[RATE // 3 :]).max() <= np.float32(0.3)
    crystal = {**state_of(page, "crystal", 1107), "volume": 1.0}
    quenched = {**state_of(page, "quenched", 29_200, coupling=20e-9, throttle=1.6), "volume": 1.0}
    for first, then in ((crystal, quenched), (quenched, crystal)):
        steps = np.abs(np.diff(rendered(page, first, change=CURLEW, turned=then)))
        alone = steps[RATE // 5 :] if then is quenched else steps[: RATE // 11]
        assert steps[RATE // 10 - 500 : RATE // 10 + 400].max() < 1.2 * alone.max()  # as it does by itself


def test_changing_the_set_makes_no_click_and_no_thump(page):
    state = {**state_of(page, "crystal", 1107), "volume": 1.0}
    sound = rendered(page, state, change=CURLEW, turned={"set": "valve"})
    assert np.abs(np.diff(sound)).max() < 0.01
    assert np.abs(sound[RATE // 10 :]).max() < 0.02


def test_it_fades_when_it_is_stopped(page):
    state = {**state_of(page, "reaction", 1109.5, throttle=107e-12), "volume": 1.0}
    sound = rendered(page, state, change=FAINT, told={"stop": True})
    assert np.abs(sound[RATE // 20 : RATE // 10]).max() > 0.02
    assert np.abs(sound[round(0.2 * RATE) :]).max() < 1e-3
    assert np.abs(np.diff(sound[RATE // 20 :])).max() < 0.05


def test_the_stations_programme_is_heard(page):
    state = state_of(page, "crystal", 846)
    levels = page.evaluate(
        """async (state) => {
          const levels = [];
          const onReport = (report) => levels.push(report.level);
          const player = Bench.createPlayer(SALTMARSH_BENCH, { programme: "programme.js", onReport });
          await player.start(state);
          for (let n = 0; Math.max(...levels) < 70 && n < 150; n++) await new Promise((resolve) => setTimeout(resolve, 100));
          await player.stop();
          return levels;
        }""",
        state,
    )
    assert 70 <= max(levels) < 90  # bare carriers come to 50 dB


def test_the_player_starts_reports_and_stops(page):
    state = {**state_of(page, "reaction", 1107, throttle=250e-12), "volume": 0.2}
    reports, running, after, faults = page.evaluate(
        """async (state) => {
          const reports = [], faults = [];
          const options = { programme: "programme.js", onReport: (r) => reports.push(r), onFault: (f) => faults.push(f) };
          const player = Bench.createPlayer(SALTMARSH_BENCH, options);
          await player.start(state);
          const running = player.running;
          for (let n = 0; reports.length < 6 && n < 100; n++) await new Promise((resolve) => setTimeout(resolve, 100));
          await player.stop();
          return [reports, running, player.running, faults];
        }""",
        state,
    )
    assert running and not after and len(reports) >= 6 and not faults
    last = reports[-1]
    assert last["oscillates"] and last["grid"] > 0.5 and last["peak"] <= 0.2 and last["fault"] == ""


def test_the_listener_answers_the_newest_question_and_refuses_in_words(page):
    state = state_of(page, "reaction", 1107)
    first, overtaken, newest, refusal = page.evaluate(
        """async (state) => {
          const listener = Bench.createListener(SALTMARSH_BENCH);
          const at = (throttle) => listener.ask({ ...state, throttle });
          const answers = await Promise.all([at(50e-12), at(60e-12), at(200e-12)]);
          const refusal = await at(1).catch((error) => error.message);
          listener.close();
          return [...answers, refusal];
        }""",
        state,
    )
    assert first["station"] == "Curlew Bank" and not first["oscillates"]
    assert overtaken is None
    assert newest["oscillates"] and newest["neighbour"]["field"] > 0
    assert "beyond its stops" in refusal


@pytest.mark.parametrize("set_", ["crystal", "reaction", "quenched"])
def test_it_runs_faster_than_time_on_a_processor_a_quarter_as_fast(page, set_):
    """By the main thread's own clock, against a million exponentials: the best of many turns of each, as other work comes and goes."""
    state = state_of(page, set_, 30_000 if set_ == "quenched" else 846)
    devtools = page.context.new_cdp_session(page)
    devtools.send("Performance.enable", {"timeDomain": "threadTicks"})
    play = f"() => {{ for (let n = 0; n < {BLOCKS}; n++) receiver.play(block, (k, i) => 0.5 * Math.sin(0.1 * i)); }}"
    sums = f"() => {{ let sum = 0; for (let n = 0; n < {EXPONENTIALS}; n++) sum += Math.exp(-1e-6 * n); return sum; }}"

    def clock():
        return {m["name"]: m["value"] for m in devtools.send("Performance.getMetrics")["metrics"]}["ThreadTime"]

    def took(script):
        before = clock()
        page.evaluate(script)
        return clock() - before

    page.evaluate(
        """(state) => {
      globalThis.receiver = Bench.receiverOf(SALTMARSH_BENCH, 48000);
      globalThis.block = new Float64Array(128);
      receiver.turn(state);
    }""",
        state,
    )
    turns = [(took(play), took(sums)) for _ in range(12)]
    playing, summing = (min(each) for each in zip(*turns, strict=True))
    assert playing / summing * THEIR_SECONDS < BLOCKS * 128 / RATE
