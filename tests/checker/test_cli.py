"""The commands as a person types them: what is printed, what is written, which exit code a script gets."""

import json
import os
import pty
import re
import signal
import subprocess
import sys
import zipfile

import pytest

from checker import cli
from checker.cli.mark import marks_table
from checker.cli.tables import show_table
from checker.core import CORE
from checker.course import PATHS, ROOT, UNITS
from checker.marks.judges import Judges
from checker.pack.stubs import write_stubs
from checker.sandbox import proof
from checker.worker.contain import Containment
from tests.checker.test_proof import without

RESONANCE = "unit03_tuned_circuit/resonance.py"
RIGHT = """import numpy as np
import sympy
def resonance_condition(inductance, capacitance):
    return 1 / sympy.sqrt(inductance * capacitance)
def resonant_frequency(inductance, capacitance):
    return 1 / (2 * np.pi * np.sqrt(inductance * capacitance))
"""
# Long enough, and odd enough, to be nobody else's.
ALIKE = RIGHT + "".join(
    f"def my_own_{n}(parts, scale):\n    total = {n}.25\n    for one in parts:\n"
    f"        total = total * scale + one ** {n} - {n + 3} * scale\n    return total / ({n}.5 + scale)\n"
    for n in range(2, 8)
)
SLIP = RIGHT.replace("2 * np.pi * ", "")
STUB = (ROOT / "exercises" / RESONANCE).read_text("utf-8")


