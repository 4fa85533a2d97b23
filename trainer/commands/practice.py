"""practice: opens a face on a case, with the store and a player."""

from __future__ import annotations

from collections.abc import Callable
from contextlib import closing
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from trainer.cases.solved.universe_cache import Universes
from trainer.commands.result import Result
from trainer.commands.stores import now_utc, store_for, universes
from trainer.commands.streams import ask, say, tell
from trainer.commands.window import Asked, can_open, open_window
from trainer.desk.case_source import find_case
from trainer.desk.desk import Desk
from trainer.desk.learner_name import learner_name
from trainer.desk.seat import DEFAULT_LEARNER, seat
from trainer.errors import MissingHereError
from trainer.output.doctor import pygame_check
from trainer.output.returning_player import terminal_player
from trainer.records.store.store import Store
from trainer.terminal.session import Session
from trainer.words import message_of, text

if TYPE_CHECKING:
    from trainer.window.shell.shell import Shell


@dataclass(frozen=True, slots=True)
class Wanted:
    """What a person asked practice for."""

    case: str | None
    seed: int | None
    terminal: bool
    learner: str | None
    new: bool
    to_file: bool
    device: str | None
    hints: bool = True
    store: str | None = None


def practise(wanted: Wanted, data: Path | None) -> Result:
    """Work one case in the window, or in the terminal where that is asked for or there is no screen."""
    pygame = pygame_check()
    if not pygame.good:
        tell(f"{pygame.name}: {pygame.found} → {pygame.mend}")
    if not wanted.terminal and pygame.good:
        if can_open():
            try:
                return _in_window(wanted, data)
            except MissingHereError as error:
                if error.key != "no_screen":
                    raise
                tell(message_of(error))
        tell(text("window.absent"))
    return _in_terminal(wanted, data)


def _in_window(wanted: Wanted, data: Path | None) -> Result:
    """Open the window: on a case where one is named, else on who is working."""
    found = find_case(wanted.case) if wanted.case else None

    def then(shell: Shell) -> None:
        from trainer.window.course.case_start import sit

        if found is not None:
            sit(shell, found, learner_name(wanted.learner or DEFAULT_LEARNER), new=wanted.new, seed=wanted.seed)

    asked = Asked(wanted.device, wanted.to_file, wanted.learner, wanted.hints, wanted.store)
    open_window(data, then, asked)
    return Result()


def _in_terminal(wanted: Wanted, data: Path | None) -> Result:
    """Work one case in the terminal, or without one practise there."""
    learner = learner_name(wanted.learner or DEFAULT_LEARNER)
    found = find_case(wanted.case) if wanted.case else None
    with (
        closing(store_for(data, wanted.store)) as store,
        terminal_player(wanted.device, tell, to_file=wanted.to_file) as player,
    ):
        lost = store.fetch(learner)
        if lost is not None:
            tell(text("delivery.not_fetched", reason=message_of(lost)))

        def new_desk() -> Desk:
            return Desk(store, player, now_utc, universes(), hints=wanted.hints)

        if found is None:
            _practise_on(store, learner, new_desk, universes())
        else:
            desk = new_desk()
            seat(desk, found, learner, now_utc(), new=wanted.new, seed=wanted.seed)
            Session(desk, ask, say).run()
    return Result()


def _practise_on(store: Store, learner: str, new_desk: Callable[[], Desk], universes: Universes) -> None:
    """Give one task after another, what teaches most first."""
    import time

    import numpy as np

    from trainer.cases.drawing.practice_pool import kept
    from trainer.cases.single_case.shipped import profile_named, profile_names
    from trainer.desk.exercise_maker import Exercises
    from trainer.desk.learner_course import Course
    from trainer.terminal.practice_session import PracticeSession

    pools = universes.pools
    profiles = [profile_named(name) for name in profile_names()]
    if not all(kept(profile, universes.folder) for profile in profiles):
        say(text("course.prepare"))
    course = Course(store, learner, now_utc, np.random.default_rng())
    exercises = Exercises(universes)
    PracticeSession(
        course, exercises, new_desk, [pools(one) for one in profiles], now_utc, time.monotonic, ask, say
    ).run()
