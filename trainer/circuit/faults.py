"""Faults as edits of circuit elements. Nothing outside this file asks which kind a fault is."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field, replace
from enum import StrEnum

from trainer.circuit.constraints import Cylinders, Severity
from trainer.circuit.elements import (
    BATTERY,
    GROUND,
    HEATER,
    OPEN_OHM,
    Circuit,
    Element,
    Location,
    Part,
    ReturnDriver,
    Side,
    coil_node,
)
from trainer.circuit.harness import circuit_of, feed_scope, middle_node, pass_through_node, scope_name
from trainer.circuit.profile import Profile


class FaultKind(StrEnum):
    """What can be wrong."""

    OPEN = "open"
    ADDED_RESISTANCE = "added_resistance"
    FAILS_UNDER_LOAD = "fails_under_load"
    OPEN_WHEN_MOVED = "open_when_moved"
    OPEN_WHEN_HOT = "open_when_hot"
    CURED_BY_RESEATING = "cured_by_reseating"
    SHORT_ACROSS_PAIR = "short_across_pair"
    SHORT_TO_GROUND = "short_to_ground"
    SHORT_TO_BATTERY = "short_to_battery"
    RETURN_TO_RETURN = "return_to_return"
    RETURN_TO_HEATER = "return_to_heater"
    CROSSED_RETURNS = "crossed_returns"
    SHORTED_TURNS = "shorted_turns"
    DEAD_RETURN_DRIVER = "dead_return_driver"
    STUCK_RETURN_DRIVER = "return_driver_stuck_on"
    DEAD_FEED_DRIVER = "dead_feed_driver"
    LOW_SUPPLY = "low_supply"
    SLOW_RECHARGE = "slow_recharge"
    NO_SUPPLY = "no_supply"
    STUCK_ARMATURE = "stuck_armature"
    SLUGGISH_ARMATURE = "sluggish_armature"
    WORN_ARMATURE = "worn_armature"


@dataclass(frozen=True, slots=True)
class Fault:
    """One fault: kind, where, which side, every cylinder behind it, and how bad (unit by kind, see KINDS)."""

    kind: FaultKind
    location: Location
    cylinders: Cylinders
    side: Side | None = None
    severity: Severity | None = None
    part: Part | None = None

    def amount(self) -> float:
        """Return the severity, or the kind's usual one where none is given."""
        return KINDS[self.kind].severities[0] if self.severity is None else self.severity


@dataclass(frozen=True, slots=True)
class Conditions:
    """What is being done to the engine while it is heard or measured."""

    temperature_c: float = 20.0
    moved: Location | None = None
    heated: Location | None = None
    reseated: frozenset[str] = field(default_factory=frozenset)

    def local_c(self, location: Location) -> float:
        """Return the temperature at a location; a warmed place stands at WARMED_C."""
        return max(self.temperature_c, WARMED_C) if self.heated == location else self.temperature_c


WARMED_C = 110.0
"""What warm air brings a harness or an injector to: common practice, no published source."""

Edit = Callable[[Circuit, Fault, Conditions], Circuit]


@dataclass(frozen=True, slots=True)
class Kind:
    """What a kind of fault allows: places, sides, what its cylinders are, severities (usual one first), its edit."""

    edit: Edit
    places: Mapping[Location, tuple[Part, ...]]
    sides: tuple[Side | None, ...]
    scope: str
    severities: tuple[float, ...]
    unit: str

    @property
    def heeds_conditions(self) -> bool:
        """Whether movement, warmth or re-seating changes what the fault does."""
        return self.edit in (_when_moved, _when_hot, _until_reseated)


def segment_name(circuit: Circuit, fault: Fault) -> str:
    """Return the element that a series fault sits in; raises KeyError where the profile has no such segment."""
    scope = scope_name(fault.cylinders)
    if fault.location is Location.COIL:
        return _known(circuit, [f"{Location.COIL}.winding.{scope}"])
    part = fault.part or KINDS[fault.kind].places[fault.location][0]
    if part is Part.CONTACT:
        return _known(circuit, [f"{fault.location}.contact.{fault.side}.{scope}"])
    runs = [f"{fault.location}.{run}.{fault.side}.{scope}.near" for run in ("wire", "trunk")]
    return _known(circuit, runs)


def _known(circuit: Circuit, names: Iterable[str]) -> str:
    wanted = tuple(names)
    for name in wanted:
        if name in circuit.elements:
            return name
    raise KeyError(wanted[0])


