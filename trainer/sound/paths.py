"""How a push on each injector's body comes to the ear at a place: body, way and late sound, as one response."""

from __future__ import annotations

from functools import lru_cache

import numpy as np

from trainer.arrays import Complex, Complex64
from trainer.circuit.profile import ByContent, Profile
from trainer.circuit.solve import SAMPLE_RATE_HZ
from trainer.sound.body import body_response
from trainer.sound.iec_61672 import a_weighting_gain
from trainer.sound.places import contact_of, ear_response
from trainer.sound.room import late_decay

TEMPLATE_FRAMES = 2**15
"""How long one pulse is followed: 0.68 s, past the shipped rooms' decay."""


def paths_of(profile: Profile, place: str) -> Complex64:
    """Return force to pressure at each ear, shape (source, ear, frequency); raises KeyError for an unknown place.

    The sources are those of `body_response`.
    """
    return _paths(ByContent(profile), place)


@lru_cache(maxsize=16)  # four megabytes each
def _paths(keyed: ByContent, place: str) -> Complex64:
    frequency = np.fft.rfftfreq(TEMPLATE_FRAMES, 1.0 / SAMPLE_RATE_HZ)
    bodies, late = _everywhere(keyed)
    reach = 1.0 if contact_of(place) is None else 0.0
    ways = ear_response(keyed.profile, place, frequency) + reach * late
    return np.asarray(bodies * np.concatenate([ways, ways]), dtype=np.complex64)


@lru_cache(maxsize=4)
def _everywhere(keyed: ByContent) -> tuple[Complex, Complex]:
    """Return what is the same at every place: the bodies (source, 1, frequency), the late sound (1, ear, frequency)."""
    frequency = np.fft.rfftfreq(TEMPLATE_FRAMES, 1.0 / SAMPLE_RATE_HZ)
    late = np.fft.rfft(late_decay(keyed.profile, TEMPLATE_FRAMES, SAMPLE_RATE_HZ), axis=1)
    return body_response(keyed.profile, frequency)[:, None, :], np.asarray(late[None, :, :])


def loudest_db(profile: Profile, place: str) -> float:
    """Return how loud the same blow is at most, from any injector, in dB(A) of no reference."""
    return _loudest_db(ByContent(profile), place)


@lru_cache(maxsize=256)
def _loudest_db(keyed: ByContent, place: str) -> float:
    paths = paths_of(keyed.profile, place)[: len(keyed.profile.cylinders)]
    gain = a_weighting_gain(np.fft.rfftfreq(TEMPLATE_FRAMES, 1.0 / SAMPLE_RATE_HZ))
    power = ((np.abs(paths) * gain) ** 2).sum(axis=(1, 2))
    return float(10.0 * np.log10(power.max()))
