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
"""Steps of brightness and of left against right that are told apart across slots: from memory."""

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
    share = 1.0 / (1.0 + 10.0 ** ((bed_dba - MASKED_DB - traits[..., LEVEL]) / 10.0))
    bright = share * np.log2(np.maximum(traits[..., CENTROID], 20.0) / BED_CENTROID_HZ)
    return np.stack(
        [
            level_scale(traits[..., LEVEL], bed_dba) / ACROSS_SLOTS,
            bright / OCTAVE_STEP,
            share * np.clip(traits[..., BALANCE], -30.0, 30.0) / BALANCE_STEP_DB,
        ],
        axis=-1,
    )


def accuracy_scale(value: Floats, percent: float, least: float) -> Floats:
    """Return readings on a scale whose unit is the standard uncertainty of ±(percent of reading + least).

    The limits are those of a rectangular distribution (GUM 4.3.7: divided by the square root of 3).
    """
    share = percent / 100.0
    return np.asarray(np.sqrt(3.0) / share * np.log1p(share * np.maximum(np.asarray(value), 0.0) / least))


def ohm_scale(ohm: Floats, meter: Meter) -> Floats:
    """Return resistances as this meter tells them apart; what is over its range reads as open."""
    seen = np.where(np.asarray(ohm) > meter.top_ohm, OPEN_READS_OHM, ohm)
    return accuracy_scale(seen, meter.percent, meter.counts * meter.step_ohm)


def insulation_scale(ohm: Floats, meter: Meter) -> Floats:
    """Return insulation resistances as the tester tells them apart."""
    seen = np.where(np.asarray(ohm) > meter.insulation_top_ohm, OPEN_READS_OHM, ohm)
    return accuracy_scale(seen, meter.insulation_percent, 1e4)
