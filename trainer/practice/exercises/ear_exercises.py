"""Listening exercises: which slot is not even, what a slot sounds like, whose hum it is."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

import numpy as np

from trainer.arrays import Floats
from trainer.cases.drawing.features import features_at
from trainer.cases.drawing.practice_case import BEDS_DBA
from trainer.cases.drawing.practice_pool import NO_CURRENT_A, Pool, class_of_fault
from trainer.circuit.chance import Stream
from trainer.circuit.profile import PASSES, Profile
from trainer.practice.course.demands import hearing_difficulty
from trainer.practice.course.skills import Skill
from trainer.practice.exercises.difficulty_ranges import aim_of
from trainer.practice.exercises.exercise_types import (
    Choice,
    Exercise,
    Sounding,
    Spec,
    question_demand,
    shuffled_choices,
)
from trainer.reasoning.universe.hearing import (
    DULL_DB,
    EVEN_DB,
    LOUDER_DB,
    SKIPS_DB,
    THUD_FROM_DB,
    THUD_SHARE,
    Heard,
    heard_as,
)
from trainer.sound.bed import BedKind
from trainer.sound.render import Bed
from trainer.sound.traits import CENTROID, LEVEL
from trainer.words import numbers, text

NEAREST = 16
"""An exercise is drawn from so many faults whose difficulty is nearest to its level's."""

NEARLY = 0.3
"""How much further from the level than the nearest of them another one may lie, in logits."""

PASSES_SHARE = 0.25

CLEAR_DB = 0.8
"""How far from every limit of what it is called a slot lies that is asked about."""

CLEAR_TIMES = 1.15
"""By what factor a slot that is asked about is brighter or duller than the limit between a soft click and a thud."""

LIMITS_DB = (-LOUDER_DB, EVEN_DB, DULL_DB)
"""How far under its good level a slot is where it begins to be called something else."""

BY_EAR_ALONE = 1.0
"""How much harder a sound is to judge alone than within a case, with codes and replays beside it: from memory."""

DRIVEN_A = 2.0
"""A coil that carries more than this is driven, whether it clicks or not."""

PLAINEST = 2
"""Up to this level a silent slot may be the question: anyone notices it."""

ANSWERS = (Heard.EVEN, Heard.WEAK, Heard.DULL, Heard.VERY_FAINT, Heard.NOTHING)


def which_slot(spec: Spec, pool: Pool) -> Exercise:
    """Ask which slots of a whole test are not even."""
    chance = spec.chance
    profile = pool.profile
    if chance.uniform(1)[0] < PASSES_SHARE:
        return _all_even(spec, profile, chance)
    place, bed, difficulty = draw_place(spec, pool, chance, clear_places(pool))
    fault = pool.fault(place)
    off = off_slots(pool, place, bed.level_dba)
    right = Choice(off, numbers(off), text("exercise.which.right", cylinders=numbers(off)))
    choices, at = shuffled_choices(spec, [right, *_wrong_slots(profile, off, chance)], chance)
    return Exercise(
        spec, profile, class_of_fault(fault),
        question_demand(Skill.HEARING, difficulty, choices), text("exercise.which"),
        choices, at, text("exercise.which.rule"), marked=frozenset(off),
        sounds=(Sounding(text("exercise.whole"), (fault,), None, bed, spec.seed),),
    )  # fmt: skip


def _all_even(spec: Spec, profile: Profile, chance: Stream) -> Exercise:
    bed = Bed(_kind(chance), BEDS_DBA[chance.below(len(BEDS_DBA))])
    some = _row_around(profile, profile.cylinders[chance.below(len(profile.cylinders))], chance)
    wrong = [Choice((n,), str(n), text("exercise.which.even", cylinders=n), "insisted") for n in some]
    choices, at = shuffled_choices(
        spec, [Choice((), text("exercise.none"), text("exercise.which.none")), *wrong], chance
    )
    return Exercise(
        spec, profile, PASSES, question_demand(Skill.HEARING, -1.6, choices), text("exercise.which"), choices, at,
        text("exercise.which.rule"), sounds=(Sounding(text("exercise.whole"), (), None, bed, spec.seed),),
    )  # fmt: skip


def _wrong_slots(profile: Profile, off: tuple[int, ...], chance: Stream) -> list[Choice]:
    """Return wrong answers to "which slots" that do not betray the right one by how they overlap."""
    none = Choice((), text("exercise.none"), text("exercise.which.missed", cylinders=numbers(off)), "overlooked")
    if len(off) == 1:
        return [*(_wrong_slot(profile, off[0], n) for n in _row_around(profile, off[0], chance) if n != off[0]), none]
    rest = tuple(n for n in profile.cylinders if n not in off)
    members = list(off)
    first = members.pop(chance.below(len(members)))
    told = text("exercise.which.one", cylinders=numbers(off))
    wrong = [Choice((first,), str(first), told, "one_for_group")]
    if not rest:
        second = members[chance.below(len(members))]
        return [*wrong, Choice((second,), str(second), told, "one_for_group"), none]
    other = rest[chance.below(len(rest))]
    wrong.append(Choice(rest, numbers(rest), text("exercise.which.even", cylinders=numbers(rest)), "even_slot"))
    return [*wrong, Choice((other,), str(other), text("exercise.which.even", cylinders=other), "even_slot")]


