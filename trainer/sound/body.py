"""From forces in an injector to pressure at one metre: a modal body, different for each cylinder.

Each injector is two sources, the armature's blow and the pole's pull: both drive its modes, by different strengths.
"""

from __future__ import annotations

import numpy as np

from trainer.arrays import Complex, Floats
from trainer.circuit.chance import Stream
from trainer.circuit.profile import Profile


def body_response(profile: Profile, frequency_hz: Floats) -> Complex:
    """Return pressure over force at one metre, in Pa/N, shape (source, frequency).

    The sources are the blows of all cylinders, then the pulls of all cylinders. A sum of ringing modes: the surface
    velocity of each, radiated as by a small source. Frequencies and strengths differ a little from cylinder to
    cylinder, by the profile's own name, so an engine always sounds like itself.
    """
    body = profile.body
    chance = Stream(0, f"body of {profile.name}")
    numbers = len(profile.cylinders)
    response: Complex = np.zeros((2, numbers, len(frequency_hz)), dtype=complex)
    for mode in body.modes:
        pitch = mode.frequency_hz * (1.0 + body.spread * (2.0 * chance.uniform(numbers) - 1.0))
        varied = 1.0 + body.spread * (2.0 * chance.uniform(numbers) - 1.0)
        ratio = frequency_hz[None, :] / pitch[:, None]
        ringing = varied[:, None] * ratio * 1j / (1.0 - ratio**2 + 2j * mode.damping * ratio)
        response[0] += mode.strength * ringing
        response[1] += (mode.strength if mode.elastic is None else mode.elastic) * ringing
    return np.asarray(body.radiation_pa_m_per_n * response.reshape(2 * numbers, -1))
