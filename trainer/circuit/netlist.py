"""One slot's first pulse as a SPICE netlist with the same electrical and mechanical equations as the solver.

Scales, so that a simulator's absolute tolerances mean something: flux linkage nodes in mWb, positions in mm, speeds
in m/s, time over the trip's level in µs. Node 0 is ground.
"""

from __future__ import annotations

from collections.abc import Iterator

from trainer.circuit.drive import Slot, battery_branch, feed_branches, port_nodes, shut_by
from trainer.circuit.elements import BATTERY, GROUND, INSULATION_OHM, RAIL, Circuit
from trainer.circuit.solenoid import magnets_of

EDGE_S = 2e-7
"""How long the gate takes to fall at the end of the pulse; the solver does it in one step."""

TRIP_EDGE_US = 0.2
"""How smoothly a trip shuts."""

TRIP_DRIVE = 5.0
"""How fast, in µs a µs, a counter past its delay drives itself on, so that a trip cannot rest half shut.

A simulator solves each of its steps at the step's end: driven on by 100, the counter had a second solution there,
already past its delay, and the trip came up to a whole step of 2 µs too soon.
"""


def netlist_of(circuit: Circuit, slot: Slot, end_s: float, title: str) -> str:
    """Return the netlist of a slot from rest to `end_s`; saves i(cylinder) as v(amp_n), position as v(pos_n)."""
    lines = [f"* {title}", *_network(circuit), *_rail(circuit), *_feeds(circuit, slot)]
    for number in circuit.profile.cylinders:
        lines += _coil(circuit, number)
        lines += _driver(circuit, slot, number)
    width = circuit.profile.schedule.pulse_s
    lines += [
        f"Vgate gate 0 PULSE(0 1 0 {EDGE_S:.3g} {EDGE_S:.3g} {width - EDGE_S:.9g} 2)",
        ".options method=gear reltol=2e-4 abstol=1e-6 vntol=1e-5 gmin=1e-13 itl4=200 chgtol=1e-12",
        f".tran 2e-6 {end_s:.9g} 0 2e-6 uic",
        ".save " + " ".join(f"v(amp_{n}) v(pos_{n})" for n in circuit.profile.cylinders) + " v(rail)",
        ".end",
    ]
    return "\n".join(lines) + "\n"


def _node(name: str) -> str:
    return "0" if name == GROUND else name.replace(".", "_").replace("-", "_")


def _network(circuit: Circuit) -> Iterator[str]:
    battery = battery_branch(circuit)
    branches = [(e.a, e.b, e.at(loaded=True)) for e in circuit.elements.values()]
    for number, (a, b, ohm) in enumerate([battery, *branches]):
        if ohm > 0.0:
            yield f"R{number} {_node(a)} {_node(b)} {ohm:.12g}"
        else:
            yield f"V{number} {_node(a)} {_node(b)} 0"
    for node in dict.fromkeys([*circuit.nodes(), BATTERY]):
        yield f"Rleak_{_node(node)} {_node(node)} 0 {INSULATION_OHM:.3g}"
    yield f"Vbattery battery_source 0 {circuit.profile.module.battery_v:.9g}"


def _rail(circuit: Circuit) -> Iterator[str]:
    rail = circuit.rail
    yield f"Vsupply supply 0 {rail.supply_v:.9g}"
    yield f"Rsource supply {RAIL} {rail.source_ohm:.9g}"
    yield f"Creservoir {RAIL} 0 {rail.reservoir_f:.9g} ic={rail.supply_v:.9g}"


def _feeds(circuit: Circuit, slot: Slot) -> Iterator[str]:
    trip = circuit.profile.module.trip
    on, off = feed_branches(circuit, slot.live), feed_branches(circuit, frozenset())
    for place, output in enumerate(circuit.feeds):
        pin = _node(on[2 * place][1])
        trips = [name for name in circuit.feeds if output in shut_by(circuit.profile, name)]
        held = "*".join(f"(0.5-0.5*tanh((v(over_{_node(n)})-{trip.delay_s * 1e6:.9g})/{TRIP_EDGE_US}))" for n in trips)
        fed = f"v(gate)*{held}" if output in slot.live else "0"
        ohm = f"(({fed})*{on[2 * place][2]:.9g}+(1-{fed})*{off[2 * place + 1][2]:.9g})"
        # a half bridge as one source that moves between ground and rail: two switches would short the rail in passing
        yield f"Bbridge_{place} bridge_{place} 0 v=v({RAIL})*({fed})"
        yield f"Bfeed_{place} bridge_{place} sense_{place} i=v(bridge_{place},sense_{place})/{ohm}"
        yield f"Vsense_{place} sense_{place} {pin} 0"
        yield f"Bdraw_{place} {RAIL} 0 i=i(Vsense_{place})*({fed})"
        over = f"0.5+0.5*tanh((i(Vsense_{place})-{trip.current_a:.9g})/{trip.width_a:.9g})"
        latch = f"0.5+0.5*tanh((v(over_{_node(output)})-{trip.delay_s * 1e6:.9g})/{TRIP_EDGE_US})"
        yield f"Bover_{place} 0 over_{_node(output)} i=({over})+{TRIP_DRIVE:.3g}*({latch})"
        yield f"Cover_{place} over_{_node(output)} 0 1e-6 ic=0"


