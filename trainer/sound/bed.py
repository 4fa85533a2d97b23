"""The sound of the workshop, by kind and A-weighted level: a steady part that never repeats, and events such as doors.

It depends on kind, seed and length only, never on the test. There are no events in the first seconds, so that a slot
that is asked for again is heard over the steady part alone.
"""

from __future__ import annotations

from collections.abc import Sequence
from enum import StrEnum
from functools import lru_cache

import numpy as np
import scipy.fft

from trainer.arrays import Floats, Floats32
from trainer.circuit.chance import Stream
from trainer.sound.bay import Event, babble, clank, door, impact_wrench, ratchet
from trainer.sound.iec_61672 import a_weighting_gain
from trainer.sound.levels import REFERENCE_PA

QUIET_FOR_S = 3.0
"""How long only the steady part is heard: long enough for a single slot with the bed before and after it."""

FAR_DB, NEAR_DB, LOUD_DB = -4.0, 2.0, 7.0
"""Level classes of events: dB over the bed's own level while they last."""


class BedKind(StrEnum):
    """What makes the noise."""

    QUIET_BAY = "quiet_bay"
    VENTILATION = "ventilation"
    COMPRESSOR = "compressor"


EVENTS: dict[BedKind, tuple[tuple[Event, float, float], ...]] = {
    BedKind.QUIET_BAY: ((door, FAR_DB, 14.0), (ratchet, FAR_DB, 16.0), (babble, FAR_DB, 18.0)),
    BedKind.VENTILATION: (
        (door, NEAR_DB, 16.0), (ratchet, FAR_DB, 12.0), (babble, FAR_DB, 14.0), (clank, NEAR_DB, 16.0),
    ),
    BedKind.COMPRESSOR: (
        (ratchet, NEAR_DB, 9.0), (clank, LOUD_DB, 11.0), (babble, NEAR_DB, 12.0), (impact_wrench, LOUD_DB, 16.0),
    ),
}  # fmt: skip
"""The events of each kind of bed, their level class, and the mean time between two of them in seconds: from memory."""

SLOPES = {BedKind.QUIET_BAY: 0.75, BedKind.VENTILATION: 0.5, BedKind.COMPRESSOR: 0.6}
"""The noise of each kind falls with frequency to this power: from memory."""

FAN_TONES, COMPRESSOR_TONES, IDLE_STRENGTH = (0.1, 0.12, 0.08), (0.05, 0.15, 0.1, 0.08, 0.0, 0.05), 0.2
"""How strong tones and a far engine are over the noise, A-weighted: from memory."""

STEP = 48
"""Frames from one value of what changes slowly to the next: a millisecond."""


def bed_pa(kind: BedKind, level_dba: float, frames: int, rate_hz: int, seed: int) -> Floats32:
    """Return the bed at both ears, shape (frame, ear), in pascal; its steady part has the A-weighted level."""
    # laid out ear after ear, as slots are where it is added to them
    return (_bed(kind, frames, rate_hz, seed) * np.float32(REFERENCE_PA * 10.0 ** (level_dba / 20.0))).T


@lru_cache(maxsize=3)  # a case is rendered again and again with one bed; eight megabytes each
def _bed(kind: BedKind, frames: int, rate_hz: int, seed: int) -> Floats32:
    """Return a bed whose steady part has an A-weighted mean square of one, shape (ear, frame)."""
    heard = _noise(kind, frames, rate_hz, seed)
    if kind is BedKind.COMPRESSOR:
        heard *= _cycles(frames, rate_hz, seed)
        heard += _turning(50.0, COMPRESSOR_TONES, frames, rate_hz, seed)
    elif kind is BedKind.VENTILATION:
        blades_hz, fires_hz = np.array([50.0, 8.0]) * Stream(seed, "fan and engine").uniform(2) + [95.0, 24.0]
        heard += _turning(blades_hz, FAN_TONES, frames, rate_hz, seed)
        heard += _idle(fires_hz, frames, rate_hz, seed)
    for place, (event, level_db, every_s) in enumerate(EVENTS[kind]):
        _add(heard, event, level_db, every_s, rate_hz, Stream(seed, f"bay {kind} {place}"))
    return heard


def _noise(kind: BedKind, frames: int, rate_hz: int, seed: int) -> Floats32:
    """Return falling noise of an A-weighted mean square of one, shape (ear, frame); it does not repeat.

    Low sound reaches both ears alike, high sound from everywhere.
    """
    whole = scipy.fft.next_fast_len(frames, real=True)
    alike, apart, weighted = _filters(kind, whole, rate_hz)
    white = [Stream(seed, f"bed {kind} {part}").bytes(whole) for part in range(3)]
    # their mean is no matter: nothing under 30 Hz passes
    shared, *spectra = (scipy.fft.rfft(one, overwrite_x=True) for one in white)
    shared *= alike
    power = 0.0
    for own in spectra:
        np.multiply(own, apart, out=own)
        np.add(own, shared, out=own)
        power += float((own.real**2 + own.imag**2) @ weighted) / whole**2
    # scaled by the noise that was drawn, so that the level is exact
    size = np.float32(1.0 / np.sqrt(power))
    heard = np.empty((2, frames), dtype=np.float32)
    for ear, own in enumerate(spectra):
        np.multiply(scipy.fft.irfft(own, whole, overwrite_x=True)[:frames], size, out=heard[ear])
    return heard


