"""Exercises of limits: what an even test without codes does not show, and what is said and done then."""

from __future__ import annotations

import numpy as np

from trainer.cases.practice_draw import BEDS_DBA
from trainer.cases.practice_pool import Pool
from trainer.circuit.chance import Stream
from trainer.circuit.profile import PASSES
from trainer.practice.course.skills import Skill
from trainer.practice.exercises.exercise import Choice, Exercise, Sounding, Spec, asks, fault_text, offered, told_apart
from trainer.practice.exercises.ranges import aim_of
from trainer.sound.bed import BedKind
from trainer.sound.render import Bed
from trainer.words import text

UNSEEN = ("nozzle", "seat", "rail", "compression", "air", "return_leak")
"""What moves no coil and clicks no armature: mechanical and hydraulic faults. Common practice, no published source."""

AFTER = ("not_shown", "injector", "module", "good")
PLAIN = 6.0
"""A fault this far from a good engine, in units of what an ear tells apart, would have been heard."""


def limit_exercise(spec: Spec, pool: Pool) -> Exercise:
    """Ask what an even test leaves open, or what to do after one."""
    chance = spec.chance
    bed = Bed(tuple(BedKind)[chance.below(len(BedKind))], BEDS_DBA[min(spec.level, len(BEDS_DBA)) - 1])
    make = {"still": _still, "after": _after, "shown": _shown}[spec.subject]
    asked, right, wrong, difficulty = make(spec, pool, bed.level_dba, chance)
    choices, at = offered(spec, [right, *wrong], chance)
    return Exercise(
        spec, pool.profile, PASSES, asks(Skill.LIMITS, difficulty, choices), asked, choices, at,
        text("exercise.limits.rule"), sounds=(Sounding(text("exercise.whole"), (), None, bed, spec.seed),),
    )  # fmt: skip


Question = tuple[str, Choice, list[Choice], float]


def _still(spec: Spec, pool: Pool, bed_dba: float, chance: Stream) -> Question:
    """Which of these could still be wrong."""
    name = UNSEEN[chance.below(len(UNSEEN))]
    right = Choice(text(f"exercise.unseen.{name}"), text("exercise.still.right"))
    shy = np.flatnonzero(pool.provoked)
    hard = aim_of(spec) > 0.0 and bool(len(shy))
    if hard:
        right = Choice(fault_text(pool.fault(int(shy[chance.below(len(shy))]))), text("exercise.still.shy"))
    rows = _plain(pool, bed_dba)
    wrong: dict[str, Choice] = {}
    while len(wrong) < 3:
        said = fault_text(pool.fault(rows[chance.below(len(rows))]))
        wrong[said] = Choice(said, text("exercise.still.heard"), "insisted")
    return text("exercise.still"), right, list(wrong.values()), 0.7 if hard else -1.1


def _shown(spec: Spec, pool: Pool, bed_dba: float, chance: Stream) -> Question:
    """Which of these would this test have shown."""
    rows = _plain(pool, bed_dba)
    place = rows[chance.below(len(rows))]
    right = Choice(fault_text(pool.fault(place)), text("exercise.shown.right"))
    shy = [int(row) for row in np.flatnonzero(pool.provoked)]
    first = chance.below(len(UNSEEN))
    names = [UNSEEN[(first + step) % len(UNSEEN)] for step in (0, 1, 3)]
    wrong = [Choice(text(f"exercise.unseen.{name}"), text("exercise.shown.unseen")) for name in names]
    if spec.level >= 3 and shy:
        said = fault_text(pool.fault(shy[chance.below(len(shy))]))
        wrong[-1] = Choice(said, text("exercise.shown.shy"))
    return text("exercise.shown"), right, wrong, -1.0 + 0.8 * (spec.level >= 3)


def _plain(pool: Pool, bed_dba: float) -> list[int]:
    """Return the faults that an even test rules out whatever words name them."""
    margins = pool.table(bed_dba).margins
    return [place for place in told_apart(pool).values() if margins[place] > PLAIN and not pool.provoked[place]]


def _after(spec: Spec, pool: Pool, bed_dba: float, chance: Stream) -> Question:
    """The circuit passes and it still misfires: what is said and done."""
    number = pool.profile.cylinders[chance.below(len(pool.profile.cylinders))]
    said = {name: text(f"exercise.after.{name}", number=number) for name in AFTER}
    why = {name: text(f"exercise.after.{name}.why") for name in AFTER}
    wrong = [
        Choice(said[name], why[name], "insisted" if name in ("injector", "module") else "not_shown")
        for name in AFTER[1:]
    ]  # fmt: skip
    return text("exercise.after", number=number), Choice(said["not_shown"], why["not_shown"]), wrong, -1.2
