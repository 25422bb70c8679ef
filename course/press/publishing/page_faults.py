"""What can be seen to be wrong with a page only when it is whole."""

import re
from collections.abc import Iterator

from course.press.text.vocabulary import Vocabulary

NOT_PROSE = re.compile(r"<(code|pre|script|style|annotation|mark)\b.*?</\1>", re.S)
LEFT_OVER = re.compile(r"\{\{|\}\}|\$\$|!!!")


def page_faults(html: str, vocabulary: Vocabulary) -> Iterator[tuple[str, str]]:
    """Each fault as one sentence, with the text in the author's page by which its line is found.

    Parameters
    ----------
    html : str
        The page before its words are marked.
    vocabulary : Vocabulary

    Yields
    ------
    (str, str)
    """
    for word in vocabulary.said_twice(without_tags(html[html.find("<body") :])):
        yield f'the American word stands in brackets after "{word}": write {{{{ term("{word}") }}}} instead', ""
    for mark in sorted(set(LEFT_OVER.findall(without_tags(NOT_PROSE.sub("", html))))):
        yield f"{mark} stands in the finished page: a call, formula or block there was not understood", mark
    if re.search(r"<h[1-6][^>]*>(?:(?!</h).)*katex", html, re.S):
        yield "a heading holds a formula, which spoils its address: say it in words", ""


def without_tags(html: str) -> str:
    """The text of some HTML, its character references as they are written."""
    return re.sub(r"<[^>]*>", "", html)
