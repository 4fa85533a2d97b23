"""An engine and its actuation circuit as values, read from files by `trainer.cases`.

A field's type carries what a file may give. Engines made in tests may go beyond.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Annotated, Literal

from annotated_types import Interval, Len

from trainer.circuit.constraints import Cylinder, Cylinders, Name, Title

Ampere = Annotated[float, Interval(ge=0.001, le=1000)]
OutputOhm = Annotated[float, Interval(ge=0.001, le=10)]
"""An output or a source that drives amperes; far above this it would be an open circuit, which is a fault."""

Area = Annotated[float, Interval(ge=0.1, le=20)]
Length = Annotated[float, Interval(ge=0.05, le=10)]

PASSES = "circuit_passes"
"""The name, among the priors, of an engine whose circuit is sound."""


STICK_N = 0.5
"""What an oil film holds a plate on its seat with at 20 °C, where an engine's file does not name it: from memory."""


@dataclass(frozen=True, slots=True)
class Solenoid:
    """One injector's coil, core and armature.

    Gaps in metre, reluctances in 1/henry. `gap_count` gaps of `pole_area_m2` each stand in series; the armature
    rests at position 0 with a gap of `residual_gap_m + lift_m` and lands at `lift_m`. `saturation_power` is a
    power of two, the same for all injectors of an engine. `viscous_n_s_per_m` and `stick_n` are those at 20 °C.
    """

    coil_ohm_20c: Annotated[float, Interval(ge=0.2, le=20)]
    turns: Annotated[float, Interval(ge=10, le=2000)]
    pole_area_m2: Annotated[float, Interval(gt=1e-6, le=1e-2)]
    gap_count: Annotated[int, Interval(ge=1, le=2)]
    residual_gap_m: Annotated[float, Interval(ge=1e-5, le=1e-3)]
    lift_m: Annotated[float, Interval(ge=2e-5, le=2e-3)]
    leakage_permeance_h: Annotated[float, Interval(ge=0, le=1e-5)]
    iron_reluctance_per_h: Annotated[float, Interval(ge=1e3, le=1e8)]
    saturation_t: Annotated[float, Interval(ge=0.5, le=3)]
    saturation_power: Literal[4, 8, 16]
    ring_ohm: Annotated[float, Interval(ge=1, le=1e4)]
    mass_kg: Annotated[float, Interval(ge=1e-4, le=0.2)]
    spring_n_per_m: Annotated[float, Interval(ge=0, le=1e6)]
    preload_n: Annotated[float, Interval(ge=0, le=2000)]
    viscous_n_s_per_m: Annotated[float, Interval(ge=0.01, le=1e4)]
    stop_n_per_m: Annotated[float, Interval(ge=1e5, le=1e8)]
    stop_damping_n_s_per_m: Annotated[float, Interval(ge=1, le=1e5)]
    stop_width_m: Annotated[float, Interval(ge=1e-7, le=1e-4)]
    stick_n: Annotated[float, Interval(ge=0, le=500)] = field(default=STICK_N, kw_only=True)


@dataclass(frozen=True, slots=True)
class Mode:
    """One ringing mode of an injector body: frequency, damping ratio, and how strongly each force drives it.

    `strength` is for the blow of the armature near the seat, `elastic` for the pole's force at the body's free end,
    None where it drives the mode as strongly as the blow does, as in engine files of earlier versions.
    """

    frequency_hz: Annotated[float, Interval(ge=50, le=18000)]
    damping: Annotated[float, Interval(ge=0.003, le=0.5)]
    strength: Annotated[float, Interval(ge=0, le=10)]
    elastic: Annotated[float, Interval(ge=0, le=10)] | None = None


@dataclass(frozen=True, slots=True)
class Body:
    """How forces in an injector become sound: modes, their spread from cylinder to cylinder, elastic fraction."""

    modes: Annotated[tuple[Mode, ...], Len(1, 20)]
    spread: Annotated[float, Interval(ge=0, le=0.3)]
    elastic_fraction: Annotated[float, Interval(ge=0, le=1)]
    radiation_pa_m_per_n: Annotated[float, Interval(ge=1e-7, le=0.01)]


