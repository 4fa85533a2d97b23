"""Takes the passphrase of a set: typed unseen, or from a file for a lesson that begins by itself."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import click

from trainer.cases.plain_file import decoded, read_plain
from trainer.words import text

MOST_BYTES = 10_000


def passphrase_from(file: Path | None, *, twice: bool = False) -> Callable[[], str]:
    """Return what asks for the passphrase; a file's last line end does not belong to it."""

    def ask() -> str:
        if file is not None:
            return decoded(file, read_plain(file, MOST_BYTES)).rstrip("\r\n")
        try:
            prompt = text("passphrase.ask")
            return str(click.prompt(prompt, hide_input=True, confirmation_prompt=twice, err=True))
        except click.Abort as error:
            raise KeyboardInterrupt from error

    return ask
