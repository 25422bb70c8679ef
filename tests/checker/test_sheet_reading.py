"""A builder's file: what is read of it, and the one sentence for each thing that is wrong with one."""

import re
from dataclasses import replace

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from checker import cli
from checker.cli import sheet as sheet_command
from checker.course import ROOT
from checker.sheet import SheetFault, read_parts
from checker.sheet.keys import FILAMENTS, ROLES, SECTIONS, STATION, Quantity
from checker.sheet.working import work_out
from checker.toml_source import LARGEST, source_of

EXAMPLES = sorted((ROOT / "checker" / "examples" / "sheets").glob("*.toml"))
ORLA = (ROOT / "checker/examples/sheets/orla_quill_reaction.toml").read_text("utf-8")


def line_of(text, of=ORLA):
    return of[: of.index(text)].count("\n") + 1


def fault_of(text):
    data = text if isinstance(text, bytes) else text.encode()
    with pytest.raises(SheetFault) as caught:
        work_out(read_parts(data), draws=2)
    return str(caught.value)


@pytest.mark.parametrize("file", EXAMPLES, ids=lambda file: file.stem)
def test_the_examples_are_read_and_each_is_another_set(file):
    parts = read_parts(file)
    assert parts["builder"] in ("Isla Marrow", "Orla Quill", "Jasper Thrift")
    assert len({read_parts(one)["set"] for one in EXAMPLES}) == len(EXAMPLES) == 3


def test_quantities_become_si():
    parts = read_parts(ORLA.encode())
    assert (parts["former.diameter"], parts["condenser.maximum"], parts["valve.leak"]) == (63e-3, 365e-12, 2e6)
    assert parts["wire.gauge"] == pytest.approx(0.3759e-3, abs=0.5e-7)  # 28 SWG: BS 3737:1964, 0.0148 in; found
    assert parts["telephones.sensitivity"] == 110 and not parts.given["telephones.sensitivity"].stated
    assert [(station.name, station.role) for station in parts.stations][0] == ("Saltmarsh Point", "local")
    assert parts.stations[-1].field == 0.5e-3 and parts.stations[-1].power is None


def test_wire_gauges_are_those_of_the_printed_tables(published_gauges):
    """BS 3737:1964 (found) and ASTM B258 (found), in tests/published/coils."""
    for table, number, millimetres in published_gauges:
        text = ORLA.replace('gauge = "28 SWG"', f'gauge = "{number} {table}"').replace('"0.42 mm"', '"4 mm"')
        assert 1e3 * read_parts(text.encode())["wire.gauge"] == pytest.approx(millimetres, rel=1e-3)


@pytest.fixture
def published_gauges():
    from tests.physics.conftest import table

    swg, awg = table("coils/wire_swg"), table("coils/wire_awg")
    some = [("SWG", int(n), d) for n, d in zip(swg["swg"], swg["diameter_mm_exact"], strict=True) if n in (16, 26, 40)]
    return some + [("AWG", int(n), d) for n, d in zip(awg["awg"], awg["diameter_law_mm"], strict=True) if n in (10, 28, 40)]


def test_filaments_are_those_of_the_manuals():
    """RCA Receiving Tube Manual; found or memory, as tests/published/valve/triodes.csv says row by row."""
    from tests.physics.conftest import table

    triodes = table("valve/triodes")
    printed = {str(name): (v, i) for name, v, i in zip(triodes["type"], triodes["vf_v"], triodes["if_a"], strict=True)}
    for name, (volts, amperes, heated) in FILAMENTS.items():
        assert printed[name] == (volts, amperes)
        cathode = str(triodes["cathode"][list(triodes["type"]).index(name)])
        assert heated in cathode


