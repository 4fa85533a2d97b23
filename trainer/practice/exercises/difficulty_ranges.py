"""The range of difficulty of each subject's exercises in logits, divided into levels."""

from __future__ import annotations

from collections.abc import Mapping

from trainer.practice.exercises.exercise_types import LEVELS, Spec

RANGES: Mapping[tuple[str, str], tuple[float, float]] = {
    ("ear", "which"): (-1.9, 0.4), ("ear", "what"): (-2.7, -0.3), ("ear", "hum"): (-2.7, -0.6),
    ("ear", "even"): (-2.2, -0.9), ("ear", "weak"): (-2.0, 0.4), ("ear", "dull"): (-1.8, -0.9),
    ("ear", "very_faint"): (-1.8, -0.5), ("ear", "nothing"): (-2.9, -2.9),
    ("numbering", "order"): (-1.7, -1.7), ("numbering", "counted"): (-0.3, -0.3), ("numbering", "place"): (-0.8, -0.8),
    ("numbering", "shared"): (0.4, 0.4), ("numbering", "backwards"): (1.1, 1.1),
    ("codes", "says"): (-1.7, -1.7), ("codes", "could"): (-0.9, 1.8), ("codes", "old"): (-0.4, -0.4),
    ("meter", "says"): (-1.7, -1.3), ("meter", "where"): (-0.2, -0.2), ("meter", "slip"): (-1.3, 0.7),
    ("reasoning", "next"): (-1.6, 0.6), ("reasoning", "stop"): (-0.4, 0.5),
    ("limits", "still"): (-1.5, 0.9), ("limits", "shown"): (-0.5, -0.5), ("limits", "after"): (-1.2, -1.2),
    ("job_card", "slip"): (-0.3, 0.7),
}  # fmt: skip
"""Where the computed difficulties of 60 exercises of each subject lie; a test keeps them so."""


def aim_of(spec: Spec) -> float:
    """Return the difficulty that an exercise's level aims at."""
    easiest, hardest = RANGES[spec.kind, spec.subject]
    return easiest + (hardest - easiest) * (spec.level - 1) / (LEVELS - 1)
