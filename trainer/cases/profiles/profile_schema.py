"""The fields of a profile file, where they differ from those of `Profile`.

A file keys connectors by name and calls the schedule `test`; the digest of its content is computed from it.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Annotated, Literal

from annotated_types import Interval, Len

from trainer.circuit.constraints import Cylinder, Cylinders, Name, Pattern, Title
from trainer.circuit.profile import Body, DriveModule, Meter, Room, Schedule, Solenoid

BankName = Annotated[str, Pattern(r"^[a-z]+( [a-z]+)*$"), Len(0, 16)]
Area = Annotated[float, Interval(ge=0.1, le=20)]
Length = Annotated[float, Interval(ge=0.05, le=10)]

MOST_NAMES = 40
"""How many names a table of prices or shares may hold; fewer have a meaning."""


@dataclass(frozen=True, slots=True)
class ConnectorInFile:
    """A pass-through connector under its name."""

    injectors: Cylinders
    feed_pins: Literal["shared", "single"]
    engine_length_m: Length
    heater_pin: bool


@dataclass(frozen=True, slots=True)
class WiringInFile:
    """The wiring, with connectors by name."""

    live: Literal["all", "commanded"]
    outputs: Annotated[Mapping[Name, Cylinders], Len(1, 16)]
    connectors: Annotated[Mapping[Name, ConnectorInFile], Len(1, 16)]
    trunk_length_m: Length
    engine_feed_mm2: Area
    engine_return_mm2: Area
    under_cover_mm2: Area
    under_cover_length_m: Annotated[Mapping[Cylinder, Annotated[float, Interval(ge=0.02, le=5)]], Len(0, 16)]
    contact_ohm: Annotated[float, Interval(ge=0.0001, le=0.5)]


@dataclass(frozen=True, slots=True)
class ProfileFile:
    """Everything that a profile file may contain."""

    name: Name
    title: Title
    banks: Annotated[Mapping[BankName, Cylinders], Len(1, 2)]
    firing_order: Cylinders
    codes: Literal["p02xx", "spn_fmi"]
    wiring: WiringInFile
    module: DriveModule
    test: Schedule
    solenoid: Solenoid
    body: Body
    room: Room
    meter: Meter
    minutes: Annotated[Mapping[str, Annotated[float, Interval(ge=0.1, le=600)]], Len(0, MOST_NAMES)]
    priors: Annotated[Mapping[str, Annotated[float, Interval(ge=0, le=1)]], Len(0, MOST_NAMES)]
    kinds: Annotated[Mapping[str, Annotated[float, Interval(ge=0.001, le=1000)]], Len(0, MOST_NAMES)]
