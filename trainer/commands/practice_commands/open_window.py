"""Opens the window with the services that it works with."""

from __future__ import annotations

import os
import sys
import time
import webbrowser
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from trainer.commands.call.call import Call
from trainer.commands.call.streams import tell
from trainer.commands.call.this_machine import now_utc, universe_folder
from trainer.errors import MissingHereError
from trainer.output.temporary_sounds import TemporarySounds
from trainer.words import message_of

if TYPE_CHECKING:
    from trainer.output.player import Player
    from trainer.window.shell.services import Services
    from trainer.window.shell.shell import Shell


def can_open() -> bool:
    """Return whether there is a screen to open a window on."""
    driver = os.environ.get("SDL_VIDEODRIVER", "")
    if driver in ("dummy", "offscreen"):  # drivers without a visible screen
        return False
    if driver or sys.platform in ("win32", "darwin"):
        return True
    return bool(os.environ.get("DISPLAY") or os.environ.get("WAYLAND_DISPLAY"))


@dataclass(frozen=True, slots=True)
class WindowOptions:
    """The command line options of the window, for one sitting."""

    device: str | None = None
    to_file: bool = False
    learner: str | None = None
    hints: bool = True


def open_window(call: Call, show_first: Callable[[Shell], None], options: WindowOptions) -> None:
    """Show the window until it is closed; `show_first` opens its first screen, above the one that asks who is working.

    Raises MissingHereError where no screen can be opened.
    """
    os.environ.setdefault("PYGAME_HIDE_SUPPORT_PROMPT", "1")
    import pygame

    from trainer.desk.settings import damage_line, read_settings
    from trainer.window.app import App
    from trainer.window.station.home import WhoScreen

    path = call.data_folder / "settings.json"
    settings, damaged = read_settings(path)
    with TemporarySounds() as files:
        services = services_of(call, options, files)
        try:
            app = App(services, settings, WhoScreen)
        except pygame.error as error:
            services.worker.close()
            services.store.close()
            raise MissingHereError("no_screen", reason=str(error)) from error
        try:
            show_first(app.shell)
            if damaged:
                app.shell.say(damage_line(path, damaged))
            app.run()
        finally:
            app.close()
            services.store.close()


def services_of(call: Call, options: WindowOptions, files: TemporarySounds) -> Services:
    """Return the services of a window; `files` takes the sounds where no device can play them."""
    import numpy as np

    from trainer.cases.drawing.practice_pool import Pools
    from trainer.commands.machine_commands.examine_machine import checks_of
    from trainer.desk.worker import ProcessWorker
    from trainer.window.shell.services import Services

    folder, store = call.data_folder, call.open_store()
    return Services(
        store=store,
        worker=ProcessWorker(universe_folder()),
        player=lambda device: _player(device, files, to_file=options.to_file),
        devices=_devices,
        checks=lambda in_use: checks_of(call, in_use),
        now_utc=now_utc,
        clock=time.monotonic,
        settings_path=folder / "settings.json" if store.keeps else None,
        sheets=folder / "sheets" if store.keeps else None,
        sets=folder / "sets" if store.keeps else None,
        results=folder / "results" if store.keeps else None,
        carried=folder / "records" if store.keeps else None,
        records=call.open_records,
        pools=Pools(universe_folder()),
        chance=np.random.default_rng(),
        show_file=_show,
        device=options.device,
        learner=options.learner,
        hints=options.hints,
    )


def _player(device: str, files: TemporarySounds, *, to_file: bool) -> tuple[Player, list[MissingHereError]]:
    from trainer.output.file_player import FilePlayer
    from trainer.output.find_player import find_player

    return (FilePlayer(files), []) if to_file else find_player(device or None, files)


def _devices() -> tuple[str, ...]:
    from trainer.output.portaudio import device_names

    try:
        return device_names()
    except MissingHereError:
        return ()


def _show(path: Path) -> None:
    """Open a page in the browser, or say that there is none."""
    try:
        webbrowser.open(path.resolve().as_uri())
    except webbrowser.Error as error:
        tell(message_of(MissingHereError("no_browser", reason=error)))
