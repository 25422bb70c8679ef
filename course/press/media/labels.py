"""The label of a picture or sound that leaves the page: what it shows, whose it is, how it was made; and files that hold it."""

import re
import struct
import zlib
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from html import escape, unescape

from course.press.media.palette import read_palette

WHITE = {"paper": "#ffffff", "slip": "#ffffff"}
SettingWords = Mapping[str, Sequence[str]]  # of each setting its meaning, its usual value, what it may be
LETTERS = "Alegreya Sans, Gill Sans, Candara, DejaVu Sans Condensed, sans-serif"
COURSE = "Crystal to Reaction"
PLAYING = re.compile(r'<(?:path|polyline) class="heard-[^>]*/>')  # what moves over a sound's picture
WORDS = re.compile(r"(?:\s*<(title|desc)\b.*?</\1>)*", re.S)
LICENCE = "MIT licence, © 2026 the Crystal to Reaction contributors: free to use with this notice."


@dataclass(frozen=True)
class Label:
    """What goes with a file: its name, what it shows in words, the settings that made it, and the command to make it again."""

    title: str
    caption: str
    words: str
    settings: dict[str, str]
    command: str

    @property
    def made_with(self) -> str:
        """Such as "q = 30, cycles = 25"."""
        return ", ".join(f"{name} = {value}" for name, value in self.settings.items()) or "nothing to set"

    @property
    def text(self) -> str:
        """All of it, for a file beside the picture or sound."""
        return (
            f"{self.title}\n\n{self.caption}\n\nIn words: {self.words}\n\nSettings: {self.made_with}\n"
            f"Made again by: {self.command}\nFrom the course {COURSE}.\n{LICENCE}\n"
        )


def label_for(
    kind: str, name: str, settings: SettingWords, caption: str, words: str, changed: Mapping[str, str] | None = None
) -> Label:
    """The label of one picture or sound.

    Parameters
    ----------
    kind : str
        "figure" or "sound".
    name : str
        "file/function".
    settings : mapping
        Of each its meaning, its usual value and what it may be, in words.
    caption, words : str
        Plain text: the caption, and what is to be seen or heard.
    changed : mapping, optional
        Settings that are not the usual ones, in words.

    Returns
    -------
    Label
    """
    changed = changed or {}
    made_with = {key: changed.get(key, usual) for key, (_, usual, _) in settings.items()}
    sets = "".join(f' --set {key}="{value}"' for key, value in changed.items())
    title = name.rpartition("/")[2].replace("_", " ").capitalize()
    return Label(title, caption, words, made_with, f"python -m course.make {kind} {name}{sets}")


def plain_text(text: str) -> str:
    """A caption without its markup; formulas stay as they are written."""
    text = re.sub(r"<label\b.*?</label>|<[^>]*>", "", text)
    text = re.sub(r"\[([^\]]*)\]\([^)]*\)", r"\1", text)
    return " ".join(unescape(re.sub(r"\*\*|`|(?<!\\)\$", "", text)).split())


def standalone_svg(picture: str, label: Label) -> str:
    """An inline `<svg>` of ours as a file by itself: light colours on white, letters, and its label as metadata."""
    colours = {name: pair[0] for name, pair in read_palette().items()} | WHITE
    picture = PLAYING.sub("", picture)
    picture = re.sub(r"var\(--(\w+)\)", lambda match: colours[match[1]], picture).replace("currentColor", colours["ink"])
    head, body = split_head(picture)
    tag = head if "xmlns=" in head else head.replace("<svg", '<svg xmlns="http://www.w3.org/2000/svg"')
    across, down, width, height = view_box(tag)
    size = f'font-family="{LETTERS}" color="{colours["ink"]}" height="{float(height) * shown_width(tag) / float(width):.0f}"'
    said = WORDS.match(body)[0]  # type: ignore[index]  # it matches nothing at least
    ground = f'<rect x="{across}" y="{down}" width="{width}" height="{height}" fill="{colours["slip"]}"/>'
    return (
        '<?xml version="1.0" encoding="UTF-8"?>\n'
        f"{tag[:-1]} {size}>{said}<metadata>{rdf_metadata(label)}</metadata>{ground}{body[len(said) :]}"
    )


def shown_width(tag: str) -> float:
    """Width of an `<svg>` in pixels, as its tag says or else as wide as its drawing."""
    width = re.search(r'\bwidth="([\d.]+)"', tag)
    return float(width[1] if width else view_box(tag)[2])


def view_box(tag: str) -> list[str]:
    """Left, top, width and height of what an `<svg>` shows."""
    found = re.search(r'viewBox="([^"]+)"', tag)
    if found is None:
        raise ValueError("a picture of ours says by viewBox what it shows")
    return found[1].split()


def split_head(svg: str) -> tuple[str, str]:
    """The `<svg>` tag with what stands before it, and all behind it."""
    end = svg.index(">", svg.index("<svg")) + 1
    return svg[:end], svg[end:]


def rdf_metadata(label: Label) -> str:
    """The label in the Dublin Core's terms (DCMI Metadata Terms), as RDF, which drawing programs show."""
    parts = {
        "title": label.title,
        "description": f"{label.caption} Settings: {label.made_with}.",
        "creator": COURSE,
        "rights": LICENCE,
        "source": label.command,
    }
    inner = "".join(f"<dc:{name}>{escape(text)}</dc:{name}>" for name, text in parts.items())
    return (
        '<rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#" xmlns:dc="http://purl.org/dc/elements/1.1/">'
        f'<rdf:Description rdf:about="">{inner}</rdf:Description></rdf:RDF>'
    )


def labelled_wav(wav: bytes, label: Label) -> bytes:
    """A WAV file with its label in a LIST chunk of type INFO (Multimedia Programming Interface 1.0, 1991; from memory)."""
    said = {
        b"INAM": label.title,
        b"IART": COURSE,
        b"ICMT": f"{label.caption} In words: {label.words} Settings: {label.made_with}.",
        b"ICOP": LICENCE,
        b"ISRC": label.command,
    }
    info = b"INFO"
    for name, text in said.items():
        content = text.encode() + b"\0"
        info += name + struct.pack("<I", len(content)) + content + b"\0" * (len(content) % 2)
    body = wav[12:] + b"\0" * (len(wav) % 2) + b"LIST" + struct.pack("<I", len(info)) + info
    return b"RIFF" + struct.pack("<I", len(body) + 4) + b"WAVE" + body


def labelled_png(png: bytes, label: Label) -> bytes:
    """A PNG file with its label in text chunks (ISO/IEC 15948, iTXt) behind its header."""
    said = {
        "Title": label.title,
        "Description": label.caption,
        "Author": COURSE,
        "Copyright": LICENCE,
        "Source": label.command,
        "Comment": f"Settings: {label.made_with}",
    }
    header = 8 + 25
    chunks = b""
    for keyword, text in said.items():
        content = b"iTXt" + keyword.encode() + b"\0\0\0\0\0" + text.encode()
        chunks += struct.pack(">I", len(content) - 4) + content + struct.pack(">I", zlib.crc32(content))
    return png[:header] + chunks + png[header:]
