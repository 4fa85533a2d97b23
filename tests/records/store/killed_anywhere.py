"""Killed with SIGKILL at 200 random moments in attempts, collects and exports: nothing committed is lost, nothing is half.

`python -m tests.records.store.killed_anywhere [TIMES]`
"""

from __future__ import annotations

import random
import signal
import subprocess
import sys
import tempfile
from pathlib import Path

from tests.exam_sets import PASSPHRASE, sealed_set, sitting_of, work_through
from trainer.records.store.bundle import read_bundle
from trainer.records.store.store import open_store
from trainer.sets.set_access import OpenedSet

COMMAND = [sys.executable, "-m", "trainer"]
WORK = """
import sys
from pathlib import Path
from trainer.practice.attempt.event_record import EventKind, EventRecord
from trainer.records.store.log_rows import AttemptRow
from trainer.records.store.store import open_store
import os, uuid
from datetime import UTC, datetime
folder, report = Path(sys.argv[1]), open(sys.argv[2], "a", buffering=1)
store = open_store(folder)
while True:
    row = AttemptRow(str(uuid.uuid4()), "ann", "shipped", "x", "", "", 1, "0", datetime.now(UTC).isoformat())
    store.begin(row, EventRecord(1, EventKind.STARTED, "2026-01-01T00:00:00+00:00", {}))
    report.write(f"{row.id} 1\\n"); report.flush(); os.fsync(report.fileno())
    for number in range(2, 9):
        store.append(row.id, EventRecord(number, EventKind.AWAY, "2026-01-01T00:00:01+00:00", {"number": number}))
        report.write(f"{row.id} {number}\\n"); report.flush(); os.fsync(report.fileno())
"""


def killed(call: list[str], after_s: float, **options: object) -> None:
    process = subprocess.Popen(call, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL, **options)  # type: ignore[call-overload]
    try:
        process.wait(after_s)
    except subprocess.TimeoutExpired:
        process.send_signal(signal.SIGKILL)
        process.wait()


def said(report: Path) -> set[tuple[str, int]]:
    """Return the events that the killed program had been told are committed; its last line may be cut."""
    lines = report.read_text().split("\n")[:-1] if report.exists() else []
    return {(line.split()[0], int(line.split()[1])) for line in lines}


def killed_at_work(folder: Path, times: int, rng: random.Random) -> int:
    """Kill a program that begins attempts and adds events; returns how many events that it was told of are lost."""
    lost = 0
    for number in range(times):
        killed([sys.executable, "-c", WORK, str(folder / "work"), str(folder / "said")], 1.0 + 1.2 * rng.random())
        store = open_store(folder / "work")
        have = {(row.id, event.number) for row in store.unfinished("ann") for event in store.events(row.id)}
        lost += len(said(folder / "said") - have)
        store.close()
        if number % 10 == 9:
            print(f"attempts: {number + 1} kills, {len(have)} events kept, {lost} lost", flush=True)
    return lost


def killed_at_collecting(folder: Path, times: int, rng: random.Random, events: int) -> None:
    """Kill collecting; the stick stays as it was, and the last one, left alone, has everything once."""
    bundles = {one.name: one.read_bytes() for one in (folder / "stick").iterdir()}
    collect = [*COMMAND, "--data", str(folder / "school"), "records", "collect", str(folder / "stick"), "--set",
               str(folder / "small.sealed"), "--passphrase-file", str(folder / "pass")]  # fmt: skip
    for number in range(times):
        killed(collect, 0.4 + 3.0 * rng.random())
        assert {one.name: one.read_bytes() for one in (folder / "stick").iterdir()} == bundles
        if number % 10 == 9:
            print(f"collects: {number + 1} kills", flush=True)
    done = subprocess.run(collect, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr
    school = open_store(folder / "school")
    assert school.count() == events
    school.close()


def killed_at_writing(folder: Path, times: int, rng: random.Random, exam: OpenedSet) -> int:
    """Kill exports, reports and bundles; returns how many files were found half-written."""
    half = 0
    secret = ["--set", str(folder / "small.sealed"), "--passphrase-file", str(folder / "pass")]
    for number in range(times):
        kind = ("gradebook", "cases", "events", "xapi")[number % 4]
        call = ["export", kind, "-o", str(folder / f"{kind}.{'jsonl' if kind == 'xapi' else 'csv'}")]
        if number % 5 == 4:
            call = ["report", "-o", str(folder / "report.html")]
        elif number % 5 == 3:
            call = ["bundle", "--learner", "learner 1", "-o", str(folder / "again"), *secret]
        killed([*COMMAND, "--data", str(folder / "school"), "records", *call], 0.3 + 1.2 * rng.random())
        for one in folder.rglob("*"):
            if one.suffix in (".csv", ".html", ".jsonl"):
                half += not one.read_bytes().endswith((b"</html>", b"</html>\n", b"}\n", b"\r\n"))
        for one in (folder / "again").glob("*.results"):
            read_bundle(one.read_bytes(), exam.case_set.id, exam.key)
    return half


def main(times: int) -> None:
    rng = random.Random(3)
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        _path, exam = sealed_set(folder)
        (folder / "pass").write_text(PASSPHRASE)
        station = open_store(None)
        for learner in range(6):
            sitting = sitting_of(exam, station, f"learner {learner}")
            work_through(sitting, [True, learner % 2 == 0, False])
            sitting.bundle(folder / "stick")
        lost = killed_at_work(folder, times // 3, rng)
        killed_at_collecting(folder, times // 3, rng, station.count())
        half = killed_at_writing(folder, times - 2 * (times // 3), rng, exam)
        station.close()
        print(f"{times} kills: {lost} committed events lost, {half} half-written files")
        assert lost == half == 0


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else 200)
