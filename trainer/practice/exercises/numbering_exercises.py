"""Numbering exercises: slots come in numeric order, which is not the firing order, and each number has a place."""

from __future__ import annotations

from trainer.circuit.chance import Stream
from trainer.circuit.profile import Profile
from trainer.practice.course.skills import Skill
from trainer.practice.exercises.exercise_types import Choice, Exercise, Spec, question_demand, shuffled_choices
from trainer.practice.reports.attempt_lines import named
from trainer.words import numbers, text

NUMBERS = "numbers"
"""The class of questions in which nothing is faulty."""

BASE = {"order": -2.3, "counted": -0.9, "place": -1.4, "shared": -0.2, "backwards": 0.5}
"""How hard each question is on a plain engine, in logits: from memory."""


def numbering(spec: Spec, profile: Profile) -> Exercise:
    """Ask for a number by its place in the sequence, or for a place by its number."""
    chance = spec.chance
    make = {"order": _order, "counted": _counted, "place": _place, "shared": _shared, "backwards": _backwards}[
        spec.subject
    ]
    asked, shown, right, wrong, marked = make(profile, chance)
    choices, at = shuffled_choices(spec, [right, *wrong], chance)
    rows = len(profile.banks)
    difficulty = BASE[spec.subject] + 0.5 * (rows - 1) + 0.25 * (len(profile.cylinders) - 6)
    return Exercise(
        spec, profile, NUMBERS, question_demand(Skill.NUMBERING, difficulty, choices), asked, choices, at,
        text("exercise.numbering.rule", firing="-".join(map(str, profile.firing_order))), shown=shown, marked=marked,
    )  # fmt: skip


Question = tuple[str, tuple[str, ...], Choice, list[Choice], frozenset[int]]


def _order(profile: Profile, chance: Stream) -> Question:
    """The so-many-th slot after the burst."""
    crossed = [n for n in profile.cylinders if profile.firing_order[n - 1] != n]
    number = crossed[chance.below(len(crossed))] if crossed else profile.cylinders[chance.below(len(profile.cylinders))]
    right = Choice(number, str(number), text("exercise.order.right", number=number))
    return text("exercise.order", count=number), (), right, _wrong(profile, number, number - 1, chance), frozenset()


def _counted(profile: Profile, chance: Stream) -> Question:
    """The so-many-th sound with the burst counted among them."""
    number = profile.cylinders[chance.below(len(profile.cylinders) - 1)]
    right = Choice(number, str(number), text("exercise.counted.right", number=number, count=number + 1))
    return (
        text("exercise.counted", count=number + 1),
        (),
        right,
        _wrong(profile, number, number + 1, chance),
        frozenset(),
    )


def _backwards(profile: Profile, chance: Stream) -> Question:
    """The so-many-th slot from the end."""
    last = len(profile.cylinders)
    number = profile.cylinders[1 + chance.below(last - 2)]
    count = last - profile.cylinders.index(number)
    right = Choice(number, str(number), text("exercise.order.right", number=number))
    rest = [n for n in profile.cylinders if n not in (number, count)]
    told = [count] if count != number else []
    wrong = [*told, *(rest.pop(chance.below(len(rest))) for _time in range(3 - len(told)))]
    others = [Choice(other, str(other), text("exercise.order.other", said=other)) for other in wrong]
    return text("exercise.backwards", count=count), (), right, others, frozenset()


def _wrong(profile: Profile, number: int, miscounted: int, chance: Stream) -> list[Choice]:
    """Return wrong numbers: by the firing order, with the burst mistaken for a slot or left out, and others."""
    order = profile.firing_order[number - 1]
    wrong = []
    if order != number:
        wrong.append(Choice(order, str(order), text("exercise.which.firing", said=order), "firing_order"))
    if miscounted in profile.cylinders and miscounted != order:
        wrong.append(
            Choice(miscounted, str(miscounted), text("exercise.order.burst", said=miscounted), "counted_burst")
        )
    rest = [n for n in profile.cylinders if n not in (number, order, miscounted)]
    while rest and len(wrong) < 3:
        other = rest.pop(chance.below(len(rest)))
        wrong.append(Choice(other, str(other), text("exercise.order.other", said=other)))
    return wrong


def _place(profile: Profile, chance: Stream) -> Question:
    """Where a number sits."""
    number = profile.cylinders[chance.below(len(profile.cylinders))]
    where = _where(profile, number)
    right = Choice(number, where, text("exercise.place.right", number=number, where=where))
    others = [n for n in profile.cylinders if n != number]
    order = profile.firing_order[number - 1]
    wrong = []
    for other in sorted(others, key=lambda n: (n != order, abs(n - number)))[:3]:
        slip = "firing_order" if other == order else ""
        where = _where(profile, other)
        wrong.append(Choice(other, where, text("exercise.place.other", said=other, where=where), slip))
    return text("exercise.place", number=number), (), right, wrong, frozenset()


def _where(profile: Profile, number: int) -> str:
    bank = profile.bank_of(number)
    return text("exercise.where", bank=named(bank), place=profile.banks[bank].index(number) + 1)


def _shared(profile: Profile, chance: Stream) -> Question:
    """What the numbers that fell out together have in common."""
    groups = {f"connector:{name}": tuple(sorted(one.injectors)) for name, one in profile.wiring.connectors.items()}
    groups |= {f"output:{name}": tuple(sorted(row)) for name, row in profile.wiring.outputs.items()}
    groups |= {f"bank:{name}": tuple(sorted(row)) for name, row in profile.banks.items()}
    kept: dict[tuple[int, ...], list[str]] = {}
    for name, row in groups.items():
        if 1 < len(row) < len(profile.cylinders):  # what all share lies outside of the engine
            kept.setdefault(row, []).append(name)
    rows = sorted(kept)
    group = rows[chance.below(len(rows))]
    right_names = kept[group]
    right = Choice(
        right_names[0], _shared_name(right_names[0]), text("exercise.shared.right", cylinders=numbers(group))
    )
    wrong = [
        Choice(names[0], _shared_name(names[0]), text("exercise.shared.other", cylinders=numbers(row)))
        for row, names in sorted(kept.items())
        if row != group
    ]
    nothing = Choice("nothing", text("exercise.shared.nothing"), text("exercise.shared.one_cause"), "one_for_group")
    return text("exercise.shared", cylinders=numbers(group)), (), right, [*wrong[:2], nothing], frozenset(group)


def _shared_name(name: str) -> str:
    what, _colon, which = name.partition(":")
    return text(f"exercise.shared.{what}", name=named(which))
