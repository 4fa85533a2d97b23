"""The group of all commands, so run that neither a lost stream nor a signal to end leaves a traceback or a file."""

from __future__ import annotations

import errno
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from typing import Any

import click

from trainer.commands.streams import ended_by_signals, output_lost, prepare_streams, tell
from trainer.errors import ExitCode
from trainer.words import message_of
from trainer.words.visible import visible


@contextmanager
def _visible() -> Iterator[None]:
    """Let what click says of a wrong call show the characters of that call instead of sending them to the terminal."""
    try:
        yield
    except click.ClickException as error:
        vars(error)["message"] = visible(error.message)  # final for type checkers
        raise


class Program(click.Group):
    """What `injector-trainer` calls."""

    def make_context(self, *args: Any, **kwargs: Any) -> click.Context:
        """Read the words of the call."""
        with _visible():
            return super().make_context(*args, **kwargs)

    def invoke(self, ctx: click.Context) -> Any:
        """Run what the call asks for."""
        with _visible():
            return super().invoke(ctx)

    def main(self, *args: Any, **kwargs: Any) -> Any:
        """Run the command that was named."""
        prepare_streams()
        with ended_by_signals():
            try:
                return super().main(*args, **kwargs)
            except OSError as error:  # of help and the like, which click writes; commands tell their own
                if error.filename is not None or error.errno not in (errno.ENOSPC, errno.EBADF, errno.EIO):
                    raise
                tell(message_of(output_lost(error)))
                sys.exit(ExitCode.MISSING)