@pytest.fixture
def here(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    return tmp_path


def put(folder, text):
    file = folder / RESONANCE
    file.parent.mkdir(parents=True, exist_ok=True)
    file.write_text(text)


@pytest.fixture
def of_two(here):
    put(here / "class" / "Isla Marrow" / "exercises", RIGHT)
    put(here / "class" / "Tobias Fenn", SLIP)
    return here / "class"


def run(*arguments, capsys):
    code = cli.main([str(argument) for argument in arguments])
    out = capsys.readouterr()
    assert "Traceback" not in out.out + out.err
    assert max(map(len, out.out.splitlines()), default=0) <= 80
    return code, out.out, out.err


@pytest.mark.parametrize(
    ("text", "code", "says"),
    [(RIGHT, cli.DONE, "passed"), (SLIP, cli.NOT_YET, "2π times too large"), (STUB, cli.NOT_YET, "not attempted")],
)
def test_try_one_exercise(here, capsys, text, code, says):
    put(here / "exercises", text)
    got, out, _ = run("try", "resonance", capsys=capsys)
    assert got == code and says in out and out.startswith("resonance · ")


def test_try_without_a_name_goes_to_the_next_and_says_where_one_stands(here, capsys):
    write_stubs(here / "exercises")
    code, out, _ = run("try", capsys=capsys)
    assert code == cli.NOT_YET
    assert out.startswith(
        f"You have passed 0 of the core's {len(CORE)} exercises.\nNext, in unit 00, Bench:\n\nmetres · not attempted"
    )


def test_try_finds_the_exercises_from_below(here, capsys, monkeypatch):
    put(here / "exercises", RIGHT)
    monkeypatch.chdir(here / "exercises" / "unit03_tuned_circuit")
    assert run("try", "resonance", capsys=capsys)[0] == cli.DONE


def test_json_is_data(here, capsys):
    put(here / "exercises", SLIP)
    [verdict] = json.loads(run("try", "resonance", "--json", capsys=capsys)[1])
    assert verdict["kind"] == "wrong" and verdict["findings"][0]["remark"] == "yours is 2π times too large"


def test_hints_say_more_each_time(capsys):
    texts = [run("hint", "resonance", number, capsys=capsys)[1] for number in (1, 2, 3)]
    assert "hint 1 of 3" in texts[0] and "checker hint resonance 2" in texts[0] and "More" not in texts[2]


@pytest.mark.parametrize(
    ("arguments", "says"),
    [
        (["try", "resist"], "Did you mean"),
        (["hint", "zzz"], "checker try --list"),
        (["mark", "nowhere"], "Cannot read the folder nowhere"),
        (["mark", "empty"], "holds no submissions"),
        (["mark", "class", "--jobs", "0"], "--jobs wants"),
        (["mark", "class", "--only", "zzz"], "no exercise called"),
        (["mark", "class", "--path", "further", "--only", "resonance"], "on the further path"),
        (["amend", "X", "resonance", "7", "--because", "x", "--by", "y"], "There are no marks in marks yet"),
        (["mark", "class", "--cluster", "nowhere"], "No Dask scheduler answers"),
    ],
)
def test_wrong_use_is_one_sentence(here, capsys, arguments, says):
    (here / "empty").mkdir()
    if "class" in arguments:
        put(here / "class" / "Isla", RIGHT)
    code, out, err = run(*arguments, capsys=capsys)
    assert code == cli.USAGE_ERROR and says in err and err.count("\n") == 1 and not out


def test_an_instructor_may_set_the_core_alone_and_what_is_amended_stays_so(of_two, here, capsys):
    put(
        of_two / "Dot Bittern",
        RIGHT.replace("sympy.sqrt", "np.sqrt").replace("np.pi * np", "np.pi * math").replace("sympy", "math"),
    )
    out = run("mark", of_two, "--path", "core", "--only", "resonance", capsys=capsys)[1]
    assert re.search(r"^Dot Bittern +10 +10 of 10$", out, re.M) and "Marked by the core" in out
    assert run("amend", "Tobias Fenn", "resonance", "7", "--because", "x", "--by", "y", capsys=capsys)[0] == cli.DONE
    page = (here / "marks" / "index.html").read_text("utf-8")
    assert "Marked by the core" in page and re.search(r"Dot Bittern.*\n?.*>10</td>", page)
    out = run("mark", of_two, "--only", "resonance", capsys=capsys)[1]
    assert not re.search(r"^Dot Bittern +10 ", out, re.M) and "Marked by the core" not in out
    assert "Marked by the core" not in (here / "marks" / "index.html").read_text("utf-8")


def rows_of(table):
    return [line.split() for line in table.splitlines()]


def test_the_table_of_the_whole_course_keeps_to_80_columns_and_names_every_member(capsys):
    headings, _ = marks_table([], PATHS)
    show_table(headings, [[name, *["13.1"] * len(UNITS), "104.8 of 560"] for name in ("Isla Marrow", "Tobias Fenn")])
    heading, *rows = capsys.readouterr().out.splitlines()
    assert heading.split() == ["in", "unit", *map(str, range(len(UNITS))), "marks"]
    assert [row[:11] for row in rows] == ["Isla Marrow", "Tobias Fenn"] and max(map(len, [heading, *rows])) <= 80


def test_mark_prints_the_table_and_writes_what_is_promised(of_two, here, capsys):
    code, out, err = run("mark", of_two, "--only", "resonance", "--seed", 5, capsys=capsys)
    assert code == cli.DONE
    assert rows_of(out)[:3] == [
        ["in", "unit", "3", "marks"],
        "Isla Marrow 10 10 of 10".split(),
        "Tobias Fenn 6 6 of 10".split(),
    ]
    assert "1 of 2  Isla Marrow" in err
    assert {"index.html", "marks.csv", "oneroster.zip", "junit.xml", "marks.sqlite"} <= set(os.listdir(here / "marks"))
    assert sorted(os.listdir(here / "marks" / "members")) == ["isla-marrow.html", "tobias-fenn.html"]


def test_a_rerun_marks_only_what_changed_under_the_seed_it_had(of_two, capsys, monkeypatch):
    assert run("mark", of_two, "--only", "resonance", capsys=capsys)[0] == cli.DONE
    judged = []
    real = Judges.begin
    monkeypatch.setattr(Judges, "begin", lambda self, task: judged.append(task.path) or real(self, task))
    run("mark", of_two, "--only", "resonance", capsys=capsys)
    assert judged == []
    put(of_two / "Tobias Fenn", RIGHT + "# better\n")
    assert "Tobias Fenn 10 10 of 10".split() in rows_of(run("mark", of_two, "--only", "resonance", capsys=capsys)[1])
    assert len(judged) == 1


def test_a_mark_set_by_hand_survives_a_remark_and_is_shown(of_two, here, capsys):
    run("mark", of_two, "--only", "resonance", capsys=capsys)
    amend = ["amend", "Tobias Fenn", "resonance"]
    assert run(*amend, "7.5", "--because", "Right on paper", "--by", "Wren Dalby", capsys=capsys)[0] == cli.DONE
    out = run("mark", of_two, "--only", "resonance", capsys=capsys)[1]
    assert "7.5 of 10*" in out and "set by hand" in out
    assert "Right on paper" in (here / "marks" / "members" / "tobias-fenn.html").read_text()
    assert "Right on paper" in (here / "marks" / "marks.csv").read_text("utf-8-sig")
    for wrong, says in (("11", "more than this exercise has"), ("many", "is no mark")):
        code, _, err = run(*amend, wrong, "--because", "x", "--by", "y", capsys=capsys)
        assert code == cli.USAGE_ERROR and says in err
    code, _, err = run("amend", "Nobody", "resonance", "7", "--because", "x", "--by", "y", capsys=capsys)
    assert code == cli.USAGE_ERROR and "is not in the last run's marks" in err
    run(*amend, "withdraw", "--because", "Mistake", "--by", "Wren Dalby", capsys=capsys)
    assert "*" not in run("mark", of_two, "--only", "resonance", capsys=capsys)[1]


def of_the_class(here):
    """What the tables for school systems say of the class, and whether the pages lead to the pairs that are alike."""
    with zipfile.ZipFile(here / "marks" / "oneroster.zip") as archive:
        tables = {name: archive.read(name).decode() for name in ("orgs.csv", "classes.csv", "academicSessions.csv")}
    return tables, "alike.html" in (here / "marks" / "index.html").read_text()


def test_an_amended_mark_is_published_under_the_names_that_mark_was_told(of_two, here, capsys):
    for name in ("Nell Samphire", "Pippa Eider"):
        put(of_two / name, ALIKE)
    told = ["--class", "Form 4", "--club", "Quay School", "--school-year", "2026-09-01", "2027-07-31"]
    run("mark", of_two, "--only", "resonance", *told, capsys=capsys)
    before = of_the_class(here)
    tables, alike = before
    assert alike and "Quay School" in tables["orgs.csv"] and "Form 4" in tables["classes.csv"]
    assert '"2026-09-01","2027-07-31"' in tables["academicSessions.csv"] and '"2027"' in tables["academicSessions.csv"]
    assert run("amend", "Tobias Fenn", "resonance", "7", "--because", "x", "--by", "y", capsys=capsys)[0] == cli.DONE
    assert of_the_class(here) == before
    run("mark", of_two, "--only", "resonance", capsys=capsys)
    assert of_the_class(here) == before, "and so is a further run that is told nothing"
    run("mark", of_two, "--only", "resonance", "--class", "Form 5", capsys=capsys)
    assert "Form 5" in of_the_class(here)[0]["classes.csv"] and "Quay School" in of_the_class(here)[0]["orgs.csv"]


def test_a_school_year_runs_forwards(of_two, capsys):
    code, _, err = run("mark", of_two, "--school-year", "2027-07-31", "2026-09-01", capsys=capsys)
    assert code == cli.USAGE_ERROR and "the wrong way round" in err


def test_help_names_every_command_in_its_group(capsys):
    with pytest.raises(SystemExit) as ended:
        cli.main(["--help"])
    out = capsys.readouterr().out
    groups = dict(re.findall(r"^to (learn|teach|build):\n((?:  .*\n)+)", out, re.M))
    assert {group: re.findall(r"^  (\w+)", text, re.M) for group, text in groups.items()} == {
        "learn": ["try", "read", "see", "hear", "hint", "restore"],
        "teach": ["mark", "amend", "pack"],
        "build": ["sheet"],
    }
    assert ended.value.code == 0


def test_something_unreadable_is_said_and_shows_in_the_exit_code(of_two, capsys):
    (of_two / "Mabel Sedge.zip").write_bytes(b"not a zip")
    code, out, _ = run("mark", of_two, "--only", "resonance", capsys=capsys)
    assert code == cli.NOT_YET and "Mabel Sedge: The zip cannot be read" in out


def test_mark_says_first_how_it_contains_and_that_it_was_tried(of_two, capsys):
    _, _, err = run("mark", of_two, "--only", "resonance", capsys=capsys)
    assert re.match(
        r"Submissions are shut in by Landlock \d+, a filter for system calls, limits.*\. 12 attacks were tried on it, and none got through\.\n",
        err,
    )


def test_where_a_layer_is_missing_mark_wants_a_word_and_try_goes_on(of_two, here, capsys, monkeypatch):
    monkeypatch.setattr(proof, "probe", Containment)
    code, out, err = run("mark", of_two, "--only", "resonance", capsys=capsys)
    assert code == cli.USAGE_ERROR and "keeps a submission from your files" in err and "--uncontained" in err and not out
    assert err.count("\n") == 1 and not (here / "marks").exists()
    code, out, err = run("mark", of_two, "--only", "resonance", "--uncontained", capsys=capsys)
    assert code == cli.DONE and err.startswith("Not contained: Nothing on this system") and err.count("ontained") == 1
    put(here / "exercises", RIGHT)
    code, out, err = run("try", "resonance", capsys=capsys)
    assert code == cli.DONE and out.startswith("resonance · passed") and not err, "one's own file needs no word about walls"


def test_where_an_attack_gets_through_mark_wants_a_word(of_two, here, capsys, monkeypatch):
    """Whatever the system says that it has: here one wall is left out of the trial."""
    monkeypatch.setattr(proof, "_TRIAL", without("restrict_files"))
    code, out, err = run("mark", of_two, "--only", "resonance", capsys=capsys)
    assert code == cli.USAGE_ERROR and "In a trial of the walls here, a submission could read your files" in err
    assert "--uncontained" in err and err.count("\n") == 1 and not out and not (here / "marks").exists()
    code, out, err = run("mark", of_two, "--only", "resonance", "--uncontained", capsys=capsys)
    assert code == cli.DONE and err.startswith("Not contained: In a trial of the walls here") and "10 of 10" in out


def test_a_folder_of_exercises_that_is_a_link_is_the_student_s_own(here, capsys):
    put(here / "elsewhere", RIGHT)
    (here / "exercises").symlink_to(here / "elsewhere")
    assert run("try", "resonance", capsys=capsys)[0] == cli.DONE


def test_names_that_look_alike_are_both_marked(of_two, capsys):
    put(of_two / "Isla Mar\u200brow", SLIP)
    out = run("mark", of_two, "--only", "resonance", capsys=capsys)[1]
    assert "Isla Marrow      " in out and "Isla Marrow (2)" in out


def on_a_terminal(*arguments, cwd, **environment):
    """What a command prints on a terminal of 80 columns."""
    ours, theirs = pty.openpty()
    process = subprocess.Popen(
        [sys.executable, "-m", "checker", *map(str, arguments)],
        cwd=cwd,
        stdout=theirs,
        stderr=theirs,
        stdin=theirs,
        env=os.environ | {"TERM": "xterm-256color", "COLUMNS": "80"} | environment,
    )
    os.close(theirs)
    out = b""
    try:
        while chunk := os.read(ours, 4096):
            out += chunk
    except OSError:
        pass
    process.wait()
    return out.decode()


def test_a_terminal_gets_colour_and_a_bar_unless_it_wants_none(of_two, here):
    put(here / "exercises", SLIP)
    coloured = on_a_terminal("try", "resonance", cwd=here)
    plain = on_a_terminal("try", "resonance", cwd=here, NO_COLOR="1")
    assert "\x1b[1;31mresonance · wrong\x1b[0m" in coloured and "\x1b[31" not in plain and "2π times too large" in plain
    marked = on_a_terminal("mark", of_two, "--only", "resonance", cwd=here)
    assert "marking" in marked and "━" in marked and "1 of 2  Isla" not in marked


def test_nothing_is_said_where_nobody_reads_any_more(here):
    unread, ours = os.pipe()
    os.close(unread)
    ended = subprocess.run([sys.executable, "-m", "checker", "hint", "metres"], stdout=ours, stderr=subprocess.PIPE, cwd=here)
    os.close(ours)
    assert ended.stderr == b"" and ended.returncode == cli.INTERRUPTED


def test_an_interrupted_run_says_so_and_keeps_what_is_done(of_two, here):
    for number in range(20):  # no two alike, so none is known beforehand: the run cannot be over, however slow this process is
        put(of_two / f"Zoe Loop {number}", RIGHT + f"while True: {number}\n")
    process = subprocess.Popen(
        [sys.executable, "-m", "checker", "mark", str(of_two), "--jobs", "1", "--only", "resonance"],
        cwd=here,
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
        env=os.environ | {"PYTHONUNBUFFERED": "1"},
        preexec_fn=lambda: signal.signal(signal.SIGINT, signal.SIG_DFL),
    )  # a job in the background ignores it
    for line in process.stderr:
        if "Isla" in line:
            break
    process.send_signal(2)
    out, err = process.communicate(timeout=60)
    assert process.returncode == cli.INTERRUPTED and err.splitlines()[-1].startswith(
        "Stopped. What was finished has been kept"
    ), err
    assert (here / "marks" / "marks.sqlite").exists()