# What is put in place of what, where the fault then lies, what is said of it, and what to do.
WRONG = [
    ('diameter = "63 mm"', "diameter = 63", "diameter = 63", "bare number “63”", 'such as diameter = "75 mm"'),
    ('diameter = "63 mm"', "diameter = nan", "diameter = nan", "bare number “nan”", "such as"),
    ('diameter = "63 mm"', "diameter = true", "diameter = true", "bare word “true”", "such as"),
    ('diameter = "63 mm"', 'diameter = ["63 mm"]', "diameter = [", "wants text in quotes", "write it as"),
    ('diameter = "63 mm"', 'diameter = "-63 mm"', "-63 mm", "outside 10 mm to 300 mm", "check number and prefix"),
    ('diameter = "63 mm"', 'diameter = "nan mm"', "nan mm", "not a quantity", "write a number, a space and a unit"),
    ('diameter = "63 mm"', 'diameter = "2.5 in"', "2.5 in", "not a quantity with a unit", "metres, not inches"),
    ('diameter = "63 mm"', 'diameter = "63 pF"', "63 pF", "is in F, and diameter is wanted in m", "such as"),
    ('diameter = "63 mm"', 'diamter = "63 mm"', "diamter", "no key “diamter” in [former]", "did you mean diameter"),
    ('diameter = "63 mm"\n', "", "[former]", "diameter is missing from [former] (outside of the tube)", "add diameter = "),
    ('name = "Orla\'s reaction set"\n', "", "Skerry Vore", "name is missing from the top of the file", "add name ="),
    ("[former]", "[form]", "[form]", "no table “form”", "did you mean former"),
    ("[former]", "[[former]]", "[[former]]", "former is a table of its own", "write [former]"),
    ("[[local]]", "[local]", "[local]", "local stands for a station", "write [[local]]"),
    ("diameter = ", "diameter ", 'diameter "63', "this is not TOML (Expected", "write tables as [former]"),
    ('type = "30"', 'type = "1E4G"', '"1E4G"', "no type “1E4G”", "did you mean 1E4-G"),
    ('type = "30"\n', "", "[valve]", "type is missing from [valve]", 'add type = "01-A"'),
    ('law = "wavelength"', 'law = "wavelenth"', "wavelenth", "no law “wavelenth”", "did you mean wavelength"),
    ('gauge = "28 SWG"', 'gauge = "28"', 'gauge = "28"', "“28” is no gauge", "SWG or AWG"),
    ('gauge = "28 SWG"', 'gauge = "50 SWG"', "50 SWG", "no gauge 50 in the table", "16 to 40 SWG"),
    ('gauge = "28 SWG"\n', "", "[wire]", "wants its gauge or its diameter", "write gauge ="),
    ('covered = "0.42 mm"', 'covered = "0.2 mm"', "0.2 mm", "thinner than its copper, 0.376 mm", "measure again"),
    ('length = "120 mm"', 'length = "50 mm"', "50 mm", "54 tuned, 21 tickler turns) take 70 mm", "longer tube"),
    ('covered = "0.42 mm"', 'covered = "3 mm"', 'length = "120 mm"', "the tube has 120 mm", "thinner wire"),
    ('maximum = "365 pF"', 'maximum = "150 pF"', "150 pF", "wants 7.72 times the capacitance", "larger condenser"),
    ('minimum = "12 pF"', 'minimum = "31 pF"', 'highest = "1500', "the dial ends at", "lower highest"),
    ('highest = "1500 kHz"', 'highest = "500 kHz"', '"500 kHz"', "highest is not above lowest", "correct them"),
    ('lt = "4 V"', 'lt = "1.5 V"', '"1.5 V"', "cannot feed the 2 V filament of a type 30", "raise it"),
    ('ht = "90 V"', 'ht = "9 V"', '"9 V"', "outside 20 V to 200 V", "check number"),
    ('top = "15 m"', 'top = "5 m"', 'top = "5 m"', "shorter than the upright one", "give at least the height"),
    ('top = "15 m"', 'top = "50 m"', 'top = "50 m"', "more than a quarter of a wave", "shorten it"),
    ('tickler_gap = "20 mm"', 'tickler_gap = "99 mm"', "99 mm", "well within the throttle's travel", "move the tickler nearer"),
    ('frequency = "855 kHz"', 'frequency = "1700 kHz"', "1700 kHz", "outside the band", "widen it or leave"),
    ('distance = "80 km"', 'distance = "120 m"', '"120 m"', "no wave yet", "give field instead"),
    ('distance = "80 km"\n', "", "[[wanted]]", "distance is missing from this [[wanted]] station", "or give its field"),
    ('field = "0.5 mV/m"', 'field = "0.5 mV/m"\npower = "1 kW"', 'power = "1 kW"\n' + "", "a field and a power", "give either"),
]


@pytest.mark.parametrize(("old", "new", "at", "what", "do"), WRONG, ids=[f"{w[3][:30]}" for w in WRONG])
def test_a_wrong_file_gets_one_sentence_with_its_line(old, new, at, what, do):
    assert ORLA.count(old) >= 1
    text = ORLA.replace(old, new, 1)
    message = fault_of(text)
    last = text.rstrip().count("\n") + 1
    line = (
        last if at == "Skerry Vore" else text[: text.rindex(at) if at == 'power = "1 kW"\n' else text.index(at)].count("\n") + 1
    )
    assert message.startswith(f"sheet.toml, line {line}: ")
    assert what in message and do in message
    assert message.endswith(".") and "\n" not in message and len(message) < 400


def test_a_file_that_is_no_text_and_one_that_is_too_long(tmp_path):
    assert fault_of(b"# \n\xff\xfe") == "sheet.toml, line 2: a byte here is not UTF-8: save the file as UTF-8 text."
    assert "shorten it" in fault_of(b"#" * (LARGEST + 1))
    assert "shorten it" in fault_of(b"\n" * 600)
    assert "name a file that can be read" in str(pytest.raises(SheetFault, read_parts, tmp_path).value)
    assert "No such file" in str(pytest.raises(SheetFault, read_parts, tmp_path / "none.toml").value)


def test_brackets_too_deep_for_the_parser_are_a_fault_too():
    assert fault_of(b"a = " + b"[" * 9000) == ("sheet.toml, line 1: brackets are nested too deep: write keys and plain tables.")


