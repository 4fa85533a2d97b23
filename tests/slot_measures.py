"""What a slot measures by ear's figures: depth of its chatter, how alike its pulses are, how far their levels spread."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise

import numpy as np
import scipy.signal

from trainer.arrays import Floats
from trainer.sound.iec_61672 import a_weighting_gain
from trainer.sound.levels import FULL_SCALE_PA, level_db
from trainer.sound.render import SlotSound, Sound

MOST_LAG_S = 6e-4
"""How far one pulse may lie from its beat: they are compared where they are most alike."""


@dataclass(frozen=True, slots=True)
class SlotFigures:
    """The figures of one slot; levels in dB(A)."""

    level_dba: float
    centroid_hz: float
    depth: float
    alike: float
    spread_db: float
    over_300_hz_db: float


def weighted(pressure: Floats, rate_hz: int) -> Floats:
    """Return A-weighted sound of shape (frame,)."""
    spectrum = np.fft.rfft(pressure)
    return np.asarray(
        np.fft.irfft(spectrum * a_weighting_gain(np.fft.rfftfreq(len(pressure), 1 / rate_hz)), len(pressure))
    )


def modulation_depth(pressure: Floats, rate_hz: int, beat_hz: float) -> float:
    """Return the modulation depth of the envelope at a beat, 1 for a carrier that falls to nothing as 1 + cos does.

    The envelope is that of the analytic signal. `pressure` has shape (frame,) and holds whole beats. A train of short
    clicks comes to more than 1: its envelope has sharper crests than 1 + cos.
    """
    envelope = np.abs(scipy.signal.hilbert(pressure))
    turn = np.exp(-2j * np.pi * beat_hz * np.arange(len(envelope)) / rate_hz)
    return float(2.0 * abs((envelope * turn).mean()) / envelope.mean())


def pulses_in(pressure: Floats, rate_hz: int, beat_hz: float) -> Floats:
    """Return the pulses of a slot, each from its beat on, shape (pulse, frame)."""
    period = rate_hz / beat_hz
    count = int(len(pressure) / period)
    starts = np.round(np.arange(count) * period).astype(int)
    return np.array([pressure[start : start + int(period)] for start in starts if start + int(period) <= len(pressure)])


def alikeness(pulses: Floats, rate_hz: int) -> float:
    """Return the mean correlation of each pulse with the next one, at the lag where they are most alike."""
    most = round(MOST_LAG_S * rate_hz)
    values = []
    for one, other in pairwise(pulses):
        across = scipy.signal.correlate(other, one, method="fft")
        middle = len(one) - 1
        size = np.sqrt((one**2).sum() * (other**2).sum())
        values.append(float(across[middle - most : middle + most + 1].max() / max(size, 1e-30)))
    return float(np.mean(values))


def figures_of(sound: Sound, slot: SlotSound, beat_hz: float, ear: int | None = None) -> SlotFigures:
    """Measure one slot in the file; the first five beats, in which the room fills, are left out of the comparisons."""
    start, end = (round(time_s * sound.rate_hz) for time_s in (slot.window.start_s, slot.window.end_s))
    both = sound.samples[start:end].astype(float) * FULL_SCALE_PA
    louder = int(np.argmax((both**2).sum(axis=0))) if ear is None else ear
    heard = weighted(both[:, louder], sound.rate_hz)
    first = round(5 * sound.rate_hz / beat_hz)
    beats = int((len(heard) - first) * beat_hz / sound.rate_hz)
    whole = heard[first : first + round(beats * sound.rate_hz / beat_hz)]
    pulses = pulses_in(heard, sound.rate_hz, beat_hz)[5:]
    spectrum = np.abs(np.fft.rfft(heard)) ** 2
    frequency = np.fft.rfftfreq(len(heard), 1 / sound.rate_hz)
    above = spectrum[frequency > 300.0].sum() / spectrum.sum()
    return SlotFigures(
        slot.level_dba, slot.centroid_hz, modulation_depth(whole, sound.rate_hz, beat_hz),
        alikeness(pulses, sound.rate_hz), float(np.std(level_db((pulses**2).mean(axis=1)))), 10.0 * float(np.log10(above)),
    )  # fmt: skip
