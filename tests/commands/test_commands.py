"""The command line as a person or a program calls it."""

from __future__ import annotations

import json
import os
import subprocess
import sys
import wave
from pathlib import Path

import numpy as np
import pytest
from click.testing import CliRunner, Result

from trainer.cases.single_case.shipped import case_named, case_names
from trainer.circuit.elements import Location
from trainer.commands.entry import main
from trainer.desk.case_source import find_case
from trainer.sound.levels import FULL_SCALE_PA, a_weighted_level_db

NAME = "faint_hum_on_three"


def run(*words: str, typed: str = "", data: Path | None = None) -> Result:
    options = ("--data", str(data)) if data else ()
    return CliRunner().invoke(main, [*options, *words], input=typed)


def test_inspect_has_every_promised_key() -> None:
    result = run("inspect", NAME, "--json")
    assert result.exit_code == 0
    document = json.loads(result.stdout)
    assert document["faults"] == [
        {"kind": "open", "location": "pass_through_connector", "side": "return", "cylinders": [3], "severity": 1e9}
    ]
    assert (document["case"], document["profile"]) == (NAME, "north_v8")
    assert document["schedule"][0].keys() == {"slot", "start_s", "end_s"}
    assert document["schedule"][0]["slot"] == "all"
    assert document["slots"][3].keys() == {"slot", "level_dba", "with_bed_dba", "centroid_hz", "peak_current_a"}
    current_a = document["slots"][3]["peak_current_a"]
    assert current_a["3"] < 0.01 < 1.0 < current_a["1"] <= 2.0  # background current
    (code,) = document["codes"]
    assert code.keys() == {"cylinder", "code", "spn", "fmi", "meaning"}
    assert (code["cylinder"], code["code"]) == (3, "P0203")
    assert document["readings"][0].keys() == {
        "instrument",
        "break_point",
        "side",
        "cylinder",
        "value",
        "unit",
        "display",
    }


def test_a_code_never_names_a_place() -> None:
    for name in ("half_a_module", "bank_feed_on_the_block"):
        for code in json.loads(run("inspect", name, "--json").stdout)["codes"]:
            assert not any(place.value.split("_")[0] in code["meaning"] for place in Location)


def test_hear_writes_24_bit_stereo_with_the_slots_where_it_says(tmp_path: Path) -> None:
    path = tmp_path / "a.wav"
    document = json.loads(run("hear", NAME, "-o", str(path), "--json").stdout)
    with wave.open(str(path)) as file:
        assert (file.getnchannels(), file.getsampwidth(), file.getframerate()) == (2, 3, 48_000)
        raw = np.frombuffer(file.readframes(file.getnframes()), dtype=np.uint8).reshape(-1, 2, 3)
    padded = np.concatenate([np.zeros((*raw.shape[:2], 1), np.uint8), raw], axis=2).view("<i4")[:, :, 0] / 2**31
    levels = []
    for slot in document["schedule"]:
        part = padded[round(slot["start_s"] * 48_000) : round(slot["end_s"] * 48_000)]
        levels.append(a_weighted_level_db(part * FULL_SCALE_PA, 48_000))
    assert levels[0] > max(levels[1:])
    assert 20.0 < levels[1] - levels[3] < 32.0
    assert abs(levels[1] - 66.0) < 2.0
    assert not list(tmp_path.glob("*.part"))


def test_the_same_command_writes_the_same_bytes(tmp_path: Path) -> None:
    for name in ("a.wav", "b.wav"):
        run("hear", NAME, "-o", str(tmp_path / name), "--slot", "3")
    assert (tmp_path / "a.wav").read_bytes() == (tmp_path / "b.wav").read_bytes()


def test_a_netlist_of_the_case_is_written(tmp_path: Path) -> None:
    path = tmp_path / "n.cir"
    assert run("inspect", NAME, "--netlist", str(path)).exit_code == 0
    assert path.read_text().startswith("* faint_hum_on_three, slot 3, first pulse")


@pytest.mark.parametrize(
    ("words", "code", "told"),
    [
        (("hear", "nothing_like_it", "-o", "x.wav"), 1, "the case is unknown"),
        (("inspect", "faint_hum_on_thre"), 1, "did you mean faint_hum_on_three"),
        (("inspect", "3BSY-4VMY-C6EW"), 1, "the case code is mistyped"),
        (("hear", NAME, "-o", "/no/such/folder/x.wav"), 3, "cannot be written"),
        (("hear", NAME, "-o", "x.wav", "--stand", "roof"), 2, "There is no place 'roof'"),
        (("hear", NAME, "-o", "x.wav", "--slot", "12"), 2, "There is no slot '12'"),
        (("draw", "nowhere"), 2, "There is no engine profile called 'nowhere'"),
        (("draw", "north_v8", "--seed", "99999999999"), 2, "does not fit into a case code"),
        (("check", "/no/such.yaml"), 1, "To fix it: check the name and your permissions"),
        (("hear", NAME), 2, "Missing option"),
        (("dance",), 2, "No such command"),
    ],
)
def test_what_a_person_can_get_wrong_has_its_exit_code_and_words(words: tuple[str, ...], code: int, told: str) -> None:
    result = run(*words)
    assert result.exit_code == code
    assert told in result.output
    assert "Traceback" not in result.output


