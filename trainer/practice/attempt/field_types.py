"""Annotated types of the fields of events: what each may hold on the engine that a log was made on, and its JSON form.

Names are checked against the `Names` of the engine, given as pydantic's validation context.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, fields
from typing import Annotated

from pydantic import AfterValidator, Field, JsonValue, PlainSerializer, PlainValidator, ValidationInfo

from trainer.circuit.elements import Location
from trainer.circuit.faults import Conditions
from trainer.circuit.profile import Profile
from trainer.errors import WrongCallError
from trainer.instruments.bench import Work, break_points, contacts_of, halves_of
from trainer.instruments.bench_tests import BenchTest, Price, parse_bench_test, parse_price
from trainer.instruments.measuring import Request, check_request
from trainer.instruments.reading import Reading
from trainer.reasoning.universe.finding import Claim
from trainer.sound.places import places_of


@dataclass(frozen=True, slots=True)
class Names:
    """The names that an engine has, by what they are names of."""

    profile: Profile
    cylinders: frozenset[int]
    banks: frozenset[str]
    points: frozenset[str]
    contacts: frozenset[str]
    places: frozenset[str]


def names_of(profile: Profile) -> Names:
    """Return the names that events on an engine can hold."""
    points = break_points(profile)
    contacts = frozenset(name for point in points for name in contacts_of(profile, point))
    places = frozenset(places_of(profile))
    return Names(profile, frozenset(profile.cylinders), frozenset(profile.banks), frozenset(points), contacts, places)


def _names(info: ValidationInfo) -> Names:
    if not isinstance(info.context, Names):
        raise ValueError("an event on an engine is parsed with that engine's names")
    return info.context


def _refuse_unknown(found: Iterable[object], known: Iterable[object], what: str) -> None:
    if not set(found) <= set(known):
        raise ValueError(f"not among this engine's {what}")


def _cylinder(number: int, info: ValidationInfo) -> int:
    _refuse_unknown([number], _names(info).cylinders, "cylinders")
    return number


def _cylinder_or_none(number: int, info: ValidationInfo) -> int:
    return number if number == 0 else _cylinder(number, info)


def _place(name: str, info: ValidationInfo) -> str:
    _refuse_unknown([name], _names(info).places, "places to listen from")
    return name


def _bench_test(name: object) -> BenchTest | None:
    """Parse a test of the menu, "" for none."""
    if not isinstance(name, str):
        raise ValueError("no test of the bench")
    return parse_bench_test(name) if name else None


def _price(name: object) -> Price:
    if not isinstance(name, str):
        raise ValueError("no price")
    return parse_price(name)


Amount = Annotated[float, Field(ge=0.0, le=1e9, allow_inf_nan=False)]
Text = Annotated[str, Field(max_length=500)]
LessonNumber = Annotated[int, Field(ge=0, le=99)]
Strength = Annotated[int, Field(ge=1, le=9)]
TestInLog = Annotated[BenchTest | None, PlainValidator(_bench_test), PlainSerializer(lambda test: str(test or ""))]
Cylinder = Annotated[int, AfterValidator(_cylinder)]
CylinderOrNone = Annotated[int, AfterValidator(_cylinder_or_none)]
Place = Annotated[Text, AfterValidator(_place)]
Prices = Annotated[
    frozenset[Annotated[Price, PlainValidator(_price)]], PlainSerializer(lambda prices: sorted(map(str, prices)))
]
Places = Annotated[frozenset[Location], PlainSerializer(sorted)]


# the state of an engine: its conditions lie flat beside the rest, as in every log so far


def nested_work(data: JsonValue) -> dict[str, JsonValue]:
    """Return the flat JSON of a state nested as the value is; raises ValueError where a part is missing."""
    if not isinstance(data, dict) or not {*_CONDITIONS, *_WORK} <= set(data):
        raise ValueError("no state of an engine")
    return {"conditions": {name: data[name] for name in _CONDITIONS}, **{name: data[name] for name in _WORK}}


_CONDITIONS = tuple(one.name for one in fields(Conditions))
_WORK = tuple(one.name for one in fields(Work) if one.name != "conditions")


def work_json(work: Work) -> dict[str, object]:
    """Return the state of an engine as JSON, its lists sorted."""
    conditions = work.conditions
    return {
        "temperature_c": conditions.temperature_c,
        "moved": conditions.moved,
        "heated": conditions.heated,
        "reseated": sorted(conditions.reseated),
        "unplugged": sorted(work.unplugged),
        "covers_off": sorted(work.covers_off),
        "swapped": [list(pair) for pair in work.swapped],
        "replaced": [[location, number] for location, number in sorted(work.replaced)],
        "dummy_loads": sorted(work.dummy_loads),
        "spread": sorted(work.spread),
    }


def _possible_work(work: Work, info: ValidationInfo) -> Work:
    names = _names(info)
    if not -100.0 <= work.conditions.temperature_c <= 300.0:
        raise ValueError("no temperature of an engine")
    parts = {(Location.DRIVE_MODULE, 0), *((Location.COIL, number) for number in names.cylinders)}
    swapped = (number for pair in work.swapped for number in pair)
    _refuse_unknown(swapped, names.cylinders, "cylinders")
    _refuse_unknown(work.dummy_loads, names.cylinders, "cylinders")
    _refuse_unknown(work.replaced, parts, "parts that can be lent")
    _refuse_unknown(work.unplugged, names.points, "break points")
    _refuse_unknown(work.covers_off, names.banks, "banks")
    _refuse_unknown(work.conditions.reseated | work.spread, names.contacts, "contacts")
    return work


WorkInLog = Annotated[Work, AfterValidator(_possible_work), PlainSerializer(work_json)]


def _possible_request(request: Request, info: ValidationInfo) -> Request:
    names = _names(info)
    _refuse_unknown([request.cylinder, request.other], {0, *names.cylinders}, "cylinders")
    _refuse_unknown([request.point], names.points, "break points")
    if request.half not in halves_of(request.point):
        raise ValueError("a half that the connector does not have")
    try:
        check_request(names.profile, request)
    except WrongCallError as error:
        raise ValueError("a measurement that the engine cannot give") from error
    return request


RequestInLog = Annotated[Request, AfterValidator(_possible_request)]


def _short_reading(reading: Reading) -> Reading:
    if max(len(reading.instrument), len(reading.unit), len(reading.display)) > 500:
        raise ValueError("a text too long for a display")
    return reading


ReadingInLog = Annotated[Reading, AfterValidator(_short_reading)]


def _possible_claim(claim: Claim, info: ValidationInfo) -> Claim:
    if not claim.cylinders:
        raise ValueError("a fault is on at least one cylinder")
    _refuse_unknown(claim.cylinders, _names(info).cylinders, "cylinders")
    return claim


def _claim_data(claim: Claim) -> dict[str, object]:
    return {
        "cylinders": sorted(claim.cylinders), "location": claim.location, "kind": claim.kind, "side": claim.side,
    }  # fmt: skip


ClaimInLog = Annotated[Claim, AfterValidator(_possible_claim), PlainSerializer(_claim_data)]
