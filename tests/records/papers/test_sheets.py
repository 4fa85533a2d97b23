"""Sheets to print: whole, from nowhere else, what a person wrote made harmless, no case's name before its finding."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from tests.desk_hands import RIGHT_ANSWER, new_desk, type_in
from tests.engines import NORTH, fault_of
from trainer.circuit.elements import Location
from trainer.circuit.fault import Fault, FaultKind
from trainer.errors import MissingHereError
from trainer.records.papers.sheets import sheet_html, write_sheet
from trainer.records.papers.wiring_svg import wiring_svg

VERDICT = {"hum": "ready", "sides": "mono", "bed": "yes", "lows": "no_lows", "headphones": ""}


def test_a_card_holds_what_was_done_and_no_title_that_may_tell_the_fault() -> None:
    desk = new_desk("faint_hum_on_three")
    type_in(desk, "hear", "codes", "expect <b>OL</b>", "pair module 3")
    html = sheet_html("card", desk.attempt, (), "<script>anna", None, "en")
    assert "P0203" in html
    assert "OL" in html
    assert "<script>anna" not in html
    assert "&lt;script&gt;anna" in html
    assert "&lt;b&gt;OL&lt;/b&gt;" in html
    assert desk.attempt.case.title not in html
    assert desk.attempt.case.name not in html


def test_a_card_names_the_case_by_its_title_only_after_the_retest() -> None:
    desk = new_desk("faint_hum_on_three")
    type_in(desk, "hear", *RIGHT_ANSWER)
    assert desk.attempt.case.title not in sheet_html("card", desk.attempt, (), "anna", None, "en")
    type_in(desk, "repair connector 3 return", "yes", "retest")
    assert desk.attempt.case.title in sheet_html("card", desk.attempt, (), "anna", None, "en")


def test_a_result_holds_the_finding_the_debrief_and_the_stations_verdict() -> None:
    desk = new_desk("faint_hum_on_three")
    type_in(desk, "hear", *RIGHT_ANSWER)
    html = sheet_html("result", desk.attempt, ("  Score 80 of 100", "", "The rule: x"), "anna", VERDICT, "en")
    assert desk.attempt.case.title in html
    assert "Score 80 of 100" in html
    assert "mono" in html
    assert "fairly sure" in html


def test_a_sheet_is_one_page_of_a4_and_asks_for_nothing_from_outside() -> None:
    html = sheet_html("card", new_desk("faint_hum_on_three").attempt, (), "anna", None, "en")
    assert "size: A4" in html
    assert not re.search(r"(src|href)=|url\(|@import|https?:", html)


def test_a_sheet_is_written_whole_under_a_name_that_tells_nothing(tmp_path: Path) -> None:
    desk = new_desk("output_five_is_dead", attempt_id="0123456789")
    path = write_sheet(tmp_path / "sheets", "card", desk.attempt, desk.attempt_id, (), "anna", None)
    assert path.name == "card_01234567.html"
    assert path.read_text("utf-8").endswith("</html>")
    (tmp_path / "file").write_text("")
    with pytest.raises(MissingHereError):
        write_sheet(tmp_path / "file" / "x", "card", desk.attempt, desk.attempt_id, (), "anna", None)


def test_a_drawing_marks_a_starved_module_beside_it_and_no_injector() -> None:
    def black(fault: Fault) -> int:
        return wiring_svg(NORTH, [fault]).count('fill="#000" stroke="#000"')

    starved = Fault(FaultKind.POOR_MODULE_GROUND, Location.MODULE_POWER, NORTH.cylinders)
    assert black(fault_of(NORTH, FaultKind.OPEN, 3)) == 1
    assert black(starved) == 0
