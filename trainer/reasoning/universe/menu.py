"""The tests that an engine offers, each with its prices and the questions it answers."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence
from dataclasses import replace

from trainer.circuit.drive import slots_of
from trainer.circuit.elements import Location, Side
from trainer.circuit.faults import Conditions
from trainer.circuit.profile import Profile
from trainer.instruments.bench import MODULE_CONNECTOR, Work, contacts_of, feed_names
from trainer.instruments.bench_tests import SUPPLY, BenchTest, Operation, Price
from trainer.instruments.bench_tests import BenchTestKind as Kind
from trainer.instruments.measuring import (
    Request,
    access_prices,
    drop_pins_of,
    live_prices,
    pins_of,
    plug_point,
    through_point,
    unplugged,
)
from trainer.reasoning.universe.questions import Question, Test

WIRING = (Location.ENGINE_HARNESS, Location.PASS_THROUGH, Location.UNDER_COVER)

WHOLE = Price(Operation.ACTUATION_TEST, BenchTest(Kind.HEAR))
"""The price of the whole test on an engine as it came."""


def menu_of(profile: Profile, temperature_c: float) -> tuple[Test, ...]:
    """Return every test that can be done next on an engine as it came."""
    begin = Work(conditions=Conditions(temperature_c=temperature_c))
    return (
        *_listening(profile, begin),
        *_at_the_module(profile, begin),
        *(test for bank in profile.banks for test in _at_a_bank(profile, begin, bank)),
        *_driven(profile, begin),
        *_provoked(profile, begin),
    )


def offered(menu: Sequence[Test], evidence: Collection[Operation]) -> tuple[Test, ...]:
    """Return the tests whose every price is among those that a case offers."""
    return tuple(test for test in menu if test.operations <= set(evidence))


def _run(test: BenchTest) -> Price:
    """Return the price of the run that a test makes for itself."""
    return Price(Operation.ACTUATION_TEST, test)


def _heard(profile: Profile, work: Work, place: str = "front") -> tuple[Question, ...]:
    return tuple(Question("slot", work, slot=slot.number, place=place) for slot in slots_of(profile))


def _listening(profile: Profile, begin: Work) -> Iterator[Test]:
    yield Test(BenchTest(Kind.HEAR), (WHOLE,), True, _heard(profile, begin))
    probed = tuple(Question("slot", begin, slot=n, place=f"probe {n}") for n in profile.cylinders)
    yield Test(BenchTest(Kind.PROBE), (), True, probed, needs=(WHOLE,))
    yield Test(BenchTest(Kind.CODES), (Price(Operation.CODES),), True, (Question("codes", begin),), needs=(WHOLE,))


def _ohms(
    profile: Profile, begin: Work, requests: Sequence[Request], also: Sequence[str] = ()
) -> tuple[tuple[Question, ...], tuple[Price, ...]]:
    """Return the questions of resistances with all their plugs off, and what access to them costs."""
    pins = [pins_of(profile, request) for request in requests]
    points = tuple(dict.fromkeys([*also, *(pin.break_point for pair in pins for pin in pair if pin is not None)]))
    work = unplugged(profile, begin, points).electrical()
    return tuple(Question("ohms", work, pins=pair) for pair in pins), access_prices(profile, points)


def _grounds(profile: Profile, point: str, half: str, cylinders: Sequence[int]) -> list[Request]:
    returns = [Request("ground", point, half, number) for number in cylinders]
    feeds = [
        Request("ground", point, half, behind[0], side=Side.FEED) for behind in feed_names(profile, point).values()
    ]
    return [*returns, *feeds]


def _at_the_module(profile: Profile, begin: Work) -> Iterator[Test]:
    point, numbers = MODULE_CONNECTOR, profile.cylinders
    pairs, prices = _ohms(profile, begin, [Request("pair", point, "harness", n) for n in numbers])
    yield Test(BenchTest(Kind.MODULE_PAIRS), prices, False, pairs)
    following = (*numbers[1:], numbers[0])
    between = [Request("returns", point, "harness", n, other) for n, other in zip(numbers, following, strict=True)]
    returns, prices = _ohms(profile, begin, between)
    yield Test(BenchTest(Kind.MODULE_RETURNS), prices, False, returns)
    grounds, prices = _ohms(profile, begin, _grounds(profile, point, "harness", numbers))
    yield Test(BenchTest(Kind.MODULE_GROUNDS), (*prices, Price(Operation.PIN_TO_GROUND)), False, grounds)


def _at_a_bank(profile: Profile, begin: Work, bank: str) -> Iterator[Test]:
    numbers = tuple(sorted(profile.banks[bank]))
    through = tuple(dict.fromkeys(through_point(profile, n) for n in numbers))
    pairs, prices = _ohms(profile, begin, [Request("pair", through_point(profile, n), "cover", n) for n in numbers])
    yield Test(BenchTest(Kind.THROUGH_PAIRS, bank), prices, False, pairs)
    here = [
        request
        for point in through
        for request in _grounds(profile, point, "cover", [n for n in numbers if through_point(profile, n) == point])
    ]
    grounds, prices = _ohms(profile, begin, here)
    yield Test(BenchTest(Kind.THROUGH_GROUNDS, bank), (*prices, Price(Operation.PIN_TO_GROUND)), False, grounds)
    for kind, location in ((Kind.WIRES_ENGINE, Location.ENGINE_HARNESS), (Kind.WIRES_COVER, Location.UNDER_COVER)):
        ends = [Request("wire", cylinder=n, side=side, location=location) for n in numbers for side in Side]
        wires, prices = _ohms(profile, begin, ends)
        yield Test(BenchTest(kind, bank), prices, False, wires)
    loose = [Request("ground", MODULE_CONNECTOR, "harness", n) for n in numbers]
    outputs = dict.fromkeys(profile.output_of(n) for n in numbers)
    loose += [
        Request("ground", MODULE_CONNECTOR, "harness", profile.wiring.outputs[name][0], side=Side.FEED)
        for name in outputs
    ]
    loose += [
        Request("returns", MODULE_CONNECTOR, "harness", n, other)
        for n in numbers
        for other in profile.cylinders
        if other > n or profile.bank_of(other) != bank
    ]
    engine, prices = _ohms(profile, begin, loose, through)
    yield Test(BenchTest(Kind.ENGINE_ALONE, bank), (*prices, Price(Operation.PIN_TO_GROUND)), False, engine)
    plugs, prices = _ohms(profile, begin, [Request("pair", plug_point(n), "injector", n) for n in numbers])
    yield Test(BenchTest(Kind.PLUG_PAIRS, bank), prices, False, plugs)
    coils = [
        Request("ground", plug_point(n), "injector", n, side=side) for n in numbers for side in (Side.RETURN, Side.FEED)
    ]
    leaks, prices = _ohms(profile, begin, coils)
    yield Test(BenchTest(Kind.PLUG_GROUNDS, bank), (*prices, Price(Operation.PIN_TO_GROUND)), False, leaks)
    covered = [Request("ground", through_point(profile, n), "cover", n, side=side) for n in numbers for side in Side]
    covered += [
        Request("returns", through_point(profile, n), "cover", n, other)
        for n in numbers
        for other in profile.connector_of(n).injectors
        if other > n
    ]
    alone, prices = _ohms(profile, begin, covered, tuple(plug_point(n) for n in numbers))
    yield Test(BenchTest(Kind.COVER_ALONE, bank), (*prices, Price(Operation.PIN_TO_GROUND)), False, alone)

    opened = unplugged(profile, begin, through)
    prices = (*access_prices(profile, through), Price(Operation.LOOK))
    yield Test(BenchTest(Kind.LOOK_THROUGH, bank), prices, False, (Question("look", opened),))
    plugs_off = tuple(plug_point(n) for n in numbers)
    bare = unplugged(profile, begin, plugs_off)
    prices = (*access_prices(profile, plugs_off), Price(Operation.LOOK))
    yield Test(BenchTest(Kind.LOOK_COVER, bank), prices, False, (Question("look", bare),))


def _driven(profile: Profile, begin: Work) -> Iterator[Test]:
    yield Test(BenchTest(Kind.SUPPLY), (Price(Operation.LOAD_DROP, SUPPLY),), True, (Question("supply", begin),))
    outside = (Location.DRIVE_MODULE, Location.ENGINE_HARNESS, Location.PASS_THROUGH)
    for number in profile.cylinders:
        trace = Request("trace", cylinder=number)
        traced = (Question("trace", begin, slot=number),)
        yield Test(BenchTest(Kind.TRACE, number), live_prices(profile, trace), True, traced)
        for kind, places in ((Kind.DROPS, outside), (Kind.DROPS_COVER, (Location.UNDER_COVER, Location.COIL))):
            requests = [
                Request("drop", cylinder=number, side=side, location=place) for place in places for side in Side
            ]
            prices = tuple(dict.fromkeys(price for request in requests for price in live_prices(profile, request)))
            questions = tuple(
                Question("drop", begin, slot=number, pins=drop_pins_of(profile, request)) for request in requests
            )
            yield Test(BenchTest(kind, number), prices, True, questions)


def _plugs(profile: Profile) -> Iterator[tuple[BenchTest, list[str]]]:
    """Yield what can be taken off and on again in one go: the module's plug, a bank's connectors, a bank's plugs."""
    yield BenchTest(Kind.RESEAT_MODULE), [MODULE_CONNECTOR]
    for bank, numbers in profile.banks.items():
        yield BenchTest(Kind.RESEAT, bank), list(dict.fromkeys(through_point(profile, n) for n in numbers))
        yield BenchTest(Kind.RESEAT_PLUGS, bank), [plug_point(n) for n in numbers]


