"""What a student pack holds for `checker hear`: what each link gives, and the reference's sound; no code of the reference."""

import base64
from collections.abc import Iterable

import numpy as np

from ..course import ROOT
from ..judging.sealed import BrokenSeal, seal, unseal
from ..worker.wire import Malformed, from_wire, to_wire
from .answers import ReferenceAnswers
from .chain import Chain, Link, reference_chain
from .receiver import play

PATH = "practice/hear.sealed"


def seal_hear() -> bytes:
    """The chain and the reference's sound as bytes to be written to a file; the same each time."""
    chain = reference_chain()
    sound = play(chain, ReferenceAnswers(chain)).sound
    crest = float(np.max(np.abs(sound)))
    data = {
        "links": list(map(_link_to_wire, chain.links)),
        "numbers": chain.numbers,
        "crest": crest,
        "sound": base64.b64encode(np.round(32767 * sound / crest).astype("<i2").tobytes()).decode(),
    }
    return seal(data, PATH)


def read_sealed_hear() -> tuple[Chain, np.ndarray]:
    """The chain, with nothing to stand in for what is missing moment by moment, and the reference's sound.

    Raises
    ------
    BrokenSeal
        If the file is missing or damaged.
    """
    try:
        data = unseal((ROOT / PATH).read_bytes(), PATH)
        links = tuple(map(_link_from_wire, data["links"]))
        sound = np.frombuffer(base64.b64decode(data["sound"]), "<i2") * (data["crest"] / 32767)
        return Chain(links, data["numbers"], {}), sound
    except (OSError, ValueError, KeyError, TypeError, Malformed):
        raise BrokenSeal(f"{PATH} is missing or damaged. Unpack the student pack again.") from None


def _link_to_wire(link: Link) -> list:
    numbers = _to_wires(link.inputs), _to_wires(link.wanted)
    return [link.exercise, link.function, link.purpose, *numbers, list(map(_link_to_wire, link.core))]


def _link_from_wire(data: list) -> Link:
    exercise, function, purpose, inputs, wanted, core = data
    asked = [tuple(map(from_wire, one["sequence"])) for one in inputs]
    return Link(exercise, function, purpose, asked, list(map(from_wire, wanted)), tuple(map(_link_from_wire, core)))


def _to_wires(values: Iterable) -> list:
    return [to_wire(value) for value in values]
