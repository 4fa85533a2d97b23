"""Exercises about codes: their meaning, their other causes, and stored codes."""

from __future__ import annotations

import numpy as np

from trainer.cases.drawing.practice_pool import Pool, class_of_fault
from trainer.circuit.chance import Stream
from trainer.circuit.codes import Code, Sensed, known_codes, stored_code
from trainer.circuit.elements import Location
from trainer.practice.course.skills import Skill
from trainer.practice.exercises.exercise_types import (
    Choice,
    Exercise,
    Spec,
    fault_text,
    fault_value,
    question_demand,
    shuffled_choices,
    unambiguous_faults,
)
from trainer.practice.reports.attempt_lines import code_lines, meaning_of
from trainer.words import text


def code_exercise(spec: Spec, pool: Pool) -> Exercise:
    """Ask about codes; the subject says which question."""
    return {"says": _says, "could": _could, "old": _old}[spec.subject](spec, pool)


def _coded(pool: Pool, chance: Stream) -> tuple[int, list[Code]]:
    """Return a fault of one cylinder that sets codes, and its codes."""
    rows = [place for place in np.flatnonzero(pool.codes.any(axis=1)) if len(pool.fault(int(place)).cylinders) == 1]
    place = int(rows[chance.below(len(rows))])
    return place, _codes(pool, place)


def _codes(pool: Pool, place: int) -> list[Code]:
    return [code for code, up in zip(known_codes(pool.profile).values(), pool.codes[place], strict=True) if up]


def _says(spec: Spec, pool: Pool) -> Exercise:
    """What a code proves, or what it does not."""
    chance = spec.chance
    place, codes = _coded(pool, chance)
    fault = pool.fault(place)
    code = codes[chance.below(len(codes))]
    meaning = meaning_of(code.sensed, code.cylinder)
    right = Choice("meaning", text("exercise.says.right"), text("exercise.says.right.why", meaning=meaning))
    number = code.cylinder or fault.cylinders[0]
    wrong = [
        Choice(location, text("exercise.says.place", place=text(f"location.{location}"), number=number),
               text("exercise.says.place.why"), "code_for_location")
        for location in (Location.COIL, Location.PASS_THROUGH)
    ]  # fmt: skip
    wrong.append(
        Choice(
            "injector",
            text("exercise.says.injector", number=number),
            text("exercise.says.injector.why"),
            "code_for_location",
        )
    )
    asked = "exercise.says"
    if code.cylinder is not None and chance.below(2):
        # the other way round: what is proved is wrong here, and a place that is not proved is right
        asked = "exercise.unproved"
        left = wrong[chance.below(len(wrong))]
        proved = text("exercise.unproved.proved", meaning=meaning)
        wrong = [
            Choice(value, said, proved) for value, said in (
                (right.value, right.said),
                ("circuit", text("exercise.unproved.circuit", number=number)),
                ("once", text("exercise.unproved.once")))
        ]  # fmt: skip
        right = Choice(left.value, left.said, text("exercise.unproved.right", why=left.why))
    choices, at = shuffled_choices(spec, [right, *wrong], chance)
    difficulty = -2.0 + 0.8 * (code.cylinder not in fault.cylinders) + 0.5 * (code.sensed is not Sensed.OPEN)
    return Exercise(
        spec, pool.profile, class_of_fault(fault), question_demand(Skill.CODES, difficulty, choices),
        text(asked, code=code.code), choices, at, text("exercise.codes.rule"),
        shown=tuple(code_lines(pool.profile, [one.code for one in codes])[:-1]),
    )  # fmt: skip


def _could(spec: Spec, pool: Pool) -> Exercise:
    """Three faults leave the same codes, one does not."""
    chance = spec.chance
    groups: dict[bytes, list[int]] = {}
    apart = sorted(unambiguous_faults(pool))
    for place in apart:
        # a fault of the whole engine leaves no cylinder that another fault could be on instead
        whole = len(pool.fault(place).cylinders) == len(pool.profile.cylinders)
        if pool.codes[place].any() and not pool.provoked[place] and not whole:
            groups.setdefault(pool.codes[place].tobytes(), []).append(place)
    rows = [group for _key, group in sorted(groups.items()) if len(group) >= 3]
    left = list(rows[chance.below(len(rows))])
    same = [left.pop(chance.below(len(left))) for _time in range(3)]
    cylinders = set(pool.fault(same[0]).cylinders)
    hard = spec.level >= 3
    others = [
        place for place in apart
        if pool.codes[place].tobytes() != pool.codes[same[0]].tobytes()
        and bool(cylinders & set(pool.fault(place).cylinders)) == hard and not pool.provoked[place]
    ]  # fmt: skip
    odd = others[chance.below(len(others))]
    shown = tuple(code_lines(pool.profile, [code.code for code in _codes(pool, same[0])])[:-1])
    named = {place: (fault_value(pool.fault(place)), fault_text(pool.fault(place))) for place in (odd, *same)}
    right = Choice(*named[odd], text("exercise.could.right", codes=_listed(pool, odd)))
    wrong = [Choice(*named[place], text("exercise.could.same")) for place in same]
    choices, at = shuffled_choices(spec, [right, *wrong], chance)
    return Exercise(
        spec, pool.profile, class_of_fault(pool.fault(odd)),
        question_demand(Skill.CODES, 1.4 if hard else -0.4, choices),
        text("exercise.could"), choices, at, text("exercise.codes.rule"), shown=shown,
    )  # fmt: skip


def _listed(pool: Pool, place: int) -> str:
    return ", ".join(code.code for code in _codes(pool, place)) or text("exercise.no_code")


def _old(spec: Spec, pool: Pool) -> Exercise:
    """One code goes for good when it is cleared, the other comes back with the test; one of them is asked about."""
    chance = spec.chance
    place, codes = _coded(pool, chance)
    fault = pool.fault(place)
    named = {code.cylinder for code in codes}
    others = [n for n in pool.profile.cylinders if n not in fault.cylinders and n not in named]
    old = stored_code(pool.profile, others[chance.below(len(others))], Sensed.OPEN)
    first = sorted({*(code.code for code in codes), old.code})
    again = [code.code for code in codes]
    shown = (
        text("exercise.old.first", codes=", ".join(first)),
        text("exercise.old.again", codes=", ".join(again)),
    )
    back = [code for code in codes if code.cylinder is not None]
    about = back[chance.below(len(back))] if back and chance.below(2) else old
    said = {
        name: text(f"exercise.old.{name}", number=about.cylinder, first=old.cylinder, second=fault.cylinders[0])
        for name in ("before", "today", "two", "module")
    }
    came_back = about is not old
    why = {name: text(f"exercise.old.{'back' if came_back else 'gone'}.{name}") for name in said}
    slips = {} if came_back else {"today": "code_of_another", "two": "code_of_another"}
    key = "today" if came_back else "before"
    right = Choice(key, said[key], why[key])
    wrong = [Choice(name, said[name], why[name], slips.get(name, "")) for name in said if name != key]
    choices, at = shuffled_choices(spec, [right, *wrong], chance)
    return Exercise(
        spec, pool.profile, class_of_fault(fault), question_demand(Skill.CODES, -0.6 + 0.2 * len(codes), choices),
        text("exercise.old", code=about.code), choices, at, text("exercise.codes.rule"), shown=shown,
    )  # fmt: skip
