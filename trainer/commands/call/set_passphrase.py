"""The passphrase of a set: typed without being shown, or read from a file for a lesson that starts unattended."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from trainer.cases.files.plain_file import decoded, read_plain
from trainer.commands.call.hidden_prompt import ask_hidden
from trainer.commands.call.streams import tell
from trainer.desk.process_guard import guard_memory
from trainer.words import text

MOST_BYTES = 10_000


def passphrase_from(file: Path | None, *, twice: bool = False) -> Callable[[], str]:
    """Return a function that gets the passphrase, from a file where one is named; its last line end is not part of it.

    The process holds a secret from then on, so the function guards the process's memory first.
    """

    def ask() -> str:
        guard_memory()
        if file is not None:
            return decoded(file, read_plain(file, MOST_BYTES)).rstrip("\r\n")
        return _typed(twice=twice)

    return ask


def _typed(*, twice: bool) -> str:
    while True:
        typed = ask_hidden(text("passphrase.ask"))
        if typed and (not twice or typed == ask_hidden(text("passphrase.again"))):
            return typed
        if typed:
            tell(text("passphrase.differ"))
