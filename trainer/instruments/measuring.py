"""What a learner can ask a meter for: which pins, which plugs must come off, its prices, what it shows."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from typing import Literal

from trainer.circuit.chance import Stream
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
from trainer.instruments.bench_tests import SUPPLY, Operation, Price, Spot
from trainer.instruments.ohmmeter import DEAD_BELOW_V, measure_insulation, measure_ohm, measure_volts
from trainer.instruments.on_battery import measure_crank, measure_lamp
from trainer.instruments.reading import Reading, Slip
from trainer.instruments.tries import GLANCE, MOVE, TIMES, UNDER_COVER, How, Try
from trainer.instruments.under_load import (
    Trace,
    dip_of,
    measure_clamp,
    measure_drop,
    measure_dummy_current,
    measure_supply,
    measure_trace,
)
from trainer.words import numbers, text

What = Literal[
    "pair",
    "returns",
    "ground",
    "wire",
    "insulation",
    "volts",
    "lamp",
    "crank",
    "drop",
    "supply",
    "trace",
    "clamp",
    "dummy",
]


@dataclass(frozen=True, slots=True)
class Request:
    """One measurement asked for. `connected` leaves plugs on and `firm` pushes the probe in: both are slips.

    `other` is a second return, or for a clamp the cylinder that is driven. `captured` has the meter keep the least and
    the most while something is moved. `at_once` does not wait for the module to discharge: a slip too.
    """

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
    captured: bool = False
    at_once: bool = False


@dataclass(frozen=True, slots=True)
class Measured:
    """What a measurement gave and left: the reading, a trace where one was taken, the state, its prices."""

    reading: Reading
    trace: Trace | None
    work: Work
    prices: tuple[Price, ...]


AT_A_POINT = ("pair", "returns", "ground", "insulation", "volts")
"""What is measured at one break point."""

LIVE = {
    "drop": Operation.LOAD_DROP, "supply": Operation.LOAD_DROP, "trace": Operation.CURRENT_TRACE,
    "dummy": Operation.DUMMY_LOAD, "clamp": Operation.CLAMP, "crank": Operation.CRANK,
}  # fmt: skip
"""What is measured on the driven engine, and what each is charged as."""


def through_point(profile: Profile, cylinder: int) -> str:
    """Return the pass-through connector of a cylinder as a break point."""
    return f"pass_through.{profile.connector_of(cylinder).name}"


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
    if request.what == "volts":
        prices = (*prices, Price(Operation.VOLTS_AT_REST))
    if request.what == "lamp":
        prices = (*prices, Price(Operation.LAMP_LOAD))
    if request.connected or request.what == "volts":
        prices = (*prices, *_cover_prices(profile, request, pins))
        work = replace(work, covers_off=work.covers_off | covers_in(prices))
    else:
        work = unplugged(profile, work, points)
    if request.what == "volts":
        assert pins[0] is not None
        reading = measure_volts(profile, faults, work, (pins[0], pins[1]), at_once=request.at_once)
        work = replace(work, proved_dead=work.proved_dead or proves_dead(reading))
    elif request.what == "insulation":
        assert pins[0] is not None
        reading = measure_insulation(profile, faults, work, (pins[0], pins[1]), seed, key_on=request.key_on)
    elif request.what == "lamp":
        assert pins[0] is not None
        assert pins[1] is not None
        reading = measure_lamp(profile, faults, work, (pins[0], pins[1]))
    else:
        first, second = pins
        assert first is not None
        reading = _ohms(profile, faults, work, request, (first, second), seed)
    if request.firm:
        work, reading = _spread(profile, work, pins, reading)
    return Measured(reading, None, work, prices)


def _cover_prices(profile: Profile, request: Request, pins: tuple[Pin | None, ...]) -> tuple[Price, ...]:
    """Return the cover that is in the way of pins which are probed with their plugs on."""
    under = any(pin is not None and is_under_cover(pin) for pin in pins)
    return (Price(Operation.COVER_OFF, profile.bank_of(request.cylinder)),) if under else ()


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
    return replace(work, unplugged=frozenset(), conditions=conditions, proved_dead=False)


def check_request(profile: Profile, request: Request) -> None:
    """Raise WrongCallError for a measurement that cannot be asked of an engine."""
    if request.point not in break_points(profile):
        raise WrongCallError("no_place", place=request.point, places=", ".join(break_points(profile)))
    if request.half not in halves_of(request.point) and request.what in AT_A_POINT:
        raise WrongCallError(
            "no_half", point=request.point, half=request.half, halves=", ".join(halves_of(request.point))
        )
    if request.what not in ("supply", "crank") and request.cylinder not in profile.cylinders:
        raise WrongCallError("no_cylinder", cylinder=request.cylinder, cylinders=numbers(profile.cylinders))
    here = cylinders_at(profile, request.point)
    if request.what in AT_A_POINT and request.cylinder not in here:
        raise WrongCallError("not_here", cylinder=request.cylinder, point=request.point, cylinders=numbers(here))
    between = request.what == "returns" or (request.what == "insulation" and request.other)
    if between and (request.other not in here or request.other == request.cylinder):
        raise WrongCallError("not_here", cylinder=request.other, point=request.point, cylinders=numbers(here))
    if request.what in ("wire", "lamp"):
        _ends(profile, request)
    if request.what == "clamp" and (request.other not in profile.cylinders or request.other == request.cylinder):
        raise WrongCallError("no_cylinder", cylinder=request.other, cylinders=numbers(profile.cylinders))
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
    if request.what in ("wire", "lamp"):
        return _ends(profile, request)
    if request.what == "insulation" and request.other:
        return own, Pin(point, half, Side.RETURN, str(request.other))
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
    elif request.what == "crank":
        reading = measure_crank(profile, faults, work)
    elif request.what == "clamp":
        reading = measure_clamp(profile, faults, work, request.cylinder, request.other)
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


def _ohms(
    profile: Profile, faults: Sequence[Fault], work: Work, request: Request, pins: tuple[Pin, Pin | None], seed: int
) -> Reading:
    """Measure resistance; a contact that opens for a moment while it is moved may be missed without min/max capture."""
    options = {"nulled": request.nulled, "key_on": request.key_on, "at_once": request.at_once}
    moved = measure_ohm(profile, faults, work, pins, seed, **options)
    if work.moving is None:
        return moved
    still = measure_ohm(profile, faults, replace(work, moving=replace(work.moving, shows=False)), pins, seed, **options)
    if not request.captured:
        glance = Stream(seed, f"glance {request.what} {request.point} {request.cylinder} {work.moving.number}")
        return moved if glance.uniform(1)[0] < GLANCE else still
    return replace(moved, display=f"{still.display} … {moved.display}") if moved.display != still.display else moved


def proves_dead(reading: Reading) -> bool:
    """Tell whether a reading of volts at rest shows that a terminal is dead."""
    return reading.value is not None and reading.value < DEAD_BELOW_V and not reading.slips


DEAD = ("pair", "returns", "ground", "wire", "insulation", "lamp")
"""What is measured with the key off, on a circuit that has been proved dead."""


def is_under_cover(pin: Pin) -> bool:
    """Tell whether a pin can be reached only with the cover off while every plug is on.

    The cover half of a pass-through connector faces outside once its plug is off; mated, it can be back-probed from
    inside only.
    """
    return pin.break_point.startswith("injector_plug.") or pin.half == "cover"


def tried(work: Work, how: How, location: Location | None, one: Try | None) -> Work:
    """Return the work with a place moved or warmed in a try, or none any longer."""
    if how == MOVE:
        return replace(work, conditions=replace(work.conditions, moved=location), moving=one)
    return replace(work, conditions=replace(work.conditions, heated=location), warming=one)


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
    if request.what in ("clamp", "crank"):
        return (Price(LIVE[request.what]),)
    if request.what == "dummy":
        cover: tuple[Price, ...] = (Price(Operation.COVER_OFF, profile.bank_of(request.cylinder)),)
    else:
        pins = drop_pins_of(profile, request) if request.what == "drop" else ()
        cover = _cover_prices(profile, request, pins)
    isolated = (Price(Operation.LIVE_PREPARATION),) if request.what in TOUCHED else ()
    return (*isolated, *cover, Price(LIVE[request.what], request.cylinder))


def next_driven(profile: Profile, cylinder: int) -> int:
    """Return the cylinder in whose slot background current reaches a return: the next one on the same output."""
    row = profile.wiring.outputs[profile.output_of(cylinder)]
    own = next((n for n in (*row[row.index(cylinder) + 1 :], *row) if n != cylinder), None)
    return own or next(n for n in profile.cylinders if n != cylinder)


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
