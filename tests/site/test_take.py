"""Every picture and sound can be taken away with its label, and made again with other settings."""

import base64
import io
import re
import struct
import zlib
from pathlib import Path
from xml.etree import ElementTree

import pytest
import soundfile

from course.make import FIGURE, SOUND, main, makers
from course.press.media.labels import Label, labelled_png, labelled_wav
from course.settings import Between, OneOf, Several, settings_of

ALL = [(kind, name, make) for kind in (FIGURE, SOUND) for name, make in makers(kind)]
SAID = Label("Ringing", "It dies away, §5.", "A wave.", {"q": "30"}, "python -m course.make figure x/ringing")
DOT = "{http://purl.org/dc/elements/1.1/}"


def test_at_least_two_things_may_be_set_in_each_unit_and_the_site_keeps_within_the_bounds():
    units: dict[str, int] = {}
    for _, name, make in ALL:
        for key, (setting, usual) in settings_of(make).items():
            assert setting.read(setting.show(usual)) == pytest.approx(usual), f"{name}, {key}"
            units[name[:6]] = units.get(name[:6], 0) + 1
    for unit in {name[:6] for _, name, _ in ALL if name.startswith("unit")}:
        assert units.get(unit, 0) >= 2, unit


@pytest.mark.parametrize(
    ("name", "setting"),
    [
        ("unit01_signal/dial/dial", "raster=10 kHz"),
        ("unit03_tuned_circuit/curves/ringing", "q=60"),
        ("unit03_tuned_circuit/dial/strays", "raster=10 kHz"),
        ("unit05_valve/stage/load_line", "supply=45 V"),
        ("unit06_reaction/moving/struck_once", "q=30"),
    ],
)
def test_a_setting_makes_another_picture_and_the_file_says_so(tmp_path, name, setting):
    usual, other = tmp_path / "usual", tmp_path / "other"
    assert main(["figure", name, "--into", str(usual)]) == main(["figure", name, "--set", setting, "--into", str(other)]) == 0
    stem = name.rpartition("/")[2]
    pictures = [ElementTree.parse(place / f"{stem}.svg").getroot() for place in (usual, other)]
    body = [re.sub(r"<(\w+:)?metadata>.*?</(\w+:)?metadata>", "", ElementTree.tostring(one, "unicode")) for one in pictures]
    assert body[0] != body[1] and "var(--" not in body[1] and "currentColor" not in body[1]
    said = {part.tag.removeprefix(DOT): part.text for part in pictures[1].iter() if part.tag.startswith(DOT)}
    key, value = setting.split("=")
    assert f"{key} = {value}" in said["description"] and "MIT" in said["rights"] and f'{key}="{value}"' in said["source"]
    assert f"{key} = {value}" in (other / f"{stem}.txt").read_text("utf-8") and "settings of one's own" in said["description"]


WRONG = {
    ("figure", "unit03_tuned_circuit/curves/ring"): "did you mean unit03_tuned_circuit/curves/ringing?",
    ("sound", "ringing"): "there is no sound ringing",
    ("figure", "../../etc/passwd"): "there is no figure",
    ("figure", "unit03_tuned_circuit/curves/ringing", "--set", "w=3"): "has no setting w: it has q",
    ("figure", "unit03_tuned_circuit/curves/ringing", "--set", "q=three"): "q=three: write a number such as 3",
    ("figure", "unit03_tuned_circuit/curves/ringing", "--set", "q=nan"): "write a number from 3 to 75",
    ("figure", "unit03_tuned_circuit/curves/ringing", "--set", "q"): "write a name, an equals sign and a value",
    ("figure", "unit03_tuned_circuit/curves/circuit", "--set", "q=1"): "it has none, and is made as it stands",
    ("figure", "unit01_signal/dial/dial", "--set", "raster=8"): "write one of 9 kHz, 10 kHz",
    ("sound", "unit03_tuned_circuit/ringing/struck", "--set", "qs=1,2,3,4,5,6"): "write at most 5 numbers",
    ("figure", "unit05_valve/stage/load_line", "--set", "supply=45 A"): "write a number such as 22.5 V",
    ("figure", "unit03_tuned_circuit/curves/ringing", "--png", "5"): "write a width from 200 to 8000",
    ("list", "nowhere"): "no figure, animation or sound has nowhere in its name",
}


@pytest.mark.parametrize("asked", WRONG)
def test_a_wrong_name_setting_or_value_gets_one_sentence(asked, capsys, tmp_path):
    assert main([*asked, *([] if asked[0] == "list" else ["--into", str(tmp_path)])]) == 2
    told = capsys.readouterr().err.strip()
    assert WRONG[asked] in told and "\n" not in told and not list(tmp_path.iterdir())


