"""Reads YAML safely, bounded in size and depth, and keeps the line of every field."""

from __future__ import annotations

import re
from collections.abc import Sequence
from pathlib import Path
from typing import Any

import yaml

from trainer.cases.plain_file import decoded, read_plain
from trainer.errors import Problem, ProblemsFoundError
from trainer.words import text

MOST_BYTES = 256_000
MOST_DEPTH = 12
SEALED_BEGINS = b"injector trainer sealed set 1\n"
"""How a sealed set begins: no text to be read here."""

MOST_NODES = 20_000


class _StrictLoader(yaml.SafeLoader):
    """The safe loader, in which a key may stand only once and numbers keep to YAML 1.2's plain forms."""


def _mapping_once(loader: _StrictLoader, node: yaml.MappingNode) -> dict[Any, Any]:
    seen: dict[Any, Any] = {}
    for key_node, value_node in node.value:
        key = loader.construct_object(key_node, deep=True)
        if not isinstance(key, str | int | float | bool) and key is not None:
            raise yaml.constructor.ConstructorError(None, None, "a key must be a word or a number", key_node.start_mark)
        if key in seen:
            raise yaml.constructor.ConstructorError(None, None, f"the key {key!r} stands twice", key_node.start_mark)
        seen[key] = loader.construct_object(value_node, deep=True)
    return seen


_FLOAT = re.compile(r"^[-+]?(?:[0-9]+\.?[0-9]*|\.[0-9]+)(?:[eE][-+]?[0-9]+)?$")
_StrictLoader.add_implicit_resolver("tag:yaml.org,2002:float", _FLOAT, list("-+.0123456789"))
_StrictLoader.add_constructor(yaml.resolver.BaseResolver.DEFAULT_MAPPING_TAG, _mapping_once)


class YamlText:
    """A parsed file: its plain value, and the line that each field stands on."""

    def __init__(self, content: str, file: str) -> None:
        """Parse a text; raises ProblemsFoundError for anything a file must not be."""
        self.file = file
        if len(content.encode("utf-8", "surrogatepass")) > MOST_BYTES:
            raise self._refuse(
                None,
                "the file",
                text("file.too_large"),
                text("file.at_most_bytes", count=MOST_BYTES),
                text("file.split_it"),
            )
        try:
            self._root = yaml.compose(content, Loader=_StrictLoader)
            self._bound(self._root)
            self.value = yaml.load(content, Loader=_StrictLoader)  # a subclass of the safe loader
        except yaml.YAMLError as error:
            mark = getattr(error, "problem_mark", None)
            line = mark.line + 1 if mark is not None else None
            found = str(getattr(error, "problem", None) or text("file.not_yaml"))
            raise self._refuse(
                line, "the file", found, text("file.plain_yaml"), text("file.correct_this_line")
            ) from error
        except (ValueError, RecursionError, OverflowError) as error:
            raise self._refuse(
                None, "the file", str(error)[:80], text("file.plain_yaml"), text("file.write_plain_values")
            ) from error
        if not isinstance(self.value, dict):
            raise self._refuse(
                1,
                "the file",
                text("file.empty") if self.value is None else type(self.value).__name__,
                text("file.a_mapping_of_fields"),
                text("file.start_with_form"),
            )

    def _refuse(self, line: int | None, field: str, found: str, allowed: str, mend: str) -> ProblemsFoundError:
        return ProblemsFoundError([Problem(self.file, line, field, found, allowed, mend)])

    def _bound(self, root: yaml.Node | None) -> None:
        """Refuse depth, size and aliases: a short text of aliases can stand for gigabytes."""
        waiting: list[tuple[yaml.Node, int]] = [(root, 0)] if root is not None else []
        seen: set[int] = set()
        while waiting:
            node, depth = waiting.pop()
            line = node.start_mark.line + 1
            if depth > MOST_DEPTH:
                raise self._refuse(
                    line,
                    "the file",
                    text("file.nested_too_deeply"),
                    text("file.at_most_levels", count=MOST_DEPTH),
                    text("file.flatten_it"),
                )
            if id(node) in seen:
                raise self._refuse(
                    line,
                    "the file",
                    text("file.an_alias"),
                    text("file.values_written_out"),
                    text("file.write_the_value_again"),
                )
            seen.add(id(node))
            if len(seen) > MOST_NODES:
                raise self._refuse(
                    line,
                    "the file",
                    text("file.too_many_values"),
                    text("file.at_most", count=MOST_NODES),
                    text("file.split_it"),
                )
            if isinstance(node, yaml.MappingNode):
                waiting += [(part, depth + 1) for pair in node.value for part in pair]
            elif isinstance(node, yaml.SequenceNode):
                waiting += [(part, depth + 1) for part in node.value]

    def problem(self, path: Sequence[str | int], found: str, allowed: str, mend: str) -> Problem:
        """Return what is wrong with a field, with its line."""
        return Problem(self.file, self.line_of(path), ".".join(map(str, path)), found, allowed, mend)

    def line_of(self, path: Sequence[str | int]) -> int | None:
        """Return the line of a field by its path; of its nearest parent where the field is missing."""
        node, line = self._root, 1
        for step in path:
            found: yaml.Node | None = None
            if isinstance(node, yaml.MappingNode):
                for key, value in node.value:
                    if key.value == str(step):
                        found, line = value, key.start_mark.line + 1
            elif isinstance(node, yaml.SequenceNode) and isinstance(step, int) and step < len(node.value):
                found = node.value[step]
                line = found.start_mark.line + 1
            if found is None:
                break
            node = found
        return line


def read_text(path: Path) -> str:
    """Return a file's text; raises ProblemsFoundError where it cannot be read as UTF-8."""
    content = read_plain(path, MOST_BYTES)
    if content.startswith(SEALED_BEGINS):
        found, mend = text("file.a_sealed_set"), text("file.sealed_mend")
        raise ProblemsFoundError([Problem(str(path), None, "the file", found, text("file.plain_yaml"), mend)])
    return decoded(path, content).replace("\r\n", "\n")
