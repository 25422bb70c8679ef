"""The typefaces of pages, formulas and pictures taken away, each with its licence."""

import base64
import json
import re
import shutil
from pathlib import Path

KATEX_FONTS = re.compile(r",url\([^)]*\) format\(\"(?:woff|truetype)\"\)")
TYPEFACES = {
    "alegreya-sans": ("latin-400-normal", "latin-400-italic", "latin-700-normal", "greek-400-normal"),
    "alegreya": ("latin-700-normal",),
}
EARLY = (  # those in which a page's first screen is set
    "type/alegreya-sans-latin-400-normal.woff2",
    "type/alegreya-sans-latin-400-italic.woff2",
    "type/alegreya-sans-latin-700-normal.woff2",
    "type/alegreya-latin-700-normal.woff2",
)
PICTURE_LETTERS = (
    ("latin-400-normal", 400, ""),
    ("latin-700-normal", 700, ""),
    ("greek-400-normal", 400, ";unicode-range:U+0370-03FF"),
)


def copy_typefaces(packages: Path, site: Path) -> None:
    """Put all of them beside the pages.

    Parameters
    ----------
    packages : Path
        What npm brought.
    site : Path
    """
    copy_katex(packages / "katex" / "dist", site / "katex")
    copy_letters(packages / "@fontsource", site / "type")


def copy_katex(source: Path, target: Path) -> None:
    """KaTeX's style sheet with its woff2 fonts only, and its licence (MIT)."""
    (target / "fonts").mkdir(parents=True, exist_ok=True)
    shutil.copyfile(source.parent / "LICENSE", target / "licence.txt")
    sheet = KATEX_FONTS.sub("", (source / "katex.min.css").read_text("utf-8"))
    (target / "katex.css").write_text(sheet, "utf-8")
    for font in sorted((source / "fonts").glob("*.woff2")):
        shutil.copyfile(font, target / "fonts" / font.name)


def copy_letters(source: Path, target: Path) -> None:
    """The site's own typefaces, with their licence (SIL Open Font License 1.1)."""
    target.mkdir(parents=True, exist_ok=True)
    (target / "letters.js").write_text(picture_letters(source), "utf-8")
    for family, cuts in TYPEFACES.items():
        shutil.copyfile(source / family / "LICENSE", target / f"{family}-licence.txt")
        for cut in cuts:
            shutil.copyfile(source / family / "files" / f"{family}-{cut}.woff2", target / f"{family}-{cut}.woff2")


def picture_letters(source: Path) -> str:
    """A script that holds the letters of pictures taken away as PNG: a page from the disk may not read a font file."""

    def face(cut: str, weight: int, only: str) -> str:
        font = (source / "alegreya-sans" / "files" / f"alegreya-sans-{cut}.woff2").read_bytes()
        address = f"data:font/woff2;base64,{base64.b64encode(font).decode()}"
        return f"@font-face{{font-family:Alegreya Sans;font-weight:{weight};src:url({address}){only}}}"

    return f"window.courseLetters={json.dumps(''.join(face(*each) for each in PICTURE_LETTERS))};\n"