@lru_cache(maxsize=2)
def _filters(kind: BedKind, frames: int, rate_hz: int) -> tuple[Floats32, Floats32, Floats32]:
    """Return the gain of what both ears have alike, of what each has apart, and the weight of power, over frequency."""
    frequency = np.fft.rfftfreq(frames, 1.0 / rate_hz)
    gain = (np.maximum(frequency, 20.0) / 100.0) ** -SLOPES[kind] / (1.0 + (frequency / 6000.0) ** 2)
    gain[frequency < 30.0] = 0.0
    alike = 1.0 / np.sqrt(1.0 + (frequency / 500.0) ** 2)
    parts = (gain * alike, gain * np.sqrt(1.0 - alike * alike), a_weighting_gain(frequency) ** 2)
    return tuple(part.astype(np.float32) for part in parts)  # type: ignore[return-value]


def _turning(frequency_hz: float, strengths: Sequence[float], frames: int, rate_hz: int, seed: int) -> Floats32:
    """Return a tone and its harmonics that drift by half a per cent and swell by a third, as whatever turns does.

    Strengths are those of each over the noise, A-weighted.
    """
    chance = Stream(seed, "what turns")
    knots = frames // rate_hz + 2
    drift, swell = 1.0 + np.array([[0.005], [0.3]]) * np.clip(chance.normal(2 * knots), -2.0, 2.0).reshape(2, knots)
    at = np.arange(0.0, frames, STEP)
    turns = np.cumsum(np.interp(at / rate_hz, np.arange(knots), drift)) * frequency_hz * STEP / rate_hz
    phase = _fine(2.0 * np.pi * turns, frames)
    size = _fine(np.interp(at / rate_hz, np.arange(knots), swell), frames)
    heard = np.zeros(frames, dtype=np.float32)
    for number, strength in enumerate(strengths, start=1):
        weight = float(a_weighting_gain(np.array(number * frequency_hz)))
        heard += np.float32(strength * np.sqrt(2.0) / weight) * np.sin(np.float32(number) * phase)
    return heard * size


def _fine(coarse: Floats, frames: int) -> Floats32:
    """Return a slowly changing trace, given every STEP frames, at every frame; angles may be many turns."""
    steps = np.append(np.diff(coarse), coarse[-1] - coarse[-2])
    within = np.arange(STEP, dtype=np.float32) / np.float32(STEP)
    start = np.where(steps > 1.0, np.mod(coarse, 2.0 * np.pi), coarse).astype(np.float32)
    return (start[:, None] + steps[:, None].astype(np.float32) * within).reshape(-1)[:frames]


def _idle(fires_hz: float, frames: int, rate_hz: int, seed: int) -> Floats32:
    """Return another engine at idle, far off: low blows, each a little early or late."""
    chance = Stream(seed, "another engine")
    time_s = np.arange(round(0.08 * rate_hz)) / rate_hz
    blow = np.exp(-time_s / 0.015) * np.sin(2.0 * np.pi * 85.0 * time_s) + 0.3 * np.exp(-time_s / 0.004) * np.sin(
        2.0 * np.pi * 420.0 * time_s
    )
    count = int(frames / rate_hz * fires_hz)
    late, sizes = 0.02 * chance.normal(count), 1.0 + 0.2 * chance.normal(count)
    heard = np.zeros(frames + len(blow))
    for start, size in zip(
        np.round((np.arange(count) + np.abs(late)) * rate_hz / fires_hz).astype(int), sizes, strict=True
    ):
        heard[start : start + len(blow)] += size * blow
    weighted = np.abs(np.fft.rfft(blow)) ** 2 @ a_weighting_gain(np.fft.rfftfreq(len(blow), 1.0 / rate_hz)) ** 2
    power = 2.0 * weighted / len(blow) * fires_hz / rate_hz
    return np.asarray(IDLE_STRENGTH / np.sqrt(power) * heard[:frames], dtype=np.float32)


def _cycles(frames: int, rate_hz: int, seed: int) -> Floats32:
    """Return how loud a compressor runs: for some seconds on, then off and 6 dB less, with the beat of its piston."""
    on_s, off_s, first = np.array([8.0, 8.0, 1.0]) * Stream(seed, "compressor").uniform(3) + [6.0, 4.0, 0.0]
    time_s = np.arange(0.0, frames, STEP) / rate_hz
    # it runs in the first seconds: what is heard before the first slot tells how loud the bay is
    within = np.mod(time_s - QUIET_FOR_S - first * on_s, on_s + off_s)
    gate = np.clip(np.minimum(within - off_s, on_s + off_s - within) / 0.4, 0.0, 1.0)
    gate = np.where(time_s < QUIET_FOR_S + first * on_s, 1.0, gate)
    return _fine((0.5 + 0.5 * gate) * (1.0 + 0.2 * np.sin(2.0 * np.pi * 12.25 * time_s)), frames)


def _add(heard: Floats32, event: Event, level_db: float, every_s: float, rate_hz: int, chance: Stream) -> None:
    """Add one kind of event at random times, each from a random side."""
    now_s = QUIET_FOR_S
    length_s = heard.shape[1] / rate_hz
    while True:
        waits, side, seed = chance.uniform(3)
        now_s += 0.2 - every_s * float(np.log1p(-waits))
        if now_s >= length_s:
            return
        sound = event(Stream(int(seed * 2**32), "event"), rate_hz)
        spectrum = np.abs(np.fft.rfft(sound)) * a_weighting_gain(np.fft.rfftfreq(len(sound), 1.0 / rate_hz))
        size = 10.0 ** (level_db / 20.0) * len(sound) / np.sqrt(2.0 * (spectrum**2).sum())
        start = round(now_s * rate_hz)
        # level and time between the ears, for a head of 0.66 ms
        for ear, towards in enumerate((1.0 - 2.0 * side, 2.0 * side - 1.0)):
            at = start + round(0.00033 * (1.0 - towards) * rate_hz)
            part = sound[: max(heard.shape[1] - at, 0)]
            heard[ear, at : at + len(part)] += np.float32(size * 10.0 ** (0.15 * towards)) * part
        now_s += len(sound) / rate_hz
