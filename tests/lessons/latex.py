"""The formulas of the lessons as they stand in the pages, read by sympy's parser of LaTeX.

A letter of a formula has a name that Python can write: `f_0`, `C_max` for `C_\\text{max}`, `Q_dash` for `Q'`, `ε_0`, `δV_g`,
`v_bar` for `\\bar v`, and `dC_dθ` for a derivative. `statements` splits a formula into its relations, `parsed` makes one side
of them a sympy expression and says which of its one-letter symbols stands for which letter of the formula.
"""

import keyword
import re
import string
from dataclasses import dataclass
from functools import cache

import sympy
from sympy.parsing.latex import parse_latex

from checker.course import ROOT
from course.press.text.calls import answer, replace_calls
from course.press.text.numbers import IN_FORMULA

LESSONS = ROOT / "course/lessons"
RELATION = r"=|<|>|\\(?:approx|ge|le|to|propto)(?![A-Za-z])"
APART = r"\\q?quad(?![A-Za-z])"

GREEK = {
    "alpha": "α",
    "beta": "β",
    "gamma": "γ",
    "delta": "δ",
    "varepsilon": "ε",
    "eta": "η",
    "theta": "θ",
    "lambda": "λ",
    "mu": "μ",
    "pi": "π",
    "rho": "ρ",
    "sigma": "σ",
    "tau": "τ",
    "varphi": "φ",
    "psi": "ψ",
    "omega": "ω",
    "Delta": "Δ",
    "Phi": "Φ",
    "Omega": "Ω",
    "ell": "ell",
}
UNITS = {
    "Hz": 1,
    "kHz": 1e3,
    "F": 1,
    "pF": 1e-12,
    "μH": 1e-6,
    "V": 1,
    "W": 1,
    "mW": 1e-3,
    "μPa": 1e-6,
    "m": 1,
    "in": 0.0254,
    "Ω": 1,
}

WORD = r"\\(?:text|mathrm)\s*\{[^{}]*\}"
BASE = rf"(?:{WORD}|\\(?:{'|'.join(GREEK)})(?![A-Za-z])|[A-Za-z])"
BAR = rf"\\(?:bar|overline)(?:\s*{BASE}|\s*\{{\s*{BASE}\s*\}})"
LETTER = rf"(?:{BAR}|{BASE})\s*(?:_\s*(?:\{{(?:[^{{}}]|\{{[^{{}}]*\}})*\}}|{BASE}|\d))?'*"
UP, DOWN = rf"(?:d|\\partial)\s*(\^2)?\s*({LETTER})", rf"(?:d|\\partial)\s*({LETTER})\s*(?:\^2)?"
DERIVATIVE = re.compile(rf"\\frac\s*\{{\s*{UP}\s*\}}\s*\{{\s*{DOWN}\s*\}}|d({LETTER})/d({LETTER})")
SMALL = re.compile(rf"\\frac\s*\{{\s*d({LETTER})\s*\}}")
TOKEN = re.compile(rf"(?P<step>\\(?:delta|Delta)\s+{LETTER})|(?P<letter>{LETTER})|(?P<command>\\[A-Za-z]+)|(?P<name>‹[^›]*›)")
LONE = re.compile(rf"(\\(?:cos|sin))\s*({LETTER})\s*\\,")
SPACING = re.compile(r"\\[,;!: ]|\\phantom\s*\{[^{}]*(?:\{[^{}]*\})?[^{}]*\}|\{\}|~|&")


@dataclass(frozen=True)
class Formula:
    page: str
    text: str
    display: bool


@cache
def formulas(page: str) -> tuple[Formula, ...]:
    """Every display formula of a page, and every formula in a line that relates something worked out to something else."""
    text = re.sub(r"^( *)```.*?^\1```$", "", (LESSONS / page).read_text("utf-8"), flags=re.M | re.S)
    text = re.sub(r"`[^`\n]*`", "", text)
    shown, joined = re.findall(r"\$\$(.+?)\$\$", text, re.S), []
    for one in map(_tidy, shown):
        if one.startswith(r"\phantom"):
            joined[-1] += r" \\ " + one
        else:
            joined.append(one)
    inline = re.findall(r"(?<!\\)\$([^$]+?)(?<!\\)\$", re.sub(r"\$\$.+?\$\$", "", text, flags=re.S))
    return (
        *(Formula(page, one, True) for one in joined),
        *(Formula(page, one, False) for one in dict.fromkeys(map(_tidy, inline)) if _works_something_out(one)),
    )


def _tidy(text: str) -> str:
    """On one line, with the numbers that the code puts in."""
    return " ".join(replace_calls(text, lambda call: answer(call, IN_FORMULA)).split())


