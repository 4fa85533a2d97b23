"""How loud, bright and one-sided many pulses are at a place, without rendering them.

A train of pulses sounds in lines at multiples of its rate, and between them as far as it is off the beat. So the paths
are taken at the lines and averaged around them once, as cross spectra between injectors; then each pulse is one
quadratic form.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property

import numpy as np
import scipy.fft

from trainer.arrays import Complex64, Floats, Floats32
from trainer.circuit.chance import Stream
from trainer.circuit.profile import Profile, Schedule
from trainer.circuit.solve import SAMPLE_RATE_HZ
from trainer.sound.iec_61672 import a_weighting_gain
from trainer.sound.levels import level_db
from trainer.sound.limiter import limiter_gain_db, threshold_dba
from trainer.sound.paths import TEMPLATE_FRAMES, paths_of
from trainer.sound.places import places_of
from trainer.sound.render import pulse_frames

LEVEL, CENTROID, BALANCE = range(3)
"""Columns of the traits: level in dB(A), power-weighted mean frequency in Hz, left over right in dB(A)."""


@dataclass(frozen=True)
class Ears:
    """A profile heard from some places: its paths at the lines of its test and around them."""

    profile: Profile
    places: tuple[str, ...]

    @property
    def frames(self) -> int:
        """How long a pulse of force is, from one to the next, at the sound's rate."""
        return pulse_frames(self.profile.schedule)

    @cached_property
    def weight(self) -> Complex64:
        """Cross spectra between sources, shape (place, ear, band, source, source), a band for each line.

        It takes a second, and an engine whose slots are all solved already never asks for it.
        """
        profile, frames = self.profile, self.frames
        gain = a_weighting_gain(np.fft.rfftfreq(TEMPLATE_FRAMES, 1.0 / SAMPLE_RATE_HZ))
        in_step = _in_step(profile.schedule, np.fft.rfftfreq(frames, 1.0 / SAMPLE_RATE_HZ))
        paths = ((paths_of(profile, place) * gain).astype(np.complex64) for place in self.places)
        return np.stack([_banded(one, frames, in_step) for one in paths])

    def power(self, force_n: Floats) -> Floats:
        """Return the mean square A-weighted pressure of pulses repeated at the test's rate.

        `force_n` has shape (pulse, source, frame) at the sound's rate; the result (pulse, place, ear, band).
        """
        spectrum = scipy.fft.rfft(force_n, self.frames, axis=2).astype(np.complex64)
        bands = np.ascontiguousarray(np.moveaxis(spectrum, 2, 0))
        scale, beside = self._scale(), bands.view(np.float32)
        result = np.zeros((len(force_n), len(self.places), 2, bands.shape[0]))
        for place in range(len(self.places)):
            for ear in range(2):
                turned = bands @ self.weight[place, ear]
                # the real part of a product with what is conjugate: real and imaginary parts side by side
                result[:, place, ear] = scale * np.einsum("bpc,bpc->pb", turned.view(np.float32), beside)
        return np.maximum(result, 0.0)

    def scatter(self, force_n: Floats, column: int) -> Floats:
        """Return the mean power by which pulses of one plate differ from their mean, shape (place, ear, band).

        `force_n` has shape (variant, blow and pull, frame): drawn by chance, differences add as powers do.
        """
        spectrum = scipy.fft.rfft(force_n, self.frames, axis=2).astype(np.complex64)
        apart = spectrum - spectrum.mean(axis=0)
        blow, pull = apart[:, 0], apart[:, 1]
        crossed = (blow * pull.conj()).mean(axis=0)
        blows, pulls = ((one.real**2 + one.imag**2).mean(axis=0) for one in (blow, pull))
        shared = np.stack([blows, pulls, 2.0 * crossed.real, -2.0 * crossed.imag])
        power = np.einsum("kpef,kf->pef", self._own_weight[column], shared)
        return np.asarray(np.maximum(self._scale() * power, 0.0), dtype=np.float64)

    @cached_property
    def _own_weight(self) -> Floats32:
        """Each plate's own part of `weight`: blow, pull, cross part; shape (plate, part, place, ear, band)."""
        count = len(self.profile.cylinders)
        blow, pull = np.arange(count), count + np.arange(count)
        parts = (self.weight[..., blow, blow].real, self.weight[..., pull, pull].real,
                 self.weight[..., blow, pull].real, self.weight[..., blow, pull].imag)  # fmt: skip
        return np.ascontiguousarray(np.moveaxis(np.stack(parts), -1, 0))

    def _scale(self) -> float:
        return 2.0 / (self.frames * SAMPLE_RATE_HZ) * self.profile.schedule.pulses_per_s

    def traits(self, power: Floats) -> Floats:
        """Return the traits, shape (place, trait), of a power of shape (place, ear, band); a burst is as solved."""
        frequency = np.fft.rfftfreq(self.frames, 1.0 / SAMPLE_RATE_HZ)
        both = power.mean(axis=1)
        total = both.sum(axis=1)
        level = level_db(total)
        ears = level_db(power.sum(axis=2))
        centroid = (both * frequency).sum(axis=1) / np.maximum(total, 1e-30)
        return np.stack([level, centroid, ears[:, 0] - ears[:, 1]], axis=1)

    def heard(self, sounds: Sequence[Floats]) -> Floats:
        """Return what a listener hears of a whole test, shape (slot, place, trait): the burst, its first slot, limited.

        `sounds` are the traits of each slot; how far the limiter goes depends on the loudest of the others.
        """
        heard = np.array(sounds)
        for place, limit_dba in enumerate(self._limits_dba):
            burst_dba, *others = heard[:, place, LEVEL].tolist()
            heard[0, place, LEVEL] += limiter_gain_db(burst_dba, limit_dba, max(others))
        return heard

    @cached_property
    def _limits_dba(self) -> tuple[float, ...]:
        """The limiter's threshold at each place."""
        return tuple(threshold_dba(self.profile, place) for place in self.places)


