"""The glossary, and the first use of a word in a lesson with the other vocabulary's beside it."""

from course.press.templates import render
from course.press.text.vocabulary import Vocabulary, article_for, pair, simplify


def glossary_html(vocabulary: Vocabulary) -> str:
    """Every term with both words and its sentence, then the American words in their own order."""
    american = [term for term in vocabulary.terms if term.american]
    return render(
        "glossary.html",
        terms=sorted(vocabulary.terms, key=lambda term: term.british.lower()),
        from_american=sorted(american, key=lambda term: term.american.lower()),
    )


def term_html(vocabulary: Vocabulary, text: str, link: str) -> str:
    """First use of a word, the other vocabulary's beside it; switching exchanges the two.

    Parameters
    ----------
    vocabulary : Vocabulary
    text : str
        The word as the sentence has it, with or without an article.
    link : str
        Address of its entry in the glossary.

    Returns
    -------
    str
    """
    match = vocabulary.pattern.fullmatch(text)
    american = vocabulary.american_for(match["term"]) if match and match["term"] else None
    if match is None or american is None:
        return render("term.html", text=text, link=link, american="")
    article = match["article"] or ""
    british = match["term"] if simplify(match["term"]) in vocabulary.pairs else match["term"].lower()
    return render(
        "term.html",
        text=text,
        link=link,
        pair=pair,
        american=f"{article_for(american, article)} {american}" if article else american,
        british_alone=british,
        american_alone=american.lower() if british.islower() else american,
    )


def keep_html(html: str) -> str:
    """Words that the vocabulary switch leaves alone."""
    return f"<span data-keep>{html}</span>"
