"""The tests that a bench can do and what they cost, as values.

Records keep them by id: the name of a kind, or of an operation, and after a colon what it is done at. `str` gives the
id, and the parse functions read it.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from enum import StrEnum

from trainer.circuit.elements import Location


class Operation(StrEnum):
    """Everything that costs minutes; a profile gives the minutes of each, a case says which it offers."""

    ACTUATION_TEST = "actuation_test"
    CODES = "codes"
    LOOK = "look"
    PIN_DRAG = "pin_drag"
    MODULE_OHMS = "module_ohms"
    PASS_THROUGH_OHMS = "pass_through_ohms"
    INJECTOR_OHMS = "injector_ohms"
    PIN_TO_GROUND = "pin_to_ground"
    MOVE_HARNESS = "move_harness"
    LOAD_DROP = "load_drop"
    CURRENT_TRACE = "current_trace"
    SWAP_RETURNS = "swap_returns"
    DUMMY_LOAD = "dummy_load"
    HEAT = "heat"
    COVER_OFF = "cover_off"
    MODULE_SUBSTITUTION = "module_substitution"
    INJECTOR_SWAP = "injector_swap"
    REPAIR_WIRE = "repair_wire"
    REPAIR_CONNECTOR = "repair_connector"
    VOLTS_AT_REST = "volts_at_rest"
    LIVE_PREPARATION = "live_preparation"
    CLAMP = "clamp"
    LAMP_LOAD = "lamp_load"
    CRANK = "crank"
    POWER_DROP = "power_drop"
    WARM_RUN = "warm_run"
    CONTRIBUTION = "contribution"
    COMPRESSION = "compression"


USUAL_MINUTES: Mapping[Operation, float] = {
    Operation.VOLTS_AT_REST: 3.0, Operation.LIVE_PREPARATION: 10.0, Operation.CLAMP: 6.0, Operation.LAMP_LOAD: 8.0,
    Operation.CRANK: 5.0, Operation.POWER_DROP: 8.0, Operation.PIN_DRAG: 5.0, Operation.WARM_RUN: 25.0,
    Operation.CONTRIBUTION: 20.0, Operation.COMPRESSION: 15.0,
}  # fmt: skip
"""Operations that early engine files do not price, with what they take there: common practice, no published source."""

_OHMS = (Operation.MODULE_OHMS, Operation.PASS_THROUGH_OHMS, Operation.INJECTOR_OHMS)
BROUGHT_BY: Mapping[Operation, tuple[Operation, ...]] = {
    Operation.VOLTS_AT_REST: _OHMS,
    Operation.LIVE_PREPARATION: (Operation.LOAD_DROP, Operation.DUMMY_LOAD),
    Operation.CLAMP: (Operation.CURRENT_TRACE,),
    Operation.LAMP_LOAD: _OHMS,
    Operation.CRANK: (Operation.LOAD_DROP,),
    Operation.POWER_DROP: (Operation.LOAD_DROP,),
    Operation.PIN_DRAG: (Operation.LOOK,),
    Operation.WARM_RUN: (Operation.HEAT,),
    Operation.CONTRIBUTION: (Operation.ACTUATION_TEST,),
    Operation.COMPRESSION: (Operation.ACTUATION_TEST,),
}
"""Operations that early cases do not name: each is offered with any of the others."""


def with_what_belongs(offered: Iterable[Operation]) -> frozenset[Operation]:
    """Return offered operations with those that go with them."""
    named = frozenset(offered)
    return named | {brought for brought, by in BROUGHT_BY.items() if named & set(by)}


class BenchTestKind(StrEnum):
    """What kind of test it is; the first and the last step of a path, which are no tests, are among them."""

    HEAR = "hear"
    THROUGH_COVER = "through_cover"
    PROBE = "probe"
    CODES = "codes"
    MODULE_PAIRS = "module_pairs"
    MODULE_RETURNS = "module_returns"
    MODULE_GROUNDS = "module_grounds"
    THROUGH_PAIRS = "through_pairs"
    THROUGH_GROUNDS = "through_grounds"
    WIRES_ENGINE = "wires_engine"
    WIRES_COVER = "wires_cover"
    ENGINE_ALONE = "engine_alone"
    COVER_ALONE = "cover_alone"
    PLUG_PAIRS = "plug_pairs"
    PLUG_GROUNDS = "plug_grounds"
    LOOK_MODULE = "look_module"
    LOOK_THROUGH = "look_through"
    LOOK_COVER = "look_cover"
    DRAG_MODULE = "drag_module"
    DRAG_THROUGH = "drag_through"
    DRAG_COVER = "drag_cover"
    MODULE_VOLTS = "module_volts"
    THROUGH_VOLTS = "through_volts"
    PLUG_VOLTS = "plug_volts"
    CRANK = "crank"
    POWER_DROPS = "power_drops"
    CLAMP = "clamp"
    CONTRIBUTION = "contribution"
    COMPRESSION = "compression"
    LAMP_ENGINE = "lamp_engine"
    LAMP_COVER = "lamp_cover"
    ENGINE_INSULATION = "engine_insulation"
    COVER_INSULATION = "cover_insulation"
    SUPPLY = "supply"
    TRACE = "trace"
    DROPS = "drops"
    DROPS_COVER = "drops_cover"
    DUMMY = "dummy"
    MOVE = "move"
    HEAT = "heat"
    WARM_RUN = "warm_run"
    RESEAT_MODULE = "reseat_module"
    RESEAT = "reseat"
    RESEAT_PLUGS = "reseat_plugs"
    PAIRS_MOVED = "pairs_moved"
    GROUNDS_MOVED = "grounds_moved"
    PAIRS_WARM = "pairs_warm"
    PAIRS_RESEATED = "pairs_reseated"
    PAIRS_RESEATED_PLUGS = "pairs_reseated_plugs"
    TRACE_MOVED = "trace_moved"
    TRACE_WARM = "trace_warm"
    LEND_MODULE = "lend_module"
    LEND_INJECTOR = "lend_injector"
    SWAP = "swap"
    COMPLAINT = "complaint"
    REPAIR_AND_RETEST = "repair_and_retest"


AT_A_LOCATION = frozenset({
    BenchTestKind.MOVE, BenchTestKind.HEAT, BenchTestKind.PAIRS_MOVED, BenchTestKind.PAIRS_WARM,
    BenchTestKind.GROUNDS_MOVED, BenchTestKind.TRACE_MOVED, BenchTestKind.TRACE_WARM,
})  # fmt: skip
AT_A_CYLINDER = frozenset({
    BenchTestKind.TRACE, BenchTestKind.DROPS, BenchTestKind.DROPS_COVER, BenchTestKind.DUMMY,
    BenchTestKind.LEND_INJECTOR, BenchTestKind.SWAP,
})  # fmt: skip
AT_A_BANK = frozenset({
    BenchTestKind.LAMP_ENGINE, BenchTestKind.LAMP_COVER, BenchTestKind.ENGINE_INSULATION,
    BenchTestKind.COVER_INSULATION, BenchTestKind.PROBE, BenchTestKind.THROUGH_VOLTS, BenchTestKind.PLUG_VOLTS,
    BenchTestKind.THROUGH_PAIRS, BenchTestKind.THROUGH_GROUNDS, BenchTestKind.WIRES_ENGINE, BenchTestKind.WIRES_COVER,
    BenchTestKind.ENGINE_ALONE, BenchTestKind.COVER_ALONE, BenchTestKind.PLUG_PAIRS, BenchTestKind.PLUG_GROUNDS,
    BenchTestKind.LOOK_THROUGH, BenchTestKind.LOOK_COVER, BenchTestKind.DRAG_THROUGH, BenchTestKind.DRAG_COVER,
    BenchTestKind.RESEAT, BenchTestKind.RESEAT_PLUGS,
    BenchTestKind.PAIRS_RESEATED, BenchTestKind.PAIRS_RESEATED_PLUGS,
})  # fmt: skip
"""What each kind is done at; every other kind is done once for the whole engine."""


@dataclass(frozen=True, slots=True)
class Spot:
    """What is moved or warmed: a location, of the whole engine or under one bank's cover."""

    location: Location
    bank: str = ""

    def __str__(self) -> str:
        return f"{self.location}/{self.bank}" if self.bank else str(self.location)


