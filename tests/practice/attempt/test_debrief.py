"""The debrief weighs the learner's own evidence, and sets the truth beside the answer."""

from __future__ import annotations

import pickle
from dataclasses import replace

import numpy as np
import pytest

from tests.desk_hands import RIGHT_ANSWER, new_desk, type_in
from tests.engines import NORTH
from tests.reasoning.universe.test_pairs import random_pairs, reasoner_with
from trainer.practice.attempt.event_record import EventKind
from trainer.practice.attempt.events import Heard, Measured
from trainer.practice.attempt.evidence import evidence_of
from trainer.practice.attempt.judging import proof_of
from trainer.practice.attempt.weighing import weighed
from trainer.practice.reports.attempt_lines import claims_text
from trainer.practice.reports.debrief_lines import MOST_WORDS, debrief_lines, first_lines
from trainer.practice.reports.reason_lines import finding_text
from trainer.reasoning.advice.measured import PROVED
from trainer.reasoning.universe.finding import truth_of
from trainer.reasoning.verdict.belief import finding_key
from trainer.sound.paths import TEMPLATE_FRAMES

NAME = "faint_hum_on_three"
COVER_3 = ("finding", "1", "3", "cover", "1", "2", "3", "yes")


@pytest.mark.parametrize(
    ("name", "said"),
    [("one_side_asleep", ("finding", "1", "2", "coil", "1", "n", "3", "yes")),
     ("silent_row", ("finding", "1", "2", "coil", "1", "n", "3", "yes"))],
)  # fmt: skip
def test_outside_the_windows_that_truth_and_answer_affect_the_two_files_are_identical(
    name: str, said: tuple[str, ...]
) -> None:
    desk = new_desk(name)
    type_in(desk, "hear", *said)
    debrief = desk.debrief()
    assert debrief.answer_sound is not None
    truth, answer = debrief.truth_sound, debrief.answer_sound
    differing = np.abs(truth.samples - answer.samples).max(axis=1) > 0.0
    affected = np.zeros(len(differing), dtype=bool)
    changed = 0
    for true, said_slot in zip(truth.slots, answer.slots, strict=True):
        start, end = (round(moment * truth.rate_hz) for moment in (true.window.start_s, true.window.end_s))
        if differing[start + TEMPLATE_FRAMES : end].any() or true.level_dba != said_slot.level_dba:
            affected[start : end + TEMPLATE_FRAMES] = True
            changed += 1
    assert not differing[~affected].any()
    assert changed > 0


def test_slots_of_the_other_bank_are_the_same_to_the_last_bit_where_only_one_bank_is_fed() -> None:
    desk = new_desk("thick_oil_on_eight")
    type_in(desk, "hear", "finding", "1", "8", "coil", "1", "n", "2", "yes")
    debrief = desk.debrief()
    assert debrief.answer_sound is not None
    pairs = zip(debrief.truth_sound.slots, debrief.answer_sound.slots, strict=True)
    same = {true.window.slot.number for true, said in pairs if true.level_dba == said.level_dba}
    assert same == {1, 2, 3, 4}


def test_a_debrief_reads_the_same_after_the_way_from_another_process() -> None:
    """The window's debriefs are computed in one."""
    desk = new_desk(NAME)
    type_in(desk, "hear", *RIGHT_ANSWER)
    debrief = desk.debrief()
    calibration = desk.calibration_with(debrief.score)
    sent = pickle.loads(pickle.dumps(debrief))
    assert debrief.proof.unmeasured is not None  # heard only, which the debrief has to explain
    assert debrief_lines(sent, desk.attempt, calibration) == debrief_lines(debrief, desk.attempt, calibration)


def test_each_step_says_what_it_told_what_it_ruled_out_and_what_it_cost() -> None:
    desk = new_desk(NAME)
    type_in(desk, "hear", "codes", "pair module 3", "pair right_front 3", *COVER_3)
    lines = {line.event.kind: line for line in weighed(desk.attempt, desk.reasoner).lines if line.bits}
    assert lines[EventKind.HEARD].bits > 3.0
    assert set(lines[EventKind.HEARD].cylinders_out) == {1, 2, 4, 5, 6, 7, 8}
    assert "under_cover_harness" in lines[EventKind.MEASURED].places_out
    assert lines[EventKind.HEARD].event.labour_minutes == desk.attempt.case.profile.minutes["actuation_test"]


PROVED_3 = ("hear", "codes", "pair module 3", "wire engine 3", "wire engine 3 feed", "pair right_front cover 3", "look",
            "hear", *RIGHT_ANSWER)  # fmt: skip


