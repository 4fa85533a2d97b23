"""The actions of a learner on one case, with the rules that both faces share: cautions, confirmations, messages.

A face names an action, shows the cautions of the reply, asks where the reply says so, and shows its message. Long
actions can be computed elsewhere: `carry_out` takes what they came to.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from trainer.circuit.elements import Location
from trainer.desk.case_requests import (
    Action,
    GiveBack,
    Hear,
    Heat,
    Lend,
    Look,
    Measure,
    Mend,
    Move,
    ReadCodes,
    Retest,
    Swap,
    WarmRun,
)
from trainer.desk.desk import Desk
from trainer.errors import WrongCallError
from trainer.instruments.bench import Work
from trainer.instruments.bench_tests import Operation, Price, Spot
from trainer.instruments.charges import TOUCHED
from trainer.instruments.requests import POWER_DROPS
from trainer.instruments.tries import HEAT, MOVE, Try
from trainer.practice.attempt import actions, repair
from trainer.practice.attempt.actions import AnyResult, Solver
from trainer.practice.attempt.allowed import refuse_feedback
from trainer.practice.attempt.attempt import Attempt
from trainer.practice.attempt.events import CodesRead, EngineEvent, Looked, Measured, Repaired, Retested
from trainer.practice.reports.attempt_lines import code_lines, point_text, request_text, sighting_text, spot_text
from trainer.reasoning.universe.finding import Finding
from trainer.words import number_list, text

ASKED_FROM_MINUTES = 60.0
"""Work on the engine that takes this long or longer is asked about before it is done."""


NEVER_ASKED = (Hear, ReadCodes, Retest)
"""What takes no work on the engine is done at once, if no cover comes off for it."""

OPENING_CAUTIONS = ("caution.real", "caution.sound")
"""Shown when a case is opened: what a real engine asks for."""

CAUTIONS: Mapping[type[Action], tuple[str, ...]] = {
    Hear: ("caution.repeat",),
    Measure: ("caution.drive",),
    Move: ("caution.moving",),
    Heat: ("caution.heat",),
    WarmRun: ("caution.running",),
    Swap: ("caution.drive",),
    Lend: ("caution.drive",),
}
"""Sentences by id that belong to an action whatever the engine is like."""


ITS_OWN_CAUTION: Mapping[str, tuple[str, ...]] = {
    "lamp": ("caution.lamp",),
    "crank": ("caution.crank", "caution.battery"),
    **dict.fromkeys(POWER_DROPS, ("caution.battery",)),
    "compression": ("caution.crank",),
    "contribution": ("caution.running",),
}
"""Cautions of single measurements, beside those of measuring."""

AT_THE_BATTERY = ("crank", *POWER_DROPS)
"""What is measured at battery voltage alone: the caution of the drive would be wrong there."""


def cautions_of(action: type[Action], work: Work, *, live: bool = False) -> tuple[str, ...]:
    """Return the ids of the cautions that belong to an action on an engine as the work has left it.

    Measuring on live terminals has its own caution: the one for dead work would be wrong there.
    """
    bare = "caution.cover" if action is Measure else "caution.under_cover"
    cover = (bare,) if work.covers_off and action in (Measure, Hear, Move, Heat) else ()
    return (*(("caution.live",) if live else CAUTIONS.get(action, ())), *cover)


@dataclass(frozen=True, slots=True)
class Wording:
    """The sentences, by id, that differ between faces: they say what to press or to type next."""

    moving: str
    warm: str
    still_unplugged: str
    to_repair: str
    nothing_to_repair: str


@dataclass(frozen=True, slots=True)
class Reply:
    """The result of an action.

    `cautions` and `message` are lines to show. With `ask_first`, in minute, nothing has been done yet: ask, and hand
    `done` to `carry_out` again once it is agreed. `live` says that it is live
    work, for which isolation is asked too. `measured` names a reading whose `display` is shown apart.
    `engine_changed` says that the engine is not as it was heard.
    """

    done: AnyResult
    cautions: tuple[str, ...] = ()
    ask_first: float | None = None
    live: bool = False
    message: tuple[str, ...] = ()
    measured: str = ""
    display: str = ""
    engine_changed: bool = False


@dataclass(frozen=True, slots=True)
class Committed:
    """What follows a finding: the line to show, and whether the case has ended with it."""

    message: str
    handed_in: bool


class CaseActions:
    """The actions of one attempt; remembers which cautions were shown."""

    def __init__(self, desk: Desk, wording: Wording) -> None:
        self._desk, self._wording = desk, wording
        self._shown: set[str] = set()

    def opening_cautions(self) -> tuple[str, ...]:
        """Return the cautions of opening a case, each line once."""
        return self._once(OPENING_CAUTIONS)

    def cautions(self, action: type[Action]) -> tuple[str, ...]:
        """Return the cautions of an action that were not shown yet, for a face that computes it elsewhere."""
        return self._once(cautions_of(action, self._desk.attempt.work))

    def _cautions_for(self, action: Action) -> tuple[str, ...]:
        what = action.request.what if isinstance(action, Measure) else ""
        own = ITS_OWN_CAUTION.get(what, ())
        if what in AT_THE_BATTERY:
            return self._once(own)
        # a matching pin goes into terminals as a probe does
        kind = Measure if isinstance(action, Look) and action.drag else type(action)
        return self._once((*cautions_of(kind, self._desk.attempt.work, live=what in TOUCHED), *own))

    def _begins_live_work(self, done: AnyResult) -> bool:
        """Tell whether probes go on live terminals for the first time: nobody has prepared it yet."""
        preparation = Price(Operation.LIVE_PREPARATION)
        paid = done.event.paid if isinstance(done.event, EngineEvent) else frozenset()
        return preparation in paid and preparation not in self._desk.attempt.paid

    def _once(self, keys: tuple[str, ...]) -> tuple[str, ...]:
        new = [key for key in keys if key not in self._shown]
        self._shown.update(new)
        return tuple(text(key) for key in new)

    def act(self, action: Action) -> Reply:
        """Compute an action here and carry it out.

        Raises WrongCallError for one that the case, its set or the engine does not allow.
        """
        if isinstance(action, Mend | Retest):
            self.require_feedback()
        return self.carry_out(action, computed(action, self._desk.attempt, self._desk.solver))

    def carry_out(self, action: Action, done: AnyResult, *, agreed: bool = False) -> Reply:
        """Store the result of an action; long work needs the learner's agreement first. Raises WrongCallError."""
        minutes = done.event.labour_minutes
        live = self._begins_live_work(done)
        if not agreed and (live or (minutes >= ASKED_FROM_MINUTES and self._takes_work(action, done))):
            return Reply(done, self._cautions_for(action), ask_first=minutes, live=live)
        before = self._desk.attempt.work
        self._desk.do(done)
        measured, display = ("", "")
        if isinstance(done.event, Measured):
            measured, display = request_text(done.event.request), done.event.reading.display
        return Reply(
            done,
            self._cautions_for(action),
            message=self._message(action, done),
            measured=measured,
            display=display,
            engine_changed=self._desk.attempt.work != before,
        )

    def _takes_work(self, action: Action, done: AnyResult) -> bool:
        opens = done.event.work.covers_off > self._desk.attempt.work.covers_off
        return opens or not isinstance(action, NEVER_ASKED)

    def _message(self, action: Action, done: AnyResult) -> tuple[str, ...]:
        match done.event:
            case CodesRead(codes=codes, cleared=cleared):
                forgotten = [text("codes.cleared")] if cleared else []
                return (*code_lines(self._desk.attempt.case.profile, codes), *forgotten)
            case Measured():
                return self._reading_lines(done.event)
            case Repaired(location=place, minutes=minutes):
                return (text("repair.done", what=text(f"location.{place}"), minutes=minutes),)
            case Retested():
                return self._retest_lines(done.event)
            case Looked():
                return self._look_lines(done.event)
            case _:
                return self._work_lines(action)

    def _work_lines(self, action: Action) -> tuple[str, ...]:
        match action:
            case Move(location=None) | Heat(location=None):
                return (text("work.none"),)
            case Move(location=place):
                return (text(self._wording.moving, what=self._tried_text(place, self._desk.attempt.work.moving)),)
            case Heat(location=place):
                return (text(self._wording.warm, what=self._tried_text(place, self._desk.attempt.work.warming)),)
            case WarmRun():
                return (text("work.warm_run"),)
            case Swap(first=first, second=second):
                return (text("work.swap", first=first, second=second),)
            case Lend(location=Location.DRIVE_MODULE):
                return (text("work.substitute", what=text("choose.lend_module")),)
            case Lend(cylinder=number):
                return (text("work.substitute", what=text("spot.injector", number=number)),)
            case GiveBack():
                return (text("work.given_back"),)
            case _:
                return ()

    @staticmethod
    def _tried_text(place: Location | None, one: Try | None) -> str:
        assert place is not None
        assert one is not None
        return text(
            "work.try", what=spot_text(Spot(place, one.bank)), number=one.number, effort=text(f"effort.{one.effort}")
        )

    def _reading_lines(self, event: Measured) -> tuple[str, ...]:
        """Return the lines beside a reading: the expected value, slips, connectors still unplugged elsewhere."""
        reading, predicted = event.reading, event.predicted
        beside = [text("expect.beside", predicted=predicted, display=reading.display)] if predicted else []
        elsewhere = sorted(self._desk.attempt.work.unplugged - {event.request.point})
        places = ", ".join(point_text(point) for point in elsewhere)
        unplugged = [text(self._wording.still_unplugged, places=places)] if elsewhere else []
        return (*beside, *(text(f"slip.{slip}") for slip in reading.slips), *unplugged)

    def _retest_lines(self, event: Retested) -> tuple[str, ...]:
        outcome = "retest.not_proved"
        if event.proved:
            outcome = "retest.provoke" if event.to_provoke else "retest.proved"
        return (*code_lines(self._desk.attempt.case.profile, event.codes), text(outcome))

    def _look_lines(self, event: Looked) -> tuple[str, ...]:
        off = ", ".join(point_text(point) for point in sorted(self._desk.attempt.work.unplugged))
        seen = (sighting_text(name) for name in event.what)
        nothing = [text("work.drag_nothing")] if event.drag and not event.what else []
        return (text("work.look_off", places=off) if off else text("work.look"), *seen, *nothing)

    def require_feedback(self) -> None:
        """Raise WrongCallError before a finding, and in a set that keeps back whether it is right."""
        if self._desk.attempt.finding is None:
            raise WrongCallError("finding_first")
        refuse_feedback(self._desk.limits)

    def commit(self, finding: Finding) -> Committed:
        """Commit a finding; in an exam the case is handed in with it. Raises WrongCallError for one that cannot be."""
        self._desk.commit(finding)
        if not self._desk.limits.feedback:
            self._desk.hand_in()
            return Committed(text("set.handed_in"), handed_in=True)
        key = self._wording.to_repair if finding.claims else self._wording.nothing_to_repair
        return Committed(text(key), handed_in=False)


