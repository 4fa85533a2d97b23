"""A case worked in the terminal as a learner would."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.desk_hands import RIGHT_ANSWER, GonePlayer, RecordingPlayer, StoppedPlayer, TornPlayer, new_desk, type_in
from tests.thinned import thinned
from trainer.cases.single_case.shipped import case_names
from trainer.circuit.elements import Location
from trainer.instruments.bench_tests import Operation
from trainer.instruments.tries import Effort, tries_needed
from trainer.practice.attempt.events import Looked, Measured
from trainer.records.store.store import open_store

NAME = "faint_hum_on_three"


def test_a_case_is_worked_from_complaint_to_debrief() -> None:
    desk = new_desk(NAME)
    shown = type_in(
        desk, "hear", "codes", "compare 3 5", "pair module 3", "wire engine 3", "pair right_front cover 3",
        "look", "hear", *RIGHT_ANSWER, "repair connector 3 return", "yes", "retest", "debrief",
    )  # fmt: skip
    assert "Delivery van" in shown
    assert "P0203" in shown
    assert "A code says what the module sensed. It never says where." in shown
    assert "Ohms, cylinder 3, module connector (harness side): OL" in shown
    assert "Every slot is even and there is no code." in shown
    assert "cylinders 25 × 1.00 + place 30 × 1.00 + kind 15 × 1.00 + proof 20 × 1.00 + economy" in shown
    assert desk.debrief().score.points > 97.0  # the best path is a little shorter
    assert "So far: when you said 0.75, you were right 100.0 % of the time (1 time)." in shown
    assert (
        "Slot 3 is very faint. Its own coil gets 0.0 A. What you hear is 1.9 A of background current through each of 7 others, 30 dB quieter than a good slot."
        in shown
    )
    assert isinstance(desk.player, RecordingPlayer)
    assert len(desk.player.heard) == 5  # test, compare, test again, retest, truth; the answer was the truth
    assert desk.attempt.closed


def test_the_truth_never_shows_before_the_debrief() -> None:
    desk = new_desk(NAME)
    shown = type_in(desk, "hear", "codes", "card", "engine", "help", "look", "debrief")
    assert "Truth" not in shown
    assert "You have not committed a finding yet. Type 'finding'" in shown


def test_who_comes_back_before_the_retest_sees_the_cases_number_and_not_its_title() -> None:
    desk = new_desk(NAME)
    type_in(desk, "hear", *RIGHT_ANSWER)
    title = desk.attempt.case.title
    assert title not in type_in(desk, "repair coil 3", "yes", "retest")
    assert title not in type_in(desk, "repair connector 3 return", "yes", "retest")
    assert title in type_in(desk)


def test_a_wrong_answer_is_heard_beside_the_truth_and_scored_in_parts() -> None:
    desk = new_desk(NAME)
    shown = type_in(
        desk, "hear", "finding", "1", "3", "5", "1", "3", "3", "yes", "repair coil 3", "yes", "retest", "debrief"
    )
    assert "A slot is not even, or a code has come back" in shown
    assert "You said: open, solenoid coil, cylinder 3; would bet the job on it (95 %)" in shown
    assert "cylinders 25 × 1.00 + place 30 × 0.00 + kind 15 × 1.00" in shown
    assert "Brier 0.902" in shown
    assert "Now hear what your answer would have sounded like" in shown
    assert desk.attempt.wrong_repairs == 1


def test_a_passing_circuit_is_a_finding_and_no_parts_are_needed() -> None:
    desk = new_desk("misfire_without_a_circuit")
    shown = type_in(desk, "hear", "codes", "pair module 3", "wire engine 1", "finding", "0", "3", "y", "debrief")
    assert "'The circuit passes' is a finding. It never means 'the injector is good'" in shown
    assert "cylinders 25 × 1.00 + place 30 × 1.00 + kind 15 × 1.00" in shown


@pytest.mark.parametrize(
    ("typed", "told"),
    [
        ("dance", "I do not know 'dance'"),
        ("hear 99", "There is no slot '99'. Slots: all, 1, 2"),
        ("hear x", "'x' is not a number"),
        ("stand moon", "There is no place 'moon'. Places: front, right, left, lean right, lean left, probe 1"),
        ("pair nowhere 3", "Places to measure: module, plug, right_front"),
        ("pair module", "After 'pair module', type 1 cylinder number."),
        ("pair right_front 2", "Cylinder 2 does not run through pass_through.right_front"),
        ("returns module 3 3", "you named it twice"),
        ("wire coil 3", "There is no wire to measure in the solenoid coil"),
        ("drop", "needs a place and a cylinder"),
        ("swap 1", "'swap' needs two numbers"),
        ("lend wheel", "Only an injector or the module can be swapped for a known-good part"),
        ("move everything", "There is no place 'everything'"),
        ("repair connector 3", "You have not committed a finding yet"),
        ("compare 3", "'compare' needs two numbers"),
        ("pair module ²", "is not a number"),
    ],
)
def test_a_mistyped_line_says_what_is_allowed_and_costs_nothing(typed: str, told: str) -> None:
    desk = new_desk(NAME)
    assert told in type_in(desk, typed)
    assert desk.attempt.minutes == 0.0


def test_access_is_charged_once_for_each_state_of_the_engine() -> None:
    desk = new_desk(NAME)
    minutes = desk.attempt.case.profile.minutes
    type_in(desk, "pair module 3", "pair module 1", "ground module 3")
    assert desk.attempt.minutes == minutes["module_ohms"] + minutes["pin_to_ground"]
    type_in(desk, "hear", "hear 3", "pair module 3")  # hearing plugs everything back
    assert desk.attempt.minutes == 2 * minutes["module_ohms"] + minutes["pin_to_ground"] + minutes["actuation_test"]


def test_cautions_stand_where_they_matter() -> None:
    shown = type_in(new_desk(NAME), "hear", "pair module 3", "pair plug 3", "yes", "move engine", "heat cover right")
    for part in ("stays charged. 100 volts can kill. Key off. Wait. Prove it dead", "with a cover off and the key on", "never move live wiring",
                 "no open flame", "never feel for a leak by hand", "maker's manual", "volume low"):  # fmt: skip
        assert part in shown


def test_an_intermittent_shows_only_while_it_is_moved() -> None:
    desk = new_desk("tugged_at_the_clip")
    tries = tries_needed(desk.attempt.seed, "move", Location.ENGINE_HARNESS, Effort.THOROUGH)
    moved = ("move engine", "hear", "codes") * tries
    shown = type_in(desk, "hear", "clear", "hear", "codes", *moved)
    assert "No codes." in shown
    assert shown.rindex("P0205") > shown.index("No codes.")


def test_listening_on_the_cover_is_free_of_it_and_on_the_injector_is_not() -> None:
    desk = new_desk(NAME)
    minutes = desk.attempt.case.profile.minutes
    type_in(desk, "hear", "stand cover 3", "hear 3")
    assert desk.attempt.minutes == minutes["actuation_test"]
    shown = type_in(desk, "stand probe 3", "hear 3", "yes", "hear 5", "hear 3")
    assert f"This takes {minutes['cover_off']:.0f} min. Go ahead?" in shown
    assert desk.attempt.minutes == minutes["actuation_test"] + minutes["cover_off"]
    assert desk.attempt.work.covers_off == {"right"}


def test_moving_under_a_cover_asks_whose_and_costs_it() -> None:
    desk = new_desk(NAME)
    assert "Which cover is the under-cover harness under?" in type_in(desk, "move cover")
    assert desk.attempt.minutes == 0.0
    type_in(desk, "move cover right gentle", "yes")
    minutes = desk.attempt.case.profile.minutes
    assert desk.attempt.minutes == minutes["cover_off"] + minutes["move_harness"]
    shown = type_in(desk, "move cover right", "card")
    assert "try 2, hard, for longer" in shown
    assert desk.attempt.minutes == minutes["cover_off"] + 3 * minutes["move_harness"]


def test_reseating_cures_for_a_while() -> None:
    desk = new_desk("good_again_by_magic")
    shown = type_in(desk, "hear", "codes", "pair left_front 2", "clear", "hear", "codes")
    assert "P0202" in shown
    assert "No codes." in shown


def test_an_old_code_is_there_until_cleared_and_does_not_come_back() -> None:
    shown = type_in(new_desk("old_code_in_memory"), "codes", "clear", "hear", "codes")
    assert shown.count("P0202") == 2
    assert shown.rstrip().rindex("No codes.") > shown.rindex("P0202")


def test_a_torn_playing_is_void_and_costs_nothing_to_repeat() -> None:
    desk = new_desk(NAME, player=TornPlayer())
    shown = type_in(desk, "hear", "hear")
    assert "does not count" in shown
    assert desk.attempt.minutes == desk.attempt.case.profile.minutes["actuation_test"]


def test_a_playing_can_be_stopped_and_the_case_goes_on() -> None:
    shown = type_in(new_desk(NAME, player=StoppedPlayer()), "hear", "codes")
    assert "Stopped." in shown
    assert "P0203" in shown


def test_a_sound_that_cannot_leave_is_told_and_the_case_goes_on() -> None:
    shown = type_in(new_desk(NAME, player=GonePlayer()), "hear", "codes")
    assert "The sound output has been unplugged or switched off." in shown
    assert "P0203" in shown


def test_ruling_out_is_kept_and_judged_only_by_the_learner() -> None:
    desk = new_desk(NAME)
    shown = type_in(desk, "out coil armature", "back coil")
    assert "Places you ruled out: armature, solenoid coil" in shown
    assert desk.attempt.ruled_out == {"armature"}


@pytest.mark.parametrize("name", thinned(case_names(), 3))
def test_every_shipped_case_can_be_proved_by_its_own_repair(name: str) -> None:
    from trainer.cases.single_case.shipped import case_named
    from trainer.desk.caching_solver import CachingSolver
    from trainer.practice.attempt.attempt import begun, step
    from trainer.practice.attempt.events import Found
    from trainer.practice.attempt.repair import Repair, repair, retest
    from trainer.reasoning.universe.finding import truth_of

    case = case_named(name)
    attempt = begun(case, case.seed)
    attempt = step(attempt, Found(claims=truth_of(case.faults), certainty=0.95))
    for fault in case.faults:
        done = repair(attempt, Repair(fault.location, frozenset(fault.cylinders), fault.side))
        attempt = step(attempt, done.event)
    assert attempt.faults_left == ()
    assert retest(attempt, CachingSolver()).event.proved


def test_the_input_may_end_in_the_middle_of_the_answer(tmp_path: Path) -> None:
    desk = new_desk(NAME, open_store(tmp_path))
    assert "Nothing is lost" in type_in(desk, "finding", "1", "3", "3")
    assert desk.attempt.finding is None


def test_where_nothing_can_be_kept_the_end_of_the_input_does_not_say_that_nothing_is_lost() -> None:
    shown = type_in(new_desk(NAME, open_store(None)), "finding", "1", "3", "3")
    assert "your work is gone" in shown
    assert "Nothing is lost" not in shown


def test_measuring_between_repair_and_retest_does_not_leave_the_plugs_off() -> None:
    desk = new_desk(NAME)
    shown = type_in(desk, *RIGHT_ANSWER, "repair connector 3 return", "yes", "pair module 3", "retest")
    assert "No test before the repair showed the fault, so an even one proves nothing yet." in shown
    heard = type_in(
        new_desk(NAME), "hear", *RIGHT_ANSWER, "repair connector 3 return", "yes", "pair module 3", "retest"
    )
    assert "Every slot is even and there is no code." in heard


def test_swaps_are_one_exchange_after_another() -> None:
    desk = new_desk(NAME)
    type_in(desk, "swap 1 2", "swap 2 3", "swap 1 2")
    assert desk.attempt.work.swapped == ((1, 2), (2, 3), (1, 2))
    type_in(desk, "swap 1 2")
    assert desk.attempt.work.swapped == ((1, 2), (2, 3))


def test_the_questions_of_a_finding_can_be_left_and_places_named_by_word() -> None:
    desk = new_desk(NAME)
    assert "Not committed." in type_in(desk, "finding", "seven", "1", "3", "cancel")
    assert desk.attempt.finding is None
    type_in(desk, "finding", "1", "3", "connector", "1", "2", "2", "yes")
    assert desk.attempt.finding is not None
    assert {claim.location for claim in desk.attempt.finding.claims} == {"pass_through_connector"}


def test_a_plug_that_is_still_off_elsewhere_is_told_with_the_reading() -> None:
    shown = type_in(new_desk(NAME), "pair right_front 3", "pair module 3", "look")
    assert "Still unplugged: right front pass-through connector" in shown
    assert "Unplugged: module connector, right front pass-through connector" in shown


def test_a_pin_drag_finds_the_terminal_that_looks_good_and_does_not_grip() -> None:
    desk = new_desk("loose_grip_on_seven")
    shown = type_in(desk, "drag", "pair right_rear 7", "look", "drag", "card")
    assert "Measure at a connector first" in shown
    assert shown.count("a terminal that does not grip the pin") == 2  # in the message and on the card
    looked, dragged = [event for event in desk.attempt.events if isinstance(event, Looked)]
    assert looked.what == ()
    assert dragged.what == ("spread:pass_through_connector.contact.return.7",)
    # each connector apart: the one that is off already is not paid again
    type_in(desk, "pair right_front 1", "drag")
    again = [event for event in desk.attempt.events if isinstance(event, Looked)][-1]
    assert [sum(price.operation is Operation.PIN_DRAG for price in event.paid) for event in (dragged, again)] == [1, 2]
    assert again.minutes == pytest.approx(desk.attempt.case.profile.minutes[Operation.PIN_DRAG])


def test_both_sides_of_the_wiring_to_the_module_are_read_by_name() -> None:
    desk = new_desk("paint_under_the_eyelet")
    type_in(desk, "plusdrop", "grounddrop")
    plus, ground = (event.reading.value for event in desk.attempt.events if isinstance(event, Measured))
    assert plus is not None
    assert ground is not None
    assert plus < 0.5 < ground


def test_a_heat_fault_wrongly_repaired_shows_when_the_retest_is_warm() -> None:
    desk = new_desk("dies_after_lunch")
    shown = type_in(
        desk, "finding", "1", "2", "cover", "1", "2", "2", "yes", "repair cover 2", "yes", "retest warm coil"
    )
    assert "A slot is not even, or a code has come back" in shown


def test_a_lent_part_proves_nothing_at_the_retest() -> None:
    desk = new_desk("the_module_says_no")
    assert "A slot is not even, or a code has come back" in type_in(desk, "lend module", *RIGHT_ANSWER, "retest")


def test_the_prompt_says_what_is_moving_warm_swapped_or_lent() -> None:
    shown = type_in(
        new_desk(NAME), "move engine", "heat cover right", "yes", "swap 1 3", "lend module", "move none", "lend none"
    )
    assert (
        "moving: engine harness, warm: under-cover harness, returns 1 and 3 swapped, known-good part fitted: drive module > "
        in shown
    )
    assert shown.rstrip().split("\n")[-2].count("lent") == 0


def test_ohms_before_it_is_proved_dead_are_noted_until_volts_at_rest_were_read() -> None:
    noted = "You did not prove it dead first"
    desk = new_desk(NAME)
    assert noted in type_in(desk, "pair module 3")
    shown = type_in(desk, "volts module 3", "pair module 3")
    assert "Volts at rest to ground, return side 3, module connector (harness side): 0.0" in shown
    assert noted not in shown
    assert noted in type_in(desk, "hear", "pair module 3")  # it has been driven since
    assert "You did not wait" in type_in(desk, "volts module 3 nowait")


def test_live_work_asks_for_isolation_once_and_costs_its_preparation() -> None:
    desk = new_desk(NAME)
    minutes = desk.attempt.case.profile.minutes
    shown = type_in(desk, "supply", "no")
    assert "Has a person authorised by your local rules closed off the area?" in shown
    assert "live work at over 100 V" in shown
    assert "Prove it dead before you touch" not in shown
    assert desk.attempt.minutes == 0.0
    shown = type_in(desk, "supply", "yes", "drop engine 3")
    assert shown.count("closed off the area") == 1
    assert desk.attempt.minutes == minutes["live_preparation"] + 2 * minutes["load_drop"]


def test_a_clamp_is_no_live_work() -> None:
    assert "isolated" not in type_in(new_desk(NAME), "trace 3")


def test_a_warm_run_brings_out_what_fails_hot_and_lets_it_cool_again() -> None:
    desk = new_desk("dies_after_lunch")
    minutes = desk.attempt.case.profile.minutes
    shown = type_in(desk, "clear", "warmrun", "hear", "codes")
    assert "No codes." not in shown
    assert "belts and fan turn and parts are hot" in shown
    assert "warm all over > " in shown
    assert desk.attempt.minutes == minutes["codes"] + minutes["warm_run"] + minutes["actuation_test"]
    assert "No codes." in type_in(desk, "clear", "heat none", "hear", "codes")


def test_a_circuit_that_passes_ends_in_a_test_of_the_running_engine() -> None:
    desk = new_desk("misfire_without_a_circuit")
    weak = desk.attempt.case.mechanical
    assert weak is not None
    shown = type_in(desk, "contribution", "compression")
    assert f"Cylinder contribution with the engine running: {weak.cylinder}: 55 %" in shown
    assert ("Relative compression while cranking: 1 = 2" in shown) is not weak.low_compression
    assert desk.attempt.minutes == sum(
        desk.attempt.case.profile.minutes[one] for one in ("contribution", "compression")
    )
