"""The form of a profile file: every field with its type and range."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from trainer.cases.files.forms import Form, Line

Name = Annotated[str, Field(pattern=r"^[a-z][a-z0-9_]{1,30}$")]
BankName = Annotated[str, Field(pattern=r"^[a-z]+( [a-z]+)*$", max_length=16)]
Cylinder = Annotated[int, Field(ge=1, le=16)]
Ampere = Annotated[float, Field(ge=0.001, le=1000)]
OutputOhm = Annotated[float, Field(ge=0.001, le=10)]
"""An output or a source that drives amperes: what is far above is an open circuit, and that is a fault."""
Numbers = Annotated[list[Cylinder], Field(min_length=1, max_length=16)]

MOST_NAMES = 40
"""How many names a table of prices or shares may hold; there are fewer that mean something."""

TESTS = (
    "actuation_test", "codes", "look", "module_ohms", "pass_through_ohms", "injector_ohms", "pin_to_ground",
    "move_harness", "load_drop", "current_trace", "swap_returns", "dummy_load", "heat", "cover_off",
    "module_substitution", "injector_swap", "repair_wire", "repair_connector",
)  # fmt: skip
"""Everything that costs minutes; a profile prices every one."""


class TripForm(Form):
    current_a: Ampere
    width_a: Ampere
    delay_s: Annotated[float, Field(ge=1e-5, le=0.01)]
    shuts: Literal["output", "bank", "module"]
    until: Literal["pulse", "slot", "key"]


class ModuleForm(Form):
    supply_v: Annotated[float, Field(ge=12, le=250)]
    source_ohm: Annotated[float, Field(ge=0.01, le=100)]
    reservoir_f: Annotated[float, Field(ge=1e-4, le=1)]
    feed_on_ohm: OutputOhm
    feed_off_ohm: Annotated[float, Field(ge=0.001, le=1e6)]
    return_on_ohm: OutputOhm
    return_choke_h: Annotated[float, Field(ge=1e-5, le=1e-3)]
    background_ohm: Annotated[float, Field(ge=20, le=1e5)]
    limit_a: Annotated[float, Field(ge=1, le=60)]
    limit_width_a: Annotated[float, Field(ge=0.2, le=5)]
    clamp_v: Annotated[float, Field(ge=10, le=400)]
    clamp_width_a: Annotated[float, Field(ge=0.05, le=1)]
    trip: TripForm
    open_below_a: Ampere
    short_above_a: Ampere
    short_sense_s: Annotated[float, Field(ge=1e-6, le=0.001)]
    uncommanded_above_a: Ampere
    held_above_a: Annotated[float, Field(ge=1e-4, le=1000)]
    battery_v: Annotated[float, Field(ge=6, le=32)]
    battery_ohm: OutputOhm
    heater_ohm: Annotated[float, Field(ge=0.05, le=100)]


class ScheduleForm(Form):
    pulse_s: Annotated[float, Field(ge=0.0005, le=0.02)]
    pulses_per_s: Annotated[float, Field(ge=20, le=200)]
    together_s: Annotated[float, Field(ge=0.3, le=5)]
    slot_s: Annotated[float, Field(ge=0.3, le=5)]
    pause_s: Annotated[float, Field(ge=0.1, le=3)]
    timing_jitter_s: Annotated[float, Field(ge=0, le=0.002)]
    strength_jitter: Annotated[float, Field(ge=0, le=0.2)]


class SolenoidForm(Form):
    coil_ohm_20c: Annotated[float, Field(ge=0.2, le=20)]
    turns: Annotated[float, Field(ge=10, le=2000)]
    pole_area_m2: Annotated[float, Field(gt=1e-6, le=1e-2)]
    gap_count: Annotated[int, Field(ge=1, le=2)]
    residual_gap_m: Annotated[float, Field(ge=1e-5, le=1e-3)]
    lift_m: Annotated[float, Field(ge=2e-5, le=2e-3)]
    leakage_permeance_h: Annotated[float, Field(ge=0, le=1e-5)]
    iron_reluctance_per_h: Annotated[float, Field(ge=1e3, le=1e8)]
    saturation_t: Annotated[float, Field(ge=0.5, le=3)]
    saturation_power: Literal[4, 8, 16]
    ring_ohm: Annotated[float, Field(ge=1, le=1e4)]
    mass_kg: Annotated[float, Field(ge=1e-4, le=0.2)]
    spring_n_per_m: Annotated[float, Field(ge=0, le=1e6)]
    preload_n: Annotated[float, Field(ge=0, le=2000)]
    viscous_n_s_per_m: Annotated[float, Field(ge=0.01, le=1e4)]
    stop_n_per_m: Annotated[float, Field(ge=1e5, le=1e8)]
    stop_damping_n_s_per_m: Annotated[float, Field(ge=1, le=1e5)]
    stop_width_m: Annotated[float, Field(ge=1e-7, le=1e-4)]


class ModeForm(Form):
    frequency_hz: Annotated[float, Field(ge=50, le=18000)]
    damping: Annotated[float, Field(ge=0.003, le=0.5)]
    strength: Annotated[float, Field(ge=0, le=10)]


class BodyForm(Form):
    modes: Annotated[list[ModeForm], Field(min_length=1, max_length=20)]
    spread: Annotated[float, Field(ge=0, le=0.3)]
    elastic_fraction: Annotated[float, Field(ge=0, le=1)]
    radiation_pa_m_per_n: Annotated[float, Field(ge=1e-7, le=0.01)]


class RoomForm(Form):
    volume_m3: Annotated[float, Field(ge=30, le=5000)]
    decay_s: Annotated[float, Field(ge=0.1, le=0.6)]
    listener_distance_m: Annotated[float, Field(ge=0.5, le=5)]
    bank_spacing_m: Annotated[float, Field(ge=0.1, le=2)]
    cylinder_pitch_m: Annotated[float, Field(ge=0.05, le=0.5)]
    limiter_threshold_dba: Annotated[float, Field(ge=50, le=90)]


class ConnectorForm(Form):
    injectors: Numbers
    feed_pins: Literal["shared", "single"]
    engine_length_m: Annotated[float, Field(ge=0.05, le=10)]
    heater_pin: bool


class WiringForm(Form):
    live: Literal["all", "commanded"]
    outputs: Annotated[dict[Name, Numbers], Field(min_length=1, max_length=16)]
    connectors: Annotated[dict[Name, ConnectorForm], Field(min_length=1, max_length=16)]
    trunk_length_m: Annotated[float, Field(ge=0.05, le=10)]
    engine_feed_mm2: Annotated[float, Field(ge=0.1, le=20)]
    engine_return_mm2: Annotated[float, Field(ge=0.1, le=20)]
    under_cover_mm2: Annotated[float, Field(ge=0.1, le=20)]
    under_cover_length_m: Annotated[dict[Cylinder, Annotated[float, Field(ge=0.02, le=5)]], Field(max_length=16)]
    contact_ohm: Annotated[float, Field(ge=0.0001, le=0.5)]


class MeterForm(Form):
    percent: Annotated[float, Field(ge=0.01, le=10)]
    counts: Annotated[int, Field(ge=1, le=50)]
    step_ohm: Annotated[float, Field(ge=0.0001, le=1)]
    top_ohm: Annotated[float, Field(ge=1e3, le=9e8)]
    lead_ohm: Annotated[float, Field(ge=0, le=2)]
    insulation_percent: Annotated[float, Field(ge=0.1, le=30)]
    insulation_top_ohm: Annotated[float, Field(ge=1e6, le=9e8)]
    probe_bandwidth_hz: Annotated[float, Field(ge=1e3, le=1e6)]
    probe_noise_a: Annotated[float, Field(ge=0, le=1)]


class ProfileForm(Form):
    form: Literal["profile/1"]
    name: Name
    title: Annotated[Line, Field(min_length=3, max_length=80)]
    banks: Annotated[dict[BankName, Numbers], Field(min_length=1, max_length=2)]
    firing_order: Numbers
    codes: Literal["p02xx", "spn_fmi"]
    wiring: WiringForm
    module: ModuleForm
    test: ScheduleForm
    solenoid: SolenoidForm
    body: BodyForm
    room: RoomForm
    meter: MeterForm
    minutes: Annotated[dict[str, Annotated[float, Field(ge=0.1, le=600)]], Field(max_length=MOST_NAMES)]
    priors: Annotated[dict[str, Annotated[float, Field(ge=0, le=1)]], Field(max_length=MOST_NAMES)]
    kinds: Annotated[dict[str, Annotated[float, Field(ge=0.001, le=1000)]], Field(max_length=MOST_NAMES)]
