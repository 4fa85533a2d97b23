"""Every part of the long run can be begun: a proof that does not even start is noticed before its turn comes."""

from __future__ import annotations

import importlib
import re
from pathlib import Path

import pytest

LONG = (Path(__file__).parents[2] / ".ci" / "long").read_text("utf-8")
MODULES = sorted(set(re.findall(r'^  "(tests\.[a-z_.]+)', LONG, re.MULTILINE)))


def test_the_list_is_read() -> None:
    assert len(MODULES) > 20


@pytest.mark.parametrize("module", MODULES)
def test_a_part_of_the_long_run_can_be_loaded(module: str) -> None:
    loaded = importlib.import_module(module)
    if hasattr(loaded, "__path__"):
        loaded = importlib.import_module(f"{module}.__main__")
    assert loaded.__file__
