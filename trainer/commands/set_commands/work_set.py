"""Opens the window or the terminal on a set."""

from __future__ import annotations

import time
from contextlib import closing
from dataclasses import dataclass, replace
from pathlib import Path
from typing import TYPE_CHECKING

from trainer.commands.call.call import Call
from trainer.commands.call.result import Result
from trainer.commands.call.set_passphrase import passphrase_from
from trainer.commands.call.streams import ask, say, tell
from trainer.commands.call.this_machine import now_utc
from trainer.desk.learner_name import learner_name
from trainer.desk.process_guard import guards_missing
from trainer.desk.set_sitting import Sitting
from trainer.output.fallback_player import terminal_player
from trainer.sets.set_access import OpenedSet, open_set, refuse_open_exam
from trainer.terminal.set_session import SetSession
from trainer.words import message_of, text

if TYPE_CHECKING:
    from trainer.window.shell.shell import Shell


@dataclass(frozen=True, slots=True)
class WorkOptions:
    """The command line options of `set sit`."""

    path: Path
    learner: str
    in_terminal: bool
    results: Path | None
    passphrase_file: Path | None
    to_file: bool
    device: str | None


def work_set(call: Call, options: WorkOptions) -> Result:
    """Open a set for a learner, in the window or in the terminal."""
    opened = open_set(options.path, passphrase_from(options.passphrase_file))
    refuse_open_exam(opened, options.path.name)
    options = replace(options, learner=learner_name(options.learner))
    if not options.in_terminal and _window_opens(call, options, opened):
        return Result()
    return _in_terminal(call, options, opened)


def _window_opens(call: Call, options: WorkOptions, opened: OpenedSet) -> bool:
    from trainer.commands.practice_commands.open_window import WindowOptions, can_open, open_window
    from trainer.output.machine_checks import pygame_check

    if not pygame_check().good or not can_open():
        tell(text("window.absent"))
        return False

    def show_set(shell: Shell) -> None:
        from trainer.window.course.set_page import SetScreen

        shell.show(SetScreen(shell, opened, options.learner, _results_folder(call, options)))

    open_window(call, show_set, WindowOptions(options.device, options.to_file, options.learner))
    return True


def _results_folder(call: Call, options: WorkOptions) -> Path:
    return options.results if options.results is not None else call.data_folder / "results"


def _in_terminal(call: Call, options: WorkOptions, opened: OpenedSet) -> Result:
    with (
        closing(call.open_store()) as store,
        terminal_player(options.device, tell, to_file=options.to_file) as player,
    ):
        error = store.fetch(options.learner)
        if error is not None:
            tell(text("delivery.not_fetched", reason=message_of(error)))
        sitting = Sitting(opened, options.learner, store, now_utc, time.monotonic, guards_missing())
        session = SetSession(
            sitting,
            player,
            call.universes,
            _results_folder(call, options),
            ask,
            say,
            passphrase_from(options.passphrase_file),
        )
        session.run()
    return Result()
