"""Every single fault that a profile allows, in a fixed order."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from itertools import combinations

from trainer.circuit.elements import Circuit, Location, Side
from trainer.circuit.faults import KINDS, Conditions, Fault, FaultKind, faulty_circuit, segment_name, touch_node
from trainer.circuit.harness import circuit_of, feed_scope
from trainer.circuit.profile import Profile

_TOUCHING = (FaultKind.SHORT_TO_GROUND, FaultKind.SHORT_TO_BATTERY, FaultKind.RETURN_TO_HEATER)


def single_faults(
    profile: Profile, severities: int = 1, more: Mapping[str, tuple[float, ...]] | None = None
) -> tuple[Fault, ...]:
    """Return all single faults of a profile, with up to so many severities of each kind, and more by their unit."""
    circuit = circuit_of(profile)
    candidates = dict.fromkeys(_candidates(profile, severities, more or {}))
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
        if fault.kind in _TOUCHING and fault.side is not None:
            touch_node(circuit, fault.location, fault.side, fault.cylinders)
        elif rule.scope == "segment":
            segment_name(circuit, fault)
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
    if location is Location.COIL and kind not in _TOUCHING:
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


def _candidates(profile: Profile, severities: int, more: Mapping[str, tuple[float, ...]]) -> Iterator[Fault]:
    for kind, rule in KINDS.items():
        amounts = (*rule.severities[:severities], *more.get(rule.unit, ()))
        for location, parts in rule.places.items():
            for side in sides_at(kind, location):
                for cylinders in scopes_at(profile, kind, location, side):
                    for part in parts:
                        for severity in amounts:
                            yield Fault(kind, location, cylinders, side, severity, part)


def comes_and_goes(fault: Fault, profile: Profile, temperature_c: float) -> bool:
    """Tell whether a fault is at rest as the engine stands and at work where its place is moved and warm."""
    provoked = Conditions(temperature_c, moved=fault.location, heated=fault.location)
    resting = faulty_circuit(profile, [fault], Conditions(temperature_c))
    return resting.elements != faulty_circuit(profile, [fault], provoked).elements


def cured_by_work(fault: Fault) -> bool:
    """Tell whether a fault may be asleep after somebody worked at its contacts."""
    return fault.kind is FaultKind.CURED_BY_RESEATING
