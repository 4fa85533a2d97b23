"""The steady workshop noise under everything, by kind and A-weighted level."""

from __future__ import annotations

from enum import StrEnum
from functools import lru_cache

import numpy as np

from trainer.arrays import Floats
from trainer.circuit.chance import Stream
from trainer.sound.iec_61672 import a_weighting_gain
from trainer.sound.levels import REFERENCE_PA

LOOP_FRAMES = 2**18
"""The bed repeats without a seam after this many frames: 5.5 s at 48 kHz."""


class BedKind(StrEnum):
    """What makes the noise."""

    QUIET_BAY = "quiet_bay"
    VENTILATION = "ventilation"
    COMPRESSOR = "compressor"


def bed_pa(kind: BedKind, level_dba: float, frames: int, rate_hz: int, seed: int) -> Floats:
    """Return a steady noise of an A-weighted level at both ears, shape (frame, ear), in pascal."""
    loop, weighted = _loop(kind, rate_hz, seed)
    target = REFERENCE_PA**2 * 10.0 ** (level_dba / 10.0)
    return np.resize((loop * np.sqrt(target / weighted)).T, (frames, 2))


@lru_cache(maxsize=4)  # a case is rendered again and again with one bed; each loop is four megabytes
def _loop(kind: BedKind, rate_hz: int, seed: int) -> tuple[Floats, float]:
    """Return one loop of a bed at a level of no matter, shape (ear, frame), and its A-weighted mean square."""
    frequency = np.fft.rfftfreq(LOOP_FRAMES, 1.0 / rate_hz)
    shape = _shape(kind, frequency)
    chance = Stream(seed, f"bed {kind}")
    turns = chance.uniform(6 * len(frequency)).reshape(2, 3, -1)
    shared, own = np.exp(2j * np.pi * turns)
    # low sound reaches both ears alike, high sound from everywhere
    alike = 1.0 / (1.0 + (frequency / 500.0) ** 2)
    spectra = shape * (np.sqrt(alike) * shared[:1] + np.sqrt(1.0 - alike) * own[:2])
    loop = np.fft.irfft(spectra, LOOP_FRAMES, axis=1)
    return loop, float(2.0 * np.sum((shape * a_weighting_gain(frequency)) ** 2) / LOOP_FRAMES**2)


def _shape(kind: BedKind, frequency_hz: Floats) -> Floats:
    """Return amplitude over frequency: falling noise, for a compressor with mains hum and its harmonics."""
    safe = np.maximum(frequency_hz, 20.0)
    slope = {BedKind.QUIET_BAY: 0.75, BedKind.VENTILATION: 0.5, BedKind.COMPRESSOR: 0.6}[kind]
    shape = (safe / 100.0) ** -slope / (1.0 + (safe / 6000.0) ** 2)
    shape[frequency_hz < 30.0] = 0.0
    if kind is BedKind.COMPRESSOR:
        step = frequency_hz[1]
        for harmonic, strength in ((50.0, 6.0), (100.0, 8.0), (150.0, 3.0), (300.0, 3.0)):
            shape[round(harmonic / step)] += strength * np.sqrt(harmonic / step)
    return np.asarray(shape)
