"""A club's own site: each line of `course/club.toml` reaches the pages, and a wrong one stops the build with one sentence."""

import html
import re

import pytest

from course.press.club import LINES, Club, read_club
from course.press.faults import Fault

from .conftest import ROOT, build

WRONG = {
    'nam = "x"': "course/club.toml, nam: there is no line of that name: did you mean name?",
    "colour = 3": "course/club.toml, colour: there is no line of that name: write one of name,",
    "raster = 8": "course/club.toml, raster: write raster = 9 or raster = 10 (kHz), not 8",
    "raster = true": "raster: write raster = 9 or raster = 10",
    'raster = "9"': "raster: write raster = 9 or raster = 10",
    "name = 7": "course/club.toml, name: put the text in quotes",
    'words = "Valve"': 'words: write words = "valve" or words = "tube"',
    'contact = "wren@"': "contact: wren@ is no e-mail address",
    'contact = ""': "contact: it says nothing: write",
    'contact = "https://"': "contact: https:// is no whole address",
    'name = " — "': "name: it says nothing: write",
    'meeting_place = ""': "or leave the line out",
    'authority = ""': "authority: it says nothing",
    'safety_rules = ""': "safety_rules: it says nothing",
    'authority = "licences.example"': "authority: write the whole address, with https:// before it",
    'pack = "ghost.zip"': "pack: there is no course/ghost.zip: make it",
    'pack = "../up.zip"': "pack: write an address that begins with https://, or the name of a zip",
    'address = "saltmarsh"': "address: write the whole address, with https:// before it",
    'authority = "javascript:alert(1)"': "authority: write the whole address",
    'safety_rules = "../../etc/passwd"': "safety_rules: write an address that begins with https://, or the name of a page",
    'safety_rules = "ghost.md"': "safety_rules: there is no page course/lessons/ghost.md",
    'name = """a\nb"""': "name: write it in one line",
    "raster = 9\nname = no quotes": "course/club.toml, line 2: cannot be read",
    "raster = 9\nraster = 10": "course/club.toml: cannot be read: write each line once",
}


@pytest.mark.parametrize("said", WRONG)
def test_a_wrong_line_is_named_with_what_to_do(tmp_path, said):
    (tmp_path / "club.toml").write_text(said, "utf-8")
    with pytest.raises(Fault) as fault:
        read_club(tmp_path / "club.toml", tmp_path)
    assert WRONG[said] in str(fault.value) and "\n" not in str(fault.value)


def test_nothing_said_is_the_usual_site(tmp_path):
    assert read_club(tmp_path / "club.toml", tmp_path) == Club() == read_club(ROOT / "course" / "club.toml", tmp_path)
    (tmp_path / "club.toml").write_bytes(b'name = "M\xfcller"')
    with pytest.raises(Fault, match="not in UTF-8"):
        read_club(tmp_path / "club.toml", tmp_path)


def test_every_line_reaches_the_pages_and_a_wrong_one_stops_the_build(bare):
    course = bare / "course"
    said = {key: example for key, (_, example) in LINES.items()} | {"name": '"Tern & Spit <Circle>"'}
    (course / "club.toml").write_text("\n".join(f"{key} = {value}" for key, value in said.items()), "utf-8")
    (course / "lessons" / "club_rules.md").write_text("# Our own rules\n", "utf-8")
    calls = ("club_pack()", 'by_raster("nine", "**ten**")', 'figure("unit01_signal/dial/dial")', "club_safety()")
    page = "# Home\n\nA valve.\n\n" + "\n\n".join(f"{{{{ {call} }}}}" for call in calls)
    (course / "lessons" / "index.md").write_text(page, "utf-8")
    done = build(bare)
    assert done.returncode == 0, done.stdout
    source = (course / "site" / "index.html").read_text("utf-8")
    text = html.unescape(re.sub(r"<[^>]+>", "", source))
    text = text.replace("\N{NO-BREAK SPACE}", " ")
    assert text.count("Tern & Spit <Circle>") >= 3 and "Thursdays at half past seven" in text
    for link in (
        "mailto:wren@saltmarsh-point.example",
        "https://licences.example/amateur",
        "club_rules.html",
        "https://saltmarsh-point.example/crystal-to-reaction.zip",
    ):
        assert f'href="{link}"' in source
    assert "<strong>ten</strong>" in source and "the 10 kHz raster" in text
    assert '<span data-gb="valve">tube</span>' in source and 'data-words="american"' in source
    assert 'property="og:image" content="https://saltmarsh-point.example/course/card.png"' in source
    assert "<loc>https://saltmarsh-point.example/course/index.html</loc>" in (course / "site" / "sitemap.xml").read_text(
        "utf-8"
    )
    assert '<base href="https://saltmarsh-point.example/course/">' in (course / "site" / "404.html").read_text("utf-8")
    (course / "club.toml").write_text("raster = 11\n", "utf-8")
    done = build(bare)
    assert done.returncode == 1 and "Traceback" not in done.stdout
    assert "course/club.toml, raster: write raster = 9 or raster = 10 (kHz), not 11" in done.stdout
