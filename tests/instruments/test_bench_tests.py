"""Tests of the bench and prices are values; their ids, which records hold, are parsed back to the same value."""

from __future__ import annotations

import pytest

from tests.engines import ALL
from trainer.circuit.elements import Location
from trainer.instruments.bench_tests import BenchTest, BenchTestKind, Operation, Price, parse_bench_test, parse_price
from trainer.reasoning.universe.menu import closer_tests, menu_of
from trainer.words import has


@pytest.mark.parametrize("profile", ALL, ids=lambda profile: profile.name)
def test_every_test_and_price_of_an_engine_is_parsed_back_from_its_id(profile) -> None:
    """The price of a run is named in the menu by its test, and in records by the state of the engine."""
    tests = (*menu_of(profile, 20.0), *closer_tests(profile, 20.0, profile.cylinders))
    assert len({str(test.name) for test in tests}) == len(tests)
    for test in tests:
        assert test.questions
        assert parse_bench_test(str(test.name)) == test.name
        for price in (*test.prices, *test.needs, *test.opens):
            if price.operation is not Operation.ACTUATION_TEST:
                assert parse_price(str(price)) == price


def test_the_ids_are_those_of_records_so_far() -> None:
    assert str(BenchTest(BenchTestKind.MOVE, Location.UNDER_COVER)) == "move:under_cover_harness"
    assert parse_bench_test("swap:3") == BenchTest(BenchTestKind.SWAP, 3)
    assert parse_price("swap_returns:(1, 3)") == Price(Operation.SWAP_RETURNS, (1, 3))
    assert str(Price(Operation.SWAP_RETURNS, (1, 3))) == "swap_returns:(1, 3)"
    assert parse_price("actuation_test:0a1b") == Price(Operation.ACTUATION_TEST, "0a1b")
    assert parse_price("load_drop:supply") != parse_price("load_drop:3") == Price(Operation.LOAD_DROP, 3)


@pytest.mark.parametrize(
    "name", ["", "sniff", "move", "move:everything", "trace", "trace:x", "plug_pairs", "hear:left", "codes:1"]
)
def test_an_id_of_no_test_is_refused(name: str) -> None:
    with pytest.raises(ValueError, match=r".+"):
        parse_bench_test(name)


@pytest.mark.parametrize("name", ["", "sniff:1", "heat:everything", "current_trace:x", "swap_returns:3"])
def test_an_id_of_no_price_is_refused(name: str) -> None:
    with pytest.raises(ValueError, match=r".+"):
        parse_price(name)


def test_every_test_and_operation_has_its_words() -> None:
    assert all(has(f"plan.{kind}") for kind in BenchTestKind)
    assert all(has(f"test.{operation}") for operation in Operation)
