"""From samples to files: one loudness for the whole course, no clipping, no click at the ends.

The scale: a sample of 1.0 is full scale. A sound is brought to an r.m.s. of -20 dB below that (0.1), unless it asks for
another `level` or a `full_scale` of its own. Whatever it asks for, no sample passes 0.9: a sound so peaky that its
r.m.s. cannot be reached is left quieter.
"""

import io

import numpy as np
import soundfile

from course.sounds.kit.picture import picture

PEAK = 0.9
SOFT_END = 0.012
LONGEST = 30.0
RATES = (8_000, 16_000, 24_000, 32_000, 44_100, 48_000)
MP3_COMPRESSION = 0.3


def files_of(result: tuple[np.ndarray, int], name: str, about: dict) -> dict[str, bytes]:
    """MP3 and WAV of one sound, and its picture if it has one; the same bytes each time.

    Parameters
    ----------
    result : (ndarray, int)
        Samples of one channel, on any scale, and samples a second.
    name : str
    about : dict
        What `sound` was told: "level" in dB, "full_scale" and "moments".

    Returns
    -------
    dict
        The files, under ".mp3", ".wav" and ".svg"; the last is empty for a sound without a picture.

    Raises
    ------
    ValueError
        If the samples are not one finite channel at a usual rate, or would pass the peak.
    """
    samples, rate = result
    moments = about.get("moments")
    levelled = softened(brought_to_level(checked(samples, rate), about["level"], about["full_scale"]), rate)
    return {
        ".mp3": encoded(levelled, rate, format="MP3", compression_level=MP3_COMPRESSION),
        ".wav": encoded(levelled, rate, format="WAV", subtype="PCM_16"),
        ".svg": b"" if moments is None else picture(levelled, rate, moments).encode(),
    }


def checked(samples: np.ndarray, rate: int) -> np.ndarray:
    """The samples as floats, if they are something that can be played."""
    samples = np.asarray(samples, dtype=float)
    if rate not in RATES:
        raise ValueError(f"the sample rate must be one of {', '.join(map(str, RATES))} Hz, not {rate}")
    if samples.ndim != 1 or not 0 < samples.size <= LONGEST * rate:
        raise ValueError(f"a sound is one channel of up to {LONGEST:g} s, not an array of shape {samples.shape}")
    if not np.isfinite(samples).all():
        raise ValueError("the samples hold a value that is not a finite number")
    return samples


def brought_to_level(samples: np.ndarray, level: float, full_scale: float | None) -> np.ndarray:
    """Samples on the course's scale.

    Parameters
    ----------
    samples : ndarray of float
    level : float, dB
        Of the r.m.s., below full scale; unused if `full_scale` is given.
    full_scale : float or None
        Sample value to be played as 1.0.

    Returns
    -------
    ndarray of float, none beyond +-0.9

    Raises
    ------
    ValueError
        If there is nothing but silence, or `full_scale` is too small for these samples.
    """
    peak = np.abs(samples).max()
    if full_scale is not None:
        if peak > PEAK * full_scale:
            raise ValueError(f"the samples reach {peak:.3g}: full_scale must be at least {peak / PEAK:.3g}")
        return samples / full_scale
    if peak == 0:
        raise ValueError("the sound is silent: give full_scale if that is meant")
    rms = np.sqrt(np.mean(samples**2))
    return samples * min(10 ** (level / 20) / rms, PEAK / peak)


def softened(samples: np.ndarray, rate: int) -> np.ndarray:
    """The same sound, rising and falling over a few milliseconds at its ends."""
    length = min(round(SOFT_END * rate), samples.size // 2)
    ramp = np.sin(np.linspace(0, np.pi / 2, length)) ** 2
    window = np.ones(samples.size)
    window[:length] = ramp
    window[samples.size - length :] = ramp[::-1]
    return samples * window


def encoded(samples: np.ndarray, rate: int, **form) -> bytes:
    file = io.BytesIO()
    soundfile.write(file, samples, rate, **form)
    return file.getvalue()
