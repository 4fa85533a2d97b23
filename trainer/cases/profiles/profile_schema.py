"""The outermost fields of a profile file: those of `Profile` but its digest, which is computed from the file.

A file calls the schedule `test`. Every table inside it is read straight into a value of `trainer.circuit.profile`.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Annotated, Literal

from annotated_types import Interval, Len

from trainer.circuit.constraints import Cylinders, Name, Pattern, Title
from trainer.circuit.profile import Body, DriveModule, Meter, ProfileWords, Room, Schedule, Solenoid, Wiring

BankName = Annotated[str, Pattern(r"^[a-z]+( [a-z]+)*$"), Len(0, 16)]

MOST_NAMES = 40
"""How many names a table of prices or shares may hold; fewer have a meaning."""


@dataclass(frozen=True, slots=True)
class ProfileFile:
    """Everything that a profile file may contain."""

    name: Name
    title: Title
    banks: Annotated[Mapping[BankName, Cylinders], Len(1, 2)]
    firing_order: Cylinders
    codes: Literal["p02xx", "spn_fmi"]
    wiring: Wiring
    module: DriveModule
    test: Schedule
    solenoid: Solenoid
    body: Body
    room: Room
    meter: Meter
    minutes: Annotated[Mapping[str, Annotated[float, Interval(ge=0.1, le=600)]], Len(0, MOST_NAMES)]
    priors: Annotated[Mapping[str, Annotated[float, Interval(ge=0, le=1)]], Len(0, MOST_NAMES)]
    kinds: Annotated[Mapping[str, Annotated[float, Interval(ge=0.001, le=1000)]], Len(0, MOST_NAMES)]
    translations: Annotated[Mapping[Annotated[str, Len(2, 8)], ProfileWords], Len(0, 20)] | None = None
