"""Copper against IEC 60028, AWG (ASTM B258) and IEC 60228 class 5."""

import pytest

from tests.engines import table
from trainer.circuit.copper import copper_factor, wire_resistance_ohm


def awg_diameter_mm(gauge: int) -> float:
    """Return the diameter of a solid round conductor by its gauge (ASTM B258 geometric rule)."""
    return float(0.127 * 92.0 ** ((36 - gauge) / 39))


# rounded by the published tables to three figures; 22 AWG is printed as 53.2 where the formula gives 52.96
AWG_OHM_PER_KM = {10: 3.28, 12: 5.21, 14: 8.29, 16: 13.2, 18: 21.0, 20: 33.3, 22: 53.2, 24: 84.2}


@pytest.mark.parametrize(("gauge", "ohm_per_km"), AWG_OHM_PER_KM.items())
def test_a_solid_wire_has_the_published_resistance(gauge: int, ohm_per_km: float) -> None:
    area_mm2 = 3.141592653589793 / 4.0 * awg_diameter_mm(gauge) ** 2
    assert wire_resistance_ohm(1000.0, area_mm2, 20.0) == pytest.approx(ohm_per_km, rel=0.006)


@pytest.mark.parametrize("row", table("awg_copper_20C.csv"), ids=lambda row: row["awg"])
def test_gauge_gives_diameter_and_resistance(row: dict[str, str]) -> None:
    assert awg_diameter_mm(int(row["awg"])) == pytest.approx(float(row["diameter_mm"]), abs=6e-5)
    ohm = wire_resistance_ohm(1000.0, float(row["area_mm2"]), 20.0)
    assert ohm == pytest.approx(float(row["ohm_per_km_20C"]), rel=2e-3)


@pytest.mark.parametrize("row", [r for r in table("cable_max_resistance_20C.csv") if r["iec60228_cl5_plain"]])
def test_no_class_5_limit_of_iec_60228_lies_under_ideal_copper(row: dict[str, str]) -> None:
    ideal = wire_resistance_ohm(1000.0, float(row["mm2"]), 20.0)
    for column in ("iec60228_cl5_plain", "iec60228_cl5_tinned"):
        assert 1.05 < float(row[column]) / ideal < 1.20


# facts of IEC 60028's coefficient, both forms: 1 + 0.00393·(T − 20)
@pytest.mark.parametrize(
    ("celsius", "factor"), [(-40, 0.7642), (0, 0.9214), (25, 1.0196), (60, 1.1572), (100, 1.3144), (140, 1.4716)]
)
def test_hot_copper_reads_high(celsius: float, factor: float) -> None:
    assert copper_factor(celsius) == pytest.approx(factor, abs=5e-5)


def test_a_wire_of_no_area_is_refused() -> None:
    with pytest.raises(ValueError, match="area above 0"):
        wire_resistance_ohm(1.0, 0.0, 20.0)
