"""The shape of a set file: it names cases and profiles, where a set as a value holds them."""

from __future__ import annotations

from dataclasses import dataclass, field
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
"""How many learners may have support of their own."""

LEFT_TO_MODE = ("tries", "hints", "trace", "debrief")
"""What a policy may leave out; `Policy` itself has what practice has."""


def _filled_by_mode(value: object) -> object:
    """Fill in what a policy leaves to its mode: a field that is missing or null."""
    if not isinstance(value, dict):
        return value
    given = {name: one for name, one in value.items() if one is not None or name not in LEFT_TO_MODE}
    if given.get("mode") != Mode.EXAM:
        return given
    # an exam is debriefed not before everybody has handed in
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
    """Cases to be drawn, from profiles by name; None allows every place or kind."""

    draw: Annotated[int, Interval(ge=1, le=MOST_CASES)]
    profiles: Annotated[tuple[Name, ...], Len(1, 8)]
    places: Annotated[tuple[Annotated[str, BeforeValidator(_place)], ...], Len(1, len(Location) + 1)] | None = None
    kinds: Annotated[tuple[FaultKind, ...], Len(1, len(FaultKind))] | None = None
    difficulty: Annotated[tuple[Annotated[int, Interval(ge=1, le=3)], ...], Len(1, 3)] = (1, 2)
    source: Literal["free", "shipped"] = "free"
    weight: Weight = 1.0


def _line_kind(value: object) -> str:
    return "tagged-draw" if isinstance(value, dict) and "draw" in value else "tagged-listed"


# the tags begin as the forms' readers expect, so that they do not show up in the names of fields
CaseLine = Annotated[
    Annotated[ListedLine, Tag("tagged-listed")] | Annotated[DrawLine, Tag("tagged-draw")], Discriminator(_line_kind)
]


@dataclass(frozen=True, slots=True, kw_only=True)
class SetFile:
    """Everything that a set file says."""

    name: Name
    title: Title
    cases: Annotated[tuple[CaseLine, ...], Len(1, MOST_CASES)]
    seeds: Seeds = Seeds.SAME
    versions: Annotated[tuple[Annotated[int, Interval(ge=0, lt=2**31)], ...], Len(1, 12)] | None = None
    draw_key: Annotated[Line, Len(8, 80)] | None = None
    policy: Annotated[Policy, BeforeValidator(_filled_by_mode)] = field(default_factory=Policy)
    support: Annotated[tuple[Support, ...], Len(0, MOST_SUPPORTED)] = ()
    shares: Shares = field(default_factory=Shares)
