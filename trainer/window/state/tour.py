"""The first run: one case worked step by step on the real bench, with a guide that can be skipped at any step."""

from __future__ import annotations

from collections.abc import Callable

from trainer.cases.universe_cache import Universes
from trainer.desk.case_source import find_case
from trainer.desk.desk import Desk
from trainer.desk.seat import seat
from trainer.practice.attempt import Attempt
from trainer.practice.events import EventKind
from trainer.window.state.bench import BenchScreen
from trainer.window.state.nodes import Node, button, column, flow, words
from trainer.window.state.shell import Shell
from trainer.window.state.sitting import station
from trainer.words import text

CASE = "faint_hum_on_three"


def _heard(attempt: Attempt, *, whole: bool) -> bool:
    return any(line.kind is EventKind.HEARD and (line.data["slots"] is None) == whole for line in attempt.card)


def _did(kind: EventKind) -> Callable[[Attempt], bool]:
    return lambda attempt: any(line.kind is kind for line in attempt.card)


STEPS: tuple[tuple[str, Callable[[Attempt], bool]], ...] = (
    ("hear", lambda attempt: _heard(attempt, whole=True)),
    ("replay", lambda attempt: _heard(attempt, whole=False)),
    ("codes", _did(EventKind.CODES_READ)),
    ("measure", _did(EventKind.MEASURED)),
    ("suspect", _did(EventKind.SUSPECTED)),
    ("finding", lambda attempt: attempt.finding is not None),
    ("debrief", lambda attempt: False),
)
"""Each step with what shows that it was done."""


class TourScreen(BenchScreen):
    """The bench with a guide above it; the attempt is real and stays on record."""

    name = "tour"

    def __init__(self, shell: Shell, who: str) -> None:
        found = find_case(CASE)
        desk = Desk(shell.services.store, shell.listening.player, shell.services.now_utc, Universes(None))
        seat(desk, found, who, shell.services.now_utc(), new=True, at=station(shell))
        super().__init__(shell, desk, who, 1.0)
        self.guided = True
        shell.keep(shell.settings.changed(toured=True))

    @property
    def step(self) -> int:
        """Which step comes next."""
        done = [done(self.desk.attempt) for _name, done in STEPS]
        return next(place for place, one in enumerate(done) if not one)

    def view(self) -> Node:
        """Return the guide above the bench."""
        if not self.guided:
            return super().view()
        guide = column(
            words(text("tour.step", number=self.step + 1, count=len(STEPS)), "muted", "tour.step"),
            words(text(f"tour.{STEPS[self.step][0]}"), "bold", "tour.text"),
            flow(button("skip", text("tour.skip"), self._skip, "q")),
            surface="panel",
            pad=0.7,
            gap=0.3,
            framed=True,
        )
        return column(guide, column(super().view(), weight=1.0), gap=0.6)

    def _skip(self) -> None:
        self.guided = False
