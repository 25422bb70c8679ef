"""What the checker says of a number, as print has it: no quotes, backticks, carets, e's, j's or hyphens of a program."""

import re
from html import escape

from markupsafe import Markup

NUMBER = r"[-−]?(?:\d+\.?\d*|\.\d+)(?:e[-+]?\d+)?"
QUOTED = re.compile(r"&#x27;(?=[-−.\d])([^&]*)&#x27;")
CODE = re.compile(r"`([^`]*)`|(?<![\w./`])([a-z]\w*(?:_\w+)+(?:\.[a-z]+)?|\w+\.(?:toml|csv))(?![\w/])")
LIST = re.compile(rf"\[({NUMBER}(?:, {NUMBER})*)\]")
COMPLEX = re.compile(
    rf"(?P<open>\(?)(?P<real>{NUMBER}) (?P<sign>[-+]) (?P<imaginary>{NUMBER})j(?P<close>\)?)(?P<unit>(?: (?=[^\W\d_]))?)"
)
POWER_OF_TEN = re.compile(r"(\d)e\+?(-?)0*(\d+)")
POWER = re.compile(r"(?<=[\w)])\^(-?[\d.]*\d)")
MINUS = re.compile(r"(?<![\w)\]])-(?=[\d.])|(?<= )-(?= [\d.])")


def printed(text: str) -> Markup:
    """A text with numbers in it, as HTML.

    Parameters
    ----------
    text : str
        Such as "(0 + 6.283e+06j) rad/s", "'1.000 pF'", "50 µA/V^1.5", "held to its figure in `threshold`".

    Returns
    -------
    Markup
    """
    html = QUOTED.sub(r"\1", escape(text))
    written, at = [], 0
    for code in CODE.finditer(html):
        name = re.sub("([(/_])", r"\1<wbr>", code[1] or code[2])
        written += [_numbers(html[at : code.start()]), f"<code>{name}</code>"]
        at = code.end()
    return Markup("".join(written) + _numbers(html[at:]))


def _numbers(html: str) -> str:
    html = COMPLEX.sub(_complex, LIST.sub(r"\1", html))
    html = POWER_OF_TEN.sub("\\1\N{NO-BREAK SPACE}×\N{NO-BREAK SPACE}10<sup>\\2\\3</sup>", html)
    html = POWER.sub(r"<sup>\1</sup>", html)
    return MINUS.sub("−", html)


def _complex(found: re.Match[str]) -> str:
    """A number in two parts as engineers write it, with j before the second; a part that is nothing left out."""
    real, imaginary = float(found["real"].replace("−", "-")), float(found["imaginary"])
    if not imaginary:
        return found["real"] + found["unit"]
    if not real:
        return ("-" if found["sign"] == "-" else "") + f"j{found['imaginary']}" + found["unit"]
    number = f"{found['real']} {found['sign']} j{found['imaginary']}"
    number = re.sub(" ([-+]) j", lambda sign: f" {'−' if sign[1] == '-' else '+'} j", number)
    return f"({number}){found['unit']}" if found["unit"] else number
