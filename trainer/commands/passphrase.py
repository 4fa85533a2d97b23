"""Takes the passphrase of a set: typed unseen, or from a file for a lesson that begins by itself."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from trainer.cases.files.plain_file import decoded, read_plain
from trainer.commands.hidden_prompt import ask_hidden
from trainer.commands.streams import tell
from trainer.desk.process_guard import guard_memory
from trainer.words import text

MOST_BYTES = 10_000


def passphrase_from(file: Path | None, *, twice: bool = False) -> Callable[[], str]:
    """Return what asks for the passphrase; a file's last line end does not belong to it.

    From then on this process holds a secret, so its memory is guarded first.
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
