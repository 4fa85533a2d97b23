"""Row by row against what the trade reads with each fault in: common practice, no published source.

The figures are those of one worked network (Ohm's law): coil 3.00 Ω, 0.06 Ω engine wire, 0.04 Ω under-cover wire, 0.01 Ω contacts,
one feed for a bank of four spliced under the cover, one return each, no leak. "n" is injector 3, its mate on the bank 1, another bank's 7.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
import pytest

from tests.outside.test_trade_table import MATE, N, example
from trainer.circuit.elements import GROUND, Circuit, Location, Part, Side
from trainer.circuit.fault import Conditions, Fault, FaultKind
from trainer.circuit.faults import with_faults
from trainer.circuit.harness import injector_plug_node, module_plug_node, pass_through_node
from trainer.instruments.bench import contacts_of
from trainer.instruments.ohmmeter import between

BANK, OTHER = (1, 2, 3, 4), 7
OL = np.inf
E, P, U, C, A, M = (
    Location.ENGINE_HARNESS, Location.PASS_THROUGH, Location.UNDER_COVER, Location.COIL, Location.ARMATURE,
    Location.DRIVE_MODULE,
)  # fmt: skip
BACK, FEED = Side.RETURN, Side.FEED


def fault(
    kind: FaultKind, place: Location, side: Side | None = BACK, ohm: float | None = None,
    cylinders: tuple[int, ...] = (N,), part: Part | None = None,
) -> Fault:  # fmt: skip
    return Fault(kind, place, cylinders, side, ohm, part)


def ohms(circuit: Circuit, a: str, b: str, unplugged: Sequence[str]) -> float:
    gone = frozenset[str]().union(*(contacts_of(circuit.profile, point) for point in unplugged))
    seen = between(circuit.without(gone), a, b)[0]
    return OL if seen > circuit.profile.meter.top_ohm else seen


def back(number: int) -> str:
    return module_plug_node(BACK, number)


SUPPLY_PIN = module_plug_node(FEED, "right")


def readings(circuit: Circuit) -> dict[str, float]:
    """Return what the table's columns ask for."""
    module, through = (
        ("module_connector",),
        tuple(f"pass_through.{name}" for name in circuit.profile.wiring.connectors),
    )
    cover_feed, cover_back = pass_through_node(FEED, BANK, "cover"), pass_through_node(BACK, (N,), "cover")
    plug = (f"injector_plug.{N}",)
    return {
        "pair": ohms(circuit, SUPPLY_PIN, back(N), module),
        "mate's pair": ohms(circuit, SUPPLY_PIN, back(MATE), module),
        "returns": ohms(circuit, back(N), back(MATE), module),
        "engine return": ohms(circuit, back(N), pass_through_node(BACK, (N,), "engine"), (*module, *through)),
        "engine feed": ohms(circuit, SUPPLY_PIN, pass_through_node(FEED, BANK, "engine"), (*module, *through)),
        "cover pair": ohms(circuit, cover_feed, cover_back, through),
        "cover return": ohms(circuit, cover_back, injector_plug_node(BACK, N), (*through, *plug)),
        "plug": ohms(circuit, f"coil.feed.{N}", f"coil.return.{N}", plug),
        "n to ground": ohms(circuit, back(N), GROUND, module),
        "feed to ground": ohms(circuit, SUPPLY_PIN, GROUND, module),
        "mate to ground": ohms(circuit, back(MATE), GROUND, module),
    }


GOOD = {
    "pair": 3.2, "mate's pair": 3.2, "returns": 6.3, "engine return": 0.1, "engine feed": 0.1, "cover pair": 3.1,
    "cover return": 0.05, "plug": 3.0, "n to ground": OL, "feed to ground": OL, "mate to ground": OL,
}  # fmt: skip


@dataclass(frozen=True)
class Line:
    """One row: the faults, and what reads otherwise than in a good circuit."""

    what: str
    faults: tuple[Fault, ...]
    reads: dict[str, float]


