"""Case codes: short, checked, the same case on any computer."""

import itertools

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.engines import ALL, NORTH
from trainer.cases.drawing.coded_case import case_of_code
from trainer.cases.drawing.random_case import draw_case
from trainer.cases.single_case.case_code import (
    ALPHABET,
    SEED_LIMIT,
    CodeContent,
    CodeError,
    format_code,
    parse_code,
    short_digest,
)

DRAWN = st.builds(CodeContent, st.integers(0, 31**3 - 1), st.integers(1, 3), st.integers(0, SEED_LIMIT - 1))


@given(DRAWN)
def test_a_code_says_what_it_was_made_from(drawn: CodeContent) -> None:
    assert len(format_code(drawn)) <= 14
    assert parse_code(format_code(drawn)) == drawn
    assert parse_code(format_code(drawn).lower().replace("-", " ")) == drawn


@given(DRAWN)
def test_any_one_wrong_character_is_caught(drawn: CodeContent) -> None:
    letters = format_code(drawn).replace("-", "")
    for place, letter in itertools.product(range(12), ALPHABET):
        if letters[place] != letter:
            with pytest.raises(CodeError):
                parse_code(letters[:place] + letter + letters[place + 1 :])


@given(DRAWN)
def test_any_swap_of_neighbours_is_caught(drawn: CodeContent) -> None:
    letters = format_code(drawn).replace("-", "")
    for place in range(11):
        swapped = letters[:place] + letters[place + 1] + letters[place] + letters[place + 2 :]
        if swapped != letters:
            with pytest.raises(CodeError, match="check"):
                parse_code(swapped)


@given(st.text(max_size=20))
def test_no_text_makes_a_code_reader_fail_otherwise(text: str) -> None:
    try:
        parse_code(text)
    except CodeError as error:
        assert error.reason in {"length", "character", "check", "version"}  # noqa: PT017  # any other error fails


@pytest.mark.parametrize("profile", ALL, ids=lambda p: p.name)
@pytest.mark.parametrize("difficulty", [1, 2, 3])
def test_a_code_gives_the_identical_case(profile, difficulty: int) -> None:
    for seed in (0, 7, 123_456, SEED_LIMIT - 1):
        case = draw_case(profile, difficulty, seed)
        assert case.code is not None
        assert case_of_code(case.code, ALL) == case


def test_a_code_of_another_profile_is_refused() -> None:
    strange = format_code(CodeContent((short_digest(NORTH.digest) + 1) % 31**3, 1, 5))
    with pytest.raises(KeyError):
        case_of_code(strange, [NORTH])


def test_draws_mix_passing_circuits_groups_and_single_faults() -> None:
    cases = [draw_case(NORTH, 2, seed) for seed in range(300)]
    passes = sum(not case.faults for case in cases) / 300
    groups = sum(bool(case.faults) and len(case.faults[0].cylinders) > 2 for case in cases) / 300
    assert 0.10 < passes < 0.20
    assert 0.07 < groups < 0.20
    # the places follow the profile's priors: the connector first
    places = [case.faults[0].location for case in cases if case.faults and len(case.faults[0].cylinders) <= 2]
    assert max(set(places), key=places.count) == "pass_through_connector"
