"""Find the slip: a job card with one wrong step, which is the only one that the model's own check finds."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import cache

from trainer.cases.drawing.practice_case import BEDS_DBA
from trainer.cases.drawing.practice_pool import Pool
from trainer.circuit.chance import Stream
from trainer.circuit.codes import known_codes
from trainer.circuit.elements import Location, Side
from trainer.circuit.fault import Fault
from trainer.circuit.profile import Profile
from trainer.instruments.bench import MODULE_CONNECTOR
from trainer.instruments.requests import Request, plug_point, through_point
from trainer.practice.course.skills import Skill
from trainer.practice.exercises.difficulty_ranges import aim_of
from trainer.practice.exercises.ear_exercises import off_slots
from trainer.practice.exercises.exercise_types import Choice, Exercise, Spec, question_demand, shuffled_choices
from trainer.practice.exercises.meter_exercises import PLACES, break_location, reading_line, take_reading
from trainer.practice.reports.attempt_lines import meaning_of
from trainer.words import numbers, text

SLIPS = ("slot", "code", "connected", "leads", "conclusion")
HARDNESS = {"slot": -0.2, "code": -0.6, "connected": 0.4, "leads": 0.9, "conclusion": 0.2}
"""How hard each slip is to find, in logits: from memory."""

FOUND_AS = {"code": "named_place"}


@dataclass(frozen=True, slots=True)
class Card:
    """A job card on one broken circuit: what it claims of slots, code and place, and how it measured.

    `names_place` says that it takes the code for a place; `requests` are its four readings along the return.
    """

    place: int
    slots: tuple[int, ...]
    names_place: bool
    requests: tuple[Request, ...]
    concluded: Location


def slips_in(card: Card, pool: Pool, seed: int) -> tuple[int, ...]:
    """Return the steps of a card that the model does not bear out, counted from 0.

    Step 0 is what was heard, 1 the code, 2 to 5 the readings, 6 the conclusion. A reading is wrong where it was taken
    so that it cannot be trusted; the conclusion where the readings, taken rightly, leave another place.
    """
    fault = pool.fault(card.place)
    wrong = []
    if card.slots != off_slots(pool, card.place, BEDS_DBA[0]):
        wrong.append(0)
    if card.names_place:
        wrong.append(1)
    wrong += [
        2 + row
        for row, request in enumerate(card.requests)
        if take_reading(pool.profile, (fault,), request, seed).slips
    ]
    rightly = _requests(pool.profile, fault.cylinders[0])
    told = break_location([take_reading(pool.profile, (fault,), request, seed).value is None for request in rightly])
    if told is not card.concluded:
        wrong.append(6)
    return tuple(wrong)


def card_with(pool: Pool, place: int, slip: str, chance: Stream) -> Card:
    """Return a right card with one slip worked into it; "" leaves it right."""
    fault = pool.fault(place)
    number = fault.cylinders[0]
    card = Card(place, off_slots(pool, place, BEDS_DBA[0]), False, _requests(pool.profile, number), fault.location)
    if slip == "slot":
        row = pool.profile.cylinders.index(number)
        other = row + 1 if row + 1 < len(pool.profile.cylinders) else row - 1
        return replace(card, slots=(pool.profile.cylinders[other],))
    if slip == "code":
        return replace(card, names_place=True)
    if slip in ("connected", "leads"):
        row = 3 if slip == "connected" else 0
        changed = replace(card.requests[row], connected=slip == "connected", nulled=slip != "leads")
        return replace(card, requests=(*card.requests[:row], changed, *card.requests[row + 1 :]))
    if slip == "conclusion":
        others = [one for one in PLACES if one is not fault.location]
        return replace(card, concluded=others[chance.below(len(others))])
    return card


def _requests(profile: Profile, number: int) -> tuple[Request, ...]:
    return (
        Request("pair", MODULE_CONNECTOR, "harness", number),
        Request("wire", cylinder=number, side=Side.RETURN, location=Location.ENGINE_HARNESS),
        Request("pair", through_point(profile, number), "cover", number),
        Request("pair", plug_point(number), "injector", number),
    )


@cache
def suitable(pool: Pool) -> tuple[int, ...]:
    """Return the places of a pool that a card can be written about: one cylinder, its return broken, its code set."""
    return tuple(place for place in range(len(pool.rows)) if _suits(pool, place))


def _suits(pool: Pool, place: int) -> bool:
    fault: Fault = pool.fault(place)
    one = len(fault.cylinders) == 1 and fault.location in PLACES and fault.side in (Side.RETURN, None)
    if not one or pool.provoked[place] or not pool.codes[place].any():
        return False
    readings = [
        take_reading(pool.profile, (fault,), request, 0) for request in _requests(pool.profile, fault.cylinders[0])
    ]
    told = break_location([one.value is None for one in readings])
    return told is fault.location and off_slots(pool, place, BEDS_DBA[0]) == fault.cylinders


def find_the_slip(spec: Spec, pool: Pool) -> Exercise:
    """Ask which step of a card is wrong."""
    chance = spec.chance
    places = suitable(pool)
    place = places[chance.below(len(places))]
    order = sorted(SLIPS, key=lambda name: abs(HARDNESS[name] - aim_of(spec)))
    slip = order[chance.below(3)]
    card = card_with(pool, place, slip, chance)
    if slip == "leads" and not take_reading(pool.profile, (pool.fault(place),), card.requests[0], spec.seed).slips:
        slip, card = "code", card_with(pool, place, "code", chance)
    (wrong_step,) = slips_in(card, pool, spec.seed)
    steps = _steps(card, pool, spec.seed)
    shown = tuple(text("exercise.card.step", number=row, step=step) for row, step in enumerate(steps, 1))
    right = Choice(
        wrong_step,
        text("exercise.card.choice", number=wrong_step + 1),
        text(f"exercise.card.{FOUND_AS.get(slip, slip)}"),
    )
    others = [row for row in range(len(steps)) if row != wrong_step]
    wrong: list[Choice] = []
    while len(wrong) < 3:
        row = others.pop(chance.below(len(others)))
        wrong.append(Choice(row, text("exercise.card.choice", number=row + 1), text("exercise.card.stands")))
    choices, at = shuffled_choices(spec, [right, *wrong], chance)
    fault = pool.fault(place)
    return Exercise(
        spec, pool.profile, fault.location.value,
        question_demand(Skill.REASONING, HARDNESS[slip], choices), text("exercise.card"),
        choices, at, text("exercise.card.rule"), shown=shown,
    )  # fmt: skip


def _steps(card: Card, pool: Pool, seed: int) -> Sequence[str]:
    """Return a card's steps in words."""
    fault = pool.fault(card.place)
    code = next(one for one, up in zip(known_codes(pool.profile).values(), pool.codes[card.place], strict=True) if up)
    key = "exercise.card.code_place" if card.names_place else "exercise.card.code"
    readings = []
    for request in card.requests:
        how = "plug_on" if request.connected else "rightly" if request.nulled else "not_nulled"
        reading = reading_line(request, take_reading(pool.profile, (fault,), request, seed))
        readings.append(f"{reading} {text(f'exercise.card.{how}')}")
    return [
        text("exercise.card.heard", cylinders=numbers(card.slots)),
        text(
            key, code=code.code, meaning=meaning_of(code.sensed, code.cylinder), place=text(f"location.{Location.COIL}")
        ),
        *readings,
        text("exercise.card.concluded", place=text(f"location.{card.concluded}")),
    ]
