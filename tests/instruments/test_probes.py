"""Two probes on two pins are the measurement that a person would call it, whichever probe is where."""

from __future__ import annotations

import pytest

from tests.engines import ALL
from trainer.circuit.elements import Location, Side
from trainer.circuit.profile import Profile
from trainer.errors import WrongCallError
from trainer.instruments.bench import Pin
from trainer.instruments.probes import pins_of_cylinder, request_between
from trainer.instruments.requests import Request, drop_pins_of, pins_of


@pytest.mark.parametrize("profile", ALL, ids=lambda profile: profile.name)
def test_every_measurement_is_found_again_from_its_pins(profile: Profile) -> None:
    for number in profile.cylinders:
        for asked in _asked(profile, number):
            meter = asked.what if asked.what in ("drop", "insulation", "volts") else "ohms"
            pins = drop_pins_of(profile, asked) if meter == "drop" else pins_of(profile, asked)
            assert pins[0] is not None
            found = request_between(profile, meter, pins[0], pins[1])
            assert set(drop_pins_of(profile, found) if meter == "drop" else pins_of(profile, found)) == set(pins)
            if pins[1] is not None:
                turned = request_between(profile, meter, pins[1], pins[0])
                assert set(drop_pins_of(profile, turned) if meter == "drop" else pins_of(profile, turned)) == set(pins)


def _asked(profile: Profile, number: int) -> list[Request]:
    points = {pin.break_point: pin.half for pin in pins_of_cylinder(profile, number)}
    asked = [
        Request(what, point, half, number)
        for point, half in points.items()
        for what in ("pair", "ground", "insulation", "volts")
    ]
    asked += [
        Request("wire", cylinder=number, location=place, side=side)
        for place in (Location.ENGINE_HARNESS, Location.UNDER_COVER)
        for side in Side
    ]
    asked += [
        Request("drop", cylinder=number, location=place, side=side)
        for place in Location
        if place not in (Location.ARMATURE, Location.MODULE_POWER)
        for side in Side
    ]
    return asked


@pytest.mark.parametrize("profile", ALL, ids=lambda profile: profile.name)
def test_a_cylinder_has_twelve_pins_from_module_to_coil(profile: Profile) -> None:
    for number in profile.cylinders:
        pins = pins_of_cylinder(profile, number)
        assert len(pins) == len(set(pins)) == 12
        assert [pin.half for pin in pins[::2]] == ["module", "harness", "engine", "cover", "harness", "injector"]


@pytest.mark.parametrize("profile", ALL, ids=lambda profile: profile.name)
def test_any_two_pins_are_a_measurement_or_are_refused_in_words(profile: Profile) -> None:
    """And the measurement found is between these two pins: never between others."""
    pins = list(dict.fromkeys(pin for number in profile.cylinders[:4] for pin in pins_of_cylinder(profile, number)))
    found = 0
    for first in pins:
        for second in (*pins, None):
            for meter in ("ohms", "insulation"):
                try:
                    request = request_between(profile, meter, first, second)
                except WrongCallError:
                    continue
                assert set(pins_of(profile, request)) == {first, second}
                found += 1
    assert found > 100


def test_pins_that_say_nothing_together_are_refused() -> None:
    module = Pin("module_connector", "harness", Side.RETURN, "1")
    plug = Pin("injector_plug.2", "injector", Side.RETURN, "2")
    with pytest.raises(WrongCallError) as told:
        request_between(ALL[0], "ohms", module, plug)
    assert told.value.key == "no_such_pair"
