"""What measurements cost: common practice, no published source."""

from __future__ import annotations

import pytest

from tests.engines import NORTH
from trainer.circuit.elements import Location, Side
from trainer.instruments.bench_tests import Operation, Price
from trainer.instruments.charges import access_prices, live_prices
from trainer.instruments.requests import Request

COVER = Price(Operation.COVER_OFF, "right")


def test_an_injectors_plug_costs_the_cover_and_a_plug_outside_does_not() -> None:
    assert COVER in access_prices(NORTH, ["injector_plug.3"])
    assert COVER not in access_prices(NORTH, ["module_connector", "pass_through.right_front"])


@pytest.mark.parametrize(
    ("location", "under"),
    [(Location.ENGINE_HARNESS, False), (Location.PASS_THROUGH, True), (Location.UNDER_COVER, True)],
)
def test_a_drop_costs_the_cover_where_one_of_its_pins_lies_under_it(location: Location, *, under: bool) -> None:
    """A pass-through connector is back-probed from both sides while it is mated, and one of them is inside."""
    drop = Request("drop", cylinder=3, side=Side.RETURN, location=location)
    assert (COVER in live_prices(NORTH, drop)) is under


def test_live_work_is_prepared_and_a_clamp_or_a_trace_from_outside_is_not() -> None:
    prepared = Price(Operation.LIVE_PREPARATION)
    assert prepared in live_prices(NORTH, Request("drop", cylinder=3, side=Side.RETURN, location=Location.PASS_THROUGH))
    assert prepared not in live_prices(NORTH, Request("clamp", cylinder=3, other=4))
    assert prepared not in live_prices(NORTH, Request("trace", cylinder=3))
