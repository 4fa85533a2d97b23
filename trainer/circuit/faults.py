"""Every kind of fault: where it can be, and what it does to the elements of a circuit.

Nothing outside this file, `fault` and `fault_edits` asks which kind a fault is.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from typing import Literal

from trainer.circuit import fault_edits as edits
from trainer.circuit.elements import BATTERY, GROUND, HEATER, Circuit, Damage, Location, Part, Side
from trainer.circuit.fault import SIZES, Conditions, Fault, FaultKind
from trainer.circuit.harness import circuit_of
from trainer.circuit.profile import Profile


@dataclass(frozen=True, slots=True)
class Kind:
    """What a kind of fault allows: places, sides, what its cylinders are; and its edit.

    `touches` where it links a terminal or a wire to something else; `heeds_conditions` where movement, warmth or
    re-seating changes what it does.
    """

    kind: FaultKind
    edit: edits.Edit
    places: Mapping[Location, tuple[Part, ...]]
    sides: tuple[Side | None, ...]
    scope: Literal["segment", "own", "pair", "output", "all"]
    touches: bool = False
    heeds_conditions: bool = False

    @property
    def severities(self) -> tuple[float, ...]:
        """The severities of a fault behind a single injector, the usual one first."""
        return SIZES[self.kind].severities

    def severities_of(self, cylinders: tuple[int, ...]) -> tuple[float, ...]:
        """Return the severities of a fault that this many cylinders share."""
        return SIZES[self.kind].of(cylinders)

    def grid_of(self, cylinders: tuple[int, ...]) -> tuple[float, ...]:
        """Return the severities that are reasoned with where this many cylinders share a fault."""
        return SIZES[self.kind].grid_of(cylinders)

    @property
    def unit(self) -> str:
        """The unit of its severities."""
        return SIZES[self.kind].unit


_WIRES = {
    Location.ENGINE_HARNESS: (Part.WIRE, Part.CONTACT),
    Location.PASS_THROUGH: (Part.CONTACT,),
    Location.UNDER_COVER: (Part.WIRE, Part.CONTACT),
}
_SERIES = {**_WIRES, Location.COIL: (Part.WINDING,)}
_CONTACTS = dict.fromkeys(_WIRES, (Part.CONTACT,))
_TOUCH = dict.fromkeys((*_WIRES, Location.COIL), (Part.WIRE,))
_LINKS = dict.fromkeys(_WIRES, (Part.WIRE,))
_LOOMS = dict.fromkeys((Location.ENGINE_HARNESS, Location.UNDER_COVER), (Part.WIRE,))
_HEATED = dict.fromkeys((Location.PASS_THROUGH, Location.UNDER_COVER), (Part.WIRE,))
_PLUGS = dict.fromkeys((Location.PASS_THROUGH, Location.UNDER_COVER), (Part.CONTACT,))
"""Contacts that a meter can look through while they are mated: the module's plug is off whenever one is on its pins."""
_LOOM = {Location.ENGINE_HARNESS: (Part.WIRE,)}
_WINDING = {Location.COIL: (Part.WINDING,)}
_MODULE = {Location.DRIVE_MODULE: (Part.OUTPUT,)}
_POWER = {Location.MODULE_POWER: (Part.WIRE,)}
_PLATE = {Location.ARMATURE: (Part.OUTPUT,)}
_BOTH: tuple[Side | None, ...] = (Side.RETURN, Side.FEED)
_BACK: tuple[Side | None, ...] = (Side.RETURN,)
_FEED: tuple[Side | None, ...] = (Side.FEED,)
_NEITHER: tuple[Side | None, ...] = (None,)

_burnt = edits.seen_as(Damage.BURNT, edits.added_resistance)
_pushed_back = edits.seen_as(Damage.PUSHED_BACK, edits.opened)
_spread = edits.seen_as(Damage.SPREAD, edits.while_moved(edits.opened))

