"""Reads a parsed file into a dataclass; turns pydantic's errors into problems with lines."""

from __future__ import annotations

from collections.abc import Iterable
from difflib import get_close_matches
from typing import TYPE_CHECKING, Any, TypeVar, get_args

from pydantic import BaseModel, ValidationError

from trainer.cases.files.schema import built_from, model_of
from trainer.errors import Problem, ProblemsFoundError
from trainer.words import text

if TYPE_CHECKING:
    from pydantic_core import ErrorDetails

    from trainer.cases.files.yaml_text import YamlText

Built = TypeVar("Built")

MOST_PROBLEMS = 60
"""So many problems of one file are told; more are counted."""


def validated(kind: type[Built], parsed: YamlText, file_format: str) -> Built:
    """Return a file's content as a dataclass; raises ProblemsFoundError with every problem in it.

    `file_format` is what the file's field `form` must say.
    """
    described: Any = kind  # a class, which mypy does not take for hashable
    form = model_of(described, file_format)
    try:
        return built_from(kind, form.model_validate(parsed.value))
    except ValidationError as error:
        wrong = error.errors()
        problems = [_problem(parsed, form, item) for item in wrong[:MOST_PROBLEMS]]
        if len(wrong) > MOST_PROBLEMS:
            count = len(wrong) - MOST_PROBLEMS
            found, allowed, mend = (
                text("file.more_problems", count=count),
                text("file.nothing"),
                "file.correct_these_first",
            )
            problems.append(Problem(parsed.file, None, "the file", found, allowed, text(mend)))
        raise ProblemsFoundError(problems) from error


_NO_FIELDS = ("function-", "tagged-", "[key]")
"""How steps to an error begin that pydantic takes inside a field."""


def _problem(parsed: YamlText, form: type[BaseModel], item: ErrorDetails) -> Problem:
    path = [step for step in item["loc"] if not (isinstance(step, str) and step.startswith(_NO_FIELDS))]
    field = ".".join(str(step) for step in path) or "the file"
    kind, context = item["type"], item.get("ctx", {})
    found = _short(item.get("input"))
    if kind == "missing":
        return Problem(
            parsed.file,
            parsed.line_of(path),
            field,
            text("file.missing"),
            text("file.a_value"),
            text("file.add_field", field=path[-1]),
        )
    if kind == "extra_forbidden":
        names = _fields_at(form, path[:-1])
        near = get_close_matches(str(path[-1]), names, 1)
        mend = text("file.write_word", word=near[0]) if near else text("file.take_the_field_out")
        return Problem(
            parsed.file,
            parsed.line_of(path),
            field,
            text("file.an_unknown_field"),
            ", ".join(names) or text("file.nothing"),
            mend,
        )
    shapes = {"model_type": "file.some_fields", "list_type": "file.a_list", "dict_type": "file.a_table"}
    if kind in shapes:
        allowed = text(shapes[kind], names=", ".join(_fields_at(form, path)))
        return Problem(parsed.file, parsed.line_of(path), field, found, allowed, text("file.see_writing_files"))
    if kind == "string_pattern_mismatch":
        allowed = text("file.a_short_name")
        return Problem(parsed.file, parsed.line_of(path), field, found, allowed, text("file.choose_another_name"))
    if kind in _LIMITS:
        sentence, limit = _LIMITS[kind]
        # as YAML writes it: with a point, whatever the language
        allowed = text(sentence, count=str(context[limit])) if limit else text(sentence)
    else:
        allowed = str(context.get("expected") or item["msg"]).replace("Value error, ", "")
    return Problem(parsed.file, parsed.line_of(path), field, found, allowed, text("file.give", allowed=allowed))


_LIMITS = {
    "greater_than": ("file.above", "gt"),
    "greater_than_equal": ("file.at_least", "ge"),
    "less_than": ("file.below", "lt"),
    "less_than_equal": ("file.at_most", "le"),
    "string_too_short": ("file.at_least_characters", "min_length"),
    "string_too_long": ("file.at_most_characters", "max_length"),
    "too_short": ("file.at_least_entries", "min_length"),
    "too_long": ("file.at_most_entries", "max_length"),
    "string_type": ("file.a_text", ""),
    "int_type": ("file.a_whole_number", ""),
    "float_type": ("file.a_number", ""),
    "finite_number": ("file.a_finite_number", ""),
    "bool_type": ("file.true_or_false", ""),
}
"""Sentence and limit of each kind of error that pydantic finds in a value."""


def _short(value: object) -> str:
    shown = repr(value)
    return shown if len(shown) <= 60 else shown[:57] + "..."


def _fields_at(form: type[BaseModel], path: Iterable[str | int]) -> list[str]:
    here = form
    for step in path:
        if str(step) in here.model_fields:
            here = _model_in(here.model_fields[str(step)].annotation) or here
    return sorted(here.model_fields)


def _model_in(annotation: object) -> type[BaseModel] | None:
    """Return the model in an annotation, however deep in lists, tables and options; None for none or several."""
    if isinstance(annotation, type) and issubclass(annotation, BaseModel):
        return annotation
    found = [model for one in get_args(annotation) if (model := _model_in(one)) is not None]
    return found[0] if len(found) == 1 else None
