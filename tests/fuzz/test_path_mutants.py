"""Some eighty hostile paths in the suite; .ci/long makes thousands of calls."""

from __future__ import annotations

from functools import partial
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from tests.exam_sets import PASSPHRASE, SMALL
from tests.fuzz.path_mutants import CALLS, Figures, call_of, called, given_to, path_parameters, wrong_with
from trainer.commands.entry import main

SLOW = ("inspect netlist", "hear output", "handout output", "set preview output")
"""What renders or solves before it looks at where to write: the long run calls it too."""


def test_every_path_of_every_command_is_tried() -> None:
    assert set(path_parameters()) <= {name.partition(",")[0] for name in CALLS}


def test_a_hostile_path_is_told_in_words_whatever_command_it_is_given_to() -> None:
    figures = Figures()
    names = tuple(CALLS)
    for number in range(2 * len(names)):
        if names[number % len(names)] not in SLOW:
            called(partial(call_of, number), figures)
    assert not figures.failures, "\n".join(figures.failures)
    assert figures.codes[1] > figures.codes[0]


@pytest.mark.parametrize("name", ["x" * 5000, "x" * 300], ids=["a path too long", "a name too long"])
def test_what_no_file_can_be_called_is_told_by_every_command(name: str) -> None:
    """Python's own questions about a path raise for these, in some versions."""
    figures = Figures()
    for parameter in CALLS:
        if parameter not in SLOW:
            called(partial(given_to, parameter, name[:5], name), figures)
    assert not figures.failures, "\n".join(figures.failures)


def test_what_the_calls_are_held_to_is_noticed() -> None:
    """The fuzzer itself: a fault of the program, an unseen character, silence and half a document do not pass."""

    def ended(code: int, out: str = "", err: str = "", error: BaseException | None = None) -> Result:
        return Result(CliRunner(), out.encode(), err.encode(), (out + err).encode(), None, code, error)

    def wrong(result: Result, as_json: bool = False) -> str | None:
        return wrong_with(result, as_json=as_json, talks=False)

    assert wrong(ended(1, err="x.yaml: wrong\n")) is None
    assert wrong(ended(1, err="x", error=ValueError("made")))
    assert wrong(ended(7, err="x"))
    assert wrong(ended(1))
    assert wrong(ended(1, err="Traceback (most recent call last)"))
    assert wrong(ended(1, err="\x1b[2J"))
    assert wrong(ended(1, err="x" * 30_000))
    assert wrong(ended(0, out="{"), as_json=True)


def test_a_set_is_not_made_in_a_folder_whose_name_is_too_long(tmp_path: Path) -> None:
    ended = CliRunner().invoke(main, ["set", "make", str(tmp_path / ("x" * 5000)), "--case", "faint_hum_on_three"])
    assert isinstance(ended.exception, SystemExit)
    assert ended.exit_code == 3
    assert "cannot be written" in ended.stderr


def test_a_set_is_not_sealed_under_a_name_that_no_file_can_have(tmp_path: Path) -> None:
    (tmp_path / "set.yaml").write_text(SMALL, "utf-8")
    (tmp_path / "passphrase").write_text(PASSPHRASE, "utf-8")
    (tmp_path / "ring").symlink_to("ring")
    for name in ("x" * 300, "ring"):
        words = ["set", "seal", str(tmp_path / "set.yaml"), "-o", str(tmp_path / name), "--passphrase-file"]
        ended = CliRunner().invoke(main, [*words, str(tmp_path / "passphrase")])
        assert isinstance(ended.exception, SystemExit)
        assert ended.exit_code == 3
        assert "cannot be written" in ended.stderr
