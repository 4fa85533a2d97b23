"""Tries to make a fault show itself: moving the wiring at a place, or warming a place, works by chance only.

A try shows a fault that movement or warmth can show with a chance that grows with force and time. Whether it does is
seeded, and the same try harder shows no less; another try is another chance. A fault shows itself within MOST_TRIES.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator
from dataclasses import dataclass
from enum import StrEnum
from itertools import count
from typing import Literal

from trainer.arrays import Floats
from trainer.circuit.chance import Stream
from trainer.circuit.elements import Location
from trainer.circuit.fault import Conditions, Fault
from trainer.circuit.faults import faulty_circuit
from trainer.circuit.profile import Profile

How = Literal["move", "heat"]
MOVE: How = "move"
HEAT: How = "heat"


class Effort(StrEnum):
    """How hard, and how long, a place is moved or warmed in one try."""

    GENTLE = "gentle"
    THOROUGH = "thorough"


CHANCE = {Effort.GENTLE: 0.4, Effort.THOROUGH: 0.7}
"""The chance that one try shows a fault that is there: from memory."""

TIMES = {Effort.GENTLE: 1, Effort.THOROUGH: 2}
"""How many times its minutes a try takes."""

MOST_TRIES = 4
"""Within so many tries, even gentle ones, every fault shows itself once."""

GLANCE = 0.5
"""The chance that a meter without min/max capture shows a contact that opens for a moment only: from memory, for two or
three readings a second."""

UNDER_COVER = frozenset({Location.UNDER_COVER, Location.COIL, Location.ARMATURE})
"""Places that lie under a valve cover."""


@dataclass(frozen=True, slots=True)
class Try:
    """One try at a place: under which bank's cover, the how many-th there, how hard, and whether a fault would show.

    Number 0 is the state that a try with result leaves, however it was made.
    """

    bank: str = ""
    number: int = 1
    effort: Effort = Effort.THOROUGH
    shows: bool = True

    @property
    def settled(self) -> bool:
        """Whether it is the state after a try."""
        return self.number == 0

    def reaches(self, banks: Collection[str]) -> bool:
        """Tell whether it makes a fault on some banks show: outside every fault, under a cover only those there."""
        return self.shows and (not self.bank or self.bank in banks)


CAN_BE_TRIED = tuple(place for place in Location if place is not Location.MODULE_POWER)
"""Where moving or warming can show a fault: nothing that feeds the module heeds either."""


def shows_itself(seed: int, how: How, location: Location, number: int, effort: Effort) -> bool:
    """Tell whether a try shows a fault that is at its place and heeds it."""
    draws = _draws(seed, how, location)
    if number > MOST_TRIES:
        return bool(Stream(seed, f"{how} {location} {number}").uniform(1)[0] < CHANCE[effort])
    return bool(draws[number - 1] < CHANCE[effort])


def tries_needed(seed: int, how: How, location: Location, effort: Effort) -> int:
    """Return which try is the first to show a fault."""
    return next(number for number in count(1) if shows_itself(seed, how, location, number, effort))


def provoked_by(fault: Fault, profile: Profile, temperature_c: float) -> tuple[How, ...]:
    """Return what makes a fault show that does not show now: moving its place, warming it, both or neither."""
    resting = faulty_circuit(profile, [fault], Conditions(temperature_c)).elements
    conditions = ((MOVE, Conditions(temperature_c, moved=fault.location)),
                  (HEAT, Conditions(temperature_c, heated=fault.location)))  # fmt: skip
    return tuple(how for how, one in conditions if faulty_circuit(profile, [fault], one).elements != resting)


def _draws(seed: int, how: How, location: Location) -> Floats:
    """Return the draws of the first tries, of which one at least is low enough for a gentle try."""
    lots: Iterator[Floats] = (Stream(seed, f"{how} {location} lot {n}").uniform(MOST_TRIES) for n in count())
    return next(lot for lot in lots if lot.min() < CHANCE[Effort.GENTLE])
