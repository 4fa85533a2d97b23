"""What a learner can ask a meter for, and the pins that each measurement lies between."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from trainer.circuit.elements import Location, Side
from trainer.circuit.profile import Profile
from trainer.errors import WrongCallError
from trainer.instruments.bench import (
    MODULE_CONNECTOR,
    Pin,
    break_points,
    cylinders_at,
    feed_pin_for,
    halves_of,
)
from trainer.words import numbers, text

PowerDrop = Literal["plus_drop", "ground_drop"]
POWER_DROPS: tuple[PowerDrop, ...] = ("plus_drop", "ground_drop")
"""Voltage drops between battery and module: on its way there, and from the module's ground back."""

What = Literal[
    "pair",
    "returns",
    "ground",
    "wire",
    "insulation",
    "volts",
    "lamp",
    "crank",
    "plus_drop",
    "ground_drop",
    "drop",
    "supply",
    "trace",
    "clamp",
    "dummy",
    "contribution",
    "compression",
]


@dataclass(frozen=True, slots=True)
class Request:
    """One measurement asked for. `connected` leaves plugs on and `firm` pushes the probe in: both are slips.

    `other` is a second return, or for a clamp the cylinder that is driven. `captured` has the meter keep the least and
    the most while something is moved. `at_once` does not wait for the module to discharge: a slip too.
    """

    what: What
    point: str = MODULE_CONNECTOR
    half: str = "harness"
    cylinder: int = 0
    other: int = 0
    side: Side = Side.RETURN
    location: Location = Location.ENGINE_HARNESS
    connected: bool = False
    firm: bool = False
    key_on: bool = False
    nulled: bool = True
    captured: bool = False
    at_once: bool = False


OF_THE_WHOLE = ("supply", "crank", *POWER_DROPS, "contribution", "compression")
"""What is measured of the whole engine."""

AT_A_POINT = ("pair", "returns", "ground", "insulation", "volts")
"""What is measured at one break point."""


def through_point(profile: Profile, cylinder: int) -> str:
    """Return the pass-through connector of a cylinder as a break point."""
    return f"pass_through.{profile.connector_name_of(cylinder)}"


def plug_point(cylinder: int) -> str:
    """Return the injector's plug as a break point."""
    return f"injector_plug.{cylinder}"


def check_request(profile: Profile, request: Request) -> None:
    """Raise WrongCallError for a measurement that cannot be asked of an engine."""
    if request.point not in break_points(profile):
        raise WrongCallError("no_place", place=request.point, places=", ".join(break_points(profile)))
    if request.half not in halves_of(request.point) and request.what in AT_A_POINT:
        raise WrongCallError(
            "no_half", point=request.point, half=request.half, halves=", ".join(halves_of(request.point))
        )
    if request.what not in OF_THE_WHOLE and request.cylinder not in profile.cylinders:
        raise WrongCallError("no_cylinder", cylinder=request.cylinder, cylinders=numbers(profile.cylinders))
    here = cylinders_at(profile, request.point)
    if request.what in AT_A_POINT and request.cylinder not in here:
        raise WrongCallError("not_here", cylinder=request.cylinder, point=request.point, cylinders=numbers(here))
    between = request.what == "returns" or (request.what == "insulation" and request.other)
    if between and (request.other not in here or request.other == request.cylinder):
        raise WrongCallError("not_here", cylinder=request.other, point=request.point, cylinders=numbers(here))
    if request.what in ("wire", "lamp"):
        _ends(profile, request)
    if request.what == "clamp" and (request.other not in profile.cylinders or request.other == request.cylinder):
        raise WrongCallError("no_cylinder", cylinder=request.other, cylinders=numbers(profile.cylinders))
    if request.what == "drop":
        drop_pins_of(profile, request)


def pins_of(profile: Profile, request: Request) -> tuple[Pin, Pin | None]:
    """Return the two pins that a resistance is measured between; None is engine ground."""
    number, point, half = request.cylinder, request.point, request.half
    own = Pin(point, half, Side.RETURN, str(number))
    if request.what == "pair":
        return feed_pin_for(profile, point, half, number), own
    if request.what == "returns":
        return own, Pin(point, half, Side.RETURN, str(request.other))
    if request.what in ("wire", "lamp"):
        return _ends(profile, request)
    if request.what == "insulation" and request.other:
        return own, Pin(point, half, Side.RETURN, str(request.other))
    return (own if request.side is Side.RETURN else feed_pin_for(profile, point, half, number)), None


def _ends(profile: Profile, request: Request) -> tuple[Pin, Pin]:
    number, side = request.cylinder, request.side
    through = through_point(profile, number)

    def pin(point: str, half: str) -> Pin:
        return feed_pin_for(profile, point, half, number) if side is Side.FEED else Pin(point, half, side, str(number))

    if request.location is Location.ENGINE_HARNESS:
        return pin(MODULE_CONNECTOR, "harness"), pin(through, "engine")
    if request.location is Location.UNDER_COVER:
        return pin(through, "cover"), pin(plug_point(number), "harness")
    raise WrongCallError("no_wire", place=text(f"location.{request.location}"))


def next_driven(profile: Profile, cylinder: int) -> int:
    """Return the cylinder in whose slot background current reaches a return: the next one on the same output."""
    row = profile.wiring.outputs[profile.output_of(cylinder)]
    own = next((n for n in (*row[row.index(cylinder) + 1 :], *row) if n != cylinder), None)
    return own or next(n for n in profile.cylinders if n != cylinder)


def drop_pins_of(profile: Profile, request: Request) -> tuple[Pin, Pin]:
    """Return the two pins between which a voltage drop is asked for; raises WrongCallError for another place."""
    number, side = request.cylinder, request.side
    through = through_point(profile, number)

    def pin(point: str, half: str) -> Pin:
        return feed_pin_for(profile, point, half, number) if side is Side.FEED else Pin(point, half, side, str(number))

    plug = plug_point(number)
    ends = {
        Location.DRIVE_MODULE: ((MODULE_CONNECTOR, "module"), (MODULE_CONNECTOR, "harness")),
        Location.ENGINE_HARNESS: ((MODULE_CONNECTOR, "module"), (through, "engine")),
        Location.PASS_THROUGH: ((through, "engine"), (through, "cover")),
        Location.UNDER_COVER: ((through, "cover"), (plug, "injector")),
        Location.COIL: ((plug, "harness"), (plug, "injector")),
    }
    if request.location not in ends:
        raise WrongCallError("no_drop", place=text(f"location.{request.location}"))
    first, second = ends[request.location]
    return pin(*first), pin(*second)
