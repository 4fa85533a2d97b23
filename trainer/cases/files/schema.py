"""Derives from a frozen dataclass the strict pydantic model by which a file is read into it.

The dataclass is the only place where a field's type, range and default are stated, in `Annotated` constraints. Pydantic
cannot validate it directly: in strict mode it takes only instances of a dataclass, never the tables of a file.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import MISSING, fields, is_dataclass
from enum import Enum
from functools import cache
from types import UnionType
from typing import Annotated, Any, Literal, TypeVar, Union, get_args, get_origin, get_type_hints

from pydantic import AfterValidator, BaseModel, BeforeValidator, ConfigDict, Field, Tag, create_model

from trainer.circuit.constraints import OneLine, Pattern
from trainer.errors import Sentence

Built = TypeVar("Built")


class StrictModel(BaseModel):
    """A part of a file: no unknown fields, no silent conversion, finite numbers, immutable."""

    model_config = ConfigDict(extra="forbid", strict=True, frozen=True, allow_inf_nan=False)


@cache
def model_of(kind: type[object], file_format: str | None = None) -> type[StrictModel]:
    """Return the model of a dataclass's fields; a whole file also has the field `form`, which names its format."""
    assert is_dataclass(kind)
    hints = get_type_hints(kind, include_extras=True)
    model_fields: dict[str, Any] = {} if file_format is None else {"form": (Literal[file_format], ...)}
    for field in fields(kind):
        default: object = ... if field.default is MISSING else field.default
        if field.default_factory is not MISSING:
            default = Field(default_factory=field.default_factory)
        model_fields[field.name] = (_in_file(hints[field.name]), default)
    return create_model(kind.__name__, __base__=StrictModel, **model_fields)


def built_from(kind: type[Built], model: StrictModel) -> Built:
    """Return the dataclass filled from its validated model."""
    return kind(**{name: value for name, value in model if name != "form"})


def _in_file(annotation: object, *constraints: object) -> object:
    """Return how a type is read from a file: tables for dataclasses, lists for tuples, words for enumerations."""
    origin, arguments = get_origin(annotation), get_args(annotation)
    if origin is Annotated:
        return _in_file(arguments[0], *map(_validator, arguments[1:]), *constraints)
    if origin in (Union, UnionType):
        return _annotated(Union[tuple(_in_file(one) for one in arguments)], *constraints)  # noqa: UP007
    if origin is tuple:
        return _annotated(list[_in_file(arguments[0])], *constraints, AfterValidator(tuple))  # type: ignore[misc]
    if origin is Mapping:
        return _annotated(dict[_in_file(arguments[0]), _in_file(arguments[1])], *constraints)  # type: ignore[misc]
    if is_dataclass(annotation) and isinstance(annotation, type):
        return _annotated(model_of(annotation), AfterValidator(_builder(annotation)), *constraints)
    if isinstance(annotation, type) and issubclass(annotation, Enum):
        return _annotated(annotation, _by_word(annotation), *constraints)
    return _annotated(annotation, *constraints)


def _annotated(annotation: object, *constraints: object) -> object:
    """Return a type with its constraints in the order that pydantic needs.

    Behind a validator of ours it no longer knows that a length is one of characters, and it looks for a tag in the
    outermost place only.
    """
    ordered = sorted(constraints, key=lambda one: (isinstance(one, Tag), isinstance(one, AfterValidator)))
    return Annotated[annotation, *ordered] if constraints else annotation


def _builder(kind: type[object]) -> Callable[[StrictModel], object]:
    def build(model: StrictModel) -> object:
        return built_from(kind, model)

    return build


def _validator(constraint: object) -> object:
    """Return pydantic's validator for a constraint of ours; pydantic knows all others."""
    if isinstance(constraint, Pattern):
        return Field(pattern=constraint.regex)
    return AfterValidator(_on_one_line) if isinstance(constraint, OneLine) else constraint


def _on_one_line(value: str) -> str:
    if "\n" in value:
        raise ValueError(Sentence("file.text_on_one_line"))
    return value


def _by_word(kind: type[Enum]) -> BeforeValidator:
    """Return a validator that converts a word to its member of an enumeration."""

    def convert(value: object) -> object:
        words = [member.value for member in kind]
        if isinstance(value, str) and value in words:
            return kind(value)
        raise ValueError(f"one of {', '.join(words)}")

    return BeforeValidator(convert)
