"""Spanish is whole: every sentence, every value in it, decimals with a comma."""

from __future__ import annotations

from collections.abc import Iterator
from string import Formatter

import pytest

from trainer import words
from trainer.words import TEXTS
from trainer.words.spanish import TEXTS as SPANISH


@pytest.fixture
def in_spanish() -> Iterator[None]:
    words.speak("es")
    yield
    words.speak("en")


def values_in(sentence: str) -> set[tuple[str, str]]:
    return {(name, spec or "") for _text, name, spec, _conversion in Formatter().parse(sentence) if name}


def test_spanish_has_every_sentence_and_no_other() -> None:
    assert SPANISH.keys() == TEXTS.keys()


def test_a_sentence_has_the_same_values_in_both_languages() -> None:
    differing = {key: (TEXTS[key], SPANISH[key]) for key in TEXTS if values_in(SPANISH[key]) != values_in(TEXTS[key])}
    assert differing == {}


@pytest.mark.usefixtures("in_spanish")
def test_spanish_writes_decimals_with_a_comma_and_leaves_codes_alone() -> None:
    assert words.percent(0.256) == "25,6 %"
    assert words.text("codes.line", code="P0203", meaning="x.y").startswith("P0203  x.y")
    assert words.numbers([1, 3]) == "1 y 3"


def test_a_language_that_is_not_there_is_refused_and_nothing_changes() -> None:
    with pytest.raises(KeyError):
        words.speak("xx")
    assert words.spoken() == "en"
