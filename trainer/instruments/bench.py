"""What has been done to the engine so far, and the circuit that this leaves: unplugged, swapped, replaced, moved.

Break points are named `module_connector`, `pass_through.NAME` and `injector_plug.N`; a pin at one has a half, a side
and a cylinder or feed output.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field, replace

from trainer.circuit.elements import Circuit, Location, Part, Side, coil_node, core_node, feed_pin, return_pin
from trainer.circuit.fault import Conditions, Fault
from trainer.circuit.fault_edits import fed_by
from trainer.circuit.faults import with_faults
from trainer.circuit.harness import (
    circuit_of,
    feed_scope,
    injector_plug_node,
    module_plug_node,
    pass_through_node,
    scope_name,
)
from trainer.circuit.profile import Profile
from trainer.instruments.tries import Try

MODULE_CONNECTOR = "module_connector"
SPREAD_OHM = 2.0
"""What a terminal adds once a probe has been pushed into it: common practice, no published source."""

DUMMY_LOAD_OHM = 12.0
"""A wire-wound resistor in place of an injector."""


@dataclass(frozen=True, slots=True)
class Work:
    """The state of the engine by what was done to it.

    `moving` and `warming` are the tries that the conditions' places are moved and warmed in; without one, as in records
    of early versions, whatever is moved or warmed shows its fault. `proved_dead` says that volts at rest were read
    since anything was driven, and that there were none. `ran_warm` says that the engine has just run until it was warm
    everywhere; its copper is taken to be as before.
    """

    conditions: Conditions = field(default_factory=Conditions)
    unplugged: frozenset[str] = frozenset()
    covers_off: frozenset[str] = frozenset()
    swapped: tuple[tuple[int, int], ...] = ()
    replaced: frozenset[tuple[Location, int]] = frozenset()
    dummy_loads: frozenset[int] = frozenset()
    spread: frozenset[str] = frozenset()
    moving: Try | None = None
    warming: Try | None = None
    proved_dead: bool = False
    ran_warm: bool = False

    def electrical(self) -> Work:
        """Return the part of the work that changes a circuit: covers that are off, and a proof, do not."""
        return replace(self, covers_off=frozenset(), proved_dead=False)

    def physical(self) -> Work:
        """Return the work that leaves the same circuits: a try without result is none, how it was made is left out."""
        moves, warms = (one is None or one.shows for one in (self.moving, self.warming))
        conditions = replace(
            self.conditions,
            moved=self.conditions.moved if moves else None,
            heated=self.conditions.heated if warms else None,
        )
        moving, warming = (Try(one.bank, number=0) if one and one.shows and one.bank else None for one in self._tries)
        return replace(self.electrical(), conditions=conditions, moving=moving, warming=warming)

    def as_tried(self) -> Work:
        """Return the work as what was tried, whether or not a fault would show."""
        moving, warming = (one and replace(one, shows=True) for one in self._tries)
        return replace(self.electrical(), moving=moving, warming=warming)

    @property
    def _tries(self) -> tuple[Try | None, Try | None]:
        return self.moving, self.warming

    def conditions_of(self, profile: Profile, fault: Fault) -> Conditions:
        """Return the conditions at a fault: what is moved or warmed under the other bank's cover is not, for it."""
        conditions = self.conditions
        if self.moving is None and self.warming is None and not self.ran_warm:
            return conditions
        banks = {profile.bank_of(number) for number in fault.cylinders}
        moves, warms = (one is None or one.reaches(banks) for one in self._tries)
        heated = conditions.heated if warms else None
        return replace(
            conditions,
            moved=conditions.moved if moves else None,
            heated=fault.location if self.ran_warm else heated,
        )


@dataclass(frozen=True, slots=True)
class Pin:
    """One terminal at a break point; `half` is `module`, `harness`, `engine`, `cover` or `injector`."""

    break_point: str
    half: str
    side: Side
    name: str


def break_points(profile: Profile) -> tuple[str, ...]:
    """Return every place where the circuit can be opened, from the module to the injectors."""
    through = [f"pass_through.{name}" for name in profile.wiring.connectors]
    return (MODULE_CONNECTOR, *through, *(f"injector_plug.{number}" for number in profile.cylinders))


def cylinders_at(profile: Profile, break_point: str) -> tuple[int, ...]:
    """Return the cylinders whose circuit runs through a break point; raises KeyError for an unknown one."""
    if break_point == MODULE_CONNECTOR:
        return profile.cylinders
    kind, _dot, name = break_point.partition(".")
    if kind == "pass_through":
        return profile.wiring.connectors[name].injectors
    if kind == "injector_plug" and name.isdigit() and int(name) in profile.cylinders:
        return (int(name),)
    raise KeyError(break_point)


def halves_of(break_point: str) -> tuple[str, str]:
    """Return the two halves of a break point, towards the module first."""
    if break_point == MODULE_CONNECTOR:
        return ("module", "harness")
    return ("engine", "cover") if break_point.startswith("pass_through.") else ("harness", "injector")


