"""A real PostgreSQL server for tests: made in a folder, on a port of its own, and taken away afterwards."""

from __future__ import annotations

import os
import shutil
import socket
import subprocess
import tempfile
import uuid
from pathlib import Path

import psycopg


def server_programs() -> Path | None:
    """Return the folder of the newest server's programs, or None where no server is installed."""
    if found := shutil.which("initdb"):
        return Path(found).parent
    installed = (one.parent for one in Path("/usr/lib/postgresql").glob("*/bin/initdb"))
    return max(installed, key=lambda folder: float(folder.parent.name), default=None)


def free_port() -> int:
    with socket.socket() as one:
        one.bind(("127.0.0.1", 0))
        return int(one.getsockname()[1])


class Postgres:
    """One server; `fresh` gives the URL of a new database on it."""

    def __init__(self) -> None:
        programs = server_programs()
        assert programs is not None, "no PostgreSQL server is installed"
        self._programs = programs
        self.folder = Path(tempfile.mkdtemp(prefix="postgres-"))
        self.port = free_port()
        self._as: dict[str, str] = {}
        if os.geteuid() == 0:  # the server refuses to be run by root
            shutil.chown(self.folder, "postgres")
            self._as = {"user": "postgres", "group": "postgres"}
        self._run("initdb", "-D", str(self.folder / "data"), "-A", "trust", "-U", "school", "--no-sync")
        self.start()

    def _run(self, name: str, *words: str) -> None:
        done = subprocess.run(
            [str(self._programs / name), *words], capture_output=True, text=True, cwd="/", check=False, **self._as
        )
        if done.returncode:
            raise RuntimeError(f"{name}: {done.stdout[-500:]} {done.stderr[-500:]}")

    def start(self) -> None:
        options = f"-p {self.port} -k {self.folder} -c listen_addresses=127.0.0.1"
        log = str(self.folder / "log")
        self._run("pg_ctl", "-D", str(self.folder / "data"), "-l", log, "-o", options, "-w", "start")

    def stop(self, how: str = "fast") -> None:
        self._run("pg_ctl", "-D", str(self.folder / "data"), "-m", how, "-w", "stop")

    def fresh(self) -> str:
        """Return the URL of an empty database."""
        name = f"school_{uuid.uuid4().hex[:8]}"
        with psycopg.connect(
            host="127.0.0.1", port=self.port, user="school", dbname="postgres", autocommit=True
        ) as one:
            one.execute(f'CREATE DATABASE "{name}"')
        return f"postgresql+psycopg://school@127.0.0.1:{self.port}/{name}"

    def close(self) -> None:
        self.stop("immediate")
        shutil.rmtree(self.folder, ignore_errors=True)
