"""Takes measurements: which plugs come off for one, what it shows, what it costs and leaves."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from trainer.circuit.chance import Stream
from trainer.circuit.elements import Location, Side
from trainer.circuit.fault import Fault
from trainer.circuit.profile import Profile
from trainer.instruments.bench import (
    Pin,
    Work,
    contacts_of,
    cylinders_at,
    feed_names,
)
from trainer.instruments.bench_tests import Operation, Price
from trainer.instruments.charges import LIVE, access_prices, cover_prices, covers_in, live_prices
from trainer.instruments.ohmmeter import DEAD_BELOW_V, measure_insulation, measure_ohm, measure_volts
from trainer.instruments.on_battery import measure_crank, measure_lamp
from trainer.instruments.reading import Reading, Slip
from trainer.instruments.requests import POWER_DROPS, Request, check_request, drop_pins_of, pins_of
from trainer.instruments.running import Mechanical, measure_compression, measure_contribution
from trainer.instruments.tries import GLANCE, MOVE, How, Try
from trainer.instruments.under_load import (
    Trace,
    dip_of,
    measure_clamp,
    measure_drop,
    measure_dummy_current,
    measure_power_drop,
    measure_supply,
    measure_trace,
)


@dataclass(frozen=True, slots=True)
class Measured:
    """What a measurement gave and left: the reading, a trace where one was taken, the state, its prices."""

    reading: Reading
    trace: Trace | None
    work: Work
    prices: tuple[Price, ...]


def measured(
    profile: Profile,
    faults: Sequence[Fault],
    work: Work,
    request: Request,
    seed: int,
    mechanical: Mechanical | None = None,
) -> Measured:
    """Carry out a measurement; raises WrongCallError for one that cannot be asked of this engine."""
    check_request(profile, request)
    if request.what in LIVE:
        return _live(profile, faults, work, request, seed, mechanical)
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
        prices = (*prices, *cover_prices(profile, request, pins))
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


def _live(
    profile: Profile,
    faults: Sequence[Fault],
    work: Work,
    request: Request,
    seed: int,
    mechanical: Mechanical | None,
) -> Measured:
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
    elif request.what == "contribution":
        reading = measure_contribution(profile, faults, work, mechanical)
    elif request.what == "compression":
        reading = measure_compression(profile, mechanical)
    elif request.what == "crank":
        reading = measure_crank(profile, faults, work)
    elif request.what in POWER_DROPS:
        reading = measure_power_drop(profile, faults, work, request.what)
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


def tried(work: Work, how: How, location: Location | None, one: Try | None) -> Work:
    """Return the work with a place moved or warmed in a try, or none any longer."""
    if how == MOVE:
        return replace(work, conditions=replace(work.conditions, moved=location), moving=one)
    return replace(work, conditions=replace(work.conditions, heated=location), warming=one)


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