def contacts_of(profile: Profile, break_point: str) -> frozenset[str]:
    """Return the names of the mating contacts that unplugging opens."""
    cylinders = cylinders_at(profile, break_point)
    if break_point == MODULE_CONNECTOR:
        location, scopes = Location.ENGINE_HARNESS, list(profile.wiring.outputs.values())
    elif break_point.startswith("pass_through."):
        location, scopes = Location.PASS_THROUGH, [feed_scope(profile, number) for number in cylinders]
    else:
        location, scopes = Location.UNDER_COVER, [cylinders]
    feeds = {f"{location}.contact.{Side.FEED}.{scope_name(scope)}" for scope in scopes}
    return frozenset(feeds | {f"{location}.contact.{Side.RETURN}.{number}" for number in cylinders})


def feed_names(profile: Profile, break_point: str) -> dict[str, tuple[int, ...]]:
    """Return the feed pins at a break point by name, with the cylinders behind each."""
    if break_point == MODULE_CONNECTOR:
        return dict(profile.wiring.outputs)
    if break_point.startswith("injector_plug."):
        (number,) = cylinders_at(profile, break_point)
        return {str(number): (number,)}
    scopes = dict.fromkeys(feed_scope(profile, number) for number in cylinders_at(profile, break_point))
    return {scope_name(scope): scope for scope in scopes}


def feed_pin_for(profile: Profile, break_point: str, half: str, cylinder: int) -> Pin:
    """Return the feed pin at a break point that leads to a cylinder."""
    names = feed_names(profile, break_point)
    return Pin(break_point, half, Side.FEED, next(name for name, behind in names.items() if cylinder in behind))


def node_of(profile: Profile, pin: Pin) -> str:
    """Return a pin's node; raises KeyError where the break point has no such pin."""
    cylinders_at(profile, pin.break_point)
    if pin.half not in halves_of(pin.break_point):
        raise KeyError(pin.half)
    if pin.side is Side.FEED and pin.name not in feed_names(profile, pin.break_point):
        raise KeyError(pin.name)
    here = {str(number) for number in cylinders_at(profile, pin.break_point)}
    if pin.side is Side.RETURN and pin.name not in here:
        raise KeyError(pin.name)
    if pin.break_point == MODULE_CONNECTOR:
        if pin.half == "module":
            return feed_pin(pin.name) if pin.side is Side.FEED else return_pin(int(pin.name))
        return module_plug_node(pin.side, pin.name)
    if pin.break_point.startswith("pass_through."):
        behind = feed_names(profile, pin.break_point)[pin.name] if pin.side is Side.FEED else (int(pin.name),)
        return pass_through_node(pin.side, behind, pin.half)
    number = int(pin.name)
    return coil_node(number, pin.side) if pin.half == "injector" else injector_plug_node(pin.side, number)


def worked_circuit(profile: Profile, faults: Sequence[Fault], work: Work) -> Circuit:
    """Return the circuit with its faults as the work so far has left it, connectors that are off taken out."""
    return worked(circuit_of(profile, work.conditions.temperature_c), faults, work)


def worked(sound: Circuit, faults: Sequence[Fault], work: Work) -> Circuit:
    """Return a sound circuit with faults in it as the work so far has left it."""
    profile = sound.profile
    circuit = sound
    for fault in faults:
        circuit = with_faults(circuit, (fault,), work.conditions_of(profile, fault))
    for location, number in sorted(work.replaced):
        circuit = _with_part_of(sound, circuit, location, number)
    for first, second in work.swapped:
        names = [f"{Location.ENGINE_HARNESS}.contact.{Side.RETURN}.{n}" for n in (first, second)]
        a, b = (circuit.elements[name] for name in names)
        circuit = circuit.with_element(names[0], replace(a, b=b.b)).with_element(names[1], replace(b, b=a.b))
    for number in sorted(work.dummy_loads):
        circuit = _with_part_of(sound, circuit, Location.COIL, number)
        circuit = circuit.with_resistance(f"{Location.COIL}.winding.{number}", DUMMY_LOAD_OHM)
        circuit = circuit.with_resistance(f"{Location.COIL}.ring.{number}", 0.001)
    for name in sorted(work.spread):
        circuit = circuit.with_resistance(name, circuit.elements[name].ohm + SPREAD_OHM)
    gone = frozenset(name for point in work.unplugged for name in contacts_of(profile, point))
    return circuit.without(gone & frozenset(circuit.elements))


def _with_part_of(sound: Circuit, circuit: Circuit, location: Location, number: int) -> Circuit:
    """Put a known-good injector (coil and armature) or drive module in; wiring faults stay where they are."""
    if location is Location.DRIVE_MODULE:
        fed = fed_by(sound.rail, sound, circuit.power)
        return replace(circuit, returns=sound.returns, feeds=sound.feeds, rail=fed)
    kept = {
        name: element
        for name, element in circuit.elements.items()
        if not (element.location is Location.COIL and element.part is Part.LINK and number in element.cylinders)
    }
    for name in (f"{Location.COIL}.winding.{number}", f"{Location.COIL}.ring.{number}"):
        kept[name] = sound.elements[name]
    solenoids = {**circuit.solenoids, number: sound.solenoids[number]}
    return replace(circuit, elements=kept, solenoids=solenoids)


def core_shorts(circuit: Circuit) -> list[tuple[str, str, float]]:
    """Return what a meter sees of each coil's core at direct current: no resistance at all."""
    return [(core_node(n), coil_node(n, Side.RETURN), 0.0) for n in circuit.profile.cylinders]
