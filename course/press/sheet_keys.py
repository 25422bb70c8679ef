"""The keys of a design sheet's file, on the page for builders: made of the table that the sheet itself reads by."""

from html import escape

from checker.sheet.keys import MUST, SECTIONS, STATION, Key, OneOf, Quantity, Wire

STATIONS = "station"


def sheet_keys_html(section: str) -> str:
    """Keys of one table of the file: what each means, what may stand there, and what holds if it is left out.

    Parameters
    ----------
    section : str
        A table's name; "" for what stands above all tables, "station" for those of a station.
    """
    keys = STATION if section == STATIONS else SECTIONS[section]
    head = "".join(f'<th scope="col">{name}</th>' for name in ("key", "what", "may be", "if left out"))
    rows = "".join(f"<tr>{_row(key)}</tr>\n" for key in keys)
    return f"<table data-keep>\n<thead><tr>{head}</tr></thead>\n<tbody>\n{rows}</tbody>\n</table>"


def _row(key):
    cells = "".join(f"<td>{cell}</td>" for cell in (_with_code(key.says), _takes(key), _default(key)))
    return f'<th scope="row"><code>{key.name}</code></th>{cells}'


def _with_code(says):
    words = says.split("`")
    return "".join(f"<code>{escape(word)}</code>" if place % 2 else escape(word) for place, word in enumerate(words))


def _takes(key: Key) -> str:
    match key.takes:
        case OneOf(choices):
            return ", ".join(f"<code>{escape(choice)}</code>" for choice in choices)
        case Quantity(_, low, high):
            return f"{_unbroken(low)} to {_unbroken(high)}"
        case Wire():
            return "16 to 40 SWG, 10 to 40 AWG"
    return f"up to {key.takes.longest} characters"


def _default(key: Key) -> str:
    if key.default is MUST:
        return "–" if key.optional else "must be there"
    return _unbroken(key.default) if isinstance(key.takes, Quantity) else escape(key.default) or "nothing"


def _unbroken(quantity):
    return escape(quantity).replace(" ", "&nbsp;")
