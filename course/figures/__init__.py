"""Every picture of the course, drawn from `solutions/` when the site is built.

One function a picture, marked with `figure`; see DEVELOPERS.md, "A figure".
"""

from collections.abc import Callable

from course.described import describe


def figure(*, caption: str, alt: str) -> Callable[[Callable], Callable]:
    """Mark a function as one picture of the course.

    Parameters
    ----------
    caption : str
        Markdown, printed under the picture.
    alt : str
        What is to be seen, in plain words, for someone who cannot see it.

    Returns
    -------
    decorator
        Leaves the function as it is, with what was said about it in its `about`.

    Raises
    ------
    ValueError
        If the caption or the words are missing.
    """
    wanted = "a figure needs a caption and, in alt, words for someone who cannot see it"
    return describe({"caption": caption, "alt": alt}, wanted)