def test_check_gives_problems_as_json(tmp_path: Path) -> None:
    bad = tmp_path / "bad.yaml"
    bad.write_text("form: case/1\nname: x\n")
    result = run("--json", "check", str(bad))
    assert result.exit_code == 1
    assert json.loads(result.stdout)["problems"][0].keys() == {"file", "line", "field", "found", "allowed", "mend"}


def test_a_drawn_code_can_be_inspected_and_practised(tmp_path: Path) -> None:
    code = run("draw", "ridge_v6", "--difficulty", "1", "--seed", "5").output.strip()
    assert code == run("draw", "ridge_v6", "--difficulty", "1", "--seed", "5").output.strip()
    assert json.loads(run("inspect", code, "--json").stdout)["profile"] == "ridge_v6"
    shown = run("practice", code, "--text", "--sound", "file", typed="hear\nleave\n", data=tmp_path).output
    assert f"Case code: {code}" in shown


def test_practice_without_a_case_begins_with_the_lessons_and_goes_on_where_it_was_left(tmp_path: Path) -> None:
    first = run("practice", "--text", "--sound", "file", typed="\nleave\nleave\n", data=tmp_path)
    assert first.exit_code == 0
    assert "Lesson 1 of 3" in first.output
    assert "Step 2 of 14" in first.output
    second = run("practice", "--text", "--sound", "file", typed="skip\ndrill numbering\n1\n2\nleave\n", data=tmp_path)
    assert second.exit_code == 0
    assert "Step 1 of 14" not in second.output
    assert "Step 2 of 14" in second.output
    assert "Remember:" in second.output
    third = run("practice", "--text", "--sound", "file", typed="nonsense\nleave\n", data=tmp_path)
    assert third.exit_code == 0
    assert "Many people get this one wrong" in third.output
    assert "to answer, or 'leave' to leave it open" in third.output
    shown = json.loads(run("progress", "--json", data=tmp_path).stdout)
    assert [one["answers"] for one in shown["skills"]] == [0, 1, 0, 0, 0, 0]


def test_a_drill_of_a_kind_that_there_is_not_is_told_with_what_there_is(tmp_path: Path) -> None:
    typed = "skip\ndrill juggling\ndrill\nlesson 9\nleave\n"
    shown = run("practice", "--text", "--sound", "file", typed=typed, data=tmp_path).output
    assert "no kind of exercise called juggling" in shown
    assert "job_card" in shown
    assert "Which kind of exercise do you want?" in shown
    assert "numbered from 1 to 3" in shown


def test_a_home_that_cannot_be_written_is_told_and_practice_goes_on(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    blocked = tmp_path / "file"
    blocked.write_text("x")
    monkeypatch.setattr("trainer.commands.call.this_machine.data_folder", lambda _named: blocked)
    result = run("practice", NAME, "--text", "--sound", "file", typed="codes\n")
    assert result.exit_code == 0
    assert "Nothing you do now will be saved" in result.output
    assert run("practice", NAME, "--text", data=blocked).exit_code == 3


def test_lists_do_not_tell_the_truth_of_a_case() -> None:
    shown = run("cases").output
    assert not any(name in shown or case_named(name).title in shown for name in case_names())
    told = run("cases", "--titles").output
    assert all(name in told for name in case_names())
    assert "pass_through" not in told
    rows = json.loads(run("cases", "--json").stdout)["cases"]
    assert len(rows) == len({row["number"] for row in rows}) == len(case_names()) >= 30


def test_a_case_is_asked_for_by_its_number_as_by_its_name(tmp_path: Path) -> None:
    number = case_named(NAME).number
    shown = run("practice", str(number), "--text", "--sound", "file", typed="leave\n", data=tmp_path).output
    assert f"Job {number}" in shown
    assert NAME not in shown
    assert find_case(str(number)) == find_case(NAME)
    assert "Firing order" in run("profiles").output


HEAVY = ("numpy", "scipy", "pygame", "sqlalchemy", "pydantic", "yaml", "sounddevice")


def test_help_loads_nothing_heavy() -> None:
    program = (
        "import sys; from click.testing import CliRunner; from trainer.commands.entry import main; "
        f"CliRunner().invoke(main, ['--help']); print([n for n in {HEAVY} if n in sys.modules])"
    )
    done = subprocess.run([sys.executable, "-c", program], capture_output=True, text=True, check=True, cwd=os.getcwd())
    assert done.stdout.strip() == "[]"


@pytest.mark.filterwarnings("ignore")  # the loudness library's own plotting back end warns
def test_loudness_of_every_slot_can_be_asked_for() -> None:
    slots = json.loads(run("inspect", NAME, "--json", "--loudness").stdout)["slots"]
    sone = [slot["loudness_sone"] for slot in slots]
    assert sone[0] > sone[1] > 4.0 * sone[3]
    assert slots[0]["loudness_phon"] > slots[3]["loudness_phon"]
