"""Exports and reports: readable elsewhere, harmless whatever a learner calls themselves."""

from __future__ import annotations

import csv
import io
import json
import subprocess
from pathlib import Path

import pytest

from tests.results import keep, put, result
from trainer.records.class_report.csv_text import csv_pieces, defused
from trainer.records.class_report.exports import GRADEBOOK, TIDY, case_rows, event_rows, gradebook, xapi_lines
from trainer.records.class_report.notes import Note, add_note
from trainer.records.class_report.report import median_of, report_html
from trainer.records.class_report.results import StoredSet
from trainer.records.class_report.roster import Person, keep_roster
from trainer.records.class_report.xapi import default_home
from trainer.records.store.store import Store, open_store

NAMES = (
    '=HYPERLINK("http://x.invalid";"click")', "+1+1", "-2", "@SUM(A1)", "\t=1+1", "=1+1", "＝1+1", " =2+2",
    "<script>alert(1)</script>", "</td><img src=x onerror=alert(1)>", "{{ 7*7 }}", "שלום עולם", "\u202egnp.exe",
    "a" * 200, "Zoë Łódź 日本", 'say "hi", then\nleave', "null", "O'Brien",
)  # fmt: skip
"""What a learner may be called: formulas, markup, right to left, long, quotes and line ends."""


@pytest.fixture
def store() -> Store:
    return open_store(None)


@pytest.fixture
def kept(store: Store) -> StoredSet:
    made = keep(store, 2)
    put(store, [result(name, item, 100.0 if item == 1 else 40.0) for name in NAMES for item in (1, 2)])
    return made


def rows_of(content: bytes) -> list[dict[str, str]]:
    return list(csv.DictReader(io.StringIO(content.decode("utf-8"), newline="")))


def test_a_gradebook_has_one_row_a_learner_and_adds_up(store: Store, kept: StoredSet) -> None:
    keep_roster(store, [Person("Zoë Łódź 日本", "Zoë", "day class"), Person("zed", "Zed", "day class")])
    rows = {row["learner"].removeprefix("'"): row for row in rows_of(b"".join(gradebook(store, kept, bom=False)))}
    assert set(rows) == {*NAMES, "zed"}
    assert list(next(iter(rows.values()))) == [*GRADEBOOK, "case_1", "case_2"]
    one = rows["Zoë Łódź 日本"]
    assert (one["name"], one["mark"], one["passed"], one["case_1"], one["case_2"]) == (
        "Zoë",
        "70.0",
        "yes",
        "100.0",
        "40.0",
    )
    assert [rows["zed"][name] for name in ("mark", "case_1", "cases_done")] == ["-", "-", "0"]


def test_a_void_case_is_na_and_the_rest_still_counts(store: Store, kept: StoredSet) -> None:
    add_note(store, kept.id, Note("2026-12-01", "void", "O'Brien", 2, "no sound"))
    (row,) = [row for row in rows_of(b"".join(gradebook(store, kept, bom=False))) if row["learner"] == "O'Brien"]
    assert (row["mark"], row["case_2"]) == ("100.0", "NA")


@pytest.mark.parametrize("name", NAMES)
def test_no_cell_begins_like_a_formula(name: str) -> None:
    cell = str(defused(name))
    assert not cell.lstrip(" ").startswith(("=", "+", "-", "@", "\t", "\r", "＝"))
    assert cell.removeprefix("'") == name


def test_tables_are_as_rfc_4180_says() -> None:
    content = b"".join(csv_pieces(["a", "b"], [["x", 'say "hi", ok'], ["two\nlines", -3.5], [None, ""]]))
    assert content == b'a,b\r\nx,"say ""hi"", ok"\r\n"two\nlines",-3.5\r\n,\r\n'
    assert b"".join(csv_pieces(["a"], [["é"]], bom=True)).startswith(b"\xef\xbb\xbfa\r\n")


@pytest.mark.needs("Gnumeric")
def test_a_spreadsheet_reads_every_name_as_text(store: Store, kept: StoredSet, tmp_path: Path) -> None:
    """Gnumeric's converter reads the gradebook: as many rows, and no formula was run."""
    source, there = tmp_path / "book.csv", tmp_path / "book.txt"
    source.write_bytes(b"".join(gradebook(store, kept, bom=True)))
    call = [
        "ssconvert",
        "-I",
        "Gnumeric_stf:stf_csvtab",
        "-E",
        "UTF-8",
        "-T",
        "Gnumeric_stf:stf_csv",
        str(source),
        str(there),
    ]
    subprocess.run(
        call, check=True, capture_output=True, timeout=120, env={"HOME": str(tmp_path), "PATH": "/usr/bin:/bin"}
    )
    read = rows_of(there.read_bytes())
    assert len(read) == len(NAMES)
    learners = {row["learner"].removeprefix("'") for row in read}
    assert {"=1+1", "+1+1", "@SUM(A1)", "Zoë Łódź 日本", 'say "hi", then\nleave'} <= learners
    assert not {"2", "4", "49"} & learners
    assert {row["mark"] for row in read} == {"70"}


