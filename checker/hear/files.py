"""What `checker hear` leaves behind: two sounds, a picture, and a page that shows all three."""

import os
import wave
from pathlib import Path

import numpy as np

from ..templates import environment
from .chain import Chain
from .listening import EACH, FAR, LOCAL, MOMENTS, RATE, SECONDS
from .picture import dial_picture
from .receiver import Performance, set_level

TOO_FAR = next(moment for moment, says in MOMENTS if says == "too far")
CAUTION = (
    f"Headphones: begin with the volume low, and turn it up once it plays. After {TOO_FAR:.0f} seconds the set "
    "oscillates, and whistles as loudly as the programme."
)
_PAGES = environment(Path(__file__).parent / "pages")


def write_files(into: Path, played: Performance, reference: np.ndarray, emf: np.ndarray, chain: Chain) -> list[str]:
    """Write everything into a folder; what stands there under these names is replaced.

    Parameters
    ----------
    into : Path, made if it is not there
    played : Performance
    reference : ndarray, the reference's sound, volts across the telephones
    emf : ndarray, complex, what the aerial brought in the demonstration
    chain : Chain

    Returns
    -------
    list of str
        Sentences on how loud the sounds are.
    """
    into.mkdir(parents=True, exist_ok=True)
    says = []
    (into / "yours.wav").unlink(missing_ok=True)
    for name, sound in (("yours", played.sound), ("reference", reference)):
        if not sound.size:
            continue
        heard, turned_down = set_level(sound, reference)
        write_wav(into / f"{name}.wav", heard)
        loudness, crest = decibels(np.sqrt(np.mean(heard**2))), decibels(np.max(np.abs(heard)))
        says.append(
            f"{name}.wav  {heard.size / RATE:.0f} s, loudness {loudness}, highest crest {crest} of full scale"
            + ", turned down" * turned_down
        )
    demonstration = np.zeros(0) if "circuit_voltage" in played.missing else played.sound
    picture = dial_picture(emf, played.settings, demonstration, reference)
    (into / "dial.svg").write_text(picture, "utf-8")
    purposes = {(link.exercise, link.function): link.purpose for link in chain.links}
    page = _PAGES.get_template("hear.html").render(
        caution=CAUTION,
        seconds=round(SECONDS),
        apart=round((FAR - LOCAL) / 1e3),
        each=round(EACH),
        names=chain.numbers["names"],
        yours=any(line.startswith("yours.wav") for line in says),
        picture=picture,
        rows=[(*key, purposes.get(key, "all of it"), source) for key, source in played.sources.items()],
    )
    (into / "index.html").write_text(page, "utf-8")
    return says


def decibels(amplitude: float) -> str:
    """How far an amplitude is below full scale, in words."""
    return f"{20 * np.log10(max(amplitude, 1e-6)):.1f} dB"


def write_wav(path: Path, samples: np.ndarray) -> None:
    """Write samples between −1 and 1 as a WAV file, 16 bits each."""
    with wave.open(os.fspath(path), "wb") as file:
        file.setnchannels(1)
        file.setsampwidth(2)
        file.setframerate(RATE)
        file.writeframes(np.round(32767 * samples).astype("<i2").tobytes())