def touch_node(circuit: Circuit, location: Location, side: Side, cylinders: tuple[int, ...]) -> str:
    """Return the node that a short at a place touches; raises KeyError where the profile has no such segment."""
    if location is Location.COIL:
        return coil_node(cylinders[0], side)
    if location is Location.PASS_THROUGH:
        node = pass_through_node(side, cylinders, "cover")
    else:
        node = middle_node(location, side, cylinders)
    trunk = middle_node(location, side, cylinders, "trunk")
    for candidate in (node, trunk):
        if any(candidate in (element.a, element.b) for element in circuit.elements.values()):
            return candidate
    raise KeyError(node)


def _series(circuit: Circuit, fault: Fault, ohm: float, loaded_ohm: float | None = None) -> Circuit:
    name = segment_name(circuit, fault)
    base = circuit.elements[name].ohm
    return circuit.with_resistance(name, base + ohm, None if loaded_ohm is None else base + loaded_ohm)


def _link(circuit: Circuit, fault: Fault, a: str, b: str, ohm: float) -> Circuit:
    name = f"fault.{fault.kind}.{fault.location}.{fault.side}.{scope_name(fault.cylinders)}"
    return circuit.with_element(name, Element(a, b, ohm, fault.location, Part.LINK, fault.side, fault.cylinders))


def _open(circuit: Circuit, fault: Fault, _conditions: Conditions) -> Circuit:
    return _series(circuit, fault, OPEN_OHM)


def _added(circuit: Circuit, fault: Fault, _conditions: Conditions) -> Circuit:
    return _series(circuit, fault, fault.amount())


def _under_load(circuit: Circuit, fault: Fault, _conditions: Conditions) -> Circuit:
    return _series(circuit, fault, 0.0, fault.amount())


def _when_moved(circuit: Circuit, fault: Fault, conditions: Conditions) -> Circuit:
    return _series(circuit, fault, OPEN_OHM) if conditions.moved == fault.location else circuit


def _when_hot(circuit: Circuit, fault: Fault, conditions: Conditions) -> Circuit:
    hot = conditions.local_c(fault.location) >= fault.amount()
    return _series(circuit, fault, OPEN_OHM) if hot else circuit


def _until_reseated(circuit: Circuit, fault: Fault, conditions: Conditions) -> Circuit:
    cured = segment_name(circuit, fault) in conditions.reseated
    return circuit if cured else _series(circuit, fault, fault.amount())


def _across(circuit: Circuit, fault: Fault, _conditions: Conditions) -> Circuit:
    (cylinder,) = fault.cylinders
    shared = fault.location in (Location.ENGINE_HARNESS, Location.PASS_THROUGH)
    scope = feed_scope(circuit.profile, cylinder) if shared else (cylinder,)
    feed = touch_node(circuit, fault.location, Side.FEED, scope)
    back = touch_node(circuit, fault.location, Side.RETURN, (cylinder,))
    return _link(circuit, fault, feed, back, fault.amount())


def _touching(other: str) -> Edit:
    def edit(circuit: Circuit, fault: Fault, _conditions: Conditions) -> Circuit:
        node = touch_node(circuit, fault.location, fault.side or Side.RETURN, fault.cylinders)
        return _link(circuit, fault, node, other, fault.amount())

    return edit


def _return_to_return(circuit: Circuit, fault: Fault, _conditions: Conditions) -> Circuit:
    first, second = fault.cylinders
    a, b = (touch_node(circuit, fault.location, Side.RETURN, (n,)) for n in (first, second))
    return _link(circuit, fault, a, b, fault.amount())


def _crossed(circuit: Circuit, fault: Fault, _conditions: Conditions) -> Circuit:
    names = [f"{Location.ENGINE_HARNESS}.wire.{Side.RETURN}.{n}.far" for n in fault.cylinders]
    first, second = (circuit.elements[name] for name in names)
    swapped = circuit.with_element(names[0], replace(first, b=second.b))
    return swapped.with_element(names[1], replace(second, b=first.b))


def _shorted_turns(circuit: Circuit, fault: Fault, _conditions: Conditions) -> Circuit:
    """Fewer turns, and the shorted ones a closed ring on the core: seen from the coil, a resistance across it."""
    (cylinder,) = fault.cylinders
    share = fault.amount()
    winding, ring = f"{Location.COIL}.winding.{cylinder}", f"{Location.COIL}.ring.{cylinder}"
    ohm = circuit.elements[winding].ohm
    left = 1.0 - share
    closed = 1.0 / (ohm * left * left / share) + 1.0 / (circuit.elements[ring].ohm * left * left)
    solenoid = circuit.solenoids[cylinder]
    edited = circuit.with_resistance(winding, ohm * left).with_resistance(ring, 1.0 / closed)
    fewer = {cylinder: replace(solenoid, turns=solenoid.turns * left)}
    return replace(edited, solenoids={**circuit.solenoids, **fewer})


