"""The tests that an engine offers, each with its prices and the questions it answers."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence
from dataclasses import replace

from trainer.circuit.drive import slots_of
from trainer.circuit.elements import Location, Side
from trainer.circuit.fault import Conditions
from trainer.circuit.profile import Profile
from trainer.instruments.bench import MODULE_CONNECTOR, Pin, Work, contacts_of, cylinders_at, feed_names
from trainer.instruments.bench_tests import BenchTest, Operation, Price
from trainer.instruments.bench_tests import BenchTestKind as Kind
from trainer.instruments.charges import access_prices, drag_prices, live_prices
from trainer.instruments.measuring import unplugged
from trainer.instruments.requests import (
    POWER_DROPS,
    Request,
    drop_pins_of,
    next_driven,
    pins_of,
    plug_point,
    through_point,
)
from trainer.instruments.tries import MOVE
from trainer.reasoning.universe.planned_tries import tries_worth_planning
from trainer.reasoning.universe.questions import Question, Test
from trainer.sound.places import ON, THROUGH

WHOLE = Price(Operation.ACTUATION_TEST, BenchTest(Kind.HEAR))
"""The price of the whole test on an engine as it came."""


def menu_of(profile: Profile, temperature_c: float) -> tuple[Test, ...]:
    """Return every test that can be done next on an engine as it came."""
    begin = Work(conditions=Conditions(temperature_c=temperature_c))
    return (
        *_listening(profile, begin),
        *_at_the_module(profile, begin),
        *_at_rest(profile, begin),
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


def clamp_question(work: Work, cylinder: int, driven: int) -> Question:
    """Return the question of the current in a return while another cylinder is driven."""
    return Question("clamp", work, slot=driven, pins=(Pin(MODULE_CONNECTOR, "harness", Side.RETURN, str(cylinder)),))


def _heard(profile: Profile, work: Work, place: str = "front") -> tuple[Question, ...]:
    return tuple(Question("slot", work, slot=slot.number, place=place) for slot in slots_of(profile))


def _listening(profile: Profile, begin: Work) -> Iterator[Test]:
    yield Test(BenchTest(Kind.HEAR), (WHOLE,), True, _heard(profile, begin))
    through = tuple(Question("slot", begin, slot=n, place=f"{THROUGH} {n}") for n in profile.cylinders)
    yield Test(BenchTest(Kind.THROUGH_COVER), (), True, through, needs=(WHOLE,))
    for bank, numbers in profile.banks.items():
        probed = tuple(Question("slot", begin, slot=n, place=f"{ON} {n}") for n in sorted(numbers))
        cover = (Price(Operation.COVER_OFF, bank),)
        yield Test(BenchTest(Kind.PROBE, bank), cover, True, probed, needs=(WHOLE,))
    yield Test(BenchTest(Kind.CODES), (Price(Operation.CODES),), True, (Question("codes", begin),), needs=(WHOLE,))


def _ohms(
    profile: Profile, begin: Work, requests: Sequence[Request], also: Sequence[str] = ()
) -> tuple[tuple[Question, ...], tuple[Price, ...]]:
    """Return the questions of resistances with all their plugs off, and what access to them costs."""
    pins = [pins_of(profile, request) for request in requests]
    points = tuple(dict.fromkeys([*also, *(pin.break_point for pair in pins for pin in pair if pin is not None)]))
    work = unplugged(profile, begin, points).electrical()
    return tuple(Question("ohms", work, pins=pair) for pair in pins), (*access_prices(profile, points), PROVED_DEAD)


PROVED_DEAD = Price(Operation.VOLTS_AT_REST)
"""What comes before every reading of a dead circuit, once after each time that it was driven."""


def _volts(
    profile: Profile, begin: Work, points: Sequence[str], halves: Sequence[str], cylinders: Sequence[int], *, off: bool
) -> tuple[tuple[Question, ...], tuple[Price, ...]]:
    """Return the questions of volts at rest at break points, with their plugs on or off, and their prices."""
    work = (unplugged(profile, begin, points) if off else begin).electrical()
    pins = [
        pins_of(profile, Request("volts", point, half, number, side=side))
        for point in points
        for half in halves
        for side in Side
        for number in cylinders
        if number in cylinders_at(profile, point)
    ]
    asked = tuple(dict.fromkeys(Question("volts", work, pins=pair) for pair in pins))
    return asked, (*access_prices(profile, points), PROVED_DEAD)


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
    yield from _examined(profile, begin, BenchTest(Kind.LOOK_MODULE), BenchTest(Kind.DRAG_MODULE), (point,))


def _examined(
    profile: Profile, begin: Work, looked: BenchTest, felt: BenchTest, points: Sequence[str]
) -> Iterator[Test]:
    """Yield a look at the terminals of some connectors, and a matching pin drawn through each of them."""
    opened, access = unplugged(profile, begin, points), access_prices(profile, points)
    yield Test(looked, (*access, Price(Operation.LOOK)), False, (Question("look", opened),))
    yield Test(felt, (*access, *drag_prices(points)), False, (Question("drag", opened),))


def _at_rest(profile: Profile, begin: Work) -> Iterator[Test]:
    """Yield volts at rest: at the module with everything plugged, further on with the plug off, at both its halves."""
    volts, prices = _volts(profile, begin, (MODULE_CONNECTOR,), ("harness",), profile.cylinders, off=False)
    yield Test(BenchTest(Kind.MODULE_VOLTS), prices, False, volts)
    for bank, row in profile.banks.items():
        numbers = tuple(sorted(row))
        through = tuple(dict.fromkeys(through_point(profile, n) for n in numbers))
        volts, prices = _volts(profile, begin, through, ("engine", "cover"), numbers, off=True)
        yield Test(BenchTest(Kind.THROUGH_VOLTS, bank), prices, False, volts)
        plugs_off = tuple(plug_point(n) for n in numbers)
        volts, prices = _volts(profile, begin, plugs_off, ("harness", "injector"), numbers, off=True)
        yield Test(BenchTest(Kind.PLUG_VOLTS, bank), prices, False, volts)


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
        lamps = tuple(replace(question, kind="lamp") for question in wires)
        lit = Kind.LAMP_ENGINE if kind is Kind.WIRES_ENGINE else Kind.LAMP_COVER
        yield Test(BenchTest(lit, bank), (*prices, Price(Operation.LAMP_LOAD)), False, lamps)
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
    covered += [Request("pair", through_point(profile, n), "cover", n) for n in numbers]
    alone, prices = _ohms(profile, begin, covered, tuple(plug_point(n) for n in numbers))
    yield Test(BenchTest(Kind.COVER_ALONE, bank), (*prices, Price(Operation.PIN_TO_GROUND)), False, alone)

    plugs_off = tuple(plug_point(n) for n in numbers)
    at_through = {n: (through_point(profile, n), "cover") for n in numbers}
    for kind, at, off in (
        (Kind.ENGINE_INSULATION, dict.fromkeys(numbers, (MODULE_CONNECTOR, "harness")), through),
        (Kind.COVER_INSULATION, at_through, plugs_off),
    ):
        apart = [
            Request("insulation", *at[n], n, other)
            for n in numbers
            for other in numbers
            if other > n and at[other] == at[n]
        ]
        if not apart:  # each connector serves one injector
            continue
        tested, prices = _ohms(profile, begin, apart, off)
        tested = tuple(replace(question, kind="insulation") for question in tested)
        yield Test(BenchTest(kind, bank), (*prices, Price(Operation.PIN_TO_GROUND)), False, tested)

    looked, felt = BenchTest(Kind.LOOK_THROUGH, bank), BenchTest(Kind.DRAG_THROUGH, bank)
    yield from _examined(profile, begin, looked, felt, through)
    looked, felt = BenchTest(Kind.LOOK_COVER, bank), BenchTest(Kind.DRAG_COVER, bank)
    yield from _examined(profile, begin, looked, felt, plugs_off)


def _driven(profile: Profile, begin: Work) -> Iterator[Test]:
    yield Test(BenchTest(Kind.SUPPLY), live_prices(profile, Request("supply")), True, (Question("supply", begin),))
    yield Test(BenchTest(Kind.CRANK), live_prices(profile, Request("crank")), True, (Question("crank", begin),))
    drops = tuple(Question(what, begin) for what in POWER_DROPS)
    yield Test(BenchTest(Kind.POWER_DROPS), live_prices(profile, Request("plus_drop")), True, drops)
    running = (Price(Operation.CONTRIBUTION),), (Question("contribution", begin),)
    yield Test(BenchTest(Kind.CONTRIBUTION), running[0], True, running[1])
    cranked = (Price(Operation.COMPRESSION),), (Question("compression", begin),)
    yield Test(BenchTest(Kind.COMPRESSION), cranked[0], True, cranked[1])
    clamped = tuple(clamp_question(begin, number, next_driven(profile, number)) for number in profile.cylinders)
    yield Test(BenchTest(Kind.CLAMP), (Price(Operation.CLAMP),), True, clamped)
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
    warm = BenchTest(Kind.WARM_RUN)
    heard = _heard(profile, replace(begin, ran_warm=True))
    yield Test(warm, (Price(Operation.WARM_RUN), _run(warm)), True, heard)
    for one in tries_worth_planning(profile, begin):
        test = BenchTest(Kind.MOVE if one.how == MOVE else Kind.HEAT, one.spot, one.number)
        yield Test(test, (*one.prices, _run(test)), True, _heard(profile, one.work), needs=one.needs)
        if one.how == MOVE:
            off = unplugged(profile, one.work, (MODULE_CONNECTOR,)).electrical()
            asked = _grounds(profile, MODULE_CONNECTOR, "harness", profile.cylinders)
            grounds = tuple(Question("ohms", off, pins=pins_of(profile, each), captured=True) for each in asked)
            prices = (*one.prices, Price(Operation.MODULE_OHMS), Price(Operation.PIN_TO_GROUND), PROVED_DEAD)
            yield Test(BenchTest(Kind.GROUNDS_MOVED, one.spot, one.number), prices, False, grounds, needs=one.needs)
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


def _pairs_in(profile: Profile, work: Work, *, captured: bool = False) -> tuple[Question, ...]:
    """Return the pairs at the module plug with the engine in some state."""
    requests = [Request("pair", MODULE_CONNECTOR, "harness", n) for n in profile.cylinders]
    off = unplugged(profile, work, (MODULE_CONNECTOR,)).electrical()
    return tuple(Question("ohms", off, pins=pins_of(profile, request), captured=captured) for request in requests)


def _read_while_provoked(profile: Profile, begin: Work, cylinders: Sequence[int]) -> Iterator[Test]:
    """Yield readings for intermittent faults, taken while a place is provoked or after a connector was reseated.

    Ohms at the module plug while a place is moved or warm, or after plugs were off and on; traces in the same states
    for what the module's plug takes out of the meter's sight when it is off.
    """
    traced = tuple(price for n in cylinders for price in live_prices(profile, Request("trace", cylinder=n)))
    near = {profile.bank_of(number) for number in cylinders}
    for one in tries_worth_planning(profile, begin):
        if one.spot.bank and one.spot.bank not in near:
            continue
        moved = one.how == MOVE
        ohms = (*one.prices, Price(Operation.MODULE_OHMS), PROVED_DEAD)
        pairs = BenchTest(Kind.PAIRS_MOVED if moved else Kind.PAIRS_WARM, one.spot, one.number)
        yield Test(pairs, ohms, False, _pairs_in(profile, one.work, captured=moved), needs=one.needs)
        traces = tuple(Question("trace", one.work, slot=number) for number in cylinders)
        trace = BenchTest(Kind.TRACE_MOVED if moved else Kind.TRACE_WARM, one.spot, one.number)
        yield Test(trace, (*one.prices, *traced), True, traces, needs=one.needs)
    again = {Kind.RESEAT: Kind.PAIRS_RESEATED, Kind.RESEAT_PLUGS: Kind.PAIRS_RESEATED_PLUGS}
    for test, points in _plugs(profile):
        seated = frozenset(contact for point in points for contact in contacts_of(profile, point))
        work = replace(begin, conditions=replace(begin.conditions, reseated=seated))
        if test.at in {profile.bank_of(number) for number in cylinders}:
            prices = (*access_prices(profile, points), Price(Operation.MODULE_OHMS), PROVED_DEAD)
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
