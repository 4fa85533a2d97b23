"""A reading as a bench shows it: value, unit, display, and what was wrong with the way it was taken."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

import numpy as np

from trainer.circuit.chance import Stream
from trainer.circuit.profile import Meter

OVER_RANGE = "OL"


class Slip(StrEnum):
    """A wrong way to measure, answered as a bench would and noted."""

    STILL_CONNECTED = "still_connected"
    LIVE = "live"
    VOLTAGE_ON_WIRE = "voltage_on_wire"
    INSULATION_INTO_PART = "insulation_into_part"
    PROBE_PUSHED = "probe_pushed"
    NOT_NULLED = "not_nulled"


@dataclass(frozen=True, slots=True)
class Reading:
    """One reading; `value` is None where the display shows no number (over range, fuse blown)."""

    instrument: str
    value: float | None
    unit: str
    display: str
    slips: tuple[Slip, ...] = ()


def accuracy_ohm(meter: Meter, ohm: float) -> float:
    """Return how far off a resistance reading may be: ±(percent of reading + counts of its range's step)."""
    return meter.percent / 100.0 * ohm + meter.counts * range_step_ohm(meter, ohm)


def range_step_ohm(meter: Meter, ohm: float) -> float:
    """Return the display's step for a value: a tenth of it up to 6000 counts, then the next range."""
    step = meter.step_ohm
    while ohm >= 6000.0 * step:
        step *= 10.0
    return step


def shown_ohm(meter: Meter, true_ohm: float, seed: int, what: str) -> tuple[float | None, str]:
    """Return value and display of a resistance; the error belongs to the meter, by seed."""
    if not np.isfinite(true_ohm) or true_ohm > meter.top_ohm:
        return None, OVER_RANGE
    step = range_step_ohm(meter, max(true_ohm, 0.0))
    # one meter is off the same way everywhere, by at most a third of its limits; each contact adds a part of a count
    off = (2.0 * Stream(seed, "this meter").uniform(1)[0] - 1.0) / 3.0 * accuracy_ohm(meter, abs(true_ohm))
    touch = 0.6 * (float(Stream(seed, f"meter {what}").uniform(1)[0]) - 0.5) * step
    value = max(round((true_ohm + off + touch) / step) * step, 0.0)
    return value, display_ohm(value, step)


def display_ohm(value: float, step: float) -> str:
    """Return a resistance as a display writes it: ohm, kilohm or megohm with the digits of its range."""
    for factor, prefix in ((1e6, "M"), (1e3, "k")):
        if value >= factor:
            digits = max(-int(np.floor(np.log10(step / factor) + 1e-9)), 0)
            return f"{value / factor:.{min(digits, 3)}f} {prefix}Ω"
    digits = max(-int(np.floor(np.log10(step) + 1e-9)), 0)
    return f"{value:.{digits}f} Ω"