_ROWS = (
    Kind(FaultKind.OPEN, edits.opened, _SERIES, _BOTH, "segment"),
    Kind(FaultKind.ADDED_RESISTANCE, edits.added_resistance, _WIRES, _BOTH, "segment"),
    Kind(FaultKind.FAILS_UNDER_LOAD, edits.fails_under_load, _WIRES, _BOTH, "segment"),
    Kind(FaultKind.FILM_ON_CONTACT, edits.film, _PLUGS, _BOTH, "segment"),
    Kind(FaultKind.BURNT_PIN, _burnt, _CONTACTS, _BOTH, "segment"),
    Kind(FaultKind.PUSHED_BACK_PIN, _pushed_back, _CONTACTS, _BOTH, "segment"),
    Kind(FaultKind.SPREAD_TERMINAL, _spread, _CONTACTS, _BOTH, "segment", heeds_conditions=True),
    Kind(
        FaultKind.OPEN_WHEN_MOVED, edits.while_moved(edits.opened), _WIRES, _BOTH, "segment", heeds_conditions=True
    ),
    Kind(FaultKind.OPEN_WHEN_HOT, edits.while_hot(edits.opened), _SERIES, _BOTH, "segment", heeds_conditions=True),
    Kind(FaultKind.CURED_BY_RESEATING, edits.until_reseated, _CONTACTS, _BOTH, "segment", heeds_conditions=True),
    Kind(FaultKind.SHORT_ACROSS_PAIR, edits.across_pair, _TOUCH, _NEITHER, "own"),
    Kind(FaultKind.CARBON_BETWEEN_PINS, edits.across_pair, _PLUGS, _NEITHER, "own"),
    Kind(FaultKind.SHORT_TO_GROUND, edits.touching(GROUND), _TOUCH, _BOTH, "segment", touches=True),
    Kind(
        FaultKind.SHORT_WHEN_MOVED, edits.while_moved(edits.touching(GROUND)), _LOOMS, _BOTH, "segment",
        touches=True, heeds_conditions=True,
    ),
    Kind(FaultKind.SHORT_TO_BATTERY, edits.touching(BATTERY), _LINKS, _BOTH, "segment", touches=True),
    Kind(FaultKind.RETURN_TO_RETURN, edits.return_to_return, _LINKS, _BACK, "pair"),
    Kind(FaultKind.RETURN_TO_HEATER, edits.touching(HEATER), _HEATED, _BACK, "segment", touches=True),
    Kind(FaultKind.CROSSED_RETURNS, edits.crossed_returns, _LOOM, _BACK, "pair"),
    Kind(FaultKind.SHORTED_TURNS, edits.shorted_turns, _WINDING, _NEITHER, "own"),
    Kind(FaultKind.WRONG_COIL, edits.wrong_coil, _WINDING, _NEITHER, "own"),
    Kind(FaultKind.DEAD_RETURN_DRIVER, edits.dead_output, _MODULE, _BACK, "own"),
    Kind(
        FaultKind.OUTPUT_FAILS_HOT, edits.while_hot(edits.dead_output), _MODULE, _BACK, "own", heeds_conditions=True
    ),
    Kind(FaultKind.STUCK_RETURN_DRIVER, edits.stuck_output, _MODULE, _BACK, "own"),
    Kind(FaultKind.DEAD_FEED_DRIVER, edits.dead_feed, _MODULE, _FEED, "output"),
    Kind(FaultKind.LOW_SUPPLY, edits.low_supply, _MODULE, _NEITHER, "all"),
    Kind(FaultKind.SLOW_RECHARGE, edits.slow_recharge, _MODULE, _NEITHER, "all"),
    Kind(FaultKind.NO_SUPPLY, edits.no_supply, _MODULE, _NEITHER, "all"),
    Kind(FaultKind.WEAK_BATTERY, edits.weak_battery, _POWER, _NEITHER, "all"),
    Kind(FaultKind.POOR_MODULE_FEED, edits.poor_feed, _POWER, _NEITHER, "all"),
    Kind(FaultKind.POOR_MODULE_GROUND, edits.poor_ground, _POWER, _NEITHER, "all"),
    Kind(FaultKind.STUCK_ARMATURE, edits.stuck_plate, _PLATE, _NEITHER, "own"),
    Kind(FaultKind.SLUGGISH_ARMATURE, edits.sluggish_plate, _PLATE, _NEITHER, "own"),
    Kind(FaultKind.STICKS_WHEN_COLD, edits.sticking_plate, _PLATE, _NEITHER, "own", heeds_conditions=True),
    Kind(FaultKind.WORN_ARMATURE, edits.worn_plate, _PLATE, _NEITHER, "own"),
)  # fmt: skip

