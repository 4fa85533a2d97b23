"""Levels in decibel re 20 µPa, and the digital full scale that makes a file mean something."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

import numpy as np

from trainer.arrays import Floats
from trainer.sound.iec_61672 import a_weighting_gain

REFERENCE_PA = 20e-6
FULL_SCALE_PA = 2.8284271247461903
"""Sample value 1.0: the crest of a sine of 100 dB SPL. A file at −34 dBFS RMS (sine) stands for 66 dB at the ear."""

SILENCE_DB = -200.0
"""What a level of nothing is called, so that arithmetic on it stays finite."""


def level_db(mean_square_pa2: Floats) -> Floats:
    """Return the level of a mean square pressure; nothing at all gives SILENCE_DB."""
    floor = REFERENCE_PA**2 * 10.0 ** (SILENCE_DB / 10.0)
    return np.asarray(10.0 * np.log10(np.maximum(mean_square_pa2, floor) / REFERENCE_PA**2))


def sum_db(levels_db: Floats) -> float:
    """Return the level of incoherent sounds together."""
    return float(10.0 * np.log10(np.sum(10.0 ** (np.asarray(levels_db) / 10.0))))


@dataclass(frozen=True, slots=True)
class Measures:
    """What a stretch of sound measures, A-weighted: equivalent level, and mean frequency by power, 0 for silence."""

    level_dba: float
    centroid_hz: float


def measure(pressure_pa: Floats, rate_hz: int) -> Measures:
    """Measure a stretch of sound, the two ears' mean square taken together; both figures are A-weighted.

    `pressure_pa` has shape (frame,) or (frame, ear), in pascal at the listener.
    """
    signal = pressure_pa if pressure_pa.ndim == 2 else pressure_pa[:, None]
    frequency, gain = _weighting(len(signal), rate_hz)
    spectrum = np.fft.rfft(signal, axis=0)
    power = (spectrum.real**2 + spectrum.imag**2) * gain[:, None] ** 2
    both = power.sum(axis=1)
    power[1:] *= 2.0
    if len(signal) % 2 == 0:
        power[-1] /= 2.0
    total = both.sum()
    return Measures(
        level_dba=float(level_db(power.sum(axis=0).mean() / len(signal) ** 2)),
        centroid_hz=float((frequency * both).sum() / total) if total > 0.0 else 0.0,
    )


def a_weighted_level_db(pressure_pa: Floats, rate_hz: int) -> float:
    """Return the equivalent A-weighted level of a stretch of sound, of the shape that `measure` takes."""
    return measure(pressure_pa, rate_hz).level_dba


@lru_cache(maxsize=4)  # the slots of a test have two lengths
def _weighting(frames: int, rate_hz: int) -> tuple[Floats, Floats]:
    """Return the frequencies of a transform of so many frames in hertz, and weighting A at each."""
    frequency = np.fft.rfftfreq(frames, 1.0 / rate_hz)
    return frequency, a_weighting_gain(frequency)
