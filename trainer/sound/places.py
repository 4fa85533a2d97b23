"""Where injectors and listeners are, and how sound comes from one to the other's two ears.

Each path has its distance, its direction by a spherical head (Woodworth's delay, a one-pole head shadow after Brown
and Duda), and four early reflections by image sources. A probe is a stethoscope or long screwdriver on one injector:
that one near, the rest far. Through the cover it rests on the sheet over one injector: the sheet lies on a gasket and
rings as one, so that injector is quieter and its neighbours come along.
"""

from __future__ import annotations

import math
from collections.abc import Iterator

import numpy as np

from trainer.arrays import Complex, Floats
from trainer.circuit.profile import Place, Profile

SPEED_OF_SOUND_M_S = 343.2
"""At 20 °C: 331.3·sqrt(1 + 20/273.15)."""

HEAD_RADIUS_M = 0.0875
EAR_HEIGHT_M, ENGINE_HEIGHT_M = 1.6, 1.1
REFLECTION = 0.35
"""Share of pressure that floor and walls throw back: from memory, a bay of concrete and tin with its door open and full
of things that scatter."""

LEAN_ABOVE_M, LEAN_ASIDE_M = 0.35, 0.2
"""Where an ear is that leans over a bank, from the middle of its row of injectors: 0.4 m away, common practice."""

PROBE_LEAK = 0.03
"""How much of another injector comes through the metal to a probe: from memory."""

PROBE_GAIN = 0.35
"""A probe is listened to quieter than the metal would be, so that all places are heard at one setting."""

COVER_PASS = 0.3
"""How much of what a probe on the injector would hear comes up to the cover over it: from memory, about 10 dB less."""

COVER_SHARE, OTHER_COVER = 0.5, 0.1
"""How much of the next injector under the same cover is heard beside the one below, less in proportion to distance, and
of any injector under the other cover: from memory, 6 and 20 dB down."""

LEAN_GAIN = 0.5
"""An ear so near is given a little less than it would get, so that no fault's loudest blow reaches a file's ceiling."""

LEAN = "lean"
"""What the places over a bank begin with."""

THROUGH, ON = "cover", "probe"
"""What the places begin with whose number is an injector: on the cover over it, and on the injector itself."""


def woodworth_delay_s(angle_rad: float) -> float:
    """Return the interaural delay of a far source at an angle from straight ahead, up to a right angle."""
    return HEAD_RADIUS_M / SPEED_OF_SOUND_M_S * (angle_rad + math.sin(angle_rad))


def places_of(profile: Profile) -> dict[str, Place]:
    """Return every place to listen from.

    They are `front`, each bank's side by its name, `lean` and a bank's name for an ear over that bank, `probe N` and
    `cover N` for each injector.
    """
    room = profile.room
    spread = max(len(numbers) for numbers in profile.banks.values()) * room.cylinder_pitch_m / 2.0
    places = {"front": Place(0.0, spread + room.listener_distance_m, EAR_HEIGHT_M)}
    if len(profile.banks) > 1:
        for side, name in zip((1.0, -1.0), profile.banks, strict=False):
            x_m = side * (room.bank_spacing_m / 2.0 + room.listener_distance_m)
            places[name] = Place(x_m, 0.0, EAR_HEIGHT_M)
    else:
        places["left side"] = Place(-room.listener_distance_m, 0.0, EAR_HEIGHT_M)
        places["right side"] = Place(room.listener_distance_m, 0.0, EAR_HEIGHT_M)
    for name, numbers in profile.banks.items():
        row_x_m = injector_place(profile, numbers[0]).x_m
        aside_m = -LEAN_ASIDE_M if row_x_m < 0.0 else LEAN_ASIDE_M
        places[f"{LEAN} {name}"] = Place(row_x_m + aside_m, 0.0, ENGINE_HEIGHT_M + LEAN_ABOVE_M)
    for number in profile.cylinders:
        places[f"{ON} {number}"] = injector_place(profile, number)
    for number in profile.cylinders:
        places[f"{THROUGH} {number}"] = injector_place(profile, number)
    return places


def contact_of(place: str) -> tuple[str, int] | None:
    """Return what a listener touches, `probe` or `cover`, and at which injector; None for a place in the bay."""
    how, _space, number = place.partition(" ")
    return (how, int(number)) if how in (ON, THROUGH) and number.isdigit() else None


