"""The tour of the house shows the house as it is."""

from __future__ import annotations

import hashlib
import json
import re

from tests.house.floors import PACKAGE
from tests.house.tour import PAGE, PICTURE, page, picture


def test_the_page_lists_every_room_and_the_picture_shows_every_floor() -> None:
    assert PAGE.read_text("utf-8") == page(), "run python -m tests.house.tour"
    assert PICTURE.read_text("utf-8") == picture(), "run python -m tests.house.tour"
    manifest = json.loads((PICTURE.parent / "manifest.json").read_text("utf-8"))
    assert manifest[PICTURE.name] == hashlib.sha256(picture().encode("utf-8")).hexdigest()


def test_every_file_that_the_tour_names_is_there() -> None:
    named = re.findall(r"`((?:trainer|tests|scenarios|docs)/[\w/.]+)`", PAGE.read_text("utf-8"))
    assert len(named) > 20
    assert [name for name in named if not (PACKAGE.parent / name).exists()] == []
