"""Files are written whole, in the place of plain files only, with the mode that a person expects."""

from __future__ import annotations

import os
import socket
from collections.abc import Iterator
from pathlib import Path
from typing import IO

import pytest

from tests.special_files import pipe, without_waiting
from trainer.cases.files.whole_file import write_bytes, write_whole
from trainer.errors import MissingHereError, WrongCallError
from trainer.words import message_of


@pytest.fixture(autouse=True)
def usual_umask() -> Iterator[None]:
    before = os.umask(0o027)
    yield
    os.umask(before)


def mode(path: Path) -> int:
    return path.stat().st_mode & 0o777


def test_a_new_file_has_the_mode_that_the_umask_gives_and_a_private_one_is_its_owners_alone(tmp_path: Path) -> None:
    write_bytes(tmp_path / "new", b"1")
    write_bytes(tmp_path / "own", b"1", private=True)
    assert (mode(tmp_path / "new"), mode(tmp_path / "own")) == (0o640, 0o600)


def test_a_replaced_file_keeps_its_mode_unless_it_is_private(tmp_path: Path) -> None:
    path = tmp_path / "a"
    path.write_bytes(b"old")
    path.chmod(0o604)
    write_bytes(path, b"new")
    assert (path.read_bytes(), mode(path)) == (b"new", 0o604)
    write_bytes(path, b"newer", private=True)
    assert (path.read_bytes(), mode(path)) == (b"newer", 0o600)


@without_waiting
def test_what_is_no_plain_file_is_left_as_it_was(tmp_path: Path) -> None:
    (tmp_path / "folder").mkdir()
    (tmp_path / "link").symlink_to(pipe(tmp_path / "pipe"))
    controlling, controlled = os.openpty()
    terminal = os.ttyname(controlled)  # a device in whose folder nobody can make files, should this ever fail
    with socket.socket(socket.AF_UNIX) as listening, os.fdopen(controlling), os.fdopen(controlled):
        listening.bind(str(tmp_path / "socket"))
        kinds = {
            "folder": "a folder",
            "pipe": "a pipe",
            "link": "a pipe",
            "socket": "a socket",
            terminal: "a device",
        }
        before = {name: (tmp_path / name).stat() for name in kinds}
        for name, kind in kinds.items():
            with pytest.raises(WrongCallError) as refused:
                write_bytes(tmp_path / name, b"x")
            assert (
                message_of(refused.value)
                == f"{tmp_path / name} is {kind}, so nothing was written. Name an ordinary file instead."
            )
            assert os.path.samestat(before[name], (tmp_path / name).stat())
        assert sorted(path.name for path in tmp_path.iterdir()) == ["folder", "link", "pipe", "socket"]


def test_a_link_stays_and_what_it_leads_to_is_written(tmp_path: Path) -> None:
    (tmp_path / "stick").mkdir()
    for name in ("there", "not yet"):
        link, file = tmp_path / f"link to {name}", tmp_path / "stick" / name
        link.symlink_to(file)
    (tmp_path / "stick" / "there").write_bytes(b"old")
    for name in ("there", "not yet"):
        write_bytes(tmp_path / f"link to {name}", b"new")
        assert (tmp_path / f"link to {name}").is_symlink()
        assert (tmp_path / "stick" / name).read_bytes() == b"new"


def test_a_file_that_was_deleted_while_it_is_open_is_not_written_under_another_name(tmp_path: Path) -> None:
    with (tmp_path / "a").open("wb") as file:
        (tmp_path / "a").unlink()
        with pytest.raises(WrongCallError):
            write_bytes(Path(f"/dev/fd/{file.fileno()}"), b"x")
    assert not list(tmp_path.iterdir())


def test_a_write_protected_file_is_not_replaced(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    path = tmp_path / "a"
    path.write_bytes(b"old")
    path.chmod(0o444)
    monkeypatch.setattr(os, "access", lambda file, way: not way & os.W_OK)  # an administrator may write all
    with pytest.raises(MissingHereError, match="file_unwritable"):
        write_bytes(path, b"new")
    assert path.read_bytes() == b"old"


@pytest.mark.parametrize("name", ["no\0name", "x" * 300, "file/below", "ring"])
def test_a_path_that_no_file_can_have_is_told(tmp_path: Path, name: str) -> None:
    (tmp_path / "file").write_bytes(b"")
    (tmp_path / "ring").symlink_to(tmp_path / "ring")
    for make_folder in (False, True):
        with pytest.raises(MissingHereError, match="file_unwritable"):
            write_bytes(tmp_path / name, b"x", make_folder=make_folder)


def test_a_name_as_long_as_names_can_be_is_written(tmp_path: Path) -> None:
    write_bytes(tmp_path / ("x" * 255), b"1")
    assert [path.name for path in tmp_path.iterdir()] == ["x" * 255]


def test_what_breaks_off_leaves_the_old_file_and_nothing_beside_it(tmp_path: Path) -> None:
    path = tmp_path / "a"
    path.write_bytes(b"old")

    def write(part: IO[bytes]) -> None:
        part.write(b"half")
        raise KeyboardInterrupt

    with pytest.raises(KeyboardInterrupt):
        write_whole(path, write)
    assert [one.read_bytes() for one in tmp_path.iterdir()] == [b"old"]