@dataclass(frozen=True, slots=True)
class Place:
    """Where a listener stands, or which injector a probe rests on; metres, x to the right bank, y to the front."""

    x_m: float
    y_m: float
    z_m: float


@dataclass(frozen=True, slots=True)
class Room:
    """The bay around the engine."""

    volume_m3: Annotated[float, Interval(ge=30, le=5000)]
    decay_s: Annotated[float, Interval(ge=0.1, le=0.6)]
    listener_distance_m: Annotated[float, Interval(ge=0.5, le=5)]
    bank_spacing_m: Annotated[float, Interval(ge=0.1, le=2)]
    cylinder_pitch_m: Annotated[float, Interval(ge=0.05, le=0.5)]
    limiter_threshold_dba: Annotated[float, Interval(ge=50, le=90)]


@dataclass(frozen=True, slots=True)
class FeedTrip:
    """The feed's own over-current trip: level, how long it must last, what it shuts, and until when."""

    current_a: Ampere
    width_a: Ampere
    delay_s: Annotated[float, Interval(ge=1e-5, le=0.01)]
    shuts: Literal["output", "bank", "module"]
    until: Literal["pulse", "slot", "key"]


DISCHARGE_S = 40.0
"""How long after key off a module's supply takes down to DISCHARGED_V, where an engine's file does not name it: common
practice is to wait half a minute and more; 60 V are reached within 5 s, as NFPA 79 asks."""

DISCHARGED_V = 0.5

SUPPLY_LOW_SHARE = 0.6
"""The share of its supply below which a module sets a code, where an engine's file does not name it: from memory."""


@dataclass(frozen=True, slots=True)
class DriveModule:
    """The high-voltage driver box: supply, outputs, current limit, trip and the thresholds of its own current test."""

    supply_v: Annotated[float, Interval(ge=12, le=250)]
    source_ohm: Annotated[float, Interval(ge=0.01, le=100)]
    reservoir_f: Annotated[float, Interval(ge=1e-4, le=1)]
    feed_on_ohm: OutputOhm
    feed_off_ohm: Annotated[float, Interval(ge=0.001, le=1e6)]
    return_on_ohm: OutputOhm
    return_choke_h: Annotated[float, Interval(ge=1e-5, le=1e-3)]
    background_ohm: Annotated[float, Interval(ge=20, le=1e5)]
    limit_a: Annotated[float, Interval(ge=1, le=60)]
    limit_width_a: Annotated[float, Interval(ge=0.2, le=5)]
    clamp_v: Annotated[float, Interval(ge=10, le=400)]
    clamp_width_a: Annotated[float, Interval(ge=0.05, le=1)]
    trip: FeedTrip
    supply_low_share: Annotated[float, Interval(ge=0.1, le=0.9)] = field(default=SUPPLY_LOW_SHARE, kw_only=True)
    open_below_a: Ampere
    short_above_a: Ampere
    short_sense_s: Annotated[float, Interval(ge=1e-6, le=0.001)]
    uncommanded_above_a: Ampere
    held_above_a: Annotated[float, Interval(ge=1e-4, le=1000)]
    battery_v: Annotated[float, Interval(ge=6, le=32)]
    battery_ohm: OutputOhm
    heater_ohm: Annotated[float, Interval(ge=0.05, le=100)]
    discharge_s: Annotated[float, Interval(ge=1, le=1800)] = field(default=DISCHARGE_S, kw_only=True)


@dataclass(frozen=True, slots=True)
class Schedule:
    """The actuation test in time: pulses in a slot, slots after one another; all together first, then by number."""

    pulse_s: Annotated[float, Interval(ge=0.0005, le=0.02)]
    pulses_per_s: Annotated[float, Interval(ge=20, le=200)]
    together_s: Annotated[float, Interval(ge=0.3, le=5)]
    slot_s: Annotated[float, Interval(ge=0.3, le=5)]
    pause_s: Annotated[float, Interval(ge=0.1, le=3)]
    timing_jitter_s: Annotated[float, Interval(ge=0, le=0.002)]
    strength_jitter: Annotated[float, Interval(ge=0, le=0.2)]


