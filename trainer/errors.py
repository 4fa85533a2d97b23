"""The exit codes, and the errors that are shown to a user; `trainer.words` has their sentences."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from enum import IntEnum


class ExitCode(IntEnum):
    """The exit codes of the program."""

    DONE = 0
    WRONG = 1
    CALL = 2
    MISSING = 3


class Sentence:
    """A sentence that is written when it is shown: its id and the values in it, which may be sentences themselves.

    `trainer.words.text` writes it. Errors carry it, so that they are read in the language spoken where they are shown.
    """

    __slots__ = ("key", "values")

    def __init__(self, key: str, /, **values: object) -> None:
        self.key, self.values = key, values

    def __eq__(self, other: object) -> bool:
        return isinstance(other, Sentence) and (self.key, self.values) == (other.key, other.values)

    def __hash__(self) -> int:
        return hash(self.key)

    def __repr__(self) -> str:
        return f"Sentence({self.key!r}, {self.values!r})"


Said = str | Sentence | tuple[str | Sentence, ...]
"""Words for a person: as they are, a sentence that is written where it is shown, or several, parted by commas."""


THE_FILE, THE_FOLDER = Sentence("problem.the_file"), Sentence("problem.the_folder")
"""What a problem shows for its field when it is not in any one field."""


@dataclass(frozen=True, slots=True)
class Problem:
    """One problem in a user's input: where it is, what was found, what is allowed, how to fix it."""

    file: str
    line: int | None
    field: Said
    found: Said
    allowed: Said
    mend: Said


class ProblemsFoundError(Exception):
    """Raised with every problem found in one file or folder; a command then exits with code 1."""

    exit_code = ExitCode.WRONG

    def __init__(self, problems: Sequence[Problem]) -> None:
        super().__init__(tuple(problems))
        self.problems = tuple(problems)


class UserError(Exception):
    """An error that is shown to the user: the id of its sentence and the values in it.

    `trainer.words.message_of` writes the sentence. A command then exits with `exit_code`.
    """

    exit_code = ExitCode.WRONG

    def __init__(self, key: str, **values: object) -> None:
        super().__init__(key, values)
        self.key, self.values = key, values

    def __reduce__(self) -> tuple[Callable[..., UserError], tuple[type[UserError], str, dict[str, object]]]:
        """Pickle the error with its values, so that it can be sent to another process."""
        return _unpickled, (type(self), self.key, self.values)


def _unpickled(kind: type[UserError], key: str, values: dict[str, object]) -> UserError:
    return kind(key, **values)


class WrongCallError(UserError):
    """Raised when a command or an action cannot be carried out as it was requested; exit code 2."""

    exit_code = ExitCode.CALL


class UnsolvableError(WrongCallError):
    """Raised when an engine's own figures leave its circuit without a solution; exit code 1."""

    exit_code = ExitCode.WRONG


class DamagedError(UserError):
    """Raised when records hold data that this program did not write; they are left as they are. Exit code 1."""


class MissingHereError(UserError):
    """Raised when this machine lacks something that the work needs; exit code 3."""

    exit_code = ExitCode.MISSING
