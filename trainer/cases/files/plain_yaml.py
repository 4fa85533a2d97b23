"""Parses YAML within stated bounds, with the plain scalars of YAML 1.2, and keeps each field's line.

PyYAML scans and parses; composing is bounded as it goes on, so that a short hostile text costs no more than a long
honest one. Values are made here: PyYAML's own constructors follow YAML 1.1, in which `1:30` is ninety and `no` false.
"""

from __future__ import annotations

import re
from dataclasses import dataclass

import yaml
from yaml.composer import Composer
from yaml.parser import Parser
from yaml.reader import Reader, ReaderError
from yaml.resolver import BaseResolver
from yaml.scanner import Scanner

from trainer.errors import Said, Sentence
from trainer.words.visible import around, escaped, unseen_in

MOST_DEPTH = 12
MOST_VALUES = 8_000
"""Keys, values and lists of a file together; the largest honest set, with 300 learners' support, has some 5,000."""

MOST_NUMBER, MOST_KEY = 40, 80
"""How many characters a number and the name of a field may have."""

Value = bool | int | float | str | list["Value"] | dict[str | int, "Value"] | None
FieldPath = tuple[str | int, ...]

_WORDS: dict[str, bool | float | None] = {
    **dict.fromkeys(("", "~", "null", "Null", "NULL"), None),
    **dict.fromkeys(("true", "True", "TRUE"), True),
    **dict.fromkeys(("false", "False", "FALSE"), False),
    **dict.fromkeys((".nan", ".NaN", ".NAN"), float("nan")),
    **{f"{sign}.{word}": float(f"{sign}inf") for sign in ("", "+", "-") for word in ("inf", "Inf", "INF")},
}
_INTEGER = re.compile(r"[-+]?[0-9]+")
_NUMBER = re.compile(r"[-+]?(?:[0-9]+(?:\.[0-9]*)?|\.[0-9]+)(?:[eE][-+]?[0-9]+)?")
"""Matches digits in one way only, so that a long row of them takes linear time."""


BYTE_ORDER_MARK = "\ufeff"


class RefusedYamlError(Exception):
    """Raised for what YAML allows and our files do not, with line, field and words for a person."""

    def __init__(self, line: int, path: FieldPath, found: Said, allowed: Said, mend: Said) -> None:
        super().__init__(line, path, found, allowed, mend)
        self.line, self.path, self.found, self.allowed, self.mend = line, path, found, allowed, mend


@dataclass(frozen=True, slots=True)
class PlainYaml:
    """A file's plain value, and the line of each field by its path in words."""

    value: Value
    lines: dict[tuple[str, ...], int]


def plain_yaml(content: str) -> PlainYaml:
    """Read one YAML document; raises RefusedYamlError or yaml.YAMLError."""
    try:
        loader = _BoundedLoader(content)
    except ReaderError as error:  # what YAML allows in no text
        raise _unseen(content, error.position, content.count("\n", 0, error.position) + 1, ()) from error
    try:
        root = loader.get_single_node()
    except (ValueError, OverflowError) as error:  # an escape or a version beyond what PyYAML can count
        wanted = Sentence("file.plain_yaml"), Sentence("file.correct_this_line")
        raise RefusedYamlError(loader.line + 1, (), Sentence("file.not_yaml"), *wanted) from error
    lines: dict[tuple[str, ...], int] = {}
    plain = PlainYaml(None if root is None else _value(root, (), lines), lines)
    rest = content.removeprefix(BYTE_ORDER_MARK).replace("\r\n", "\n")
    left = unseen_in(rest, "\n\t")  # in a comment, or in the place of a line's end
    if left is not None:
        raise _unseen(rest, left, rest.count("\n", 0, left) + 1, ())
    return plain


class _BoundedLoader(Reader, Scanner, Parser, Composer, BaseResolver):
    """Composes nodes; refuses depth, number, aliases and tags before it goes into a node."""

    def __init__(self, content: str) -> None:
        Reader.__init__(self, content)
        Scanner.__init__(self)
        Parser.__init__(self)
        Composer.__init__(self)
        BaseResolver.__init__(self)
        self.depth = self.count = 0

    def compose_node(self, parent: yaml.Node | None, index: int) -> yaml.Node | None:
        """Compose one node with its content; raises RefusedYamlError."""
        self._refuse_beyond_bounds(self.peek_event())  # type: ignore[no-untyped-call]
        self.depth += 1
        node = super().compose_node(parent, index)
        self.depth -= 1
        return node

    def _refuse_beyond_bounds(self, event: yaml.Event) -> None:
        self.count += 1
        if isinstance(event, yaml.AliasEvent):
            found, allowed, mend = "file.an_alias", Sentence("file.values_written_out"), "file.write_the_value_again"
        elif getattr(event, "tag", None) is not None:
            found, allowed, mend = "file.a_tag", Sentence("file.values_without_tags"), "file.take_the_tag_out"
        elif self.depth > MOST_DEPTH:
            allowed = Sentence("file.at_most_levels", n=MOST_DEPTH)
            found, mend = "file.nested_too_deeply", "file.flatten_it"
        elif self.count > MOST_VALUES:
            found, allowed, mend = "file.too_many_values", Sentence("file.at_most", count=MOST_VALUES), "file.split_it"
        else:
            return
        raise RefusedYamlError(_line(event), (), Sentence(found), allowed, Sentence(mend))