@pytest.mark.parametrize(
    ("name", "said", "first", "why"),
    [
        (NAME, PROVED_3, "Right, and proved.", "7 others"),
        (NAME, ("hear", *RIGHT_ANSWER), "Right, but not proved.", "ear and codes"),
        (NAME, ("hear", *COVER_3), "Not quite.", "the contact between"),
        ("one_side_asleep", ("hear", "finding", "1", "2", "coil", "1", "n", "3", "yes"), "Not quite.", "1, 2, 3 and 4"),
        ("pair_with_two_causes", ("hear", "finding", "1", "2", "coil", "1", "n", "3", "yes"), "Not quite.", "31 dB"),
        ("misfire_without_a_circuit", ("hear", *COVER_3), "Not quite.", "All 8 slots"),
        ("misfire_without_a_circuit", ("hear", "finding", "0", "3", "yes"), "Right, but not proved.", "good cylinder"),
        ("cuts_out_on_the_track", ("hear", "finding", "0", "3", "yes"), "Not quite.", "'Not shown'"),
    ],
)
def test_a_debrief_begins_with_right_or_not_what_it_was_and_why_in_few_words(
    name: str, said: tuple[str, ...], first: str, why: str
) -> None:
    desk = new_desk(name)
    type_in(desk, *said)
    debrief = desk.debrief()
    lines = first_lines(debrief, desk.attempt)
    told = " ".join(lines)
    assert lines[0] == first
    assert why in told
    assert claims_text(debrief.truth) in told or finding_text(finding_key(debrief.truth)) in told
    assert len(told.split()) <= MOST_WORDS
    assert not any(word in told.lower() for word in ("bits", "brier", "posterior"))
    whole = debrief_lines(debrief, desk.attempt, {})
    assert whole[: len(lines) + 2] == [*lines, "", "All the reasons"]


WRONG_REPAIR = ("repair coil 3", "yes", "retest")


@pytest.mark.parametrize(
    ("said", "verdict"),
    [
        ((*PROVED_3, *WRONG_REPAIR), "Right, but the fault is still there."),
        ((*PROVED_3, *WRONG_REPAIR, "repair connector 3", "yes", "retest"), "Right, but it took another repair."),
        (("hear", *COVER_3, *WRONG_REPAIR), "Not quite."),
        (("hear", *COVER_3, *WRONG_REPAIR, "repair connector 3", "yes", "retest"), "Not quite."),
    ],
    ids=["right", "right_and_mended_later", "wrong", "wrong_and_mended_later"],
)
def test_after_a_failed_retest_a_debrief_begins_with_it(said: tuple[str, ...], verdict: str) -> None:
    desk = new_desk(NAME)
    type_in(desk, *said)
    debrief = desk.debrief()
    lines = first_lines(debrief, desk.attempt)
    assert lines[0].startswith("The retest showed the fault again")
    assert lines[1] == verdict
    told = " ".join(lines)
    assert claims_text(debrief.truth) in told or finding_text(finding_key(debrief.truth)) in told
    assert len(told.split()) <= MOST_WORDS
    assert "That costs 10 points." in " ".join(debrief_lines(debrief, desk.attempt, {}))


def test_the_same_reading_twice_is_one_piece_of_evidence() -> None:
    once, twice = new_desk(NAME), new_desk(NAME, attempt_id="a2")
    type_in(once, "hear", "pair module 3")
    type_in(twice, "hear", "hear 3", "pair module 3", "pair module 3")
    beliefs = [weighed(desk.attempt, desk.reasoner).belief for desk in (once, twice)]
    assert np.array_equal(beliefs[0].probability, beliefs[1].probability)


def test_a_code_read_again_and_again_does_not_become_more_true() -> None:
    once, often = new_desk("old_code_in_memory"), new_desk("old_code_in_memory", attempt_id="a2")
    type_in(once, "hear", "codes")
    type_in(often, "hear", "codes", "move engine", "hear", "codes", "move cover right", "yes", "hear", "codes")
    passes = [weighed(desk.attempt, desk.reasoner).belief.findings[()] for desk in (once, often)]
    assert passes[1] > passes[0] * 0.8


def test_a_wrong_repair_costs_minutes_that_economy_sees() -> None:
    thrifty, wasteful = new_desk(NAME), new_desk(NAME, attempt_id="a2")
    steps = ("hear", "codes", "pair module 3", "pair right_front 3", "look", "wire engine 3", "hear", *RIGHT_ANSWER)
    type_in(thrifty, *steps, "repair connector 3", "yes", "retest")
    type_in(wasteful, *steps, "repair coil 3", "yes", "retest", "repair connector 3", "yes", "retest")
    first, second = thrifty.debrief().score, wasteful.debrief().score
    assert first.economy > second.economy > 0.0


