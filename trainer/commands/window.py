"""Opens the window with everything that it works with."""

from __future__ import annotations

import os
import sys
import time
import webbrowser
from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING

from trainer.commands.stores import data_folder, universe_folder
from trainer.errors import MissingHereError
from trainer.words import text, told

if TYPE_CHECKING:
    from trainer.output.player import Player
    from trainer.window.state.services import Services
from trainer.window.state.shell import Shell


def can_open() -> bool:
    """Tell whether there is a screen to open a window on."""
    if os.environ.get("SDL_VIDEODRIVER") or sys.platform in ("win32", "darwin"):
        return True
    return bool(os.environ.get("DISPLAY") or os.environ.get("WAYLAND_DISPLAY"))


def open_window(
    data: Path | None, then: Callable[[Shell], None], *, device: str | None = None, to_file: bool = False
) -> None:
    """Show the window until it is closed; `then` opens what it begins with, on top of who is working.

    Raises MissingHereError where no screen can be opened.
    """
    started_s = time.perf_counter()
    os.environ.setdefault("PYGAME_HIDE_SUPPORT_PROMPT", "1")
    import pygame

    from trainer.desk.settings import read_settings
    from trainer.window.app import App
    from trainer.window.state.home import WhoScreen

    folder = data_folder(data)
    settings, damaged = read_settings(folder / "settings.json")
    if device is not None:
        settings = settings.changed(device=device)
    services = services_in(folder, insist=data is not None, to_file=to_file)
    try:
        app = App(services, settings, WhoScreen, started_s=started_s)
    except pygame.error as error:
        services.worker.close()
        raise MissingHereError("no_screen", reason=str(error)) from error
    if damaged is not None:
        app.shell.say(text("settings.damaged", path=damaged))
    then(app.shell)
    app.run()
    services.store.close()


def services_in(folder: Path, *, insist: bool, to_file: bool) -> Services:
    """Return what a window works with, records and settings in a folder."""
    from trainer.commands.doctor import checks_in
    from trainer.commands.practice import now_utc, store_in
    from trainer.desk.worker import ProcessWorker
    from trainer.window.state.services import Services

    store = store_in(folder, insist=insist)
    return Services(
        store=store,
        worker=ProcessWorker(universe_folder()),
        player=_file_player if to_file else _player,
        devices=_devices,
        checks=lambda: checks_in(folder),
        now_utc=now_utc,
        settings_path=None if store.place == "memory" else folder / "settings.json",
        sheets=None if store.place == "memory" else folder / "sheets",
        show_file=_show,
    )


def _player(device: str) -> tuple[Player, list[MissingHereError]]:
    from trainer.output.player import best_player

    missing: list[MissingHereError] = []
    return best_player(device or None, None, missing.append), missing


def _file_player(_device: str) -> tuple[Player, list[MissingHereError]]:
    from trainer.output.player import FilePlayer

    return FilePlayer(), []


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
        sys.stderr.write(f"{told(MissingHereError('no_browser', reason=error))}\n")
