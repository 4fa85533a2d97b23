"""The tests that a bench can do and what they cost, as values.

Records keep them by id: the name of a kind, or of an operation, and after a colon what it is done at. `str` gives the
id, and the parse functions read it.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from trainer.circuit.elements import Location


class Operation(StrEnum):
    """Everything that costs minutes; a profile gives the minutes of each, a case says which it offers."""

    ACTUATION_TEST = "actuation_test"
    CODES = "codes"
    LOOK = "look"
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


class BenchTestKind(StrEnum):
    """What kind of test it is; the first and the last step of a path, which are no tests, are among them."""

    HEAR = "hear"
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
    LOOK_THROUGH = "look_through"
    LOOK_COVER = "look_cover"
    SUPPLY = "supply"
    TRACE = "trace"
    DROPS = "drops"
    DROPS_COVER = "drops_cover"
    DUMMY = "dummy"
    MOVE = "move"
    HEAT = "heat"
    RESEAT_MODULE = "reseat_module"
    RESEAT = "reseat"
    RESEAT_PLUGS = "reseat_plugs"
    PAIRS_MOVED = "pairs_moved"
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
    BenchTestKind.TRACE_MOVED, BenchTestKind.TRACE_WARM,
})  # fmt: skip
AT_A_CYLINDER = frozenset({
    BenchTestKind.TRACE, BenchTestKind.DROPS, BenchTestKind.DROPS_COVER, BenchTestKind.DUMMY,
    BenchTestKind.LEND_INJECTOR, BenchTestKind.SWAP,
})  # fmt: skip
AT_A_BANK = frozenset({
    BenchTestKind.THROUGH_PAIRS, BenchTestKind.THROUGH_GROUNDS, BenchTestKind.WIRES_ENGINE, BenchTestKind.WIRES_COVER,
    BenchTestKind.ENGINE_ALONE, BenchTestKind.COVER_ALONE, BenchTestKind.PLUG_PAIRS, BenchTestKind.PLUG_GROUNDS,
    BenchTestKind.LOOK_THROUGH, BenchTestKind.LOOK_COVER, BenchTestKind.RESEAT, BenchTestKind.RESEAT_PLUGS,
    BenchTestKind.PAIRS_RESEATED, BenchTestKind.PAIRS_RESEATED_PLUGS,
})  # fmt: skip
"""What each kind is done at; every other kind is done once for the whole engine."""


@dataclass(frozen=True, slots=True)
class BenchTest:
    """One test that the bench can do: its kind, and the location, cylinder or bank that it is done at."""

    kind: BenchTestKind
    at: Location | int | str | None = None

    def __str__(self) -> str:
        return str(self.kind) if self.at is None else f"{self.kind}:{self.at}"


def parse_bench_test(name: str) -> BenchTest:
    """Return the test of an id; raises ValueError for one that this version does not know."""
    family, colon, what = name.partition(":")
    kind = BenchTestKind(family)
    if kind in AT_A_LOCATION:
        return BenchTest(kind, Location(what))
    if kind in AT_A_CYLINDER:
        return BenchTest(kind, int(what))
    if bool(colon) is not (kind in AT_A_BANK):
        raise ValueError(f"no test {name!r}")
    return BenchTest(kind, what or None)


Subject = Location | BenchTest | tuple[int, int] | int | str | None
"""What an operation is charged for: a location, a run of the test, two cylinders, one, a bank, the state of an engine
by its digest, or the engine as such."""

SUPPLY = "supply"
"""The subject of a drop measured on the module's supply, which is no cylinder's."""


@dataclass(frozen=True, slots=True)
class Price:
    """An operation and what it is charged for; the same price is paid once."""

    operation: Operation
    at: Subject = None

    def __str__(self) -> str:
        return str(self.operation) if self.at is None else f"{self.operation}:{self.at}"


_BY_LOCATION = frozenset({Operation.MOVE_HARNESS, Operation.HEAT})
_BY_CYLINDER = frozenset({Operation.CURRENT_TRACE, Operation.DUMMY_LOAD, Operation.INJECTOR_SWAP})


def parse_price(name: str) -> Price:
    """Return the price of an id in a record; raises ValueError for one that this version does not know."""
    family, _colon, at = name.partition(":")
    operation = Operation(family)
    if not at:
        return Price(operation)
    if operation in _BY_LOCATION:
        return Price(operation, Location(at))
    if operation is Operation.SWAP_RETURNS:
        first, _comma, second = at.strip("()").partition(", ")
        return Price(operation, (int(first), int(second)))
    if operation in _BY_CYLINDER or (operation is Operation.LOAD_DROP and at != SUPPLY):
        return Price(operation, int(at))
    return Price(operation, at)
