"""What an author writes, into HTML: calls answered, formulas set, and each fault noted where it stands."""

from collections.abc import Callable, Mapping
from html import escape

from markdown import Markdown

from course.press.faults import Fault
from course.press.text import numbers
from course.press.text.calls import Maker, answer, replace_calls
from course.press.text.formulas import Typesetter
from course.press.text.markdown import CourseMarkdown


class Prose:
    """Our Markdown, with what a page may call for.

    Parameters
    ----------
    typesetter : Typesetter
    note_fault : function of (sentence, text in the page)
    """

    def __init__(self, typesetter: Typesetter, note_fault: Callable[[str, str], None]) -> None:
        self.typesetter, self.note_fault = typesetter, note_fault
        self.makers: dict[str, Maker] = dict(numbers.MAKERS)
        self.makers_in_formulas: dict[str, Maker] = dict(numbers.IN_FORMULA)

    def add_makers(self, makers: Mapping[str, Maker], in_formulas: bool = False) -> None:
        """More that a page may call for by name, and whether a formula may too."""
        self.makers |= makers
        if in_formulas:
            self.makers_in_formulas |= makers

    def markdown_extension(self) -> CourseMarkdown:
        return CourseMarkdown(self.formula, self.answer_call, self.note_fault)

    def answer_call(self, text: str) -> str:
        """HTML or plain text for one `{{ … }}`."""
        return self.html_or_fault(lambda: answer(text, self.makers), text)

    def formula(self, tex: str, display: bool, stop: str = "") -> str:
        """HTML of one formula, its numbers computed first, and of the stop that follows it."""

        def typeset() -> str:
            computed = replace_calls(tex, lambda call: answer(call, self.makers_in_formulas))
            return self.typesetter.typeset(computed + (rf"\text{{{stop}}}" if stop else ""), display)

        return self.html_or_fault(typeset, tex)

    def inline(self, text: str) -> str:
        """HTML of a caption or another short text in our Markdown."""
        html = Markdown(extensions=[self.markdown_extension()]).convert(text)
        return html.removeprefix("<p>").removesuffix("</p>")

    def html_or_fault(self, make: Callable[[], str], text: str) -> str:
        """What is made, or, where that fails, the author's own text marked as a fault, which is noted."""
        try:
            return make()
        except Fault as fault:
            self.note_fault(str(fault), text)
            return f'<mark class="fault">{escape(text)}</mark>'
