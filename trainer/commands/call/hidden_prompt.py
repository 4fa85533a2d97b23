"""Reads a line at the terminal without showing it, and refuses where it would be shown."""

from __future__ import annotations

import contextlib
import os
import sys
from collections.abc import Iterator

from trainer.errors import MissingHereError


def ask_hidden(prompt: str) -> str:
    """Prompt at the terminal and return the line that is typed, without showing it.

    Raises MissingHereError where there is no terminal or its echo cannot be switched off, and KeyboardInterrupt where
    the user ends the input.
    """
    if sys.platform == "win32":
        return _ask_console(prompt)
    return _ask_terminal(prompt)


def _ask_terminal(prompt: str) -> str:
    with _terminal() as terminal, _without_echo(terminal):
        os.write(terminal, f"{prompt}: ".encode())
        typed = b""
        try:
            while not typed.endswith(b"\n"):
                more = os.read(terminal, 4096)
                if not more:
                    raise KeyboardInterrupt
                typed += more
        finally:
            os.write(terminal, b"\n")
    return typed.rstrip(b"\r\n").decode("utf-8", "replace")


@contextlib.contextmanager
def _terminal() -> Iterator[int]:
    """Yield the process's controlling terminal, or the one that it reads from."""
    try:
        terminal = os.open("/dev/tty", os.O_RDWR | os.O_NOCTTY)
    except OSError:
        if not sys.stdin.isatty():
            raise MissingHereError("no_hidden_prompt") from None
        terminal = os.dup(sys.stdin.fileno())
    try:
        yield terminal
    finally:
        os.close(terminal)


@contextlib.contextmanager
def _without_echo(terminal: int) -> Iterator[None]:
    """Switch a terminal's echo off for a while; raises MissingHereError where it stays on."""
    import termios

    try:
        before = termios.tcgetattr(terminal)
        silent = [*before[:3], before[3] & ~(termios.ECHO | termios.ECHONL), *before[4:]]
        termios.tcsetattr(terminal, termios.TCSAFLUSH, silent)
        if termios.tcgetattr(terminal)[3] & termios.ECHO:
            raise MissingHereError("no_hidden_prompt")
    except termios.error:
        raise MissingHereError("no_hidden_prompt") from None
    try:
        yield
    finally:
        termios.tcsetattr(terminal, termios.TCSAFLUSH, before)


if sys.platform == "win32":

    def _ask_console(prompt: str) -> str:
        """Ask at a Windows console, which does not echo what is typed."""
        import msvcrt

        if not sys.stdin.isatty():
            raise MissingHereError("no_hidden_prompt")
        typed = ""
        for letter in f"{prompt}: ":
            msvcrt.putwch(letter)
        while (letter := msvcrt.getwch()) not in "\r\n":
            if letter == "\x03":
                raise KeyboardInterrupt
            typed = typed[:-1] if letter == "\b" else typed + letter
        for letter in "\r\n":
            msvcrt.putwch(letter)
        return typed
