"""The program's own streams and the signals that end it, whatever the caller made of them."""

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

from trainer.errors import MissingHereError
from trainer.words import text
from trainer.words.visible import visible


def prepare_streams() -> None:
    """Put something under every stream that is closed, so that no file is opened under its number; let any text pass.

    Standard input is then at its end, standard error goes nowhere, and standard output still refuses what is written.
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
"""What lays text out; every other character that is not seen is written as an escape."""


def say(line: str) -> None:
    """Write a line, or several, to standard output at once.

    Raises MissingHereError where that is closed or full, and BrokenPipeError where its reader has gone.
    """
    try:
        sys.stdout.write(visible(line, LAYOUT) + "\n")
        sys.stdout.flush()
    except BrokenPipeError:
        raise
    except OSError as error:
        raise output_lost(error) from error


def ask(prompt: str) -> str:
    """Return a typed line; raises EOFError at the end of input, else like `say`."""
    try:
        return input(visible(prompt, LAYOUT))
    except BrokenPipeError:
        raise
    except OSError as error:
        raise output_lost(error) from error


def tell(line: str) -> None:
    """Say something beside the work on standard error, so that standard output stays the work's own."""
    with contextlib.suppress(OSError):  # where that is lost too, nothing is left to say it on
        sys.stderr.write(visible(line, LAYOUT) + "\n")
        sys.stderr.flush()


def output_lost(error: OSError) -> MissingHereError:
    """Return what is said of a standard output that refuses; what it still holds is given up."""
    give_up_output()
    return MissingHereError(
        "output_lost", reason=text("output.closed") if error.errno == errno.EBADF else error.strerror
    )


def give_up_output() -> None:
    """Let what is still held for standard output go nowhere, so that the interpreter's end does not complain of it."""
    with contextlib.suppress(OSError, ValueError):  # a stream without a number holds nothing back
        nowhere = os.open(os.devnull, os.O_WRONLY)
        os.dup2(nowhere, sys.stdout.fileno())
        os.close(nowhere)


@contextmanager
def ended_by_signals() -> Iterator[None]:
    """Let a signal to end, or a terminal that is closed, end the program with everything put away, as Ctrl-C does.

    The exit code is 128 and the signal's number. A second one ends it at once.
    """
    if threading.current_thread() is not threading.main_thread():  # signals are the main thread's
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
