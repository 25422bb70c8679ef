"""Every address in the finished pages leads somewhere, and nothing is fetched from elsewhere."""

import re
from dataclasses import dataclass
from pathlib import Path
from urllib.parse import unquote, urlsplit

from course.press.boxes.bench_box import PAGE
from course.press.boxes.bench_setting import check_setting
from course.press.faults import Fault
from course.press.text.markup import pieces

FETCHED = {"img", "script", "audio", "source", "video", "iframe", "link", "embed", "object", "use", "image"}


@dataclass(frozen=True)
class Addresses:
    """The ids of one page, and what it points to: tag and address."""

    ids: list[str]
    links: list[tuple[str, str]]


def addresses_in(html: str) -> Addresses:
    """What of a page can be pointed to, and to what it points."""
    found = Addresses([], [])
    for piece in pieces(html):
        for name, value in piece.attributes.items():
            if name == "id" or (name == "name" and piece.name == "a"):
                found.ids.append(value or "")
            elif name in ("href", "src", "xlink:href", "data", "poster"):
                found.links.append((piece.name, value or ""))
    return found


def link_faults(site: Path) -> list[str]:
    """One sentence for each dead link, missing anchor, doubled id, and request to another site.

    Parameters
    ----------
    site : Path
        Folder of the finished site.

    Returns
    -------
    list of str
    """
    pages = {page: addresses_in(page.read_text("utf-8")) for page in sorted(site.rglob("*.html"))}
    faults = []
    for page, found in pages.items():
        name = page.relative_to(site).as_posix()
        faults += [f"{name}: the id {id} stands twice" for id in sorted({i for i in found.ids if found.ids.count(i) > 1})]
        faults += [f"{name}: {fault}" for tag, link in found.links if (fault := link_fault(page, tag, link, pages, site))]
    for sheet in sorted(site.rglob("*.css")):
        for link in re.findall(r"url\(['\"]?([^)'\"]+)|@import\s+['\"]([^'\"]+)", sheet.read_text("utf-8")):
            address = link[0] or link[1]
            if not address.startswith("data:") and (urlsplit(address).scheme or not (sheet.parent / address).is_file()):
                faults.append(f"{sheet.relative_to(site).as_posix()}: {address} is not in the site")
    return faults


def link_fault(page: Path, tag: str, link: str, pages: dict[Path, Addresses], site: Path) -> str | None:
    """What is wrong with one link of a page, or None."""
    parts = urlsplit(link)
    if parts.scheme == "data":
        return None
    if parts.scheme or parts.netloc:
        return f"<{tag}> would fetch {link} from another site" if tag in FETCHED else None
    if parts.path.startswith("/"):
        return f"{link} begins at the top of a server, which a USB stick does not have: write it relative to the page"
    target = (page.parent / unquote(parts.path)).resolve() if parts.path else page
    if target.is_dir():
        target /= "index.html"
    if not target.is_file() or site.resolve() not in target.resolve().parents:
        return f"{link} leads nowhere"
    if parts.fragment.startswith("set=") and target.name == PAGE:
        return setting_fault(unquote(parts.fragment))
    if parts.fragment and target in pages and unquote(parts.fragment) not in pages[target].ids:
        return f"{link}: there is no such place in {target.name}"
    return None


def setting_fault(setting: str) -> str | None:
    """What is wrong with a link to a setting of the bench."""
    try:
        check_setting(setting)
    except Fault as fault:
        return str(fault)
    return None
