"""What the data of each kind of event must hold: checked where a log comes from a store or a file.

A name is checked against the engine that the log was made on. What a later version adds to an event goes through.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated, Any, Literal

from pydantic import (
    AfterValidator,
    BaseModel,
    ConfigDict,
    Field,
    StrictBool,
    StrictInt,
    TypeAdapter,
    ValidationInfo,
    model_validator,
)

from trainer.circuit.elements import Location, Side
from trainer.circuit.faults import FaultKind
from trainer.circuit.profile import Profile
from trainer.errors import WrongCallError
from trainer.instruments.bench import break_points, contacts_of, halves_of
from trainer.instruments.measuring import Request, What, check_request
from trainer.instruments.reading import Slip
from trainer.practice.attempt.events import Event, EventKind
from trainer.sound.places import places_of
from trainer.words import TEXTS


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


def check_data(event: Event, names: Names) -> None:
    """Raise ValueError for an event whose data are not those of its kind, on an engine with these names."""
    form = FORMS.get(event.kind)
    if form is not None:
        form.validate_python(event.data, context=names)


def _one_of(kind: str) -> AfterValidator:
    def check(value: Any, info: ValidationInfo) -> Any:
        if value not in getattr(info.context, kind):
            raise ValueError(f"not among this engine's {kind}")
        return value

    return AfterValidator(check)


def _told_test(name: str) -> str:
    """Return a test of the menu that there are words for, "" for none."""
    family, _colon, what = name.partition(":")
    if name and f"plan.{family}" not in TEXTS:
        raise ValueError("a test that this version does not know")
    if family in ("move", "heat"):
        Location(what)
    return name


Number = Annotated[float, Field(strict=True, allow_inf_nan=False, ge=-1e9, le=1e9)]
Text = Annotated[str, Field(strict=True, max_length=500)]
Cylinder = Annotated[StrictInt, _one_of("cylinders")]
CylinderOrNone = Literal[0] | Cylinder
Bank = Annotated[Text, _one_of("banks")]
Point = Annotated[Text, _one_of("points")]
Contact = Annotated[Text, _one_of("contacts")]
Place = Annotated[Text, _one_of("places")]


class _Form(BaseModel):
    model_config = ConfigDict(extra="ignore")


class _Work(_Form):
    temperature_c: Annotated[Number, Field(ge=-100.0, le=300.0)]
    moved: Location | None
    heated: Location | None
    reseated: list[Contact]
    unplugged: list[Point]
    covers_off: list[Bank]
    swapped: list[tuple[Cylinder, Cylinder]]
    replaced: list[tuple[Literal[Location.DRIVE_MODULE], Literal[0]] | tuple[Literal[Location.COIL], Cylinder]]
    dummy_loads: list[Cylinder]
    spread: list[Contact]


class _Started(_Form):
    lesson: Annotated[StrictInt, Field(ge=0, le=99)] = 0


class _Charged(_Form):
    minutes: Number
    paid: list[Text]
    work: _Work


class _Heard(_Charged):
    slots: Annotated[list[CylinderOrNone], Field(min_length=1)] | None
    place: Place
    codes: list[Text] | None = None


class _CodesRead(_Charged):
    codes: list[Text]
    cleared: StrictBool


class _Request(_Form):
    model_config = ConfigDict(extra="forbid")

    what: What
    point: Point
    half: Text
    cylinder: CylinderOrNone
    other: CylinderOrNone
    side: Side
    location: Location
    connected: StrictBool
    firm: StrictBool
    key_on: StrictBool
    nulled: StrictBool

    @model_validator(mode="after")
    def _can_be_asked(self, info: ValidationInfo) -> _Request:
        names: Names = info.context  # type: ignore[assignment]  # pydantic hands on what `check_data` gave it
        if self.half not in halves_of(self.point):
            raise ValueError("a half that the connector does not have")
        try:
            check_request(names.profile, Request(**self.model_dump()))
        except WrongCallError as error:
            raise ValueError("a measurement that the engine cannot give") from error
        return self


class _Reading(_Form):
    instrument: Text
    value: Number | None
    unit: Text
    display: Text
    slips: list[Slip]


class _Measured(_Charged):
    request: _Request
    predicted: Text | None
    reading: _Reading


class _Moved(_Charged):
    did: Literal["move", "heat", "give_back"]
    what: Location | None


class _Swapped(_Charged):
    did: Literal["swap"]
    what: tuple[Cylinder, Cylinder]


class _Substituted(_Charged):
    did: Literal["substitute"]
    what: tuple[Location, CylinderOrNone]


class _Looked(_Charged):
    did: Literal["look"]
    what: list[Text]


_Worked = Annotated[_Moved | _Swapped | _Substituted | _Looked, Field(discriminator="did")]


class _Suspected(_Form):
    ruled_out: list[Location]


class _Hinted(_Form):
    strength: Annotated[StrictInt, Field(ge=1, le=9)]
    test: Annotated[Text, AfterValidator(_told_test)]


class _Claim(_Form):
    cylinders: Annotated[list[Cylinder], Field(min_length=1)]
    location: Location
    kind: FaultKind
    side: Side | None


class _Found(_Form):
    claims: list[_Claim]
    certainty: Number


class _Repaired(_Charged):
    location: Location
    cylinders: list[Cylinder]
    side: Side | None
    mended: list[StrictInt]


class _Retested(_Form):
    minutes: Number
    work: _Work
    codes: list[Text]
    place: Place
    proved: StrictBool


FORMS: dict[EventKind, TypeAdapter[Any]] = {
    EventKind.STARTED: TypeAdapter(_Started),
    EventKind.HEARD: TypeAdapter(_Heard),
    EventKind.CODES_READ: TypeAdapter(_CodesRead),
    EventKind.MEASURED: TypeAdapter(_Measured),
    EventKind.WORKED: TypeAdapter(_Worked),
    EventKind.SUSPECTED: TypeAdapter(_Suspected),
    EventKind.HINTED: TypeAdapter(_Hinted),
    EventKind.FOUND: TypeAdapter(_Found),
    EventKind.REPAIRED: TypeAdapter(_Repaired),
    EventKind.RETESTED: TypeAdapter(_Retested),
}
