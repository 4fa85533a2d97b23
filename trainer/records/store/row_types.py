"""Types and limits of each table's columns, for validating rows that are read from files or from the database.

SQLite accepts any value in any column, and a file can be damaged: nothing is computed from a value whose type was not
checked.
"""

from __future__ import annotations

from typing import Annotated, Any

from pydantic import BaseModel, ConfigDict, Field, create_model
from sqlalchemy import Boolean, Column, ColumnElement, Integer, String, Table, Text, and_
from sqlalchemy.ext.compiler import compiles
from sqlalchemy.sql.compiler import SQLCompiler
from sqlalchemy.sql.functions import FunctionElement

MOST_NUMBER = 2**31 - 1
"""No whole number in a store is larger, nor smaller than its negative: what every database keeps."""

MOST_FLOAT = 1e300
MOST_TEXT = 250_000
"""Characters in a text without a length of its own, such as an event's data."""


def row_model(table: Table) -> type[BaseModel]:
    """Return the form of a row: every column, nothing else, each of its own type and within its limits."""
    fields: dict[str, Any] = {column.name: (_type_of(column), ...) for column in table.columns}
    config = ConfigDict(strict=True, extra="forbid", allow_inf_nan=False)
    return create_model(f"{table.name}_row", __config__=config, **fields)


def _type_of(column: Column[object]) -> object:
    if isinstance(column.type, String):
        return Annotated[str, Field(max_length=_length(column.type))]
    if isinstance(column.type, Integer):
        return Annotated[int, Field(ge=-MOST_NUMBER, le=MOST_NUMBER)]
    return Annotated[float, Field(ge=-MOST_FLOAT, le=MOST_FLOAT)]


def _length(kind: String) -> int:
    return MOST_TEXT if isinstance(kind, Text) or kind.length is None else kind.length


def typed(what: Table | ColumnElement[object]) -> ColumnElement[bool]:
    """Return the condition that a column, or each column of a row, holds what `row_model` allows there."""
    return and_(*(_Holds(column) for column in what.columns)) if isinstance(what, Table) else _Holds(what)


class _Holds(FunctionElement[bool]):
    """The condition that a column holds a value of its type, which PostgreSQL guarantees and SQLite does not."""

    type = Boolean()
    inherit_cache = True


@compiles(_Holds)
def _always(_element: _Holds, _compiler: SQLCompiler, **_options: object) -> str:
    return "true"


@compiles(_Holds, "sqlite")
def _asked(element: _Holds, compiler: SQLCompiler, **options: object) -> str:
    (column,) = element.clauses
    name, kind = compiler.process(column, **options), column.type
    if isinstance(kind, String):
        return f"(typeof({name}) = 'text' AND length({name}) <= {_length(kind)})"
    if isinstance(kind, Integer):
        return f"(typeof({name}) = 'integer' AND {name} BETWEEN {-MOST_NUMBER} AND {MOST_NUMBER})"
    return f"(typeof({name}) IN ('real', 'integer') AND {name} BETWEEN {-MOST_FLOAT} AND {MOST_FLOAT})"
