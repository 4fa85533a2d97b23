"""Results as xAPI 1.0.3 statements: who answered what, how well; an account for the learner, never an address."""

from __future__ import annotations

import uuid
from collections import Counter
from collections.abc import Iterator
from datetime import datetime
from urllib.parse import quote

from sqlalchemy import RowMapping, select

from trainer.circuit.elements import Location
from trainer.circuit.profile import PASSES
from trainer.records.class_report.learner_sums import counted, learner_sums
from trainer.records.class_report.results import StoredSet, void_items
from trainer.records.store.store import Store
from trainer.records.store.tables import result_table
from trainer.words import spoken, text

Statement = dict[str, object]

SPACE = uuid.UUID("5b0d0d5e-6b0b-5a53-9c26-2f2b6f9d4a10")
"""Statement ids are made from this and what the statement is about (RFC 4122, version 5), so that they stay."""

VERBS = "http://adlnet.gov/expapi/verbs/"
INTERACTION = "http://adlnet.gov/expapi/activities/cmi.interaction"
ASSESSMENT = "http://adlnet.gov/expapi/activities/assessment"
VERSION = "1.0.3"


def default_home(store_id: str) -> str:
    """Return the home of accounts where a school names none of its own; `.invalid` never leads anywhere (RFC 2606)."""
    return f"https://injector-ear-trainer.invalid/store/{store_id}"


def statements(store: Store, stored: StoredSet, home: str) -> Iterator[Statement]:
    """Yield a statement for each counted result, and one for each learner's whole set."""
    base = f"{home.rstrip('/')}/set/{quote(stored.id)}"
    parent: Statement = {"id": base, "definition": {"type": ASSESSMENT, "name": {spoken(): stored.title}}}
    columns = result_table.c
    wanted = select(result_table).where(counted(stored)).order_by(columns.learner, columns.item)
    with store.reading(yield_per=2000) as connection:
        for row in connection.execute(wanted).mappings():
            yield _answered(row, stored, home, base, parent)
    with store.reading() as connection:
        voids = Counter(learner for learner, _item in void_items(connection, stored.id))
    for learner in learner_sums(store, stored):
        who = learner.learner
        registration = str(uuid.uuid5(SPACE, f"{stored.id} {who}"))
        yield {
            "id": str(uuid.uuid5(SPACE, f"completed {stored.id} {who} {learner.latest} {learner.mark:.4f}")),
            "actor": _actor(who, home),
            "verb": _verb("completed"),
            "object": {"objectType": "Activity", **parent},
            "result": {
                "score": _score(learner.mark),
                "success": learner.mark >= stored.passes_at,
                "completion": learner.cases >= stored.size - voids[who],
            },
            "context": {"registration": registration},
            **_moment(learner.latest),
            "version": VERSION,
        }


def _answered(row: RowMapping, stored: StoredSet, home: str, base: str, parent: Statement) -> Statement:
    choices = [
        {"id": name, "description": {spoken(): text(f"location.{name}") if name != PASSES else text("debrief.passes")}}
        for name in (*map(str, Location), PASSES)
    ]
    return {
        "id": str(uuid.uuid5(SPACE, f"answered {row['attempt_id']} {row['mark']:.4f}")),
        "actor": _actor(row["learner"], home),
        "verb": _verb("answered"),
        "object": {
            "objectType": "Activity",
            "id": f"{base}/case/{row['item']}",
            "definition": {
                "type": INTERACTION,
                "interactionType": "choice",
                "name": {spoken(): text("set.case", number=row["item"], size=stored.size)},
                "description": {spoken(): text("xapi.question")},
                "choices": choices,
                "correctResponsesPattern": [_pattern(row["place"])],
            },
        },
        "result": {
            "score": _score(row["mark"]),
            "success": bool(row["right"]),
            "completion": True,
            "response": _pattern(row["said_place"]),
            "duration": f"PT{row['spent_s']:.2f}S",
        },
        "context": {
            "registration": str(uuid.uuid5(SPACE, f"{stored.id} {row['learner']}")),
            "contextActivities": {"parent": [{"objectType": "Activity", **parent}]},
        },
        **_moment(row["closed_at"]),
        "version": VERSION,
    }


def _actor(learner: str, home: str) -> Statement:
    return {"objectType": "Agent", "account": {"homePage": home, "name": learner}}


def _verb(name: str) -> Statement:
    return {"id": f"{VERBS}{name}", "display": {"en": name}}


def _score(mark: float) -> dict[str, float]:
    held = min(max(mark, 0.0), 100.0)
    return {"scaled": round(held / 100.0, 6), "raw": round(held, 4), "min": 0, "max": 100}


def _pattern(places: str) -> str:
    """Return places as a response of the type choice."""
    return "[,]".join(dict.fromkeys(places.split("+"))) if places else PASSES


def _moment(at: str) -> dict[str, str]:
    """Return the time of a statement; none, which xAPI allows, where the record's is damaged."""
    try:
        return {"timestamp": datetime.fromisoformat(at).isoformat(timespec="milliseconds")}
    except ValueError:
        return {}