def _row_around(profile: Profile, number: int, chance: Stream) -> list[int]:
    """Return three numbers, one of them given: one, its place in the firing order, and the next.

    The given one is any of the three, so that their order tells nothing.
    """
    order, last = profile.firing_order, profile.cylinders[-1]
    starts = [number, order.index(number) + 1, number - 1 if number > 1 else last]
    start = starts[chance.below(len(starts))]
    row = dict.fromkeys((start, order[start - 1], start + 1 if start < last else 1))
    left = [n for n in profile.cylinders if n not in row]
    while len(row) < 3:
        row[left.pop(chance.below(len(left)))] = None
    return list(row)


def _wrong_slot(profile: Profile, off: int, said: int) -> Choice:
    if said == profile.firing_order[off - 1]:
        return Choice((said,), str(said), text("exercise.which.firing", said=said), "firing_order")
    if said == off + 1:
        return Choice((said,), str(said), text("exercise.which.burst", said=said), "counted_burst")
    return Choice((said,), str(said), text("exercise.which.even", cylinders=said), "even_slot")


def what_it_sounds_like(spec: Spec, pool: Pool, wanted: Heard | None = None) -> Exercise:
    """Ask what one slot sounds like beside a good engine's."""
    chance = spec.chance
    called, clear = _called(pool), clear_slots(pool)
    there = sounds_of(pool)
    if wanted not in there:
        wanted = there[chance.below(len(there))]
    places = np.flatnonzero((clear & (called == wanted)).any(axis=1))
    place, bed, difficulty = draw_place(spec, pool, chance, places)
    fault, profile = pool.fault(place), pool.profile
    distinct = [column for column, sure in enumerate(clear[place]) if sure and called[place, column] is wanted]
    column = distinct[chance.below(len(distinct))]
    number = profile.cylinders[column]
    if heard_at(pool, place, column, bed.level_dba) is not wanted:
        # a louder bed covers it: then it is not what was asked for
        bed = replace(bed, level_dba=BEDS_DBA[0])
    hums = bool(pool.hums[place, column])
    choices = tuple(
        Choice(one, text(f"heard.{one}"), text(f"exercise.what.{one}"), _mistaken(wanted, one, hums=hums))
        for one in ANSWERS
    )
    sounds = (
        Sounding(text("exercise.good_slot", number=number), (), (number,), bed, spec.seed),
        Sounding(text("exercise.this_slot", number=number), (fault,), (number,), bed, spec.seed),
    )
    return Exercise(
        spec, profile, class_of_fault(fault), question_demand(Skill.HEARING, difficulty, choices),
        text("exercise.what", number=number), choices, ANSWERS.index(wanted), text("exercise.what.rule"), sounds=sounds,
        marked=frozenset({number}), labels=tuple(str(one) for one in ANSWERS),
    )  # fmt: skip


def sounds_of(pool: Pool) -> list[Heard]:
    """Return what slots of an engine can be called beyond dispute in the quietest bed."""
    called, clear = _called(pool), clear_slots(pool)
    return [one for one in ANSWERS if (clear & (called == one)).any()]


def _mistaken(right: Heard, said: Heard, *, hums: bool) -> str:
    """Return the misconception that one answer shows where another is right."""
    if hums and said in (Heard.WEAK, Heard.EVEN):
        return "hum_for_circuit"
    return "overlooked" if said is Heard.EVEN and right is not Heard.EVEN else ""


def whose_hum(spec: Spec, pool: Pool) -> Exercise:
    """Ask what is left in a slot: the others' hum, its own current, or only the bed."""
    chance = spec.chance
    called = _called(pool)
    broken = np.array([[n in pool.fault(row).cylinders for n in pool.profile.cylinders] for row in range(len(called))])
    # a module that cuts a feed off silences others as well, after a moment of current: no question of a hum
    alone = ((pool.own_a < NO_CURRENT_A) == broken).all(axis=1)
    slots = {
        "hum": pool.hums & clear_slots(pool) & alone[:, None],
        "own": (called == Heard.DULL) & (pool.own_a > DRIVEN_A),
        "bed": (called == Heard.NOTHING) & (pool.own_a < NO_CURRENT_A),
    }
    there = [name for name, those in slots.items() if those.any() and (name != "bed" or spec.level <= PLAINEST)]
    right = there[chance.below(len(there))]
    place, bed, difficulty = draw_place(spec, pool, chance, np.flatnonzero(slots[right].any(axis=1)))
    fault, profile = pool.fault(place), pool.profile
    fitting = [n for column, n in enumerate(profile.cylinders) if slots[right][place, column]]
    number = fitting[chance.below(len(fitting))]
    slips = {"own": "hum_for_circuit", "worn": "hum_for_circuit"} if right == "hum" else {}
    names = [right, *(name for name in ("hum", "own", "bed", "worn") if name != right)]
    choices, at = shuffled_choices(
        spec,
        [
            Choice(name, text(f"exercise.hum.{name}", number=number),
                   text(f"exercise.hum.{right}.{name}", number=number), slips.get(name, ""))
            for name in names
        ],
        chance,
    )  # fmt: skip
    sounds = (
        Sounding(text("exercise.good_slot", number=number), (), (number,), bed, spec.seed),
        Sounding(text("exercise.this_slot", number=number), (fault,), (number,), bed, spec.seed),
    )
    return Exercise(
        spec, profile, class_of_fault(fault), question_demand(Skill.HEARING, difficulty, choices),
        text("exercise.hum", number=number), choices, at, text("exercise.hum.rule"), sounds=sounds,
        marked=frozenset({number}),
    )  # fmt: skip


