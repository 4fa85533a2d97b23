"""How loud, bright and one-sided many pulses are at a place, without rendering them.

A pulse of force is short and smooth in frequency; what an injector's body and the bay do to it is long. So the paths
are averaged over bands once, as cross spectra between injectors, and each pulse is one quadratic form.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
import scipy.fft

from trainer.arrays import Complex64, Floats
from trainer.circuit.profile import Profile
from trainer.circuit.solve import SAMPLE_RATE_HZ
from trainer.sound.iec_61672 import a_weighting_gain
from trainer.sound.levels import level_db
from trainer.sound.render import TEMPLATE_FRAMES, limiter_gain_db, paths_of, threshold_dba

PULSE_FRAMES = 512
"""What a pulse of force is transformed over: 10.7 ms, bands of 94 Hz."""

FINE = TEMPLATE_FRAMES // PULSE_FRAMES
LEVEL, CENTROID, BALANCE = range(3)
"""Columns of the traits: level in dB(A), power-weighted mean frequency in Hz, left over right in dB(A)."""


@dataclass(frozen=True, slots=True)
class Ears:
    """A profile heard from some places; `weight` has shape (place, ear, band, source, source)."""

    profile: Profile
    places: tuple[str, ...]
    weight: Complex64

    def power(self, force_n: Floats) -> Floats:
        """Return the mean square A-weighted pressure of pulses repeated at the test's rate.

        `force_n` has shape (pulse, source, frame) at the sound's rate; the result (pulse, place, ear, band).
        """
        spectrum = scipy.fft.rfft(force_n[:, :, :PULSE_FRAMES], PULSE_FRAMES, axis=2).astype(np.complex64)
        bands = np.moveaxis(spectrum, 2, 0)
        scale = self._scale()
        result = np.zeros((len(force_n), len(self.places), 2, PULSE_FRAMES // 2 + 1))
        for place in range(len(self.places)):
            for ear in range(2):
                turned = bands @ self.weight[place, ear]
                result[:, place, ear] = scale * np.einsum("bpc,bpc->pb", turned, bands.conj()).real
        return np.maximum(result, 0.0)

    def scatter(self, force_n: Floats, column: int) -> Floats:
        """Return the mean power by which pulses of one plate differ from their mean, shape (place, ear, band).

        `force_n` has shape (variant, blow and pull, frame): drawn by chance, differences add as powers do.
        """
        spectrum = scipy.fft.rfft(force_n[:, :, :PULSE_FRAMES], PULSE_FRAMES, axis=2).astype(np.complex64)
        apart = spectrum - spectrum.mean(axis=0)
        shared = np.einsum("vaf,vbf->fab", apart, apart.conj()) / len(apart)
        own = [column, len(self.profile.cylinders) + column]
        weight = self.weight[..., own, :][..., own]
        return np.asarray(np.maximum(self._scale() * np.einsum("pefab,fab->pef", weight, shared).real, 0.0))

    def _scale(self) -> float:
        return 2.0 * FINE / (TEMPLATE_FRAMES * SAMPLE_RATE_HZ) * self.profile.schedule.pulses_per_s

    def traits(self, power: Floats, *, burst: bool) -> Floats:
        """Return the traits, shape (place, trait), of a power of shape (place, ear, band); a burst is limited."""
        frequency = np.fft.rfftfreq(PULSE_FRAMES, 1.0 / SAMPLE_RATE_HZ)
        both = power.mean(axis=1)
        total = both.sum(axis=1)
        level = level_db(total)
        if burst:
            thresholds = [threshold_dba(self.profile, place) for place in self.places]
            level = level + np.array([limiter_gain_db(*one) for one in zip(level.tolist(), thresholds, strict=True)])
        ears = level_db(power.sum(axis=2))
        centroid = (both * frequency).sum(axis=1) / np.maximum(total, 1e-30)
        return np.stack([level, centroid, ears[:, 0] - ears[:, 1]], axis=1)


def ears_of(profile: Profile, places: Sequence[str]) -> Ears:
    """Average a profile's paths over bands; raises KeyError for a place it does not have."""
    gain = a_weighting_gain(np.fft.rfftfreq(TEMPLATE_FRAMES, 1.0 / SAMPLE_RATE_HZ))
    weights = []
    for place in places:
        paths = (paths_of(profile, place) * gain).astype(np.complex64)
        weights.append(_banded(paths))
    return Ears(profile, tuple(places), np.stack(weights))


def _banded(paths: Complex64) -> Complex64:
    """Return mean cross spectra, shape (ear, band, source, source), of paths (source, ear, frequency)."""
    count, ears, _bins = paths.shape
    bands = PULSE_FRAMES // 2
    # the highest half band is left out: nothing sounds at 24 kHz
    middle = paths[:, :, FINE // 2 : FINE // 2 + (bands - 1) * FINE].reshape(count, ears, bands - 1, FINE)
    shaped = np.ascontiguousarray(middle.transpose(1, 2, 0, 3))
    weight = np.zeros((ears, bands + 1, count, count), dtype=np.complex64)
    weight[:, 1:bands] = shaped @ shaped.conj().transpose(0, 1, 3, 2) / FINE
    return weight