def _coil(circuit: Circuit, number: int) -> Iterator[str]:
    solenoid = circuit.solenoids[number]
    magnets = magnets_of([solenoid])
    turns, scale, gap = solenoid.turns, float(magnets.gap_scale[0]), float(magnets.full_gap_m[0])
    place = circuit.profile.cylinders.index(number)
    a, b = (_node(node) for node in port_nodes(circuit)[place])
    core = f"(v(lam_{number})*1e-3/{turns:.9g})"
    permeance = f"({scale:.9g}/({gap:.9g}-v(pos_{number})*1e-3))"
    air = f"(1/({permeance}+{solenoid.leakage_permeance_h:.9g}))"
    power = "*".join([f"(abs({core})/{float(magnets.saturation_wb[0]):.9g})"] * solenoid.saturation_power)
    iron = f"{solenoid.iron_reluctance_per_h:.9g}*(1+{power})"
    half, width = solenoid.lift_m / 2e-3, solenoid.stop_width_m * 1e3
    depth = f"(abs(v(pos_{number})-{half:.9g})-{half:.9g})"
    touch = f"(0.5+0.5*tanh({depth}/{width:.9g}))"
    aside = f"sgn(v(pos_{number})-{half:.9g})"
    stop = f"-{aside}*{solenoid.stop_n_per_m * 1e-3:.9g}*{depth}*{touch}"
    loss = f"({solenoid.viscous_n_s_per_m:.9g}+{solenoid.stop_damping_n_s_per_m:.9g}*{touch})"
    sink_mm = -1e3 * solenoid.preload_n / (solenoid.stop_n_per_m + solenoid.spring_n_per_m)
    yield f"Blam_{number} 0 lam_{number} i=v({a},{b})"
    yield f"Clam_{number} lam_{number} 0 1e-3 ic=0"
    yield f"Bamp_{number} amp_{number} 0 v={core}*({iron}+{air})/{turns:.9g}"
    yield f"Bcoil_{number} {a} {b} i=v(amp_{number})"
    yield f"Bpull_{number} pull_{number} 0 v=0.5*({core}*{air}*{permeance})*({core}*{air}*{permeance})/{scale:.9g}"
    push = f"v(pull_{number})-{solenoid.preload_n:.9g}-{solenoid.spring_n_per_m * 1e-3:.9g}*v(pos_{number})"
    yield f"Bpush_{number} 0 spd_{number} i={push}{stop}-{loss}*v(spd_{number})"
    yield f"Cspd_{number} spd_{number} 0 {solenoid.mass_kg:.9g} ic=0"
    yield f"Bpos_{number} 0 pos_{number} i=v(spd_{number})"
    yield f"Cpos_{number} pos_{number} 0 1e-3 ic={sink_mm:.9g}"


def _driver(circuit: Circuit, slot: Slot, number: int) -> Iterator[str]:
    module, driver = circuit.profile.module, circuit.returns[number]
    place = len(circuit.profile.cylinders) + circuit.profile.cylinders.index(number)
    pin = _node(port_nodes(circuit)[place][0])
    commanded = number in slot.commanded
    pulse_ohm = driver.on_ohm if commanded else driver.off_ohm
    swing = driver.limit_v / 2.0 if commanded else 0.0
    amps = f"i(Vreturn_{number})"
    limit = f"({pulse_ohm:.9g}*{amps}+{swing:.9g}*(1+tanh(({amps}-{module.limit_a:.9g})/{module.limit_width_a:.9g})))"
    clamp = f"({driver.on_ohm:.9g}*{amps}+{driver.clamp_v:.9g}*tanh({amps}/{module.clamp_width_a:.9g}))"
    yield f"Lreturn_{number} {pin} choke_{number} {module.return_choke_h:.9g} ic=0"
    yield f"Vreturn_{number} choke_{number} drop_{number} 0"
    yield f"Bdrop_{number} drop_{number} 0 v=v(gate)*{limit}+(1-v(gate))*{clamp}"
