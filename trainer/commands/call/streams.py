"""The standard streams and the signals that end the program, made reliable whatever the caller set up."""

from __future__ import annotations

import contextlib
import errno
import io
import os
import signal
import sys
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from types import FrameType

from trainer.errors import MissingHereError, Sentence
from trainer.words.visible import visible


def prepare_streams() -> None:
    """Open the null device for every closed stream, so that no file gets its number; let streams replace bad text.

    Standard input is then at its end, standard error is discarded, and standard output still refuses writes.
    """
    if os.name == "posix":
        for number, how in ((0, os.O_RDONLY), (1, os.O_RDONLY), (2, os.O_WRONLY)):
            try:
                os.fstat(number)
            except OSError:
                os.set_inheritable(os.open(os.devnull, how), True)
    sys.stdin = sys.stdin or io.TextIOWrapper(io.BufferedReader(io.FileIO(0, "r")))
    sys.stdout = sys.stdout or io.TextIOWrapper(io.BufferedWriter(io.FileIO(1, "w")))
    sys.stderr = sys.stderr or io.TextIOWrapper(io.BufferedWriter(io.FileIO(2, "w")), line_buffering=True)
    for stream in (sys.stdin, sys.stdout, sys.stderr):
        if isinstance(stream, io.TextIOWrapper):
            stream.reconfigure(errors="replace")  # a console without Ω still shows the number


LAYOUT = "\n\t"
"""Invisible characters that lay text out; every other invisible character is written as an escape."""


def say(line: str) -> None:
    """Write text to standard output and flush it.

    Raises MissingHereError where the stream is closed or full, and BrokenPipeError where its reader has gone.
    """
    try:
        sys.stdout.write(visible(line, LAYOUT) + "\n")
        sys.stdout.flush()
    except BrokenPipeError:
        raise
    except OSError as error:
        raise output_lost(error) from error


def ask(prompt: str) -> str:
    """Print a prompt and return the typed line; raises EOFError at the end of input, else as `say` does."""
    try:
        return input(visible(prompt, LAYOUT))
    except BrokenPipeError:
        raise
    except OSError as error:
        raise output_lost(error) from error


def tell(line: str) -> None:
    """Write a message to standard error, so that standard output carries results only."""
    with contextlib.suppress(OSError):  # where that stream is lost too, there is nowhere to report it
        sys.stderr.write(visible(line, LAYOUT) + "\n")
        sys.stderr.flush()


def output_lost(error: OSError) -> MissingHereError:
    """Return the error for a standard output that refuses writes, and discard what it still buffers."""
    give_up_output()
    return MissingHereError(
        "output_lost", reason=Sentence("output.closed") if error.errno == errno.EBADF else error.strerror
    )


def give_up_output() -> None:
    """Send what standard output still buffers to the null device, so that the interpreter exits without complaint."""
    with contextlib.suppress(OSError, ValueError):  # a stream without a file number buffers nothing
        nowhere = os.open(os.devnull, os.O_WRONLY)
        os.dup2(nowhere, sys.stdout.fileno())
        os.close(nowhere)


@contextmanager
def ended_by_signals() -> Iterator[None]:
    """Exit cleanly on a termination signal or a closed terminal, as on Ctrl-C.

    The exit code is 128 plus the signal's number. A second signal ends the program at once.
    """
    if threading.current_thread() is not threading.main_thread():  # only the main thread may set signal handlers
        yield
        return
    ours = [one for one in ENDING if signal.getsignal(one) is signal.SIG_DFL]
    for one in ours:
        signal.signal(one, _end)
    try:
        yield
    finally:
        for one in ours:
            signal.signal(one, signal.SIG_DFL)


ENDING = [signal.SIGTERM, *([signal.SIGHUP] if hasattr(signal, "SIGHUP") else [])]


def _end(number: int, _frame: FrameType | None) -> None:
    for one in ENDING:
        if signal.getsignal(one) is _end:
            signal.signal(one, signal.SIG_DFL)
    raise SystemExit(128 + number)
