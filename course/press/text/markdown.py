"""What our Markdown adds to the usual: formulas, calls, and the coloured blocks."""

import re
import xml.etree.ElementTree as etree
from collections.abc import Callable

from markdown import Extension, Markdown
from markdown.blockparser import BlockParser
from markdown.blockprocessors import BlockProcessor
from markdown.inlinepatterns import InlineProcessor
from markdown.treeprocessors import Treeprocessor
from markdown.util import AtomicString

from course.press.text.calls import CALL

SetFormula = Callable[..., str]  # of LaTeX, whether on lines of its own, and the stop that follows; gives HTML
FORMULA = r"(?<!\\)(?P<fence>\$\$?)(?P<tex>[^\s$](?:(?:\\\$|[^$])*?[^\s\\$])?|\\)(?P=fence)(?![\d$])"
LONE_FORMULA = re.compile(r"(?:^|\n) {0,3}\$\$(?P<tex>(?:\\\$|[^$])+)\$\$[ \t]*(?:\n|$)")

# kind: (word on the block, path of a 24 x 24 icon)
BLOCKS = {
    "danger": ("Danger", "M12 2 1 22h22zM13 8l-4 7h3l-1 5 4-7h-3z"),
    "caution": ("Caution", "M12 2 1 22h22zM11 9h2v7h-2zM11 17.5h2v2h-2z"),
    "bench": ("On the bench", "M3 3h5l2 5-2 2 6 6 2-2 5 2v5h-6L3 9zM6 6v2l7 9 2 1h2l-8-9z"),
    "instructor": ("Instructor", "M2 3h20v13H2zM4 5v9h16V5zM6 8h9v2H6zM6 11h6v1.5H6zM8 17h2l-2 5H6zM14 17h2l2 5h-2z"),
    "question": ("Question", "M12 1a11 11 0 1 0 .01 0zM11 17h2v2h-2zM8 9a4 4 0 1 1 5 4v2h-2v-4a2 2 0 1 0-1-3.5z"),
}


class CourseMarkdown(Extension):
    """The additions as one Python-Markdown extension.

    Parameters
    ----------
    formula : function of (LaTeX, bool) to HTML
    call : function of text to HTML
    fault : function of (sentence, text in the page)
    """

    def __init__(self, formula: SetFormula, call: Callable[[str], str], fault: Callable[[str, str], None]) -> None:
        super().__init__()
        self.formula, self.call, self.fault = formula, call, fault

    def extendMarkdown(self, md: Markdown) -> None:  # noqa: N802
        md.parser.blockprocessors.register(FormulaOnItsOwn(md.parser, self.formula), "formula", 88)
        md.inlinePatterns.register(Call(self.call, md), "call", 188)
        md.inlinePatterns.register(Formula(self.formula, md), "formula", 186)
        md.treeprocessors.register(Blocks(md, self.fault), "blocks", 5)
        md.ESCAPED_CHARS = [*md.ESCAPED_CHARS, "$"]


class FormulaOnItsOwn(BlockProcessor):
    """`$$ … $$` on lines of its own, before any line of it can be taken for a list or a heading."""

    def __init__(self, parser: BlockParser, formula: SetFormula) -> None:
        super().__init__(parser)
        self.formula = formula

    def test(self, parent: etree.Element, block: str) -> bool:
        return LONE_FORMULA.search(block) is not None

    def run(self, parent: etree.Element, blocks: list[str]) -> bool | None:
        block = blocks.pop(0)
        match = LONE_FORMULA.search(block)
        if match is None:
            blocks.insert(0, block)
            return False
        if before := block[: match.start()]:
            self.parser.parseBlocks(parent, [before])
        html = f'<div class="formula">{self.formula(match["tex"], True)}</div>'
        etree.SubElement(parent, "p").text = self.parser.md.htmlStash.store(html)
        if after := block[match.end() :]:
            blocks.insert(0, after)
        return None


class Formula(InlineProcessor):
    """`$…$` in a line; a stop after it is set with it, or it might begin the next line."""

    def __init__(self, formula: SetFormula, md: Markdown) -> None:
        super().__init__(FORMULA + "(?P<stop>[,.;:]?)", md)
        self.formula = formula

    def handleMatch(self, match: re.Match[str], data: str) -> tuple[str, int, int]:  # noqa: N802
        html = self.formula(match["tex"], match["fence"] == "$$", match["stop"])
        return self.md.htmlStash.store(html), match.start(), match.end()


class Call(InlineProcessor):
    """`{{ name(values) }}`."""

    def __init__(self, call: Callable[[str], str], md: Markdown) -> None:
        super().__init__(CALL, md)
        self.call = call

    def handleMatch(self, match: re.Match[str], data: str) -> tuple[str | etree.Element, int, int]:  # noqa: N802
        answer = self.call(match["call"])
        if "<" in answer:
            return self.md.htmlStash.store(answer), match.start(), match.end()
        element = etree.Element("span", {"class": "number"})
        element.text = AtomicString(answer)
        return element, match.start(), match.end()


class Blocks(Treeprocessor):
    """`!!! kind "Title"` as a block with an icon, a word and a title; a question hides its answer."""

    def __init__(self, md: Markdown, fault: Callable[[str, str], None]) -> None:
        super().__init__(md)
        self.fault = fault

    def run(self, root: etree.Element) -> None:
        for block in root.iter("div"):
            first, _, kind = block.get("class", "").partition(" ")
            if first != "admonition":
                continue
            if kind not in BLOCKS:
                self.fault(f"!!! {kind} is not one of {', '.join(BLOCKS)}", f"!!! {kind}")
                continue
            self.dress(block, kind)

    def dress(self, block: etree.Element, kind: str) -> None:
        """Give a block its icon, its word and its title."""
        word, icon = BLOCKS[kind]
        title = block.find("p[@class='admonition-title']")
        if title is None or title.text == kind.capitalize():
            self.fault(f'!!! {kind} needs a title in quotes: !!! {kind} "…"', f"!!! {kind}")
        hidden = kind == "question"
        block.tag = "details" if hidden else "div"
        block.attrib = {"class": f"block {kind}"} if hidden else {"class": f"block {kind}", "role": "note"}
        if title is None:
            return
        title.tag = "summary" if hidden else "p"
        title.set("class", "block-title")
        label = etree.Element("span", {"class": "block-word"})
        picture = etree.SubElement(label, "svg", {"viewBox": "0 0 24 24", "aria-hidden": "true", "class": "icon"})
        etree.SubElement(picture, "path", {"d": icon, "fill-rule": "evenodd"})
        picture.tail = word
        label.tail = f" {title.text or ''}"
        title.text = ""
        title.insert(0, label)