def _value(node: yaml.Node, path: FieldPath, lines: dict[tuple[str, ...], int]) -> Value:
    """Return a node's value and record the line of each field in it."""
    if isinstance(node, yaml.SequenceNode):
        listed: list[Value] = []
        for place, item in enumerate(node.value):
            here = (*path, place)
            lines[tuple(map(str, here))] = _line(item)
            listed.append(_value(item, here, lines))
        return listed
    if isinstance(node, yaml.MappingNode):
        table: dict[str | int, Value] = {}
        for key_node, value_node in node.value:
            key = _key(key_node, path)
            here = (*path, key)
            if key in table:
                once = Sentence("file.each_field_once"), Sentence("file.leave_one_of_them_out")
                raise RefusedYamlError(_line(key_node), here, Sentence("file.given_twice"), *once)
            lines[tuple(map(str, here))] = _line(key_node)
            table[key] = _value(value_node, here, lines)
        return table
    assert isinstance(node, yaml.ScalarNode)
    scalar = _scalar(node, path)
    if isinstance(scalar, str) and (at := unseen_in(scalar, "\n")) is not None:
        raise _unseen(scalar, at, _line(node), path)
    return scalar


def _line(part: yaml.Node | yaml.Event) -> int:
    assert part.start_mark is not None  # only streams made by hand have none
    return part.start_mark.line + 1


def _key(node: yaml.Node, path: FieldPath) -> str | int:
    key = _scalar(node, path) if isinstance(node, yaml.ScalarNode) else None
    if isinstance(key, bool) or not isinstance(key, str | int):
        wanted = Sentence("file.a_word_or_a_whole_number"), Sentence("file.name_the_field")
        raise RefusedYamlError(_line(node), path, Sentence("file.another_kind_of_key"), *wanted)
    if isinstance(key, str) and len(key) > MOST_KEY:
        found, allowed = Sentence("file.a_name_of", n=len(key)), Sentence("file.at_most_characters", n=MOST_KEY)
        raise RefusedYamlError(_line(node), path, found, allowed, Sentence("file.give", allowed=allowed))
    if isinstance(key, str) and (at := unseen_in(key)) is not None:
        raise _unseen(key, at, _line(node), (*path, key))
    return key


def _unseen(content: str, at: int, line: int, path: FieldPath) -> RefusedYamlError:
    """Return the error for an invisible character, shown in its place."""
    found = Sentence("file.unseen", around=around(content, at), character=escaped(content[at]))
    return RefusedYamlError(line, path, found, Sentence("file.seen_characters"), Sentence("file.take_it_out"))


def _scalar(node: yaml.ScalarNode, path: FieldPath) -> bool | int | float | str | None:
    """Return a scalar by YAML 1.2's core schema, decimal numbers only: what is quoted and all else is a word."""
    written = str(node.value)
    if node.style is not None:
        return written
    if written in _WORDS:
        return _WORDS[written]
    if not _NUMBER.fullmatch(written):
        return written
    if len(written) > MOST_NUMBER:
        found = Sentence("file.a_number_of", n=len(written))
        allowed = Sentence("file.at_most_characters", n=MOST_NUMBER)
        raise RefusedYamlError(_line(node), path, found, allowed, Sentence("file.write_it_shorter"))
    return int(written) if _INTEGER.fullmatch(written) else float(written)


class _PlainDumper(yaml.SafeDumper):
    """Quotes every word that would be read back as a number."""


_PlainDumper.add_implicit_resolver("tag:yaml.org,2002:float", re.compile(f"^{_NUMBER.pattern}$"), list("-+.0123456789"))


def yaml_of(document: dict[str, object]) -> str:
    """Return a document as YAML that reads back as it was."""
    return str(yaml.dump(document, Dumper=_PlainDumper, sort_keys=False, allow_unicode=True, width=100))