def test_a_side_named_wrongly_is_told_and_is_not_proved() -> None:
    desk = new_desk(NAME)
    shown = type_in(desk, "hear", "pair module 3", "wire engine 3", "pair right_front 3", "look", "hear",
                    "finding", "1", "3", "connector", "1", "feed", "3", "yes", "debrief")  # fmt: skip
    assert "Side: you said feed side, but it is the return side." in shown
    assert "proof 20 × 1.00" not in shown
    assert not desk.debrief().score.right


def test_what_an_answer_would_have_measured_like_stands_beside_what_was_read() -> None:
    shown = type_in(new_desk(NAME), "hear", "pair module 3", "pair right_front 3", *COVER_3, "debrief")
    assert "you read 2.6 Ω; with your answer you would have read OL" in shown


def test_ruled_out_places_are_judged_only_in_the_debrief() -> None:
    desk = new_desk(NAME)
    shown = type_in(desk, "hear", "out connector", "out armature", *COVER_3, "debrief")
    before, _debrief, after = shown.partition("Truth:")
    assert "that is where the fault is" not in before
    assert "You ruled out pass-through connector, and that is where the fault is." in after
    assert "You ruled out armature, and you were right." in after


def test_an_expectation_stands_beside_its_reading_and_on_the_card() -> None:
    shown = type_in(new_desk(NAME), "expect 3.2", "pair module 3", "pair module 5", "card")
    assert "You expected 3.2. The display shows OL." in shown
    assert shown.count("(expected 3.2)") == 1
    assert "needs the value that you think the meter will show" in type_in(new_desk(NAME), "expect pair module 3")


def test_hints_rise_in_strength_and_start_afresh_after_new_evidence() -> None:
    shown = type_in(new_desk(NAME), "hint", "hear", "hint", "hint", "hint", "hint", "codes", "hint", "card")
    assert "Hint 1 of 3: Run the test and listen first." in shown
    assert "Hint 2 of 3: " in shown
    assert shown.count("Hint 3 of 3, worked out:") == 2
    assert "→ answer A" in shown
    first = shown.index("Hint 1 of 3: ", shown.index("Hint 3 of 3"))
    assert first > shown.index("P0203")
    assert shown.count("Hint 1\n") == 3  # on the card the weakest hint does not say which test it means


def test_a_hint_never_points_to_what_is_known_already() -> None:
    shown = type_in(new_desk("misfire_without_a_circuit"), "hear", "codes", "hint", "hint")
    assert "read the codes" not in shown.partition("Hint 2 of 3")[2]


def test_hints_can_be_off_and_end_with_the_finding() -> None:
    desk = new_desk(NAME)
    assert "There is nothing left to hint at" in type_in(
        desk, *RIGHT_ANSWER, "hint"
    ) or "nothing left to hint at" in type_in(desk, "hint")
    closed = new_desk(NAME)
    closed.hints = False
    assert "Hints are switched off here." in type_in(closed, "hint")
    assert len(closed.attempt.events) == 1


def test_why_waits_for_the_finding_and_its_bits_stand_for_the_odds() -> None:
    desk = new_desk(NAME)
    assert "You have not committed a finding yet." in type_in(desk, "why")
    shown = type_in(desk, "hear", *COVER_3, "why", "why 2", "why 9", "why 1 2")
    assert "What your evidence leaves:" in shown
    assert "before any evidence" in shown
    assert "There is no finding number 9 in the list." in shown
    assert "I do not know what '2' means after 'why'" in shown


def test_every_line_of_evidence_has_its_answer() -> None:
    desk = new_desk(NAME)
    type_in(desk, "hear 3", "stand probe 3", "hear 3", "yes", "codes", "ground module 3", "insulation module 3", "drop engine 3", "yes",
            "trace 3", "supply", "look", "pair module live 3", "swap 1 3", "hear")  # fmt: skip
    evidence = evidence_of(desk.attempt, desk.reasoner)
    readings = {one.event.request.what: len(one.answers) for one in evidence if isinstance(one.event, Measured)}
    for what in ("ground", "insulation", "drop", "trace", "supply"):
        assert readings[what] == 1
    assert readings["pair"] == 0  # a blown fuse tells nothing
    assert [len(one.answers) for one in evidence if isinstance(one.event, Heard)][-1] == 9


def test_proof_is_full_at_what_all_evidence_reaches_where_two_faults_look_like_two_others() -> None:
    desk = new_desk(NAME)
    type_in(desk, "hear", *RIGHT_ANSWER)
    pair = random_pairs(NORTH, 1, 11)[0]
    attempt = replace(desk.attempt, case=replace(desk.attempt.case, faults=pair, stored=(), complaint=None))
    reasoner = reasoner_with(NORTH, pair)
    proof = proof_of(attempt, reasoner, weighed(attempt, reasoner))
    reached = reasoner.everything.findings[finding_key(truth_of(pair))]
    assert reasoner.hidden is None
    assert proof.reachable == reached < PROVED
    assert replace(proof, posterior=reached, measured=True).share == 1.0
