"""An engine and its actuation circuit as values; `trainer.cases` makes them from files."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

PASSES = "circuit_passes"
"""The name, among the priors, of an engine whose circuit is sound."""


@dataclass(frozen=True, slots=True)
class Solenoid:
    """One injector's coil, core and armature.

    Gaps in metre, reluctances in 1/henry. `gap_count` gaps of `pole_area_m2` each stand in series; the armature
    rests at position 0 with a gap of `residual_gap_m + lift_m` and lands at `lift_m`. `saturation_power` is a
    power of two, the same for all injectors of an engine.
    """

    coil_ohm_20c: float
    turns: float
    pole_area_m2: float
    gap_count: int
    residual_gap_m: float
    lift_m: float
    leakage_permeance_h: float
    iron_reluctance_per_h: float
    saturation_t: float
    saturation_power: int
    ring_ohm: float
    mass_kg: float
    spring_n_per_m: float
    preload_n: float
    viscous_n_s_per_m: float
    stop_n_per_m: float
    stop_damping_n_s_per_m: float
    stop_width_m: float


@dataclass(frozen=True, slots=True)
class Mode:
    """One ringing mode of an injector body: frequency, damping ratio, strength."""

    frequency_hz: float
    damping: float
    strength: float


@dataclass(frozen=True, slots=True)
class Body:
    """How forces in an injector become sound: modes, their spread from cylinder to cylinder, elastic fraction."""

    modes: tuple[Mode, ...]
    spread: float
    elastic_fraction: float
    radiation_pa_m_per_n: float


@dataclass(frozen=True, slots=True)
class Place:
    """Where a listener stands, or which injector a probe rests on; metres, x to the right bank, y to the front."""

    x_m: float
    y_m: float
    z_m: float


@dataclass(frozen=True, slots=True)
class Room:
    """The bay around the engine."""

    volume_m3: float
    decay_s: float
    listener_distance_m: float
    bank_spacing_m: float
    cylinder_pitch_m: float
    limiter_threshold_dba: float


@dataclass(frozen=True, slots=True)
class FeedTrip:
    """The feed's own over-current trip: level, how long it must last, what it shuts, and until when."""

    current_a: float
    width_a: float
    delay_s: float
    shuts: Literal["output", "bank", "module"]
    until: Literal["pulse", "slot", "key"]


@dataclass(frozen=True, slots=True)
class DriveModule:
    """The high-voltage driver box: supply, outputs, current limit, trip and the thresholds of its own current test."""

    supply_v: float
    source_ohm: float
    reservoir_f: float
    feed_on_ohm: float
    feed_off_ohm: float
    return_on_ohm: float
    return_choke_h: float
    background_ohm: float
    limit_a: float
    limit_width_a: float
    clamp_v: float
    clamp_width_a: float
    trip: FeedTrip
    open_below_a: float
    short_above_a: float
    short_sense_s: float
    uncommanded_above_a: float
    held_above_a: float
    battery_v: float
    battery_ohm: float
    heater_ohm: float


@dataclass(frozen=True, slots=True)
class Schedule:
    """The actuation test in time: pulses in a slot, slots after one another; all together first, then by number."""

    pulse_s: float
    pulses_per_s: float
    together_s: float
    slot_s: float
    pause_s: float
    timing_jitter_s: float
    strength_jitter: float


@dataclass(frozen=True, slots=True)
class Connector:
    """One pass-through connector: which injectors it serves, and whether their feed shares one pin."""

    name: str
    injectors: tuple[int, ...]
    feed_pins: Literal["shared", "single"]
    engine_length_m: float
    heater_pin: bool


@dataclass(frozen=True, slots=True)
class Wiring:
    """Everything between the module's pins and the coils."""

    outputs: Mapping[str, tuple[int, ...]]
    live: Literal["all", "commanded"]
    connectors: tuple[Connector, ...]
    trunk_length_m: float
    engine_feed_mm2: float
    engine_return_mm2: float
    under_cover_mm2: float
    under_cover_length_m: Mapping[int, float]
    contact_ohm: float


@dataclass(frozen=True, slots=True)
class Meter:
    """The bench's meters: accuracy as ±(percent + counts), top ranges, lead resistance, trace probe."""

    percent: float
    counts: int
    step_ohm: float
    top_ohm: float
    lead_ohm: float
    insulation_percent: float
    insulation_top_ohm: float
    probe_bandwidth_hz: float
    probe_noise_a: float


@dataclass(frozen=True, slots=True)
class Profile:
    """An engine and its actuation circuit; `digest` identifies the content of its file.

    `priors` are shares by location and for PASSES; `kinds` are weights of the kinds that a location can have.
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
        return next(connector for connector in self.wiring.connectors if cylinder in connector.injectors)


class ByContent:
    """A profile as a key: equal to any other of the same content, for what is worked out once for it."""

    def __init__(self, profile: Profile) -> None:
        self.profile = profile

    def __eq__(self, other: object) -> bool:
        return isinstance(other, ByContent) and other.profile == self.profile

    def __hash__(self) -> int:
        return hash(self.profile.digest)