def test_what_the_physics_refuses_is_a_fault_too():
    """A sharp valve on a low HT behind a large resistor: its anode would stand below its cathode."""
    text = ORLA.replace('type = "30"', 'type = "6J5"').replace('lt = "4 V"', 'lt = "6.3 V"\nanode_resistor = "100 kΩ"')
    message = fault_of(text.replace('ht = "90 V"', 'ht = "20 V"'))
    assert (
        message.startswith("sheet.toml, line 3: these parts make no set that can be worked out (")
        and "raise the supply" in message
    )


def test_a_crystal_set_needs_no_valve_and_other_sets_do():
    without = re.sub(r"\[valve\].*?(?=\[band\])", "", ORLA, flags=re.S)
    assert "add type" in fault_of(without)
    crystal = without.replace("one valve with reaction", "crystal set")
    assert not read_parts(crystal.encode()).given["valve.type"].stated


def test_lines_are_found_whatever_way_a_key_is_written():
    text = 'a.b = 1\n# x\n"c" = """\nd = 2\n"""\n[e]\nf = [1,\n 2]\n\n[[g]]\nh = 1\n[[g]]\nh.i = 2\n'
    lines = source_of(text.encode(), "x").lines
    assert lines[("a", "b")] == 1 and lines[("c",)] == 3 and ("d",) not in lines
    assert lines[("e", "f")] == 7 and lines[("g", 0, "h")] == 11 and lines[("g", 1)] == 12 and lines[("g", 1, "h")] == 13


LINES = ORLA.split("\n")
PIECES = ["[former]", "[[wanted]]", "nan", "1e999", "=", '"""', "[[[[", "{a={b="]
words = st.one_of(st.text(max_size=12), st.sampled_from(LINES), st.sampled_from(PIECES))


@given(
    st.one_of(
        st.binary(max_size=200), st.lists(words, max_size=30).map(lambda some: "\n".join(some).encode("utf-8", "replace"))
    )
)
@settings(max_examples=100, deadline=None)
def test_no_bytes_bring_anything_but_a_sheet_fault(data):
    with pytest.raises(SheetFault) as caught:
        read_parts(data)
    assert str(caught.value).startswith("sheet.toml, line ") and "\n" not in str(caught.value)


@given(st.data())
@settings(max_examples=40, deadline=None)
def test_no_line_put_in_another_s_place_brings_anything_but_a_sheet_fault(data):
    lines = list(LINES)
    place = data.draw(st.integers(0, len(lines) - 1))
    lines[place] = data.draw(st.one_of(words, st.text(max_size=30).map(lambda t: lines[place].split("=")[0] + "= " + t)))
    try:
        parts = read_parts("\n".join(lines).encode("utf-8", "replace"))
    except SheetFault as fault:
        assert re.match(r"sheet\.toml, line \d+: ", str(fault)) and "\n" not in str(fault)
    else:
        assert parts["name"]


quantities = [(section, key) for section, keys in SECTIONS.items() for key in keys if isinstance(key.takes, Quantity)]


@given(st.data())
@settings(max_examples=12, deadline=None, suppress_health_check=[HealthCheck.too_slow])
def test_any_value_in_range_makes_a_sheet_or_a_fault(data):
    """Physics raises ValueError in places; none may come out, nor a warning of numpy's."""
    import warnings

    parts = read_parts(ORLA.encode())
    for section, key in data.draw(st.lists(st.sampled_from(quantities), min_size=1, max_size=3)):
        low, high = key.takes.limits
        name = f"{section}.{key.name}"
        parts = replace(parts, given=parts.given | {name: replace(parts.given[name], value=data.draw(st.floats(low, high)))})
    if parts["wire.diameter"] is not None:
        parts = replace(parts, given=parts.given | {"wire.gauge": replace(parts.given["wire.gauge"], value=None)})
    with warnings.catch_warnings():
        warnings.simplefilter("error")
        try:
            work_out(parts, draws=2)
        except SheetFault as fault:
            assert str(fault).startswith("sheet.toml, line ")


def test_every_default_and_every_example_is_one_that_its_key_takes():
    from checker.sheet.values import value_of

    for keys in (*SECTIONS.values(), STATION):
        for key in keys:
            assert value_of(key.takes.example, key) is not None
            assert not key.default or value_of(key.default, key) is not None
    assert set(ROLES) == {"local", "wanted"}


def test_the_command_tells_a_fault_in_one_line(tmp_path, monkeypatch, capsys):
    monkeypatch.chdir(tmp_path)
    (tmp_path / "mine.toml").write_text("x = 1\n")
    assert cli.main(["sheet", "mine.toml"]) == cli.USAGE_ERROR
    message = capsys.readouterr().err
    assert message.startswith("mine.toml, line 1: there is no key “x” in a sheet") and message.count("\n") == 1
    assert not list(tmp_path.glob("*.html"))


def test_a_student_pack_says_that_it_makes_no_sheets(monkeypatch, capsys):
    monkeypatch.setattr(sheet_command, "SEALED", True)
    assert cli.main(["sheet", "mine.toml"]) == cli.USAGE_ERROR
    assert "This is a student pack" in capsys.readouterr().err
