"""The attempt as a pure step over events."""

from __future__ import annotations

import json
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.desk_hands import RIGHT_ANSWER, new_desk, type_in
from trainer.cases.single_case.shipped import profile_named
from trainer.circuit.elements import Location
from trainer.circuit.fault import Conditions
from trainer.instruments.bench import Work
from trainer.instruments.bench_tests import Operation, Price
from trainer.practice.attempt.actions import codes_now
from trainer.practice.attempt.attempt import Attempt, DamagedLogError, begun, replayed, step
from trainer.practice.attempt.event_json import parse_event, record_of
from trainer.practice.attempt.event_record import EventKind, EventRecord
from trainer.practice.attempt.events import (
    Closed,
    CodesRead,
    Found,
    GaveBack,
    Heard,
    Looked,
    Repaired,
    Retested,
    Started,
)
from trainer.practice.attempt.field_types import names_of

PROFILE = profile_named("field_six")
NAMES = names_of(PROFILE)
PLACES = st.none() | st.sampled_from(list(Location))


def some(names: frozenset) -> st.SearchStrategy[frozenset]:
    return st.frozensets(st.sampled_from(sorted(names)), max_size=3)


WORKS = st.builds(
    Work,
    conditions=st.builds(Conditions, temperature_c=st.floats(-20, 110), moved=PLACES, heated=PLACES,
                         reseated=some(NAMES.contacts)),
    unplugged=some(NAMES.points),
    covers_off=some(NAMES.banks),
    swapped=st.lists(st.tuples(st.integers(1, 6), st.integers(1, 6)), max_size=2).map(tuple),
    replaced=some(frozenset({(Location.DRIVE_MODULE, 0), (Location.COIL, 2)})),
    dummy_loads=some(NAMES.cylinders),
    spread=some(NAMES.contacts),
)  # fmt: skip


@given(WORKS)
def test_the_state_of_the_engine_reads_back_as_it_was_written(work: Work) -> None:
    event = Looked(
        minutes=3.0,
        paid=frozenset({Price(Operation.LOOK), Price(Operation.COVER_OFF, "left")}),
        work=work,
        what=("b", "a"),
    )
    record = record_of(event, 1, "t")
    written = replace(record, data=json.loads(json.dumps(record.data)))
    assert parse_event(written, NAMES) == event


def test_records_from_before_a_field_was_added_are_parsed() -> None:
    """Early retests held no hash of the sound, and did not say whether the fault still had to be provoked."""
    event = Retested(minutes=8.0, work=Work(), codes=("P0203",), place="front", sound="aa", proved=False)
    data = {name: value for name, value in record_of(event, 1, "t").data.items() if name not in ("sound", "to_provoke")}
    parsed = parse_event(EventRecord(1, EventKind.RETESTED, "t", data), NAMES)
    assert parsed == replace(event, sound="")


def test_an_event_on_an_engine_is_not_parsed_with_another_engines_names() -> None:
    event = GaveBack(minutes=0.0, paid=frozenset(), work=Work(dummy_loads=frozenset({8})))
    record = record_of(event, 1, "t")
    with pytest.raises(ValueError, match="cylinders"):
        parse_event(record, NAMES)
    with pytest.raises(ValueError, match="that engine's names"):
        parse_event(record)


def test_a_log_replayed_gives_the_same_attempt() -> None:
    desk = new_desk("faint_hum_on_three")
    type_in(
        desk, "hear", "codes", "pair module 3", "out coil", *RIGHT_ANSWER, "repair connector 3 return", "yes", "retest"
    )
    again = replayed(desk.attempt.case, desk.attempt.seed, desk.store.events("a1"))
    assert again == desk.attempt


def test_codes_are_those_of_the_last_whole_test_with_the_engine_as_it_was_then() -> None:
    """The harness is let go after the test; its codes stay in memory."""
    desk = new_desk("tugged_at_the_clip")
    type_in(desk, "hear", "clear", "move engine", "hear", "move none", "hear 5", "codes")
    assert codes_read(desk.attempt) == ("P0205",)
    type_in(desk, "hear", "codes")
    assert codes_read(desk.attempt) == ()