KINDS: Mapping[FaultKind, Kind] = {row.kind: row for row in _ROWS}

OPENS = frozenset({
    FaultKind.OPEN, FaultKind.OPEN_WHEN_MOVED, FaultKind.OPEN_WHEN_HOT, FaultKind.CURED_BY_RESEATING,
    FaultKind.PUSHED_BACK_PIN, FaultKind.SPREAD_TERMINAL, FaultKind.DEAD_RETURN_DRIVER, FaultKind.OUTPUT_FAILS_HOT,
    FaultKind.DEAD_FEED_DRIVER,
})  # fmt: skip
"""Kinds that keep current out."""

SHORTS = frozenset({
    FaultKind.SHORT_ACROSS_PAIR, FaultKind.CARBON_BETWEEN_PINS, FaultKind.SHORT_TO_GROUND, FaultKind.SHORT_WHEN_MOVED,
    FaultKind.SHORT_TO_BATTERY, FaultKind.RETURN_TO_RETURN, FaultKind.RETURN_TO_HEATER, FaultKind.SHORTED_TURNS,
    FaultKind.STUCK_RETURN_DRIVER,
})  # fmt: skip
"""Kinds that give current another way, or more of it."""

UNFED = frozenset({FaultKind.NO_SUPPLY})
"""Kinds that leave nothing to hear anywhere."""

LATER_WEIGHTS: Mapping[FaultKind, float] = {
    FaultKind.FILM_ON_CONTACT: 0.5, FaultKind.BURNT_PIN: 1.0, FaultKind.PUSHED_BACK_PIN: 2.0,
    FaultKind.SPREAD_TERMINAL: 0.5, FaultKind.CARBON_BETWEEN_PINS: 0.5, FaultKind.SHORT_WHEN_MOVED: 1.0,
    FaultKind.WRONG_COIL: 0.3, FaultKind.OUTPUT_FAILS_HOT: 1.0,
    FaultKind.STICKS_WHEN_COLD: 1.0, FaultKind.WEAK_BATTERY: 2.0, FaultKind.POOR_MODULE_FEED: 1.0,
    FaultKind.POOR_MODULE_GROUND: 2.0,
}  # fmt: skip
"""How often a kind is met beside the others at its place, where an engine's file was written before it was known."""


def stated(fault: Fault) -> Fault:
    """Return a fault with the part that it has where none is given: the first that its kind has at its place."""
    if fault.part is not None or fault.location not in KINDS[fault.kind].places:
        return fault
    return replace(fault, part=KINDS[fault.kind].places[fault.location][0])


def with_faults(circuit: Circuit, faults: Iterable[Fault], conditions: Conditions) -> Circuit:
    """Return the circuit with every fault in it; raises KeyError where a fault names a segment it does not have."""
    for fault in faults:
        circuit = KINDS[fault.kind].edit(circuit, stated(fault), conditions)
    return circuit


def faulty_circuit(profile: Profile, faults: Iterable[Fault], conditions: Conditions | None = None) -> Circuit:
    """Return a profile's circuit under conditions with faults in it."""
    conditions = conditions or Conditions()
    return with_faults(circuit_of(profile, conditions.temperature_c), faults, conditions)
