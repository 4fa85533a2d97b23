"""The circuit as an immutable value: resistive elements between named nodes, coils, outputs of the drive module."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from enum import StrEnum

from trainer.circuit.profile import Profile, Solenoid

OPEN_OHM = 1e9
"""An open: above every meter's range and every insulation limit; there is no other special value."""

INSULATION_OHM = 1e11
"""What sound insulation leaks to ground at every node; far above what any instrument here can show."""

GROUND = "ground"
BATTERY = "battery"
RAIL = "rail"
HEATER = "heater"


class Location(StrEnum):
    """Where a fault can be."""

    DRIVE_MODULE = "drive_module"
    ENGINE_HARNESS = "engine_harness"
    PASS_THROUGH = "pass_through_connector"
    UNDER_COVER = "under_cover_harness"
    COIL = "solenoid_coil"
    ARMATURE = "armature"
    MODULE_POWER = "module_power"


class Side(StrEnum):
    """Which way of the circuit: from the module to the coil, or back."""

    FEED = "feed"
    RETURN = "return"


class Part(StrEnum):
    """What an element is, within its location."""

    WIRE = "wire"
    CONTACT = "contact"
    WINDING = "winding"
    RING = "ring"
    OUTPUT = "output"
    LINK = "link"


class Damage(StrEnum):
    """What eyes find on a terminal."""

    BURNT = "burnt"
    PUSHED_BACK = "pushed_back"
    SPREAD = "spread"


@dataclass(frozen=True, slots=True)
class Element:
    """One resistance between two nodes, and where it is.

    `loaded_ohm` is its value under the drive's amperes where that differs from a meter's milliampere.
    `cylinders` are all injectors behind it.
    """

    a: str
    b: str
    ohm: float
    location: Location
    part: Part
    side: Side | None = None
    cylinders: tuple[int, ...] = ()
    loaded_ohm: float | None = None

    def at(self, loaded: bool) -> float:
        """Return the resistance under drive current or under a meter's."""
        return self.ohm if self.loaded_ohm is None or not loaded else self.loaded_ohm


@dataclass(frozen=True, slots=True)
class ReturnDriver:
    """One return output: resistances commanded and not, and how strongly it can limit and clamp (0 V: not at all)."""

    on_ohm: float
    off_ohm: float
    limit_v: float
    clamp_v: float


@dataclass(frozen=True, slots=True)
class FeedDriver:
    """One feed output: resistance to the rail while on, to ground between pulses."""

    on_ohm: float
    off_ohm: float


@dataclass(frozen=True, slots=True)
class Rail:
    """The module's supply: an electromotive force behind a source resistance, filling a reservoir."""

    supply_v: float
    source_ohm: float
    reservoir_f: float


@dataclass(frozen=True, slots=True)
class Power:
    """What the module's supply is made from: the battery's own resistance, the wires to the module and to ground."""

    battery_ohm: float
    plus_ohm: float
    ground_ohm: float


@dataclass(frozen=True, slots=True)
class Circuit:
    """Everything the solver, the instruments and the netlist need; faults return an edited copy.

    `damaged` are the contacts on which eyes find something, by the names of their elements.
    """

    profile: Profile
    temperature_c: float
    elements: Mapping[str, Element]
    solenoids: Mapping[int, Solenoid]
    returns: Mapping[int, ReturnDriver]
    feeds: Mapping[str, FeedDriver]
    rail: Rail
    power: Power
    damaged: Mapping[str, Damage] = field(default_factory=dict)

    def with_element(self, name: str, element: Element) -> Circuit:
        """Return the circuit with one element added or replaced."""
        return replace(self, elements={**self.elements, name: element})

    def with_resistance(self, name: str, ohm: float, loaded_ohm: float | None = None) -> Circuit:
        """Return the circuit with one element at another resistance."""
        return self.with_element(name, replace(self.elements[name], ohm=ohm, loaded_ohm=loaded_ohm))

    def without(self, names: frozenset[str]) -> Circuit:
        """Return the circuit with elements taken out, as when a connector is unplugged."""
        return replace(self, elements={key: value for key, value in self.elements.items() if key not in names})

    def nodes(self) -> tuple[str, ...]:
        """Return every node but the sources, in a fixed order."""
        sources = {GROUND, RAIL, BATTERY}
        seen = dict.fromkeys(node for element in self.elements.values() for node in (element.a, element.b))
        return tuple(node for node in seen if node not in sources)


def feed_pin(output: str) -> str:
    """Return the node of a feed output inside the module."""
    return f"module.feed.{output}"


def return_pin(cylinder: int) -> str:
    """Return the node of a return output inside the module."""
    return f"module.return.{cylinder}"


def core_node(cylinder: int) -> str:
    """Return the node between a coil's copper and its core."""
    return f"core.{cylinder}"


def coil_node(cylinder: int, side: Side) -> str:
    """Return a coil's terminal."""
    return f"coil.{side}.{cylinder}"
