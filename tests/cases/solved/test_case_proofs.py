"""check refuses what cannot be solved or heard, and says what would mend it."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.universes import UNIVERSES
from trainer.cases.single_case.shipped import scenarios_folder
from trainer.commands.case_commands.check_files import check_paths

HUM = (scenarios_folder() / "cases" / "faint_hum_on_three.yaml").read_text("utf-8")


def told(text: str, folder: Path) -> list[str]:
    path = folder / "mine.yaml"
    path.write_text(text, "utf-8")
    result = check_paths([path], UNIVERSES)
    return list(result.lines[:-1]) if result.exit_code else []


def test_evidence_that_cannot_decide_is_refused_with_what_is_left_and_what_to_offer(tmp_path: Path) -> None:
    (line,) = told(HUM.replace("evidence: all", "evidence: [actuation_test, codes]"), tmp_path)
    assert "evidence is too little to single out the truth: it leaves open, pass-through connector, cylinder 3" in line
    assert "more. Allowed: the truth at 95 %" in line
    offer = line.partition("offer ")[2].partition(" too")[0]
    mended = HUM.replace("evidence: all", f"evidence: [actuation_test, codes, {offer}]")
    assert told(mended, tmp_path) == []


def test_a_hum_under_the_bed_is_refused_and_the_mend_mends(tmp_path: Path) -> None:
    bed = next(line for line in HUM.splitlines() if line.startswith("bed:"))
    (line,) = told(HUM.replace(bed, "bed: {kind: compressor, level_dba: 45.0}"), tmp_path)
    assert "bed is too loud: 45.0 dB(A), when slot 3 is at" in line
    level = line.partition("lower the bed to ")[2].partition(" ")[0]
    assert told(HUM.replace(bed, f"bed: {{kind: compressor, level_dba: {level}}}"), tmp_path) == []


STAYS_OPEN = "stays_open: {right_answer: []}\n"


def test_a_case_may_stay_open_on_purpose_and_says_what_is_then_right(tmp_path: Path) -> None:
    warm = (scenarios_folder() / "cases" / "dies_after_lunch.yaml").read_text("utf-8")
    cold = warm.replace("evidence: all", "evidence: [actuation_test, codes, module_ohms]")
    (line,) = told(cold, tmp_path)
    assert "too little to single out the truth" in line
    assert told(cold + STAYS_OPEN, tmp_path) == []


def test_a_case_that_is_called_open_and_is_not_is_refused(tmp_path: Path) -> None:
    (line,) = told(HUM + STAYS_OPEN, tmp_path)
    assert "stays_open is set, although the evidence proves open, pass-through connector, cylinder 3" in line


@pytest.mark.parametrize(
    ("addition", "says"),
    [
        ("stays_open: true\n", "these fields, each on a line below: right_answer"),
        ("stays_open: {right_answer: circuit_passes}\n", "a list, for example: []"),
        ("stays_open: {right_answer: [{kind: open, location: solenoid_coil, cylinders: [99]}]}\n", "stays_open.right_answer"),
        ("priors: {armature: 1.0}\n", "priors"),
        ("priors: {circuit_passes: 0.5, drive_module: 0.6, engine_harness: 0, pass_through_connector: 0, "
         "under_cover_harness: 0, solenoid_coil: 0, armature: 0}\n", "a sum of 1"),
    ],
)  # fmt: skip
def test_what_is_wrong_with_the_new_fields_is_told(addition: str, says: str, tmp_path: Path) -> None:
    (line,) = told(HUM + addition, tmp_path)
    assert says in line
