"""Scales on which one unit is what a listener or a meter can just tell apart: d′ is a distance on them.

Level: Jesteadt, Wier and Green 1977, ΔI/I = 0.463·(I/I0)^−0.072 over the masked threshold; their tracking rule ends at
70.7 % right of two alternatives. Everything marked "from memory" is a default, no measurement.
"""

from __future__ import annotations

import numpy as np
from scipy.special import ndtri

from trainer.arrays import Floats
from trainer.circuit.profile import Meter
from trainer.reasoning.universe.hearing import MASKED_DB
from trainer.sound.traits import BALANCE, CENTROID, LEVEL

TRACKED_CORRECT = 0.7071
"""What a one-up two-down track converges to: the square root of one half."""

ACROSS_SLOTS = 2.0
"""How much coarser slots are compared than two tones in a booth: seconds apart, one hearing. From memory."""

OCTAVE_STEP, BALANCE_STEP_DB = 0.15, 1.5
"""Steps of brightness and of left against right that can be distinguished across slots: from memory."""

COMMON_LEVEL_DB, COMMON_OCTAVES = 6.0, 0.4
"""How far level and brightness of all slots together may lie from what is expected of an unknown engine,
heard from about a place by somebody's ears: one standard deviation, from memory."""

BODY_LEVEL_DB, BODY_OCTAVES, BODY_BALANCE_DB = 1.0, 0.15, 1.0
"""The same for each injector's own body and way to the ear: from memory."""

BED_CENTROID_HZ = 500.0
OPEN_READS_OHM = 1e9
"""What an over-range display stands for."""

CURRENT_STEP_A, DIP_STEP_S, DIP_STEP_A = 0.15, 6e-5, 0.2
"""What two readings of a trace's peak, dip time and dip depth may differ by: from memory."""


def level_step_db(sensation_db: Floats) -> Floats:
    """Return the just noticeable level step in dB, from the level over threshold in dB."""
    return np.asarray(10.0 * np.log10(1.0 + 0.463 * 10.0 ** (-0.0072 * np.asarray(sensation_db))))


def d_prime_of(proportion_correct: float) -> float:
    """Return d′ from the proportion correct of two alternatives."""
    return float(np.sqrt(2.0) * ndtri(proportion_correct))


_SENSATION = np.arange(0.0, 120.1, 0.1)
_STEPS = np.concatenate([[0.0], np.cumsum(0.1 * d_prime_of(TRACKED_CORRECT) / level_step_db(_SENSATION[:-1] + 0.05))])


def level_scale(level_dba: Floats, bed_dba: float) -> Floats:
    """Return levels in units of d′ of two tones side by side; what lies under the bed is all alike."""
    sensation = 10.0 * np.log1p(10.0 ** ((np.asarray(level_dba) - bed_dba + MASKED_DB) / 10.0)) / np.log(10.0)
    return np.asarray(np.interp(sensation, _SENSATION, _STEPS))


def level_power(heard: Floats) -> Floats:
    """Return the power, in units of the masked threshold, of levels as `heard_scale` gives them."""
    sensation = np.interp(np.asarray(heard) * ACROSS_SLOTS, _STEPS, _SENSATION)
    return np.asarray(10.0 ** (sensation / 10.0) - 1.0)


def level_of(power: Floats) -> Floats:
    """Return powers in units of the masked threshold on the level scale of `heard_scale`."""
    sensation = 10.0 * np.log10(1.0 + np.maximum(power, 0.0))
    return np.asarray(np.interp(sensation, _SENSATION, _STEPS) / ACROSS_SLOTS)


def heard_scale(traits: Floats, bed_dba: float) -> Floats:
    """Return a slot's traits (…, trait) as a listener tells them apart from another slot's, on one scale."""
    share = _audible_share(traits, bed_dba)
    bright = share * np.log2(np.maximum(traits[..., CENTROID], 20.0) / BED_CENTROID_HZ)
    return np.stack(
        [
            level_scale(traits[..., LEVEL], bed_dba) / ACROSS_SLOTS,
            bright / OCTAVE_STEP,
            share * np.clip(traits[..., BALANCE], -30.0, 30.0) / BALANCE_STEP_DB,
        ],
        axis=-1,
    )


def ear_spread(traits: Floats, bed_dba: float) -> tuple[Floats, Floats]:
    """Return one standard deviation of what listener, engine and place move together, and of each body, on the scale.

    Both have the shape of `heard_scale`: a slot is heard beside its mates, never against a level known beforehand.
    """
    louder = traits[..., LEVEL] + 1.0
    per_db = (level_scale(louder, bed_dba) - level_scale(traits[..., LEVEL], bed_dba)) / ACROSS_SLOTS
    per_octave = _audible_share(traits, bed_dba) / OCTAVE_STEP
    nothing = np.zeros_like(per_db)
    return (
        np.stack([per_db * COMMON_LEVEL_DB, per_octave * COMMON_OCTAVES, nothing], axis=-1),
        np.stack(
            [per_db * BODY_LEVEL_DB, per_octave * BODY_OCTAVES, nothing + BODY_BALANCE_DB / BALANCE_STEP_DB], axis=-1
        ),
    )


def _audible_share(traits: Floats, bed_dba: float) -> Floats:
    """Return how much of a slot's brightness and side is heard as it sinks into the bed, 0 to 1."""
    return np.asarray(1.0 / (1.0 + 10.0 ** ((bed_dba - MASKED_DB - traits[..., LEVEL]) / 10.0)))


def accuracy_scale(value: Floats, percent: float, least: float) -> Floats:
    """Return readings on a scale whose unit is the standard uncertainty of ±(percent of reading + least).

    The limits are those of a rectangular distribution (GUM 4.3.7: divided by the square root of 3).
    """
    share = percent / 100.0
    return np.asarray(np.sqrt(3.0) / share * np.log1p(share * np.maximum(np.asarray(value), 0.0) / least))


VOLTS_PERCENT, VOLTS_LEAST = 0.5, 0.05
"""Accuracy of a hand-held meter on volts, and what two readings at rest differ by at least: from memory."""


def volts_scale(volts: Floats) -> Floats:
    """Return volts at rest as a meter tells them apart."""
    return accuracy_scale(np.abs(volts), VOLTS_PERCENT, VOLTS_LEAST)


def ohm_scale(ohm: Floats, meter: Meter) -> Floats:
    """Return resistances as this meter tells them apart; what is over its range reads as open."""
    seen = np.where(np.asarray(ohm) > meter.top_ohm, OPEN_READS_OHM, ohm)
    return accuracy_scale(seen, meter.percent, meter.counts * meter.step_ohm)


def insulation_scale(ohm: Floats, meter: Meter) -> Floats:
    """Return insulation resistances as the tester tells them apart."""
    seen = np.where(np.asarray(ohm) > meter.insulation_top_ohm, OPEN_READS_OHM, ohm)
    return accuracy_scale(seen, meter.insulation_percent, 1e4)
