"""How thick engine oil is at a temperature, and what follows from it for a plate that moves in it."""

from __future__ import annotations

import math

NU_40, NU_100 = 105.0, 14.5
"""Kinematic viscosity of an SAE 15W-40 oil in mm²/s: SAE J300 asks for 12.5 to 16.3 at 100 °C; from memory."""

OIL_SHARE = 0.5
"""How much of a plate's viscous loss is the oil's; the rest does not heed temperature. From memory."""


def viscosity_mm2_s(temperature_c: float) -> float:
    """Return the kinematic viscosity by the Walther line (ASTM D341): lg lg(ν + 0.7) falls straight over lg T."""

    def twice(nu: float) -> float:
        return math.log10(math.log10(nu + 0.7))

    def kelvin(celsius: float) -> float:
        return math.log10(celsius + 273.15)

    slope = (twice(NU_40) - twice(NU_100)) / (kelvin(100.0) - kelvin(40.0))
    return float(10.0 ** (10.0 ** (twice(NU_40) - slope * (kelvin(temperature_c) - kelvin(40.0))))) - 0.7


def thicker(temperature_c: float, than_at_c: float = 20.0) -> float:
    """Return how many times thicker the oil is than at another temperature."""
    return viscosity_mm2_s(temperature_c) / viscosity_mm2_s(than_at_c)


def drag_factor(temperature_c: float) -> float:
    """Return a plate's viscous loss over its loss at 20 °C."""
    return 1.0 - OIL_SHARE + OIL_SHARE * thicker(temperature_c)
