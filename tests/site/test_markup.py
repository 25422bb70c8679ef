"""HTML is taken apart and put together again without a letter changed, and pairs of words are exchanged by what they are."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from course.press.text.markup import pieces
from course.press.text.switch import american_first, replace_pairs

TAGS = [
    "<p>",
    "</p>",
    '<a href="x>y">',
    "<br>",
    "<path d='M0'/>",
    "<!-- <b> -->",
    "<script>a<b</script>",
    "&amp;",
    "&#39;",
    "&",
    "<",
    ">",
    "\n",
]


@given(st.lists(st.sampled_from([*TAGS, "word ", "é", '"']) | st.text(max_size=3), max_size=12).map("".join))
def test_the_pieces_joined_are_the_page(html):
    assert "".join(piece.source for piece in pieces(html)) == html


def test_each_piece_is_known_for_what_it_is():
    html = "<p class='a'>x &amp; y<br>z</p><svg><path/></svg><!-- c --><script>1<2</script>"
    found = " ".join(piece.kind + (f"={piece.name}" if piece.name else "") for piece in pieces(html))
    assert found == "start=p text empty=br text end=p start=svg empty=path end=svg other start=script text end=script"
    assert pieces("<p class='a' data-keep>")[0].attributes == {"class": "a", "data-keep": None}


def test_the_american_word_comes_first_and_the_british_is_held_ready():
    page = '<p>an <span class="x" data-us="tube &amp; base">valve</span> <tspan data-us="ground">earth</tspan> data-us="x"</p>'
    assert american_first(page) == (
        '<p>an <span data-gb="valve">tube &amp; base</span> <tspan data-gb="earth">ground</tspan> data-us="x"</p>'
    )


@pytest.mark.parametrize(
    "page", ['<span data-us="tube"><b>valve</b></span>', '<span data-us="tube">valve', '<span data-us="tube"></span>']
)
def test_a_pair_that_holds_no_single_word_is_not_exchanged_silently(page):
    with pytest.raises(ValueError, match="something else than one word"):
        replace_pairs(page, lambda tag, british, american: american)
