"""What commands print is in the language that is spoken, decimal mark and all."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.universes import UNIVERSES
from trainer.commands.case_commands.inspect_case import inspect_case
from trainer.commands.case_commands.write_sound import write_sound
from trainer.words import figure, speaking


@pytest.mark.parametrize(
    ("language", "slot", "driven", "saved"),
    [
        (
            "en",
            "slot   3:  35.0 dB(A)",
            "cylinder 3, current while driven",
            "2.7 s, 1 slot, heard from the place front",
        ),
        ("de", "Takt   3:  35,0 dB(A)", "Zylinder 3, Strom beim Ansteuern", "2,7 s, 1 Takt, gehört vom Platz front"),
    ],
)
def test_inspect_and_hear_speak(language: str, slot: str, driven: str, saved: str, tmp_path: Path) -> None:
    with speaking(language):
        shown = "\n".join(inspect_case("faint_hum_on_three", UNIVERSES, None, None, loudness=False).lines)
        written = write_sound("faint_hum_on_three", tmp_path / "slot.wav", "3", "front", None).lines[0]
    assert slot in shown
    assert driven in shown
    assert written.endswith(saved)


def test_a_number_has_the_decimal_mark_of_its_language() -> None:
    with speaking("de"):
        assert figure(2.55, "g") == "2,55"
    with speaking("en"):
        assert figure(2.55, ".1f") == "2.5"
