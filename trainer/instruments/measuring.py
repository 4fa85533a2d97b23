"""What a learner can ask a meter for: which pins, which plugs must come off, its prices, what it shows."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from typing import Literal

from trainer.circuit.elements import Location, Side
from trainer.circuit.faults import Fault
from trainer.circuit.profile import Profile
from trainer.errors import WrongCallError
from trainer.instruments.bench import (
    MODULE_CONNECTOR,
    Pin,
    Work,
    break_points,
    contacts_of,
    cylinders_at,
    feed_names,
    feed_pin_for,
    halves_of,
)
from trainer.instruments.bench_tests import SUPPLY, Operation, Price
from trainer.instruments.ohmmeter import measure_insulation, measure_ohm
from trainer.instruments.reading import Reading, Slip
from trainer.instruments.under_load import (
    Trace,
    dip_of,
    measure_drop,
    measure_dummy_current,
    measure_supply,
    measure_trace,
)
from trainer.words import numbers, text

What = Literal["pair", "returns", "ground", "wire", "insulation", "drop", "supply", "trace", "dummy"]


@dataclass(frozen=True, slots=True)
class Request:
    """One measurement asked for. `connected` leaves plugs on and `firm` pushes the probe in: both are slips."""

    what: What
    point: str = MODULE_CONNECTOR
    half: str = "harness"
    cylinder: int = 0
    other: int = 0
    side: Side = Side.RETURN
    location: Location = Location.ENGINE_HARNESS
    connected: bool = False
    firm: bool = False
    key_on: bool = False
    nulled: bool = True


@dataclass(frozen=True, slots=True)
class Measured:
    """What a measurement gave and left: the reading, a trace where one was taken, the state, its prices."""

    reading: Reading
    trace: Trace | None
    work: Work
    prices: tuple[Price, ...]


LIVE = {
    "drop": Operation.LOAD_DROP, "supply": Operation.LOAD_DROP, "trace": Operation.CURRENT_TRACE,
    "dummy": Operation.DUMMY_LOAD,
}  # fmt: skip
"""What is measured on the driven engine, and what each is charged as."""


def through_point(profile: Profile, cylinder: int) -> str:
    """Return the pass-through connector of a cylinder as a break point."""
    return f"pass_through.{profile.connector_name_of(cylinder)}"


def plug_point(cylinder: int) -> str:
    """Return the injector's plug as a break point."""
    return f"injector_plug.{cylinder}"


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


def measured(profile: Profile, faults: Sequence[Fault], work: Work, request: Request, seed: int) -> Measured:
    """Carry out a measurement; raises WrongCallError for one that cannot be asked of this engine."""
    check_request(profile, request)
    if request.what in LIVE:
        return _live(profile, faults, work, request, seed)
    pins = pins_of(profile, request)
    points = tuple(dict.fromkeys(pin.break_point for pin in pins if pin is not None))
    prices = access_prices(profile, points)
    if request.what in ("ground", "insulation"):
        prices = (*prices, Price(Operation.PIN_TO_GROUND))
    if not request.connected:
        work = unplugged(profile, work, points)
    if request.what == "insulation":
        assert pins[0] is not None
        reading = measure_insulation(profile, faults, work, pins[0], seed, key_on=request.key_on)
    else:
        first, second = pins
        assert first is not None
        options = {"nulled": request.nulled, "key_on": request.key_on}
        reading = measure_ohm(profile, faults, work, (first, second), seed, **options)
    if request.firm:
        work, reading = _spread(profile, work, pins, reading)
    return Measured(reading, None, work, prices)


def unplugged(profile: Profile, work: Work, points: Sequence[str]) -> Work:
    """Return the work with break points opened, and the covers off that stand over them."""
    covers = {
        profile.bank_of(cylinders_at(profile, point)[0]) for point in points if point.startswith("injector_plug.")
    }
    return replace(work, unplugged=work.unplugged | frozenset(points), covers_off=work.covers_off | covers)


def plugged_back(profile: Profile, work: Work) -> Work:
    """Return the work with every connector on again: their contacts have been re-seated."""
    seated = frozenset(name for point in work.unplugged for name in contacts_of(profile, point))
    conditions = replace(work.conditions, reseated=work.conditions.reseated | seated)
    return replace(work, unplugged=frozenset(), conditions=conditions)


def check_request(profile: Profile, request: Request) -> None:
    """Raise WrongCallError for a measurement that cannot be asked of an engine."""
    if request.point not in break_points(profile):
        raise WrongCallError("no_place", place=request.point, places=", ".join(break_points(profile)))
    if request.half not in halves_of(request.point) and request.what in ("pair", "returns", "ground", "insulation"):
        raise WrongCallError(
            "no_half", point=request.point, half=request.half, halves=", ".join(halves_of(request.point))
        )
    if request.what != "supply" and request.cylinder not in profile.cylinders:
        raise WrongCallError("no_cylinder", cylinder=request.cylinder, cylinders=numbers(profile.cylinders))
    here = cylinders_at(profile, request.point)
    if request.what in ("pair", "returns", "ground", "insulation") and request.cylinder not in here:
        raise WrongCallError("not_here", cylinder=request.cylinder, point=request.point, cylinders=numbers(here))
    if request.what == "returns" and (request.other not in here or request.other == request.cylinder):
        raise WrongCallError("not_here", cylinder=request.other, point=request.point, cylinders=numbers(here))
    if request.what == "wire":
        _ends(profile, request)
    if request.what == "drop":
        drop_pins_of(profile, request)


