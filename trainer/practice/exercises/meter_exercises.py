"""Meter exercises: reading a display, locating a break between readings, finding a slip."""

from __future__ import annotations

import math
from collections.abc import Sequence

from trainer.cases.drawing.practice_case import HARDEST, TEMPERATURE_C
from trainer.cases.drawing.practice_pool import class_of_fault
from trainer.cases.drawing.random_case import drawable
from trainer.circuit.elements import Location, Side
from trainer.circuit.fault import Conditions, Fault
from trainer.circuit.fault_space import comes_and_goes
from trainer.circuit.profile import PASSES, Profile
from trainer.instruments.bench import MODULE_CONNECTOR, Work
from trainer.instruments.measuring import measured
from trainer.instruments.reading import Reading, accuracy_ohm
from trainer.instruments.requests import Request, plug_point, through_point
from trainer.practice.course.skills import Skill
from trainer.practice.exercises.difficulty_ranges import aim_of
from trainer.practice.exercises.exercise_types import Choice, Exercise, Spec, question_demand, shuffled_choices
from trainer.practice.reports.attempt_lines import request_text
from trainer.words import text

WAYS = {"fine": -0.8, "connected": 0.2, "leads": 0.8, "live": -1.6}
"""How hard each way of measuring is to judge, in logits: from memory."""

VERDICTS = ("good", "high", "low", "open")
TRIES, ENOUGH = 60, 4
"""So many faults are tried, and of so many that read as wanted the one as hard as wanted is taken."""

PLACES = (Location.ENGINE_HARNESS, Location.PASS_THROUGH, Location.UNDER_COVER, Location.COIL)
"""Where a break can lie between the module connector and the injector, in the order of the current."""


def meter_exercise(spec: Spec, profile: Profile) -> Exercise:
    """Ask about readings; the subject says which question."""
    return {"says": _says, "where": _where, "slip": _slip}[spec.subject](spec, profile)


def take_reading(profile: Profile, faults: Sequence[Fault], request: Request, seed: int) -> Reading:
    """Return a reading taken alone, on an engine as it came."""
    return measured(profile, tuple(faults), Work(conditions=Conditions(TEMPERATURE_C)), request, seed).reading


def reading_line(request: Request, reading: Reading) -> str:
    """Return a reading as a job card writes it."""
    return text("reading", what=request_text(request), display=reading.display)


_SINGLES: dict[str, tuple[Fault, ...]] = {}


def _singles(profile: Profile) -> tuple[Fault, ...]:
    """Return the faults of one cylinder that are there all the time; worked out once an engine."""
    if profile.digest not in _SINGLES:
        _SINGLES[profile.digest] = tuple(
            fault for fault in drawable(profile, HARDEST)
            if len(fault.cylinders) == 1 and not comes_and_goes(fault, profile, TEMPERATURE_C)
        )  # fmt: skip
    return _SINGLES[profile.digest]


def verdict(profile: Profile, faults: Sequence[Fault], request: Request, seed: int) -> str:
    """Return what a pair reading says beside a good engine's: good, open, high or low."""
    reading, good = take_reading(profile, faults, request, seed), take_reading(profile, (), request, seed)
    if reading.value is None:
        return "open"
    assert good.value is not None
    apart = reading.value - good.value
    if abs(apart) <= 2.0 * accuracy_ohm(profile.meter, good.value):
        return "good"
    return "high" if apart > 0.0 else "low"


def _says(spec: Spec, profile: Profile) -> Exercise:
    """One resistance of a pair: good, open, too high, too low."""
    chance = spec.chance
    # what it is comes first, so that no answer is likelier than another; an open is read at a glance
    wanted = VERDICTS[chance.below(4 if aim_of(spec) < -1.0 else 3)]
    found: list[tuple[float, int, Fault]] = []
    for number in range(TRIES):
        fault = _singles(profile)[chance.below(len(_singles(profile)))]
        if verdict(profile, (fault,), _at_module(fault), spec.seed) == wanted:
            hard = _closeness(profile, fault, _at_module(fault), spec.seed)
            found.append((abs(hard - aim_of(spec)), number, fault))
        if len(found) == ENOUGH:
            break
    fault = min(found, key=lambda one: one[:2])[2] if found else _singles(profile)[0]
    request = _at_module(fault)
    reading, good = take_reading(profile, (fault,), request, spec.seed), take_reading(profile, (), request, spec.seed)
    right = verdict(profile, (fault,), request, spec.seed)
    names: Sequence[str] = VERDICTS
    if spec.easiest:
        others = [one for one in VERDICTS if one != right]
        other = others[chance.below(len(others))]
        names = [one for one in VERDICTS if one in (right, other)]
    choices = tuple(Choice(one, text(f"exercise.reading.{one}"), text(f"exercise.reading.{one}.why")) for one in names)
    return Exercise(
        spec, profile, class_of_fault(fault),
        question_demand(Skill.MEASURING, _closeness(profile, fault, request, spec.seed), choices),
        text("exercise.reading"),
        choices, names.index(right),
        text("exercise.reading.rule", percent=profile.meter.percent, counts=profile.meter.counts),
        shown=(text("exercise.reading.mate", display=good.display), reading_line(request, reading)),
        marked=frozenset(fault.cylinders),
    )  # fmt: skip


