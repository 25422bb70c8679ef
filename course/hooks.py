"""Where MkDocs calls the press: one function an event, in the order MkDocs calls them."""

import sys
from pathlib import Path

from mkdocs.exceptions import PluginError
from mkdocs.utils import get_relative_url

COURSE = Path(__file__).resolve().parent
sys.path.insert(0, str(COURSE.parent))

from course.press import pages, palette  # noqa: E402
from course.press.club import FILE, card_html, read_club  # noqa: E402
from course.press.edition import Edition  # noqa: E402
from course.press.faults import Fault  # noqa: E402
from course.press.formulas import bring_packages  # noqa: E402
from course.press.notes import notes_html  # noqa: E402

REREAD = ("solutions", "checker", "course.figures", "course.sounds", "course.bench")

edition: Edition | None = None


def on_config(config):
    """Begin an edition: packages from npm, code as it is on disk now, pages in their order."""
    global edition
    read_afresh()
    lessons = Path(config.docs_dir)
    bring_packages(COURSE)
    try:
        club = read_club(COURSE / FILE, lessons)
        config.nav = pages.reading_order(lessons, club.rules_page)
        config.extra["units"] = pages.units(lessons)
    except Fault as error:
        raise PluginError(str(error)) from None
    config.extra["palette"] = palette.style_sheet()
    config.extra["club"] = club
    edition = Edition(COURSE, club)
    config.markdown_extensions.append(edition.markdown_extension())
    return config


def read_afresh() -> None:
    """Have figures, sounds and physics read from this checkout as it is now (MkDocs undoes a hook's own `sys.path`)."""
    sys.path[:] = [str(COURSE.parent), *(place for place in sys.path if place != str(COURSE.parent))]
    for name in [name for name in sys.modules if name.startswith(REREAD)]:
        del sys.modules[name]


def on_page_context(context, page, config, nav):
    unit = next((unit for unit in config.extra["units"] if page.file.src_uri in unit.pages), None)
    instructor = [other for other in nav.pages if unit and other.file.src_uri == unit.instructor]
    context["section_notes"] = notes_html(instructor[0].content) if instructor else ""
    context["club_card"] = card_html(config.extra["club"], lambda address: get_relative_url(address, page.url))
    return context


def on_page_markdown(markdown, page, **_):
    edition.page = page
    return markdown


def on_post_page(output, page, **_):
    edition.page = page
    return edition.finished_page(output)


def on_env(env, config, **_):
    config.extra["booklet"] = env.get_template("print.html")


def on_post_build(config):
    """Finish the edition; a fault in any page stops the build."""
    card = card_html(config.extra["club"], lambda address: f"../{address}")

    def render(title, question, content, back):
        return config.extra["booklet"].render(
            config=config, title=title, question=question, content=content, back=back, club_card=card
        )

    edition.booklets(render)
    faults = edition.finish(Path(config.site_dir))
    if faults:
        raise PluginError("The site is not right:\n  " + "\n  ".join(faults))


def on_build_error(error, **_):
    if edition:
        edition.typesetter.close()
