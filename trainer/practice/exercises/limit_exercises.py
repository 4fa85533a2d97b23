"""Exercises about the limits of the test: an even test without codes, and what to say and do then."""

from __future__ import annotations

from collections.abc import Hashable
from dataclasses import replace
from functools import cache

import numpy as np

from trainer.cases.drawing.practice_case import BEDS_DBA, TEMPERATURE_C
from trainer.cases.drawing.practice_pool import LEAST_MARGIN, Pool, margins_of, solved_traits
from trainer.circuit.chance import Stream
from trainer.circuit.fault import Fault
from trainer.circuit.fault_space import cured_by_work
from trainer.circuit.faults import KINDS
from trainer.circuit.profile import PASSES
from trainer.practice.course.skills import Skill
from trainer.practice.exercises.difficulty_ranges import aim_of
from trainer.practice.exercises.ear_exercises import off_slots
from trainer.practice.exercises.exercise_types import (
    Choice,
    Exercise,
    Sounding,
    Spec,
    fault_text,
    fault_value,
    question_demand,
    shuffled_choices,
    unambiguous_faults,
)
from trainer.sound.bed import BedKind
from trainer.sound.render import Bed
from trainer.words import text

UNSEEN = ("nozzle", "seat", "rail", "compression", "air", "return_leak")
"""What moves no coil and clicks no armature: mechanical and hydraulic faults. Common practice, no published source."""

AFTER = ("not_shown", "provoke", "measure")
"""What comes after an even test: other tests, or what comes and goes is provoked, or a reading followed."""

BOUGHT = ("injector", "module", "good")
"""What is never said after an even test."""

PLAIN = 6.0
"""A fault this far from a good engine, in units of what an ear tells apart, would have been heard."""


def limit_exercise(spec: Spec, pool: Pool) -> Exercise:
    """Ask what an even test leaves open, or what to do after one."""
    chance = spec.chance
    bed = Bed(tuple(BedKind)[chance.below(len(BedKind))], BEDS_DBA[min(spec.level, len(BEDS_DBA)) - 1])
    make = {"still": _still, "after": _after, "shown": _shown}[spec.subject]
    asked, right, wrong, difficulty = make(spec, pool, bed.level_dba, chance)
    choices, at = shuffled_choices(spec, [right, *wrong], chance)
    return Exercise(
        spec, pool.profile, PASSES, question_demand(Skill.LIMITS, difficulty, choices), asked, choices, at,
        text("exercise.limits.rule"), sounds=(Sounding(text("exercise.whole"), (), None, bed, spec.seed),),
    )  # fmt: skip


Question = tuple[str, Choice, list[Choice], float]


def _still(spec: Spec, pool: Pool, bed_dba: float, chance: Stream) -> Question:
    """Which of these could still be wrong."""
    hidden = _hidden(pool, chance)
    easy = ("unseen", "slight")
    names = [name for name in hidden if (name in easy) == (aim_of(spec) <= 0.0)] or list(hidden)
    name = names[chance.below(len(names))]
    rows = _plain(pool, bed_dba)
    wrong: dict[Hashable, Choice] = {}
    while len(wrong) < 3:
        value, said = _named(pool.fault(rows[chance.below(len(rows))]))
        wrong[value] = Choice(value, said, text("exercise.still.heard"), "insisted")
    right = Choice(*hidden[name], text(f"exercise.still.{name}"))
    return text("exercise.still"), right, list(wrong.values()), {"unseen": -1.1, "slight": -0.7}.get(name, 0.7)


def _shown(spec: Spec, pool: Pool, bed_dba: float, chance: Stream) -> Question:
    """Which of these would this test have shown."""
    rows = _plain(pool, bed_dba)
    place = rows[chance.below(len(rows))]
    right = Choice(*_named(pool.fault(place)), text("exercise.shown.right"))
    wrong = [Choice(*named, text(f"exercise.shown.{name}")) for name, named in _hidden(pool, chance).items()]
    return text("exercise.shown"), right, wrong, -0.5


Named = tuple[Hashable, str]
"""What is chosen, as a value and in words."""


def _named(fault: Fault) -> Named:
    return fault_value(fault), fault_text(fault)


def _hidden(pool: Pool, chance: Stream) -> dict[str, Named]:
    """Return one of each sort that an even test leaves open."""
    unseen = UNSEEN[chance.below(len(UNSEEN))]
    hidden: dict[str, Named] = {"unseen": (unseen, text(f"exercise.unseen.{unseen}"))}
    slight = slight_faults(pool)
    if slight:
        hidden["slight"] = _named(slight[chance.below(len(slight))])
    shy = np.flatnonzero(pool.provoked)
    if len(shy):
        hidden["shy"] = _named(pool.fault(int(shy[chance.below(len(shy))])))
    return hidden


@cache
def slight_faults(pool: Pool) -> tuple[Fault, ...]:
    """Return faults of a pool made so slight that they set no code and sound even: solved, not assumed."""
    rows = [pool.fault(place) for place in range(len(pool.rows))]
    rows = [fault for fault in rows if len(fault.cylinders) == 1 and KINDS[fault.kind].unit == "ohm"]
    least = [replace(fault, severity=min(KINDS[fault.kind].severities)) for fault in rows]
    slighter = [one for one, fault in zip(least, rows, strict=True) if one.amount() != fault.amount()]
    solved = solved_traits(pool.profile, [(), *((fault,) for fault in slighter)], TEMPERATURE_C)
    margins = margins_of(solved.heard[1:], solved.heard[0], BEDS_DBA[0])
    even = (margins < LEAST_MARGIN) & ~solved.codes[1:].any(axis=1)
    return tuple(dict.fromkeys(fault for fault, passes in zip(slighter, even, strict=True) if passes))


def _plain(pool: Pool, bed_dba: float) -> list[int]:
    """Return the faults that an even test rules out whatever words name them."""
    margins = pool.table(bed_dba).margins
    return [
        place for place in unambiguous_faults(pool)
        if margins[place] > PLAIN and not pool.provoked[place] and not cured_by_work(pool.fault(place))
        and off_slots(pool, place, bed_dba)
    ]  # fmt: skip


def _after(spec: Spec, pool: Pool, bed_dba: float, chance: Stream) -> Question:
    """The test is even and it still misfires: what is said and done, by what else is known."""
    number = pool.profile.cylinders[chance.below(len(pool.profile.cylinders))]
    known = AFTER[chance.below(len(AFTER))]
    names = [*(name for name in AFTER if name != known), BOUGHT[chance.below(len(BOUGHT))]]
    right = Choice(known, text(f"exercise.after.{known}", number=number), text(f"exercise.after.{known}.right"))
    slips = {"injector": "insisted", "module": "insisted", "good": "not_shown"}
    wrong = [
        Choice(
            name, text(f"exercise.after.{name}", number=number), text(f"exercise.after.{name}.why"), slips.get(name, "")
        )
        for name in names
    ]
    return text(f"exercise.after.known.{known}", number=number), right, wrong, -1.2
