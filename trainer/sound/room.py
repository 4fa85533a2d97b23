"""The bay's late sound: a decay of noise whose strength follows from volume and decay time."""

from __future__ import annotations

import hashlib
import math
from dataclasses import replace

import numpy as np

from trainer.arrays import Floats
from trainer.circuit.chance import Stream
from trainer.circuit.profile import Profile

LATE_FROM_S = 0.02
"""Where single reflections end and the decay begins: from memory."""


HALL_VOLUME_M3, HALL_DECAY_S = 700.0, 0.6
"""A big, empty hall of concrete with its doors shut: from memory."""


def in_hall(profile: Profile) -> Profile:
    """Return the engine in a big, empty hall instead of its bay, where single pulses run together."""
    room = replace(profile.room, volume_m3=HALL_VOLUME_M3, decay_s=HALL_DECAY_S)
    digest = hashlib.sha256(f"{profile.digest} in a hall".encode()).hexdigest()
    return replace(profile, room=room, digest=digest, bay=profile)


def sabine_decay_s(volume_m3: float, absorption_m2: float) -> float:
    """Return the time to fall by 60 dB (Sabine: 24·ln 10·V/(c·A), 0.161 V/A at 343 m/s)."""
    return 24.0 * math.log(10.0) * volume_m3 / (343.2 * absorption_m2)


def absorption_m2(volume_m3: float, decay_s: float) -> float:
    """Return the equivalent absorption area of a room by its decay time (Sabine)."""
    return sabine_decay_s(volume_m3, 1.0) / decay_s


def late_decay(profile: Profile, frames: int, rate_hz: int) -> Floats:
    """Return the late impulse response at the two ears for 1 Pa at one metre, shape (ear, frame).

    The diffuse field of a small source holds 16π/A of its mean square at one metre (statistical room acoustics).
    """
    room = profile.room
    time_s = np.arange(frames) / rate_hz
    envelope = 10.0 ** (-3.0 * time_s / room.decay_s)
    envelope[time_s < LATE_FROM_S] = 0.0
    chance = Stream(0, f"room of {profile.name}")
    noise = np.stack([chance.normal(frames) for _ear in range(2)]) * envelope
    # air and soft things take the highs: a gentle fall above 2 kHz
    smooth = np.stack([np.convolve(row, [0.25, 0.5, 0.25], mode="same") for row in noise])
    energy = 16.0 * math.pi / absorption_m2(room.volume_m3, room.decay_s) * 10.0 ** (-6.0 * LATE_FROM_S / room.decay_s)
    return np.asarray(smooth * np.sqrt(energy / (smooth**2).sum(axis=1, keepdims=True)))