def computed(action: Action, attempt: Attempt, solver: Solver) -> AnyResult:
    """Compute an action without storing it. Raises WrongCallError for what the engine or case does not have."""
    match action:
        case Hear(slots=slots, place=place):
            return actions.hear(attempt, slots, place, solver)
        case ReadCodes(clear=clear):
            return actions.read_codes(attempt, solver, clear=clear)
        case Measure(request=request, predicted=predicted):
            return actions.measure(attempt, request, predicted)
        case Mend(repair=wanted):
            cylinders = attempt.case.profile.cylinders
            if unknown := wanted.cylinders - set(cylinders):
                raise WrongCallError("no_cylinder", cylinder=min(unknown), cylinders=number_list(cylinders))
            return repair.repair(attempt, wanted)
        case Retest(place=place, moved=moved, heated=heated):
            return repair.retest(attempt, solver, place, moved=moved, heated=heated)
        case _:
            return _worked(action, attempt)


def _worked(action: Move | Heat | WarmRun | Swap | Lend | GiveBack | Look, attempt: Attempt) -> AnyResult:
    match action:
        case Move(location=location, bank=bank, effort=effort):
            return actions.provoke(attempt, MOVE, Spot(location, bank) if location else None, effort)
        case Heat(location=location, bank=bank, effort=effort):
            return actions.provoke(attempt, HEAT, Spot(location, bank) if location else None, effort)
        case WarmRun():
            return actions.run_warm(attempt)
        case Swap(first=first, second=second):
            return actions.swap(attempt, first, second)
        case Lend(location=place, cylinder=cylinder):
            return actions.substitute(attempt, place, cylinder)
        case GiveBack():
            return actions.give_back(attempt)
        case Look(drag=drag):
            return actions.look(attempt, drag=drag)