def _return_driver(change: Callable[[ReturnDriver], ReturnDriver]) -> Edit:
    def edit(circuit: Circuit, fault: Fault, _conditions: Conditions) -> Circuit:
        changed = {n: change(circuit.returns[n]) for n in fault.cylinders}
        return replace(circuit, returns={**circuit.returns, **changed})

    return edit


def _dead_feed(circuit: Circuit, fault: Fault, _conditions: Conditions) -> Circuit:
    output = circuit.profile.output_of(fault.cylinders[0])
    dead = replace(circuit.feeds[output], on_ohm=OPEN_OHM)
    return replace(circuit, feeds={**circuit.feeds, output: dead})


def _low(circuit: Circuit, fault: Fault, _conditions: Conditions) -> Circuit:
    return replace(circuit, rail=replace(circuit.rail, supply_v=circuit.rail.supply_v * fault.amount()))


def _slow(circuit: Circuit, fault: Fault, _conditions: Conditions) -> Circuit:
    return replace(circuit, rail=replace(circuit.rail, source_ohm=circuit.rail.source_ohm * fault.amount()))


def _armature(change: Callable[[Fault], Mapping[str, float]]) -> Edit:
    def edit(circuit: Circuit, fault: Fault, _conditions: Conditions) -> Circuit:
        (cylinder,) = fault.cylinders
        old = circuit.solenoids[cylinder]
        factors = change(fault)
        new = replace(old, **{name: getattr(old, name) * factor for name, factor in factors.items()})
        return replace(circuit, solenoids={**circuit.solenoids, cylinder: new})

    return edit


_WIRES = {
    Location.ENGINE_HARNESS: (Part.WIRE, Part.CONTACT),
    Location.PASS_THROUGH: (Part.CONTACT,),
    Location.UNDER_COVER: (Part.WIRE, Part.CONTACT),
}
_SERIES = {**_WIRES, Location.COIL: (Part.WINDING,)}
_CONTACTS = dict.fromkeys(_WIRES, (Part.CONTACT,))
_TOUCH = dict.fromkeys((*_WIRES, Location.COIL), (Part.WIRE,))
_LINKS = dict.fromkeys(_WIRES, (Part.WIRE,))
_MODULE = {Location.DRIVE_MODULE: (Part.OUTPUT,)}
_PLATE = {Location.ARMATURE: (Part.OUTPUT,)}
_BOTH: tuple[Side | None, ...] = (Side.RETURN, Side.FEED)
_BACK: tuple[Side | None, ...] = (Side.RETURN,)
_NEITHER: tuple[Side | None, ...] = (None,)

