"""Documents that `--json` prints: typed values as JSON."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import fields, is_dataclass
from typing import TypeAlias

JsonValue: TypeAlias = "str | int | float | bool | Sequence[JsonValue] | Mapping[str, JsonValue] | None"
"""What `json.dumps` writes."""

LEFT_OUT_IF_NONE = {"left_out_if_none": True}
"""The metadata of a dataclass field that the document has only where it is not None; every other None is null."""


def json_object(document: object) -> dict[str, JsonValue]:
    """Return a dataclass as a JSON object: its fields in order, dataclasses in it likewise.

    Raises TypeError for a value that JSON cannot hold.
    """
    if not is_dataclass(document):
        raise TypeError(f"not a dataclass: {document!r}")
    written = {one: getattr(document, one.name) for one in fields(document)}
    return {
        one.name: json_value(value)
        for one, value in written.items()
        if value is not None or one.metadata != LEFT_OUT_IF_NONE
    }


def json_value(value: object) -> JsonValue:
    """Return a value as JSON: dataclasses and mappings as objects, other sequences than text as arrays."""
    if value is None or isinstance(value, str | int | float):
        return value
    if isinstance(value, Mapping):
        return {str(name): json_value(part) for name, part in value.items()}
    if isinstance(value, Sequence):
        return [json_value(part) for part in value]
    return json_object(value)
