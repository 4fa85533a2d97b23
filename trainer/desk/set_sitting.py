"""One learner at one set: which case comes next, what is still allowed, when the debriefs open."""

from __future__ import annotations

import hmac
import uuid
from collections import Counter
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from datetime import datetime
from pathlib import Path

from trainer import __version__
from trainer.cases.solved.universe_cache import Universes
from trainer.desk.desk import Desk
from trainer.errors import WrongCallError
from trainer.output.player import Player
from trainer.practice.attempt.allowed import Limits, refuse_late
from trainer.practice.attempt.event_json import record_of
from trainer.practice.attempt.event_record import EventKind, EventRecord
from trainer.practice.attempt.events import LookedBack, Resumed, Started, Unguarded
from trainer.reasoning.model_version import MODEL_VERSION
from trainer.records.store.bundle import write_bundle
from trainer.records.store.chain import next_link, order_of
from trainer.records.store.log_rows import AttemptRow
from trainer.records.store.store import Store
from trainer.sets.case_set import DebriefOpens, Mode
from trainer.sets.items import SetItem, case_mark, items_of
from trainer.sets.sealed import key_of
from trainer.sets.set_access import OpenedSet


@dataclass(frozen=True, slots=True)
class Worked:
    """One attempt of the present try as the store has it."""

    row: AttemptRow
    closed: bool
    voided: bool
    spent_s: float


