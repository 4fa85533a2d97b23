"""What the drive module does in a slot: which outputs are on, and the law of each return output.

Between its node and ground a return output drops `r·i + a + b·tanh((i − c)/w)`. Commanded, the hyperbolic tangent
takes the drive voltage away around the current limit (a cycle average; chopping is not modelled). Between pulses
it is the clamp that ends the current. Not commanded, only the background network is left.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import numpy as np

from trainer.arrays import Floats, Integers
from trainer.circuit.elements import (
    BATTERY,
    GROUND,
    OPEN_OHM,
    RAIL,
    Circuit,
    Side,
    coil_node,
    core_node,
    feed_pin,
    return_pin,
)
from trainer.circuit.network import Branch, Ports, ports_of
from trainer.circuit.profile import Profile

CHORD_WIDTHS = 8.0
"""How near to its bend, in widths, a law with `chord` uses it."""


@dataclass(frozen=True, slots=True)
class Slot:
    """One window of the test: its number (0 for all together), the cylinders commanded, the outputs fed."""

    number: int
    commanded: frozenset[int]
    live: frozenset[str]

    @property
    def name(self) -> str | int:
        """What the files call it: `all` or the cylinder's number."""
        return "all" if self.number == 0 else self.number


def slots_of(profile: Profile) -> tuple[Slot, ...]:
    """Return the test's slots: all together, then each cylinder in numeric order."""
    outputs = frozenset(profile.wiring.outputs)
    single = [
        Slot(
            number,
            frozenset({number}),
            outputs if profile.wiring.live == "all" else frozenset({profile.output_of(number)}),
        )
        for number in profile.cylinders
    ]
    return (Slot(0, frozenset(profile.cylinders), outputs), *single)


@dataclass(frozen=True, slots=True)
class OutputLaw:
    """The return outputs' law in one phase; every array has shape (slot, cylinder).

    `chord` asks, near the bend, for the slope towards it instead of the tangent: a current that falls into the clamp
    would step over the bend by the tangent, and ring there for ever.
    """

    ohm: Floats
    offset_v: Floats
    swing_v: Floats
    centre_a: Floats
    width_a: Floats
    chord: bool

    def drop(self, current_a: Floats) -> tuple[Floats, Floats]:
        """Return the drop in volt and its slope in ohm."""
        away = (current_a - self.centre_a) / self.width_a
        bend = np.tanh(away)
        volts = self.ohm * current_a + self.offset_v + self.swing_v * bend
        steep = 1.0 - bend * bend
        if self.chord:
            near = (np.abs(away) < CHORD_WIDTHS) & (away != 0.0)
            np.divide(bend, away, out=steep, where=near)
        return volts, self.ohm + self.swing_v * steep / self.width_a

    def of(self, rows: Integers) -> OutputLaw:
        """Return some rows."""
        ohm, offset_v, swing_v = self.ohm[rows], self.offset_v[rows], self.swing_v[rows]
        return OutputLaw(ohm, offset_v, swing_v, self.centre_a[rows], self.width_a[rows], self.chord)

    def chord_ohm(self, current_a: Floats) -> Floats:
        """Return the slope from the bend's middle to a current, in ohm."""
        away = np.where(current_a == self.centre_a, self.width_a, current_a - self.centre_a)
        return np.asarray(self.ohm + self.swing_v * np.tanh(away / self.width_a) / away)


def pulse_law(rows: Sequence[tuple[Circuit, Slot]]) -> OutputLaw:
    """Return the outputs' law during a pulse, a row for each slot of a circuit."""
    cylinders = rows[0][0].profile.cylinders
    module = rows[0][0].profile.module
    commanded = np.array([[n in slot.commanded for n in cylinders] for _circuit, slot in rows])
    values = [
        [(r.on_ohm, r.off_ohm, r.limit_v) for r in (circuit.returns[n] for n in cylinders)] for circuit, _slot in rows
    ]
    on_ohm, off_ohm, limit_v = np.moveaxis(np.array(values), 2, 0)
    swing = np.where(commanded, limit_v / 2.0, 0.0)
    return OutputLaw(
        ohm=np.where(commanded, on_ohm, off_ohm),
        offset_v=swing,
        swing_v=swing,
        centre_a=np.full(commanded.shape, module.limit_a),
        width_a=np.full(commanded.shape, module.limit_width_a),
        chord=False,
    )


