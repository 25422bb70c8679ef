"""The keys of a design sheet's file, on the page for builders: made of the table that the sheet itself reads by."""

from checker.sheet.keys import MUST, SECTIONS, STATION, Key, OneOf, Quantity, Wire
from course.press.templates import render

STATIONS = "station"


def sheet_keys_html(section: str) -> str:
    """Keys of one table of the file: what each means, what may stand there, and what holds if it is left out.

    Parameters
    ----------
    section : str
        A table's name; "" for what stands above all tables, "station" for those of a station.
    """
    keys = STATION if section == STATIONS else SECTIONS[section]
    return render("sheet_keys.html", keys=[(key, key.says.split("`"), choices(key), default(key)) for key in keys])


def choices(key: Key) -> list[str] | str:
    """What may stand there: the words, or a sentence."""
    match key.takes:
        case OneOf(words):
            return list(words)
        case Quantity(_, low, high):
            return f"{unbroken(low)} to {unbroken(high)}"
        case Wire():
            return "16 to 40 SWG, 10 to 40 AWG"
    return f"up to {key.takes.longest} characters"


def default(key: Key) -> str:
    """What holds if the key is left out."""
    if key.default is MUST:
        return "–" if key.optional else "must be there"
    return unbroken(key.default) if isinstance(key.takes, Quantity) else key.default or "nothing"


def unbroken(quantity: str) -> str:
    """A quantity that stays on one line."""
    return quantity.replace(" ", "\N{NO-BREAK SPACE}")
