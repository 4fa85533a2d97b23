"""Files that a person names: ordinary ones only, opened without waiting, read no further than a limit."""

from __future__ import annotations

import os
import pickle
import socket
import tracemalloc
from pathlib import Path

import pytest

from tests.special_files import closed_folder, pipe, without_waiting
from trainer.cases.files import plain_file
from trainer.cases.files.plain_file import (
    Unfit,
    UnfitFileError,
    decoded,
    files_in,
    is_file,
    is_there,
    open_plain,
    read_plain,
)
from trainer.words import problem_line


def refusal(path: Path, most_bytes: int = 100) -> UnfitFileError:
    with pytest.raises(UnfitFileError) as refused:
        read_plain(path, most_bytes)
    return refused.value


def test_a_file_is_read_whole_up_to_its_limit(tmp_path: Path) -> None:
    path = tmp_path / "a"
    path.write_bytes(b"x" * 100)
    assert read_plain(path, 100) == b"x" * 100
    error = refusal(path, 99)
    assert error.why is Unfit.TOO_LARGE
    line = problem_line(error.problems[0])
    assert (
        line
        == f"{path}: the file is too large. Allowed: at most 99 bytes. To fix it: check that this is the file you meant."
    )


def test_of_a_file_that_is_too_large_no_more_than_the_limit_is_read(tmp_path: Path) -> None:
    path = tmp_path / "large"
    with path.open("wb") as file:
        file.truncate(200_000_000)
    tracemalloc.start()
    try:
        assert refusal(path, 1_000).why is Unfit.TOO_LARGE
        assert tracemalloc.get_traced_memory()[1] < 1_000_000
    finally:
        tracemalloc.stop()


@without_waiting
def test_pipes_devices_sockets_and_folders_are_refused_by_name(tmp_path: Path) -> None:
    with socket.socket(socket.AF_UNIX) as listening:
        listening.bind(str(tmp_path / "s"))
        kinds = {
            pipe(tmp_path / "p"): "a pipe",
            Path("/dev/zero"): "a device",
            tmp_path / "s": "a socket",
            tmp_path: "a folder",
        }
        for path, kind in kinds.items():
            error = refusal(path)
            assert error.why is Unfit.NOT_PLAIN
            assert f"{path}: the file is {kind}. Allowed: an ordinary file." in problem_line(error.problems[0])


@without_waiting
def test_a_pipe_put_in_the_place_of_a_file_between_looking_and_opening_is_refused_too(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    plain, exchanged = tmp_path / "plain", pipe(tmp_path / "pipe")
    plain.write_bytes(b"")
    really_open = os.open
    monkeypatch.setattr(plain_file.os, "open", lambda _path, flags: really_open(exchanged, flags))
    assert refusal(plain).why is Unfit.NOT_PLAIN


@pytest.mark.parametrize("name", ["nowhere", "no\0name", "half \ud800", "x" * 5000, "ring"])
def test_what_cannot_be_opened_is_told(tmp_path: Path, name: str) -> None:
    (tmp_path / "ring").symlink_to(tmp_path / "ring")
    error = refusal(tmp_path / name)
    assert error.why is (Unfit.MISSING if name == "nowhere" else Unfit.UNREADABLE)
    assert "To fix it: check the name and your permissions" in problem_line(error.problems[0])


def test_a_disk_that_fails_while_reading_is_told() -> None:
    assert refusal(Path("/proc/self/mem")).why is Unfit.UNREADABLE


def test_a_link_to_a_plain_file_is_read(tmp_path: Path) -> None:
    (tmp_path / "a").write_bytes(b"x")
    (tmp_path / "link").symlink_to(tmp_path / "a")
    with open_plain(tmp_path / "link") as file:
        assert file.read() == b"x"


def test_bytes_that_are_no_text_are_told() -> None:
    with pytest.raises(UnfitFileError) as caught:
        decoded(Path("a"), b"\xff")
    assert "not UTF-8 text" in problem_line(caught.value.problems[0])


def test_an_unfit_file_is_told_from_another_process(tmp_path: Path) -> None:
    error = refusal(tmp_path / "nowhere")
    again = pickle.loads(pickle.dumps(error))
    assert (again.why, again.problems) == (error.why, error.problems)


def test_everything_under_a_folder_is_named_once_with_what_cannot_be_looked_into(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "b").mkdir()
    for name in ("b/2.yaml", "1.yaml", "other.txt"):
        (tmp_path / name).write_bytes(b"")
    pipe(tmp_path / "p.yaml")
    (tmp_path / "b" / "round").symlink_to(tmp_path)
    closed_folder(tmp_path / "c", monkeypatch)
    files, closed = files_in([tmp_path, Path("named")], ".yaml")
    assert files == [tmp_path / "1.yaml", tmp_path / "b" / "2.yaml", tmp_path / "p.yaml", Path("named")]
    assert [problem_line(error.problems[0]).split(". ")[0] for error in closed] == [
        f"{tmp_path / 'c'}: the folder is unreadable (Permission denied)"
    ]


def test_a_name_that_nothing_can_have_is_not_there(tmp_path: Path) -> None:
    (tmp_path / "ring").symlink_to("ring")
    assert is_there(tmp_path)
    assert not is_file(tmp_path)
    assert not any(
        is_there(tmp_path / name) or is_file(tmp_path / name) for name in ("nothing", "x" * 5000, "a\0b", "ring")
    )
