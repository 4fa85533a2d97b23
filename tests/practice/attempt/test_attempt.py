"""The attempt as a pure step over events."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.desk_hands import RIGHT_ANSWER, new_desk, type_in
from trainer.circuit.elements import Location
from trainer.circuit.faults import Conditions
from trainer.instruments.bench import Work
from trainer.practice.attempt.actions import codes_now
from trainer.practice.attempt.attempt import begun, replayed, step
from trainer.practice.attempt.events import Event, EventKind
from trainer.practice.attempt.work_data import data_of, work_of

PLACES = st.none() | st.sampled_from(list(Location))
WORKS = st.builds(
    Work,
    conditions=st.builds(Conditions, temperature_c=st.floats(-20, 110), moved=PLACES, heated=PLACES,
                         reseated=st.frozensets(st.text(max_size=5), max_size=3)),
    unplugged=st.frozensets(st.text(max_size=5), max_size=3),
    covers_off=st.frozensets(st.sampled_from(["left", "right"])),
    swapped=st.lists(st.tuples(st.integers(1, 8), st.integers(1, 8)), max_size=2).map(tuple),
    replaced=st.frozensets(st.tuples(st.sampled_from(list(Location)), st.integers(0, 8)), max_size=2),
    dummy_loads=st.frozensets(st.integers(1, 8), max_size=2),
    spread=st.frozensets(st.text(max_size=5), max_size=2),
)  # fmt: skip


@given(WORKS)
def test_the_state_of_the_engine_reads_back_as_it_was_written(work: Work) -> None:
    import json

    assert work_of(json.loads(json.dumps(data_of(work)))) == work


def test_a_log_replayed_gives_the_same_attempt() -> None:
    desk = new_desk("faint_hum_on_three")
    type_in(desk, "hear", "codes", "pair module 3", "out coil", *RIGHT_ANSWER, "repair connector 3 return", "retest")
    again = replayed(desk.attempt.case, desk.attempt.seed, desk.store.events("a1"))
    assert again == desk.attempt


def test_codes_are_those_of_the_last_whole_test_with_the_engine_as_it_was_then() -> None:
    """The harness is let go after the test; its codes stay in memory."""
    desk = new_desk("tugged_at_the_clip")
    type_in(desk, "hear", "clear", "move engine", "hear", "move none", "hear 5", "codes")
    assert desk.attempt.card[-1].data["codes"] == ["P0205"]
    type_in(desk, "hear", "codes")
    assert desk.attempt.card[-1].data["codes"] == []


def test_a_record_of_before_whose_tests_hold_their_codes_still_reads() -> None:
    """Earlier versions stored the codes with the test; what they stored counts."""
    desk = new_desk("faint_hum_on_three")
    type_in(desk, "hear")
    first, heard = desk.store.events("a1")
    before = replace(heard, data={**heard.data, "codes": ["P0207"]})
    attempt = replayed(desk.attempt.case, desk.attempt.seed, [first, before])
    assert codes_now(attempt, desk.solver) == ["P0207"]
    part = Event(3, EventKind.HEARD, "t", {**heard.data, "slots": [3], "codes": None})
    assert codes_now(step(attempt, part), desk.solver) == ["P0207"]
    read = Event(3, EventKind.CODES_READ, "t", {"codes": ["P0207"], "cleared": True})
    assert codes_now(step(attempt, read), desk.solver) == []


def test_a_retest_is_to_be_provoked_only_where_no_test_before_the_repair_left_a_code() -> None:
    plain, hidden = new_desk("faint_hum_on_three"), new_desk("tugged_at_the_clip")
    type_in(plain, "hear", *RIGHT_ANSWER, "repair connector 3 return", "retest")
    assert plain.attempt.card[-1].data["to_provoke"] is False
    type_in(hidden, "hear", "finding", "1", "5", "engine", "open", "return", "2", "yes", "retest")
    assert hidden.attempt.card[-1].data["proved"] is True
    assert hidden.attempt.card[-1].data["to_provoke"] is True


def test_events_come_in_order_and_a_finding_only_once() -> None:
    case = new_desk("faint_hum_on_three").attempt.case
    attempt = begun(case, 1)
    with pytest.raises(ValueError, match="cannot follow"):
        step(attempt, Event(2, EventKind.STARTED, "t", {}))
    with pytest.raises(ValueError, match="before the finding"):
        step(attempt, Event(1, EventKind.REPAIRED, "t", {"mended": []}))
    found = step(attempt, Event(1, EventKind.FOUND, "t", {"claims": [], "certainty": 0.5}))
    with pytest.raises(ValueError, match="after the finding"):
        step(found, Event(2, EventKind.FOUND, "t", {"claims": [], "certainty": 0.5}))
    closed = step(found, Event(2, EventKind.CLOSED, "t", {}))
    with pytest.raises(ValueError, match="nothing follows"):
        step(closed, Event(3, EventKind.WORKED, "t", {}))
