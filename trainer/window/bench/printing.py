"""Sheets to print, from the window."""

from __future__ import annotations

from collections.abc import Sequence

from trainer.desk.desk import Desk
from trainer.errors import MissingHereError
from trainer.records.papers.sheets import write_sheet
from trainer.window.shell.shell import Shell
from trainer.words import message_of, text


def print_sheet(shell: Shell, kind: str, desk: Desk, lines: Sequence[str], who: str) -> None:
    """Write a sheet, open it where that is allowed, and tell where it lies."""
    folder, settings = shell.services.sheets, shell.settings
    if folder is None:
        shell.say(text("sheet.nowhere"))
        return
    try:
        path = write_sheet(
            folder, kind, desk.attempt, desk.attempt_id, lines, who, shell.sound.calibration.verdict, settings.language
        )
    except MissingHereError as error:
        shell.say(message_of(error))
        return
    shell.say(text("sheet.written", path=path))
    if not settings.station_pin:
        shell.services.show_file(path)
