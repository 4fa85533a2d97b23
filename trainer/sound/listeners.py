"""The same sound through other ears and other loudspeakers: what is left of it, to say for whom a case is fair.

It is no test of anybody's hearing. An output is a band that it plays; ears are what they just hear by age. What lies
under a tone's threshold, or too far under the bay, is not heard.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

import numpy as np
import scipy.fft

from trainer.arrays import Floats, Floats32
from trainer.sound.iec_61672 import a_weighting_gain
from trainer.sound.iso_7029 import AT_18, threshold_db
from trainer.sound.levels import REFERENCE_PA, Measures, level_db


@dataclass(frozen=True, slots=True)
class Output:
    """What plays: it falls by so many dB an octave under one frequency and over another."""

    low_hz: float
    low_db: float
    high_hz: float
    high_db: float

    def gain_db(self, frequency_hz: Floats) -> Floats:
        """Return its gain at frequencies above 0 Hz."""
        under = np.maximum(np.log2(self.low_hz / frequency_hz), 0.0) * self.low_db
        over = np.maximum(np.log2(frequency_hz / self.high_hz), 0.0) * self.high_db
        return np.asarray(-under - over)


@dataclass(frozen=True, slots=True)
class Listener:
    """An output and ears of an age."""

    output: Output
    age: float = AT_18
    sex: Literal["male", "female"] = "male"


GOOD = Output(40.0, 12.0, 16_000.0, 24.0)
LISTENERS: dict[str, Listener] = {
    "good_headphones": Listener(GOOD),
    "cheap_headphones": Listener(Output(120.0, 12.0, 8_000.0, 12.0)),
    "laptop": Listener(Output(350.0, 18.0, 10_000.0, 12.0)),
    "phone": Listener(Output(600.0, 18.0, 9_000.0, 12.0)),
    "age_45": Listener(GOOD, 45.0),
    "age_60": Listener(GOOD, 60.0),
    "age_60_laptop": Listener(Output(350.0, 18.0, 10_000.0, 12.0), 60.0),
}
"""Stated listeners. The outputs' bands are from memory: a small loudspeaker is too small for long waves."""

OUTPUTS = tuple(name for name, listener in LISTENERS.items() if listener.age == AT_18)
"""Those that a sound can be played as: what they differ by is an output, and not ears."""

LOWEST_HZ, THIRDS = 63.0, 24
"""The lowest third-octave band that is looked at, and how many."""


def heard_by(listener: Listener, pressure_pa: Floats, rate_hz: int, bed_pa: Floats | None = None) -> Measures:
    """Return what a listener gets of a stretch of sound, A-weighted, over a bed that comes through the same output.

    Both have shape (frame, ear), the sound without the bed. In each third of an octave what is under the threshold of a
    tone, or under the bed, is taken off by power: sound that only just stands over them is heard only just.
    """
    centres, sound = _thirds(pressure_pa, rate_hz)
    gain = 10.0 ** (listener.output.gain_db(centres) / 10.0)
    threshold = REFERENCE_PA**2 * 10.0 ** (threshold_db(centres, listener.age, listener.sex) / 10.0)
    masker = threshold if bed_pa is None else threshold + MASKED_SHARE * gain * _thirds(bed_pa, rate_hz)[1]
    left = np.maximum(gain * sound - masker, 0.0) * a_weighting_gain(centres) ** 2
    total = float(left.sum())
    return Measures(float(level_db(np.array(total))), float((left * centres).sum() / total) if total > 0.0 else 0.0)


def played_by(output: Output, samples: Floats | Floats32, rate_hz: int) -> Floats32:
    """Return a sound as an output plays it, shape (frame, channel): the same length, no later, and nothing at 0 Hz."""
    frames = scipy.fft.next_fast_len(len(samples), real=True)
    frequency = np.fft.rfftfreq(frames, 1.0 / rate_hz)
    gain = np.zeros(len(frequency))
    gain[1:] = 10.0 ** (output.gain_db(frequency[1:]) / 20.0)
    heard = scipy.fft.irfft(scipy.fft.rfft(samples, frames, axis=0) * gain[:, None], frames, axis=0)
    return np.asarray(heard[: len(samples)], dtype=np.float32)


MASKED_SHARE = 10.0**-0.4
"""Of a bed's power in a third of an octave, what hides a sound there: 4 dB under it is lost, from memory."""


def _thirds(pressure_pa: Floats, rate_hz: int) -> tuple[Floats, Floats]:
    """Return third-octave centres in hertz, and the mean square in each band, both ears' mean, in Pa²."""
    power = (np.abs(np.fft.rfft(pressure_pa, axis=0)) ** 2).mean(axis=1) * 2.0 / len(pressure_pa) ** 2
    frequency = np.fft.rfftfreq(len(pressure_pa), 1.0 / rate_hz)
    centres = LOWEST_HZ * 2.0 ** (np.arange(THIRDS) / 3.0)
    edges = np.searchsorted(frequency, np.append(centres, 2.0 * centres[-3]) * 2.0 ** (-1.0 / 6.0))
    return centres, np.add.reduceat(power, edges)[:-1]
