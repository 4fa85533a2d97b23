"""The model's numbers move only with its stated version: `python -m tests.unchanged.make` writes them down again."""

import json

import pytest

from tests.engines import ALL
from tests.unchanged.make import HERE, MODEL, moved, numbers_of
from trainer.circuit.profile import Profile
from trainer.reasoning.model_version import MODEL_VERSION, stated_version


@pytest.mark.parametrize("profile", ALL, ids=lambda one: one.name)
def test_numbers_move_only_with_the_stated_version(profile: Profile) -> None:
    kept = json.loads((HERE / MODEL).read_text("utf-8"))
    assert kept["version"] == MODEL_VERSION, "run python -m tests.unchanged.make"
    differing = moved(kept, {profile.name: numbers_of(profile)})
    assert differing == [], "raise MODEL_VERSION, then run python -m tests.unchanged.make"


def test_a_row_that_moves_appears_or_goes_is_named() -> None:
    kept = {"one": {"ohms": [1.0, 2.0], "gone": [0.0]}}
    assert moved(kept, {"one": {"ohms": [1.0, 2.0], "gone": [0.0]}}) == []
    assert moved(kept, {"one": {"ohms": [1.0, 2.001], "new": [0.0]}}) == ["one gone", "one new", "one ohms"]


def test_the_hash_that_programs_kept_before_is_read_as_its_version() -> None:
    hashed = "9e58f84f1d9888cfed9be09875c17036ff7566a4cb29510f86421fae22b9def9"
    assert stated_version(hashed) == "1"
    assert stated_version("0" * 64) == ""
    assert stated_version("7") == "7"
