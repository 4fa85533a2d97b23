"""Codes against SAE J2012 (generic powertrain codes) and SAE J1939 (SPN 651 on, failure modes)."""

import pytest

from tests.engines import ALL, table
from trainer.circuit.codes import FMI, Sensed, code_of

PUBLISHED = {(row["kind"], int(row["cylinder"])): row["code"] for row in table("generic_injector_codes.csv")
             if row["cylinder"]}  # fmt: skip


@pytest.mark.parametrize("cylinder", range(1, 13))
@pytest.mark.parametrize(
    ("sensed", "kind"), [(Sensed.OPEN, "circuit/open"), (Sensed.TRIPPED, "circuit low"), (Sensed.OVER, "circuit high")]
)
def test_each_cylinder_has_the_generic_code_of_j2012(cylinder: int, sensed: Sensed, kind: str) -> None:
    code = code_of("p02xx", sensed, cylinder)
    assert code is not None
    assert code.code == PUBLISHED[kind, cylinder]


def test_the_formula_holds_where_one_public_list_is_wrong() -> None:
    # a public list gives P0276 to cylinder 5; low is 261 + 3(n − 1), so it is cylinder 6
    code = code_of("p02xx", Sensed.TRIPPED, 6)
    assert code is not None
    assert code.code == "P0276"


@pytest.mark.parametrize(("group", "published"), [(0, "P2146"), (1, "P2149")])
def test_group_supply_codes(group: int, published: str) -> None:
    code = code_of("p02xx", Sensed.GROUP_OPEN, None, group)
    assert code is not None
    assert code.code == published


@pytest.mark.parametrize("cylinder", range(1, 9))
def test_spn_651_is_the_first_injector(cylinder: int) -> None:
    code = code_of("spn_fmi", Sensed.OPEN, cylinder)
    assert code is not None
    assert (code.spn, code.fmi) == (651 + cylinder - 1, 5)


def test_failure_modes_mean_what_j1939_73_says() -> None:
    meaning = {int(row["fmi"]): row["meaning"] for row in table("j1939_fmi.csv")}
    assert "open circuit" in meaning[FMI[Sensed.OPEN]]
    assert "grounded" in meaning[FMI[Sensed.OVER]]
    assert "shorted to low" in meaning[FMI[Sensed.TRIPPED]]
    assert "shorted to high" in meaning[FMI[Sensed.HELD_HIGH]]


def test_both_code_systems_are_shipped() -> None:
    assert {profile.codes for profile in ALL} == {"p02xx", "spn_fmi"}


def test_every_code_that_a_fault_sets_is_known_by_its_text() -> None:
    from tests.engines import fault_of, solved
    from trainer.circuit.codes import codes_of, known_codes
    from trainer.circuit.faults import FaultKind

    for profile in ALL:
        for kind in (FaultKind.OPEN, FaultKind.STUCK_RETURN_DRIVER, FaultKind.NO_SUPPLY, FaultKind.SHORT_ACROSS_PAIR):
            for code in codes_of(solved(profile, fault_of(profile, kind, 2))):
                assert known_codes(profile)[code.code].cylinder == code.cylinder
