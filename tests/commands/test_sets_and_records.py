"""set and records as they are typed: a class from building to report, and what a person can get wrong."""

from __future__ import annotations

import csv
import gzip
import json
import shutil
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from tests.exam_sets import PASSPHRASE, SMALL, sealed_set, sitting_of, work_through
from trainer.commands.entry import main
from trainer.records.store.store import open_store

FINDING = "finding\n1\n3\nconnector\nopen\nreturn\n0.75\ny\n"
NONE = "finding\n0\n0.95\ny\n"


def run(*words: str, data: Path, typed: str = "") -> Result:
    return CliRunner().invoke(main, ["--data", str(data), *map(str, words)], input=typed)


@pytest.fixture(scope="module")
def classroom(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A sealed set, its passphrase, and a stick with the results of two learners."""
    folder = tmp_path_factory.mktemp("classroom")
    (folder / "pass").write_text(PASSPHRASE + "\n", "utf-8")
    (folder / "small.yaml").write_text(SMALL, "utf-8")
    _path, exam = sealed_set(folder)
    station = open_store(None)
    for learner, right in (("ann", [True] * 3), ("=ben()", [True, False, False])):
        sitting = sitting_of(exam, station, learner)
        work_through(sitting, right)
        sitting.bundle(folder / "stick")
    station.close()
    return folder


@pytest.fixture
def here(classroom: Path, tmp_path: Path) -> Path:
    shutil.copytree(classroom, tmp_path, dirs_exist_ok=True)
    return tmp_path


def secret(here: Path) -> tuple[str, str]:
    return "--passphrase-file", str(here / "pass")


def collect(here: Path) -> Path:
    school = here / "school"
    done = run("records", "collect", here / "stick", "--set", here / "small.sealed", *secret(here), data=school)
    assert done.exit_code == 0, done.output
    return school


@pytest.fixture(scope="module")
def marked_classroom(classroom: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The classroom after its results were collected: marking takes a second, and is the same each time."""
    folder = tmp_path_factory.mktemp("marked")
    shutil.copytree(classroom, folder, dirs_exist_ok=True)
    collect(folder)
    return folder


@pytest.fixture
def school(here: Path, marked_classroom: Path) -> Path:
    """A school's records with that class collected, beside what is `here`."""
    return Path(shutil.copytree(marked_classroom / "school", here / "school"))


def test_a_set_is_made_checked_sealed_and_shown(here: Path) -> None:
    made = here / "Friday test.yaml"
    words = (
        "set",
        "make",
        made,
        "--case",
        "faint_hum_on_three",
        "--case",
        "old_code_in_memory",
        "--exam",
        "--certainty",
        "0.2",
    )
    assert run(*words, data=here).exit_code == 0
    assert "already exists" in run(*words, data=here).output
    checked = run("set", "check", made, "--json", data=here)
    document = json.loads(checked.stdout)
    assert (document["set"], document["title"], document["size"], document["problems"]) == (
        "friday_test",
        "Friday test",
        2,
        [],
    )
    sealed = run("set", "seal", made, "-o", here / "friday.sealed", *secret(here), data=here)
    assert "the passphrase can read it and change it unseen" in sealed.output
    assert "can recognise those cases by ear" in sealed.output  # two shipped cases
    assert "Debriefs open as soon as a learner has finished" in sealed.output
    assert run("set", "seal", made, "-o", made, *secret(here), data=here).exit_code == 2
    assert "exam, 2 cases" in run("set", "show", here / "friday.sealed", data=here).output
    assert "certainty" not in run("set", "show", here / "friday.sealed", data=here).output
    for words in (("set", "check"), ("inspect",), ("check",)):
        told = run(*words, here / "friday.sealed", data=here)
        assert told.exit_code == 1
        assert "a sealed set" in told.output


def test_an_exam_is_worked_in_the_terminal_and_its_debriefs_looked_at(here: Path) -> None:
    words = (
        "set",
        "sit",
        here / "small.sealed",
        "--learner",
        "  cid  ",
        "--text",
        "--sound",
        "file",
        "--results",
        here / "new",
        *secret(here),
    )
    first = run(
        *words, data=here / "station", typed=f"hear\nhint\ndebrief\n{FINDING}repair connector 3 return\nyes\nleave\n"
    )
    assert "Case 1 of 3" in first.output
    assert "Hints are switched off" in first.output
    assert "Truth" not in first.output
    second = run(*words, data=here / "station", typed=f"void headphones failed\n{NONE}{NONE}1\n\n")
    assert "You get another" in second.output
    assert "Every case is done (3 of 3)" in second.output
    assert "Truth: open, pass-through connector" in second.output
    (bundle,) = (here / "new").iterdir()
    assert b"cid" in bundle.read_bytes()
    assert b"  cid" not in bundle.read_bytes()
    assert b'"looked_back"' in bundle.read_bytes()


def test_a_class_is_collected_reported_and_exported(here: Path) -> None:
    school = collect(here)
    again = run(
        "records", "collect", here / "stick", "--set", here / "small.sealed", *secret(here), "--json", data=school
    )
    assert [one["fate"] for one in json.loads(again.stdout)["files"]] == ["already_there"] * 2
    assert "First week" in run("records", "list", data=school).output
    assert run("records", "report", "-o", here / "report.html", data=school).exit_code == 0
    assert "What to teach next" in (here / "report.html").read_text("utf-8")
    table = list(csv.DictReader((here / "report.csv").read_text("utf-8").splitlines()))
    assert sum(int(row["count"]) for row in table if row["table"] == "places") == 6
    for kind in ("gradebook", "cases", "events", "xapi"):
        assert run("records", "export", kind, "-o", here / kind, data=school).exit_code == 0
    book = list(csv.DictReader((here / "gradebook").read_text("utf-8").splitlines()))
    assert [row["learner"] for row in book] == ["'=ben()", "ann"]
    assert [row["cases_done"] for row in book] == ["3", "3"]
    assert len((here / "xapi").read_text("utf-8").splitlines()) == 8


def test_marks_are_voided_commented_regraded_and_named(here: Path, school: Path) -> None:
    (here / "roster.csv").write_text("learner,name,class\nann,Ann Meyer,day\nzed,Zed,day\n", "utf-8")
    assert "2 people are on the roster now" in run("records", "roster", here / "roster.csv", data=school).output
    assert run("records", "void", "--learner", "=ben()", "--case", "3", "--reason", "noise", data=school).exit_code == 0
    assert run("records", "comment", "--case", "1", "--text", "played on the projector", data=school).exit_code == 0
    told = run("records", "regrade", "--set", here / "small.sealed", "--case", "2", "--answer", "5 pass_through_connector open return",
               "--reason", "the file was wrong", *secret(here), data=school)  # fmt: skip
    assert told.exit_code == 0, told.output
    assert run("records", "export", "gradebook", "-o", here / "book", data=school).exit_code == 0
    rows = {row["learner"]: row for row in csv.DictReader((here / "book").read_text("utf-8").splitlines())}
    assert rows["ann"]["name"] == "Ann Meyer"
    assert rows["'=ben()"]["case_3"] == "NA"
    assert rows["zed"]["mark"] == "-"
    assert float(rows["ann"]["case_2"]) < 50.0
    run("records", "report", "-o", here / "report.html", data=school)
    assert "played on the projector" in (here / "report.html").read_text("utf-8")


def test_records_are_backed_up_restored_kept_and_deleted(here: Path, school: Path) -> None:
    assert run("records", "backup", here / "all.gz", data=school).exit_code == 0
    assert run("records", "restore", here / "all.gz", data=here / "other").exit_code == 0
    first, second = (open_store(folder) for folder in (school, here / "other"))
    assert first.count() == second.count()
    first.close(), second.close()
    assert run("records", "restore", here / "all.gz", data=school).exit_code == 2
    asked = run("records", "delete", "--learner", "ann", data=school, typed="n\n")
    assert "Delete everything by ann" in asked.output
    assert "0 attempts deleted" in asked.output
    assert "3 attempts deleted" in run("records", "delete", "--learner", "ann", "--yes", data=school).output
    assert b"ann" not in b"".join(path.read_bytes() for path in school.glob("attempts.sqlite3*"))
    assert run("records", "keep", "--until", "2020-01-01", data=school).exit_code == 2
    assert run("records", "keep", "--until", "2099-01-01", data=school).exit_code == 0
    assert "0 attempts deleted" in run("records", "delete", "--overdue", "--yes", data=school).output
    assert "3 attempts deleted" in run("records", "delete", "--set", "first_week", "--yes", data=school).output
    assert "No results have been collected" in run("records", "list", data=school).output


def test_a_changed_byte_of_a_backup_is_refused_unless_it_unpacks_to_the_very_same(here: Path, school: Path) -> None:
    # RFC 1952 leaves bytes of the head without meaning, RFC 1951 the bits that fill the last byte of a block,
    # and one text has many packings: what counts is that never another record comes back
    assert run("records", "backup", here / "all.gz", data=school).exit_code == 0
    whole = (here / "all.gz").read_bytes()
    content = gzip.decompress(whole)
    changed_bytes = [*range(0, len(whole), len(whole) // 25), *range(len(whole) - 12, len(whole))]
    refused = 0
    for place in changed_bytes:
        (here / "bad.gz").write_bytes(whole[:place] + bytes([whole[place] ^ 16]) + whole[place + 1 :])
        told = run("records", "restore", here / "bad.gz", data=here / f"third {place}")
        if told.exit_code == 2:
            refused += 1
        else:
            assert told.exit_code == 0, told.output
            assert gzip.decompress((here / "bad.gz").read_bytes()) == content
    assert refused > len(changed_bytes) * 3 // 4


def test_a_lost_stick_is_written_again(here: Path) -> None:
    words = (
        "set",
        "sit",
        here / "small.sealed",
        "--learner",
        "cid",
        "--text",
        "--sound",
        "file",
        "--results",
        here / "new",
        *secret(here),
    )
    run(*words, data=here / "station", typed=NONE)
    before = next((here / "new").iterdir()).name
    shutil.rmtree(here / "new")
    done = run(
        "records",
        "bundle",
        "--set",
        here / "small.sealed",
        "--learner",
        "cid",
        "-o",
        here / "new",
        *secret(here),
        data=here / "station",
    )
    assert done.exit_code == 0
    assert next((here / "new").iterdir()).name == before
    assert (
        run(
            "records", "bundle", "--set", here / "small.sealed", "--learner", "x", "-o", here, *secret(here), data=here
        ).exit_code
        == 2
    )


WRONG = [
    (("set", "check", "none.yaml"), 1, "the file is missing"),
    (("set", "make", "x.yaml", "--case", "nosuch"), 1, "cases.0.case is 'nosuch'"),
    (("set", "make", "x.yaml"), 1, "cases is []"),
    (("set", "make", "x.yaml", "--draw", "4", "--opens", "0001-01-01T00:00"), 2, "is not a date that this computer can use"),
    (("set", "seal", "small.yaml", "-o", "small.sealed", "--passphrase-file", "pass"), 2, "already exists"),
    (("set", "sit", "small.yaml", "--learner", "ann", "--text"), 2, "Seal it first"),
    (("set", "sit", "small.sealed", "--learner", "   ", "--text", "--passphrase-file", "pass"), 2, "needs a name"),
    (("set", "sit", "small.sealed", "--learner", "a" * 201, "--text", "--passphrase-file", "pass"), 2, "more than 200"),
    (("set", "sit", "small.sealed", "--learner", "a\x00b", "--text", "--passphrase-file", "pass"), 2, "that names do not have"),
    (("set", "sit", "small.sealed", "--learner", "\udcff", "--text", "--passphrase-file", "pass"), 2, "that names do not have"),
    (("set", "sit", "small.sealed", "--learner", "ann", "--text", "--passphrase-file", "roster"), 2, "not the passphrase"),
    (("set", "sit", "small.sealed", "--learner", "ann", "--text", "--passphrase-file", "none"), 1, "the file is missing"),
    (("set", "show", "broken.sealed"), 2, "is not a sealed set"),
    (("records", "report", "-o", "x.html"), 2, "No results have been collected here yet"),
    (("records", "collect", "none", "--set", "small.sealed", "--passphrase-file", "pass"), 1, "is not there"),
    (("records", "roster", "none.csv"), 1, "the file is missing"),
    (("records", "roster", "roster"), 1, "learner,name,class"),
    (("records", "restore", "pass"), 2, "is not a backup"),
    (("records", "delete", "--yes"), 2, "Say exactly one thing to delete"),
    (("records", "delete", "--learner", "nobody", "--yes"), 2, "nobody has no results here"),
    (("records", "deliver"), 2, "This machine does not know a shared store"),
    (("--store", "mysql://x", "records", "list"), 2, "is not the address of a shared store"),
    (("--store", "postgresql+psycopg://x@127.0.0.1:1/y", "records", "list"), 3, "No PostgreSQL server is running"),
    (("handout", "nosuch", "-o", "x.html"), 1, "the case is unknown"),
]  # fmt: skip


@pytest.mark.parametrize(
    ("words", "code", "told"), WRONG, ids=lambda value: " ".join(value)[:40] if isinstance(value, tuple) else ""
)
def test_what_a_person_can_get_wrong_is_told(
    here: Path, monkeypatch: pytest.MonkeyPatch, words: tuple[str, ...], code: int, told: str
) -> None:
    monkeypatch.chdir(here)
    (here / "broken.sealed").write_bytes(b"injector trainer sealed set 1\n" + b"[" * 100_000 + b"\n")
    (here / "roster").write_text("learner;name\nann;Ann\n", "utf-8")
    done = run(*words, data=here / "data")
    assert done.exit_code == code, done.output
    assert told in done.output


def test_a_station_may_keep_the_shared_stores_address_in_its_settings(tmp_path: Path) -> None:
    (tmp_path / "settings.json").write_text('{"store_url": "mysql://x"}', "utf-8")
    for words in (("records", "list"), ("records", "deliver"), ("practice", "faint_hum_on_three", "--text")):
        done = run(*words, data=tmp_path)
        assert done.exit_code == 2
        assert "is not the address of a shared store" in done.output
    (check,) = [
        c for c in json.loads(run("doctor", "--json", data=tmp_path).stdout)["checks"] if c["name"] == "shared store"
    ]
    assert not check["good"]


ROSTERS = [
    ("", "empty"),
    ("learner,name\nann,Ann\n", "learner,name,class"),
    ("learner,name,class\nann,Ann\n", "line 2"),
    ("learner,name,class\n,Ann,day\n", "three cells"),
    ("learner,name,class\nann,Ann,day\nann,Other,day\n", "ann twice"),
    ("learner,name,class\nann," + "x" * 300 + ",day\n", "at most 200 characters"),
    ('learner,name,class\nann,"' + "x" * 200_000, "three cells"),
    (
        "learner,name,class\nann,\u202eAnn,day\n",
        "line 2: the roster is '\\u202eAnn', with the invisible character \\u202e",
    ),
    ("learner,name,class\nann,A\x00nn,day\n", "line 2: the roster is 'A\\x00nn'"),
    ("learner,name,class\nann,Ann,\x1b[2Jday\n", "line 2: the roster is '\\x1b[2Jday'"),
]


@pytest.mark.parametrize(("content", "told"), ROSTERS)
def test_a_faulty_roster_is_told_by_its_lines(tmp_path: Path, content: str, told: str) -> None:
    (tmp_path / "roster.csv").write_text(content, "utf-8")
    done = run("records", "roster", tmp_path / "roster.csv", data=tmp_path / "data")
    assert done.exit_code == 1
    assert told in done.output


def test_a_roster_with_semicolons_and_a_mark_is_read(tmp_path: Path) -> None:
    (tmp_path / "roster.csv").write_bytes("\ufefflearner;name;class\nann;Ann, the second;day\n".encode())
    done = run("records", "roster", tmp_path / "roster.csv", "--json", data=tmp_path / "data")
    assert json.loads(done.stdout) == {"people": 1}
