"""The drawing of the five classes in the docs is the one that its command wrote, and draws what it says."""

from __future__ import annotations

import hashlib
import json

from tests.house.slot_classes import PICTURE, classes, picture


def test_the_picture_of_the_classes_is_kept_with_its_hash_and_still_has_every_class() -> None:
    manifest = json.loads((PICTURE.parent / "manifest.json").read_text("utf-8"))
    assert manifest[PICTURE.name] == hashlib.sha256(PICTURE.read_bytes()).hexdigest()
    kept, drawn = PICTURE.read_text("utf-8"), picture()
    assert all(f">{caption}<" in kept and f">{caption}<" in drawn for caption in classes())
    # silence is drawn as silence, a click fills the page
    assert kept.count("<path") == drawn.count("<path") > len(classes())
