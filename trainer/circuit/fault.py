"""What can be wrong with a circuit, as values: a kind, a place, a side, the cylinders behind it, how bad it is."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum
from itertools import pairwise
from typing import NamedTuple

from trainer.circuit.constraints import Cylinders, Severity
from trainer.circuit.elements import OPEN_OHM, Location, Part, Side


class FaultKind(StrEnum):
    """What can be wrong."""

    OPEN = "open"
    ADDED_RESISTANCE = "added_resistance"
    FAILS_UNDER_LOAD = "fails_under_load"
    FILM_ON_CONTACT = "film_on_contact"
    BURNT_PIN = "burnt_pin"
    PUSHED_BACK_PIN = "pushed_back_pin"
    SPREAD_TERMINAL = "spread_terminal"
    OPEN_WHEN_MOVED = "open_when_moved"
    OPEN_WHEN_HOT = "open_when_hot"
    CURED_BY_RESEATING = "cured_by_reseating"
    SHORT_ACROSS_PAIR = "short_across_pair"
    CARBON_BETWEEN_PINS = "carbon_between_pins"
    SHORT_TO_GROUND = "short_to_ground"
    SHORT_WHEN_MOVED = "short_when_moved"
    SHORT_TO_BATTERY = "short_to_battery"
    RETURN_TO_RETURN = "return_to_return"
    RETURN_TO_HEATER = "return_to_heater"
    CROSSED_RETURNS = "crossed_returns"
    SHORTED_TURNS = "shorted_turns"
    WRONG_COIL = "wrong_coil"
    DEAD_RETURN_DRIVER = "dead_return_driver"
    OUTPUT_FAILS_HOT = "output_fails_hot"
    STUCK_RETURN_DRIVER = "return_driver_stuck_on"
    DEAD_FEED_DRIVER = "dead_feed_driver"
    LOW_SUPPLY = "low_supply"
    SLOW_RECHARGE = "slow_recharge"
    NO_SUPPLY = "no_supply"
    WEAK_BATTERY = "weak_battery"
    POOR_MODULE_FEED = "poor_module_feed"
    POOR_MODULE_GROUND = "poor_module_ground"
    STUCK_ARMATURE = "stuck_armature"
    SLUGGISH_ARMATURE = "sluggish_armature"
    STICKS_WHEN_COLD = "sticks_when_cold"
    WORN_ARMATURE = "worn_armature"


class Size(NamedTuple):
    """The unit of a kind's severity, and the severities that faults are given, the usual one first.

    The severities are points of a range, or separate types where `types` is set (a coil of another type). Where
    the severity is a resistance in series, `beside_ohm` is roughly the rest of that loop: sound and readings depend on
    the sum. `shared` replaces them for a feed that several injectors share: the current of four injectors burns a joint
    away long before it has the resistance that a joint of one injector can reach. `between` are more points that only
    reasoning uses, for one injector: where what is heard or read bends or steps between two severities.
    """

    unit: str
    severities: tuple[float, ...]
    shared: tuple[float, ...] = ()
    beside_ohm: float = 0.0
    types: bool = False
    between: tuple[float, ...] = ()

    def of(self, cylinders: Cylinders) -> tuple[float, ...]:
        """Return the severities of a fault that so many cylinders lie behind."""
        return self.shared if self.shared and len(cylinders) > 1 else self.severities

    def grid_of(self, cylinders: Cylinders) -> tuple[float, ...]:
        """Return the severities that are reasoned with where so many cylinders lie behind a fault."""
        given = self.of(cylinders)
        return given if given is self.shared else (*given, *self.between)


def _cut(cuts: int, size: Size) -> Size:
    """Return a size with each step from one severity to the next cut into parts of equal ratio for reasoning."""
    steps = pairwise(sorted(size.severities))
    return size._replace(
        between=tuple(one * (other / one) ** (n / cuts) for one, other in steps for n in range(1, cuts))
    )


LOOP_OHM = 3.0
"""About the resistance of a good loop: coil, wires and contacts."""

_NONE = Size("none", (0.0,))
_OPEN = Size("ohm", (OPEN_OHM,))
_IN_SERIES = Size("ohm", (28.0, 0.4, 1.5, 4.0, 7.5, 10.5, 14.0, 20.0, 41.0, 60.0), (1.0, 0.5, 0.3), LOOP_OHM)

_POWER = _cut(4, Size("ohm", (0.2, 0.1)))

SIZES: Mapping[FaultKind, Size] = {
    FaultKind.OPEN: _OPEN,
    FaultKind.ADDED_RESISTANCE: _IN_SERIES,
    FaultKind.FAILS_UNDER_LOAD: Size("ohm", (60.0, 10.5, 14.0, 20.0, 28.0, 41.0), (1.0, 0.5), LOOP_OHM),
    FaultKind.FILM_ON_CONTACT: Size("ohm", (400.0, 60.0)),
    FaultKind.BURNT_PIN: _IN_SERIES,
    FaultKind.PUSHED_BACK_PIN: _OPEN,
    FaultKind.SPREAD_TERMINAL: _OPEN,
    FaultKind.OPEN_WHEN_MOVED: _OPEN,
    FaultKind.OPEN_WHEN_HOT: Size("degree Celsius", (90.0, 75.0)),
    FaultKind.CURED_BY_RESEATING: Size("ohm", (OPEN_OHM, 60.0), (OPEN_OHM,)),
    FaultKind.SHORT_ACROSS_PAIR: Size("ohm", (0.1,)),
    FaultKind.CARBON_BETWEEN_PINS: _cut(3, Size("ohm", (40.0, 12.0))),
    FaultKind.SHORT_TO_GROUND: _cut(2, Size("ohm", (0.2, 0.7, 2.5, 9.0, 30.0))),
    FaultKind.SHORT_WHEN_MOVED: Size("ohm", (0.2,)),
    FaultKind.SHORT_TO_BATTERY: Size("ohm", (0.2,)),
    FaultKind.RETURN_TO_RETURN: Size("ohm", (0.1,)),
    FaultKind.RETURN_TO_HEATER: Size("ohm", (0.1,)),
    FaultKind.CROSSED_RETURNS: _NONE,
    FaultKind.SHORTED_TURNS: _cut(8, Size("share of the turns", (0.25, 0.12, 0.17, 0.35, 0.5))),
    FaultKind.WRONG_COIL: Size("times the resistance", (2.2, 0.45), types=True),
    FaultKind.DEAD_RETURN_DRIVER: _NONE,
    FaultKind.OUTPUT_FAILS_HOT: Size("degree Celsius", (90.0, 75.0)),
    FaultKind.STUCK_RETURN_DRIVER: _NONE,
    FaultKind.DEAD_FEED_DRIVER: _NONE,
    FaultKind.LOW_SUPPLY: _cut(3, Size("share of the supply", (0.7, 0.6, 0.85))),
    FaultKind.SLOW_RECHARGE: _cut(3, Size("times the source resistance", (25.0, 60.0))),
    FaultKind.NO_SUPPLY: _NONE,
    FaultKind.WEAK_BATTERY: Size("times the battery's resistance", (5.0, 3.0)),
    FaultKind.POOR_MODULE_FEED: _POWER,
    FaultKind.POOR_MODULE_GROUND: _POWER,
    FaultKind.STUCK_ARMATURE: _NONE,
    FaultKind.SLUGGISH_ARMATURE: _cut(2, Size("times the viscous loss", (150.0, 50.0, 87.0, 260.0))),
    FaultKind.STICKS_WHEN_COLD: Size("newton at 0 °C", (100.0, 200.0)),
    FaultKind.WORN_ARMATURE: Size("times the lift", (1.8, 1.4, 2.3)),
}


@dataclass(frozen=True, slots=True)
class Fault:
    """One fault: kind, where, which side, every cylinder behind it, and how bad (unit by kind, see SIZES)."""

    kind: FaultKind
    location: Location
    cylinders: Cylinders
    side: Side | None = None
    severity: Severity | None = None
    part: Part | None = None

    def amount(self) -> float:
        """Return the severity, or the kind's usual one where none is given."""
        return SIZES[self.kind].of(self.cylinders)[0] if self.severity is None else self.severity


@dataclass(frozen=True, slots=True)
class Conditions:
    """What is being done to the engine while it is heard or measured."""

    temperature_c: float = 20.0
    moved: Location | None = None
    heated: Location | None = None
    reseated: frozenset[str] = field(default_factory=frozenset)

    def local_c(self, location: Location) -> float:
        """Return the temperature at a location; a warmed place is at WARMED_C, coil and armature together."""
        warm = self.heated == location or {self.heated, location} == {Location.COIL, Location.ARMATURE}
        return max(self.temperature_c, WARMED_C) if warm else self.temperature_c


WARMED_C = 110.0
"""What warm air brings a harness or an injector to: common practice, no published source."""
