"""Direction and room: Woodworth's interaural delay, Sabine's decay, spreading of sound."""

import math

import numpy as np
import pytest

from tests.engines import NORTH
from trainer.circuit.profile import Place
from trainer.sound.places import _to_ears, places_of, woodworth_delay_s
from trainer.sound.room import absorption_m2, late_decay, sabine_decay_s


# (a/c)(θ + sin θ) with a = 8.75 cm and c = 343 m/s; ours has c = 343.2, hence 0.1 %
@pytest.mark.parametrize(
    ("degrees", "microseconds"), [(0, 0.0), (15, 132.8), (30, 261.1), (45, 380.7), (60, 488.1), (90, 655.8)]
)
def test_woodworth_delay(degrees: float, microseconds: float) -> None:
    assert woodworth_delay_s(math.radians(degrees)) * 1e6 == pytest.approx(microseconds, rel=1e-3, abs=0.01)


@pytest.mark.parametrize("degrees", [15, 30, 45, 60, 90])
def test_the_rendered_ears_are_woodworths_delay_apart(degrees: float) -> None:
    listener = Place(0.0, 10.0, 1.6)
    angle = math.radians(degrees)
    # the listener faces −y; a source to the listener's left lies towards +x
    source = Place(3.0 * math.sin(angle), 10.0 - 3.0 * math.cos(angle), 1.6)
    frequency = np.array([20_000.0, 20_010.0])
    left, right = _to_ears(source, listener, frequency)
    slope = np.angle(right[1] / right[0] * left[0] / left[1]) / (2 * np.pi * 10.0)
    assert -slope == pytest.approx(woodworth_delay_s(angle), abs=6e-6)  # the head shadow's own phase: up to 6 µs
    assert abs(left[0]) > abs(right[0])


def test_sabine() -> None:
    assert sabine_decay_s(200.0, 40.0) == pytest.approx(0.805, abs=0.001)
    assert absorption_m2(200.0, 0.805) == pytest.approx(40.0, abs=0.05)


def test_the_rendered_room_decays_as_its_profile_says() -> None:
    decay = late_decay(NORTH, 2**15, 48_000)[0]
    remaining = np.cumsum(decay[::-1] ** 2)[::-1]  # Schroeder's backward integration
    level = 10 * np.log10(remaining[remaining > 0] / remaining.max())
    first, last = np.argmax(level < -5.0), np.argmax(level < -25.0)
    assert (last - first) / 48_000 * 3.0 == pytest.approx(NORTH.room.decay_s, rel=0.1)  # noise: 10 %


def test_twice_the_distance_is_six_decibel_less() -> None:
    near, far = (
        np.abs(_to_ears(Place(0, 0, 1.6), Place(0, distance, 1.6), np.array([500.0])))[0, 0] for distance in (2.0, 4.0)
    )
    assert 20 * math.log10(near / far) == pytest.approx(6.02, abs=0.01)


def test_a_listener_in_front_has_the_right_bank_at_the_left_ear() -> None:
    # common practice, no published source: right and left are named from the driver's seat
    front = places_of(NORTH)["front"]
    right = Place(0.5, 0.0, 1.1)
    left_ear, right_ear = np.abs(_to_ears(right, front, np.array([4000.0])))[:, 0]
    assert left_ear > right_ear
