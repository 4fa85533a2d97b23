"""What measurements and tries cost: access, covers that are in the way, preparation, their own minutes."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from trainer.circuit.profile import Profile
from trainer.instruments.bench import (
    MODULE_CONNECTOR,
    Pin,
    cylinders_at,
)
from trainer.instruments.bench_tests import SUPPLY, Operation, Price, Spot
from trainer.instruments.requests import POWER_DROPS, Request, drop_pins_of
from trainer.instruments.tries import MOVE, TIMES, UNDER_COVER, How, Try

LIVE = {
    "drop": Operation.LOAD_DROP, "supply": Operation.LOAD_DROP, "trace": Operation.CURRENT_TRACE,
    "dummy": Operation.DUMMY_LOAD, "clamp": Operation.CLAMP, "crank": Operation.CRANK,
    "plus_drop": Operation.POWER_DROP, "ground_drop": Operation.POWER_DROP,
    "contribution": Operation.CONTRIBUTION, "compression": Operation.COMPRESSION,
}  # fmt: skip
"""What is measured on the driven engine, and what each is charged as."""


def access_prices(profile: Profile, points: Sequence[str]) -> tuple[Price, ...]:
    """Return the prices, each once, of opening break points."""
    prices: dict[Price, None] = {}
    for point in points:
        if point == MODULE_CONNECTOR:
            prices[Price(Operation.MODULE_OHMS)] = None
            continue
        bank = profile.bank_of(cylinders_at(profile, point)[0])
        if point.startswith("pass_through."):
            prices[Price(Operation.PASS_THROUGH_OHMS, bank)] = None
        else:
            prices[Price(Operation.COVER_OFF, bank)] = None
            prices[Price(Operation.INJECTOR_OHMS, bank)] = None
    return tuple(prices)


def cover_prices(profile: Profile, request: Request, pins: tuple[Pin | None, ...]) -> tuple[Price, ...]:
    """Return the cover that is in the way of pins which are probed with their plugs on."""
    under = any(pin is not None and is_under_cover(pin) for pin in pins)
    return (Price(Operation.COVER_OFF, profile.bank_of(request.cylinder)),) if under else ()


def drag_prices(points: Iterable[str]) -> tuple[Price, ...]:
    """Return what drawing a matching pin through the terminals of open break points costs, each apart."""
    return tuple(Price(Operation.PIN_DRAG, point) for point in sorted(points))


def is_under_cover(pin: Pin) -> bool:
    """Tell whether a pin can be reached only with the cover off while every plug is on.

    The cover half of a pass-through connector faces outside once its plug is off; mated, it can be back-probed from
    inside only.
    """
    return pin.break_point.startswith("injector_plug.") or pin.half == "cover"


def try_price(how: How, spot: Spot, one: Try) -> Price:
    """Return the price of a try itself."""
    return Price(Operation.MOVE_HARNESS if how == MOVE else Operation.HEAT, spot, one.number, TIMES[one.effort])


def try_prices(how: How, spot: Spot, one: Try) -> tuple[Price, ...]:
    """Return what a try costs: its own minutes, and the cover where one lies over the place."""
    cover = (Price(Operation.COVER_OFF, spot.bank),) if spot.location in UNDER_COVER else ()
    return (*cover, try_price(how, spot, one))


TOUCHED = ("supply", "drop", "dummy")
"""What is measured with probes on live terminals; a clamp goes around an insulated wire, and on with the key off."""


def covers_in(prices: Iterable[Price]) -> frozenset[str]:
    """Return the banks whose cover comes off for some prices."""
    return frozenset(str(price.at) for price in prices if price.operation is Operation.COVER_OFF)


def live_prices(profile: Profile, request: Request) -> tuple[Price, ...]:
    """Return what a measurement on the driven engine costs: each injector apart, a cover where one is in the way."""
    if request.what == "supply":
        return (Price(Operation.LIVE_PREPARATION), Price(Operation.LOAD_DROP, SUPPLY))
    if request.what in ("clamp", "crank", *POWER_DROPS, "contribution", "compression"):
        return (Price(LIVE[request.what]),)
    if request.what == "dummy":
        cover: tuple[Price, ...] = (Price(Operation.COVER_OFF, profile.bank_of(request.cylinder)),)
    else:
        pins = drop_pins_of(profile, request) if request.what == "drop" else ()
        cover = cover_prices(profile, request, pins)
    isolated = (Price(Operation.LIVE_PREPARATION),) if request.what in TOUCHED else ()
    return (*isolated, *cover, Price(LIVE[request.what], request.cylinder))
