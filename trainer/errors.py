"""What a person can cause or lack, carried as facts; sentences are made in `trainer.words`."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from enum import IntEnum


class ExitCode(IntEnum):
    """What the program answers to the shell."""

    DONE = 0
    WRONG = 1
    CALL = 2
    MISSING = 3


@dataclass(frozen=True, slots=True)
class Problem:
    """One thing wrong with what a person gave: where it stands, what was found, what is allowed, how to mend it."""

    file: str
    line: int | None
    field: str
    found: str
    allowed: str
    mend: str


class ProblemsFoundError(Exception):
    """Raised with every problem found in one reading; ends a command with exit code 1."""

    exit_code = ExitCode.WRONG

    def __init__(self, problems: Sequence[Problem]) -> None:
        super().__init__(tuple(problems))
        self.problems = tuple(problems)


class ToldError(Exception):
    """An error that carries the id of its sentence and the values in it; `trainer.words` tells it."""

    exit_code = ExitCode.WRONG

    def __init__(self, key: str, **values: object) -> None:
        super().__init__(key, values)
        self.key, self.values = key, values

    def __reduce__(self) -> tuple[Callable[..., ToldError], tuple[type[ToldError], str, dict[str, object]]]:
        """Let an error go from one process to another with its facts."""
        return _again, (type(self), self.key, self.values)


def _again(kind: type[ToldError], key: str, values: dict[str, object]) -> ToldError:
    return kind(key, **values)


class WrongCallError(ToldError):
    """Raised when a command or action cannot be carried out as asked; ends a command with exit code 2."""

    exit_code = ExitCode.CALL


class UnsolvableError(WrongCallError):
    """Raised where an engine's own figures leave its circuit without a solution; ends a command with exit code 1."""

    exit_code = ExitCode.WRONG


class DamagedError(ToldError):
    """Raised when records hold what this program did not write; nothing of them is changed. Exit code 1."""


class MissingHereError(ToldError):
    """Raised when this machine lacks something the work needs; ends a command with exit code 3."""

    exit_code = ExitCode.MISSING
