"""What is done to the engine from the bench: codes, moving, warming, swapping, lending, looking."""

from __future__ import annotations

from collections.abc import Callable

from trainer.circuit.elements import Location
from trainer.errors import WrongCallError
from trainer.practice.attempt import actions
from trainer.practice.attempt.actions import Done
from trainer.practice.attempt.attempt import Attempt
from trainer.practice.reports.attempt_lines import code_lines, point_text
from trainer.window.bench.bench_hearing import BenchHearing
from trainer.window.bench.case_bench import CaseBench
from trainer.window.shell.choosing import ChooseCylinders, ChoosePlace, Confirm
from trainer.words import message_of, text


class EngineWork:
    """The work of one bench."""

    def __init__(self, bench: CaseBench, ears: BenchHearing) -> None:
        self._bench, self._ears, self._shell = bench, ears, bench.shell

    def codes(self, *, clear: bool = False) -> None:
        """Read the codes, or clear them too."""
        if self._ears.testing:
            self._bench.say(text("codes.running"))
            return
        self._bench.ask("read_codes", self._bench.desk.attempt, clear, then=self._codes_read)

    def _codes_read(self, done: Done) -> None:
        self._bench.desk.do(done)
        cleared = [text("codes.cleared")] if done.data["cleared"] else []
        self._bench.say(*code_lines(self._bench.profile, done.data["codes"]), *cleared)

    def move(self) -> None:
        """Ask where the harness is moved."""
        self._provoke("move", "caution.moving", "choose.let_go", "bench.moving", actions.move)

    def heat(self) -> None:
        """Ask which place is warmed."""
        self._provoke("heat", "caution.heat", "choose.cool", "bench.warm", actions.heat)

    def _provoke(
        self, how: str, caution: str, none: str, said: str, act: Callable[[Attempt, Location | None], Done]
    ) -> None:
        def chosen(place: Location | None) -> None:
            if self.do(lambda: act(self._bench.desk.attempt, place)):
                self._bench.say(text(said, what=text(f"location.{place}")) if place else text("work.none"))

        title = text(f"choose.{how}")
        self._shell.show(ChoosePlace(self._shell, title, text(caution), chosen, none=text(none)))

    def swap(self) -> None:
        """Ask which two returns are swapped."""
        title, caution = text("choose.swap"), text("caution.drive")
        self._shell.show(ChooseCylinders(self._shell, title, caution, self._bench.cylinders, 2, self._swapped))

    def _swapped(self, pair: tuple[int, ...]) -> None:
        if self.do(lambda: actions.swap(self._bench.desk.attempt, *pair)):
            self._bench.say(text("work.swap", first=pair[0], second=pair[1]))

    def lend(self) -> None:
        """Ask which known-good part goes in."""
        title, caution = text("choose.lend"), text("caution.drive")
        own = (
            (text("choose.lend_module"), lambda: self._lent(Location.DRIVE_MODULE, 0)),
            (text("choose.lend_none"), self._given_back),
        )
        chosen = ChooseCylinders(
            self._shell, title, caution, self._bench.cylinders, 1, lambda one: self._lent(Location.COIL, one[0]), own
        )
        self._shell.show(chosen)

    def _lent(self, place: Location, number: int) -> None:
        what = text("choose.lend_module") if not number else text("spot.injector", number=number)
        said = text("work.substitute", what=what)
        self.do(lambda: actions.substitute(self._bench.desk.attempt, place, number), said)

    def _given_back(self) -> None:
        if self.do(lambda: actions.give_back(self._bench.desk.attempt)):
            self._bench.say(text("work.given_back"))

    def look(self) -> None:
        """Look at what is open."""
        done = self.do(lambda: actions.look(self._bench.desk.attempt))
        if done is None:
            return
        off = sorted(self._bench.desk.attempt.work.unplugged)
        seen = (
            [text("work.look_seen", places=", ".join(point_text(one) for one in done.data["what"]))]
            if done.data["what"]
            else []
        )
        self._bench.say(
            text("work.look_off", places=", ".join(point_text(one) for one in off)) if off else text("work.look"), *seen
        )

    def do(self, act: Callable[[], Done], said: str = "") -> Done | None:
        """Carry out an action that takes no time to compute; what is wrong with it is said.

        Returns None where it was refused or waits for a yes; `said` is told after the yes.
        """
        try:
            done = act()
        except WrongCallError as error:
            self._bench.say(message_of(error))
            return None
        before = self._bench.desk.attempt.events
        self.carry_out(done, lambda: self._bench.say(said) if said else None)
        return done if self._bench.desk.attempt.events > before else None

    def carry_out(self, done: Done, then: Callable[[], None]) -> None:
        """Store what was done, and then what follows; work that takes long is asked about first."""
        desk = self._bench.desk

        def agreed() -> None:
            before = desk.attempt.work
            desk.do(done)
            if desk.attempt.work != before:
                self._ears.changed()
            then()

        minutes = done.data["minutes"]
        if minutes < actions.ASKED_FROM_MINUTES:
            agreed()
        else:
            self._shell.show(Confirm(self._shell, text("price.question", minutes=minutes), agreed))
