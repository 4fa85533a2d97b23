"""Characters that act on a terminal, turn writing round or are not seen are shown; letters of every script stay."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.words.catalogues import texts_of
from trainer.errors import Problem, WrongCallError
from trainer.words import message_of, problem_line, text
from trainer.words.languages import LANGUAGES
from trainer.words.visible import unseen_in, visible

UNSEEN = {
    "\x1b": "\\x1b", "\x00": "\\x00", "\n": "\\n", "\t": "\\t", "\r": "\\r", "\x07": "\\x07", "\x7f": "\\x7f",
    "\x9b": "\\x9b", "\x85": "\\x85", "\u200b": "\\u200b", "\u200d": "\\u200d", "\u200e": "\\u200e",
    "\u200f": "\\u200f", "\u061c": "\\u061c", "\u2028": "\\u2028", "\u2029": "\\u2029", "\u202a": "\\u202a",
    "\u202e": "\\u202e", "\u2060": "\\u2060", "\u2066": "\\u2066", "\u2069": "\\u2069", "\ufeff": "\\ufeff",
    "\u00ad": "\\xad", "\ud800": "\\ud800", "\U000e0041": "\\U000e0041", "\u3164": "\\u3164",
}  # fmt: skip


@pytest.mark.parametrize(("character", "shown"), UNSEEN.items(), ids=UNSEEN.values())
def test_an_unseen_character_is_shown_as_an_escape(character: str, shown: str) -> None:
    assert visible(f"a{character}b") == f"a{shown}b"
    assert unseen_in(f"a{character}b") == 1


def test_what_lays_text_out_stays_where_that_is_asked_for() -> None:
    assert visible("a\n\tb\x1b", keep="\n\t") == "a\n\tb\\x1b"
    assert unseen_in("a\n\tb\x1b", keep="\n\t") == 4


@pytest.mark.parametrize(
    "word", ["Zoë", "Ω → ½ °C", "שלום", "مرحبا", "می‌خواهم", "क्‍ष", "日本語", "한국어", "⚠️", "a b", "٪\u06dd"]
)
def test_letters_of_every_script_stay(word: str) -> None:
    assert visible(word) == word


@given(st.text())
def test_what_was_made_visible_has_nothing_unseen_and_stays_as_it_is(written: str) -> None:
    assert unseen_in(visible(written)) is None
    assert visible(visible(written)) == visible(written)


def test_our_own_sentences_have_nothing_unseen_but_line_ends() -> None:
    for language in LANGUAGES:
        assert {
            key: sentence for key, sentence in texts_of(language).items() if unseen_in(sentence, "\n") is not None
        } == {}


def test_a_value_never_breaks_the_line_that_it_is_filled_into() -> None:
    assert "\n" not in text("slot.one", number="1\n2")
    line = problem_line(Problem("a\nb.yaml", 1, "x\ny: fine", "\x1b[2J", "\u202e", "\x9b"))
    assert line.startswith("a\\nb.yaml, line 1: x\\ny: fine is \\x1b[2J. Allowed: \\u202e. To fix it: \\x9b.")
    told_line = message_of(WrongCallError("file_exists", path=Path("a\x1b]0;title\x07\nb")))
    assert "a\\x1b]0;title\\x07\\nb" in told_line
    assert unseen_in(told_line) is None
