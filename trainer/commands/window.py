"""Opens the window with everything that it works with."""

from __future__ import annotations

import os
import sys
import time
import webbrowser
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from trainer.commands.stores import data_folder, now_utc, records_store, store_for, universe_folder
from trainer.commands.streams import tell
from trainer.errors import MissingHereError
from trainer.output.heard_files import HeardFiles
from trainer.words import message_of

if TYPE_CHECKING:
    from trainer.output.player import Player
    from trainer.window.shell.services import Services
from trainer.window.shell.shell import Shell


def can_open() -> bool:
    """Tell whether there is a screen to open a window on."""
    driver = os.environ.get("SDL_VIDEODRIVER", "")
    if driver in ("dummy", "offscreen"):  # nobody can see those
        return False
    if driver or sys.platform in ("win32", "darwin"):
        return True
    return bool(os.environ.get("DISPLAY") or os.environ.get("WAYLAND_DISPLAY"))


@dataclass(frozen=True, slots=True)
class Asked:
    """What was asked of the window on the command line, for one sitting."""

    device: str | None = None
    to_file: bool = False
    learner: str | None = None
    hints: bool = True
    store: str | None = None


def open_window(data: Path | None, then: Callable[[Shell], None], asked: Asked) -> None:
    """Show the window until it is closed; `then` opens what it begins with, on top of who is working.

    Raises MissingHereError where no screen can be opened.
    """
    os.environ.setdefault("PYGAME_HIDE_SUPPORT_PROMPT", "1")
    import pygame

    from trainer.desk.settings import damage_line, read_settings
    from trainer.window.app import App
    from trainer.window.station.home import WhoScreen

    path = data_folder(data) / "settings.json"
    settings, damaged = read_settings(path)
    with HeardFiles() as files:
        services = services_in(data, asked, files)
        try:
            app = App(services, settings, WhoScreen)
        except pygame.error as error:
            services.worker.close()
            services.store.close()
            raise MissingHereError("no_screen", reason=str(error)) from error
        try:
            then(app.shell)
            if damaged:
                app.shell.say(damage_line(path, damaged))
            app.run()
        finally:
            app.close()
            services.store.close()


def services_in(data: Path | None, asked: Asked, files: HeardFiles) -> Services:
    """Return what a window works with, records and settings in a folder; `files` is where sounds go in silence."""
    import numpy as np

    from trainer.cases.drawing.practice_pool import Pools
    from trainer.commands.doctor import checks_in
    from trainer.desk.worker import ProcessWorker
    from trainer.window.shell.services import Services

    folder = data_folder(data)
    store = store_for(data, asked.store)
    return Services(
        store=store,
        worker=ProcessWorker(universe_folder()),
        player=lambda device: _player(device, files, to_file=asked.to_file),
        devices=_devices,
        checks=lambda in_use: checks_in(folder, in_use, asked.store),
        now_utc=now_utc,
        clock=time.monotonic,
        settings_path=folder / "settings.json" if store.keeps else None,
        sheets=folder / "sheets" if store.keeps else None,
        sets=folder / "sets" if store.keeps else None,
        results=folder / "results" if store.keeps else None,
        carried=folder / "records" if store.keeps else None,
        records=lambda: records_store(data, asked.store),
        pools=Pools(universe_folder()),
        chance=np.random.default_rng(),
        show_file=_show,
        device=asked.device,
        learner=asked.learner,
        hints=asked.hints,
    )


def _player(device: str, files: HeardFiles, *, to_file: bool) -> tuple[Player, list[MissingHereError]]:
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
    """Open a sheet in the browser, where there is one."""
    try:
        webbrowser.open(path.resolve().as_uri())
    except webbrowser.Error as error:
        tell(message_of(MissingHereError("no_browser", reason=error)))
