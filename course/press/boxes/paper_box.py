"""What stands on paper in the place of a sound or a bench: the address where it plays, as text and as a QR code."""

from markupsafe import Markup

from course.press.templates import render


def paper_html(site: str, address: str, does: str) -> str:
    """The box that only paper shows.

    Parameters
    ----------
    site : str
        Where the club publishes; nowhere, and there is nothing to be shown.
    address : str
        Of the sound or bench in the site: "unit03_tuned_circuit/index.html#sound-struck".
    does : str
        What is done there: "Listen".

    Returns
    -------
    str
        HTML; empty without a site.
    """
    if not site:
        return ""
    whole = f"{site.rstrip('/')}/{address}"
    return render("on_paper.html", address=whole, does=does, code=Markup(qr_svg(whole)))


def qr_svg(text: str) -> str:
    """A text as a QR code (ISO/IEC 18004) in SVG, that withstands 15 % of damage (level M), with the quiet zone of four modules."""
    import segno  # late: only a site that has its address needs it

    made: str = segno.make_qr(text, error="m").svg_inline(border=4, omitsize=True, svgclass=None, lineclass=None)
    return made
