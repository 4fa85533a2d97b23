"""The tries at making a fault show itself that are worth planning: which places are moved, and which are warmed."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from trainer.circuit.elements import Location
from trainer.circuit.profile import Profile
from trainer.instruments.bench import Work
from trainer.instruments.bench_tests import Price, Spot
from trainer.instruments.charges import try_price, try_prices
from trainer.instruments.measuring import tried
from trainer.instruments.tries import HEAT, MOST_TRIES, MOVE, UNDER_COVER, How, Try

WIRING = (Location.ENGINE_HARNESS, Location.PASS_THROUGH, Location.UNDER_COVER)

WARMED = (*WIRING, Location.COIL, Location.DRIVE_MODULE)
"""Where warm air is held."""


@dataclass(frozen=True, slots=True)
class PlannedTry:
    """One try at a spot: what it costs, what must have been tried before it, and the engine in it."""

    how: How
    spot: Spot
    number: int
    prices: tuple[Price, ...]
    needs: tuple[Price, ...]
    work: Work


def tries_worth_planning(profile: Profile, begin: Work) -> Iterator[PlannedTry]:
    """Yield the tries that are worth planning: thorough ones, outside and under each cover, one after another."""
    for how, places in ((MOVE, WIRING), (HEAT, WARMED)):
        spots = [Spot(p, bank) for p in places for bank in (profile.banks if p in UNDER_COVER else ("",))]
        for spot in spots:
            for number in range(1, MOST_TRIES + 1):
                one = Try(spot.bank, number)
                before = (try_price(how, spot, Try(spot.bank, number - 1)),) if number > 1 else ()
                work = tried(begin, how, spot.location, one)
                yield PlannedTry(how, spot, number, try_prices(how, spot, one), before, work)
