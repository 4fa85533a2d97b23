"""What is no slot tells nothing: bed, its level and sound, length of the file, seed, code and name, over a thousand drawn cases."""

from __future__ import annotations

import zlib

import numpy as np
import pytest

from tests.engines import NORTH
from trainer.arrays import Floats
from trainer.cases.drawing.random_case import draw_case
from trainer.cases.single_case.case import Case
from trainer.circuit.drive import slots_of
from trainer.sound.bed import BedKind, bed_pa
from trainer.sound.render import SAMPLE_RATE_HZ, timeline_of

CASES, DIFFICULTY, FOLDS = 1000, 3, 5
HEARD_S = 0.6
"""How much of the bed is looked at: what a file begins with."""


def seen(case: Case) -> list[float]:
    """Return all that a file shows beside its slots."""
    frames = round(HEARD_S * SAMPLE_RATE_HZ)
    bed = bed_pa(case.bed.kind, case.bed.level_dba, frames, SAMPLE_RATE_HZ, case.seed)
    bands = np.abs(np.fft.rfft(bed[:, 0]))[: frames // 2].reshape(10, -1)
    name = zlib.crc32(case.name.encode("utf-8"))
    _windows, length_s = timeline_of(case.profile.schedule, slots_of(case.profile))
    return [
        *(float(case.bed.kind is kind) for kind in BedKind), case.bed.level_dba, case.temperature_c, length_s,
        *np.log10((bands**2).sum(axis=1)), float(np.abs(bed).max()),
        *(float(case.seed >> bit & 1) for bit in range(16)), *(float(name >> bit & 1) for bit in range(16)),
    ]  # fmt: skip


def guessed_right(features: Floats, truth: np.ndarray, chance: np.random.Generator) -> float:
    """Return how often a linear classifier, learned on four fifths at a time, names the rest."""
    spread = features.std(axis=0)
    scaled = (features - features.mean(axis=0)) / np.where(spread > 0.0, spread, 1.0)
    scaled = np.hstack([scaled, np.ones((len(scaled), 1))])
    targets = (truth[:, None] == np.unique(truth)).astype(float)
    fold = chance.integers(0, FOLDS, len(truth))
    right = 0
    for held in range(FOLDS):
        a, b = scaled[fold != held], targets[fold != held]
        weights = np.linalg.solve(a.T @ a + 10.0 * np.eye(a.shape[1]), a.T @ b)
        right += int((np.unique(truth)[(scaled[fold == held] @ weights).argmax(axis=1)] == truth[fold == held]).sum())
    return right / len(truth)


@pytest.mark.parametrize("asked", ["place", "kind", "cylinder", "passes"])
def test_a_classifier_that_sees_everything_but_the_slots_guesses_at_chance(asked: str) -> None:
    cases = [draw_case(NORTH, DIFFICULTY, seed) for seed in range(CASES)]
    names = {
        "place": lambda case: str(case.faults[0].location) if case.faults else "",
        "kind": lambda case: str(case.faults[0].kind) if case.faults else "",
        "cylinder": lambda case: str(case.faults[0].cylinders[0]) if case.faults else "",
        "passes": lambda case: str(not case.faults),
    }
    truth = np.array([names[asked](case) for case in cases])
    features = np.array([seen(case) for case in cases])
    _values, counts = np.unique(truth, return_counts=True)
    commonest = counts.max() / CASES
    # one who always names the commonest; three standard deviations of a share of a thousand
    allowed = commonest + 3.0 * np.sqrt(commonest * (1.0 - commonest) / CASES)
    assert guessed_right(features, truth, np.random.default_rng(1)) < allowed
    # and what did tell would be found
    told = np.hstack([features, truth[:, None] == _values])
    assert guessed_right(told, truth, np.random.default_rng(1)) > allowed
