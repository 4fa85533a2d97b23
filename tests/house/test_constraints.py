"""The pinned packages are whole, and they are what pyproject.toml allows."""

from __future__ import annotations

import re

from packaging.utils import canonicalize_name

from tests.house.constraints import CONSTRAINTS, asked_for, pinned


def test_every_requirement_is_pinned_to_a_version_that_it_allows() -> None:
    pins = pinned()
    refused = {
        str(one): found
        for one in asked_for()
        if (found := pins.get(canonicalize_name(one.name))) is None or not one.specifier.contains(found)
    }
    assert refused == {}


def test_a_pin_is_a_name_and_a_version_and_nothing_else() -> None:
    head, *lines = CONSTRAINTS.read_text("utf-8").splitlines()
    assert head.startswith("# Written by")
    assert [line for line in lines if not re.fullmatch(r"[a-z0-9-]+==[0-9a-z.]+", line)] == []
    assert lines == sorted(set(lines))
