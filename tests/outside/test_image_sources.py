"""The bay's early reflections against the closed form of mirror images (Allen and Berkley 1979): where, when, how strong."""

import math

import numpy as np
import pytest

from tests.engines import NORTH
from trainer.circuit.profile import Place
from trainer.sound.places import (
    REFLECTION,
    SPEED_OF_SOUND_M_S,
    _distance_m,
    _images,
    ear_response,
    injector_place,
    places_of,
)


def test_the_floors_image_lies_as_far_as_the_path_over_the_floor() -> None:
    source, listener = injector_place(NORTH, 3), places_of(NORTH)["front"]
    floor = next(image for image, _strength in list(_images(NORTH, source))[1:] if image.z_m < 0.0)
    across = math.hypot(listener.x_m - source.x_m, listener.y_m - source.y_m)
    # a ray that leaves at h1 and arrives at h2 over a flat floor: sqrt(d² + (h1 + h2)²)
    assert _distance_m(floor, listener) == pytest.approx(math.hypot(across, source.z_m + listener.z_m))


def test_each_image_arrives_at_its_distance_over_the_speed_of_sound_and_falls_with_it() -> None:
    frames, rate_hz = 2**14, 48_000
    frequency = np.fft.rfftfreq(frames, 1.0 / rate_hz)
    heard = np.fft.irfft(ear_response(NORTH, "front", frequency)[NORTH.cylinders.index(3)], frames, axis=1)
    listener, source = places_of(NORTH)["front"], injector_place(NORTH, 3)
    energies = []
    for image, strength in _images(NORTH, source):
        # the head moves an ear by 0.09 m at most, and shadows it for a fraction of a millisecond
        expected = _distance_m(image, listener) / SPEED_OF_SOUND_M_S * rate_hz
        part = heard[:, round(expected) - 20 : round(expected) + 40]
        energies.append((float((part**2).sum()), strength / _distance_m(image, listener)))
    direct, first = energies[0]
    for energy, size in energies[1:]:
        shadow_db = 10.0 * math.log10(energy / direct) - 20.0 * math.log10(size / first)
        assert abs(shadow_db) < 6.0  # what the head adds or takes between two directions
    assert energies[1][1] == pytest.approx(
        REFLECTION / _distance_m(Place(source.x_m, source.y_m, -source.z_m), listener)
    )


def test_near_the_engine_the_direct_sound_is_over_all_its_images() -> None:
    listener = places_of(NORTH)["lean right"]
    for number in NORTH.banks["right"]:
        direct, *images = [
            (strength / _distance_m(image, listener)) ** 2
            for image, strength in _images(NORTH, injector_place(NORTH, number))
        ]
        assert direct > 10.0 * sum(images)
