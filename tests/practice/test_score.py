"""The score's arithmetic, and Brier's rule."""

import pytest

from trainer.circuit.elements import Location
from trainer.circuit.faults import FaultKind
from trainer.reasoning.finding import Claim, Finding
from trainer.reasoning.hearing import Heard, heard_as
from trainer.reasoning.score import binary_brier, score_of


def claim(cylinders: set[int], location: Location = Location.PASS_THROUGH, kind: FaultKind = FaultKind.OPEN) -> Claim:
    return Claim(frozenset(cylinders), location, kind)


# Brier 1950, binary form (half of the two-class sum): 0.8 true 0.04, 0.8 false 0.64
@pytest.mark.parametrize(("certainty", "right", "brier"), [(0.8, True, 0.04), (0.8, False, 0.64), (0.5, True, 0.25)])
def test_brier(certainty: float, right: bool, brier: float) -> None:
    assert binary_brier(certainty, right) == pytest.approx(brier)


TRUTH = (claim({1, 2, 3, 4}),)
TABLE = [
    ((claim({1, 2, 3, 4}),), 1.0, 1.0, 100.0),
    ((claim({1}),), 1.0, 1.0, 25 / 4 + 30 + 15 + 20 + 10),  # one slot for a whole group: overlap over union
    ((claim({1, 2, 3, 4}, Location.COIL),), 1.0, 1.0, 25 + 15 + 20),  # economy is nothing with a wrong place
    ((claim({1, 2, 3, 4}),), 0.5, 1.0, 25 + 30 + 15 + 10),  # and nothing unless proof is full
    ((), 1.0, 1.0, 20.0),
    ((claim({5}, Location.COIL, FaultKind.SHORTED_TURNS),), 0.0, 0.0, 0.0),
]


@pytest.mark.parametrize(("claims", "proof", "economy", "points"), TABLE)
def test_points(claims: tuple[Claim, ...], proof: float, economy: float, points: float) -> None:
    assert score_of(Finding(claims, 0.75), TRUTH, proof, economy).points == pytest.approx(points)


def test_where_the_circuit_passes_cylinders_and_kind_are_right_only_if_none_is_named() -> None:
    assert score_of(Finding((), 0.75), (), 1.0, 1.0).points == 100.0
    named = score_of(Finding((claim({3}),), 0.75), (), 1.0, 1.0)
    assert (named.cylinders, named.kind, named.location) == (0.0, 0.0, 0.0)


def test_a_finding_of_three_faults_or_another_certainty_is_refused() -> None:
    with pytest.raises(ValueError, match="at most two"):
        Finding((claim({1}), claim({2}), claim({3})), 0.5)
    with pytest.raises(ValueError, match="certainty is one of"):
        Finding((), 0.9)


@pytest.mark.parametrize(
    ("level", "heard"),
    [
        (71.0, Heard.LOUDER),
        (65.5, Heard.EVEN),
        (60.0, Heard.WEAK),
        (46.0, Heard.DULL),
        (39.0, Heard.VERY_FAINT),
        (10.0, Heard.NOTHING),
    ],
)
def test_the_answers(level: float, heard: Heard) -> None:
    assert heard_as(level, 66.0, 34.0) is heard