def _provoked(profile: Profile, begin: Work) -> Iterator[Test]:
    for location in WIRING:
        work = replace(begin, conditions=replace(begin.conditions, moved=location))
        test = BenchTest(Kind.MOVE, location)
        yield Test(test, (Price(Operation.MOVE_HARNESS, location), _run(test)), True, _heard(profile, work))
    for location in (*WIRING, Location.COIL):
        work = replace(begin, conditions=replace(begin.conditions, heated=location))
        test = BenchTest(Kind.HEAT, location)
        yield Test(test, (Price(Operation.HEAT, location), _run(test)), True, _heard(profile, work))
    for test, points in _plugs(profile):
        seated = frozenset(contact for point in points for contact in contacts_of(profile, point))
        work = replace(begin, conditions=replace(begin.conditions, reseated=seated))
        opens = access_prices(profile, points)
        yield Test(test, (_run(test),), True, _heard(profile, work), opens=opens)
    lent = replace(begin, replaced=frozenset({(Location.DRIVE_MODULE, 0)}))
    test = BenchTest(Kind.LEND_MODULE)
    yield Test(test, (Price(Operation.MODULE_SUBSTITUTION), _run(test)), True, _heard(profile, lent))
    for number in profile.cylinders:
        lent = replace(begin, replaced=frozenset({(Location.COIL, number)}))
        test = BenchTest(Kind.LEND_INJECTOR, number)
        yield Test(test, (Price(Operation.INJECTOR_SWAP, number), _run(test)), True, _heard(profile, lent))