def pins_of(profile: Profile, request: Request) -> tuple[Pin, Pin | None]:
    """Return the two pins between which a resistance is asked for; None stands for engine ground."""
    number, point, half = request.cylinder, request.point, request.half
    own = Pin(point, half, Side.RETURN, str(number))
    if request.what == "pair":
        return feed_pin_for(profile, point, half, number), own
    if request.what == "returns":
        return own, Pin(point, half, Side.RETURN, str(request.other))
    if request.what == "wire":
        return _ends(profile, request)
    return (own if request.side is Side.RETURN else feed_pin_for(profile, point, half, number)), None


def _ends(profile: Profile, request: Request) -> tuple[Pin, Pin]:
    number, side = request.cylinder, request.side
    through = through_point(profile, number)

    def pin(point: str, half: str) -> Pin:
        return feed_pin_for(profile, point, half, number) if side is Side.FEED else Pin(point, half, side, str(number))

    if request.location is Location.ENGINE_HARNESS:
        return pin(MODULE_CONNECTOR, "harness"), pin(through, "engine")
    if request.location is Location.UNDER_COVER:
        return pin(through, "cover"), pin(plug_point(number), "harness")
    raise WrongCallError("no_wire", place=text(f"location.{request.location}"))


def _live(profile: Profile, faults: Sequence[Fault], work: Work, request: Request, seed: int) -> Measured:
    work = plugged_back(profile, work)
    prices = live_prices(profile, request)
    trace = None
    if request.what == "supply":
        reading = measure_supply(profile, faults, work)
    elif request.what == "drop":
        # a drop is over one wire: returns that were swapped go home for it
        reading = measure_drop(
            profile, faults, replace(work, swapped=()), drop_pins_of(profile, request), request.cylinder
        )
    elif request.what == "dummy":
        loaded = replace(work, dummy_loads=work.dummy_loads | {request.cylinder})
        reading = measure_dummy_current(profile, faults, loaded, request.cylinder)
    else:
        trace = measure_trace(profile, faults, work, request.cylinder, seed)
        dip = dip_of(trace)
        peak = float(trace.current_a.max())
        shown = f"{peak:.1f} A peak, " + (
            "no dip" if dip is None else f"dip of {dip[1]:.1f} A at {dip[0] * 1e3:.2f} ms"
        )
        reading = Reading("trace", round(peak, 1), "ampere", shown)
    return Measured(reading, trace, replace(work, covers_off=work.covers_off | covers_in(prices)), prices)


def covers_in(prices: Iterable[Price]) -> frozenset[str]:
    """Return the banks whose cover comes off for some prices."""
    return frozenset(str(price.at) for price in prices if price.operation is Operation.COVER_OFF)


def live_prices(profile: Profile, request: Request) -> tuple[Price, ...]:
    """Return what a measurement on the driven engine costs: each injector apart, a cover where one is in the way."""
    if request.what == "supply":
        return (Price(Operation.LOAD_DROP, SUPPLY),)
    under = request.what == "dummy"
    if request.what == "drop":
        under = any(pin.break_point.startswith("injector_plug.") for pin in drop_pins_of(profile, request))
    cover = (Price(Operation.COVER_OFF, profile.bank_of(request.cylinder)),) if under else ()
    return (*cover, Price(LIVE[request.what], request.cylinder))


def drop_pins_of(profile: Profile, request: Request) -> tuple[Pin, Pin]:
    """Return the two pins between which a voltage drop is asked for; raises WrongCallError for another place."""
    number, side = request.cylinder, request.side
    through = through_point(profile, number)

    def pin(point: str, half: str) -> Pin:
        return feed_pin_for(profile, point, half, number) if side is Side.FEED else Pin(point, half, side, str(number))

    plug = plug_point(number)
    ends = {
        Location.DRIVE_MODULE: ((MODULE_CONNECTOR, "module"), (MODULE_CONNECTOR, "harness")),
        Location.ENGINE_HARNESS: ((MODULE_CONNECTOR, "module"), (through, "engine")),
        Location.PASS_THROUGH: ((through, "engine"), (through, "cover")),
        Location.UNDER_COVER: ((through, "cover"), (plug, "injector")),
        Location.COIL: ((plug, "harness"), (plug, "injector")),
    }
    if request.location not in ends:
        raise WrongCallError("no_drop", place=text(f"location.{request.location}"))
    first, second = ends[request.location]
    return pin(*first), pin(*second)


def _spread(profile: Profile, work: Work, pins: tuple[Pin, Pin | None], reading: Reading) -> tuple[Work, Reading]:
    names = set()
    for pin in pins:
        if pin is None:
            continue
        contacts = contacts_of(profile, pin.break_point)
        behind = feed_names(profile, pin.break_point)[pin.name] if pin.side is Side.FEED else (int(pin.name),)
        tail = f".contact.{pin.side}.{'-'.join(map(str, behind))}"
        names |= {name for name in contacts if name.endswith(tail)}
    spread = replace(work, spread=work.spread | names)
    return spread, replace(reading, slips=(*reading.slips, Slip.PROBE_PUSHED))
