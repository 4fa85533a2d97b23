"""The form of a set file, field by field."""

from __future__ import annotations

from datetime import UTC, datetime
from typing import Annotated, Any, Literal

from pydantic import BeforeValidator, Discriminator, Field, Tag

from trainer.cases.files.forms import Form, Line, from_word
from trainer.cases.profiles.profile_form import Name
from trainer.circuit.elements import Location
from trainer.circuit.faults import FaultKind
from trainer.circuit.profile import PASSES
from trainer.sets.case_set import Counts, DebriefOpens, Mode, Order, Seeds

MOST_CASES = 200
"""How many cases a set may have: a year's work for one learner."""

MOST_SUPPORTED = 300
"""How many learners may have support of their own."""


def _moment(value: object) -> object:
    """Take a date with time and zone, written plainly or between quotes."""
    if isinstance(value, str):
        try:
            value = datetime.fromisoformat(value)
        except ValueError as error:
            raise ValueError("a date with time and zone, for example 2027-03-01T08:00:00+01:00") from error
    if not isinstance(value, datetime) or value.tzinfo is None:
        raise ValueError("a date with time and zone, for example 2027-03-01T08:00:00+01:00")
    try:
        return value.astimezone(UTC)
    except OverflowError as error:
        raise ValueError("a date of this century") from error


def _place(value: object) -> object:
    if value == PASSES:
        return PASSES
    try:
        return Location(value)  # type: ignore[arg-type]  # anything may stand in a file
    except ValueError as error:
        raise ValueError(f"one of {', '.join([*Location, PASSES])}") from error


Moment = Annotated[datetime, BeforeValidator(_moment)]
Count = Annotated[int, Field(ge=1, le=999)]
Learner = Annotated[Line, Field(min_length=1, max_length=200)]


class ListedForm(Form):
    case: Annotated[Line, Field(min_length=1, max_length=200)]
    weight: Annotated[float, Field(gt=0, le=100)] = 1.0


class DrawForm(Form):
    draw: Annotated[int, Field(ge=1, le=MOST_CASES)]
    profiles: Annotated[list[Name], Field(min_length=1, max_length=8)]
    places: (
        Annotated[list[Annotated[Any, BeforeValidator(_place)]], Field(min_length=1, max_length=len(Location) + 1)]
        | None
    ) = None
    kinds: (
        Annotated[list[Annotated[FaultKind, from_word(FaultKind)]], Field(min_length=1, max_length=len(FaultKind))]
        | None
    ) = None
    difficulty: Annotated[list[Annotated[int, Field(ge=1, le=3)]], Field(min_length=1, max_length=3)] = [1, 2]
    source: Literal["free", "shipped"] = "free"
    weight: Annotated[float, Field(gt=0, le=100)] = 1.0


def _line_kind(value: object) -> str:
    return "tagged-draw" if isinstance(value, dict) and "draw" in value else "tagged-listed"


# the tags begin as the forms' readers expect, so that they do not show up in the names of fields
LineForm = Annotated[
    Annotated[ListedForm, Tag("tagged-listed")] | Annotated[DrawForm, Tag("tagged-draw")], Discriminator(_line_kind)
]


class PolicyForm(Form):
    mode: Annotated[Mode, from_word(Mode)] = Mode.PRACTICE
    opens: Moment | None = None
    closes: Moment | None = None
    tries: Count | None = None
    counts: Annotated[Counts, from_word(Counts)] = Counts.BEST
    plays: Count | None = None
    readings: Annotated[int, Field(ge=0, le=999)] | None = None
    bench_minutes: Annotated[float, Field(gt=0, le=10_000)] | None = None
    clock_minutes: Annotated[float, Field(gt=0, le=10_000)] | None = None
    hints: bool | None = None
    trace: Literal["fading", "shown", "off"] | None = None
    certainty_weight: Annotated[float, Field(ge=0, le=0.5)] = 0.0
    debrief: Annotated[DebriefOpens, from_word(DebriefOpens)] | None = None
    order: Annotated[Order, from_word(Order)] = Order.LISTED
    passes_at: Annotated[float, Field(ge=0, le=100)] = 60.0


class SupportForm(Form):
    learner: Learner
    extra_time: Annotated[float, Field(ge=1, le=4)] = 1.0
    extra_plays: Annotated[int, Field(ge=0, le=99)] = 0
    extra_readings: Annotated[int, Field(ge=0, le=99)] = 0
    trace: bool = False
    quieter_bed_db: Annotated[float, Field(ge=0, le=12)] = 0.0


class SharesForm(Form):
    circuit_passes: Annotated[float, Field(ge=0, le=1)] = 0.15
    groups: Annotated[float, Field(ge=0, le=1)] = 0.10


class SetForm(Form):
    form: Literal["set/1"]
    name: Name
    title: Annotated[Line, Field(min_length=3, max_length=80)]
    cases: Annotated[list[LineForm], Field(min_length=1, max_length=MOST_CASES)]
    seeds: Annotated[Seeds, from_word(Seeds)] = Seeds.SAME
    versions: Annotated[list[Annotated[int, Field(ge=0, lt=2**31)]], Field(min_length=1, max_length=12)] | None = None
    draw_key: Annotated[Line, Field(min_length=8, max_length=80)] | None = None
    policy: PolicyForm = PolicyForm()
    support: Annotated[list[SupportForm], Field(max_length=MOST_SUPPORTED)] = []
    shares: SharesForm = SharesForm()
