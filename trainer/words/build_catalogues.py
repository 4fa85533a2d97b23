"""Compiles the catalogues of each language into one file: at installation (`.ci/build_hook.py`), or by hand.

`python -m trainer.words.build_catalogues` does so in a working copy. It needs Babel; the program itself does not.
"""

from __future__ import annotations

import hashlib
import os
import sys
from pathlib import Path
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from babel.messages.catalog import Catalog, Message

FOLDER = Path(__file__).parent / "catalogues"


def build() -> tuple[Path, ...]:
    """Compile every language whose file is missing or stale, and return the files of all.

    Raises ValueError for an id that a language has twice, and for a translation to look at again (`fuzzy`).
    """
    return tuple(_built(folder) for folder in sorted(FOLDER.iterdir()) if folder.is_dir() and any(folder.glob("*.po")))


def _built(folder: Path) -> Path:
    compiled, stamp = folder.with_suffix(".mo"), source_hash(folder)
    if compiled.is_file() and stamp.encode("ascii") in compiled.read_bytes():
        return compiled
    from babel.messages.mofile import write_mo

    unfinished = compiled.with_suffix(f".{os.getpid()}")
    with unfinished.open("wb") as file:
        write_mo(file, joined(folder, stamp))
    unfinished.replace(compiled)
    return compiled


def source_hash(folder: Path) -> str:
    """Return a hash of a language's catalogues; the compiled file names the one it was built from."""
    sources = ((path.name, path.read_bytes()) for path in sorted(folder.glob("*.po")))
    return hashlib.sha256(repr(tuple(sources)).encode("utf-8")).hexdigest()[:16]


def joined(folder: Path, stamp: str = "") -> Catalog:
    """Return all catalogues of a language as one; raises ValueError as `build` does."""
    whole: Catalog | None = None
    for path in sorted(folder.glob("*.po")):
        part = read(path)
        for message in part:
            if message.id and message.fuzzy:
                raise ValueError(f"{path}: {id_of(message)} is fuzzy: look at it again, then take the mark out")
        if whole is None:
            whole = part
            continue
        if part.plural_forms != whole.plural_forms:
            raise ValueError(f"{path}: its plural forms are not those of the other catalogues")
        for message in part:
            if message.id and whole.get(id_of(message)) is not None:
                raise ValueError(f"{path}: {id_of(message)} is also in another catalogue")
            if message.id:
                whole[message.id] = message
    if whole is None:
        raise ValueError(f"{folder} has no catalogue")
    whole.project, whole.version = "injector-ear-trainer", stamp
    return whole


def read(path: Path) -> Catalog:
    """Return one catalogue as it is written; raises ValueError for one that is damaged."""
    from babel.messages.pofile import read_po

    with path.open("rb") as file:
        return read_po(file, locale=path.parent.name, abort_invalid=True)


def id_of(message: Message) -> str:
    """Return a message's id, which is the same for singular and plural."""
    return message.id if isinstance(message.id, str) else message.id[0]


if __name__ == "__main__":
    try:
        build()
    except ImportError:
        sys.exit("Babel is needed to compile the catalogues: pip install babel")
