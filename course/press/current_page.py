"""The page that is being built: where addresses lead as seen from it, and what is wrong with it."""

from pathlib import Path

from mkdocs.structure.pages import Page
from mkdocs.utils import get_relative_url


class CurrentPage:
    """The page, and all faults found in this build, each with the page and the line where it stands."""

    def __init__(self) -> None:
        self.page: Page | None = None
        self.faults: list[str] = []

    @property
    def known(self) -> Page:
        """The page; there is one from the first Markdown on."""
        if self.page is None:
            raise RuntimeError("no page is being built")
        return self.page

    def relative(self, address: str) -> str:
        """An address in the site as it is seen from this page."""
        return get_relative_url(address, self.known.url)

    def note_fault(self, sentence: str, text: str = "") -> None:
        """Note what is wrong, with the page and, where the text can be found in it, the line."""
        file = self.known.file
        content = Path(str(file.abs_src_path)).read_text("utf-8-sig")
        place = f", line {content[: content.index(text)].count(chr(10)) + 1}" if text and text in content else ""
        note = f"{file.src_uri}{place}: {sentence}"
        if note not in self.faults:
            self.faults.append(note)
