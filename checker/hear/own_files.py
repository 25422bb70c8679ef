"""What `checker hear NAME` leaves behind: a sound, and a page to play it from."""

from pathlib import Path

import numpy as np
from markupsafe import Markup

from ..templates import environment
from .files import decibels, write_wav
from .listening import RATE
from .picture import sound_picture
from .pieces import Piece
from .receiver import PEAK

LOUDNESS = -20.0  # decibels of full scale, r.m.s.
SOFT = 0.03  # seconds at either end
CAUTION = "Headphones: begin with the volume low, and turn it up once it plays."
_PAGES = environment(Path(__file__).parent / "pages")
_STYLE = Path(__file__).parents[1] / "report" / "report.css"


def levelled(sound: np.ndarray) -> np.ndarray:
    """A sound at its usual loudness, soft at both ends; less loud where its crests would be cut off. Silence stays silent."""
    loudness = float(np.sqrt(np.mean(sound**2)))
    if not loudness:
        return sound
    scale = min(10 ** (LOUDNESS / 20) / loudness, PEAK / float(np.max(np.abs(sound))))
    from_end = np.minimum(np.arange(sound.size), np.arange(sound.size)[::-1]) / RATE
    return scale * sound * np.minimum(1, from_end / SOFT)


def write_own(into: Path, piece: Piece, sound: np.ndarray, called: str) -> tuple[Path, str]:
    """Write a sound and its page, in place of older ones: (the page, a sentence on how loud it is).

    Parameters
    ----------
    into : Path
        A folder, made if it is not there.
    piece : Piece
    sound : ndarray
        As `Piece.play` gave it.
    called : str
        How the command is called here.
    """
    into.mkdir(parents=True, exist_ok=True)
    heard, file, page = levelled(sound), into / f"{piece.exercise}.wav", into / f"{piece.exercise}.html"
    write_wav(file, heard)
    loudness, crest = decibels(np.sqrt(np.mean(heard**2))), decibels(np.max(np.abs(heard)))
    html = _PAGES.get_template("own.html").render(
        piece=piece,
        file=file.name,
        caution=CAUTION,
        picture=Markup(sound_picture(heard, piece.title)),
        style=Markup(_STYLE.read_text("utf-8")),
        called=called,
    )
    page.write_text(html, "utf-8", newline="\n")
    return page, f"{file.name}  {heard.size / RATE:.0f} s, loudness {loudness}, highest crest {crest} of full scale"
