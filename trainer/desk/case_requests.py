"""What a learner can do on one case, as values that both faces hand to the actions."""

from __future__ import annotations

from dataclasses import dataclass

from trainer.circuit.elements import Location
from trainer.instruments.requests import Request
from trainer.instruments.tries import Effort
from trainer.practice.attempt.repair import Repair


@dataclass(frozen=True, slots=True)
class Hear:
    """Run the test from a listening place, or replay slots of it (0 for all together); None for the whole test."""

    slots: tuple[int, ...] | None
    place: str


@dataclass(frozen=True, slots=True)
class ReadCodes:
    """Read the codes, and clear the memory if wanted."""

    clear: bool = False


@dataclass(frozen=True, slots=True)
class Measure:
    """Take a reading, beside what the learner expects of it if that was said."""

    request: Request
    predicted: str | None = None


@dataclass(frozen=True, slots=True)
class Move:
    """Move the harness at a place during what follows, or let go (None); under a cover, say which bank's."""

    location: Location | None
    bank: str = ""
    effort: Effort = Effort.THOROUGH


@dataclass(frozen=True, slots=True)
class Heat:
    """Warm a place, or let it cool (None); under a cover, say which bank's."""

    location: Location | None
    bank: str = ""
    effort: Effort = Effort.THOROUGH


@dataclass(frozen=True, slots=True)
class WarmRun:
    """Run the engine until it is warm everywhere."""


@dataclass(frozen=True, slots=True)
class Swap:
    """Swap the returns of two cylinders at the module connector."""

    first: int
    second: int


@dataclass(frozen=True, slots=True)
class Lend:
    """Put a known-good injector (`COIL` and its cylinder) or drive module (cylinder 0) in."""

    location: Location
    cylinder: int


@dataclass(frozen=True, slots=True)
class GiveBack:
    """Take the known-good parts out and put the engine's own back in."""


@dataclass(frozen=True, slots=True)
class Look:
    """Look at what is open, or draw a matching pin through its terminals."""

    drag: bool = False


@dataclass(frozen=True, slots=True)
class Mend:
    """Carry out a repair."""

    repair: Repair


@dataclass(frozen=True, slots=True)
class Retest:
    """Run the test on the repaired circuit from a listening place, while a place is moved or warm if wanted."""

    place: str
    moved: Location | None = None
    heated: Location | None = None


Action = Hear | ReadCodes | Measure | Move | Heat | WarmRun | Swap | Lend | GiveBack | Look | Mend | Retest
