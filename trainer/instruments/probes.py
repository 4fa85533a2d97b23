"""From where two probes rest to the measurement that this is."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import product
from typing import Literal

from trainer.circuit.elements import Location, Side
from trainer.circuit.profile import Profile
from trainer.errors import WrongCallError
from trainer.instruments.bench import MODULE_CONNECTOR, Pin, break_points, cylinders_at, feed_pin_for, halves_of
from trainer.instruments.measuring import Request, drop_pins_of, pins_of, plug_point, through_point

Meter = Literal["ohms", "insulation", "drop"]


def pins_of_cylinder(profile: Profile, cylinder: int) -> tuple[Pin, ...]:
    """Return every pin on a cylinder's way from the module to its coil and back: by break point, half and side."""
    points = (MODULE_CONNECTOR, through_point(profile, cylinder), plug_point(cylinder))
    return tuple(
        feed_pin_for(profile, point, half, cylinder) if side is Side.FEED else Pin(point, half, side, str(cylinder))
        for point in points
        for half in halves_of(point)
        for side in Side
    )


def request_between(profile: Profile, meter: Meter, first: Pin, second: Pin | None) -> Request:
    """Return the measurement between two pins, None being engine ground.

    Raises WrongCallError where a meter on those two says nothing that the bench knows.
    """
    for request in _candidates(profile, meter, first, second):
        try:
            pins = drop_pins_of(profile, request) if meter == "drop" else pins_of(profile, request)
        except WrongCallError:
            continue
        if pins in ((first, second), (second, first)):
            return request
    raise WrongCallError("no_such_pair")


def _candidates(profile: Profile, meter: Meter, first: Pin, second: Pin | None) -> Iterator[Request]:
    if meter == "drop":
        for number, place, side in product(profile.cylinders, Location, Side):
            yield Request("drop", cylinder=number, location=place, side=side)
        return
    here = _cylinders(profile, first)
    if meter == "insulation" or second is None:
        if second is not None:
            return
        what: Literal["insulation", "ground"] = "insulation" if meter == "insulation" else "ground"
        for number in here:
            yield Request(what, first.break_point, first.half, number, side=first.side)
        return
    there = _cylinders(profile, second)
    for number in here:
        if number in there:
            yield Request("pair", first.break_point, first.half, number)
    for number in dict.fromkeys((*here, *there)):
        for place in (Location.ENGINE_HARNESS, Location.UNDER_COVER):
            yield Request("wire", cylinder=number, location=place, side=first.side)
    if first.side is second.side is Side.RETURN and first.name != second.name:
        yield Request("returns", first.break_point, first.half, int(first.name), int(second.name))


def _cylinders(profile: Profile, pin: Pin) -> tuple[int, ...]:
    if pin.break_point not in break_points(profile):
        return ()
    here = cylinders_at(profile, pin.break_point)
    if pin.side is Side.RETURN:
        return (int(pin.name),)
    return tuple(n for n in here if feed_pin_for(profile, pin.break_point, pin.half, n) == pin)
