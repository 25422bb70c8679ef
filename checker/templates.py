"""HTML from templates, the one way: every text escaped, every name defined, and nothing on a page that does not show."""

from pathlib import Path

import jinja2

from .text import escape_unseen


def environment(folder: Path) -> jinja2.Environment:
    """The templates in a folder."""
    return jinja2.Environment(
        loader=jinja2.FileSystemLoader(folder),
        autoescape=True,
        undefined=jinja2.StrictUndefined,
        finalize=escape_unseen,
        trim_blocks=True,
        lstrip_blocks=True,
    )
