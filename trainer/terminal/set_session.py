"""A set worked in the terminal, case after case."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from trainer.cases.solved.universe_cache import Universes
from trainer.desk.desk import Desk
from trainer.desk.set_sitting import Sitting
from trainer.errors import UserError, WrongCallError
from trainer.output.player import Player
from trainer.practice.reports import set_lines as shown_set
from trainer.terminal.session import Ask, Say, Session
from trainer.words import message_of, text


class SetSession:
    """One sitting at a set; `secret` asks for the passphrase where only the instructor may decide."""

    def __init__(
        self,
        sitting: Sitting,
        player: Player,
        universes: Universes,
        results: Path,
        ask: Ask,
        say: Say,
        secret: Callable[[], str],
    ) -> None:
        self._sitting, self._player, self._universes, self._results = sitting, player, universes, results
        self._ask, self._say, self._secret = ask, say, secret

    def run(self) -> None:
        """Work case after case until all are done, the learner leaves or the input ends."""
        sitting = self._sitting
        for line in shown_set.head_lines(sitting.opened.case_set, sitting.learner):
            self._say(line)
        if sitting.unguarded:
            self._say(text("set.unguarded"))
        while sitting.next_item is not None:
            try:
                if not self._one():
                    break
            except UserError as error:
                self._say(message_of(error))
                break
        if sitting.next_item is None:
            self._say(text("set.all_done", size=sitting.opened.case_set.size))
        if sitting.next_item is None or (sitting.done and sitting.debriefs_open):
            self._look_back()

    def _one(self) -> bool:
        """Work the next case; tell whether it was ended, so that another may follow."""
        sitting = self._sitting
        desk = sitting.desk(self._player, self._universes)
        item = sitting.start_case(desk)
        title = text("set.case", number=item.number, size=sitting.opened.case_set.size)
        session = Session(desk, self._ask, self._say, title=title, void=lambda reason: self._void(desk, reason))
        session.run()
        sitting.refresh()
        if not desk.attempt.closed:
            return False
        self._bundle()
        return True

    def _void(self, desk: Desk, reason: str) -> None:
        self._sitting.void(desk, reason, self._secret)

    def _bundle(self) -> None:
        try:
            self._say(text("set.bundled", path=self._sitting.bundle(self._results)))
        except UserError as error:
            self._say(message_of(error))

    def _look_back(self) -> None:
        """Offer the debriefs of cases handed in, where they are open now."""
        sitting = self._sitting
        if sitting.limits.feedback:
            return
        if not sitting.debriefs_open:
            self._say(text("set.debrief_later"))
            return
        looked = False
        while True:
            try:
                word = self._ask(text("set.look_back", size=sitting.opened.case_set.size) + " ").strip()
            except EOFError:
                self._say("")
                word = ""
            if word in ("", "leave"):
                break
            item = next((one for one in sitting.items if str(one.number) == word), None)
            if item is None:
                self._say(message_of(WrongCallError("no_such_case", word=word, size=sitting.opened.case_set.size)))
                continue
            desk = sitting.desk(self._player, self._universes)
            sitting.look_back(desk, item)
            Session(
                desk, self._ask, self._say, title=text("set.case", number=item.number, size=len(sitting.items))
            ).debrief()
            looked = True
        if looked:
            self._bundle()  # what was looked at belongs to the results