def quiet_law(circuits: Sequence[Circuit]) -> OutputLaw:
    """Return the outputs' law between pulses, a row for each circuit: every output on its clamp."""
    profile = circuits[0].profile
    values = [[(r.on_ohm, r.clamp_v) for r in (c.returns[n] for n in profile.cylinders)] for c in circuits]
    on_ohm, clamp_v = np.moveaxis(np.array(values), 2, 0)
    return OutputLaw(
        ohm=on_ohm,
        offset_v=np.zeros(on_ohm.shape),
        swing_v=clamp_v,
        centre_a=np.zeros(on_ohm.shape),
        width_a=np.full(on_ohm.shape, profile.module.clamp_width_a),
        chord=True,
    )


def shut_by(profile: Profile, output: str) -> frozenset[str]:
    """Return the outputs that a trip of one output shuts."""
    outputs = profile.wiring.outputs
    if profile.module.trip.shuts == "output":
        return frozenset({output})
    if profile.module.trip.shuts == "module":
        return frozenset(outputs)
    banks = {profile.bank_of(number) for number in outputs[output]}
    return frozenset(name for name, numbers in outputs.items() if any(profile.bank_of(n) in banks for n in numbers))


def port_nodes(circuit: Circuit) -> list[tuple[str, str]]:
    """Return the ports in the solver's order: every coil's core, then every return output."""
    numbers = circuit.profile.cylinders
    coils = [(core_node(n), coil_node(n, Side.RETURN)) for n in numbers]
    return coils + [(return_pin(n), GROUND) for n in numbers]


def feed_branches(circuit: Circuit, live: frozenset[str]) -> list[Branch]:
    """Return the feed outputs as two resistances each: to the rail, and to ground while it is off."""
    branches: list[Branch] = []
    for name, driver in circuit.feeds.items():
        on = name in live
        branches.append((RAIL, feed_pin(name), driver.on_ohm if on else OPEN_OHM))
        branches.append((feed_pin(name), GROUND, OPEN_OHM if on else driver.off_ohm))
    return branches


def battery_branch(circuit: Circuit) -> Branch:
    """Return the battery's own resistance between its electromotive force and the node that a fault can touch."""
    return ("battery.source", BATTERY, circuit.power.battery_ohm)


def rail_branches(circuit: Circuit, live: frozenset[str]) -> dict[str, Branch]:
    """Return the whole network under drive current by name: feed outputs, battery, everything between."""
    names = [f"feed.{name}.{way}" for name in circuit.feeds for way in ("on", "off")]
    branches = dict(zip(names, feed_branches(circuit, live), strict=True))
    branches["battery"] = battery_branch(circuit)
    for name, element in circuit.elements.items():
        branches[name] = (element.a, element.b, element.at(loaded=True))
    return branches


@dataclass(slots=True)
class Reductions:
    """The network of one circuit reduced to its ports, kept per set of live outputs."""

    circuit: Circuit
    kept: dict[frozenset[str], Ports]

    def of(self, live: frozenset[str]) -> Ports:
        """Return the ports with these outputs on."""
        if live not in self.kept:
            branches = list(rail_branches(self.circuit, live).values())
            watched = range(0, 2 * len(self.circuit.feeds), 2)
            self.kept[live] = ports_of(branches, port_nodes(self.circuit), watched, RAIL, "battery.source")
        return self.kept[live]


def stacked(ports: Sequence[Ports]) -> Mapping[str, Floats]:
    """Stack one reduction per slot: `shared` of shape (slot, port + watched, port), `rail`, `battery` alike."""
    return {
        "shared": np.stack([np.concatenate([-p.impedance_ohm, p.watched_port]) for p in ports]),
        "rail": np.stack([np.concatenate([p.rail, p.watched_rail]) for p in ports]),
        "battery": np.stack([np.concatenate([p.battery, p.watched_battery]) for p in ports]),
    }
