"""From forces in an injector to pressure at one metre: a modal body, different for each cylinder.

Each injector is two sources, the armature's blow and the pole's pull: both drive its modes, by different strengths.
"""

from __future__ import annotations

import numpy as np

from trainer.arrays import Complex, Floats
from trainer.circuit.chance import Stream
from trainer.circuit.profile import Profile
from trainer.circuit.solenoid import Magnets


def bending_n(magnets: Magnets, pull_n: Floats, position_m: Floats) -> Floats:
    """Return what bends an injector's body: the pull, as far as the seat or the spring and not the upper stop takes it.

    A plate that has landed presses on a stop beside the pole: the pull and the stop's push meet there and bend nothing
    but the stop. What is left is what the spring puts through the body. Shapes broadcast to (step, plate).
    """
    depth = position_m - 2.0 * magnets.half_lift_m
    landed = 0.5 + 0.5 * np.tanh(depth / magnets.stop_width_m)
    spring = magnets.preload_n + magnets.spring * position_m
    return np.asarray(pull_n + landed * (np.minimum(spring, pull_n) - pull_n))


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
