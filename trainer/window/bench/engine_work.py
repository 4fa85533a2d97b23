"""What is done to the engine from the bench: codes, moving, warming, swapping, lending, looking."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from functools import partial

from trainer.circuit.elements import Location
from trainer.desk.case_actions import Reply, cautions_of
from trainer.desk.case_requests import Action, GiveBack, Heat, Lend, Look, Move, ReadCodes, Swap, WarmRun
from trainer.errors import WrongCallError
from trainer.instruments.tries import UNDER_COVER, Effort
from trainer.practice.attempt.actions import AnyResult
from trainer.practice.reports.attempt_lines import named
from trainer.window.bench.bench_hearing import BenchHearing
from trainer.window.bench.case_bench import CaseBench
from trainer.window.shell.choosing import Choice, ChooseCylinders, ChooseOne, ChoosePlace, Confirm
from trainer.words import message_of, text


class EngineWork:
    """The work of one bench."""

    def __init__(self, bench: CaseBench, hearing: BenchHearing) -> None:
        self._bench, self._hearing, self._shell = bench, hearing, bench.shell

    def codes(self, *, clear: bool = False) -> None:
        """Read the codes, or clear them too."""
        if self._hearing.testing:
            self._bench.say(text("codes.running"))
            return
        action = ReadCodes(clear)
        read = self._bench.desk.attempt, clear
        self._bench.ask("read_codes", *read, then=lambda done: self.carry_out(action, done, self._say))

    def _say(self, reply: Reply) -> None:
        self._bench.say(*reply.message)

    def _caution(self, action: type[Action]) -> str:
        return " ".join(text(key) for key in cautions_of(action, self._bench.desk.attempt.work))

    def move(self) -> None:
        """Ask where the harness is moved."""
        self._provoke(text("choose.move"), Move, text("choose.let_go"))

    def heat(self) -> None:
        """Ask which place is warmed."""
        run = (text("choose.warm_run"), lambda: self.act(WarmRun()))
        self._provoke(text("choose.heat"), Heat, text("choose.cool"), (run,))

    def _provoke(self, title: str, action: type[Move | Heat], none: str, others: Sequence[Choice] = ()) -> None:
        def chosen(place: Location | None) -> None:
            if place is None:
                self.act(action(None))
            elif place in UNDER_COVER and len(self._bench.profile.banks) > 1:
                banks = [
                    (text("point.cover", name=named(bank)), partial(how_hard, place, bank))
                    for bank in self._bench.profile.banks
                ]
                self._shell.show(ChooseOne(self._shell, text("choose.cover"), text("caution.under_cover"), banks))
            else:
                how_hard(place, "")

        def how_hard(place: Location, bank: str) -> None:
            efforts = [(text(f"choose.{effort}"), partial(self.act, action(place, bank, effort))) for effort in Effort]
            self._shell.show(ChooseOne(self._shell, text("choose.effort"), text("choose.effort_why"), efforts))

        self._shell.show(ChoosePlace(self._shell, title, self._caution(action), chosen, none=none, others=others))

    def swap(self) -> None:
        """Ask which two returns are swapped."""

        def chosen(pair: tuple[int, ...]) -> None:
            self.act(Swap(*pair))

        caution = self._caution(Swap)
        self._shell.show(ChooseCylinders(self._shell, text("choose.swap"), caution, self._bench.cylinders, 2, chosen))

    def lend(self) -> None:
        """Ask which known-good part goes in."""

        def chosen(numbers: tuple[int, ...]) -> None:
            self.act(Lend(Location.COIL, numbers[0]))

        others = (
            (text("choose.lend_module"), lambda: self.act(Lend(Location.DRIVE_MODULE, 0))),
            (text("choose.lend_none"), lambda: self.act(GiveBack())),
        )
        title, caution = text("choose.lend"), self._caution(Lend)
        self._shell.show(ChooseCylinders(self._shell, title, caution, self._bench.cylinders, 1, chosen, others))

    def look(self) -> None:
        """Look at what is open."""
        self.act(Look())

    def drag(self) -> None:
        """Draw a matching pin through the terminals of what is open."""
        self.act(Look(drag=True))

    def act(self, action: Action) -> None:
        """Carry out an action that takes no time to compute, and show its message or why it is refused."""
        try:
            reply = self._bench.actions.act(action)
        except WrongCallError as error:
            self._bench.say(message_of(error))
            return
        self._finish(action, reply, self._say)

    def carry_out(self, action: Action, done: AnyResult, show: Callable[[Reply], None]) -> None:
        """Store the result of an action and show the reply; long work asks first."""
        self._finish(action, self._bench.actions.carry_out(action, done), show)

    def _finish(self, action: Action, reply: Reply, show: Callable[[Reply], None]) -> None:
        def agreed() -> None:
            self._finish(action, self._bench.actions.carry_out(action, reply.done, agreed=True), show)

        if reply.ask_first is not None:
            question = text("live.question" if reply.live else "price.question", minutes=reply.ask_first)
            self._shell.show(Confirm(self._shell, question, agreed))
            return
        if reply.engine_changed:
            self._hearing.changed()
        show(reply)