def injector_place(profile: Profile, cylinder: int) -> Place:
    """Return where an injector is: banks in the profile's order right and left, cylinders front to back."""
    bank = profile.bank_of(cylinder)
    order = list(profile.banks).index(bank)
    numbers = profile.banks[bank]
    x_m = 0.0 if len(profile.banks) == 1 else (0.5 - order) * profile.room.bank_spacing_m
    from_front = numbers.index(cylinder) - (len(numbers) - 1) / 2.0
    return Place(x_m, -from_front * profile.room.cylinder_pitch_m, ENGINE_HEIGHT_M)


def ear_response(profile: Profile, place: str, frequency_hz: Floats) -> Complex:
    """Return pressure at each ear over pressure at one metre, shape (cylinder, ear, frequency); ears left, right.

    Raises KeyError for a place the profile does not have.
    """
    listener = places_of(profile)[place]
    contact = contact_of(place)
    response = np.zeros((len(profile.cylinders), 2, len(frequency_hz)), dtype=complex)
    for row, number in enumerate(profile.cylinders):
        source = injector_place(profile, number)
        if contact is not None:
            distance_m = 1.0 + _distance_m(source, listener)
            gain = PROBE_GAIN * _through_metal(profile, contact, number)
            response[row] = gain * np.exp(-2j * np.pi * frequency_hz * distance_m / 5000.0)
            continue
        for image, strength in _images(profile, source):
            response[row] += strength * _to_ears(image, listener, frequency_hz)
    return np.asarray(response * (LEAN_GAIN if place.startswith(LEAN) else 1.0))


def _through_metal(profile: Profile, contact: tuple[str, int], number: int) -> float:
    """Return how much of an injector's sound reaches a contact, as a share of what a probe on that injector hears."""
    how, own = contact
    away_m = _distance_m(injector_place(profile, own), injector_place(profile, number))
    if how == ON:
        return 1.0 if number == own else PROBE_LEAK / (1.0 + away_m)
    if profile.bank_of(number) != profile.bank_of(own):
        return COVER_PASS * OTHER_COVER
    pitches = away_m / profile.room.cylinder_pitch_m
    return COVER_PASS * (COVER_SHARE / pitches if number != own else 1.0)


def _distance_m(a: Place, b: Place) -> float:
    return math.dist((a.x_m, a.y_m, a.z_m), (b.x_m, b.y_m, b.z_m))


def _images(profile: Profile, source: Place) -> Iterator[tuple[Place, float]]:
    """Yield the source and its mirror images in the floor and three walls of a bay of the profile's volume."""
    half = math.sqrt(profile.room.volume_m3 / 4.0) / 2.0
    yield source, 1.0
    yield Place(source.x_m, source.y_m, -source.z_m), REFLECTION
    yield Place(2.0 * half - source.x_m, source.y_m, source.z_m), REFLECTION
    yield Place(-2.4 * half - source.x_m, source.y_m, source.z_m), REFLECTION
    yield Place(source.x_m, -2.0 * half - source.y_m, source.z_m), REFLECTION


def _to_ears(source: Place, listener: Place, frequency_hz: Floats) -> Complex:
    """Return the free path to both ears of a listener who faces the middle of the engine."""
    distance_m = _distance_m(source, listener)
    facing = math.atan2(-listener.y_m, -listener.x_m)
    towards = math.atan2(source.y_m - listener.y_m, source.x_m - listener.x_m)
    left_of_nose = math.remainder(towards - facing, 2.0 * math.pi)
    paths = []
    for ear in (1.0, -1.0):
        incidence = abs(math.remainder(left_of_nose - ear * math.pi / 2.0, 2.0 * math.pi))
        near = incidence <= math.pi / 2.0
        extra_m = -HEAD_RADIUS_M * math.cos(incidence) if near else HEAD_RADIUS_M * (incidence - math.pi / 2.0)
        # head shadow: 2 at the ear's side, near 0.1 behind the head, for wavelengths under the head's size
        alpha = 1.05 + 0.95 * math.cos(min(incidence / math.radians(150.0), 1.0) * math.pi)
        turn = 1j * np.pi * frequency_hz * HEAD_RADIUS_M / SPEED_OF_SOUND_M_S
        shadow = (1.0 + alpha * turn) / (1.0 + turn)
        delay_s = (distance_m + extra_m) / SPEED_OF_SOUND_M_S
        paths.append(shadow * np.exp(-2j * np.pi * frequency_hz * delay_s) / distance_m)
    return np.array(paths)
