"""What a learner may be called: one name for one person, whatever was typed around it."""

from __future__ import annotations

import unicodedata

import pytest
from hypothesis import given
from hypothesis import strategies as st

from trainer.desk.learner_name import learner_name
from trainer.errors import WrongCallError


@pytest.mark.parametrize(
    ("typed", "kept"),
    [
        ("  ann ", "ann"), ("ann\t meyer", "ann meyer"), ("Zoe\u0308", "Zoë"), ("\u202eevil", "evil"), ("שלום", "שלום"),
        ("=1+1", "=1+1"), ("<script>", "<script>"), ("x" * 200, "x" * 200), ("line\nend", "line end"),
        ("an\u200bna\u00ad", "anna"), ("\u2066anna\u2069\ufeff", "anna"), ("an\u200dna", "anna"), ("می‌خواهم", "می‌خواهم"),
        ("a\u2028b", "a b"),
    ],
)  # fmt: skip
def test_a_name_is_kept_plain(typed: str, kept: str) -> None:
    assert learner_name(typed) == kept


@pytest.mark.parametrize(
    ("typed", "told"),
    [("", "learner_empty"), (" \u200e ", "learner_empty"), ("\u3164", "learner_empty"), ("x" * 201, "learner_long"), ("a\x00b", "learner_letters"),
     ("a\x1b[31m", "learner_letters"), ("a\x9b31m", "learner_letters"), ("\udcff", "learner_letters")],
)  # fmt: skip
def test_what_is_no_name_is_refused(typed: str, told: str) -> None:
    with pytest.raises(WrongCallError, match=told):
        learner_name(typed)


@given(st.text(max_size=80))
def test_a_kept_name_is_kept_as_it_is(typed: str) -> None:
    try:
        name = learner_name(typed)
    except WrongCallError:
        return
    assert learner_name(name) == name
    assert name == name.strip() == unicodedata.normalize("NFC", name)
    name.encode("utf-8")