def ears_of(profile: Profile, places: Sequence[str]) -> Ears:
    """Return an engine heard from some places; raises KeyError for a place it does not have."""
    known = places_of(profile)
    return Ears(profile, tuple(place for place in places if known[place]))


def _in_step(schedule: Schedule, frequency_hz: Floats) -> Floats:
    """Return which share of a pulse's power adds as waves do from pulse to pulse, by how far they are off the beat."""
    off_s = schedule.timing_jitter_s * np.abs(Stream(0, "off the beat").normal(256))
    return np.asarray(np.abs(np.exp(-2j * np.pi * frequency_hz[:, None] * off_s).mean(axis=1)) ** 2)


def _banded(paths: Complex64, frames: int, in_step: Floats) -> Complex64:
    """Return cross spectra, shape (ear, band, source, source), of paths (source, ear, frequency).

    A share of each is that at the line, the rest the mean over all that lies nearer to it than to another.
    """
    count, ears, bins = paths.shape
    spacing = TEMPLATE_FRAMES / frames
    weight = np.zeros((ears, len(in_step), count, count), dtype=np.complex64)
    by_ear = np.ascontiguousarray(paths.transpose(1, 0, 2))
    # the line at 0 Hz and the highest half band are left out: nothing sounds there
    for band in range(1, min(len(in_step), int(bins / spacing - 0.5))):
        low, high = round((band - 0.5) * spacing), round((band + 0.5) * spacing)
        around, line = by_ear[:, :, low:high], by_ear[:, :, round(band * spacing), None]
        share = np.float32(in_step[band])
        weight[:, band] = share * (line @ line.conj().transpose(0, 2, 1))
        weight[:, band] += (1 - share) / (high - low) * (around @ around.conj().transpose(0, 2, 1))
    return weight
