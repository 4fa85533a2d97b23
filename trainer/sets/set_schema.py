"""The fields of a set file, which names cases and profiles; `CaseSet` holds them as values."""

from __future__ import annotations

from dataclasses import dataclass, field, fields
from typing import Annotated, Literal

from annotated_types import Interval, Len
from pydantic import BeforeValidator, Discriminator, Tag

from trainer.circuit.constraints import Line, Name, Title
from trainer.circuit.elements import Location
from trainer.circuit.faults import FaultKind
from trainer.circuit.profile import PASSES
from trainer.sets.case_set import DebriefOpens, Mode, Policy, Seeds, Shares, Support, Weight

FORMAT = "set/1"

MOST_CASES = 200
"""How many cases a set may have: a year's work for one learner."""

MOST_SUPPORTED = 300
"""How many learners may have individual support."""

LEFT_TO_MODE = ("tries", "hints", "trace", "debrief")
"""Fields that a policy may leave out; the defaults of `Policy` are those of practice."""


def _filled_by_mode(value: object) -> object:
    """Fill in the fields that a policy leaves to its mode: those missing or null."""
    if not isinstance(value, dict):
        return value
    given = {name: one for name, one in value.items() if one is not None or name not in LEFT_TO_MODE}
    if given.get("mode") != Mode.EXAM:
        return given
    # no debrief of an exam before everybody has handed in
    debrief = DebriefOpens.AFTER_SET if given.get("closes") is None else DebriefOpens.AFTER_CLOSING
    return {"tries": 1, "hints": False, "trace": "off", "debrief": debrief.value} | given


def _place(value: object) -> object:
    if value == PASSES:
        return PASSES
    try:
        return Location(value)  # type: ignore[arg-type]  # anything may stand in a file
    except ValueError as error:
        raise ValueError(f"one of {', '.join([*Location, PASSES])}") from error


@dataclass(frozen=True, slots=True, kw_only=True)
class ListedLine:
    """A case by name: shipped, a file beside the set, or a case code."""

    case: Annotated[Line, Len(1, 200)]
    weight: Weight = 1.0


@dataclass(frozen=True, slots=True, kw_only=True)
class DrawLine:
    """A number of cases to draw from profiles by name; None allows every place or kind."""

    draw: Annotated[int, Interval(ge=1, le=MOST_CASES)]
    profiles: Annotated[tuple[Name, ...], Len(1, 8)]
    places: Annotated[tuple[Annotated[str, BeforeValidator(_place)], ...], Len(1, len(Location) + 1)] | None = None
    kinds: Annotated[tuple[FaultKind, ...], Len(1, len(FaultKind))] | None = None
    difficulty: Annotated[tuple[Annotated[int, Interval(ge=1, le=3)], ...], Len(1, 3)] = (1, 2)
    source: Literal["free", "shipped"] = "free"
    weight: Weight = 1.0


_DRAW_ONLY = {one.name for one in fields(DrawLine)} - {one.name for one in fields(ListedLine)}


def _line_kind(value: object) -> str:
    """Return the tag of the kind of line that a value is, even where its main field is misspelt."""
    if not isinstance(value, dict) or "case" in value:
        return "tagged-listed"
    return "tagged-draw" if _DRAW_ONLY & value.keys() else "tagged-listed"


# validation.py leaves steps that begin with "tagged-" out of the names of fields
CaseLine = Annotated[
    Annotated[ListedLine, Tag("tagged-listed")] | Annotated[DrawLine, Tag("tagged-draw")], Discriminator(_line_kind)
]


@dataclass(frozen=True, slots=True, kw_only=True)
class SetFile:
    """Everything that a set file may contain."""

    name: Name
    title: Title
    cases: Annotated[tuple[CaseLine, ...], Len(1, MOST_CASES)]
    seeds: Seeds = Seeds.SAME
    versions: Annotated[tuple[Annotated[int, Interval(ge=0, lt=2**31)], ...], Len(1, 12)] | None = None
    draw_key: Annotated[Line, Len(8, 80)] | None = None
    policy: Annotated[Policy, BeforeValidator(_filled_by_mode)] = field(default_factory=Policy)
    support: Annotated[tuple[Support, ...], Len(0, MOST_SUPPORTED)] = ()
    shares: Shares = field(default_factory=Shares)
