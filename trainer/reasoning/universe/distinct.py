"""The distinct circuits that hypotheses leave under some work: most leave one that another leaves too."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import compress
from operator import is_not

import numpy as np

from trainer.arrays import Integers
from trainer.circuit.edits import Edit
from trainer.circuit.elements import Circuit
from trainer.circuit.fault import Conditions
from trainer.circuit.faults import KINDS, with_faults
from trainer.circuit.harness import circuit_of
from trainer.instruments.bench import Work, worked
from trainer.reasoning.universe.hypotheses import Faults


@dataclass(frozen=True, slots=True)
class Group:
    """The distinct circuits under some work, their edits of the base, and which of them each hypothesis leaves."""

    base: Circuit
    circuits: tuple[Circuit, ...]
    edits: tuple[Edit, ...]
    index: Integers


class DistinctCircuits:
    """Works the circuits of hypotheses, and keeps what it has worked."""

    def __init__(self, sound: Circuit, hypotheses: Sequence[Faults]) -> None:
        self._sound, self._hypotheses = sound, tuple(hypotheses)
        self._groups: dict[tuple[Work, bool], Group] = {}
        self._plains: dict[tuple[Conditions, bool], list[tuple[Circuit, Edit]]] = {}

    def sound(self, work: Work) -> Circuit:
        """Return the engine without a fault at the temperature of some work."""
        temperature_c = work.conditions.temperature_c
        return (
            self._sound
            if temperature_c == self._sound.temperature_c
            else circuit_of(self._sound.profile, temperature_c)
        )

    def under(self, work: Work, *, loaded: bool) -> Group:
        """Return the distinct circuits under work, as drive current or a meter sees them."""
        work = work.physical()
        kept = self._groups.get((work, loaded))
        if kept is not None:
            return kept
        sound = self.sound(work)
        base = worked(sound, (), work)
        places: dict[object, int] = {}
        circuits: list[Circuit] = []
        edits: list[Edit] = []
        index = []
        for circuit, edit in self._edited(sound, base, work, loaded=loaded):
            key = (tuple(edit.changed.items()), edit.gone, edit.added, _parts(circuit, sound) if loaded else ())
            if key not in places:
                places[key] = len(circuits)
                circuits.append(circuit)
                edits.append(edit)
            index.append(places[key])
        group = Group(base, tuple(circuits), tuple(edits), np.array(index))
        self._groups[work, loaded] = group
        return group

    def _edited(self, sound: Circuit, base: Circuit, work: Work, *, loaded: bool) -> Iterator[tuple[Circuit, Edit]]:
        """Yield every hypothesis's circuit under work, and how it differs from the sound engine's under that work.

        Where nothing but plugs has been touched, a fault differs as it did before, less what is unplugged.
        """
        if replace(work, unplugged=frozenset(), moving=None, warming=None, ran_warm=False) != Work(
            conditions=work.conditions
        ):
            for faults in self._hypotheses:
                circuit = worked(sound, faults, work)
                yield circuit, _edit(base, circuit, loaded=loaded)
            return
        off = sound.elements.keys() - base.elements.keys()
        for circuit, edit in self._under_conditions(sound, work, loaded=loaded):
            changed = {name: ohm for name, ohm in edit.changed.items() if name not in off} if off else edit.changed
            yield circuit, Edit(changed, edit.gone - off, edit.added)

    def _under_conditions(self, sound: Circuit, work: Work, *, loaded: bool) -> Iterator[tuple[Circuit, Edit]]:
        """Yield every hypothesis's circuit under conditions, which may be those under one bank's cover only."""
        if work.moving is None and work.warming is None and not work.ran_warm:
            yield from self._plain(sound, work.conditions, loaded=loaded)
            return
        for row, faults in enumerate(self._hypotheses):
            conditions = {work.conditions_of(sound.profile, fault) for fault in faults}
            if len(conditions) > 1:
                circuit = worked(sound, faults, replace(work, unplugged=frozenset()))
                yield circuit, _edit(sound, circuit, loaded=loaded)
                continue
            at_rest = Conditions(work.conditions.temperature_c)
            yield self._plain(sound, next(iter(conditions), at_rest), loaded=loaded)[row]

    def _plain(self, sound: Circuit, conditions: Conditions, *, loaded: bool) -> list[tuple[Circuit, Edit]]:
        """Return every hypothesis's circuit under conditions alone; most do not heed them."""
        kept = self._plains.get((conditions, loaded))
        if kept is None:
            at_rest = Conditions(conditions.temperature_c)
            usual = [] if conditions == at_rest else self._plain(sound, at_rest, loaded=loaded)
            kept = []
            for row, faults in enumerate(self._hypotheses):
                if usual and not any(KINDS[fault.kind].heeds_conditions for fault in faults):
                    kept.append(usual[row])
                    continue
                circuit = with_faults(sound, faults, conditions)
                kept.append((circuit, _edit(sound, circuit, loaded=loaded)))
            self._plains[conditions, loaded] = kept
        return kept


def _parts(circuit: Circuit, sound: Circuit) -> tuple[object, ...]:
    """Return what differs from the sound engine beside its wiring: coils and plates, outputs, supply."""
    odd = [
        (number, circuit.solenoids[number], circuit.returns[number])
        for number in circuit.solenoids
        if circuit.solenoids[number] is not sound.solenoids[number]
        or circuit.returns[number] is not sound.returns[number]
    ]
    feeds = [(name, feed) for name, feed in circuit.feeds.items() if feed is not sound.feeds[name]]
    rail = None if circuit.rail is sound.rail else circuit.rail
    power = None if circuit.power is sound.power else circuit.power
    return (tuple(odd), tuple(feeds), rail, power)


def _edit(base: Circuit, circuit: Circuit, *, loaded: bool) -> Edit:
    """Return what differs between two circuits' wiring, and at rest between their outputs, under a load or a meter."""
    changed: dict[str, float] = {}
    gone, added = set(), []
    before = base.elements
    # most elements are the base's own: what is another object is found without a loop of Python's
    others = map(is_not, circuit.elements.values(), map(before.get, circuit.elements))
    for name in compress(circuit.elements, others):
        old, element = before.get(name), circuit.elements[name]
        if old == element:
            continue
        ohm = element.at(loaded)
        if old is not None and (old.a, old.b) == (element.a, element.b):
            if old.at(loaded) != ohm:
                changed[name] = ohm
            continue
        if old is not None:
            gone.add(name)
        added.append((element.a, element.b, ohm))
    if circuit.power.battery_ohm != base.power.battery_ohm:
        changed["battery"] = circuit.power.battery_ohm
    gone |= base.elements.keys() - circuit.elements.keys()
    if not loaded:
        for number, driver in circuit.returns.items():
            if driver.off_ohm != base.returns[number].off_ohm:
                changed[f"output.{number}"] = driver.off_ohm
    return Edit(changed, frozenset(gone), tuple(added))


def content_of(circuit: Circuit, sound: Circuit) -> object:
    """Return a circuit's whole content under drive, as what differs from the sound engine."""
    edit = _edit(sound, circuit, loaded=True)
    return (tuple(sorted(edit.changed.items())), tuple(sorted(edit.gone)), edit.added, _parts(circuit, sound))