def draw_place(
    spec: Spec, pool: Pool, chance: Stream, places: Sequence[int] | np.ndarray[tuple[int], np.dtype[np.int_]]
) -> tuple[int, Bed, float]:
    """Return a place of the pool, a bed that it is heard in, and its difficulty, near the exercise's level."""
    found = []
    for bed_dba in BEDS_DBA:
        audible = pool.table(bed_dba).audible
        found += [(int(place), bed_dba) for place in places if audible[place] and not pool.provoked[place]]
    if not found:
        found = [(int(place), BEDS_DBA[0]) for place in places]
    hard = [BY_EAR_ALONE + hearing_difficulty(features_at(pool, place, bed_dba)) for place, bed_dba in found]
    off = [abs(difficulty - aim_of(spec)) for difficulty in hard]
    nearest = sorted(range(len(found)), key=lambda row: (off[row], found[row]))[:NEAREST]
    nearest = [row for row in nearest if off[row] <= off[nearest[0]] + NEARLY]
    row = nearest[chance.below(len(nearest))]
    place, bed_dba = found[row]
    return place, Bed(_kind(chance), bed_dba), hard[row]


def _kind(chance: Stream) -> BedKind:
    return tuple(BedKind)[chance.below(len(BedKind))]


def clear_places(pool: Pool) -> list[int]:
    """Return the faults that put some slot off, and none so near to even that it can be disputed."""
    under = pool.under_good_db
    near = (np.abs(under - EVEN_DB) < CLEAR_DB) | (np.abs(under + LOUDER_DB) < CLEAR_DB)
    off = (under > EVEN_DB) | (under < -LOUDER_DB)
    return [int(place) for place in np.flatnonzero(off.any(axis=1) & ~near.any(axis=1))]


def clear_slots(pool: Pool) -> np.ndarray[tuple[int, int], np.dtype[np.bool_]]:
    """Return which slots lie so far from every limit that what they are called cannot be disputed."""
    under, brightness = pool.under_good_db, brightness_of(pool)
    clear = np.all([np.abs(under - limit) >= CLEAR_DB for limit in LIMITS_DB], axis=0)
    # between even and very faint a thud is dull where a soft click is weak
    thuds, clicks = brightness < THUD_SHARE / CLEAR_TIMES, brightness > THUD_SHARE * CLEAR_TIMES
    sure = (thuds & (np.abs(under - THUD_FROM_DB) >= CLEAR_DB)) | (clicks & (np.abs(under - SKIPS_DB) >= CLEAR_DB))
    return np.asarray(clear & (sure | (under < EVEN_DB) | (under > DULL_DB)))


def brightness_of(pool: Pool) -> Floats:
    """Return the mean frequency of each single slot as a share of the good engine's, shape (fault, cylinder)."""
    return np.asarray(pool.heard[:, 1:, CENTROID] / np.maximum(pool.good[1:, CENTROID], 1.0))


def off_slots(pool: Pool, place: int, bed_dba: float) -> tuple[int, ...]:
    """Return the cylinders whose slots are called anything but even."""
    heard = [heard_at(pool, place, column, bed_dba) for column in range(len(pool.profile.cylinders))]
    return tuple(n for n, one in zip(pool.profile.cylinders, heard, strict=True) if one is not Heard.EVEN)


def heard_at(pool: Pool, place: int, column: int, bed_dba: float) -> Heard:
    """Return what the slot of a column is called in a bed, beside the good engine's."""
    level, fine = float(pool.heard[place, column + 1, LEVEL]), float(pool.good[column + 1, LEVEL])
    return heard_as(level, fine, bed_dba, float(brightness_of(pool)[place, column]))


def _called(pool: Pool) -> np.ndarray[tuple[int, int], np.dtype[np.object_]]:
    """Return what each slot is called in the quietest bed, shape (fault, cylinder)."""
    count = len(pool.profile.cylinders)
    rows = [[heard_at(pool, place, column, BEDS_DBA[0]) for column in range(count)] for place in range(len(pool.rows))]
    return np.array(rows, dtype=object)
