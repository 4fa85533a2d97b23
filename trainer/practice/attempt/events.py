"""What can happen in an attempt: a frozen class for each kind of event.

The field types say what a log may hold; `trainer.practice.attempt.event_json` parses and serializes them.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Annotated, ClassVar, Literal

from pydantic import Field, JsonValue

from trainer.circuit.elements import Location, Side
from trainer.practice.attempt.event_record import EventKind
from trainer.practice.attempt.field_types import (
    Amount,
    ClaimInLog,
    Cylinder,
    CylinderOrNone,
    LessonNumber,
    Place,
    Places,
    Prices,
    ReadingInLog,
    RequestInLog,
    Strength,
    TestInLog,
    Text,
    WorkInLog,
)
from trainer.practice.attempt.outcome import Outcome
from trainer.reasoning.universe.finding import Finding


@dataclass(frozen=True, slots=True, kw_only=True)
class Event:
    """One thing that happened. `spent_s` are the real seconds since the event before it, where a set records them."""

    kind: ClassVar[EventKind]
    spent_s: Amount | None = None

    @property
    def labour_minutes(self) -> float:
        """The minutes of labour that it cost."""
        return 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Started(Event):
    """An attempt began: by which program, as which lesson (0 for none), and why practice gave it.

    `pair` are who hears and who measures, `listening` the verdict of the station's sound check, `after` the last link
    of the learner's attempt before this one in a set, `supported` whether the set gives the learner support.
    """

    kind: ClassVar[EventKind] = EventKind.STARTED
    version: Text = ""
    lesson: LessonNumber = 0
    why: Text | None = None
    about: Text = ""
    pair: tuple[Text, ...] = ()
    listening: Mapping[str, JsonValue] | None = None
    after: Text = ""
    supported: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class EngineEvent(Event):
    """Something done at the engine: its minutes, all that is now paid, the state it leaves, which step of a lesson."""

    minutes: Amount
    paid: Prices
    work: WorkInLog
    lesson_step: Text = ""

    @property
    def labour_minutes(self) -> float:
        """The minutes of labour that it cost."""
        return self.minutes


@dataclass(frozen=True, slots=True, kw_only=True)
class Heard(EngineEvent):
    """The test was heard: whole (`slots` None) or single slots, 0 for all together; `sound` is the buffer's hash.

    `codes` are held by records of early versions only.
    """

    kind: ClassVar[EventKind] = EventKind.HEARD
    slots: Annotated[tuple[CylinderOrNone, ...], Field(min_length=1)] | None
    place: Place
    sound: Text = ""
    codes: tuple[Text, ...] | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class CodesRead(EngineEvent):
    """The codes in memory were read, and perhaps cleared."""

    kind: ClassVar[EventKind] = EventKind.CODES_READ
    codes: tuple[Text, ...]
    cleared: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Measured(EngineEvent):
    """A reading was taken; `predicted` is what the learner expected."""

    kind: ClassVar[EventKind] = EventKind.MEASURED
    request: RequestInLog
    predicted: Text | None
    reading: ReadingInLog


@dataclass(frozen=True, slots=True, kw_only=True)
class Worked(EngineEvent):
    """Work on the engine that is no measurement."""

    kind: ClassVar[EventKind] = EventKind.WORKED


@dataclass(frozen=True, slots=True, kw_only=True)
class Provoked(Worked):
    """The harness is moved or a place warmed from now on, or no longer (None); under which bank's cover, if under one.

    The work holds the try that it is.
    """

    did: Literal["move", "heat"]
    what: Location | None
    bank: Text = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class RanWarm(Worked):
    """The engine was run until it was warm everywhere."""

    did: Literal["warm_run"] = "warm_run"
    what: None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Swapped(Worked):
    """Two returns were exchanged at the module connector."""

    did: Literal["swap"] = "swap"
    what: tuple[Cylinder, Cylinder]


@dataclass(frozen=True, slots=True, kw_only=True)
class Substituted(Worked):
    """A known-good part was put in: a place and its cylinder, 0 for the drive module."""

    did: Literal["substitute"] = "substitute"
    what: tuple[Location, CylinderOrNone]


@dataclass(frozen=True, slots=True, kw_only=True)
class GaveBack(Worked):
    """Lent parts were taken out again."""

    did: Literal["give_back"] = "give_back"
    what: None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Looked(Worked):
    """What is open was looked at; `what` is what was seen there: bridges, and damage to terminals.

    `drag` says that a matching pin was drawn through every terminal instead; `what` are those that do not grip.
    """

    did: Literal["look"] = "look"
    what: tuple[Text, ...]
    drag: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Suspected(Event):
    """The learner said which places are ruled out."""

    kind: ClassVar[EventKind] = EventKind.SUSPECTED
    ruled_out: Places


@dataclass(frozen=True, slots=True, kw_only=True)
class Hinted(Event):
    """A hint was given: its strength from 1, and the test it points to, None for none."""

    kind: ClassVar[EventKind] = EventKind.HINTED
    strength: Strength
    test: TestInLog


@dataclass(frozen=True, slots=True, kw_only=True)
class Found(Event):
    """The learner committed a finding."""

    kind: ClassVar[EventKind] = EventKind.FOUND
    claims: Annotated[tuple[ClaimInLog, ...], Field(max_length=2)]
    certainty: float

    @property
    def finding(self) -> Finding:
        """The finding; raises ValueError for a certainty that there is not."""
        return Finding(self.claims, self.certainty)


@dataclass(frozen=True, slots=True, kw_only=True)
class Repaired(EngineEvent):
    """A place was repaired; `mended` are the case's faults that this took away, by their place in its list."""

    kind: ClassVar[EventKind] = EventKind.REPAIRED
    location: Location
    cylinders: tuple[Cylinder, ...]
    side: Side | None
    mended: tuple[int, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Retested(Event):
    """The test was run on the repaired circuit.

    `to_provoke` says that it is even, but that no test before the repair left a code either.
    """

    kind: ClassVar[EventKind] = EventKind.RETESTED
    minutes: Amount
    work: WorkInLog
    codes: tuple[Text, ...]
    place: Place
    sound: Text = ""
    proved: bool
    to_provoke: bool = False

    @property
    def labour_minutes(self) -> float:
        """The minutes of labour that it cost."""
        return self.minutes


@dataclass(frozen=True, slots=True, kw_only=True)
class Closed(Event):
    """The attempt ended. `outcome` is None where it was not scored here, or by a version whose outcomes are others.

    `practice` is what practice keeps of the task (`trainer.practice.course.log`), `choice` the answer of an exercise;
    `listening` says that labelled examples were listened to.
    """

    kind: ClassVar[EventKind] = EventKind.CLOSED
    outcome: Outcome | None = None
    practice: Mapping[str, JsonValue] | None = None
    choice: int | None = None
    listening: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Resumed(Event):
    """The program began again in the middle of the attempt."""

    kind: ClassVar[EventKind] = EventKind.RESUMED


@dataclass(frozen=True, slots=True, kw_only=True)
class Away(Event):
    """The window was left."""

    kind: ClassVar[EventKind] = EventKind.AWAY


@dataclass(frozen=True, slots=True, kw_only=True)
class Voided(Event):
    """The attempt ended as one that does not count."""

    kind: ClassVar[EventKind] = EventKind.VOIDED
    reason: str


@dataclass(frozen=True, slots=True, kw_only=True)
class LookedBack(Event):
    """The debrief of a case of the set was opened, with so many cases left to work."""

    kind: ClassVar[EventKind] = EventKind.LOOKED_BACK
    item: int
    left: int


@dataclass(frozen=True, slots=True, kw_only=True)
class ClockBack(Event):
    """The computer's date went back; `before` is the date of the event before (UTC, ISO 8601)."""

    kind: ClassVar[EventKind] = EventKind.CLOCK_BACK
    before: Annotated[str, Field(alias="from")]


@dataclass(frozen=True, slots=True, kw_only=True)
class Unguarded(Event):
    """Other programs can reach this exam; `lacks` are the guards that this system does not have."""

    kind: ClassVar[EventKind] = EventKind.UNGUARDED
    lacks: tuple[str, ...]
