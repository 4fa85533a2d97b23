"""Guards against change, made by ourselves: `python -m tests.unchanged.make` makes them again."""

import hashlib
import json
import re

import numpy as np
import pytest
from PIL import Image

from tests.engines import ALL
from tests.unchanged.make import ASSETS, HERE, STRIP, levels, strip
from tests.unchanged.screens import FOLDER, README_SCALE, README_SIZE, SCALES, SIZES, file_name, picture, screens
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
    assert manifest == {STRIP: hashlib.sha256(kept.encode("utf-8")).hexdigest()}
    assert {path.name for path in ASSETS.iterdir()} == {STRIP, "manifest.json", "screens"}


def test_the_screens_are_what_their_command_makes() -> None:
    """A pixel may be a shade off where another version of the type's renderer is at work."""
    made = set()
    for name, root, focus in screens():
        for size in SIZES:
            made |= {file_name(name, size, scale) for scale in SCALES}
        kept = Image.open(FOLDER / file_name(name, README_SIZE, README_SCALE)).convert("RGB")
        again = picture(root, focus, README_SIZE, README_SCALE)
        off = np.abs(np.asarray(kept, float) - np.asarray(again, float)).mean()
        assert off < 2.0, f"{name}: run python -m tests.unchanged.screens and look at it"
    light = {file_name(name, README_SIZE, 1.0, "light") for name in ("bench, heard", "debrief, open")}
    assert {path.name for path in FOLDER.iterdir()} == made | light