KINDS: Mapping[FaultKind, Kind] = {
    FaultKind.OPEN: Kind(_open, _SERIES, _BOTH, "segment", (OPEN_OHM,), "ohm"),
    FaultKind.ADDED_RESISTANCE: Kind(_added, _WIRES, _BOTH, "segment", (20.0, 5.0, 60.0), "ohm"),
    FaultKind.FAILS_UNDER_LOAD: Kind(_under_load, _WIRES, _BOTH, "segment", (60.0, 25.0), "ohm"),
    FaultKind.OPEN_WHEN_MOVED: Kind(_when_moved, _WIRES, _BOTH, "segment", (OPEN_OHM,), "ohm"),
    FaultKind.OPEN_WHEN_HOT: Kind(_when_hot, _SERIES, _BOTH, "segment", (90.0, 75.0), "degree Celsius"),
    FaultKind.CURED_BY_RESEATING: Kind(_until_reseated, _CONTACTS, _BOTH, "segment", (OPEN_OHM, 60.0), "ohm"),
    FaultKind.SHORT_ACROSS_PAIR: Kind(_across, _TOUCH, _NEITHER, "own", (0.1,), "ohm"),
    FaultKind.SHORT_TO_GROUND: Kind(_touching(GROUND), _TOUCH, _BOTH, "segment", (0.2, 30.0), "ohm"),
    FaultKind.SHORT_TO_BATTERY: Kind(_touching(BATTERY), _LINKS, _BOTH, "segment", (0.2,), "ohm"),
    FaultKind.RETURN_TO_RETURN: Kind(_return_to_return, _LINKS, _BACK, "pair", (0.1,), "ohm"),
    FaultKind.RETURN_TO_HEATER: Kind(
        _touching(HEATER),
        dict.fromkeys((Location.PASS_THROUGH, Location.UNDER_COVER), (Part.WIRE,)),
        _BACK,
        "segment",
        (0.1,),
        "ohm",
    ),
    FaultKind.CROSSED_RETURNS: Kind(
        _crossed, {Location.ENGINE_HARNESS: (Part.WIRE,)}, _BACK, "pair", (0.0,), "none"
    ),
    FaultKind.SHORTED_TURNS: Kind(
        _shorted_turns, {Location.COIL: (Part.WINDING,)}, _NEITHER, "own", (0.25, 0.5), "share of the turns"
    ),
    FaultKind.DEAD_RETURN_DRIVER: Kind(
        _return_driver(lambda driver: replace(driver, on_ohm=driver.off_ohm, limit_v=0.0)),
        _MODULE, _BACK, "own", (0.0,), "none",
    ),
    FaultKind.STUCK_RETURN_DRIVER: Kind(
        _return_driver(lambda driver: replace(driver, off_ohm=driver.on_ohm, limit_v=0.0, clamp_v=0.0)),
        _MODULE, _BACK, "own", (0.0,), "none",
    ),
    FaultKind.DEAD_FEED_DRIVER: Kind(_dead_feed, _MODULE, (Side.FEED,), "output", (0.0,), "none"),
    FaultKind.LOW_SUPPLY: Kind(_low, _MODULE, _NEITHER, "all", (0.15, 0.4), "share of the supply"),
    FaultKind.SLOW_RECHARGE: Kind(_slow, _MODULE, _NEITHER, "all", (25.0, 60.0), "times the source resistance"),
    FaultKind.NO_SUPPLY: Kind(
        lambda circuit, _fault, _conditions: replace(circuit, rail=replace(circuit.rail, supply_v=0.0)),
        _MODULE, _NEITHER, "all", (0.0,), "none",
    ),
    FaultKind.STUCK_ARMATURE: Kind(
        _armature(lambda _fault: {"viscous_n_s_per_m": 1e7}), _PLATE, _NEITHER, "own", (0.0,), "none"
    ),
    FaultKind.SLUGGISH_ARMATURE: Kind(
        _armature(lambda fault: {"viscous_n_s_per_m": fault.amount()}),
        _PLATE, _NEITHER, "own", (150.0,), "times the viscous loss",
    ),
    FaultKind.WORN_ARMATURE: Kind(
        _armature(lambda fault: {
            "lift_m": fault.amount(), "preload_n": 1.0 / fault.amount(), "stop_damping_n_s_per_m": 0.5
        }),
        _PLATE, _NEITHER, "own", (1.8,), "times the lift",
    ),
}  # fmt: skip


OPENS = frozenset({
    FaultKind.OPEN, FaultKind.OPEN_WHEN_MOVED, FaultKind.OPEN_WHEN_HOT, FaultKind.CURED_BY_RESEATING,
    FaultKind.DEAD_RETURN_DRIVER, FaultKind.DEAD_FEED_DRIVER,
})  # fmt: skip
"""Kinds that keep current out."""

SHORTS = frozenset({
    FaultKind.SHORT_ACROSS_PAIR, FaultKind.SHORT_TO_GROUND, FaultKind.SHORT_TO_BATTERY, FaultKind.RETURN_TO_RETURN,
    FaultKind.RETURN_TO_HEATER, FaultKind.SHORTED_TURNS, FaultKind.STUCK_RETURN_DRIVER,
})  # fmt: skip
"""Kinds that give current another way, or more of it."""


def with_faults(circuit: Circuit, faults: Iterable[Fault], conditions: Conditions) -> Circuit:
    """Return the circuit with every fault in it; raises KeyError where a fault names a segment it does not have."""
    for fault in faults:
        circuit = KINDS[fault.kind].edit(circuit, fault, conditions)
    return circuit


def faulty_circuit(profile: Profile, faults: Iterable[Fault], conditions: Conditions | None = None) -> Circuit:
    """Return a profile's circuit under conditions with faults in it."""
    conditions = conditions or Conditions()
    return with_faults(circuit_of(profile, conditions.temperature_c), faults, conditions)