def _parse_spot(name: str) -> Spot:
    location, _slash, bank = name.partition("/")
    return Spot(Location(location), bank)


@dataclass(frozen=True, slots=True)
class BenchTest:
    """One test that the bench can do: its kind, what it is done at, and the how many-th try it is."""

    kind: BenchTestKind
    at: Spot | int | str | None = None
    number: int = 1

    def __str__(self) -> str:
        name = str(self.kind) if self.at is None else f"{self.kind}:{self.at}"
        return name if self.number == 1 else f"{name}#{self.number}"


def parse_bench_test(name: str) -> BenchTest:
    """Return the test of an id; raises ValueError for one that this version does not know."""
    whole, _hash, number = name.partition("#")
    family, colon, what = whole.partition(":")
    kind = BenchTestKind(family)
    if kind in AT_A_LOCATION:
        return BenchTest(kind, _parse_spot(what), int(number or 1))
    if kind in AT_A_CYLINDER:
        return BenchTest(kind, int(what))
    if bool(colon) is not (kind in AT_A_BANK) and name != BenchTestKind.PROBE:  # of every bank, in early records
        raise ValueError(f"no test {name!r}")
    return BenchTest(kind, what or None)


Subject = Spot | BenchTest | tuple[int, int] | int | str | None
"""What an operation is charged for: a spot, a run of the test, two cylinders, one, a bank, the state of an engine
by its digest, or the engine as such."""

SUPPLY = "supply"
"""The subject of a drop measured on the module's supply, which is no cylinder's."""


@dataclass(frozen=True, slots=True)
class Price:
    """An operation and what it is charged for; the same price is paid once.

    `number` tells a try from earlier ones, `times` is how many times the operation's minutes it takes.
    """

    operation: Operation
    at: Subject = None
    number: int = 1
    times: int = 1

    def __str__(self) -> str:
        name = str(self.operation) if self.at is None else f"{self.operation}:{self.at}"
        return name if (self.number, self.times) == (1, 1) else f"{name}#{self.number}x{self.times}"


_BY_LOCATION = frozenset({Operation.MOVE_HARNESS, Operation.HEAT})
_BY_CYLINDER = frozenset({Operation.CURRENT_TRACE, Operation.DUMMY_LOAD, Operation.INJECTOR_SWAP})


def parse_price(name: str) -> Price:
    """Return the price of an id in a record; raises ValueError for one that this version does not know."""
    whole, _hash, tried = name.partition("#")
    family, _colon, at = whole.partition(":")
    operation = Operation(family)
    if not at:
        return Price(operation)
    if operation in _BY_LOCATION:
        number, _x, times = tried.partition("x")
        return Price(operation, _parse_spot(at), int(number or 1), int(times or 1))
    if operation is Operation.SWAP_RETURNS:
        first, _comma, second = at.strip("()").partition(", ")
        return Price(operation, (int(first), int(second)))
    if operation in _BY_CYLINDER or (operation is Operation.LOAD_DROP and at != SUPPLY):
        return Price(operation, int(at))
    return Price(operation, at)
