"""Every single fault that a profile allows, in a fixed order."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations
from typing import Literal

from trainer.circuit.elements import Circuit, Location, Side
from trainer.circuit.fault import Conditions, Fault, FaultKind
from trainer.circuit.fault_edits import segment_name, touch_node
from trainer.circuit.faults import KINDS, faulty_circuit, stated
from trainer.circuit.harness import circuit_of, feed_scope
from trainer.circuit.profile import Profile

At = Literal["usual", "each", "grid"]
"""At the usual severity of a kind, at each one that it is given, or at each one that is reasoned with."""


def single_faults(profile: Profile, at: At = "usual") -> tuple[Fault, ...]:
    """Return all single faults of a profile, at the severities asked for."""
    circuit = circuit_of(profile)
    candidates = dict.fromkeys(_candidates(profile, at))
    return tuple(fault for fault in candidates if fits(circuit, fault))


def fits(circuit: Circuit, fault: Fault) -> bool:
    """Tell whether a fault can be in a sound circuit: its place, side, segment, pin and neighbours exist."""
    profile, rule = circuit.profile, KINDS[fault.kind]
    if fault.location not in rule.places or fault.side not in sides_at(fault.kind, fault.location):
        return False
    if fault.part is not None and fault.part not in rule.places[fault.location]:
        return False
    if fault.cylinders not in scopes_at(profile, fault.kind, fault.location, fault.side):
        return False
    if fault.kind is FaultKind.RETURN_TO_HEATER and not profile.connector_of(fault.cylinders[0]).heater_pin:
        return False
    if fault.kind is FaultKind.RETURN_TO_RETURN and not _side_by_side(profile, fault):
        return False
    try:
        if rule.touches and fault.side is not None:
            touch_node(circuit, fault.location, fault.side, fault.cylinders)
        elif rule.scope == "segment":
            segment_name(circuit, stated(fault))
    except KeyError:
        return False
    return True


def _side_by_side(profile: Profile, fault: Fault) -> bool:
    """Tell whether two returns run where they can touch: in one loom, in one connector, under one cover."""
    first, second = fault.cylinders
    if fault.location is Location.PASS_THROUGH:
        return profile.connector_of(first) == profile.connector_of(second)
    return fault.location is not Location.UNDER_COVER or profile.bank_of(first) == profile.bank_of(second)


def sides_at(kind: FaultKind, location: Location) -> tuple[Side | None, ...]:
    """Return the sides that a kind has at a location; a coil's winding is one piece and has none."""
    if location is Location.COIL and not KINDS[kind].touches:
        return (None,)
    return KINDS[kind].sides


def scopes_at(profile: Profile, kind: FaultKind, location: Location, side: Side | None) -> list[tuple[int, ...]]:
    """Return the cylinders that one fault of a kind can take at a place: one, a pair, a connector's, an output's."""
    own: list[tuple[int, ...]] = [(number,) for number in profile.cylinders]
    scope = KINDS[kind].scope
    if scope == "all":
        return [profile.cylinders]
    if scope == "output":
        return list(profile.wiring.outputs.values())
    if scope == "pair":
        return list(combinations(profile.cylinders, 2))
    if scope == "own" or side is not Side.FEED or location is Location.COIL:
        return own
    groups = [feed_scope(profile, n) for n in profile.cylinders] + list(profile.wiring.outputs.values())
    return list(dict.fromkeys([*groups, *own]))


def _candidates(profile: Profile, at: At) -> Iterator[Fault]:
    for kind, rule in KINDS.items():
        for location, parts in rule.places.items():
            for side in sides_at(kind, location):
                for cylinders in scopes_at(profile, kind, location, side):
                    given = rule.grid_of(cylinders) if at == "grid" else rule.severities_of(cylinders)
                    amounts = given[:1] if at == "usual" else given
                    for part in parts:
                        for severity in amounts:
                            yield Fault(kind, location, cylinders, side, severity, part)


def comes_and_goes(fault: Fault, profile: Profile, temperature_c: float) -> bool:
    """Tell whether a fault does not show at this temperature, and shows where its place is moved and warm."""
    if not KINDS[fault.kind].heeds_conditions:
        return False
    provoked = Conditions(temperature_c, moved=fault.location, heated=fault.location)
    resting = faulty_circuit(profile, [fault], Conditions(temperature_c))
    at_work = faulty_circuit(profile, [fault], provoked)
    return (resting.elements, resting.returns) != (at_work.elements, at_work.returns)


def cured_by_work(fault: Fault) -> bool:
    """Tell whether a fault may be asleep after somebody worked at its contacts."""
    return fault.kind is FaultKind.CURED_BY_RESEATING
