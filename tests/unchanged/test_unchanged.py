"""Guards against change, made by ourselves: `python -m tests.unchanged.make` makes them again."""

import hashlib
import json
import re

import pytest

from tests.engines import ALL
from tests.unchanged.make import ASSETS, HERE, STRIP, levels, strip
from trainer.circuit.profile import Profile


@pytest.mark.parametrize("profile", ALL, ids=lambda p: p.name)
def test_the_engines_sound_as_they_did(profile: Profile) -> None:
    kept = json.loads((HERE / "levels.json").read_text("utf-8"))[profile.name]
    for name, row in levels(profile).items():
        assert row == pytest.approx(kept[name], abs=0.2), name  # a tenth of rounding on each side


def test_the_picture_is_what_its_command_makes() -> None:
    kept, made = (ASSETS / STRIP).read_text("utf-8"), strip()
    numbers = [[int(number) for number in re.findall(r"-?\d+", text)] for text in (kept, made)]
    assert numbers[0] == pytest.approx(numbers[1], abs=1)  # another processor may round a stroke by one pixel
    manifest = json.loads((ASSETS / "manifest.json").read_text("utf-8"))
    assert manifest[STRIP] == hashlib.sha256(kept.encode("utf-8")).hexdigest()
    assert {path.name for path in ASSETS.iterdir()} == {*manifest, "manifest.json", "screens"}
