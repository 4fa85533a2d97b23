"""Draws one slot of each class, waveform and spectrogram at the same scale: `python -m tests.house.slot_classes`.

A tenth of a second at the front without a bed, the first engine. It writes assets_generated/slot_classes.svg.
"""

from __future__ import annotations

import hashlib
import json
from itertools import groupby, pairwise
from pathlib import Path

import numpy as np

from tests.engines import NORTH, fault_of, solved
from trainer.arrays import Floats
from trainer.circuit.elements import Location, Side
from trainer.circuit.fault import Fault, FaultKind
from trainer.sound.levels import FULL_SCALE_PA, REFERENCE_PA
from trainer.sound.render import SAMPLE_RATE_HZ, Bed, render

PICTURE = Path(__file__).parents[2] / "assets_generated" / "slot_classes.svg"
CYLINDER, FROM_S, LENGTH_S, CREST_PA = 3, 0.5, 0.1, 0.25
WINDOW, COLUMNS = 256, 100
EDGES_HZ = 187.5 * 2.0 ** (np.arange(23) / 4.0)
LOWEST_DB, STEP_DB, SHADES = 10.0, 9.0, ("#1B2129", "#22384a", "#2a5570", "#34769b", "#56B4E9", "#9fd4f2", "#e6f5fd")
WIDTH, WAVE, SPECTRUM, GAP, TOP = 200, 60, 132, 12, 46
INK, QUIET, PAPER = "#E6EAEE", "#9AA7B2", "#1B2129"


def classes() -> dict[str, tuple[Fault, ...]]:
    """Return a fault for each class, by its caption."""
    limit = Fault(FaultKind.ADDED_RESISTANCE, Location.PASS_THROUGH, (CYLINDER,), Side.RETURN, 13.5)
    return {
        "even": (),
        "weak: 13.5 ohm, skips": (limit,),
        "dull: stuck plate": (fault_of(NORTH, FaultKind.STUCK_ARMATURE, CYLINDER),),
        "very faint: open": (fault_of(NORTH, FaultKind.OPEN, CYLINDER),),
        "nothing: no supply": (fault_of(NORTH, FaultKind.NO_SUPPLY, 1),),
    }


def heard(*faults: Fault) -> Floats:
    """Return a tenth of a second of one ear in pascal."""
    sound = render(solved(NORTH, *faults), "front", Bed(level_dba=-60.0), 1, [CYLINDER])
    start = round((sound.slots[0].window.start_s + FROM_S) * SAMPLE_RATE_HZ)
    return sound.samples[start - WINDOW : start + round(LENGTH_S * SAMPLE_RATE_HZ), 0].astype(float) * FULL_SCALE_PA


def shades_of(pressure: Floats) -> list[list[int]]:
    """Return the shade of each band over time, the lowest band first."""
    starts = np.linspace(0, len(pressure) - WINDOW, COLUMNS).astype(int)
    frames = pressure[starts[:, None] + np.arange(WINDOW)] * np.hanning(WINDOW)
    power = np.abs(np.fft.rfft(frames, axis=1)) ** 2 * 16.0 / (3.0 * WINDOW**2)
    bins = np.clip(np.round(EDGES_HZ / (SAMPLE_RATE_HZ / WINDOW)).astype(int), 1, WINDOW // 2)
    bands = [power[:, low : max(high, low + 1)].sum(axis=1) for low, high in pairwise(bins)]
    level = 10.0 * np.log10(np.maximum(np.array(bands), 1e-20) / REFERENCE_PA**2)
    return np.clip((level - LOWEST_DB) / STEP_DB, 0, len(SHADES) - 1).astype(int).tolist()  # type: ignore[no-any-return]


def panel(caption: str, pressure: Floats, left: int) -> list[str]:
    """Return one class as drawing elements."""
    part = pressure[WINDOW:]
    pieces = np.array_split(part, WIDTH)
    middle = TOP + WAVE / 2
    edges = [(middle - WAVE / 2 * edge / CREST_PA) for piece in pieces for edge in (piece.max(), piece.min())]
    line = " ".join(f"{left + k / 2:.1f},{np.clip(y, TOP, TOP + WAVE):.1f}" for k, y in enumerate(edges))
    drawn = [
        f'<text x="{left}" y="{TOP - 12}" fill="{INK}" font-size="14">{caption}</text>',
        f'<polyline points="{line}" fill="none" stroke="#E69F00" stroke-width="0.8"/>',
    ]
    rows = shades_of(pressure)
    height, wide, base = SPECTRUM // len(rows), WIDTH // COLUMNS, TOP + WAVE + GAP + SPECTRUM
    ways: dict[int, list[str]] = {}
    for number, row in enumerate(rows, start=1):
        at = 0
        for shade, run in groupby(row):
            count = len(list(run))
            where = f"M{left + at * wide} {base - number * height}h{count * wide}v{height}h-{count * wide}z"
            ways.setdefault(shade, []).append(where)
            at += count
    return drawn + [f'<path fill="{SHADES[shade]}" d="{"".join(way)}"/>' for shade, way in ways.items() if shade]


def picture() -> str:
    """Return the drawing."""
    every = classes()
    whole, high = len(every) * (WIDTH + GAP) + GAP, TOP + WAVE + GAP + SPECTRUM + 28
    drawn = [
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {whole} {high}" font-family="sans-serif">',
        f'<rect width="{whole}" height="{high}" fill="{PAPER}"/>',
        *(part for place, (caption, faults) in enumerate(every.items())
          for part in panel(caption, heard(*faults), GAP + place * (WIDTH + GAP))),
        f'<text x="{GAP}" y="{high - 8}" fill="{QUIET}" font-size="12">0.1 s across; waves to ±{CREST_PA} Pa; '
        f"{EDGES_HZ[0]:.0f} to {EDGES_HZ[-1]:.0f} Hz upwards by octaves; a shade is {STEP_DB:.0f} dB, from {LOWEST_DB:.0f} dB</text>",
        "</svg>",
    ]  # fmt: skip
    return "\n".join(drawn) + "\n"


if __name__ == "__main__":
    PICTURE.write_text(picture(), "utf-8")
    manifest = json.loads((PICTURE.parent / "manifest.json").read_text("utf-8"))
    manifest[PICTURE.name] = hashlib.sha256(PICTURE.read_bytes()).hexdigest()
    text = json.dumps(dict(sorted(manifest.items())), indent=1) + "\n"
    (PICTURE.parent / "manifest.json").write_text(text, "utf-8")
