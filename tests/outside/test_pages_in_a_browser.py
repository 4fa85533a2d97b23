"""The pages for people in a real browser: nothing is logged, nothing leaves, the sounds play."""

from __future__ import annotations

import io
import os
import re
from pathlib import Path

import pytest
from PIL import Image

from tests.browser import Seen, played, seen
from tests.exam_sets import small_set
from tests.results import keep, put, result
from tests.thinned import thinned
from tests.universes import UNIVERSES
from trainer.cases.single_case.shipped import case_named
from trainer.desk.handout_page import handout_html
from trainer.desk.preview import write_preview
from trainer.records.class_report.report import report_html
from trainer.records.store.store import open_store

pytestmark = pytest.mark.needs("Chromium")


def made_up_report() -> str:
    store = open_store(None)
    kept = keep(store, 6, title="Week three")
    slips = ("hum_for_circuit", "counted_burst", "firing_order", "code_for_location")
    put(store, [
        result(f"learner {number:02}", item, 92.0 if (number * 7 + item * 3) % 5 else 20.0,
               misconception="" if (number * 7 + item * 3) % 5 else slips[(number + item) % 4],
               kind_class=("pass_through_connector", "group", "circuit_passes")[item % 3],
               certainty=(0.5, 0.75, 0.95)[(number + item) % 3], said_place=("engine_harness", "", "solenoid_coil")[(number * item) % 3])
        for number in range(24) for item in range(1, 7)
    ])  # fmt: skip
    page = report_html(store, kept, "2026-12-01T08:00")
    store.close()
    return page


def told(page: Seen, name: str) -> None:
    """Keep a page's picture where somebody wants to look at it."""
    if folder := os.environ.get("PAGES_FOLDER"):
        Path(folder).mkdir(parents=True, exist_ok=True)
        (Path(folder) / f"{name}.png").write_bytes(page.picture)


def nothing_leaves(page: Seen) -> None:
    # the browser's own services aside, which a page has no part in
    own = re.compile(
        r"(chrome|devtools|data|file|about)|https?://([a-z0-9-]+\.)*(google|googleapis|gstatic|gvt1)\.com/"
    )
    assert [address for address in page.asked if not own.match(address)] == []
    assert page.logged == ()


def is_drawn(page: Seen) -> None:
    picture = Image.open(io.BytesIO(page.picture)).convert("L")
    shades = picture.getcolors(256) or []
    assert sum(count for count, shade in shades if shade < 100) > 5_000  # words and lines
    assert max(shades)[1] == 255  # on white paper


def test_a_class_report_opens_without_network_and_is_drawn() -> None:
    page = seen(made_up_report())
    told(page, "report")
    nothing_leaves(page)
    is_drawn(page)
    assert page.dom.count("<svg") == 3
    assert "What to teach next" in page.dom


@pytest.mark.parametrize("case", thinned(["faint_hum_on_three", "misfire_without_a_circuit", "half_a_module"], 3))
def test_a_handout_plays_good_against_faulty_without_network(case: str) -> None:
    html = handout_html(case_named(case))
    page = seen(html)
    told(page, f"handout_{case}")
    nothing_leaves(page)
    is_drawn(page)
    sounds = 2 if case_named(case).faults else 1
    assert played(html) == ",".join(["true"] * sounds)
    assert 'role="img"' in page.dom


def test_a_reveal_sheet_lies_beside_its_sounds_and_no_record_is_opened(tmp_path: Path) -> None:
    files = write_preview(small_set().case_set, "ann", tmp_path / "preview", UNIVERSES, lambda _line: None)
    assert [path.suffix for path in files] == [".wav", ".wav", ".wav", ".html"]
    page = seen(files[-1].read_text("utf-8"))
    told(page, "preview")
    nothing_leaves(page)
    assert "open, pass-through connector" in page.dom
    assert not list(tmp_path.rglob("*.sqlite3"))