def _works_something_out(text: str) -> bool:
    """Whether a formula in a line is more than a letter set to a number, or to another letter."""
    sides = re.split(RELATION, text)
    plain = re.compile(rf"\s*-?(?:\\tfrac\s*\d\d|\\ldots|\\[,; ]|[\d.,|\s]|{LETTER})*")
    letters = [len([match for match in TOKEN.finditer(side) if match["letter"]]) for side in sides]
    return len(sides) > 1 and not all(plain.fullmatch(side) and count <= 1 for side, count in zip(sides, letters, strict=True))


def name_of(letter: str) -> str:
    """`C_\\text{max}` as `C_max`; an upright e is another letter than one that slants."""
    if letter.strip() == r"\mathrm{e}":
        return "upright_e"
    dashes, letter = letter.count("'"), letter.replace("'", "")
    bar = bool(re.match(r"\s*\\(?:bar|overline)", letter))
    letter = re.sub(r"\\(?:bar|overline|text|mathrm)(?![A-Za-z])", "", letter)
    letter = re.sub(r"\\([A-Za-z]+)", lambda match: GREEK[match[1]], letter)
    base, _, below = re.sub(r"[{}\\,\s]", "", letter).replace("µ", "μ").partition("_")
    name = "_".join(filter(None, [base, below])) + bar * "_bar" + dashes * "_dash"
    return name + "_" if keyword.iskeyword(name) else name


def statements(latex: str) -> list[list[str]]:
    """The relations that a formula states: each a list of sides with the signs between them, [left, "=", right, …]."""
    latex = re.sub(r"\\(?:begin|end)\{aligned\}", "", latex)
    latex = re.sub(r"\\underbrace\s*(\{)", r"\1", re.sub(r"\}_\s*\{\s*\\text\{[^{}]*\}\s*\}", "}", latex))
    latex = re.sub(r"\\[dct]frac", r"\\frac", latex)
    latex = re.sub(r"[-+]\s*\\c?dots", "", latex)
    rows: list[str] = []
    for row in re.split(r"\\\\", latex):
        continues = rows and not _split(_split(row, APART)[0], RELATION)[1:]
        rows = [*rows[:-1], rows[-1] + row] if continues else [*rows, row]
    pieces = [piece for row in rows for piece in _split(row, APART)[::2]]
    pieces = [LONE.sub(r"\1(\2) ", piece) for piece in pieces]
    pieces = [SPACING.sub(" ", piece).strip().rstrip(",").strip() for piece in pieces]
    pieces = [part for piece in pieces for part in _parts(piece)]
    return [_split(piece, RELATION) for piece in pieces if piece and not re.fullmatch(r"\\text\s*\{[^{}]*\}", piece)]


def _parts(piece: str) -> list[str]:
    """The components of a vector, or the piece itself."""
    inner = piece[1:-1]
    if piece.startswith("(") and piece.endswith(")") and len(parts := _split(inner, ",")[::2]) > 1:
        return [part.strip() for part in parts]
    return [piece]


def _split(text: str, at: str) -> list[str]:
    """Split outside all brackets, keeping what it was split at."""
    pieces, depth, start = [], 0, 0
    for match in re.finditer(rf"[{{(\[]|[}})\]]|({at})", text):
        if match[1] and not depth:
            pieces += [text[start : match.start()].strip(), match[1]]
            start = match.end()
        elif not match[1]:
            depth += 1 if match[0] in "{([" else -1
    return [*pieces, text[start:].strip()]


@cache
def letters_of(side: str) -> tuple[str, ...]:
    """Names of the letters in one side of a relation, in the order in which they come."""
    return tuple(dict.fromkeys(re.findall("‹([^›]*)›", _named(side))))


@cache
def _named(side: str) -> str:
    """The side with each letter as ‹name›."""
    side = DERIVATIVE.sub(
        lambda m: (
            "‹"
            + (
                f"d{m[1] and 2 or ''}{name_of(m[2])}_d{name_of(m[3])}{m[1] and 2 or ''}"
                if m[2]
                else f"d{name_of(m[4])}_d{name_of(m[5])}"
            )
            + "›"
        ),
        side,
    )
    side = SMALL.sub(lambda m: rf"\frac{{‹d{name_of(m[1])}›}}", side)
    side = _cycle(side)
    side = _bars(side)
    side = re.sub(r"\\pm(?![A-Za-z])", "+ ‹sign› ", side)
    side = re.sub(r"\\sum(?![A-Za-z])", "‹sum›", side)

    def letter(match):
        if match["command"] or match["name"]:
            return match[0]
        if match["step"]:
            step, rest = re.match(r"\\(delta|Delta)\s+(.*)", match[0], re.S).groups()
            return f"‹{GREEK[step]}{name_of(rest)}›"
        name = name_of(match[0])
        unit = match[0].startswith((r"\text", r"\mathrm")) and name.rstrip("_") in UNITS
        if unit and (match[0].startswith(r"\mathrm") or re.search(r"[\d}]\s*$", side[: match.start()])):
            return f"‹in_{name.rstrip('_')}›"
        return f"‹{name}›"

    return _ended(TOKEN.sub(letter, side))


