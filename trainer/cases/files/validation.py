"""Validates a parsed file into a dataclass, and turns pydantic's errors into problems with lines."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from difflib import get_close_matches
from typing import TYPE_CHECKING, TypeVar, get_args

from pydantic import BaseModel, Tag, ValidationError

from trainer.cases.files.schema import built_from, model_of
from trainer.errors import THE_FILE, Problem, ProblemsFoundError, Said, Sentence

if TYPE_CHECKING:
    from pydantic_core import ErrorDetails

    from trainer.cases.files.yaml_text import YamlText

Built = TypeVar("Built")

MOST_PROBLEMS = 60
"""How many problems of one file are listed; the rest are only counted."""


def validated(kind: type[Built], parsed: YamlText, file_format: str) -> Built:
    """Return a file's content as a dataclass; raises ProblemsFoundError with every problem in it.

    `file_format` is what the file's field `form` must say.
    """
    form = model_of(kind, file_format)  # type: ignore[arg-type]  # a class is hashable; mypy looks at its instances
    try:
        return built_from(kind, form.model_validate(parsed.value))
    except ValidationError as error:
        wrong = error.errors()
        problems = [_problem(parsed, form, item) for item in wrong[:MOST_PROBLEMS]]
        if len(wrong) > MOST_PROBLEMS:
            count = len(wrong) - MOST_PROBLEMS
            found, allowed, mend = (
                Sentence("file.more_problems", n=count),
                Sentence("file.nothing"),
                "file.correct_these_first",
            )
            problems.append(Problem(parsed.file, None, THE_FILE, found, allowed, Sentence(mend)))
        raise ProblemsFoundError(problems) from error


_NO_FIELDS = ("function-", "tagged-", "[key]")
"""Prefixes of the steps in an error's location that pydantic adds and that name no field."""


def _problem(parsed: YamlText, form: type[BaseModel], item: ErrorDetails) -> Problem:
    path = [step for step in item["loc"] if not (isinstance(step, str) and step.startswith(_NO_FIELDS))]
    field = ".".join(str(step) for step in path) or THE_FILE
    kind, context = item["type"], item.get("ctx", {})
    found = _short(item.get("input"))
    if kind == "missing":
        return Problem(
            parsed.file,
            parsed.line_of(path),
            field,
            Sentence("file.missing"),
            Sentence("file.a_value"),
            Sentence("file.add_field", field=path[-1]),
        )
    if kind == "extra_forbidden":
        names = _fields_at(form, item["loc"][:-1])
        near = get_close_matches(str(path[-1]), names, 1)
        mend = Sentence("file.write_word", word=near[0]) if near else Sentence("file.take_the_field_out")
        return Problem(
            parsed.file,
            parsed.line_of(path),
            field,
            Sentence("file.an_unknown_field"),
            ", ".join(names) or Sentence("file.nothing"),
            mend,
        )
    allowed: Said
    shapes = {"model_type": "file.some_fields", "list_type": "file.a_list", "dict_type": "file.a_table"}
    if kind in shapes:
        allowed = Sentence(shapes[kind], names=", ".join(_fields_at(form, item["loc"])))
        return Problem(parsed.file, parsed.line_of(path), field, found, allowed, Sentence("file.see_writing_files"))
    if kind == "string_pattern_mismatch":
        allowed = Sentence("file.a_short_name")
        return Problem(parsed.file, parsed.line_of(path), field, found, allowed, Sentence("file.choose_another_name"))
    if kind in _LIMITS:
        sentence, limit = _LIMITS[kind]
        # as YAML writes it: with a point, whatever the language
        allowed = Sentence(sentence, n=context[limit], count=str(context[limit])) if limit else Sentence(sentence)
    elif isinstance(context.get("error"), ValueError) and isinstance(context["error"].args[0], Sentence):
        allowed = context["error"].args[0]
    else:
        allowed = str(context.get("expected") or item["msg"]).replace("Value error, ", "")
    return Problem(parsed.file, parsed.line_of(path), field, found, allowed, Sentence("file.give", allowed=allowed))


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


def _fields_at(form: type[BaseModel], location: Iterable[str | int]) -> list[str]:
    """Return the names of the fields that a file may give at an error's location.

    Where a field holds one of several models, the location names the tag of the one that was tried.
    """
    here, tagged = form, dict[str, type[BaseModel]]()
    for step in map(str, location):
        if step in tagged:
            here, tagged = tagged[step], {}
        elif step in here.model_fields:
            tagged = dict(_models_in(here.model_fields[step].annotation))
            if len(tagged) == 1:
                here = next(iter(tagged.values()))
    return sorted(here.model_fields)


def _models_in(annotation: object, tag: str = "") -> Iterator[tuple[str, type[BaseModel]]]:
    """Yield every model in an annotation with its tag, however deep in lists, tables and options."""
    if isinstance(annotation, type) and issubclass(annotation, BaseModel):
        yield tag, annotation
    inner = get_args(annotation)
    own_tag = next((one.tag for one in inner if isinstance(one, Tag)), tag)
    for one in inner:
        yield from _models_in(one, own_tag)