NO_WAY = {"pair": OL, "returns": OL}
TABLE = [
    Line("none", (), {}),
    Line("open, engine harness", (fault(FaultKind.OPEN, E, part=Part.WIRE),), {**NO_WAY, "engine return": OL}),
    Line("open, mating contact at the pass-through connector", (fault(FaultKind.OPEN, P),), NO_WAY),
    Line("open, under-cover wire", (fault(FaultKind.OPEN, U, part=Part.WIRE),),
         {**NO_WAY, "cover pair": OL, "cover return": OL}),
    Line("open, injector plug contact", (fault(FaultKind.OPEN, U, part=Part.CONTACT),), {**NO_WAY, "cover pair": OL}),
    Line("open coil", (fault(FaultKind.OPEN, C, None),), {**NO_WAY, "cover pair": OL, "plug": OL}),
    Line("open shared feed, mating contact", (fault(FaultKind.OPEN, P, FEED, cylinders=BANK),),
         {"pair": OL, "mate's pair": OL}),
    Line("open shared feed, engine wire", (fault(FaultKind.OPEN, E, FEED, cylinders=BANK, part=Part.WIRE),),
         {"pair": OL, "mate's pair": OL, "engine feed": OL}),
    Line("extra 2 Ω in one return, mating contact", (fault(FaultKind.ADDED_RESISTANCE, P, ohm=2.0),),
         {"pair": 5.2, "returns": 8.3}),
    Line("extra 2 Ω in one return, engine wire", (fault(FaultKind.ADDED_RESISTANCE, E, ohm=2.0, part=Part.WIRE),),
         {"pair": 5.2, "returns": 8.3, "engine return": 2.1}),
    Line("extra 2 Ω in one return, under-cover wire",
         (fault(FaultKind.ADDED_RESISTANCE, U, ohm=2.0, part=Part.WIRE),),
         {"pair": 5.2, "returns": 8.3, "cover pair": 5.1, "cover return": 2.05}),
    Line("extra 2 Ω in the shared feed",
         (fault(FaultKind.ADDED_RESISTANCE, E, FEED, 2.0, BANK, Part.WIRE),),
         {"pair": 5.2, "mate's pair": 5.2, "engine feed": 2.1}),
    Line("short across the pair at the pass-through connector, cover half",
         (fault(FaultKind.SHORT_ACROSS_PAIR, P, None, 0.0),), {"pair": 0.2, "returns": 3.3, "cover pair": 0.05}),
    Line("short across the pair under the cover", (fault(FaultKind.SHORT_ACROSS_PAIR, U, None, 0.0),),
         {"pair": 0.2, "returns": 3.3, "cover pair": 0.1}),
    Line("a quarter of the turns shorted", (fault(FaultKind.SHORTED_TURNS, C, None, 0.25),),
         {"pair": 2.5, "returns": 5.6, "cover pair": 2.3, "plug": 2.25}),
    Line("return to ground, under the cover", (fault(FaultKind.SHORT_TO_GROUND, U, ohm=0.1),),
         {"n to ground": 0.2, "feed to ground": 3.3, "mate to ground": 6.3}),
    Line("return to ground, engine harness", (fault(FaultKind.SHORT_TO_GROUND, E, ohm=0.1),),
         {"n to ground": 0.2, "feed to ground": 3.3, "mate to ground": 6.3}),
    Line("feed to ground", (fault(FaultKind.SHORT_TO_GROUND, P, FEED, 0.1, BANK),),
         {"n to ground": 3.25, "feed to ground": 0.2, "mate to ground": 3.25}),
    Line("coil leaking to its body, 1 kΩ", (fault(FaultKind.SHORT_TO_GROUND, C, ohm=1000.0),),
         {"n to ground": 1000.0, "feed to ground": 1003.0, "mate to ground": 1006.0}),
    Line("open return and a chafe of 100 Ω beyond it",
         (fault(FaultKind.OPEN, E, part=Part.WIRE), fault(FaultKind.SHORT_TO_GROUND, U, ohm=100.0)),
         {**NO_WAY, "engine return": OL, "feed to ground": 103.0, "mate to ground": 106.0}),
    Line("return n to return m under the cover", (fault(FaultKind.RETURN_TO_RETURN, U, ohm=0.0, cylinders=(MATE, N)),),
         {"pair": 1.7, "mate's pair": 1.7, "returns": 0.2, "cover pair": 1.6}),
    Line("return to return, other bank", (fault(FaultKind.RETURN_TO_RETURN, E, ohm=0.0, cylinders=(N, OTHER)),), {}),
    Line("crossed returns, same bank", (fault(FaultKind.CROSSED_RETURNS, E, cylinders=(MATE, N)),),
         {"engine return": OL}),
    Line("crossed returns, other bank", (fault(FaultKind.CROSSED_RETURNS, E, cylinders=(N, OTHER)),),
         {**NO_WAY, "engine return": OL}),
    Line("dead return driver", (fault(FaultKind.DEAD_RETURN_DRIVER, M),), {}),
    Line("dead feed driver", (fault(FaultKind.DEAD_FEED_DRIVER, M, FEED, cylinders=BANK),), {}),
    Line("low supply", (fault(FaultKind.LOW_SUPPLY, M, None, cylinders=tuple(range(1, 9))),), {}),
    Line("stuck armature", (fault(FaultKind.STUCK_ARMATURE, A, None),), {}),
    Line("intermittent at rest", (fault(FaultKind.OPEN_WHEN_MOVED, P),), {}),
    Line("film on the mating contact", (fault(FaultKind.FILM_ON_CONTACT, P, ohm=400.0),), {"pair": 403.0, "returns": 406.0}),
    Line("pushed-back pin", (fault(FaultKind.PUSHED_BACK_PIN, P),), NO_WAY),
    Line("chafed wire at rest", (fault(FaultKind.SHORT_WHEN_MOVED, E),), {}),
    Line("carbon track of 12 Ω at the injector plug", (fault(FaultKind.CARBON_BETWEEN_PINS, U, None, 12.0, part=Part.CONTACT),),
         {"pair": 2.6, "returns": 5.7, "cover pair": 2.5}),
    Line("coil of twice the resistance", (fault(FaultKind.WRONG_COIL, C, None, 2.0),),
         {"pair": 6.2, "returns": 9.3, "cover pair": 6.1, "plug": 6.0}),
]  # fmt: skip


