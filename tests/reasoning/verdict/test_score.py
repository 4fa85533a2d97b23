"""The score's arithmetic, and Brier's rule."""

from dataclasses import replace
from itertools import product

import pytest

from tests.universes import reasoner_of
from trainer.cases.single_case.shipped import case_named
from trainer.circuit.elements import Location, Side
from trainer.circuit.fault import FaultKind
from trainer.desk.caching_solver import CachingSolver
from trainer.practice.attempt.attempt import begun
from trainer.practice.attempt.judging import judged
from trainer.reasoning.universe.finding import Claim, Finding
from trainer.reasoning.universe.hearing import Heard, heard_as
from trainer.reasoning.verdict.score import Proof, binary_brier, calibration, score_of


def claim(cylinders: set[int], location: Location = Location.PASS_THROUGH, kind: FaultKind = FaultKind.OPEN) -> Claim:
    return Claim(frozenset(cylinders), location, kind)


# Brier 1950, binary form (half of the two-class sum): 0.8 true 0.04, 0.8 false 0.64
@pytest.mark.parametrize(("certainty", "right", "brier"), [(0.8, True, 0.04), (0.8, False, 0.64), (0.5, True, 0.25)])
def test_brier(certainty: float, right: bool, brier: float) -> None:
    assert binary_brier(certainty, right) == pytest.approx(brier)


def proof(share: float, economy: float) -> Proof:
    return Proof(posterior=0.95 * share, reachable=1.0, best_minutes=economy * 50.0, used_minutes=50.0)


TRUTH = (claim({1, 2, 3, 4}),)
TABLE = [
    ((claim({1, 2, 3, 4}),), 1.0, 1.0, 100.0),
    ((claim({1}),), 1.0, 1.0, 25 / 4 + 30 + 15 + 20 + 10),  # one slot for a whole group: overlap over union
    ((claim({1, 2, 3, 4}, Location.COIL),), 1.0, 1.0, 25 + 15 + 20),  # economy is nothing with a wrong place
    ((claim({1, 2, 3, 4}),), 0.5, 1.0, 25 + 30 + 15 + 10),  # and nothing unless proof is full
    ((), 1.0, 1.0, 20.0),
    ((claim({5}, Location.COIL, FaultKind.SHORTED_TURNS),), 0.0, 0.0, 0.0),
]


@pytest.mark.parametrize(("claims", "proved", "economy", "points"), TABLE)
def test_points(claims: tuple[Claim, ...], proved: float, economy: float, points: float) -> None:
    assert score_of(Finding(claims, 0.75), TRUTH, proof(proved, economy)).points == pytest.approx(points)


def test_a_part_condemned_without_a_measurement_earns_half_its_place_and_is_not_right() -> None:
    said = Finding(TRUTH, 0.75)
    by_ear, measured = (score_of(said, TRUTH, replace(proof(1.0, 1.0), measured=one)) for one in (False, True))
    assert (by_ear.location, by_ear.proof, by_ear.economy, by_ear.right) == (0.5, 0.5, 0.0, False)
    assert (measured.location, measured.proof, measured.economy, measured.right) == (1.0, 1.0, 1.0, True)
    # nothing is condemned where nothing is named
    assert score_of(Finding((), 0.75), (), replace(proof(1.0, 1.0), measured=False)).right


def test_a_place_that_no_offered_evidence_tells_from_the_true_one_shares_its_credit() -> None:
    said = Finding((claim({1, 2, 3, 4}, Location.COIL),), 0.75)
    alike = Proof(0.95, 1.0, 50.0, 50.0, frozenset({Location.COIL, Location.PASS_THROUGH}))
    assert score_of(said, TRUTH, alike).location == 1.0
    assert score_of(said, TRUTH, proof(1.0, 1.0)).location == 0.0


def test_where_a_case_stays_open_proof_is_full_at_what_can_be_reached() -> None:
    assert Proof(0.6, 0.6, 50.0, 50.0).share == 1.0
    assert Proof(0.3, 0.6, 50.0, 50.0).share == 0.5
    assert Proof(0.475, 1.0, 50.0, 50.0).share == pytest.approx(0.5)


def test_minutes_below_the_best_path_earn_no_more_than_its_own() -> None:
    assert Proof(0.95, 1.0, 100.0, 50.0).economy == 1.0
    assert Proof(0.95, 1.0, 50.0, 100.0).economy == 0.5


def test_calibration_sets_the_share_that_was_right_beside_what_was_said() -> None:
    said = [(0.95, True), (0.95, True), (0.95, False), (0.5, False)]
    assert calibration(said) == {0.5: (1, 0.0), 0.95: (3, pytest.approx(2 / 3))}


def test_where_the_circuit_passes_cylinders_and_kind_are_right_only_if_none_is_named() -> None:
    assert score_of(Finding((), 0.75), (), proof(1.0, 1.0)).points == 100.0
    named = score_of(Finding((claim({3}),), 0.75), (), proof(1.0, 1.0))
    assert (named.cylinders, named.kind, named.location) == (0.0, 0.0, 0.0)


def test_a_finding_of_three_faults_or_another_certainty_is_refused() -> None:
    with pytest.raises(ValueError, match="at most two"):
        Finding((claim({1}), claim({2}), claim({3})), 0.5)
    with pytest.raises(ValueError, match="certainty is one of"):
        Finding((), 0.9)


@pytest.mark.parametrize(
    ("level", "brightness", "heard"),
    [
        (68.0, 1.0, Heard.LOUDER),
        (65.5, 1.0, Heard.EVEN),
        (60.0, 0.9, Heard.WEAK),
        (46.0, 0.3, Heard.DULL),
        (39.0, 0.3, Heard.VERY_FAINT),
        (10.0, 1.5, Heard.NOTHING),
    ],
)
def test_the_answers(level: float, brightness: float, heard: Heard) -> None:
    assert heard_as(level, 66.0, 34.0, brightness) is heard


SOLVER = CachingSolver()
CLAIMS = [
    Claim(frozenset({1}), location, kind, side)
    for kind, location, side in product(FaultKind, Location, (None, Side.FEED, Side.RETURN))
]


@pytest.mark.parametrize("claim", CLAIMS[::23], ids=str)
def test_whatever_is_claimed_is_scored_and_judged(claim: Claim) -> None:
    """A record can hold a claim that no screen offers: it is wrong, and stops nothing."""
    case = case_named("faint_hum_on_three")
    attempt = replace(begun(case, case.seed), finding=Finding((claim,), 0.75))
    found = judged(attempt, SOLVER, reasoner_of(case.name))
    assert not found.scored.score.right
    assert 0.0 <= found.scored.score.points <= 100.0
    assert found.misconception is not None
