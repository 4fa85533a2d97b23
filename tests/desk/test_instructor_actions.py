"""What an instructor does goes by the same rules, and is answered in the same words, in the window and by command."""

from __future__ import annotations

from pathlib import Path

import pytest
from click.testing import CliRunner

from tests.exam_sets import PASSPHRASE, SMALL, small_set
from tests.window_hands import Hands
from trainer.commands.entry import main
from trainer.desk.instructor_actions import proof_lines, seal_set, write_set
from trainer.errors import Problem, WrongCallError
from trainer.practice.reports.set_lines import weak_spots
from trainer.sets.sealed import is_sealed, read_head
from trainer.sets.set_file import read_set
from trainer.words import text


@pytest.fixture
def plain(tmp_path: Path) -> Path:
    """A set file where the window of this folder looks for sets."""
    path = tmp_path / "sets" / "first_week.yaml"
    path.parent.mkdir()
    path.write_text(SMALL, "utf-8")
    return path


def by_command(plain: Path, output: Path) -> str:
    secret = plain.parent / "secret"
    secret.write_text(PASSPHRASE + "\n", "utf-8")
    call = ["set", "seal", str(plain), "-o", str(output), "--passphrase-file", str(secret)]
    result = CliRunner().invoke(main, call)
    assert result.exit_code == 0, result.output
    return result.output


def in_the_window(plain: Path) -> str:
    hands = Hands(folder=plain.parent.parent)
    hands.press("f7").act(f"file.{plain.name}").act("seal")
    hands.write(PASSPHRASE).go("again").write(PASSPHRASE).press("enter")
    return hands.shown


def test_a_set_sealed_in_either_face_is_the_same_set_and_says_the_same(plain: Path) -> None:
    output = plain.with_suffix(".sealed")
    case_set = read_set(plain)
    wanted = (text("set.sealed", path=output, n=case_set.size), text("set.sealed_means"), *weak_spots(case_set))
    for shown in (in_the_window(plain), by_command(plain, plain.with_name("other.sealed"))):
        for line in wanted[1:]:
            assert " ".join(line.split()) in " ".join(shown.split())
    assert is_sealed(output)
    assert read_head(output).title == read_head(plain.with_name("other.sealed")).title


def test_sealing_never_writes_over_the_set_itself_not_even_forced(plain: Path) -> None:
    case_set = read_set(plain)
    asked = []
    with pytest.raises(WrongCallError, match="file_exists"):
        seal_set(case_set, plain, plain, lambda: asked.append(1) or PASSPHRASE, force=True)
    assert plain.read_text("utf-8") == SMALL
    assert asked == []  # refused before the passphrase is typed


def test_a_sealed_file_is_replaced_only_on_purpose(plain: Path) -> None:
    case_set, output = read_set(plain), plain.with_suffix(".sealed")
    output.write_bytes(b"kept")
    with pytest.raises(WrongCallError, match="file_exists"):
        seal_set(case_set, plain, output, lambda: PASSPHRASE, force=False)
    assert output.read_bytes() == b"kept"
    seal_set(case_set, plain, output, lambda: PASSPHRASE, force=True)
    assert is_sealed(output)


def test_a_set_file_is_replaced_only_on_purpose(plain: Path) -> None:
    with pytest.raises(WrongCallError, match="file_exists"):
        write_set(read_set(plain), plain)
    write_set(read_set(plain), plain, force=True)
    assert read_set(plain).title == small_set(SMALL).case_set.title


def test_a_proof_names_each_problem_or_what_is_weak_in_a_good_set() -> None:
    case_set = small_set(SMALL).case_set
    good = proof_lines(case_set, (), "first_week")
    assert good == (text("set.good", path="first_week", n=case_set.size), *weak_spots(case_set))
    problem = Problem("first_week", 3, "mode", "exm", "exam, practice", "write: mode: exam")
    (line,) = proof_lines(case_set, [problem], "first_week")
    assert "first_week" in line
