"""Takes the passphrase of a set: typed unseen, or from a file for a lesson that begins by itself."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import click

from trainer.errors import MissingHereError
from trainer.words import text


def passphrase_from(file: Path | None, *, twice: bool = False) -> Callable[[], str]:
    """Return what asks for the passphrase; a file's last line end does not belong to it."""

    def ask() -> str:
        if file is not None:
            try:
                return file.read_text("utf-8").rstrip("\r\n")
            except (OSError, UnicodeDecodeError) as error:
                raise MissingHereError("file_unreadable", path=file, reason=error) from error
        try:
            prompt = text("passphrase.ask")
            return str(click.prompt(prompt, hide_input=True, confirmation_prompt=twice, err=True))
        except click.Abort as error:
            raise KeyboardInterrupt from error

    return ask
