"""The built wheel, installed elsewhere, holds the scenarios and works."""

from __future__ import annotations

import json
import os
import subprocess
import sys
import sysconfig
import zipfile
from pathlib import Path

import pytest

from trainer.cases.single_case.shipped import SOLVED, profile_names

REPOSITORY = Path(__file__).parents[2]


@pytest.mark.needs("a C compiler")
def test_the_wheel_opens_every_shipped_case_in_another_folder(tmp_path: Path) -> None:
    # with the build tool of the test extra, so that no index is needed
    build = ["wheel", "--quiet", "--no-deps", "--no-build-isolation", "--no-index"]
    subprocess.run(
        [sys.executable, "-m", "pip", *build, "--wheel-dir", str(tmp_path), str(REPOSITORY)],
        check=True, capture_output=True,
    )  # fmt: skip
    (wheel,) = tmp_path.glob("*.whl")
    names = zipfile.ZipFile(wheel).namelist()
    assert sum(name.startswith("trainer/scenarios/cases/") for name in names) >= 30
    assert {"trainer/window/fonts/B612-Regular.otf", "trainer/window/fonts/OFL.txt"} <= set(names)
    solved = {f"trainer/solved/{path.name}" for path in (REPOSITORY / "trainer" / "solved").iterdir()}
    assert solved
    assert solved == {name for name in names if name.startswith("trainer/solved/")}
    assert not any(name.startswith("tests/") for name in names)
    assert "trainer/circuit/step_kernel.so" in names
    assert wheel.name.endswith(f"-py3-none-{sysconfig.get_platform().replace('-', '_').replace('.', '_')}.whl")
    site = tmp_path / "site"
    subprocess.run(
        [sys.executable, "-m", "pip", "install", "--quiet", "--no-deps", "--no-index", "--target", str(site), str(wheel)],
        check=True, capture_output=True,
    )  # fmt: skip
    away = tmp_path / "away"
    away.mkdir()
    environment = {**os.environ, "PYTHONPATH": str(site)}
    call = [sys.executable, "-m", "trainer"]
    listed = subprocess.run(
        [*call, "cases", "--json"], cwd=away, env=environment, check=True, capture_output=True, text=True
    )
    assert len(json.loads(listed.stdout)["cases"]) >= 30
    where = subprocess.run(
        [sys.executable, "-c", "import trainer; print(trainer.__file__)"],
        cwd=away, env=environment, check=True, capture_output=True, text=True,
    )  # fmt: skip
    assert str(site) in where.stdout
    shipped = (
        "from trainer.cases.drawing.practice_pool import is_cached; "
        "from trainer.cases.single_case.shipped import profile_named, profile_names; "
        "print([is_cached(profile_named(name), None) for name in profile_names()])"
    )
    found = subprocess.run(
        [sys.executable, "-c", shipped], cwd=away, env={**environment, SOLVED: ""},
        check=True, capture_output=True, text=True,
    )  # fmt: skip
    assert json.loads(found.stdout.lower()) == [True] * len(profile_names())
    compiled = "from trainer.circuit.compiled_step import in_use; print(in_use())"
    used = subprocess.run(
        [sys.executable, "-c", compiled], cwd=away, env=environment, check=True, capture_output=True, text=True
    )
    assert used.stdout.strip() == "True"
    subprocess.run(
        [*call, "hear", "faint_hum_on_three", "-o", "x.wav", "--slot", "3"], cwd=away, env=environment, check=True
    )
    assert (away / "x.wav").stat().st_size > 100_000
