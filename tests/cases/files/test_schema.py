"""The strict model that is derived from a dataclass: what it takes from a file, refuses and builds."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum
from typing import Annotated, Literal

import pytest
from annotated_types import Interval, Len
from pydantic import ValidationError

from trainer.cases.files.schema import built_from, model_of
from trainer.circuit.constraints import Name, Title


class Grip(StrEnum):
    """An enumeration whose words differ from the names of its members."""

    FIRM = "firm grip"
    LOOSE = "loose grip"


@dataclass(frozen=True)
class Clamp:
    """A part of the file below."""

    torque_nm: Annotated[float, Interval(gt=0, le=40)]
    grip: Grip = Grip.FIRM


@dataclass(frozen=True)
class Fixture:
    """A whole file: one field of each kind that files of ours have."""

    name: Name
    title: Title
    holes: Annotated[tuple[Annotated[int, Interval(ge=1, le=16)], ...], Len(1, 3)]
    clamps: Annotated[Mapping[Name, Clamp], Len(0, 2)]
    spare: Clamp | None = None
    live: Literal["all", "commanded"] = "all"
    limit_c: float = 20.0
    locked: bool = False
    spacers: tuple[Clamp, ...] = field(default_factory=tuple)


CLAMP: dict[str, object] = {"torque_nm": 12.0}
GOOD: dict[str, object] = {
    "form": "fixture/1", "name": "left_rail", "title": "Left rail", "holes": [3, 1], "clamps": {"near": CLAMP},
}  # fmt: skip


def read(document: dict[str, object]) -> Fixture:
    return built_from(Fixture, model_of(Fixture, "fixture/1").model_validate(document))


def errors_of(document: dict[str, object]) -> list[tuple[tuple[str | int, ...], str]]:
    with pytest.raises(ValidationError) as caught:
        read(document)
    return [(error["loc"], error["type"]) for error in caught.value.errors()]


def test_a_file_becomes_the_dataclass_with_tuples_words_and_defaults() -> None:
    made = read({**GOOD, "spare": {"torque_nm": 5, "grip": "loose grip"}, "spacers": [CLAMP]})
    assert made == Fixture(
        name="left_rail",
        title="Left rail",
        holes=(3, 1),
        clamps={"near": Clamp(12.0)},
        spare=Clamp(5.0, Grip.LOOSE),
        spacers=(Clamp(12.0),),
    )
    assert read(GOOD) == Fixture("left_rail", "Left rail", (3, 1), {"near": Clamp(12.0)})


@pytest.mark.parametrize(
    ("field_name", "value", "where", "kind"),
    [
        ("form", "fixture/2", ("form",), "literal_error"),
        ("name", "Left Rail", ("name",), "string_pattern_mismatch"),
        ("title", "Left\nrail", ("title",), "value_error"),
        ("title", "L", ("title",), "string_too_short"),
        ("holes", [], ("holes",), "too_short"),
        ("holes", [1, 2, 3, 4], ("holes",), "too_long"),
        ("holes", [0], ("holes", 0), "greater_than_equal"),
        ("holes", [17], ("holes", 0), "less_than_equal"),
        ("holes", [1.0], ("holes", 0), "int_type"),
        ("holes", ["1"], ("holes", 0), "int_type"),
        ("holes", [True], ("holes", 0), "int_type"),
        ("clamps", {"near": {"torque_nm": 0.0}}, ("clamps", "near", "torque_nm"), "greater_than"),
        ("clamps", {"near": {}}, ("clamps", "near", "torque_nm"), "missing"),
        ("clamps", {"near": {**CLAMP, "torqe": 1}}, ("clamps", "near", "torqe"), "extra_forbidden"),
        ("clamps", {"near": {**CLAMP, "grip": "FIRM"}}, ("clamps", "near", "grip"), "value_error"),
        ("clamps", {"a1": CLAMP, "b1": CLAMP, "c1": CLAMP}, ("clamps",), "too_long"),
        ("live", "none", ("live",), "literal_error"),
        ("limit_c", float("nan"), ("limit_c",), "finite_number"),
        ("limit_c", float("inf"), ("limit_c",), "finite_number"),
        ("limit_c", "20", ("limit_c",), "float_type"),
        ("locked", 1, ("locked",), "bool_type"),
        ("lokced", True, ("lokced",), "extra_forbidden"),
    ],
)
def test_a_wrong_value_is_refused_where_it_is_and_never_converted(
    field_name: str, value: object, where: tuple[str | int, ...], kind: str
) -> None:
    assert errors_of({**GOOD, field_name: value}) == [(where, kind)]


def test_every_error_of_a_file_is_reported_at_once() -> None:
    found = errors_of({**GOOD, "name": "X", "holes": [0, 99], "extra": 1})
    assert found == [
        (("name",), "string_pattern_mismatch"),
        (("holes", 0), "greater_than_equal"),
        (("holes", 1), "less_than_equal"),
        (("extra",), "extra_forbidden"),
    ]


def test_the_format_is_asked_of_a_whole_file_only() -> None:
    without = {name: value for name, value in GOOD.items() if name != "form"}
    assert errors_of(without) == [(("form",), "missing")]
    assert "form" not in model_of(Fixture).model_fields
    assert built_from(Fixture, model_of(Fixture).model_validate(without)) == read(GOOD)


def test_the_model_is_frozen_and_its_default_lists_are_not_shared() -> None:
    one = model_of(Fixture, "fixture/1").model_validate(GOOD)
    with pytest.raises(ValidationError, match="frozen"):
        one.name = "other"  # type: ignore[attr-defined]
    assert model_of(Fixture, "fixture/1") is model_of(Fixture, "fixture/1")  # made once for each format
