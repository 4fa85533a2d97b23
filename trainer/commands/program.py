"""The group of all commands, so run that neither a lost stream nor a signal to end leaves a traceback or a file."""

from __future__ import annotations

import errno
import sys
from typing import Any

import click

from trainer.commands.streams import ended_by_signals, output_lost, prepare_streams, tell
from trainer.errors import ExitCode
from trainer.words import told


class Program(click.Group):
    """What `injector-trainer` calls."""

    def main(self, *args: Any, **kwargs: Any) -> Any:
        """Run the command that was named."""
        prepare_streams()
        with ended_by_signals():
            try:
                return super().main(*args, **kwargs)
            except OSError as error:  # of help and the like, which click writes; commands tell their own
                if error.filename is not None or error.errno not in (errno.ENOSPC, errno.EBADF, errno.EIO):
                    raise
                tell(told(output_lost(error)))
                sys.exit(ExitCode.MISSING)
