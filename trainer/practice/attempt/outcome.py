"""What a closed attempt came to, as plain values: what results are counted, compared and reported from."""

from __future__ import annotations

import json
from collections.abc import Sequence
from dataclasses import asdict, dataclass
from typing import Annotated, Any

from pydantic import Field, TypeAdapter

from trainer.cases.drawing.random_case import MOST_OF_A_PAIR
from trainer.circuit.elements import Location
from trainer.circuit.faults import FaultKind
from trainer.circuit.profile import PASSES
from trainer.practice.attempt.attempt import Attempt
from trainer.practice.attempt.events import EventKind
from trainer.practice.attempt.judging import Scored
from trainer.reasoning.universe.finding import CERTAINTIES, Claim
from trainer.words import TEXTS

Count = Annotated[int, Field(ge=0, lt=2**31)]
Amount = Annotated[float, Field(ge=0.0, le=1e9)]


@dataclass(frozen=True, slots=True)
class Outcome:
    """The result of one attempt; `shares` are those of cylinders, location, kind, proof and economy, 0 to 1.

    `used_minutes` are labour, `time_s` real seconds where a set has them taken down.

    `places` and `kinds` are those of the truth, empty where the circuit passes; what was said stands beside them.
    """

    points: Annotated[float, Field(ge=0.0, le=100.0)]
    shares: tuple[float, ...]
    right: bool
    certainty: float
    places: tuple[str, ...]
    said_places: tuple[str, ...]
    cylinders: tuple[int, ...]
    said_cylinders: tuple[int, ...]
    kinds: tuple[str, ...]
    said_kinds: tuple[str, ...]
    misconception: str
    plays: Count
    readings: Count
    hints: Count
    used_minutes: Amount
    best_minutes: Amount
    time_s: Amount


_KEPT = TypeAdapter(Outcome)


def outcome_of(attempt: Attempt, found: Scored, misconception: str) -> Outcome:
    """Return what an attempt came to; raises ValueError for one without a finding."""
    if attempt.finding is None:
        raise ValueError("an attempt without a finding has no outcome")
    score = found.score
    said = attempt.finding.claims
    return Outcome(
        points=round(score.points, 2),
        shares=tuple(
            round(share, 4) for share in (score.cylinders, score.location, score.kind, score.proof, score.economy)
        ),
        right=score.right,
        certainty=attempt.finding.certainty,
        places=_places(found.truth),
        said_places=_places(said),
        cylinders=_cylinders(found.truth),
        said_cylinders=_cylinders(said),
        kinds=tuple(sorted({str(claim.kind) for claim in found.truth})),
        said_kinds=tuple(sorted({str(claim.kind) for claim in said})),
        misconception=misconception,
        plays=count_of(attempt, EventKind.HEARD),
        readings=count_of(attempt, EventKind.MEASURED),
        hints=count_of(attempt, EventKind.HINTED),
        used_minutes=round(found.proof.used_minutes, 2),
        best_minutes=round(found.proof.best_minutes, 2),
        time_s=round(spent_s_of(attempt), 3),
    )


def count_of(attempt: Attempt, kind: EventKind) -> int:
    """Return how often something happened in an attempt."""
    return sum(line.kind is kind for line in attempt.card)


def spent_s_of(attempt: Attempt) -> float:
    """Return the real seconds spent on an attempt, as far as they were taken down with its events."""
    return sum(float(line.data.get("spent_s", 0.0)) for line in attempt.card)


def outcome_data(outcome: Outcome) -> dict[str, Any]:
    """Return an outcome as plain data, as the event that closes an attempt keeps it."""
    return {name: list(value) if isinstance(value, tuple) else value for name, value in asdict(outcome).items()}


def outcome_from(data: dict[str, Any]) -> Outcome:
    """Return the outcome that plain data describe; raises KeyError, TypeError or ValueError for data that are none."""
    values = {name: data[name] for name in Outcome.__dataclass_fields__}
    found = _KEPT.validate_json(json.dumps(values), strict=True)
    if found.certainty not in CERTAINTIES or f"misconception.{found.misconception or 'unclassified'}" not in TEXTS:
        raise ValueError("unknown words")
    for place in (*found.places, *found.said_places):
        Location(place)
    for kind in (*found.kinds, *found.said_kinds):
        FaultKind(kind)
    return found


def class_of(outcome: Outcome) -> str:
    """Return the class that results are pooled by: the place of the fault, a whole group, two faults, or none."""
    if not outcome.places:
        return PASSES
    if len(outcome.places) > 1:
        return "two_faults"
    return "group" if len(outcome.cylinders) > MOST_OF_A_PAIR else outcome.places[0]


def _places(claims: Sequence[Claim]) -> tuple[str, ...]:
    return tuple(sorted(str(claim.location) for claim in claims))


def _cylinders(claims: Sequence[Claim]) -> tuple[int, ...]:
    return tuple(sorted({number for claim in claims for number in claim.cylinders}))
