"""The house plan as values: which floor each room is on, what its sub-rooms are, which libraries it may import."""

from __future__ import annotations

from pathlib import Path

PACKAGE = Path(__file__).parents[2] / "trainer"

FLOOR = {
    "words": 0, "errors": 0, "arrays": 0, "circuit": 1, "sound": 2, "instruments": 2, "reasoning": 3, "cases": 4, "sets": 5,
    "practice": 6, "records": 7, "output": 7, "desk": 8, "window": 9, "terminal": 9, "commands": 10, "__main__": 11, "__init__": 0,
}  # fmt: skip
"""A room imports only from rooms on lower floors."""

SUB_ROOMS = {
    "reasoning": ("universe", "advice", "verdict"),
    "cases": ("files", "profiles", "single_case", "drawing", "solved"),
    "practice": ("attempt", "reports", "course", "exercises"),
    "records": ("store", "papers", "class_report"),
    "window": ("kit", "pictures", "shell", "bench", "course", "instructor", "station", "drawing"),
    "commands": (
        "call",
        "machine_commands",
        "practice_commands",
        "case_commands",
        "set_commands",
        "records_commands",
    ),
}
"""The sub-rooms of a room, from below: each imports only from those before it; what lies beside them may use all."""

LIBRARIES = {
    "words": set(),
    "words/build_catalogues": {"babel"},
    "errors": set(),
    "arrays": {"numpy"},
    "circuit": {"annotated_types", "numpy"},
    "sound": {"annotated_types", "numpy", "scipy", "mosqito"},
    "instruments": {"numpy"},
    "reasoning": {"numpy", "scipy"},
    "cases": {"annotated_types", "numpy", "pydantic", "pydantic_core", "yaml"},
    "sets": {"annotated_types", "pydantic", "cryptography"},
    "practice": {"numpy", "pydantic"},
    "records": {"sqlalchemy", "alembic", "psycopg", "pydantic", "jinja2", "markupsafe", "matplotlib"},
    "output": {"numpy", "pygame", "sounddevice"},
    "desk": {"numpy", "pydantic", "markupsafe"},
    "window": {"numpy"},
    "window/app": {"pygame"},
    "window/drawing": {"numpy", "pygame"},
    "window/kit": set(),
    "terminal": set(),
    "commands": {"numpy", "click", "platformdirs", "pygame"},
    "__main__": set(),
    "__init__": set(),
}
"""What a room, or a folder in it, may import from outside the standard library."""

KNOWS_ONLY = {"window/kit": {"window/kit", "words"}}
"""Folders that are general: the rooms and folders of ours that they may import, whatever lies below them."""
