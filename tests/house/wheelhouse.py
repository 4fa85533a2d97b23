"""A wheelhouse made by one command, and the program installed from it in a room without a network."""

from __future__ import annotations

import shutil
import subprocess
import sys
import tempfile
from pathlib import Path

REPOSITORY = Path(__file__).parents[2]


def run(*call: str, **options: object) -> str:
    done = subprocess.run(call, capture_output=True, text=True, check=False, **options)  # type: ignore[call-overload]
    assert done.returncode == 0, f"{call}: {done.stdout[-800:]} {done.stderr[-800:]}"
    return str(done.stdout)


def main() -> None:
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        run(
            sys.executable,
            "-m",
            "pip",
            "wheel",
            "-q",
            "-w",
            str(folder / "wheelhouse"),
            f"{REPOSITORY}[postgres]",
            cwd=folder,
        )
        wheels = list((folder / "wheelhouse").iterdir())
        # where it may, without any network at all; else by forbidding pip to use an index
        alone = ["unshare", "-rn"] if shutil.which("unshare") and _may_unshare() else []
        run(sys.executable, "-m", "venv", str(folder / "venv"))
        python = str(folder / "venv" / "bin" / "python")
        install = [python, "-m", "pip", "install", "-q", "--no-index", "--find-links", str(folder / "wheelhouse")]
        run(*alone, *install, "injector-ear-trainer[postgres]")
        trainer = str(folder / "venv" / "bin" / "injector-trainer")
        heard = run(*alone, trainer, "hear", "faint_hum_on_three", "-o", str(folder / "heard.wav"), cwd=folder)
        run(
            *alone,
            trainer,
            "set",
            "make",
            str(folder / "week.yaml"),
            "--draw",
            "4",
            "--profile",
            "north_v8",
            cwd=folder,
        )
        megabytes = sum(one.stat().st_size for one in wheels) / 1e6
        print(
            f"{len(wheels)} wheels, {megabytes:.0f} MB, installed {'without a network' if alone else 'without an index'}: {heard.strip()}"
        )


def _may_unshare() -> bool:
    return subprocess.run(["unshare", "-rn", "true"], capture_output=True, check=False).returncode == 0


if __name__ == "__main__":
    main()
