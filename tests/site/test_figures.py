"""Every picture is legible on a telephone, can be read aloud, and has only colours with a light and a dark form."""

import importlib
import inspect
import pkgutil
import re
import tomllib
import xml.etree.ElementTree as etree
from collections.abc import Iterator

import pytest
import schemdraw

import course.figures
from course.figures import figure
from course.figures.kit.parts import Dot, Hop, Line, schematic, wire, wire_over

from .conftest import ROOT

PALETTE = tomllib.loads((ROOT / "course" / "figures" / "kit" / "palette.toml").read_text("utf-8"))
SURFACES = ("paper", "slip")
INKS = ("ink", "soft", "sea", "brass", "rust", "kelp", "plum")
SVG = "{http://www.w3.org/2000/svg}"
TELEPHONE = 318  # pixels that a picture has across on a screen 360 pixels wide


def luminance(colour: str) -> float:
    """Relative luminance, WCAG 2.2 (W3C, 2023), definition "relative luminance". From memory."""
    channels = (int(colour[at : at + 2], 16) / 255 for at in (1, 3, 5))
    linear = [c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in channels]
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]


def contrast(one: str, other: str) -> float:
    """Contrast ratio, WCAG 2.2, definition "contrast ratio". From memory."""
    low, high = sorted((luminance(one), luminance(other)))
    return (high + 0.05) / (low + 0.05)


def test_the_contrast_of_black_on_white_is_21():
    assert contrast("#000000", "#ffffff") == pytest.approx(21)
    assert contrast("#767676", "#ffffff") == pytest.approx(4.54, abs=0.005)


@pytest.mark.parametrize("side", [0, 1], ids=["light", "dark"])
@pytest.mark.parametrize("surface", SURFACES)
@pytest.mark.parametrize("ink", INKS)
def test_every_ink_reaches_level_aa_on_every_surface(ink, surface, side):
    """WCAG 2.2, success criterion 1.4.3: 4.5 to 1 for text."""
    assert contrast(PALETTE[ink][side], PALETTE[surface][side]) >= 4.5


@pytest.fixture(scope="module")
def drawings(course):
    """All pictures that stand in pages, by name."""
    store = course / "course" / "build" / "figures"
    found = {path.relative_to(store).with_suffix("").as_posix(): path.read_text("utf-8") for path in store.rglob("*.svg")}
    text = "".join(page.read_text("utf-8") for page in (course / "course" / "lessons").rglob("*.md"))
    return {name: svg for name, svg in found.items() if f'figure("{name}")' in text}


def test_each_is_one_image_with_a_name_and_a_description(drawings):
    assert len(drawings) >= 6
    for name, svg in drawings.items():
        root = etree.fromstring(svg)
        assert root.get("role") == "img", name
        title, description = root.find(f"{SVG}title"), root.find(f"{SVG}desc")
        assert root.get("aria-labelledby") == f"{title.get('id')} {description.get('id')}", name
        assert len(description.text) > 30, name


def test_each_has_only_colours_with_a_light_and_a_dark_form(drawings):
    names = "|".join(PALETTE)
    for name, svg in drawings.items():
        painted = re.findall(r"(?:fill|stroke|color): ?([^;\"]+)", svg) + re.findall(r"(?:fill|stroke|color)=\"([^\"]+)\"", svg)
        for colour in painted:
            assert re.fullmatch(rf"none|currentColor|url\(#[\w.-]+\)|var\(--(?:{names})\)", colour.strip()), f"{name}: {colour}"
        moving = name.split("/")[-2] == "moving"  # an animation carries its motion in a style of its own
        assert ("<style" not in svg or moving) and "#000" not in svg, name


def test_each_has_ids_of_its_own(drawings):
    for name, svg in drawings.items():
        slug = re.sub(r"\W+", "-", name)
        ids = re.findall(r'\bid="([^"]+)"', svg)
        assert len(ids) == len(set(ids)), name
        assert all(id.startswith(f"{slug}-") for id in ids), name
        referred = re.findall(r"url\(#([^)]+)\)|href=\"#([^\"]+)\"", svg)
        assert {a or b for a, b in referred} <= set(ids), name


def test_each_is_legible_on_a_telephone(drawings):
    for name, svg in drawings.items():
        width = float(re.search(r'viewBox="([^"]+)"', svg)[1].split()[2])
        sizes = [float(size) for size in re.findall(r"font-size(?:: |=\")([\d.]+)", svg)]
        assert sizes, name
        full = max(sizes) * TELEPHONE / width
        assert full >= 9.5, f"{name}: the text is {full:.1f} px high on a telephone: draw it narrower"


def test_each_is_small_enough_to_stand_in_a_page(drawings):
    for name, svg in drawings.items():
        assert len(svg) < 150_000, f"{name}: {len(svg)} bytes; use fewer points"


def test_no_picture_has_a_typeface_of_its_own(drawings):
    for name, svg in drawings.items():
        assert "font-family" not in svg and "font:" not in svg, name


@pytest.mark.parametrize("missing", [{"caption": ""}, {"alt": " "}])
def test_a_figure_needs_a_caption_and_words(missing):
    with pytest.raises(ValueError):
        figure(**({"caption": "x", "alt": "y"} | missing))


def schematics() -> Iterator[tuple[str, schemdraw.Drawing]]:
    """Every circuit diagram of the course, by the name of its function."""
    for module in pkgutil.walk_packages(course.figures.__path__, "course.figures."):
        if ".kit" in module.name or "schematic()" not in inspect.getsource(found := importlib.import_module(module.name)):
            continue
        for name, thing in vars(found).items():
            if hasattr(thing, "about") and thing.__module__ == module.name and "schematic()" in inspect.getsource(thing):
                yield f"{module.name}.{name}", thing()


def bare_crossings(drawing: schemdraw.Drawing) -> list[tuple[float, float]]:
    """Where two wires cross with neither a dot, by which they touch, nor a hop, by which they do not."""
    lines = [[element.absanchors[end] for end in ("start", "end")] for element in drawing.elements if type(element) is Line]
    marked = [element.transform.transform((0, 0)) for element in drawing.elements if isinstance(element, (Dot, Hop))]
    upright = [(a.x, *sorted((a.y, b.y))) for a, b in lines if abs(a.x - b.x) < 1e-6]
    level = [(a.y, *sorted((a.x, b.x))) for a, b in lines if abs(a.y - b.y) < 1e-6]
    return [
        (round(x, 2), round(y, 2))
        for x, low, high in upright
        for y, left, right in level
        if low + 0.01 < y < high - 0.01 and left + 0.01 < x < right - 0.01
        if all(abs(x - place[0]) + abs(y - place[1]) > 0.05 for place in marked)
    ]


def test_no_wires_cross_without_a_hop_or_a_dot():
    found = {name: bare_crossings(drawing) for name, drawing in schematics()}
    assert len(found) > 15 and not {name: places for name, places in found.items() if places}


def test_a_crossing_is_found_and_a_hop_heals_it():
    for down, bare in ((wire, 1), (lambda start, end: wire_over(start, 1, end), 0)):
        with schematic() as drawing:
            wire((0, 1), (2, 1))
            down((1, 2), (1, 0))
        assert len(bare_crossings(drawing)) == bare
