"""Twenty-four stations write to one PostgreSQL for two minutes; the server is restarted in the middle: every event once.

`python -m tests.records.store.stations_at_once [SECONDS]`
"""

from __future__ import annotations

import multiprocessing
import sys
import tempfile
import time
import uuid
from datetime import UTC, datetime
from pathlib import Path

from tests.postgres import Postgres
from trainer.practice.attempt.event_record import EventKind, EventRecord
from trainer.records.store.delivery import Delivery, undelivered
from trainer.records.store.log_rows import AttemptRow
from trainer.records.store.store import open_store, open_store_at

STATIONS = 24
EVENTS_OF_AN_ATTEMPT = 12


def station(number: int, folder: str, url: str, seconds: float) -> None:
    """Work attempt after attempt, some ten events a second, and deliver in the background as a station does."""
    local = open_store(Path(folder) / str(number))
    delivery = Delivery(local, url)
    local.stop = delivery.stop
    delivery.start()
    end = time.monotonic() + seconds
    while time.monotonic() < end:
        row = AttemptRow(
            str(uuid.uuid4()), f"learner {number}", "shipped", "x", "", "", 1, "0", datetime.now(UTC).isoformat()
        )
        local.begin(row, EventRecord(1, EventKind.STARTED, "2026-01-01T00:00:00+00:00", {}))
        for event in range(2, EVENTS_OF_AN_ATTEMPT + 1):
            local.append(row.id, EventRecord(event, EventKind.AWAY, "2026-01-01T00:00:01+00:00", {"station": number}))
            time.sleep(0.08)
    local.stop()
    for _time in range(20):
        if not undelivered(local):
            break
        Delivery(local, url).stop()
        time.sleep(0.5)
    local.stop = lambda: None
    local.close()


def main(seconds: float) -> None:
    server = Postgres()
    try:
        url = server.fresh()
        with tempfile.TemporaryDirectory() as folder:
            context = multiprocessing.get_context("spawn")
            workers = [context.Process(target=station, args=(n, folder, url, seconds)) for n in range(STATIONS)]
            for one in workers:
                one.start()
            time.sleep(seconds / 2)
            server.stop("immediate")
            print("server pulled down", flush=True)
            time.sleep(5.0)
            server.start()
            print("server up again", flush=True)
            for one in workers:
                one.join()
            kept, waiting = {}, 0
            for number in range(STATIONS):
                local = open_store(Path(folder) / str(number))
                waiting += len(undelivered(local))
                for row in _rows(local):
                    kept[row.id] = local.events(row.id)
                local.close()
            far = open_store_at(url)
            there = {row.id: far.events(row.id) for row in _rows(far)}
            events = sum(map(len, kept.values()))
            print(f"{STATIONS} stations, {seconds:.0f} s: {len(kept)} attempts, {events} events kept at the stations, "
                  f"{far.count()} in the shared store, {waiting} attempts waiting")  # fmt: skip
            assert there == kept
            assert waiting == 0
            far.close()
    finally:
        server.close()


def _rows(store: object) -> list[AttemptRow]:
    return [row for number in range(STATIONS) for row in store.unfinished(f"learner {number}")]  # type: ignore[attr-defined]


if __name__ == "__main__":
    main(float(sys.argv[1]) if len(sys.argv) > 1 else 120.0)