def _ended(side: str) -> str:
    """The sum sign holds for all that follows it within its brackets, the star of a conjugate for the brackets before it."""
    while (at := side.find("‹sum›")) >= 0:
        end = _closing(side, at + 5)
        side = f"{side[:at]}‹summed›({side[at + 5 : end]}){side[end:]}"
    while match := re.search(r"(?:\\right)?\)\s*\^\s*(?:\{\s*\*\s*\}|\*)", side):
        start = _opening(side, match.start())
        inner = side[start : match.start()].removeprefix(r"\left").removeprefix("(")
        side = f"{side[:start]}‹conjugate›({inner}){side[match.end() :]}"
    return side


def _cycle(side: str) -> str:
    """The integral over a whole turn, which is 2π times the mean."""
    return re.sub(rf"\\int_0\^\{{2\\pi\}}\s*(.*?)\s*d\s*{LETTER}\s*$", r"2\\pi ‹mean›(\1)", side)


def _bars(side: str) -> str:
    """Bars: a size between upright ones, a mean under one across."""
    side = re.sub(r"\\left\s*\|", "‹size›(", re.sub(r"\\right\s*\|", ")", side))
    side = re.sub(r"\|([^|]*)\|", r"‹size›(\1)", side)
    while match := re.search(rf"(?!{BAR})\\overline\s*\{{", side):
        end = _closing(side, match.end())
        side = f"{side[: match.start()]}‹mean›({side[match.end() : end]}){side[end + 1 :]}"
    return side


def _closing(text: str, at: int) -> int:
    """Where the bracket opened before `at` is closed, or the end of the text."""
    depth = 0
    for place in range(at, len(text)):
        depth += (text[place] in "{(") - (text[place] in "})")
        if depth < 0:
            return place
    return len(text)


def _opening(text: str, at: int) -> int:
    depth = 0
    for place in range(at - 1, -1, -1):
        depth += (text[place] in "{(") - (text[place] in "})")
        if depth > 0:
            return place - 5 if text[:place].endswith(r"\left") else place
    return 0


@cache
def parsed(side: str, functions: frozenset[str]) -> tuple[sympy.Expr, dict[str, str]]:
    """One side of a relation as an expression, and the letter of the formula behind each of its symbols.

    `functions` names the letters that are functions; a bracket after any other letter is a factor.
    """
    pool = iter(set(string.ascii_letters) - set("deijEIOS"))
    symbols = {name: symbol for name, symbol in zip(letters_of(side), sorted(pool), strict=False)}
    text = _named(side).replace(r"\left[", "(").replace(r"\right]", ")")
    text = _called(re.sub(r"\\(left|right)(?![A-Za-z])\s*", "", text), functions)
    text = re.sub("‹([^›]*)›", lambda match: f" {symbols[match[1]]} ", text)
    text = re.sub(r"\\frac\s*([0-9A-Za-z])", r"\\frac{\1}", text)
    text = re.sub(r"\\frac\s*(\{[^{}]*\})\s*([0-9A-Za-z])", r"\\frac\1{\2}", text)
    text = re.sub(r"\\sqrt\s*(\w)", r"\\sqrt{\1}", text)
    return parse_latex(text, strict=True), {symbol: name for name, symbol in symbols.items()}


def _called(text: str, functions: frozenset[str]) -> str:
    """Letters before brackets told apart: f(x), which also may stand behind ln or cos, and a (b + c)."""
    out, place = "", 0
    for match in re.finditer("‹([^›]*)›", text):
        if match.start() < place:
            continue
        out += text[place : match.start()]
        place = match.end()
        after = re.match(r"\s*([(\[])", text[place:])
        if match[1] not in functions:
            out += match[0] + (r"\cdot " if after else "")
            continue
        if after:
            begin = place + after.end()
            end = _closing(text, begin)
            inner, place = text[begin:end], end + 1
        else:
            argument = re.match(r"\s*(‹[^›]*›)", text[place:])
            inner, place = argument[1], place + argument.end()
        power = re.match(r"\s*\^\s*(?:\{[^{}]*\}|\S)", text[place:])
        place += power.end() if power else 0
        call = f"{match[0]}({_called(inner, functions)}){power[0] if power else ''}"
        behind = re.search(r"\\(?:ln|cos|sin|tan|log_\{10\})\s*$", out)
        out += f"({call})" if behind else call
    return out + text[place:]