def test_numbers_words_and_lists_are_read_and_shown_alike():
    assert Between("x", 1e-12, 1e-9, "F").read("365 pF") == pytest.approx(365e-12)
    assert OneOf("x", (9_000, 10_000), "Hz").read("10 kHz") == OneOf("x", (9_000, 10_000), "Hz").read("10000") == 10_000
    assert Several(Between("x", 0, 40), 3).read("3, 6") == (3, 6)


def test_a_wav_still_plays_and_says_whose_it_is():
    """libsndfile reads the chunk, and knows nothing of how we wrote it."""
    plain = io.BytesIO()
    soundfile.write(plain, [0.0, 0.5, -0.5], 8000, format="WAV", subtype="PCM_16")
    with soundfile.SoundFile(io.BytesIO(labelled_wav(plain.getvalue(), SAID))) as file:
        assert file.title == "Ringing" and "MIT" in file.copyright and "Settings: q = 30" in file.comment
        assert file.read().tolist() == [0.0, 0.5, -0.5]


def chunks(png: bytes) -> dict[str, str]:
    """The text chunks of a PNG, every chunk's sum checked."""
    said, place = {}, 8
    while place < len(png):
        (length,) = struct.unpack(">I", png[place : place + 4])
        content = png[place + 4 : place + 8 + length]
        assert struct.unpack(">I", png[place + 8 + length : place + 12 + length])[0] == zlib.crc32(content)
        if content[:4] == b"iTXt":
            keyword, _, rest = content[4:].partition(b"\0")
            said[keyword.decode()] = rest[4:].decode()
        place += length + 12
    return said


def test_a_png_holds_its_label_where_the_standard_puts_it():
    header = struct.pack(">IIBBBBB", 1, 1, 8, 0, 0, 0, 0)
    parts = [(b"IHDR", header), (b"IDAT", zlib.compress(b"\0\0")), (b"IEND", b"")]
    png = b"\x89PNG\r\n\x1a\n" + b"".join(
        struct.pack(">I", len(body)) + name + body + struct.pack(">I", zlib.crc32(name + body)) for name, body in parts
    )
    said = chunks(labelled_png(png, SAID))
    assert said["Title"] == "Ringing" and said["Description"] == "It dies away, §5." and said["Comment"] == "Settings: q = 30"


def test_what_stands_in_the_pages_can_be_taken_away(course, chromium, tmp_path):
    site = course / "course" / "site"
    page = (site / "unit03_tuned_circuit" / "index.html").read_text("utf-8")
    assert page.count('class="take"') == len(re.findall(r'<figure id="(?:figure|sound)-', page)) > 8
    ringing = site / "figures" / "unit03_tuned_circuit" / "curves" / "ringing.svg"
    assert "Settings: q = 30." in ringing.read_text("utf-8")
    sound = next((site / "sounds").rglob("struck.wav"))
    assert soundfile.SoundFile(sound).title == "Struck" and sound.with_suffix(".txt").is_file()
    seen = ElementTree.parse(site / "sounds" / "unit07_oscillation" / "oscillation" / "over_the_edge.svg")
    assert "var(--" not in ElementTree.tostring(seen.getroot(), "unicode")
    context = chromium.new_context(viewport={"width": 360, "height": 740}, color_scheme="dark", accept_downloads=True)
    view = context.new_page()
    view.goto((site / "unit03_tuned_circuit" / "index.html").as_uri())
    view.locator("#figure-ringing summary").click()
    assert all(part.bounding_box()["height"] >= 44 for part in view.locator("#figure-ringing .take-files > *").all())
    with view.expect_download() as taken:
        view.locator("#figure-ringing .take-png").click()
    place = Path(taken.value.path())
    said = chunks(place.read_bytes())
    assert said["Comment"] == "Settings: q = 30" and "Ringing at Q 30" in said["Description"] and "MIT" in said["Copyright"]
    address = "data:image/png;base64," + base64.b64encode(place.read_bytes()).decode()
    seen = view.evaluate(
        """address => new Promise(done => { const image = new Image(); image.onload = () => {
          const canvas = document.createElement("canvas");
          canvas.width = image.width; canvas.height = image.height;
          const pen = canvas.getContext("2d");
          pen.drawImage(image, 0, 0);
          const points = new Set(new Uint32Array(pen.getImageData(0, 0, image.width, image.height).data.buffer));
          done({width: image.width, white: points.has(0xffffffff), sea: points.has(0xff755c0f)}) }; image.src = address })""",
        address,
    )
    assert seen == {"width": 1600, "white": True, "sea": True}
    context.close()


def test_the_first_png_of_a_page_has_its_letters_as_the_second_has(course, chromium):
    view = chromium.new_page()
    view.goto((course / "course" / "site" / "unit06_reaction" / "index.html").as_uri())
    view.locator("#figure-ohms-by-throttle .take summary").click()
    taken = []
    for _ in range(2):
        with view.expect_download() as download:
            view.locator("#figure-ohms-by-throttle .take-png").click()
        taken.append(Path(download.value.path()).read_bytes())
    assert taken[0] == taken[1]
    view.close()
