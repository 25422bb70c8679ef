"""Every sound of the course, computed from `solutions/` when the site is built.

One function a sound, marked with `sound`; see DEVELOPERS.md, "A sound".
"""

from collections.abc import Callable, Sequence

from course.described import describe

USUAL_LEVEL = -20.0


def sound(
    *,
    caption: str,
    transcript: str,
    level: float = USUAL_LEVEL,
    full_scale: float | None = None,
    moments: Sequence[tuple[float, str]] | None = None,
) -> Callable[[Callable], Callable]:
    """Mark a function as one sound of the course.

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

    Returns
    -------
    decorator
        Leaves the function as it is, with what was said about it in its `about`.

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
    return describe(words, wanted, level=level, full_scale=full_scale, moments=moments)
