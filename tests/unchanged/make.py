"""Makes again what is kept: numbers of the model, levels of every engine, pictures in assets_generated/ with their manifest.

These guard against change; they prove nothing. Run: python -m tests.unchanged.make
"""

from __future__ import annotations

import hashlib
import json
import sys
from collections.abc import Mapping
from pathlib import Path
from typing import Any

import numpy as np
from numpy.typing import NDArray

from tests.engines import ALL, NORTH, fault_of, solved
from tests.universes import WITHIN, reasoner_of
from trainer.cases.single_case.shipped import case_named, case_names
from trainer.circuit.fault import FaultKind
from trainer.circuit.profile import Profile
from trainer.reasoning.model_version import MODEL_VERSION
from trainer.reasoning.universe.questions import states_in
from trainer.sound.render import Bed, Sound, render

HERE = Path(__file__).parent
ASSETS = HERE.parents[1] / "assets_generated"
MODEL = "model.json"
STRIP = "actuation_test_open_on_3.svg"
WIDTH, HEIGHT, MIDDLE = 1200, 260, 120


def levels(profile: Profile) -> dict[str, list[float]]:
    """Return the slots' levels of a good engine and of three faults, to a tenth of a decibel."""
    kinds = {"none": None, "open": FaultKind.OPEN, "stuck": FaultKind.STUCK_ARMATURE, "turns": FaultKind.SHORTED_TURNS}
    rows = {}
    for name, kind in kinds.items():
        test = solved(profile, *([fault_of(profile, kind, 3)] if kind else []))
        rows[name] = [round(slot.level_dba, 1) for slot in render(test, "front", Bed(), 1).slots]
    return rows


def numbers_of(profile: Profile) -> dict[str, list[float]]:
    """Return numbers that everything else follows from, by what they are of.

    Expected answers of every hypothesis to every test of the menu; a rendered test; the best path.
    """
    rows: dict[str, list[float]] = {}
    cases = [case for case in map(case_named, case_names()) if case.profile.name == profile.name]
    reasoner = reasoner_of(min(cases, key=lambda case: (case.difficulty, case.name)).name)
    kept = reasoner.universe.expectations.kept
    for test in reasoner.universe.menu:
        rows[str(test.name)] = _summary(np.concatenate([kept[state].ravel() for state in states_in([test])]))
    sound = render(solved(profile, fault_of(profile, FaultKind.OPEN, 3)), "front", Bed(), 1)
    rows["levels"] = [part.level_dba for part in sound.slots]
    rows["centroids"] = [part.centroid_hz for part in sound.slots]
    rows["samples"] = _summary(sound.samples.astype(np.float64).ravel())
    rows["best path"] = [number for step in reasoner.best_path for number in (step.minutes, step.bits)]
    return rows


def moved(kept: Mapping[str, Any], numbers: Mapping[str, Mapping[str, list[float]]]) -> list[str]:
    """Return which rows of which engines differ from those kept, or are there on one side only."""
    return [
        f"{engine} {row}"
        for engine, rows in numbers.items()
        for row in sorted(rows.keys() | kept[engine].keys())
        if row not in rows or row not in kept[engine] or len(rows[row]) != len(kept[engine][row])
        or not np.allclose(rows[row], kept[engine][row], rtol=WITHIN, atol=WITHIN)
    ]  # fmt: skip


def _summary(values: NDArray[np.float64]) -> list[float]:
    """Return mean, spread and what a fixed random direction sees: a number that moves alone moves the third."""
    direction = np.random.default_rng(1).standard_normal(len(values))
    return [float(values.mean()), float(values.std()), float(direction @ values)]


def strip_svg(sound: Sound) -> str:
    """Return a test as a strip along time: one upright stroke for each 25 ms, as high as its peak in decibel."""
    frames = round(0.025 * sound.rate_hz)
    count = len(sound.samples) // frames
    peaks = np.abs(sound.samples[: count * frames]).max(axis=1).reshape(count, frames).max(axis=1)
    heights = np.clip((20.0 * np.log10(peaks) + 70.0) / 55.0, 0.0, 1.0) * 90.0
    length_s = len(sound.samples) / sound.rate_hz
    lines = [
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {WIDTH} {HEIGHT}" font-family="sans-serif" font-size="20">',
        "<title>An actuation test along time: all together, then each cylinder in numeric order; slot 3 only hums</title>",
        f'<rect width="{WIDTH}" height="{HEIGHT}" fill="#14191F"/>',
    ]
    for part in sound.slots:
        left, right = (round(WIDTH * t / length_s) for t in (part.window.start_s, part.window.end_s))
        marked = part.window.slot.number == 3
        frame = ' stroke="#E69F00" stroke-width="3"' if marked else ""
        lines.append(f'<rect x="{left}" y="20" width="{right - left}" height="200" rx="6" fill="#1B2129"{frame}/>')
        colour, weight = ("#E69F00", "bold") if marked else ("#C9D2DA", "normal")
        centre = (left + right) // 2
        name = f'<text x="{centre}" y="248" fill="{colour}" font-weight="{weight}" text-anchor="middle">'
        lines.append(f"{name}{part.window.slot.name}</text>")
    for number, height in enumerate(heights):
        x = round(WIDTH * (number + 0.5) * 0.025 / length_s)
        tall = max(round(float(height)), 1)
        lines.append(f'<path d="M{x} {MIDDLE - tall}V{MIDDLE + tall}" stroke="#56B4E9"/>')
    return "\n".join([*lines, "</svg>"]) + "\n"


def strip() -> str:
    """Return the README's picture."""
    return strip_svg(render(solved(NORTH, fault_of(NORTH, FaultKind.OPEN, 3)), "front", Bed(level_dba=32.0), 1))


def main() -> None:
    """Write everything."""
    kept = {profile.name: levels(profile) for profile in ALL}
    (HERE / "levels.json").write_text(json.dumps(kept, indent=1) + "\n", "utf-8")
    numbers = {profile.name: numbers_of(profile) for profile in ALL}
    before = json.loads((HERE / MODEL).read_text("utf-8"))
    if before["version"] == MODEL_VERSION and moved(before, numbers):
        sys.exit(
            f"These numbers have moved, so raise MODEL_VERSION first: {', '.join(moved(before, numbers))}. If this change "
            "has raised it already: git checkout main -- tests/unchanged/model.json, then make again."
        )
    (HERE / MODEL).write_text(json.dumps({"version": MODEL_VERSION, **numbers}, indent=1) + "\n", "utf-8")
    picture = strip()
    (ASSETS / STRIP).write_text(picture, "utf-8")
    manifest = json.loads((ASSETS / "manifest.json").read_text("utf-8"))
    manifest[STRIP] = hashlib.sha256(picture.encode("utf-8")).hexdigest()
    (ASSETS / "manifest.json").write_text(json.dumps(manifest, indent=1) + "\n", "utf-8")


if __name__ == "__main__":
    main()
