"""What a cold and a hot engine change: copper, oil and battery."""

from __future__ import annotations

import pytest

from tests.engines import HARBOUR, NORTH, solved
from trainer.circuit.codes import codes_of
from trainer.circuit.copper import copper_factor
from trainer.circuit.elements import Location
from trainer.circuit.fault import Conditions, Fault, FaultKind
from trainer.circuit.harness import circuit_of
from trainer.circuit.oil import NU_40, NU_100, thicker, viscosity_mm2_s
from trainer.circuit.profile import Profile
from trainer.sound.render import Bed, render

ENGINES = (NORTH, HARBOUR)


def level_dba(
    profile: Profile, slot: int, temperature_c: float, *faults: Fault, heated: Location | None = None
) -> float:
    test = solved(profile, *faults, conditions=Conditions(temperature_c, heated=heated))
    return render(test, "front", Bed(), 1, [slot]).slots[0].level_dba


def test_oil_follows_the_walther_line_through_its_two_figures() -> None:
    # ASTM D341; SAE J300 asks for 12.5 to 16.3 mm²/s at 100 °C of a 40 oil
    assert viscosity_mm2_s(40.0) == pytest.approx(NU_40, rel=1e-9)
    assert viscosity_mm2_s(100.0) == pytest.approx(NU_100, rel=1e-9)
    assert 12.5 <= NU_100 <= 16.3
    # a fall of more than a hundred times from frost to working heat: common practice, no published source
    assert thicker(-20.0, than_at_c=90.0) > 100.0


def test_cold_stiffens_the_plate_and_the_supply_and_eases_the_copper() -> None:
    cold, usual, hot = (circuit_of(NORTH, temperature_c) for temperature_c in (-20.0, 20.0, 95.0))
    assert usual.solenoids[3] == NORTH.solenoid
    assert usual.rail.source_ohm == hot.rail.source_ohm == NORTH.module.source_ohm
    assert cold.rail.source_ohm > 1.5 * usual.rail.source_ohm
    for name in ("viscous_n_s_per_m", "stick_n"):
        row = [getattr(circuit.solenoids[3], name) for circuit in (cold, usual, hot)]
        assert row[0] > 5.0 * row[1] > 5.0 * row[2]
    winding = [circuit.elements["solenoid_coil.winding.3"].ohm for circuit in (cold, usual, hot)]
    assert winding[0] / winding[1] == pytest.approx(copper_factor(-20.0))
    assert winding[0] < winding[1] < winding[2]


@pytest.mark.parametrize("profile", ENGINES, ids=lambda profile: profile.name)
def test_a_cold_engine_is_softer_all_over_and_still_has_no_code(profile: Profile) -> None:
    fall = [level_dba(profile, slot, 20.0) - level_dba(profile, slot, -20.0) for slot in (3, 4)]
    assert all(0.5 < one < 3.0 for one in fall)
    assert codes_of(solved(profile, conditions=Conditions(-20.0))) == ()


@pytest.mark.parametrize("profile", ENGINES, ids=lambda profile: profile.name)
def test_a_plate_that_sticks_when_cold_is_dull_in_frost_and_even_warm(profile: Profile) -> None:
    fault = Fault(FaultKind.STICKS_WHEN_COLD, Location.ARMATURE, (3,), None, 100.0)
    cold = level_dba(profile, 3, -10.0)
    assert cold - level_dba(profile, 3, -10.0, fault) > 6.0
    # warm air at the injector is warm air at its plate
    assert level_dba(profile, 3, -10.0, fault, heated=Location.COIL) == pytest.approx(cold, abs=1.0)
    assert level_dba(profile, 3, 70.0, fault) == pytest.approx(level_dba(profile, 3, 70.0), abs=1.0)
    assert codes_of(solved(profile, fault, conditions=Conditions(-10.0))) == ()
