"""Renders the sounds of the set-up: an engine's hum and buzz in the bed, at the levels of the cases."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache
from typing import Literal

import numpy as np

from trainer.cases.single_case.shipped import case_named
from trainer.circuit.chance import Stream
from trainer.circuit.drive import slots_of
from trainer.circuit.faults import faulty_circuit
from trainer.circuit.solve import SAMPLE_RATE_HZ, solve_test
from trainer.output.playback import Samples
from trainer.sound.bed import BedKind, bed_pa
from trainer.sound.levels import FULL_SCALE_PA
from trainer.sound.render import PRE_ROLL_S, RAMP_S, TAIL_S, Bed, render

CASE = "faint_hum_on_three"
"""The case whose open slot gives the hum of the set-up, and a good slot its buzz."""

BED_DBA = 34.0
BURST_S, GAP_S = 0.7, 0.45
MOST_HUMS = 4
LOW_HZ, HIGH_HZ = (100.0, 150.0), (400.0, 1600.0)
PHASE_HZ, PHASE_DB, QUIETER_DB = 200.0, -32.0, -6.0
"""Woods et al. 2017 (doi 10.3758/s13414-017-1361-2): a 200 Hz tone, one 6 dB quieter, one with its sides opposed."""

Part = Literal["side", "comfort", "bed", "hum", "low", "phase"]


@dataclass(frozen=True, slots=True)
class SetupSound:
    """A request for one sound of the set-up.

    `what` is a side (`left`, `right`, `both`) or which hum comes first (`low`, `high`); `count` the number of bursts of
    hum; `level_db` their level under the real hum; `order` the tones of a phase trial: `same`, `quiet`, `opposed`.
    """

    part: Part
    what: str = ""
    count: int = 0
    level_db: float = 0.0
    order: tuple[str, ...] = ()
    seed: int = 1


def setup_sound(wanted: SetupSound) -> Samples:
    """Return the sound, float32 of shape (frame, channel), with bed before and after it."""
    parts = {"side": _side, "comfort": _comfort, "bed": _bed_alone, "hum": _hums, "low": _lows, "phase": _tones}
    inside = parts[wanted.part](wanted)
    lead, tail = round(PRE_ROLL_S * SAMPLE_RATE_HZ), round(TAIL_S * SAMPLE_RATE_HZ)
    samples = _bed(lead + len(inside) + tail, wanted.seed)
    if wanted.part == "side" and wanted.what != "both":
        samples[:, 1 if wanted.what == "left" else 0] = 0.0
    samples[lead : lead + len(inside)] += inside
    return _ramped(samples)


def _bed(frames: int, seed: int) -> Samples:
    return (bed_pa(BedKind.QUIET_BAY, BED_DBA, frames, SAMPLE_RATE_HZ, seed) / FULL_SCALE_PA).astype(np.float32)


def _ramped(samples: Samples) -> Samples:
    ramp = round(RAMP_S * SAMPLE_RATE_HZ)
    fade = (0.5 - 0.5 * np.cos(np.pi * np.arange(ramp) / ramp)).astype(np.float32)[:, None]
    samples[:ramp] *= fade
    samples[-ramp:] *= fade[::-1]
    return samples


@cache
def _voices() -> tuple[Samples, Samples]:
    """Return a good slot and a humming slot without bed, each of one burst's length."""
    case = case_named(CASE)
    hum_slot = case.faults[0].cylinders[0]
    good_slot = next(number for number in case.profile.cylinders if number != hum_slot)
    chosen = [slot for slot in slots_of(case.profile) if slot.number in (good_slot, hum_slot)]
    solved = solve_test(faulty_circuit(case.profile, case.faults), chosen)
    sound = render(solved, "front", Bed(BedKind.QUIET_BAY, -100.0), 1)
    voices = {}
    for slot in sound.slots:
        start = round((slot.window.start_s + 0.1) * SAMPLE_RATE_HZ)
        part = sound.samples[start : start + round(BURST_S * SAMPLE_RATE_HZ)].copy()
        voices[slot.window.slot.number] = _ramped(part)
    return voices[good_slot], voices[hum_slot]


def _gain(level_db: float) -> np.float32:
    return np.float32(10.0 ** (level_db / 20.0))


def _spaced(bursts: list[Samples]) -> Samples:
    gap = np.zeros((round(GAP_S * SAMPLE_RATE_HZ), 2), np.float32)
    return np.concatenate([piece for burst in bursts for piece in (burst, gap)])


def _side(wanted: SetupSound) -> Samples:
    good, _hum = _voices()
    mono = good.mean(axis=1, keepdims=True) * np.float32(0.7)
    on = {"left": (1.0, 0.0), "right": (0.0, 1.0), "both": (1.0, 1.0)}[wanted.what]
    return _spaced([(mono * np.array(on, np.float32)).astype(np.float32)])


def _comfort(_wanted: SetupSound) -> Samples:
    good, _hum = _voices()
    return _spaced([good, good])


def _bed_alone(_wanted: SetupSound) -> Samples:
    return np.zeros((2 * SAMPLE_RATE_HZ, 2), np.float32)


def _hums(wanted: SetupSound) -> Samples:
    """Return the hums in a stretch of fixed length, so that the length does not give their number away."""
    _good, hum = _voices()
    step = round((BURST_S + GAP_S) * SAMPLE_RATE_HZ)
    keys = Stream(wanted.seed, "where the hums are").uniform(MOST_HUMS)
    inside = np.zeros((MOST_HUMS * step, 2), np.float32)
    for place in np.argsort(keys)[: wanted.count]:
        inside[place * step : place * step + len(hum)] = hum * _gain(wanted.level_db)
    return inside


def _lows(wanted: SetupSound) -> Samples:
    bands = [LOW_HZ, HIGH_HZ] if wanted.what == "low" else [HIGH_HZ, LOW_HZ]
    return _spaced([_band(band, wanted.seed) for band in bands])


def _band(band_hz: tuple[float, float], seed: int) -> Samples:
    """Return a burst of noise in a band, in A-weighting at least as loud as the whole hum."""
    frames = round(BURST_S * SAMPLE_RATE_HZ)
    spectrum = np.fft.rfft(Stream(seed, f"band {band_hz[0]:.0f}").normal(frames))
    frequency = np.fft.rfftfreq(frames, 1.0 / SAMPLE_RATE_HZ)
    spectrum[(frequency < band_hz[0]) | (frequency > band_hz[1])] = 0.0
    filtered = np.fft.irfft(spectrum, frames)
    # a low sound needs some 16 dB more to be as loud (A-weighting at 125 Hz, IEC 61672-1 table 3)
    level_db = -44.0 if band_hz == LOW_HZ else -60.0
    one = (filtered / np.std(filtered)).astype(np.float32) * _gain(level_db)
    return _ramped(np.repeat(one[:, None], 2, axis=1))


def _tones(wanted: SetupSound) -> Samples:
    frames = round(BURST_S * SAMPLE_RATE_HZ)
    tone = np.sin(2.0 * np.pi * PHASE_HZ * np.arange(frames) / SAMPLE_RATE_HZ).astype(np.float32) * _gain(PHASE_DB)
    shapes = {"same": (1.0, 1.0), "quiet": (_gain(QUIETER_DB),) * 2, "opposed": (1.0, -1.0)}
    return _spaced([_ramped(tone[:, None] * np.array(shapes[name], np.float32)) for name in wanted.order])
