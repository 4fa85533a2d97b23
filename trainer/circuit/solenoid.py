"""The solenoid's equations: flux linkage to current, force and armature motion (docs/model.md, section 3).

The core carries ψ = λ/N. Its magnetomotive force is ψ·ℛ_iron(ψ) in the iron plus ψ/(P_gap + P_leak) over the
working gaps with leakage beside them; the force is ½·(gap magnetomotive force)²·dP_gap/dx.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass, fields, replace

import numpy as np

from trainer.arrays import Floats
from trainer.circuit.profile import Solenoid

MU_0 = 4e-7 * math.pi
"""Magnetic constant in henry per metre (exact before the SI of 2019, right to 1e-9 since)."""


@dataclass(frozen=True, slots=True)
class Magnets:
    """Solenoid values as arrays, ready for time stepping; shape (injector,) or (row, injector)."""

    turns: Floats
    turns_squared: Floats
    gap_scale: Floats
    motion_scale: Floats
    full_gap_m: Floats
    leakage_h: Floats
    iron_per_h: Floats
    saturation_wb: Floats
    doublings: int
    mass_kg: Floats
    spring: Floats
    preload_n: Floats
    viscous: Floats
    half_lift_m: Floats
    stop: Floats
    stop_damping: Floats
    stop_width_m: Floats

    def of(self, rows: Sequence[int]) -> Magnets:
        """Return some rows of arrays of shape (row, injector)."""
        picked = list(rows)
        arrays = {f.name: getattr(self, f.name)[picked] for f in fields(self) if f.name != "doublings"}
        return replace(self, **arrays)

    def magnetise(self, linkage_wb: Floats, position_m: Floats) -> tuple[Floats, Floats, Floats, Floats]:
        """Return current in ampere, its slopes over linkage (1/henry) and position (A/m), and force in newton.

        The force pulls towards lift. The slopes are exact, so that `force = −½·λ·∂i/∂x` (energy).
        """
        core = linkage_wb / self.turns
        gap = self.gap_scale / (self.full_gap_m - position_m)
        air_per_h = 1.0 / (gap + self.leakage_h)
        rise = core / self.saturation_wb
        for _ in range(self.doublings):
            rise = rise * rise
        iron = self.iron_per_h * rise
        whole = air_per_h + self.iron_per_h
        current = core * (whole + iron) / self.turns
        slope = (whole + (2**self.doublings + 1) * iron) / self.turns_squared
        by_motion = air_per_h * gap
        by_motion = by_motion * by_motion * core / self.motion_scale
        return current, slope, by_motion, -0.5 * linkage_wb * by_motion

    def stop_force_n(self, position_m: Floats) -> tuple[Floats, Floats]:
        """Return the elastic force of the stops in newton, and how much of their damping acts (N·s/m)."""
        aside = position_m - self.half_lift_m
        depth = np.abs(aside) - self.half_lift_m
        touch = 0.5 + 0.5 * np.tanh(depth / self.stop_width_m)
        return -np.sign(aside) * self.stop * depth * touch, self.stop_damping * touch


def magnets_of(solenoids: Sequence[Solenoid]) -> Magnets:
    """Gather solenoids, in cylinder order, into arrays of shape (injector,)."""
    return _gathered(lambda name: [getattr(solenoid, name) for solenoid in solenoids], solenoids[0].saturation_power)


def magnets_of_rows(rows: Sequence[Sequence[Solenoid]]) -> Magnets:
    """Gather the solenoids of many circuits into arrays of shape (row, injector)."""
    return _gathered(
        lambda name: [[getattr(solenoid, name) for solenoid in row] for row in rows], rows[0][0].saturation_power
    )


def _gathered(values: Callable[[str], Sequence[object]], saturation_power: int) -> Magnets:
    def gather(name: str) -> Floats:
        return np.array(values(name), dtype=float)

    area, gaps = gather("pole_area_m2"), gather("gap_count")
    turns, scale = gather("turns"), MU_0 * area / gaps
    return Magnets(
        turns=turns,
        turns_squared=turns * turns,
        gap_scale=scale,
        motion_scale=-scale * turns,
        full_gap_m=gather("residual_gap_m") + gather("lift_m"),
        leakage_h=gather("leakage_permeance_h"),
        iron_per_h=gather("iron_reluctance_per_h"),
        saturation_wb=gather("saturation_t") * area,
        doublings=saturation_power.bit_length() - 1,
        mass_kg=gather("mass_kg"),
        spring=gather("spring_n_per_m"),
        preload_n=gather("preload_n"),
        viscous=gather("viscous_n_s_per_m"),
        half_lift_m=gather("lift_m") / 2.0,
        stop=gather("stop_n_per_m"),
        stop_damping=gather("stop_damping_n_s_per_m"),
        stop_width_m=gather("stop_width_m"),
    )