@pytest.mark.parametrize("line", TABLE, ids=lambda line: line.what)
def test_what_is_read_with_a_fault_in(line: Line) -> None:
    seen = readings(with_faults(example(), line.faults, Conditions()))
    for column, expected in {**GOOD, **line.reads}.items():
        # the list gives two figures
        assert seen[column] == pytest.approx(expected, abs=0.12, rel=0.01), column


def test_returns_of_two_banks_that_touch_read_as_one_where_nothing_should_be_read() -> None:
    # the list: 0.2 instead of OL; each has 0.03 Ω of wire and a contact to where they touch
    touching = with_faults(
        example(), [fault(FaultKind.RETURN_TO_RETURN, E, ohm=0.0, cylinders=(N, OTHER))], Conditions()
    )
    assert ohms(touching, back(N), back(OTHER), ("module_connector",)) < 0.3
    assert ohms(example(), back(N), back(OTHER), ("module_connector",)) == OL


def test_crossed_returns_end_at_each_others_pin() -> None:
    crossed = with_faults(example(), [fault(FaultKind.CROSSED_RETURNS, E, cylinders=(MATE, N))], Conditions())
    off = ("module_connector", *(f"pass_through.{name}" for name in crossed.profile.wiring.connectors))
    assert ohms(crossed, back(N), pass_through_node(BACK, (MATE,), "engine"), off) == pytest.approx(0.1, abs=0.05)
