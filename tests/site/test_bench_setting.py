"""A setting of the bench means the same in a lesson, which Python reads, and in an address, which the bench reads."""

import random

import pytest

from course.press.boxes.bench_setting import GRAMMAR, number_parts, setting_faults

from .bench_asked import asked

RIGHT = [
    "set=crystal&tuning=846kHz",
    "set=valve&tuning=850.7kHz&coupling=20uH&night=yes",
    "set=reaction&tuning=1449kHz&coupling=10µH&reaction=75.1pF&feed=gentle",
    "set=isolated&coupling=5.uH&reaction=75.000pF",
    "set=quenched&tuning=29600kHz&coupling=8nH&reaction=1.3&quench=32kHz",
    "set=reaction&by=throttle&reaction=80pF",
    "set=reaction&reaction=8.5µH&by=swinging",
    "set=reaction&by=swinging&reaction=0uH",
    "set=reaction&by=shunt&reaction=0.6k\N{OHM SIGN}",
    "set=reaction&by=shunt&reaction=600Ω&feed=fierce",
    "set=reaction&reaction=2kohm&by=shunt",
]
WRONG = {
    "set=valve&tuning=8..5kHz": '"8..5kHz" is no value for tuning',
    "set=valve&tuning=.kHz": '".kHz" is no value for tuning',
    "set=valve&tuning=855": '"855" is no value for tuning',
    "set=valve&tuning=-855kHz": '"-855kHz" is no value for tuning',
    "set=valve&tuning=8e2kHz": '"8e2kHz" is no value for tuning',
    "set=valve&tuning=٨٥٥kHz": '"٨٥٥kHz" is no value for tuning',
    "set=valve&tuning=855pF": '"855pF" is no value for tuning',
    "set=valve&tuning=9kHz": "tuning 9kHz is beyond the knob's stop",
    "set=reaction&reaction=501pF": "reaction 501pF is beyond the knob's stop",
    "set=quenched&coupling=4uH": '"4uH" is no value for coupling',
    "set=quenched&quench=90kHz": "quench 90kHz is beyond the knob's stop",
    "set=valve&quench=32kHz": 'the bench has no "quench" for this set',
    "set=valve&tone=3": 'the bench has no "tone" for this set',
    "set=valve&{text}=$1": 'the bench has no "{text}" for this set',
    "set=valve&": 'the bench has no "" for this set',
    "set=valve&feed=gentle": '"gentle" is no value for feed',
    "set=valve&night=": '"" is no value for night',
    "set=spark": 'there is no set called "spark" on this bench',
    "set=valve&set=crystal": "set stands there twice",
    "set=valve&tuning=855kHz&tuning=9kHz": "tuning stands there twice",
    "set=reaction&by=magic": '"magic" is no value for by',
    "set=reaction&by=": '"" is no value for by',
    "set=isolated&by=swinging": 'the bench has no "by" for this set',
    "set=reaction&by=shunt&by=throttle&reaction=90ohm": "by stands there twice",
    "set=reaction&reaction=90pF&by=shunt": '"90pF" is no value for reaction',
    "set=reaction&reaction=90ohm": '"90ohm" is no value for reaction',
    "set=reaction&by=shunt&reaction=1ohm": "reaction 1ohm is beyond the knob's stop",
    "set=reaction&by=shunt&reaction=2.1kΩ": "reaction 2.1kΩ is beyond the knob's stop",
    "set=reaction&by=swinging&reaction=21uH": "reaction 21uH is beyond the knob's stop",
}


def heard(figures, settings):
    """What the bench says of each setting, and how it then stands."""
    return asked(figures, [("setting", {"text": setting}) for setting in settings])


def test_what_is_right_is_right_to_both(figures):
    assert [setting_faults(setting) for setting in RIGHT] == [[]] * len(RIGHT)
    assert [answer["faults"] for answer in heard(figures, RIGHT)] == [[]] * len(RIGHT)


def test_what_is_wrong_gets_the_same_sentence_from_both(figures):
    assert [setting_faults(setting) for setting in WRONG] == [[sentence] for sentence in WRONG.values()]
    assert [answer["faults"] for answer in heard(figures, WRONG)] == [[sentence] for sentence in WRONG.values()]


def test_what_names_no_set_is_no_setting_to_either(figures):
    none = ["", "tuning=855kHz", "present", "Set=valve", "set"]
    assert [setting_faults(text) for text in none[:-1]] == [None] * 4
    assert [answer["faults"] for answer in heard(figures, none[:-1])] == [None] * 4
    assert setting_faults("set") == heard(figures, ["set"])[0]["faults"] == ['there is no set called "" on this bench']


def test_both_judge_alike_whatever_is_written(figures):
    """Pieces of settings put together at random, three thousand times; seeds are fixed."""
    draw = random.Random(8)
    names = ["set", "tuning", *GRAMMAR["knobs"], "by", "feed", "night", "tone", ""]
    values = [
        *figures["order"],
        "gentle",
        "fierce",
        "throttle",
        "swinging",
        "shunt",
        "0.5kΩ",
        "yes",
        "no",
        "",
        "=",
        "32kHz",
        "3..2kHz",
        "1.",
        ".5",
        "4nH",
        "4µH",
        "4uH",
        "1.6",
    ]
    values += [
        f"{number}{unit}"
        for unit in ("kHz", "uH", "nH", "pF", "ohm", "")
        for number in ("0", "1.7", "12.5", "855", "29900", "1e9")
    ]

    def part():
        return f"{draw.choice(names)}={draw.choice(values)}"

    settings = [
        "&".join([f"set={draw.choice(figures['order'])}", *(part() for _ in range(draw.randrange(4)))]) for _ in range(3000)
    ]
    here = [setting_faults(setting) for setting in settings]
    assert [answer["faults"] for answer in heard(figures, settings)] == here
    assert 300 < sum(not faults for faults in here) < 2700


@pytest.mark.parametrize(
    ("name", "by"),
    [(name, "throttle") for name in ("crystal", "valve", "reaction", "isolated", "quenched")]
    + [("reaction", "swinging"), ("reaction", "shunt")],
)
def test_what_the_bench_writes_it_reads_again_and_a_lesson_may_hold(figures, name, by):
    """Each knob at either stop and between, as the line that an instructor copies; its control named only if it is another."""
    parts = number_parts(figures["sets"][name], figures["sets"][name].get("dial", figures["dial"]), by)
    settings = []
    for share in (0.0, 0.37, 1.0):
        at = {part: (low + share * (high - low)) / GRAMMAR["units"][unit][unit] for part, (unit, low, high) in parts.items()}
        numbers = "&".join(f"{part}={round(value, 2):g}{parts[part][0]}" for part, value in at.items())
        settings.append(f"set={name}&{numbers}" + (f"&by={by}" if by != "throttle" else ""))
    opened = heard(figures, settings)
    assert [answer["faults"] for answer in opened] == [[], [], []]
    written = asked(figures, [("written", {"state": answer["opened"]}) for answer in opened])
    assert [setting_faults(setting) for setting in written] == [[], [], []]
    again = asked(figures, [("written", {"state": answer["opened"]}) for answer in heard(figures, written)])
    assert again == written
    assert [f"by={by}" in line for line in written] == [by != "throttle"] * 3
    assert {answer["opened"]["by"] for answer in opened} == {by}