def _pairs_in(profile: Profile, work: Work) -> tuple[Question, ...]:
    """Return the pairs at the module plug with the engine in some state."""
    requests = [Request("pair", MODULE_CONNECTOR, "harness", n) for n in profile.cylinders]
    off = unplugged(profile, work, (MODULE_CONNECTOR,)).electrical()
    return tuple(Question("ohms", off, pins=pins_of(profile, request)) for request in requests)


def _read_while_provoked(profile: Profile, begin: Work, cylinders: Sequence[int]) -> Iterator[Test]:
    """Yield readings for intermittent faults, taken while a place is provoked or after a connector was reseated.

    Ohms at the module plug while a place is moved or warm, or after plugs were off and on; traces in the same states
    for what the module's plug takes out of the meter's sight when it is off.
    """
    at_rest = begin.conditions
    moved, warm = (Kind.PAIRS_MOVED, Kind.TRACE_MOVED), (Kind.PAIRS_WARM, Kind.TRACE_WARM)
    states = [(Operation.MOVE_HARNESS, moved, place, replace(at_rest, moved=place)) for place in WIRING]
    states += [(Operation.HEAT, warm, place, replace(at_rest, heated=place)) for place in (*WIRING, Location.COIL)]
    for operation, (pairs, trace), place, conditions in states:
        work, price = replace(begin, conditions=conditions), Price(operation, place)
        ohms = (price, Price(Operation.MODULE_OHMS))
        yield Test(BenchTest(pairs, place), ohms, False, _pairs_in(profile, work))
        traces = tuple(Question("trace", work, slot=number) for number in cylinders)
        traced = tuple(price for n in cylinders for price in live_prices(profile, Request("trace", cylinder=n)))
        yield Test(BenchTest(trace, place), (price, *traced), True, traces)
    again = {Kind.RESEAT: Kind.PAIRS_RESEATED, Kind.RESEAT_PLUGS: Kind.PAIRS_RESEATED_PLUGS}
    for test, points in _plugs(profile):
        seated = frozenset(contact for point in points for contact in contacts_of(profile, point))
        work = replace(begin, conditions=replace(begin.conditions, reseated=seated))
        if test.at in {profile.bank_of(number) for number in cylinders}:
            prices = (*access_prices(profile, points), Price(Operation.MODULE_OHMS))
            yield Test(BenchTest(again[test.kind], test.at), prices, False, _pairs_in(profile, work))


def closer_tests(profile: Profile, temperature_c: float, cylinders: Sequence[int]) -> tuple[Test, ...]:
    """Return tests that are worth thinking of once a few cylinders are left.

    The swap of a return with the next one's on the same feed, heard in both slots; a dummy load for the injector;
    readings while a place is moved or warm, or after plugs were off and on.
    """
    begin = Work(conditions=Conditions(temperature_c=temperature_c))
    tests, pairs = list(_read_while_provoked(profile, begin, cylinders)), set()
    for number in cylinders:
        loaded = replace(begin, dummy_loads=frozenset({number}))
        prices = live_prices(profile, Request("dummy", cylinder=number))
        tests.append(Test(BenchTest(Kind.DUMMY, number), prices, True, (Question("dummy", loaded, slot=number),)))
        row = profile.wiring.outputs[profile.output_of(number)]
        other = row[(row.index(number) + 1) % len(row)]
        if other == number:
            continue
        pair = (min(number, other), max(number, other))
        if pair in pairs:
            continue
        pairs.add(pair)
        work = replace(begin, swapped=(pair,))
        test = BenchTest(Kind.SWAP, number)
        prices = (Price(Operation.SWAP_RETURNS, pair), _run(test))
        tests.append(Test(test, prices, True, tuple(Question("slot", work, slot=n) for n in pair)))
    return tuple(tests)
