"""Where MkDocs calls the press: one function an event, in the order MkDocs calls them."""

import os
import sys
from pathlib import Path
from typing import Any

from jinja2 import Environment
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.exceptions import PluginError
from mkdocs.structure.files import Files
from mkdocs.structure.nav import Navigation
from mkdocs.structure.pages import Page
from mkdocs.utils import get_relative_url

COURSE = Path(__file__).resolve().parent
sys.path.insert(0, str(COURSE.parent))
for library in ("OPENBLAS", "OMP", "MKL"):
    os.environ.setdefault(f"{library}_NUM_THREADS", "1")  # two processes draw at once

from course.press import pages  # noqa: E402
from course.press.boxes.club_box import card_html  # noqa: E402
from course.press.club import FILE, read_club  # noqa: E402
from course.press.faults import Fault  # noqa: E402
from course.press.media import palette  # noqa: E402
from course.press.publishing.booklet import RULES  # noqa: E402
from course.press.publishing.edition import Edition  # noqa: E402
from course.press.publishing.kept import code_hash, hash_of_files, lasting_files  # noqa: E402
from course.press.publishing.typefaces import EARLY  # noqa: E402
from course.press.text.formulas import bring_packages  # noqa: E402

REREAD = ("solutions", "checker", "course.answers", "course.circle", "course.figures", "course.sounds", "course.bench")

LASTING = lasting_files(COURSE.parent)  # what serves this process to its end, while `mkdocs serve` reads the rest afresh
AS_LOADED = hash_of_files(COURSE.parent, LASTING)

edition: Edition | None = None


def on_config(config: MkDocsConfig) -> MkDocsConfig:
    """Begin an edition: packages from npm, code as it is on disk now, pages in their order."""
    global edition
    read_afresh()
    lessons = Path(config.docs_dir)
    bring_packages(COURSE)
    try:
        club = read_club(COURSE / FILE, lessons)
        config.nav = pages.reading_order(lessons, club.rules_page)
        config.extra["units"] = pages.units_in(lessons)
    except Fault as error:
        raise PluginError(str(error)) from None
    config.extra["palette"] = palette.style_sheet()
    config.extra["club"] = club
    config.site_url = f"{club.address.rstrip('/')}/" if club.address else ""
    config.extra["early_type"] = EARLY
    edition = Edition(COURSE, club, code_for_keeping())
    config.markdown_extensions.append(edition.markdown_extension())
    return config


def code_for_keeping() -> str:
    """Hash of all code; empty, so that nothing is kept, once a file of the press has changed under a running `mkdocs serve`."""
    return code_hash(COURSE.parent) if hash_of_files(COURSE.parent, LASTING) == AS_LOADED else ""


def read_afresh() -> None:
    """Have figures, sounds and physics read from this checkout as it is now (MkDocs undoes a hook's own `sys.path`)."""
    sys.path[:] = [str(COURSE.parent), *(place for place in sys.path if place != str(COURSE.parent))]
    for name in [name for name in sys.modules if name.startswith(REREAD)]:
        del sys.modules[name]


def begun() -> Edition:
    """The edition that `on_config` began."""
    if edition is None:
        raise RuntimeError("MkDocs has not called on_config")
    return edition


def on_files(files: Files, config: MkDocsConfig) -> Files:
    """Leave out the modules of which the pages' scripts are made: MkDocs would copy them with the rest of the theme."""
    for file in [file for file in files if file.src_uri.startswith("scripts/")]:
        files.remove(file)
    begun().make_ahead()
    return files


def on_page_markdown(markdown: str, page: Page, files: Files, **_: Any) -> str:
    """All faults from here on are this page's."""
    begun().begin_page(page)
    return begun().begin_text(markdown, sorted(file.src_uri for file in files))


def on_page_content(html: str, **_: Any) -> str:
    """The page's text, from Markdown or as it is kept."""
    return begun().finish_text(html)


def on_env(env: Environment, config: MkDocsConfig, **_: Any) -> None:
    """Keep the template of booklets, for MkDocs shows its templates only here."""
    config.extra["booklet"] = env.get_template("print.html")


def on_page_context(context: dict[str, Any], page: Page, config: MkDocsConfig, nav: Navigation) -> dict[str, Any]:
    """What the template of a page wants besides its text: the speaker's notes and the club's card."""
    unit = next((unit for unit in config.extra["units"] if page.file.src_uri in unit.pages), None)
    instructor = [other for other in nav.pages if unit and other.file.src_uri == unit.instructor]
    context["section_notes"] = begun().notes(instructor[0].content or "") if instructor else ""
    context["club_card"] = card_html(config.extra["club"], lambda address: get_relative_url(address, page.url))
    return context


def on_post_page(output: str, page: Page, **_: Any) -> str:
    """The page as it is written."""
    begun().begin_page(page)
    return begun().finish_page(output)


def on_post_build(config: MkDocsConfig) -> None:
    """Finish the edition; a fault in any page stops the build."""
    rules = config.extra["club"].rules_page.removesuffix(".md") + ".html"
    card = card_html(config.extra["club"], lambda address: f"#{RULES}" if address == rules else f"../{address}")

    def render_booklet(title: str, question: str, content: str, back: str) -> str:
        html: str = config.extra["booklet"].render(
            config=config, title=title, question=question, content=content, back=back, club_card=card
        )
        return html

    faults = begun().finish(Path(config.site_dir), render_booklet, config.site_description or "")
    if faults:
        raise PluginError("The site is not right:\n  " + "\n  ".join(faults))


def on_build_error(error: Exception, **_: Any) -> None:
    """Leave no process behind."""
    if edition:
        edition.typesetter.close()
