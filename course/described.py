"""What is said of a figure or a sound where its function stands; `figure` and `sound` are made of this."""

from collections.abc import Callable, Mapping
from typing import Any, TypeVar

Maker = TypeVar("Maker", bound=Callable[..., Any])


def describe(words: Mapping[str, str], wanted: str, **more: Any) -> Callable[[Maker], Maker]:
    """A decorator that leaves a function as it is, with what was said about it in its `about`.

    Parameters
    ----------
    words : mapping
        What every reader gets, by name: the caption, and words for someone who cannot see or hear it.
    wanted : str
        The sentence for an author who left some of these out.
    **more
        What else is said about it.

    Returns
    -------
    decorator

    Raises
    ------
    ValueError
        If one of the words is missing.
    """
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
