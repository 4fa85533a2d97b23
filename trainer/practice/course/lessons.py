"""The first three cases: one worked, one to complete, one alone; steps are real work on the bench.

Worked examples, then fading: van Gog, Paas and van Merrienboer 2006 and 2008, electrical troubleshooting.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from typing import TypeVar

from trainer.circuit.elements import Location, Side
from trainer.circuit.profile import Profile
from trainer.instruments.bench import MODULE_CONNECTOR
from trainer.instruments.requests import Request, through_point
from trainer.practice.attempt import actions
from trainer.practice.attempt.actions import ActionResult, Solver
from trainer.practice.attempt.attempt import Attempt
from trainer.practice.attempt.events import EngineEvent
from trainer.practice.course.practice_log import Entry
from trainer.reasoning.universe.finding import Finding, truth_of

AnEngineEvent = TypeVar("AnEngineEvent", bound=EngineEvent)
Asked = Callable[[Profile], Request]
WORKED, TO_COMPLETE, ALONE = 1, 2, 3


@dataclass(frozen=True, slots=True)
class Step:
    """One step worked for the learner: `name` has its sentence.

    It is a reading where `request` is given, else slots heard (none: the whole test), else a look at what is open, else
    the codes, with `clears` cleared after they were read.
    """

    name: str
    slots: tuple[int, ...] | None = None
    request: Asked | None = None
    looks: bool = False
    clears: bool = False

    def do(self, attempt: Attempt, solver: Solver) -> ActionResult[EngineEvent]:
        """Carry the step out."""
        if self.request is not None:
            return self.marked(actions.measure(attempt, self.request(attempt.case.profile)))
        if self.slots is not None:
            return self.marked(actions.hear(attempt, self.slots or None, "front", solver))
        if self.looks:
            return self.marked(actions.look(attempt))
        return self.marked(actions.read_codes(attempt, solver, clear=self.clears))

    def marked(self, done: ActionResult[AnEngineEvent]) -> ActionResult[AnEngineEvent]:
        """Return what was done, marked as this step."""
        return replace(done, event=replace(done.event, lesson_step=self.name))


@dataclass(frozen=True, slots=True)
class Lesson:
    """A lesson: its case, the steps worked in it, and whether the finding is worked too."""

    number: int
    case: str
    steps: tuple[Step, ...]
    finding_worked: bool

    @property
    def count(self) -> int:
        """How many steps are worked, with the finding where it is."""
        return len(self.steps) + self.finding_worked


def _pair(where: str, half: str, number: int) -> Asked:
    def asked(profile: Profile) -> Request:
        point = MODULE_CONNECTOR if where == "module" else through_point(profile, number)
        return Request("pair", point, half, number)

    return asked


def _volts(number: int) -> Asked:
    return lambda _profile: Request("volts", cylinder=number)


def _wire(number: int, side: Side) -> Asked:
    return lambda _profile: Request("wire", cylinder=number, side=side, location=Location.ENGINE_HARNESS)


CODES = (Step("codes", clears=True), Step("cleared_test", slots=()), Step("codes_again"))
"""Read, clear, test, read: what is there now sets its code again, and an old code stays away."""

LESSONS = (
    Lesson(
        WORKED,
        "faint_hum_on_three",
        (
            Step("hear", slots=()),
            Step("slots", slots=(2, 3)),
            *CODES,
            Step("dead", request=_volts(3)),
            Step("pair", request=_pair("module", "harness", 3)),
            Step("mate", request=_pair("module", "harness", 1)),
            Step("wire_feed", request=_wire(3, Side.FEED)),
            Step("wire_return", request=_wire(3, Side.RETURN)),
            Step("cover", request=_pair("through", "cover", 3)),
            Step("look", looks=True),
            Step("again", slots=()),
        ),
        finding_worked=True,
    ),
    Lesson(TO_COMPLETE, "harness_in_the_bracket", (Step("hear", slots=()), *CODES), finding_worked=False),
    Lesson(ALONE, "full_current_no_click", (), finding_worked=False),
)


def lesson_after(entries: Sequence[Entry]) -> Lesson | None:
    """Return the first lesson that was not ended yet, or None where all were."""
    done = {entry.lesson for entry in entries}
    return next((lesson for lesson in LESSONS if lesson.number not in done), None)


def steps_done(lesson: Lesson, attempt: Attempt) -> int:
    """Return how many of a lesson's steps an attempt has behind it."""
    done = {event.lesson_step for event in attempt.events if isinstance(event, EngineEvent)}
    return next((place for place, step in enumerate(lesson.steps) if step.name not in done), len(lesson.steps))


def worked_finding(attempt: Attempt) -> Finding:
    """Return the finding that the worked case ends with."""
    return Finding(truth_of(attempt.case.to_be_found), 0.95)
