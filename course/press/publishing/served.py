"""What the pages need where they are served: a worker that keeps them, a manifest, icons, a page for addresses that do not exist."""

import hashlib
import io
import json
import textwrap
import xml.etree.ElementTree as etree
from pathlib import Path

from fontTools.pens.recordingPen import RecordingPen
from fontTools.svgLib.path import parse_path
from matplotlib.axes import Axes
from matplotlib.figure import Figure
from matplotlib.patches import PathPatch
from matplotlib.path import Path as Outline

from course.press.club import Club
from course.press.publishing.kept import Kept
from course.press.publishing.scripts import join_modules
from course.press.templates import render

NIGHT, GLASS, PALE = "#10202a", "#7fcbdc", "#f8f3e6"  # those of theme/emblem.svg, and of paper
NAME, SHORT = "Crystal to Reaction", "Reaction"
ICONS = {"icon-180.png": 180, "icon-512.png": 512}
CARD = (1200, 630)  # pixels, as messengers and boards show it
KEPT = ("*.html", "*.css", "*.js", "*.woff2", "*.webmanifest", "emblem.svg", "icon-*.png")
ON_DEMAND = ("print/", "sounds/", "figures/")  # kept once they were asked for


def write_served(site: Path, theme: Path, club: Club, says: str, kept: Kept) -> None:
    """Write all of it; the last thing in the site, for the worker is told of every file.

    Parameters
    ----------
    site : Path
        Folder of the finished pages.
    theme : Path
        Folder of `emblem.svg` and `scripts/`.
    club : Club
    says : str
        What the course is, in a sentence.
    kept : Kept
        Where pictures and script are found that have not changed.
    """
    kept.write(site, lambda folder: write_pictures(folder, theme / "emblem.svg", says), "icons", says)
    kept.write(site, lambda folder: join_modules({folder / "worker.js": theme / "scripts" / "worker.js"}), "worker")
    (site / "manifest.webmanifest").write_text(json.dumps(manifest(says)), "utf-8")
    (site / "404.html").write_text(render("missing.html", club=club, name=NAME), "utf-8")
    list_files(site)


def manifest(says: str) -> dict[str, object]:
    """What a telephone puts on its first screen (W3C, Web Application Manifest)."""
    icons = [{"src": name, "sizes": f"{size}x{size}", "type": "image/png"} for name, size in ICONS.items()]
    return {
        "name": NAME,
        "short_name": SHORT,
        "description": says,
        "start_url": "index.html",
        "scope": "./",
        "display": "minimal-ui",
        "background_color": PALE,
        "theme_color": NIGHT,
        "icons": icons,
    }


def write_pictures(folder: Path, emblem: Path, says: str) -> None:
    """Write the icons and the card."""
    for name, size in ICONS.items():
        (folder / name).write_bytes(picture(emblem, (size, size)))
    (folder / "card.png").write_bytes(picture(emblem, CARD, says))


def list_files(site: Path) -> None:
    """Tell `worker.js` of every file it is to keep, and of its edition, which is another as soon as any of them is."""
    worker = site / "worker.js"
    found = sorted({path.relative_to(site).as_posix() for pattern in KEPT for path in site.rglob(pattern)})
    files = [name for name in found if not name.startswith(ON_DEMAND) and name != worker.name]
    edition = hashlib.sha256()
    for name in files:
        edition.update(name.encode() + (site / name).read_bytes())
    told = f"globalThis.EDITION={json.dumps(edition.hexdigest()[:16])};globalThis.FILES={json.dumps(files)};\n"
    worker.write_text(told + worker.read_text("utf-8"), "utf-8")


def picture(emblem: Path, size: tuple[int, int], says: str = "") -> bytes:
    """The emblem as PNG, so many pixels wide and high; with words, beside the course's name and them."""
    width, height = size
    drawing = Figure(figsize=(width / 100, height / 100), dpi=100)
    drawing.set_facecolor(NIGHT)
    draw_emblem(drawing.add_axes((0.03, 0.1, 0.8 * height / width, 0.8) if says else (0, 0, 1, 1)), emblem, height)
    if says:
        drawing.text(0.47, 0.62, NAME.replace(" to ", "\nto "), color=PALE, fontsize=50, weight="bold", va="center")
        drawing.text(0.47, 0.28, textwrap.fill(says, 34), color=GLASS, fontsize=22, va="center", linespacing=1.4)
    written = io.BytesIO()
    drawing.savefig(written, format="png", facecolor=NIGHT, metadata={"Software": None})
    return written.getvalue()


def draw_emblem(axes: Axes, emblem: Path, height: int) -> None:
    """The paths of `emblem.svg` on its ground."""
    root = etree.fromstring(emblem.read_text("utf-8"))
    left, top, across, down = map(float, root.attrib["viewBox"].split())
    axes.set(xlim=(left, left + across), ylim=(top + down, top))
    axes.axis("off")
    for path in root.iter("{http://www.w3.org/2000/svg}path"):
        pen = RecordingPen()
        parse_path(path.attrib["d"], pen)
        codes = {"moveTo": Outline.MOVETO, "lineTo": Outline.LINETO, "curveTo": Outline.CURVE4}
        steps = [(point, codes[kind]) for kind, points in pen.value if kind in codes for point in points]
        fill, line = path.get("fill", "none"), path.get("stroke", "none")
        points = float(path.get("stroke-width", 0)) / down * 0.72 * height
        outline = Outline([point for point, _ in steps], [code for _, code in steps])
        axes.add_patch(PathPatch(outline, facecolor=fill, edgecolor=line, linewidth=points, capstyle="round"))
