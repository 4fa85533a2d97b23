"""One learner at one set: its rules, what is done, the next case, and what may be looked back at."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from trainer.cases.solved.universe_cache import Universes
from trainer.desk.desk import Desk
from trainer.desk.process_guard import guards_missing
from trainer.desk.set_sitting import Sitting
from trainer.errors import UserError, WrongCallError
from trainer.practice.attempt.debrief import Debrief
from trainer.practice.attempt.events import Started
from trainer.practice.reports.set_lines import head_lines
from trainer.sets.items import SetItem
from trainer.sets.set_access import OpenedSet
from trainer.window.bench.bench_screen import BenchScreen
from trainer.window.bench.debrief_screen import DebriefScreen
from trainer.window.course.case_start import station_verdict, strength
from trainer.window.kit.nodes import Node, button, column, field, flow, lines, row, scroll, words
from trainer.window.shell.passphrase_screen import PassphraseScreen
from trainer.window.shell.screen import Screen
from trainer.window.shell.shell import Shell
from trainer.words import message_of, text


class SetScreen(Screen):
    """The page between the cases of a set; writes results after each case."""

    name = "set"
    first = "next"

    def __init__(self, shell: Shell, opened: OpenedSet, who: str, results: Path | None) -> None:
        super().__init__(shell)
        services = shell.services
        self._lost = services.store.fetch(who)
        missing = guards_missing()
        self.sitting = Sitting(opened, who, services.store, services.now_utc, services.clock, missing)
        self.who, self._results = who, results
        self._bundled: Path | None = None
        self._ended = self.sitting.done
        self._reason = ""

    # what is shown

    def view(self) -> Node:
        """Return the set's rules and what can be done now."""
        sitting, case_set = self.sitting, self.sitting.opened.case_set
        head, *rules = head_lines(case_set, self.who)
        left_s = sitting.clock_left_s
        done = len(sitting.done)
        return scroll(
            "page",
            row(words(head, "title", "set.title", weight=1.0), words(self.who, "muted"), gap=0.5),
            lines(rules, "body", "set.rules"),
            words(text("delivery.not_fetched", reason=message_of(self._lost)), "caution", "set.not_fetched")
            if self._lost
            else None,
            words(text("set.unguarded"), "muted", "set.unguarded") if sitting.unguarded else None,
            words(text("set.progress", done=done, size=case_set.size), "bold", "set.progress"),
            words(text("set.clock_left", n=round(max(left_s, 0.0) / 60.0)), "body") if left_s is not None else None,
            self._cases() if sitting.drawn else words(text("set.drawing"), "muted"),
            self._void() if sitting.drawn and self._begun() else None,
            words(text("set.bundled", path=self._bundled), "muted", "set.bundled") if self._bundled else None,
            self.shell.footer(),
            gap=0.8,
        )

    def _cases(self) -> Node:
        sitting = self.sitting
        item = sitting.next_item
        finished = item is None
        key = "set.go_on" if self._begun() else "set.next"
        following = None if item is None else button("next", text(key, number=item.number), self._sit, "n", chosen=True)
        looks = [
            button(f"look.{one.number}", str(one.number), self._looker(one), least=2.5)
            for one in sitting.items
            if one.index in sitting.done
        ]
        open_now = bool(looks) and sitting.debriefs_open and not sitting.limits.feedback
        later = finished and not open_now and not sitting.limits.feedback
        return column(
            flow(following) if following else words(text("set.all_done", size=len(sitting.items)), "bold", "set.done"),
            words(text("set.look_back_which"), "bold") if open_now else None,
            flow(*looks, gap=0.4) if open_now else None,
            words(text("set.debrief_later"), "muted") if later else None,
            flow(button("another", text("set.another"), self._another)) if finished else None,
            gap=0.6,
        )

    def _begun(self) -> bool:
        item = self.sitting.next_item if self.sitting.drawn else None
        return item is not None and self.sitting.row_of(item) is not None

    def _void(self) -> Node:
        """Return what lets the case that is begun not count."""
        return column(
            words(text("set.void_how"), "muted"),
            row(
                field("reason", self._reason, self._write, self._void_it),
                button("void", text("set.void"), self._void_it if self._reason.strip() else None),
                gap=0.6,
            ),
            gap=0.3,
        )

    # hands

    def _sit(self) -> None:
        sitting = self.sitting
        desk = sitting.desk(self.shell.listening.player, Universes(None))
        item = sitting.start_case(desk, Started(listening=station_verdict(self.shell)))
        trace = strength(self.shell, self.who, sitting.trace)
        title = text("set.case", number=item.number, size=len(sitting.items))
        self.shell.show(BenchScreen(self.shell, desk, self.who, trace, place_in_set=title))

    def _looker(self, item: SetItem) -> Callable[[], None]:
        def look() -> None:
            desk = self.sitting.desk(self.shell.listening.player, Universes(None))
            self.sitting.look_back(desk, item)
            self._write_results()  # what was looked at belongs to them
            self.shell.ask("debrief", desk.attempt, then=lambda debrief: self._debriefed(desk, debrief))

        return look

    def _debriefed(self, desk: Desk, debrief: Debrief) -> None:
        if self.shell.screen is self:
            self.shell.show(DebriefScreen(self.shell, desk, debrief, self.who))

    def _another(self) -> None:
        self.sitting.another_try()
        self._draw()

    def _write(self, written: str) -> None:
        self._reason = written[:200]

    def _void_it(self) -> None:
        if not self._reason.strip():
            raise WrongCallError("void_needs_reason")
        if not self.sitting.opened.sealed:
            self._voided("")
            return
        self.shell.show(PassphraseScreen(self.shell, text("set.void"), self._voided))

    def _voided(self, passphrase: str) -> None:
        sitting = self.sitting
        item = sitting.next_item
        row_ = None if item is None else sitting.row_of(item)
        if item is None or row_ is None:
            return
        desk = sitting.desk(self.shell.listening.player, Universes(None))
        desk.resume(item.case, row_)
        sitting.void(desk, self._reason.strip(), lambda: passphrase)
        self._reason = ""
        self.shell.say(text("set.voided"))
        self._draw()

    # coming and going

    def opened(self) -> None:
        """Take stock, write results where a case was ended, and have the cases drawn."""
        sitting = self.sitting
        sitting.refresh()
        if sitting.done != self._ended:
            self._ended = sitting.done
            self._write_results()
        self._draw()

    def _write_results(self) -> None:
        if self._results is None:
            return
        try:
            self._bundled = self.sitting.bundle(self._results)
        except UserError as error:
            self.shell.say(message_of(error))

    def _draw(self) -> None:
        sitting = self.sitting
        self.shell.touch()
        if sitting.drawn:
            return
        wanted = (sitting.opened.case_set, self.who, sitting.try_number, sitting.redrawn)

        def take(items: tuple[SetItem, ...]) -> None:
            if (sitting.try_number, sitting.redrawn) == wanted[2:]:
                sitting.take(items)
                if self.shell.screen is self and sitting.next_item is not None:
                    self.shell.focus_on("next", seen=True)
                self.shell.touch()

        self.shell.ask("draw_set", *wanted, then=take)