class Sitting:
    """A learner's way through a set; `now` gives UTC text, `clock` seconds that no change of the date moves.

    `unguarded` is what this process lacks of what keeps an exam apart; in an exam it is taken down.
    """

    def __init__(
        self,
        opened: OpenedSet,
        learner: str,
        store: Store,
        now: Callable[[], str],
        clock: Callable[[], float],
        unguarded: Sequence[str] = (),
    ) -> None:
        self.opened, self.learner, self.store = opened, learner, store
        self._now, self._clock = now, clock
        self.unguarded = tuple(unguarded) if opened.case_set.policy.mode is Mode.EXAM else ()
        self._drawn: tuple[object, tuple[SetItem, ...]] | None = None
        self._worked: list[Worked] = []
        self.try_number = self._asked_try = 1
        self.refresh()

    def refresh(self) -> None:
        """Read the learner's progress through the set from the store."""
        rows = self.store.in_set(self.opened.case_set.id, self.learner)
        self.try_number = max([self._asked_try, *(row.try_number for row in rows)])
        self._worked = [self._worked_of(row) for row in rows if row.try_number == self.try_number]

    def _worked_of(self, row: AttemptRow) -> Worked:
        events = self.store.events(row.id)
        kinds = {event.kind for event in events}
        spent_s = sum(event.spent_s for event in events)
        return Worked(row, EventKind.CLOSED in kinds, EventKind.VOIDED in kinds, spent_s)

    @property
    def redrawn(self) -> dict[int, int]:
        """How often each case of this try was voided, by index."""
        return dict(Counter(one.row.item for one in self._worked if one.voided))

    @property
    def drawn(self) -> bool:
        """Whether the learner's cases are at hand, so that asking for them takes no time."""
        return self._drawn is not None and self._drawn[0] == (self.try_number, self.redrawn)

    def take(self, items: tuple[SetItem, ...]) -> None:
        """Take over the cases of this try, drawn elsewhere as `items_of` draws them."""
        self._drawn = ((self.try_number, self.redrawn), items)

    @property
    def items(self) -> tuple[SetItem, ...]:
        """The learner's cases in this try, in their order; the first call may take seconds."""
        if not self.drawn:
            self.take(items_of(self.opened.case_set, self.learner, self.try_number, self.redrawn))
        assert self._drawn is not None
        return self._drawn[1]

    @property
    def done(self) -> frozenset[int]:
        """The indices of the cases that are handed in."""
        return frozenset(one.row.item for one in self._worked if one.closed)

    @property
    def next_item(self) -> SetItem | None:
        """The case to work now: the one begun and not ended, else the next in order; None where all are done."""
        begun = {one.row.item for one in self._worked if not one.closed and not one.voided}
        left = [item for item in self.items if item.index not in self.done]
        return next((item for item in left if item.index in begun), left[0] if left else None)

    def row_of(self, item: SetItem) -> AttemptRow | None:
        """The attempt at a case that counts in this try, or None before it is begun."""
        return next((one.row for one in self._worked if one.row.item == item.index and not one.voided), None)

    def another_try(self) -> None:
        """Begin the set once more; raises WrongCallError before the end and where no try is left."""
        if self.next_item is not None:
            raise WrongCallError("try_not_finished")
        allowed = self.opened.case_set.policy.tries
        if allowed is not None and self.try_number >= allowed:
            raise WrongCallError("tries_used", allowed=allowed)
        self._asked_try = self.try_number + 1
        self.refresh()

    # what the policy allows

    @property
    def limits(self) -> Limits:
        """What is allowed in each case, support included."""
        policy, support = self.opened.case_set.policy, self.opened.case_set.support_of(self.learner)
        return Limits(
            plays=None if policy.plays is None else policy.plays + support.extra_plays,
            readings=None if policy.readings is None else policy.readings + support.extra_readings,
            bench_minutes=policy.bench_minutes,
            feedback=policy.debrief is DebriefOpens.AFTER_EACH,
            closes=policy.closes if policy.debrief is DebriefOpens.AFTER_CLOSING else None,
        )

    @property
    def clock_left_s(self) -> float | None:
        """Real seconds left in this try, up to the latest event; None for no limit."""
        allowed = self.opened.case_set.policy.clock_minutes
        if allowed is None:
            return None
        extra = self.opened.case_set.support_of(self.learner).extra_time
        return allowed * 60.0 * extra - sum(one.spent_s for one in self._worked if not one.voided)

    @property
    def trace(self) -> str:
        """How the outline on the strip is shown: fading, shown or off."""
        shown = self.opened.case_set.support_of(self.learner).trace
        return "shown" if shown else self.opened.case_set.policy.trace

    @property
    def debriefs_open(self) -> bool:
        """Whether the learner may now see truth against finding for every case handed in."""
        policy = self.opened.case_set.policy
        if policy.debrief is DebriefOpens.AFTER_CLOSING:
            return policy.closes is not None and self._moment >= policy.closes
        return policy.debrief is DebriefOpens.AFTER_EACH or self.next_item is None

    @property
    def _moment(self) -> datetime:
        return datetime.fromisoformat(self._now())

    def refuse_now(self) -> None:
        """Raise WrongCallError where no case may be begun at this moment."""
        policy = self.opened.case_set.policy
        if policy.opens is not None and self._moment < policy.opens:
            raise WrongCallError("set_not_open", opens=policy.opens.isoformat(timespec="minutes"))
        if policy.closes is not None and self._moment >= policy.closes:
            raise WrongCallError("set_closed", closes=policy.closes.isoformat(timespec="minutes"))
        left_s = self.clock_left_s
        if left_s is not None and policy.clock_minutes is not None and left_s <= 0.0:
            raise WrongCallError("clock_used", n=round(policy.clock_minutes))

    # the work

    def desk(self, player: Player, universes: Universes) -> Desk:
        """Return a desk that works under the set's rules and signs what happens."""
        return Desk(
            self.store,
            player,
            self._now,
            universes,
            hints=self.opened.case_set.policy.hints,
            limits=self.limits,
            chain_key=self.opened.key.derived("chain"),
            clock=self._clock,
        )

    def start_case(self, desk: Desk, at: Started | None = None) -> SetItem:
        """Sit down at the next case, going on where it was begun; raises WrongCallError where none may be worked."""
        item = self.next_item
        if item is None:
            raise WrongCallError("set_finished")
        row = self.row_of(item)
        if row is None:
            self.refuse_now()
            last = self._latest()
            started = replace(
                at or Started(),
                supported=self.learner in self.opened.case_set.support,
                after=last[2][-1] if last else "",
            )
            desk.start(item.case, self._row(item), started, last[1][-1].at if last else "")
            self._tell_guards(desk)
            self.refresh()
            return item
        desk.resume(item.case, row)
        if desk.attempt.finding is not None and not self.limits.feedback:
            desk.hand_in()  # the program ended between the finding and its handing in
            self.refresh()
            return self.start_case(desk, at)
        refuse_late(self.limits, self._now())
        desk.note(Resumed())
        self._tell_guards(desk)
        self.refresh()
        return item

    def _tell_guards(self, desk: Desk) -> None:
        if self.unguarded:
            desk.note(Unguarded(lacks=self.unguarded))

    def _latest(self) -> tuple[AttemptRow, list[EventRecord], list[str]] | None:
        """Return the attempt begun last, with its log; where the order is lost, the one with the latest date.

        The next attempt tells its last link, so that none can be taken away.
        """
        rows = self.store.in_set(self.opened.case_set.id, self.learner)
        logs = [self.store.logged(row.id) for row in rows]
        if not rows:
            return None
        order = order_of(logs)
        last = -1 if order is None else order[-1]
        return rows[last], *logs[last]

    def void(self, desk: Desk, reason: str, passphrase: Callable[[], str]) -> None:
        """End the present case as one that does not count; in a sealed set only who has the passphrase can.

        Raises WrongCallError for another passphrase.
        """
        key = self.opened.key
        if self.opened.sealed and not hmac.compare_digest(key_of(passphrase(), key.salt).secret, key.secret):
            raise WrongCallError("not_the_passphrase")
        desk.void(reason)
        self.refresh()

    def look_back(self, desk: Desk, item: SetItem) -> None:
        """Sit down at a case that was handed in, to be debriefed; that it was looked at is taken down first.

        Raises WrongCallError before the debriefs open.
        """
        row, last = self.row_of(item), self._latest()
        if row is None or last is None or item.index not in self.done or not self.debriefs_open:
            raise WrongCallError("debrief_not_open")
        latest, events, links = last
        left = self.opened.case_set.size - len(self.done)
        event = record_of(LookedBack(item=item.index, left=left), len(events) + 1, self._now())
        link = next_link(self.opened.key.derived("chain"), links[-1], event)
        try:
            self.store.append(latest.id, event, link)
        except ValueError as error:  # its place in the order is taken
            raise WrongCallError("worked_elsewhere") from error
        desk.limits = Limits()
        desk.resume(item.case, row)

    def _row(self, item: SetItem) -> AttemptRow:
        sealed = self.opened.sealed
        return AttemptRow(
            id=str(uuid.uuid4()),
            learner=self.learner,
            case_source="set",
            case_name=item.case.name,
            profile_digest="" if sealed else item.case.profile.digest,
            case_digest=case_mark(self.opened.key, item),
            seed=0 if sealed else item.seed,
            program_version=__version__,
            started_at=self._now(),
            set_id=self.opened.case_set.id,
            item=item.index,
            try_number=self.try_number,
            redraw=self.redrawn.get(item.index, 0),
            model=MODEL_VERSION,
        )

    def bundle(self, folder: Path) -> Path:
        """Write the learner's results into a folder; raises MissingHereError where that cannot be."""
        case_set = self.opened.case_set
        return write_bundle(self.store, folder, case_set.id, case_set.name, self.learner, self.opened.key, self._now())