def test_a_record_of_before_whose_tests_hold_their_codes_still_reads() -> None:
    """Earlier versions stored the codes with the test; what they stored counts."""
    desk = new_desk("faint_hum_on_three")
    type_in(desk, "hear")
    first, heard = desk.store.events("a1")
    before = replace(heard, data={**heard.data, "codes": ["P0207"]})
    attempt = replayed(desk.attempt.case, desk.attempt.seed, [first, before])
    assert codes_now(attempt, desk.solver) == ("P0207",)
    whole = parse_event(heard, names_of(desk.attempt.case.profile))
    assert isinstance(whole, Heard)
    assert codes_now(step(attempt, replace(whole, slots=(3,))), desk.solver) == ("P0207",)
    read = CodesRead(minutes=0.0, paid=frozenset(), work=whole.work, codes=("P0207",), cleared=True)
    assert codes_now(step(attempt, read), desk.solver) == ()


def test_a_retest_is_to_be_provoked_only_where_no_test_before_the_repair_left_a_code() -> None:
    plain, hidden = new_desk("faint_hum_on_three"), new_desk("tugged_at_the_clip")
    type_in(plain, "hear", *RIGHT_ANSWER, "repair connector 3 return", "yes", "retest")
    assert retested(plain.attempt).to_provoke is False
    type_in(hidden, "hear", "finding", "1", "5", "engine", "open", "return", "2", "yes", "retest")
    assert retested(hidden.attempt).proved is True
    assert retested(hidden.attempt).to_provoke is True


@pytest.mark.parametrize(
    ("name", "before", "after"),
    [
        ("faint_hum_on_three", ("hear", *RIGHT_ANSWER, "repair connector 3 return", "yes"), ("retest",)),
        ("faint_hum_on_three", ("hear", *RIGHT_ANSWER, "repair coil 3", "yes", "retest"), ("debrief",)),
        ("tugged_at_the_clip", ("hear", "finding", "0", "2", "yes", "retest"), ("debrief",)),
        ("misfire_without_a_circuit", ("hear",), ("finding", "0", "3", "yes")),
    ],
    ids=["an_even_retest", "a_failed_retest_and_the_debrief", "one_still_to_provoke", "nothing_to_repair"],
)
def test_the_title_that_may_tell_the_cause_waits_until_no_repair_is_left_to_spoil(
    name: str, before: tuple[str, ...], after: tuple[str, ...]
) -> None:
    desk = new_desk(name)
    type_in(desk, *before)
    assert not desk.attempt.title_shown
    type_in(desk, *after)
    assert desk.attempt.title_shown


def retested(attempt: Attempt) -> Retested:
    event = attempt.events[-1]
    assert isinstance(event, Retested)
    return event


def codes_read(attempt: Attempt) -> tuple[str, ...]:
    event = attempt.events[-1]
    assert isinstance(event, CodesRead)
    return event.codes


def test_events_come_in_order_and_a_finding_only_once() -> None:
    case = new_desk("faint_hum_on_three").attempt.case
    attempt = begun(case, 1)
    with pytest.raises(DamagedLogError, match="event 1"):
        replayed(case, 1, [record_of(Started(), 2, "t")])
    repaired = Repaired(minutes=0.0, paid=frozenset(), work=Work(), location=Location.COIL, cylinders=(1,), side=None,
                        mended=())  # fmt: skip
    with pytest.raises(ValueError, match="before the finding"):
        step(attempt, repaired)
    found = step(attempt, Found(claims=(), certainty=0.5))
    with pytest.raises(ValueError, match="after the finding"):
        step(found, Found(claims=(), certainty=0.5))
    closed = step(found, Closed())
    with pytest.raises(ValueError, match="nothing follows"):
        step(closed, Looked(minutes=0.0, paid=frozenset(), work=Work(), what=()))
