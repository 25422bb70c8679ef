"""What `checker hear` leaves behind: two sounds, a picture, and a page that shows all three."""

import os
import wave
from html import escape
from pathlib import Path

import numpy as np

from .listening import EACH, FAR, LOCAL, MOMENTS, RATE, SECONDS
from .picture import dial_picture
from .receiver import Chain, Performance, set_level

TOO_FAR = next(moment for moment, says in MOMENTS if says == "too far")
CAUTION = (
    f"Headphones: begin with the volume low, and turn it up once it plays. After {TOO_FAR:.0f} seconds the set "
    "oscillates, and whistles as loudly as the programme."
)
_PAGE = """<!doctype html>
<html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy"
 content="default-src 'none'; media-src 'self' file:; img-src data:; style-src 'unsafe-inline'">
<title>Your receiver</title>
<style>body{{max-width:46rem;margin:1.5rem auto;padding:0 1rem;font:1rem/1.5 sans-serif;color:#20303c;background:#fbfaf6}}
audio{{width:100%}}svg{{width:100%;max-width:36rem;height:auto}}.caution{{border-left:4px solid #9a6b12;padding-left:.8rem}}
table{{border-collapse:collapse}}td,th{{text-align:left;padding:.15rem .9rem .15rem 0;vertical-align:top}}</style></head><body>
<h1>Your receiver, an evening on Tern Spit</h1>
<p class="caution"><b>Caution.</b> {caution}</p>
<p>For {seconds:.0f} seconds one set is turned from the local to Gannet Rock, {apart:.0f}&nbsp;kHz away, its reaction advanced,
one turn too far, and back. Then it goes along the dial, {each:.0f} seconds on each station: {names}.</p>
<h2>Yours</h2>{yours}
<h2>The reference</h2><p><audio controls preload="none" src="reference.wav"></audio></p>
<h2>The dial and the knobs</h2>{picture}
<h2>The chain</h2><table><thead><tr><th>exercise</th><th>function</th><th>what for</th><th>whose</th></tr></thead><tbody>
{rows}
</tbody></table></body></html>
"""


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
    says, yours = [], "<p>Nothing yet: see the chain below.</p>"
    (into / "yours.wav").unlink(missing_ok=True)
    for name, sound in (("yours", played.sound), ("reference", reference)):
        if not sound.size:
            continue
        heard, turned_down = set_level(sound, reference)
        _wav(into / f"{name}.wav", heard)
        loudness, crest = _decibels(np.sqrt(np.mean(heard**2))), _decibels(np.max(np.abs(heard)))
        says.append(
            f"{name}.wav  {heard.size / RATE:.0f} s, loudness {loudness}, highest crest {crest} of full scale"
            + ", turned down" * turned_down
        )
        if name == "yours":
            yours = '<p><audio controls preload="none" src="yours.wav"></audio></p>'
    demonstration = np.zeros(0) if "circuit_voltage" in played.missing else played.sound
    picture = dial_picture(emf, played.settings, demonstration, reference)
    (into / "dial.svg").write_text(picture, "utf-8")
    purposes = {(link.exercise, link.function): link.purpose for link in chain.links}
    rows = "\n".join(
        f"<tr><td>{escape(exercise)}</td><td>{escape(function)}</td>"
        f"<td>{escape(purposes.get((exercise, function), 'all of it'))}</td><td>{escape(source)}</td></tr>"
        for (exercise, function), source in played.sources.items()
    )
    page = _PAGE.format(
        caution=CAUTION,
        seconds=SECONDS,
        apart=(FAR - LOCAL) / 1e3,
        each=EACH,
        names=escape(", ".join(chain.numbers["names"])),
        yours=yours,
        picture=picture,
        rows=rows,
    )
    (into / "index.html").write_text(page, "utf-8")
    return says


def _decibels(amplitude: float) -> str:
    return f"{20 * np.log10(max(amplitude, 1e-6)):.1f} dB"


def _wav(path: Path, samples: np.ndarray) -> None:
    with wave.open(os.fspath(path), "wb") as file:
        file.setnchannels(1)
        file.setsampwidth(2)
        file.setframerate(RATE)
        file.writeframes(np.round(32767 * samples).astype("<i2").tobytes())
