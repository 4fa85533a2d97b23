"""Events in a bay: doors, tools, people talking. All of them are synthesised, from memory; no voice was recorded."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np

from trainer.arrays import Floats, Floats32
from trainer.circuit.chance import Stream

Event = Callable[[Stream, int], Floats32]
"""Makes one event from chance at a rate; its level is set where it is added."""


def door(chance: Stream, rate_hz: int) -> Floats32:
    """Return a heavy door: a low thump, then what rattles."""
    time_s = np.arange(round(0.7 * rate_hz)) / rate_hz
    low_hz = 55.0 + 40.0 * chance.uniform(1)[0]
    thump = np.exp(-time_s / 0.09) * np.sin(2.0 * np.pi * low_hz * time_s)
    rattle = chance.normal(len(time_s)) * np.exp(-time_s / 0.12) * (np.sin(2.0 * np.pi * 17.0 * time_s) > 0.6)
    return np.asarray(thump + 0.15 * rattle, dtype=np.float32)


def clank(chance: Stream, rate_hz: int) -> Floats32:
    """Return a tool laid on steel: a few modes that ring."""
    time_s = np.arange(round(0.6 * rate_hz)) / rate_hz
    modes = zip(900.0 + 3500.0 * chance.uniform(5), 0.05 + 0.1 * chance.uniform(5), chance.uniform(5), strict=True)
    rings = [size * np.exp(-time_s / decay_s) * np.sin(2.0 * np.pi * hertz * time_s) for hertz, decay_s, size in modes]
    return np.asarray(np.sum(rings, axis=0), dtype=np.float32)


def ratchet(chance: Stream, rate_hz: int) -> Floats32:
    """Return a few strokes of a ratchet: ten to eighteen clicks a second, with a rest between the strokes."""
    return _blows(chance, rate_hz, strokes=3, blows=6, every_s=0.055 + 0.04 * chance.uniform(1)[0], decay_s=0.004)


def impact_wrench(chance: Stream, rate_hz: int) -> Floats32:
    """Return an impact wrench: some twenty-two blows a second for about a second."""
    return _blows(chance, rate_hz, strokes=1, blows=24, every_s=0.042 + 0.008 * chance.uniform(1)[0], decay_s=0.02)


def babble(chance: Stream, rate_hz: int) -> Floats32:
    """Return people who talk, too far off to be understood: three voices of pulses through changing formants."""
    length = round((2.0 + 2.0 * chance.uniform(1)[0]) * rate_hz)
    heard = np.zeros(length + rate_hz)
    for pitch_hz in 95.0 + 130.0 * chance.uniform(3):
        now = round(0.3 * chance.uniform(1)[0] * rate_hz)
        while now < length:
            lasts_s, rises, loud, gap_s = np.array([0.2, 0.2, 0.7, 0.25]) * chance.uniform(4) + [0.1, 0.9, 0.3, 0.02]
            vowel = _vowel(chance, rate_hz)
            count = max(int(lasts_s * pitch_hz), 1)
            sizes = loud * np.hanning(count + 2)[1:-1]
            starts = now + np.round(np.arange(count) * rate_hz / (pitch_hz * rises)).astype(int)
            for start, size in zip(starts, sizes, strict=True):
                heard[start : start + len(vowel)] += size * vowel[: max(len(heard) - start, 0)]
            now += round((lasts_s + gap_s) * rate_hz)
    return np.asarray(heard, dtype=np.float32)


def _vowel(chance: Stream, rate_hz: int) -> Floats:
    """Return one pulse of the voice through three formants."""
    time_s = np.arange(round(0.02 * rate_hz)) / rate_hz
    formants_hz = np.array([300.0, 900.0, 2200.0]) + np.array([450.0, 1200.0, 800.0]) * chance.uniform(3)
    parts = [
        size * np.exp(-time_s * np.pi * width_hz) * np.sin(2.0 * np.pi * hertz * time_s)
        for hertz, width_hz, size in zip(formants_hz, (80.0, 110.0, 160.0), (1.0, 0.5, 0.25), strict=True)
    ]
    return np.asarray(np.sum(parts, axis=0))


def _blows(chance: Stream, rate_hz: int, *, strokes: int, blows: int, every_s: float, decay_s: float) -> Floats32:
    """Return blows of damped noise, some in each stroke, a rest between strokes."""
    rest_s = 0.25
    heard = np.zeros(round((strokes * (blows * every_s + rest_s)) * rate_hz) + rate_hz // 4)
    time_s = np.arange(round(6.0 * decay_s * rate_hz)) / rate_hz
    ring = np.exp(-time_s / decay_s) * np.sin(2.0 * np.pi * (1800.0 + 1500.0 * chance.uniform(1)[0]) * time_s)
    for stroke in range(strokes):
        for blow in range(blows):
            at = round((stroke * (blows * every_s + rest_s) + blow * every_s) * rate_hz)
            noise = chance.normal(len(time_s)) * np.exp(-time_s / decay_s)
            heard[at : at + len(time_s)] += (0.7 + 0.6 * chance.uniform(1)[0]) * (ring + 0.8 * noise)
    return np.asarray(heard, dtype=np.float32)
