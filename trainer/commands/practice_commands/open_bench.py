"""Opens the window on the free bench."""

from __future__ import annotations

from typing import TYPE_CHECKING

from trainer.cases.single_case.shipped import profile_named, profile_names
from trainer.commands.call.call import Call
from trainer.commands.call.result import Result
from trainer.commands.practice_commands.open_window import WindowOptions, can_open, open_window
from trainer.errors import MissingHereError, WrongCallError

if TYPE_CHECKING:
    from trainer.window.shell.shell import Shell


def open_bench(call: Call, profile: str | None, device: str | None) -> Result:
    """Open the free bench on an engine, the first one where none is named.

    Raises WrongCallError for an unknown engine and MissingHereError where there is no screen.
    """
    if profile is not None and profile not in profile_names():
        raise WrongCallError("no_profile", name=profile, profiles=", ".join(profile_names()))
    if not can_open():
        raise MissingHereError("no_screen", reason="DISPLAY")

    def show_bench(shell: Shell) -> None:
        from trainer.window.bench.free_bench import FreeChoice

        shell.show(FreeChoice(shell, profile_named(profile or profile_names()[0])))

    open_window(call, show_bench, WindowOptions(device))
    return Result()
