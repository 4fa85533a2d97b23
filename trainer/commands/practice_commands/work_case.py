"""Opens the window or the terminal on one case, or on practice."""

from __future__ import annotations

from collections.abc import Callable
from contextlib import closing
from dataclasses import dataclass
from typing import TYPE_CHECKING

from trainer.cases.solved.universe_cache import Universes
from trainer.commands.call.call import Call
from trainer.commands.call.result import Result
from trainer.commands.call.streams import ask, say, tell
from trainer.commands.call.this_machine import now_utc
from trainer.commands.practice_commands.open_window import WindowOptions, can_open, open_window
from trainer.desk.attempt_start import DEFAULT_LEARNER, start_or_resume
from trainer.desk.case_source import find_case
from trainer.desk.desk import Desk
from trainer.desk.learner_name import learner_name
from trainer.errors import MissingHereError
from trainer.output.fallback_player import terminal_player
from trainer.output.machine_checks import pygame_check
from trainer.records.store.store import Store
from trainer.terminal.session import Session
from trainer.words import message_of, text

if TYPE_CHECKING:
    from trainer.window.shell.shell import Shell


@dataclass(frozen=True, slots=True)
class PracticeOptions:
    """The command line options of `practice`."""

    case: str | None
    seed: int | None
    in_terminal: bool
    learner: str | None
    new: bool
    to_file: bool
    device: str | None
    hints: bool = True


def practise(call: Call, options: PracticeOptions) -> Result:
    """Work one case in the window, or in the terminal where it was chosen or there is no screen."""
    pygame = pygame_check()
    if not pygame.good:
        tell(f"{pygame.name}: {pygame.found} → {pygame.mend}")
    if not options.in_terminal and pygame.good:
        if can_open():
            try:
                return _in_window(call, options)
            except MissingHereError as error:
                if error.key != "no_screen":
                    raise
                tell(message_of(error))
        tell(text("window.absent"))
    return _in_terminal(call, options)


def _in_window(call: Call, options: PracticeOptions) -> Result:
    """Open the window: on a case where one is named, else on the screen that asks who is working."""
    found = find_case(options.case) if options.case else None

    def show_case(shell: Shell) -> None:
        from trainer.window.course.case_start import sit

        if found is not None:
            sit(shell, found, learner_name(options.learner or DEFAULT_LEARNER), new=options.new, seed=options.seed)

    window = WindowOptions(options.device, options.to_file, options.learner, options.hints)
    open_window(call, show_case, window)
    return Result()


def _in_terminal(call: Call, options: PracticeOptions) -> Result:
    """Work one case in the terminal, or practise there where none is named."""
    learner = learner_name(options.learner or DEFAULT_LEARNER)
    found = find_case(options.case) if options.case else None
    with (
        closing(call.open_store()) as store,
        terminal_player(options.device, tell, to_file=options.to_file) as player,
    ):
        error = store.fetch(learner)
        if error is not None:
            tell(text("delivery.not_fetched", reason=message_of(error)))

        def new_desk() -> Desk:
            return Desk(store, player, now_utc, call.universes, hints=options.hints)

        if found is None:
            _practise_on(store, learner, new_desk, call.universes)
        else:
            desk = new_desk()
            start_or_resume(desk, found, learner, now_utc(), new=options.new, seed=options.seed)
            Session(desk, ask, say).run()
    return Result()


def _practise_on(store: Store, learner: str, new_desk: Callable[[], Desk], universes: Universes) -> None:
    """Practise in the terminal: one task after another, chosen by what teaches most."""
    import time

    import numpy as np

    from trainer.cases.drawing.practice_pool import is_cached
    from trainer.cases.single_case.shipped import profile_named, profile_names
    from trainer.desk.exercise_maker import Exercises
    from trainer.desk.learner_course import Course
    from trainer.terminal.practice_session import PracticeSession

    pools = universes.pools
    profiles = [profile_named(name) for name in profile_names()]
    if not all(is_cached(profile, universes.folder) for profile in profiles):
        say(text("course.prepare"))
    course = Course(store, learner, now_utc, np.random.default_rng())
    exercises = Exercises(universes)
    PracticeSession(
        course, exercises, new_desk, [pools(one) for one in profiles], now_utc, time.monotonic, ask, say
    ).run()
