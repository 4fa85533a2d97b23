"""What eyes can find, at an open connector or under a cover that is off, and what a pin drag finds there.

Eyes see metal touching where it should not, a burnt track between pins, terminals that are burnt or pushed back. A
spread terminal looks sound: only a matching pin, drawn out again, feels that it does not grip.
"""

from __future__ import annotations

from collections.abc import Mapping
from functools import lru_cache

from trainer.circuit.elements import BATTERY, GROUND, HEATER, Circuit, Damage, Location, Part, Side
from trainer.circuit.harness import middle_node
from trainer.circuit.profile import ByContent, Profile
from trainer.instruments.bench import (
    Pin,
    Work,
    break_points,
    contacts_of,
    cylinders_at,
    feed_names,
    halves_of,
    node_of,
)

SIGHT = ":"
"""Separates the damage from the contact's name in a sighting; for a bridge a sighting is just the place."""

SOURCES = {GROUND, BATTERY, HEATER}


def seen_bridges(circuit: Circuit, work: Work) -> frozenset[str]:
    """Return the open break points, and the banks with their cover off, where something bridges.

    A break in copper or a film on a pin is not seen; burnt, melted or rubbed metal that touches other metal is, and so
    is a burnt track.
    """
    touched = {
        node
        for element in circuit.elements.values()
        if element.part is Part.LINK and element.a not in SOURCES
        for node in (element.a, element.b)
    }
    if not touched:
        return frozenset()
    seen = {point for point in work.unplugged if touched & _terminals(ByContent(circuit.profile), point)}
    seen |= {bank for bank in work.covers_off if touched & _under_cover(circuit, bank)}
    return frozenset(seen)


def damage_seen(profile: Profile, damaged: Mapping[str, Damage], work: Work) -> frozenset[str]:
    """Return what eyes see of the damage to some contacts."""
    opened = _opened(profile, work)
    return frozenset(
        f"{damage}{SIGHT}{name}" for name, damage in damaged.items() if name in opened and damage is not Damage.SPREAD
    )


def damage_felt(profile: Profile, damaged: Mapping[str, Damage], work: Work) -> frozenset[str]:
    """Return what a matching pin feels of the damage to some contacts."""
    spread = {name for name, damage in damaged.items() if damage is Damage.SPREAD} | work.spread
    return frozenset(f"{Damage.SPREAD}{SIGHT}{name}" for name in spread & _opened(profile, work))


def _opened(profile: Profile, work: Work) -> frozenset[str]:
    return frozenset[str]().union(*(contacts_of(profile, point) for point in work.unplugged))


def sightings_of(profile: Profile) -> tuple[str, ...]:
    """Return everything that eyes can find on an engine: bridges by their place, damage by its contact."""
    points = break_points(profile)
    contacts = dict.fromkeys(name for point in points for name in sorted(contacts_of(profile, point)))
    return (*points, *profile.banks, *(f"{damage}{SIGHT}{name}" for name in contacts for damage in Damage))


@lru_cache(256)
def _terminals(engine: ByContent, point: str) -> frozenset[str]:
    profile = engine.profile
    pins = [
        Pin(point, half, side, name)
        for half in halves_of(point)
        for side in Side
        for name in (
            feed_names(profile, point) if side is Side.FEED else [str(n) for n in cylinders_at(profile, point)]
        )
    ]
    return frozenset(node_of(profile, pin) for pin in pins)


def _under_cover(circuit: Circuit, bank: str) -> set[str]:
    numbers = set(circuit.profile.banks[bank])
    return {
        middle_node(element.location, element.side, element.cylinders)
        for element in circuit.elements.values()
        if element.location is Location.UNDER_COVER
        and element.part is Part.WIRE
        and element.side is not None
        and set(element.cylinders) <= numbers
    }
