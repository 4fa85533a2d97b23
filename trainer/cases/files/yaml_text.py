"""Reads a YAML file of ours: bounded in size, its plain value, and the line of every field."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

import yaml

from trainer.cases.files.plain_file import decoded, read_plain
from trainer.cases.files.plain_yaml import RefusedYamlError, Value, plain_yaml
from trainer.errors import THE_FILE, Problem, ProblemsFoundError, Said, Sentence

MOST_BYTES = 256_000
SEALED_BEGINS = b"injector trainer sealed set 1\n"
"""The first bytes of a sealed set, which cannot be read as text."""

MOST_SHOWN = 80
"""How many characters of a file's content a problem shows."""


class YamlText:
    """A parsed file: its plain value, and the line of each field."""

    def __init__(self, content: str, file: str) -> None:
        """Parse a text; raises ProblemsFoundError for anything a file must not be."""
        self.file = file
        if len(content.encode("utf-8", "surrogatepass")) > MOST_BYTES:
            raise self._refuse(
                None,
                THE_FILE,
                Sentence("file.too_large"),
                Sentence("file.at_most_bytes", n=MOST_BYTES),
                Sentence("file.split_it"),
            )
        try:
            plain = plain_yaml(content)
        except RefusedYamlError as error:
            field = field_of(error.path) or THE_FILE
            raise self._refuse(error.line, field, error.found, error.allowed, error.mend) from error
        except yaml.YAMLError as error:
            mark = getattr(error, "problem_mark", None)
            line = mark.line + 1 if mark is not None else None
            found = str(getattr(error, "problem", None) or Sentence("file.not_yaml"))[:MOST_SHOWN]
            raise self._refuse(
                line, THE_FILE, found, Sentence("file.plain_yaml"), Sentence("file.correct_this_line")
            ) from error
        if not isinstance(plain.value, dict):
            raise self._refuse(
                1,
                THE_FILE,
                Sentence("file.empty") if plain.value is None else type(plain.value).__name__,
                Sentence("file.a_mapping_of_fields"),
                Sentence("file.start_with_form"),
            )
        self.value: dict[str | int, Value] = plain.value
        self._lines = plain.lines

    def _refuse(self, line: int | None, field: Said, found: Said, allowed: Said, mend: Said) -> ProblemsFoundError:
        return ProblemsFoundError([Problem(self.file, line, field, found, allowed, mend)])

    def problem(self, path: Sequence[str | int], found: Said, allowed: Said, mend: Said) -> Problem:
        """Return a problem with a field, with the field's line."""
        return Problem(self.file, self.line_of(path), field_of(path), found, allowed, mend)

    def line_of(self, path: Sequence[str | int]) -> int:
        """Return the line of a field by its path; of its nearest parent where the field is missing."""
        steps = tuple(map(str, path))
        known = (self._lines.get(steps[:count]) for count in range(len(steps), 0, -1))
        return next((line for line in known if line is not None), 1)


def field_of(path: Sequence[str | int]) -> str:
    """Return a field's path joined by dots."""
    return ".".join(map(str, path))


def read_text(path: Path) -> str:
    """Return a file's text; raises ProblemsFoundError where it cannot be read as UTF-8."""
    content = read_plain(path, MOST_BYTES)
    if content.startswith(SEALED_BEGINS):
        found, mend = Sentence("file.a_sealed_set"), Sentence("file.sealed_mend")
        raise ProblemsFoundError([Problem(str(path), None, THE_FILE, found, Sentence("file.plain_yaml"), mend)])
    return decoded(path, content).replace("\r\n", "\n")
