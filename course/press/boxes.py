"""The HTML that stands in a page for a figure, a sound and the list of units."""

from collections.abc import Callable
from html import escape

from course.press.made import Made
from course.press.pages import Unit


def figure_html(made: Made, caption: str, anchor: str) -> str:
    """A picture with its caption.

    Parameters
    ----------
    made : Made
    caption : str
        HTML.
    anchor : str
        Address of the picture within its page.
    """
    picture = made.files[".svg"].read_text("utf-8")
    return f'<figure id="{anchor}" class="drawn">\n{picture}<figcaption>{caption}</figcaption>\n</figure>'


HOLD = (
    '<label class="hold"><input type="checkbox"> <span class="hold-stop">Hold still</span>'
    '<span class="hold-go">Set moving</span></label> '
)


def sound_html(caption: str, transcript: str, anchor: str, title: str, address: str, picture: str = "") -> str:
    """A player with its caption, its transcript, a word about loudness, and the file to take away.

    Parameters
    ----------
    caption, transcript : str
        HTML.
    anchor, title : str
        Address within the page, and a short name.
    address : str
        Where the files are, without the suffix.
    picture : str
        SVG that moves as the sound plays; empty for none.
    """
    return (
        f'<figure id="{anchor}" class="heard">\n<figcaption>{caption}</figcaption>\n{picture}'
        f'<audio controls preload="none" src="{escape(address)}.mp3" aria-label="{escape(title)}"></audio>\n'
        f'<p class="heard-note"><strong>Turn down first:</strong> start with the volume low, headphones most of all. '
        f'<a href="{escape(address)}.wav" download>Download WAV</a> {HOLD if picture else ""}</p>\n'
        f'<p class="transcript"><b>In words:</b> {transcript}</p>\n</figure>'
    )


def units_html(units: list[Unit], relative: Callable[[str], str]) -> str:
    """The units in order, each with its question."""
    items = "".join(
        f'<li><a href="{relative(f"{unit.folder}/index.html")}"><b>{unit.number}</b> {escape(unit.title)}</a>'
        f"<br>{escape(unit.question)}</li>\n"
        for unit in units
    )
    return f'<ul class="units">\n{items}</ul>'


def instructor_pages_html(units: list[Unit], relative: Callable[[str], str]) -> str:
    """The instructor's pages that there are."""
    items = "".join(
        f'<li><a href="{relative(f"{unit.folder}/instructor.html")}">{unit.number} {escape(unit.title)}</a></li>\n'
        for unit in units
        if unit.instructor
    )
    return f'<ul class="units">\n{items}</ul>'
