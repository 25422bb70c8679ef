"""The built site as a pack brings it: what a reader at home needs, opened by a double click, without what is large."""

import re
from pathlib import Path

PRINTED = "print"  # the folder of the print editions, as large as all the rest
_LEFT_OUT = {".wav", ".zip", ".map"}
_TO_SOUND = re.compile(r'<a [^>]*href="[^"]*\.wav"[^>]*>.*?</a> ?')
_TO_PRINTED = re.compile(rf'<a [^>]*href="(?:\.\./)*{PRINTED}/[^"]*"[^>]*>(.*?)</a>', re.S)
_TO_PACK = re.compile(r'<p class="take-pack">.*?</p>\n?', re.S)
_SOURCE = re.compile(rb"[ \n]\(course/lessons/([\w/]+)\.md\)")


def site_files(site: Path) -> dict[str, bytes]:
    """The files of a site that go into a pack: path below the site, to its bytes; no page leads to what was left out."""
    found = {}
    for file in sorted(path for path in site.rglob("*") if path.is_file()):
        name = file.relative_to(site).as_posix()
        if name.startswith(f"{PRINTED}/") or file.suffix in _LEFT_OUT:
            continue
        found[name] = _without_links(file.read_text("utf-8")).encode() if file.suffix == ".html" else file.read_bytes()
    return found


def _without_links(page: str) -> str:
    return _TO_PACK.sub("", _TO_PRINTED.sub(r"\1", _TO_SOUND.sub("", page)))


def lesson_opens(stub: bytes, with_site: bool, address: str) -> bytes:
    """A stub that names its lesson by a path or an address that can be opened in a pack; by neither where there is none."""
    top = "site" if with_site else address.rstrip("/")
    return _SOURCE.sub(lambda found: b"%s(%s/%s.html)" % (found[0][:1], top.encode(), found[1]) if top else b"", stub)
