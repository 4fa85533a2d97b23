"""What eyes can find: metal touching where it should not, at an open connector or under a cover that is off."""

from __future__ import annotations

from trainer.circuit.elements import BATTERY, GROUND, HEATER, Circuit, Location, Part, Side
from trainer.circuit.harness import middle_node
from trainer.instruments.bench import Pin, Work, cylinders_at, feed_names, halves_of, node_of

SOURCES = {GROUND, BATTERY, HEATER}


def seen_bridges(circuit: Circuit, work: Work) -> frozenset[str]:
    """Return the open break points, and the banks with their cover off, where something bridges.

    A break in copper or a film on a pin is not seen; burnt, melted or rubbed metal that touches other metal is.
    """
    touched = {
        node
        for element in circuit.elements.values()
        if element.part is Part.LINK and element.a not in SOURCES
        for node in (element.a, element.b)
    }
    if not touched:
        return frozenset()
    seen = {point for point in work.unplugged if touched & _terminals(circuit, point)}
    seen |= {bank for bank in work.covers_off if touched & _under_cover(circuit, bank)}
    return frozenset(seen)


def _terminals(circuit: Circuit, point: str) -> set[str]:
    profile = circuit.profile
    pins = [
        Pin(point, half, side, name)
        for half in halves_of(point)
        for side in Side
        for name in (
            feed_names(profile, point) if side is Side.FEED else [str(n) for n in cylinders_at(profile, point)]
        )
    ]
    return {node_of(profile, pin) for pin in pins}


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