@dataclass(frozen=True, slots=True)
class Connector:
    """One pass-through connector: which injectors it serves, whether their feed shares one pin, and where it sits.

    One in the valve cover's gasket is repaired with that cover off, one in the head beside it from outside.
    """

    injectors: Cylinders
    feed_pins: Literal["shared", "single"]
    engine_length_m: Length
    heater_pin: bool
    in_gasket: bool = True


@dataclass(frozen=True, slots=True)
class Wiring:
    """Everything between the module's pins and the coils; outputs and connectors by name."""

    outputs: Annotated[Mapping[Name, Cylinders], Len(1, 16)]
    live: Literal["all", "commanded"]
    connectors: Annotated[Mapping[Name, Connector], Len(1, 16)]
    trunk_length_m: Length
    engine_feed_mm2: Area
    engine_return_mm2: Area
    under_cover_mm2: Area
    under_cover_length_m: Annotated[Mapping[Cylinder, Annotated[float, Interval(ge=0.02, le=5)]], Len(0, 16)]
    contact_ohm: Annotated[float, Interval(ge=0.0001, le=0.5)]


@dataclass(frozen=True, slots=True)
class Meter:
    """The bench's meters: accuracy as ±(percent + counts), top ranges, lead resistance, trace probe."""

    percent: Annotated[float, Interval(ge=0.01, le=10)]
    counts: Annotated[int, Interval(ge=1, le=50)]
    step_ohm: Annotated[float, Interval(ge=0.0001, le=1)]
    top_ohm: Annotated[float, Interval(ge=1e3, le=9e8)]
    lead_ohm: Annotated[float, Interval(ge=0, le=2)]
    insulation_percent: Annotated[float, Interval(ge=0.1, le=30)]
    insulation_top_ohm: Annotated[float, Interval(ge=1e6, le=9e8)]
    probe_bandwidth_hz: Annotated[float, Interval(ge=1e3, le=1e6)]
    probe_noise_a: Annotated[float, Interval(ge=0, le=1)]


@dataclass(frozen=True, slots=True)
class ProfileWords:
    """What an engine says to people, in one language."""

    title: Title


@dataclass(frozen=True, slots=True)
class Profile:
    """An engine and its actuation circuit; `digest` identifies the content of its file.

    `priors` are shares by location and for PASSES; `kinds` are weights of the kinds that a location can have. `bay` is
    the same engine in its own bay, for an engine that was moved to another room.
    """

    name: str
    title: str
    digest: str
    banks: Mapping[str, tuple[int, ...]]
    firing_order: tuple[int, ...]
    codes: Literal["p02xx", "spn_fmi"]
    wiring: Wiring
    module: DriveModule
    schedule: Schedule
    solenoid: Solenoid
    body: Body
    room: Room
    meter: Meter
    minutes: Mapping[str, float]
    priors: Mapping[str, float]
    kinds: Mapping[str, float]
    bay: Profile | None = None
    translations: tuple[tuple[str, ProfileWords], ...] = ()

    @property
    def cylinders(self) -> tuple[int, ...]:
        """All cylinder numbers, ascending."""
        return tuple(sorted(number for bank in self.banks.values() for number in bank))

    def bank_of(self, cylinder: int) -> str:
        """Return the bank that a number is on; raises KeyError for a number the engine does not have."""
        for name, numbers in self.banks.items():
            if cylinder in numbers:
                return name
        raise KeyError(cylinder)

    def output_of(self, cylinder: int) -> str:
        """Return the feed output behind which a cylinder's injector lies."""
        return next(name for name, numbers in self.wiring.outputs.items() if cylinder in numbers)

    def connector_of(self, cylinder: int) -> Connector:
        """Return the pass-through connector that serves a cylinder."""
        return self.wiring.connectors[self.connector_name_of(cylinder)]

    def connector_name_of(self, cylinder: int) -> str:
        """Return the name of that connector."""
        return next(name for name, connector in self.wiring.connectors.items() if cylinder in connector.injectors)


class ByContent:
    """A profile as a key: equal to any other of the same content, for what is worked out once for it."""

    def __init__(self, profile: Profile) -> None:
        self.profile = profile

    def __eq__(self, other: object) -> bool:
        return isinstance(other, ByContent) and other.profile == self.profile

    def __hash__(self) -> int:
        return hash(self.profile.digest)
