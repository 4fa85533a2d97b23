"""The model's numbers move only with its stated version: `python -m tests.unchanged.make` writes them down again."""

import json

import pytest

from tests.engines import ALL
from tests.unchanged.make import HERE, MODEL, numbers_of
from trainer.circuit.profile import Profile
from trainer.reasoning.model_version import MODEL_VERSION, stated_version

WITHIN = 1e-6
"""Far above what another processor rounds otherwise, and far below what any reading, ear or mark tells apart."""


@pytest.mark.parametrize("profile", ALL, ids=lambda one: one.name)
def test_numbers_move_only_with_the_stated_version(profile: Profile) -> None:
    kept = json.loads((HERE / MODEL).read_text("utf-8"))
    assert kept["version"] == MODEL_VERSION, "run python -m tests.unchanged.make"
    for name, row in numbers_of(profile).items():
        assert row == pytest.approx(kept[profile.name][name], rel=WITHIN, abs=WITHIN), (
            f"{name} has moved: raise MODEL_VERSION, then run python -m tests.unchanged.make"
        )


def test_the_hash_that_programs_kept_before_is_read_as_its_version() -> None:
    hashed = "9e58f84f1d9888cfed9be09875c17036ff7566a4cb29510f86421fae22b9def9"
    assert stated_version(hashed) == "1"
    assert stated_version("0" * 64) == ""
    assert stated_version("7") == "7"
