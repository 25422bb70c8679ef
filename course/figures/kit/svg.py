"""From a drawing to the SVG that stands in a page: theme colours, the page's own letters, words for every reader."""

import io
import re
from html import escape

import schemdraw
from matplotlib import pyplot as plt
from matplotlib.figure import Figure
from matplotlib.patheffects import Normal
from matplotlib.text import Text

from course.figures.kit.style import PALETTE

POINT = 4 / 3
ENLARGED = 1.15
AS_OUTLINES = [Normal()]


def files_of(drawing: Figure | schemdraw.Drawing, name: str, about: dict[str, str]) -> dict[str, bytes]:
    """One inline `<svg>` element of a drawing; the same bytes each time.

    Parameters
    ----------
    drawing : matplotlib Figure or schemdraw Drawing
    name : str
        "file/function"; the ids inside begin with it.
    about : dict
        What `figure` was told; "alt" is put inside.

    Returns
    -------
    dict
        The one file, under ".svg".

    Raises
    ------
    ValueError
        If the drawing holds a colour that is not in the palette, or is no drawing.
    """
    if isinstance(drawing, Figure):
        source = from_matplotlib(drawing, name)
    elif isinstance(drawing, schemdraw.Drawing):
        source = drawing.get_imagedata("svg").decode("utf-8").replace("stroke-dasharray:-;", "")
    else:
        raise ValueError(f"the function returned {type(drawing).__name__}, not a matplotlib or schemdraw drawing")
    slug = re.sub(r"\W+", "-", name)
    return {".svg": framed(own_ids(theme_colours(page_letters(source)), slug), slug, name, about["alt"]).encode()}


def from_matplotlib(drawing: Figure, name: str) -> str:
    """SVG with words as text, in the page's typeface, but formulas as outlines: their letters are placed one by one."""
    drawing.draw_without_rendering()
    for text in drawing.findobj(Text):
        if "$" in text.get_text():
            text.set_path_effects(AS_OUTLINES)
    with plt.rc_context({"svg.hashsalt": name}):
        text = io.StringIO()
        drawing.savefig(text, format="svg", metadata={"Date": None, "Creator": None, "Format": None, "Type": None})
    plt.close(drawing)
    return re.sub(r"<metadata>.*?</metadata>|<!--.*?-->|<defs>\s*<style.*?</style>\s*</defs>", "", text.getvalue(), flags=re.S)


def page_letters(source: str) -> str:
    """Leave the choice of typeface to the page."""
    source = re.sub(r"font: ((?:italic |oblique )?(?:\d+ )?[\d.]+px) [^;\"]+", r"font-size: \1", source)
    source = re.sub(r"font-size: (italic|oblique) ", r"font-style: \1; font-size: ", source)
    source = re.sub(r"font-size: (\d+) ([\d.]+px)", r"font-weight: \1; font-size: \2", source)
    return re.sub(r"\s*font-family(?:=\"[^\"]*\"|: [^;\"]+;?)", "", source)


def theme_colours(source: str) -> str:
    """Put the palette's names, which have a light and a dark form, in place of its light colours.

    White, with which schemdraw hides what lies under an open dot, becomes the ground that pictures stand on.
    """
    names = {light: f"var(--{name})" for name, (light, _) in PALETTE.items()}
    names |= {PALETTE["ink"][0]: "currentColor", "white": "var(--slip)"}

    def named(match: re.Match) -> str:
        colour = match["colour"].strip()
        if colour in ("none", "currentColor") or colour.startswith("url("):
            return match[0]
        if colour.lower() not in names:
            raise ValueError(f"colour {colour} is not one of the palette: {', '.join(n.upper() for n in PALETTE)}")
        return match["before"] + names[colour.lower()]

    source = re.sub(r"\b(fill|stroke|color)=\"([^\"]*)\"", r'style="\1: \2"', source)
    source = re.sub(r'style="([^"]*?);?" style="', r'style="\1; ', source)
    return re.sub(r"(?P<before>\b(?:fill|stroke|color): ?)(?P<colour>[^;\"]+)", named, source)


def own_ids(source: str, slug: str) -> str:
    """Begin every id with the figure's name, so that several figures can stand in one page."""
    source = re.sub(r'\bid="([^"]+)"', rf'id="{slug}-\1"', source)
    source = re.sub(r"url\(#([^)]+)\)", rf"url(#{slug}-\1)", source)
    return re.sub(r'href="#([^"]+)"', rf'href="#{slug}-\1"', source)


def framed(source: str, slug: str, name: str, alt: str) -> str:
    """The same drawing under a fresh `<svg>` tag that scales, and that has a name and a description."""
    head = re.search(r"<svg\b[^>]*>", source)
    view = re.search(r'viewBox="([^"]+)"', head[0])[1]
    width = float(view.split()[2]) * POINT * ENLARGED
    title = name.split("/")[-1].replace("_", " ").capitalize()
    body = source[head.end() : source.rindex("</svg>")].strip()
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" role="img" '
        f'aria-labelledby="{slug}-title {slug}-alt" viewBox="{view}" width="{width:.0f}" stroke-linejoin="round">'
        f'<title id="{slug}-title">{escape(title)}</title><desc id="{slug}-alt">{escape(alt)}</desc>{body}</svg>\n'
    )
