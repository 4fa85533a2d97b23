"""Resistance of copper conductors (IEC 60028)."""

RESISTIVITY_OHM_M = 1.7241e-8
"""Annealed copper at 20 °C, 100 % IACS (IEC 60028)."""

COEFFICIENT_PER_K = 0.00393
"""Temperature coefficient of resistance at 20 °C (IEC 60028)."""


def copper_factor(temperature_c: float) -> float:
    """Return the resistance of copper at a temperature over its resistance at 20 °C."""
    return 1.0 + COEFFICIENT_PER_K * (temperature_c - 20.0)


def wire_resistance_ohm(length_m: float, area_mm2: float, temperature_c: float) -> float:
    """Return the resistance of one copper conductor.

    Raises ValueError if the length is negative or the area is not above zero.
    """
    if length_m < 0.0 or area_mm2 <= 0.0:
        raise ValueError(f"a wire needs a length of 0 m or more and an area above 0, found {length_m=}, {area_mm2=}")
    return RESISTIVITY_OHM_M * length_m / (area_mm2 * 1e-6) * copper_factor(temperature_c)
