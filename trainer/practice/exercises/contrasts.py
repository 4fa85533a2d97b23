"""The listening tour: labelled examples in pairs that differ in one thing, found among an engine's faults.

Comparing examples side by side teaches more than one after another apart (Alfieri, Nokes-Malach and Schunn 2013).
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise

from trainer.cases.drawing.practice_case import BEDS_DBA
from trainer.cases.drawing.practice_pool import NO_CURRENT_A, Pool
from trainer.circuit.faults import Fault
from trainer.practice.exercises.ear_exercises import heard_at
from trainer.practice.exercises.exercise_types import Sounding
from trainer.reasoning.universe.hearing import Heard
from trainer.sound.bed import BedKind
from trainer.sound.render import Bed
from trainer.words import numbers, text

TOURED = "north_v8"
"""The engine whose sounds the tour plays: the first of the lessons."""

SEED = 20
"""The tour sounds the same every time."""

QUIET = Bed(BedKind.QUIET_BAY, BEDS_DBA[0])
LOUD = Bed(BedKind.QUIET_BAY, BEDS_DBA[-1])

LADDER = (Heard.EVEN, Heard.WEAK, Heard.DULL, Heard.VERY_FAINT, Heard.NOTHING)


@dataclass(frozen=True, slots=True)
class Contrast:
    """Two labelled sounds of one engine; `name` has the sentence that says in what they differ."""

    name: str
    first: Sounding
    second: Sounding


def contrasts_of(pool: Pool) -> tuple[Contrast, ...]:
    """Return the pairs that an engine can give, from even down to nothing, then groups and beds."""
    number = pool.profile.cylinders[len(pool.profile.cylinders) // 2]
    examples = {heard: _example(pool, heard, number) for heard in LADDER}
    pairs = []
    for upper, lower in pairwise(LADDER):
        first, second = examples[upper], examples[lower]
        if first is not None and second is not None:
            if upper is Heard.EVEN:
                first = ((), second[1])
            name = f"{upper}_{lower}"
            pairs.append(Contrast(name, _slot(upper, first, QUIET), _slot(lower, second, QUIET)))
    faint = examples[Heard.VERY_FAINT]
    group = next((place for place in range(len(pool.rows)) if _is_silent_group(pool, place)), None)
    if faint is not None and group is not None:
        pairs.append(Contrast("one_group", _whole(faint[0]), _whole((pool.fault(group),))))
    if faint is not None:
        pairs.append(
            Contrast("quiet_loud", _slot(Heard.VERY_FAINT, faint, QUIET), _slot(Heard.VERY_FAINT, faint, LOUD))
        )
    return tuple(pairs)


Example = tuple[tuple[Fault, ...], int]


def _example(pool: Pool, heard: Heard, number: int) -> Example | None:
    """Return faults and the slot in which an engine sounds so, the wanted cylinder's where one does."""
    if heard is Heard.EVEN:
        return (), number
    found: list[Example] = []
    for place in range(len(pool.rows)):
        fault = pool.fault(place)
        if pool.provoked[place]:
            continue
        for column, cylinder in enumerate(pool.profile.cylinders):
            driven = heard is Heard.VERY_FAINT and pool.own_a[place, column] > NO_CURRENT_A
            if cylinder in fault.cylinders and not driven and heard_at(pool, place, column, QUIET.level_dba) is heard:
                found.append(((fault,), cylinder))
    return min(found, key=lambda one: (len(one[0][0].cylinders), one[1] != number), default=None)


def _is_silent_group(pool: Pool, place: int) -> bool:
    fault = pool.fault(place)
    return 2 < len(fault.cylinders) < len(pool.profile.cylinders) and all(
        heard_at(pool, place, pool.profile.cylinders.index(n), QUIET.level_dba) in (Heard.VERY_FAINT, Heard.NOTHING)
        for n in fault.cylinders
    )


def _slot(heard: Heard, example: Example, bed: Bed) -> Sounding:
    faults, number = example
    label = text("tour.slot", heard=text(f"heard.{heard}"), number=number, bed=bed.level_dba)
    return Sounding(label, faults, (number,), bed, SEED)


def _whole(faults: tuple[Fault, ...]) -> Sounding:
    label = text("tour.whole", cylinders=numbers(faults[0].cylinders))
    return Sounding(label, faults, None, QUIET, SEED)
