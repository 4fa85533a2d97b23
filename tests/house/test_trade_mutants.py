"""The named changes can be made and their tests are there: the long run need not find out first."""

from __future__ import annotations

import re

import pytest

from tests.house.mutants import REPOSITORY
from tests.house.trade_mutants import TRADE_MUTANTS, TradeMutant


def test_there_are_ten_changes_at_least_of_different_places() -> None:
    assert len(TRADE_MUTANTS) >= 10
    assert len({mutant.name for mutant in TRADE_MUTANTS}) == len(TRADE_MUTANTS)
    assert len({mutant.path for mutant in TRADE_MUTANTS}) >= 6


@pytest.mark.parametrize("mutant", TRADE_MUTANTS, ids=lambda mutant: mutant.name)
def test_a_change_is_made_in_one_place_and_its_test_is_there(mutant: TradeMutant) -> None:
    source = (REPOSITORY / mutant.path).read_text("utf-8")
    assert mutant.applied(source) != source
    file, _, name = mutant.test.partition("::")
    wanted = name.partition("[")[0]
    assert re.search(rf"^def {wanted}\(", (REPOSITORY / file).read_text("utf-8"), re.MULTILINE)


def test_a_change_whose_line_is_gone_or_there_twice_is_refused() -> None:
    mutant = TradeMutant("", "somewhere.py", "A = 1", "A = 2", "")
    for source in ("B = 1\n", "A = 1\nA = 1\n"):
        with pytest.raises(ValueError, match="not once"):
            mutant.applied(source)
