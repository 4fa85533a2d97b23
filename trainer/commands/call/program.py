"""The click group of all commands: no lost stream and no signal ends it with a traceback or a leftover file."""

from __future__ import annotations

import errno
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from typing import Any

import click

from trainer.commands.call.streams import ended_by_signals, output_lost, prepare_streams, tell
from trainer.errors import ExitCode
from trainer.words import message_of
from trainer.words.languages import CatalogueMissingError
from trainer.words.visible import visible


@contextmanager
def _visible_messages() -> Iterator[None]:
    """Escape, in click's own error messages, the characters of the call that would act on the terminal."""
    try:
        yield
    except click.ClickException as error:
        vars(error)["message"] = visible(error.message)  # final for type checkers
        raise


class Program(click.Group):
    """The group behind `injector-trainer`."""

    def make_context(self, *args: Any, **kwargs: Any) -> click.Context:
        """Parse the call's arguments."""
        with _visible_messages():
            return super().make_context(*args, **kwargs)

    def invoke(self, ctx: click.Context) -> object:
        """Run the command that was parsed."""
        with _visible_messages():
            return super().invoke(ctx)

    def main(self, *args: Any, **kwargs: Any) -> Any:
        """Run the whole call, with usable streams and a clean end on signals."""
        prepare_streams()
        with ended_by_signals():
            try:
                return super().main(*args, **kwargs)
            except CatalogueMissingError as error:
                tell(str(error))
                sys.exit(ExitCode.MISSING)
            except OSError as error:  # of help and other text that click writes; commands handle their own
                if error.filename is not None or error.errno not in (errno.ENOSPC, errno.EBADF, errno.EIO):
                    raise
                tell(message_of(output_lost(error)))
                sys.exit(ExitCode.MISSING)
