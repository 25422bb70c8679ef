"""What is said of a figure or a sound where its function stands: the decorators `figure` and `sound`, and `about`."""

from collections.abc import Callable, Mapping, Sequence
from typing import Any, TypeVar

USUAL_LEVEL = -20.0

Maker = TypeVar("Maker", bound=Callable[..., Any])


def figure(*, caption: str, alt: str) -> Callable[[Maker], Maker]:
    """Mark a function as one picture of the course; it is left as it is, with what was said about it in its `about`.

    Parameters
    ----------
    caption : str
        Markdown, printed under the picture.
    alt : str
        What is to be seen, in plain words, for someone who cannot see it.

    Raises
    ------
    ValueError
        If the caption or the words are missing.
    """
    wanted = "a figure needs a caption and, in alt, words for someone who cannot see it"
    return _describe({"caption": caption, "alt": alt}, wanted)


def sound(
    *,
    caption: str,
    transcript: str,
    level: float = USUAL_LEVEL,
    full_scale: float | None = None,
    moments: Sequence[tuple[float, str]] | None = None,
) -> Callable[[Maker], Maker]:
    """Mark a function as one sound of the course; it is left as it is, with what was said about it in its `about`.

    Parameters
    ----------
    caption : str
        Markdown, printed over the player.
    transcript : str
        Markdown: what is to be heard, for someone who cannot hear it.
    level : float, dB, <= 0
        Root-mean-square loudness the sound is brought to; 0 dB is an r.m.s. of 1.0.
    full_scale : float, optional
        The sample value to be played as 1.0, instead of `level`: for sounds whose loudness is to be compared.
    moments : sequence of (second, short words), optional
        If given, even empty, the sound has a picture that moves as it plays, with these words at these moments.

    Raises
    ------
    ValueError
        If the caption or transcript is missing, or the level or full scale is out of range.
    """
    if not -60 <= level <= 0:
        raise ValueError(f"level is in dB below full scale, from -60 to 0, not {level}")
    if full_scale is not None and not full_scale > 0:
        raise ValueError(f"full_scale is the sample value played as 1.0, above zero, not {full_scale}")
    wanted = "a sound needs a caption and a transcript that says in words what is heard"
    words = {"caption": caption, "transcript": transcript}
    return _describe(words, wanted, level=level, full_scale=full_scale, moments=moments)


def _describe(words: Mapping[str, str], wanted: str, **more: Any) -> Callable[[Maker], Maker]:
    """The decorator that keeps these words, and what else is said; ValueError with the sentence `wanted` if a word is missing."""
    if not all(text.strip() for text in words.values()):
        raise ValueError(wanted)
    about = {name: " ".join(text.split()) for name, text in words.items()} | more

    def mark(make: Maker) -> Maker:
        make.about = about  # type: ignore[attr-defined]
        return make

    return mark


def about(make: Callable[..., Any]) -> dict[str, Any] | None:
    """What was said about a function; None if it is not marked."""
    said: dict[str, Any] | None = getattr(make, "about", None)
    return said
