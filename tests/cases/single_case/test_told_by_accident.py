"""What is no slot tells nothing: bed, its level and sound, length of the file, seed, code and name, over a thousand drawn cases."""

from __future__ import annotations

import io
import wave
import zlib

import numpy as np
import pytest

from tests.engines import NORTH
from trainer.arrays import Floats
from trainer.cases.drawing.random_case import draw_case
from trainer.cases.single_case.case import Case
from trainer.circuit.drive import slots_of
from trainer.circuit.faults import Conditions, faulty_circuit
from trainer.circuit.solve import solve_test
from trainer.output.wav import wav_bytes
from trainer.sound.bed import BedKind, bed_pa
from trainer.sound.render import SAMPLE_RATE_HZ, render, timeline_of

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


NAMED = {
    "place": lambda case: str(case.faults[0].location) if case.faults else "",
    "kind": lambda case: str(case.faults[0].kind) if case.faults else "",
    "cylinder": lambda case: str(case.faults[0].cylinders[0]) if case.faults else "",
    "passes": lambda case: str(not case.faults),
}
"""What is guessed of a case."""


def assert_guessed_at_chance(features: Floats, truth: np.ndarray) -> None:
    """Ask that features name the truth no oftener than always saying the commonest, and that what tells is found."""
    _values, counts = np.unique(truth, return_counts=True)
    commonest = counts.max() / len(truth)
    # three standard deviations of a share of so many
    allowed = commonest + 3.0 * np.sqrt(commonest * (1.0 - commonest) / len(truth))
    assert guessed_right(features, truth, np.random.default_rng(1)) < allowed
    told = np.hstack([features, truth[:, None] == _values])
    assert guessed_right(told, truth, np.random.default_rng(1)) > allowed


@pytest.mark.parametrize("asked", NAMED)
def test_a_classifier_that_sees_everything_but_the_slots_guesses_at_chance(asked: str) -> None:
    cases = [draw_case(NORTH, DIFFICULTY, seed) for seed in range(CASES)]
    assert_guessed_at_chance(np.array([seen(case) for case in cases]), np.array([NAMED[asked](case) for case in cases]))


def left_of_file(case: Case) -> list[float]:
    """Return what a rendered file still shows once its slots are blanked, tails included, in half octaves at each ear."""
    places = [fault.location for fault in case.faults]
    at_work = Conditions(case.temperature_c, moved=places[0], heated=places[0]) if places else None
    sound = render(solve_test(faulty_circuit(case.profile, case.faults, at_work)), "front", case.bed, case.seed)
    content = wav_bytes(sound.samples, sound.rate_hz)
    with wave.open(io.BytesIO(content)) as file:
        read = pcm24(file.readframes(file.getnframes()))
    kept = np.ones(len(read), dtype=bool)
    for slot in sound.slots:
        kept[round(slot.window.start_s * sound.rate_hz) : round((slot.window.end_s + TAIL_S) * sound.rate_hz)] = False
    left = read[kept]
    power = np.abs(np.fft.rfft(left, axis=0)) ** 2
    edges = np.unique(np.geomspace(20.0 * len(left) / sound.rate_hz, len(power), 20).astype(int))
    bands = np.log10(np.add.reduceat(power, edges[:-1], axis=0) + 1.0)
    return [len(content), len(left), float(np.abs(left).max()), *left.mean(axis=0), *bands.ravel()]


def pcm24(content: bytes) -> Floats:
    """Return 24-bit stereo as whole numbers, shape (frame, ear)."""
    parts = np.frombuffer(content, dtype=np.uint8).reshape(-1, 3).astype(np.int32)
    values = parts[:, 0] | parts[:, 1] << 8 | parts[:, 2] << 16
    return np.where(values >= 1 << 23, values - (1 << 24), values).reshape(-1, 2).astype(float)


TAIL_S = 0.35
"""How long a slot may be heard after its end, in a bay."""


@pytest.mark.long
def test_a_classifier_that_sees_whole_files_without_their_slots_guesses_at_chance() -> None:
    cases = [draw_case(NORTH, DIFFICULTY, seed) for seed in range(CASES)]
    features = np.array([[*seen(case), *left_of_file(case)] for case in cases])
    for name in NAMED.values():
        assert_guessed_at_chance(features, np.array([name(case) for case in cases]))