def test_one_row_a_case_with_every_column_that_is_documented(store: Store, kept: StoredSet) -> None:
    rows = rows_of(b"".join(case_rows(store, kept, bom=False)))
    assert len(rows) == 2 * len(NAMES)
    assert tuple(rows[0]) == TIDY
    documented = Path("docs/records.md").read_text("utf-8")
    assert [name for name in (*TIDY, *GRADEBOOK) if f"`{name}`" not in documented] == []


def test_the_event_log_has_its_header_even_where_nothing_is(store: Store, kept: StoredSet) -> None:
    assert b"".join(event_rows(store, kept, bom=False)) == (
        b"learner,attempt_id,item,try_number,number,kind,at,data,link\r\n"
    )


def test_statements_hold_before_an_independent_validator(store: Store, kept: StoredSet) -> None:
    """xAPI 1.0.3 by the models of ralph-malph (MIT); what those models let through is asked for besides."""
    from ralph.models.xapi.base.statements import BaseXapiStatement  # half a second

    lines = list(xapi_lines(store, kept, default_home(store.id)))
    assert len(lines) == 3 * len(NAMES)
    for line in lines:
        BaseXapiStatement.model_validate_json(line)
        statement = json.loads(line)
        assert "mbox" not in line.decode("utf-8")
        assert statement["timestamp"].endswith("+00:00")
        score = statement["result"]["score"]
        assert 0.0 <= score["scaled"] <= 1.0
        assert score["min"] <= score["raw"] <= score["max"]
    answered = [json.loads(line) for line in lines if b"/answered" in line]
    assert {one["result"]["duration"] for one in answered} == {"PT300.00S"}
    assert {tuple(one["object"]["definition"]["correctResponsesPattern"]) for one in answered} == {("engine_harness",)}
    choices = {one["id"] for one in answered[0]["object"]["definition"]["choices"]}
    assert {one["result"]["response"] for one in answered} <= choices


def test_statements_keep_their_ids_from_export_to_export(store: Store, kept: StoredSet) -> None:
    first, second = (list(xapi_lines(store, kept, "https://school.invalid")) for _time in range(2))
    assert first == second
    assert len({json.loads(line)["id"] for line in first}) == len(first)


def test_a_name_is_text_in_the_report_whatever_it_says(store: Store, kept: StoredSet) -> None:
    add_note(store, kept.id, Note("2026-12-01", "comment", NAMES[8], 1, "<b>bold</b>"))
    page = report_html(store, kept, "2026-12-01T00:00")
    assert "<script>" not in page
    assert "<img src=x" not in page
    assert "<b>bold</b>" not in page
    assert "{{ 7*7 }}" in page
    assert "&lt;script&gt;alert(1)&lt;/script&gt;" in page
    assert "http://" not in page.replace("http://www.w3.org/", "").replace("http://x.invalid", "").replace(
        "http://purl.org", ""
    ).replace("http://creativecommons.org", "")


@pytest.mark.parametrize(("learners", "said"), [(9, "too few"), (10, "rough"), (29, "rough"), (30, "plain")])
def test_an_index_is_hidden_under_ten_and_rough_under_thirty(store: Store, learners: int, said: str) -> None:
    made = keep(store, 3)
    put(
        store, [result(f"l{n}", item, float((n * 29 + item * 31) % 100)) for n in range(learners) for item in (1, 2, 3)]
    )
    page = report_html(store, made, "2026-12-01T00:00")
    items = page[page.index("discrimination</th>") :]
    row = items[items.index("<tr><td") : items.index("</table>")]
    assert (said in row) if said != "plain" else ("rough" not in row and "too few" not in row)
    assert f"(n={learners})" in row


def test_the_median_of_counted_values() -> None:
    assert median_of({}) == 0.0
    assert median_of({3: 1}) == 3.0
    assert median_of({1: 2, 4: 2}) == 2.5
    assert median_of({1: 1, 2: 1, 9: 1}) == 2.0
