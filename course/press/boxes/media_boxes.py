"""Figures and sounds in a page: their boxes, and their files for whoever takes them away."""

import wave
from collections.abc import Callable, Iterable
from pathlib import Path

from course.press.boxes.paper_box import paper_html
from course.press.current_page import CurrentPage
from course.press.media.labels import LICENCE, Label, label_for, labelled_wav, plain_text, standalone_svg
from course.press.media.store import FIGURE, SOUND, MediaStore, Stored
from course.press.templates import render
from course.press.text.calls import Maker, replace_calls
from course.press.text.prose import Prose
from course.settings import RASTER, Setting

KINDS = {kind.word: kind for kind in (FIGURE, SOUND)}
SITE_SETTINGS: dict[str, Setting] = {"raster": RASTER}


class MediaBoxes:
    """What a build's pages show and offer of the figures and sounds of a store.

    Parameters
    ----------
    store : MediaStore
    prose : Prose
        For captions and transcripts.
    page : CurrentPage
    first_words : function of HTML or SVG to the same
        Puts the words into it with which the pages begin.
    site : str
        Where the club publishes the pages, if it says so.

    Attributes
    ----------
    files : dict
        Files to be laid beside the pages, by address.
    makers : dict
        What a page may call for.
    """

    def __init__(
        self, store: MediaStore, prose: Prose, page: CurrentPage, first_words: Callable[[str], str], site: str = ""
    ) -> None:
        self.store, self.prose, self.page, self.first_words, self.site = store, prose, page, first_words, site
        self.files: dict[str, bytes] = {}
        self.makers: dict[str, Maker] = {"figure": self.figure, "sound": self.sound}

    def make_ahead(self, calls: Iterable[tuple[str, str]]) -> None:
        """Have what pages will call for made, by "figure" or "sound" and address."""
        self.store.make_ahead((KINDS[word], name) for word, name in calls)

    def figure(self, name: str) -> str:
        """A picture with its caption, and what can be taken away.

        Parameters
        ----------
        name : str
            Its address, "unit/file/function".
        """
        figure = self.store.fetch(FIGURE, name)
        label = self.label("figure", name, figure, figure.about["alt"])
        self.files[f"figures/{name}.svg"] = standalone_svg(self.first_words(figure.svg), label).encode()
        return render(
            "figure.html",
            anchor=anchor("figure", name),
            picture=figure.svg,
            caption=self.prose.inline(figure.about["caption"]),
            take=self.take_away("figure", name, figure, label, (".svg",)),
        )

    def sound(self, name: str) -> str:
        """A player with its caption, its transcript, a word about loudness, and what can be taken away.

        Parameters
        ----------
        name : str
            Its address, "unit/file/function".
        """
        sound = self.store.fetch(SOUND, name)
        label = self.label("sound", name, sound, sound.about["transcript"])
        self.files[f"sounds/{name}.wav"] = labelled_wav(sound.files[".wav"].read_bytes(), label)
        self.files[f"sounds/{name}.mp3"] = sound.files[".mp3"].read_bytes()
        if sound.svg:
            self.files[f"sounds/{name}.svg"] = standalone_svg(self.first_words(sound.svg), label).encode()
        suffixes = (".wav", ".mp3", ".svg") if sound.svg else (".wav", ".mp3")
        return render(
            "sound.html",
            anchor=anchor("sound", name),
            title=label.title,
            picture=sound.svg,
            length=length_of(sound.files[".wav"]),
            caption=self.prose.inline(sound.about["caption"]),
            transcript=self.prose.inline(sound.about["transcript"]),
            address=self.page.relative(f"sounds/{name}"),
            take=self.take_away("sound", name, sound, label, suffixes),
            paper=paper_html(self.site, f"{self.page.known.url}#{anchor('sound', name)}", "Listen"),
        )

    def circuit(self, name: str) -> str:
        """The circuit of one of the bench's sets, as SVG."""
        return self.store.fetch(FIGURE, f"bench/{name}").svg

    def label(self, kind: str, name: str, stored: Stored, seen_or_heard: str) -> Label:
        """What goes with the file of a picture or sound, in plain words."""
        texts = (
            replace_calls(text, lambda call: str(self.prose.answer_call(call)))
            for text in (stored.about["caption"], seen_or_heard)
        )
        caption, words = (plain_text(self.first_words(text)) for text in texts)
        settings = stored.about["settings"]
        changed = {}
        for setting, value in self.store.site_settings.items():
            shown = SITE_SETTINGS[setting].show(value)
            if setting in settings and shown != settings[setting][1]:
                changed[setting] = shown
        return label_for(kind, name, settings, caption, words, changed)

    def take_away(self, kind: str, name: str, stored: Stored, label: Label, suffixes: tuple[str, ...]) -> str:
        """The files of a picture or sound, and how it is made again: closed until asked for; its PNG is made in the page."""
        self.files[f"{kind}s/{name}.txt"] = label.text.encode()
        return render(
            "take_away.html",
            label=label,
            settings=stored.about["settings"],
            address=self.page.relative(f"{kind}s/{name}"),
            suffixes=suffixes,
            licence=LICENCE,
        )


def length_of(sound: Path) -> str:
    """How long a WAV file plays: "8 s", "1 min 5 s"."""
    with wave.open(str(sound)) as file:
        seconds = max(round(file.getnframes() / file.getframerate()), 1)
    return f"{seconds} s" if seconds < 60 else f"{seconds // 60} min {seconds % 60} s"


def anchor(kind: str, name: str) -> str:
    """Address within a page: "figure-ringing" of "unit03_tuned_circuit/curves/ringing"."""
    return f"{kind}-{name.rpartition('/')[2].replace('_', '-')}"
