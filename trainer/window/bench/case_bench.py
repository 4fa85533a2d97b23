"""What a bench and the screens opened from it share: one attempt, the listening place, the message."""

from __future__ import annotations

from collections.abc import Callable

from trainer.circuit.profile import Profile
from trainer.desk.case_actions import CaseActions, Wording
from trainer.desk.desk import Desk
from trainer.window.shell.screen import Screen
from trainer.window.shell.shell import Shell

WORDING = Wording(
    moving="bench.moving",
    warm="bench.warm",
    still_unplugged="probe.off",
    to_repair="finding.next",
    nothing_to_repair="finding.next_passes",
)
"""Sentences that say what to press next."""


class CaseBench(Screen):
    """A screen with one attempt; `place` is the listening place, `message` the lines under the strip."""

    def __init__(self, shell: Shell, desk: Desk, who: str) -> None:
        super().__init__(shell)
        self.desk, self.who = desk, who
        self.place = "front"
        self.marked: int | None = None
        self.message: tuple[str, ...] = ()
        self.actions = CaseActions(desk, WORDING)

    @property
    def profile(self) -> Profile:
        """The engine on the bench."""
        return self.desk.attempt.case.profile

    @property
    def cylinders(self) -> tuple[int, ...]:
        """Digits name the cylinder whose slot is heard."""
        return tuple(self.profile.cylinders)

    def ask(self, does: str, *arguments: object, then: Callable[..., None]) -> None:
        """Ask for long work; the result is dropped if this screen has been closed."""
        self.shell.ask(does, *arguments, then=lambda value: then(value) if self in self.shell.screens else None)

    def prepare(self) -> None:
        """Prepare the reasoner in the background while the worker is idle."""
        self.shell.ask("prepare", self.desk.attempt, then=lambda _nothing: None, idle=True)

    def say(self, *lines: str) -> None:
        """Show lines under the strip until others replace them."""
        self.message = tuple(lines)
        self.shell.touch()
