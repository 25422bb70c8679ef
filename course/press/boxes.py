"""The HTML that stands in a page for a figure, a sound and the list of units."""

from collections.abc import Callable
from html import escape

from course.press.booklet import FOLDER
from course.press.made import Made
from course.press.pages import Unit
from course.press.take import LICENCE, Label


def figure_html(made: Made, caption: str, anchor: str, take: str) -> str:
    """A picture with its caption, and what can be taken away.

    Parameters
    ----------
    made : Made
    caption : str
        HTML.
    anchor : str
        Address of the picture within its page.
    take : str
        HTML of `take_html`.
    """
    picture = made.files[".svg"].read_text("utf-8")
    return f'<figure id="{anchor}" class="drawn">\n{picture}<figcaption>{caption}</figcaption>\n{take}</figure>'


HOLD = (
    '<label class="hold"><input type="checkbox"> <span class="hold-stop">Hold still</span>'
    '<span class="hold-go">Set moving</span></label> '
)


def sound_html(caption: str, transcript: str, anchor: str, title: str, address: str, take: str, picture: str = "") -> str:
    """A player with its caption, its transcript, a word about loudness, and what can be taken away.

    Parameters
    ----------
    caption, transcript : str
        HTML.
    anchor, title : str
        Address within the page, and a short name.
    address : str
        Where the files are, without the suffix.
    take : str
        HTML of `take_html`.
    picture : str
        SVG that moves as the sound plays; empty for none.
    """
    return (
        f'<figure id="{anchor}" class="heard">\n<figcaption>{caption}</figcaption>\n{picture}'
        f'<audio controls preload="none" src="{escape(address)}.mp3" aria-label="{escape(title)}"></audio>\n'
        f'<p class="heard-note"><strong>Turn down first:</strong> start with the volume low, headphones most of all. '
        f"{HOLD if picture else ''}</p>\n"
        f'<p class="transcript"><b>In words:</b> {transcript}</p>\n{take}</figure>'
    )


def take_html(label: Label, settings: dict, address: str, suffixes: tuple[str, ...]) -> str:
    """The files of a picture or sound, and how it is made again: closed until asked for.

    Parameters
    ----------
    label : Label
    settings : dict
        Of each its meaning, its usual value and what it may be, in words.
    address : str
        Where the files are, without the suffix.
    suffixes : tuple of str
        Which files there are; a picture's PNG is made in the page.
    """
    files = "".join(f'<a href="{escape(address)}{suffix}" download>{suffix[1:].upper()}</a> ' for suffix in suffixes)
    png = '<button type="button" class="take-png" hidden>PNG</button> ' if ".svg" in suffixes else ""
    rows = "".join(
        f"<li><code>{key} = {escape(label.settings[key])}</code>: {escape(says)}; may be {escape(choice)}</li>"
        for key, (says, _, choice) in settings.items()
    )
    return (
        f'<details class="take" data-keep data-title="{escape(label.title)}"><summary>Take away</summary>\n'
        f'<p class="take-files">{files}{png}<a href="{escape(address)}.txt" download>Its words</a></p>\n'
        + (f"<p>Made with these settings:</p>\n<ul>{rows}</ul>\n" if rows else "")
        + f'<p>Make it again{", with others by <code>--set</code>" if rows else ""}: '
        f'<code class="take-command">{escape(label.command)}</code></p>\n'
        f'<p class="take-licence">{escape(LICENCE)}</p></details>\n'
    )


def units_html(units: list[Unit], relative: Callable[[str], str]) -> str:
    """The units in order, each with its question."""
    items = "".join(
        f'<li><a href="{relative(f"{unit.folder}/index.html")}"><b>{unit.number}</b> {escape(unit.title)}</a>'
        f"<br>{escape(unit.question)}</li>\n"
        for unit in units
    )
    return f'<ul class="units">\n{items}</ul>'


def booklets_html(units: list[Unit], relative: Callable[[str], str]) -> str:
    """The booklets to print: one of each unit, one of the whole course."""
    links = [(f"{unit.number} {escape(unit.title)}", unit.folder) for unit in units]
    links += [("The whole course", "course")] if units else []
    items = "".join(f'<li><a href="{relative(f"{FOLDER}/{name}.html")}">{words}</a></li>\n' for words, name in links)
    return f'<ul class="units">\n{items}</ul>'


def instructor_pages_html(units: list[Unit], relative: Callable[[str], str]) -> str:
    """The instructor's pages that there are."""
    items = "".join(
        f'<li><a href="{relative(f"{unit.folder}/instructor.html")}">{unit.number} {escape(unit.title)}</a></li>\n'
        for unit in units
        if unit.instructor
    )
    return f'<ul class="units">\n{items}</ul>'
