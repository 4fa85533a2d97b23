"""What is done to the engine from the bench: codes, moving, warming, swapping, lending, looking."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from trainer.circuit.codes import known_codes
from trainer.circuit.elements import Location
from trainer.errors import WrongCallError
from trainer.practice import actions
from trainer.practice.actions import Done
from trainer.practice.shown import code_lines, meaning_of, point_text
from trainer.window.state.choosing import ChooseCylinders, ChoosePlace, Confirm
from trainer.words import text, told

if TYPE_CHECKING:
    from trainer.window.state.bench import BenchScreen

ASKED_FROM_MINUTES = 60.0
"""Work from this price on is asked about before it is done."""


class EngineWork:
    """The work of one bench."""

    def __init__(self, bench: BenchScreen) -> None:
        self._bench, self._shell = bench, bench.shell

    def codes(self, *, clear: bool = False) -> None:
        """Read the codes, or clear them too."""
        if self._bench.ears.testing:
            self._bench.say(text("codes.running"))
            return
        done = self.do(lambda: actions.read_codes(self._bench.desk.attempt, clear=clear))
        if done is not None:
            known = known_codes(self._bench.profile)
            meanings = {name: meaning_of(code.sensed, code.cylinder) for name, code in known.items()}
            self._bench.say(*code_lines(done.data["codes"], meanings), *([text("codes.cleared")] if clear else []))

    def move(self) -> None:
        """Ask where the harness is moved."""
        title, caution = text("choose.move"), text("caution.moving")
        self._shell.show(ChoosePlace(self._shell, title, caution, self._moved, none=text("choose.let_go")))

    def _moved(self, place: Location | None) -> None:
        if self.do(lambda: actions.move(self._bench.desk.attempt, place)):
            self._bench.say(text("bench.moving", what=text(f"location.{place}")) if place else text("work.none"))

    def heat(self) -> None:
        """Ask which place is warmed."""
        title, caution = text("choose.heat"), text("caution.heat")
        self._shell.show(ChoosePlace(self._shell, title, caution, self._heated, none=text("choose.cool")))

    def _heated(self, place: Location | None) -> None:
        if self.do(lambda: actions.heat(self._bench.desk.attempt, place)):
            self._bench.say(text("bench.warm", what=text(f"location.{place}")) if place else text("work.none"))

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
        if self.do(lambda: actions.substitute(self._bench.desk.attempt, place, number), said):
            self._bench.say(said)

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
        """Carry out an action; one that takes long is asked about first, and what is wrong with it is said."""
        try:
            done = act()
        except WrongCallError as error:
            self._bench.say(told(error))
            return None
        if done.data["minutes"] >= ASKED_FROM_MINUTES:
            self.ask_price(done, lambda: self._bench.say(said) if said else None)
            return None
        return self._done(done)

    def _done(self, done: Done) -> Done:
        before = self._bench.desk.attempt.work
        self._bench.desk.do(done)
        if self._bench.desk.attempt.work != before:
            self._bench.ears.changed()
        return done

    def ask_price(self, done: Done, then: Callable[[], None]) -> None:
        """Ask whether long work is wanted; doing it is stored, and then what follows."""

        def agreed() -> None:
            self._done(done)
            self._bench.say(text("bench.done", minutes=done.data["minutes"]))
            then()

        self._shell.show(Confirm(self._shell, text("price.question", minutes=done.data["minutes"]), agreed))