def _at_module(fault: Fault) -> Request:
    return Request("pair", MODULE_CONNECTOR, "harness", fault.cylinders[0])


def _closeness(profile: Profile, fault: Fault, request: Request, seed: int) -> float:
    """Return how hard a reading is to judge: far from good and plainly open are easy, within some limits hard."""
    reading, good = take_reading(profile, (fault,), request, seed), take_reading(profile, (), request, seed)
    if reading.value is None or good.value is None:
        return -2.4
    limits = abs(reading.value - good.value) / accuracy_ohm(profile.meter, good.value)
    return -0.8 if limits <= 1.0 else 1.8 - 1.1 * math.log2(limits)


def _where(spec: Spec, profile: Profile) -> Exercise:
    """Readings along one return with one break: which place is left."""
    chance = spec.chance
    number = profile.cylinders[chance.below(len(profile.cylinders))]
    kept = _breaks(profile, number)
    places = [place for place in PLACES if place in kept]
    requests = (
        Request("pair", MODULE_CONNECTOR, "harness", number),
        Request("wire", cylinder=number, side=Side.RETURN, location=Location.ENGINE_HARNESS),
        Request("pair", through_point(profile, number), "cover", number),
        Request("pair", plug_point(number), "injector", number),
    )
    place = places[chance.below(len(places))]
    readings = [take_reading(profile, (kept[place],), request, spec.seed) for request in requests]
    shown = [reading_line(request, reading) for request, reading in zip(requests, readings, strict=True)]
    right = Choice(place, text(f"location.{place}"), text(f"exercise.where.{place}"))
    wrong = [
        Choice(one, text(f"location.{one}"), text("exercise.where.other"), "wrong_side" if _next_to(one, place) else "")
        for one in places if one is not place
    ]  # fmt: skip
    choices, at = shuffled_choices(spec, [right, *wrong], chance)
    difficulty = -0.4 + 0.9 * (place is Location.PASS_THROUGH)
    return Exercise(
        spec, profile, place.value, question_demand(Skill.MEASURING, difficulty, choices),
        text("exercise.where_break", number=number), choices, at, text("exercise.where.rule"), shown=tuple(shown),
        marked=frozenset({number}),
    )  # fmt: skip


_BREAKS: dict[tuple[str, int], dict[Location, Fault]] = {}


def _breaks(profile: Profile, number: int) -> dict[Location, Fault]:
    """Return a break in a cylinder's return for each place that can have one; worked out once an engine."""
    key = (profile.digest, number)
    if key not in _BREAKS:
        _BREAKS[key] = {
            fault.location: fault
            for fault in _singles(profile)
            if fault.cylinders == (number,)
            and fault.location in PLACES
            and fault.side in (Side.RETURN, None)
            and take_reading(profile, (fault,), _at_module(fault), 0).value is None
        }
    return _BREAKS[key]


def break_location(over_range: Sequence[bool]) -> Location | None:
    """Return the location of a break from four readings along a return: module pair, engine wire, cover pair, coil."""
    whole, engine_wire, cover, coil = over_range
    if not whole:
        return None
    if engine_wire:
        return Location.ENGINE_HARNESS
    if not cover:
        return Location.PASS_THROUGH  # both halves read good: the contact between them is what is left
    return Location.COIL if coil else Location.UNDER_COVER


def _next_to(one: Location, other: Location) -> bool:
    return abs(PLACES.index(one) - PLACES.index(other)) == 1


def _slip(spec: Spec, profile: Profile) -> Exercise:
    """A reading taken wrongly, or not: what is it worth."""
    chance = spec.chance
    number = profile.cylinders[chance.below(len(profile.cylinders))]
    ways = {
        "fine": Request("pair", MODULE_CONNECTOR, "harness", number),
        "connected": Request("pair", plug_point(number), "injector", number, connected=True),
        "leads": Request("pair", plug_point(number), "injector", number, nulled=False),
        "live": Request("pair", plug_point(number), "injector", number, connected=True, key_on=True),
    }
    fitting = sorted(ways, key=lambda one: abs(WAYS[one] - aim_of(spec)))[:2]
    way = fitting[chance.below(2)]
    # with two to choose from, each is as likely to be the one
    names = [one for one in ways if one in fitting] if spec.easiest else list(ways)
    reading = take_reading(profile, (), ways[way], spec.seed)
    slips = {"connected": "measured_connected"}
    choices = tuple(
        Choice(one, text(f"exercise.slip.{one}"), text(f"exercise.slip.{one}.why"),
               slips.get(way, "") if one == "fine" else "")
        for one in names
    )  # fmt: skip
    told = text(f"exercise.slip.how.{way}")
    return Exercise(
        spec, profile, PASSES, question_demand(Skill.MEASURING, WAYS[way], choices), text("exercise.slip"), choices,
        names.index(way), text("exercise.slip.rule"), shown=(told, reading_line(ways[way], reading)),
        marked=frozenset({number}),
    )  # fmt: skip
