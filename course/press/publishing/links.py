"""Every address in the finished pages leads somewhere, and nothing is fetched from elsewhere."""

import posixpath
import re
from collections import Counter
from collections.abc import Callable
from dataclasses import asdict, dataclass
from functools import cache
from pathlib import Path
from urllib.parse import unquote, urlsplit

from course.press.boxes.bench_box import PAGE
from course.press.boxes.bench_setting import check_setting
from course.press.faults import Fault
from course.press.publishing.kept import Kept
from course.press.text.markup import pieces

POINTS = re.compile(r"\b(?:id|name|href|src|data|poster)\s*=", re.I)  # in what may point or be pointed to
FETCHED = {"img", "script", "audio", "source", "video", "iframe", "link", "embed", "object", "use", "image"}


@dataclass(frozen=True)
class Addresses:
    """The ids of one page, and what it points to: tag and address."""

    ids: list[str]
    links: list[tuple[str, str]]

    @property
    def doubled(self) -> list[str]:
        """Ids that stand more than once, in order."""
        return sorted(id for id, count in Counter(self.ids).items() if count > 1)


def addresses_in(html: str) -> Addresses:
    """What of a page can be pointed to, and to what it points."""
    found = Addresses([], [])
    for piece in pieces(html):
        if not POINTS.search(piece.within):
            continue
        for name, value in piece.attributes.items():
            if name == "id" or (name == "name" and piece.name == "a"):
                found.ids.append(value or "")
            elif name in ("href", "src", "xlink:href", "data", "poster"):
                found.links.append((piece.name, value or ""))
    return found


def link_faults(site: Path, kept: Kept) -> list[str]:
    """One sentence for each dead link, missing anchor, doubled id, and request to another site.

    Parameters
    ----------
    site : Path
        Folder of the finished site.
    kept : Kept
        Where the addresses in a page are kept from one build to the next.

    Returns
    -------
    list of str
    """

    def addresses(html: str) -> Addresses:
        return Addresses(**kept.of(lambda: asdict(addresses_in(html)), "addresses", html))

    def of_setting(setting: str) -> str | None:
        fault: str | None = kept.of(lambda: [setting_fault(setting)], "setting", setting)[0]
        return fault

    places: dict[str, set[str]] = {file.relative_to(site).as_posix(): set() for file in site.rglob("*") if file.is_file()}
    pages = {name: addresses((site / name).read_text("utf-8")) for name in sorted(places) if name.endswith(".html")}
    places |= {name: set(found.ids) for name, found in pages.items()}
    faults = []
    for name, found in pages.items():

        @cache
        def fault_of(tag: str, link: str, page: str = name) -> str | None:
            return link_fault(page, tag, link, places, of_setting)

        faults += [f"{name}: the id {id} stands twice" for id in found.doubled]
        faults += [f"{name}: {fault}" for tag, link in found.links if (fault := fault_of(tag, link))]
    for sheet in sorted(site.rglob("*.css")):
        for link in re.findall(r"url\(['\"]?([^)'\"]+)|@import\s+['\"]([^'\"]+)", sheet.read_text("utf-8")):
            address = link[0] or link[1]
            if not address.startswith("data:") and (urlsplit(address).scheme or not (sheet.parent / address).is_file()):
                faults.append(f"{sheet.relative_to(site).as_posix()}: {address} is not in the site")
    return faults


def link_fault(
    page: str, tag: str, link: str, places: dict[str, set[str]], fault_of_setting: Callable[[str], str | None]
) -> str | None:
    """What is wrong with one link of a page, or None.

    Parameters
    ----------
    page : str
        Its address in the site.
    tag, link : str
        The tag that holds the link, and the link.
    places : dict
        The ids in each file of the site, by address; a file that is no page has none.
    fault_of_setting : function
        What is wrong with a setting of the bench, or None.
    """
    parts = urlsplit(link)
    if parts.scheme == "data":
        return None
    if parts.scheme or parts.netloc:
        return f"<{tag}> would fetch {link} from another site" if tag in FETCHED else None
    if parts.path.startswith("/"):
        return f"{link} begins at the top of a server, which a USB stick does not have: write it relative to the page"
    target = posixpath.normpath(posixpath.join(posixpath.dirname(page), unquote(parts.path))) if parts.path else page
    if target not in places:
        target = posixpath.normpath(posixpath.join(target, "index.html"))
    if target not in places:
        return f"{link} leads nowhere"
    if parts.fragment.startswith("set=") and posixpath.basename(target) == PAGE:
        return fault_of_setting(unquote(parts.fragment))
    if parts.fragment and target.endswith(".html") and unquote(parts.fragment) not in places[target]:
        return f"{link}: there is no such place in {posixpath.basename(target)}"
    return None


def setting_fault(setting: str) -> str | None:
    """What is wrong with a link to a setting of the bench."""
    try:
        check_setting(setting)
    except Fault as fault:
        return str(fault)
    return None
