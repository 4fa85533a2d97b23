"""A case worked in the window as a learner would: with keys, with clicks, and backing out."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from tests.desk_hands import new_desk as terminal_desk
from tests.desk_hands import type_in
from tests.players import ClockedPlayer
from tests.window_hands import Hands
from trainer.circuit.elements import Location
from trainer.circuit.faults import KINDS
from trainer.desk.settings import Settings
from trainer.practice.attempt.event_record import EventKind
from trainer.practice.attempt.events import Heard, Hinted
from trainer.records.store.store import open_store
from trainer.window.bench.bench_screen import BenchScreen
from trainer.window.bench.free_bench import amount_text
from trainer.words import speak
from trainer.words.languages import LANGUAGES

CASE = "faint_hum_on_three"


def seated(case: str = CASE, **options: object) -> Hands:
    return Hands(**options).sit_down(case)  # type: ignore[arg-type]


def bench_of(hands: Hands) -> BenchScreen:
    return next(screen for screen in hands.shell.screens if isinstance(screen, BenchScreen))


def name_the_fault(hands: Hands) -> Hands:
    hands.press("f", "3").act("place.pass_through_connector").act("kind.open").act("side.return").press("b")
    return hands.act("commit").press("y")


def test_three_actions_lead_from_launch_to_the_first_sound() -> None:
    hands = Hands()
    hands.press("enter", "n", "t").wait(0.1)
    assert len(hands.player.heard) == 1  # type: ignore[attr-defined]
    assert hands.shell.listening.on


def test_a_whole_case_by_keyboard_ends_with_its_score() -> None:
    hands = seated()
    hands.press("t").wait(25.0, 0.5)
    hands.press("c")
    assert "P0203" in hands.text_of("said")
    hands.press("p", "3").act("pin.2").act("pin.3").press("r")
    assert hands.text_of("display") == "OL"
    hands.press("escape")
    name_the_fault(hands)
    assert "open, pass-through connector" in hands.text_of("card.finding")
    hands.press("r", "m", "y", "e").act("as_it_stands")
    assert "Every slot is even" in hands.text_of("said")
    hands.press("d")
    assert "of 100" in hands.text_of("debrief.score")
    events = hands.store.events(bench_attempt(hands))
    assert events[-1].kind is EventKind.CLOSED


def test_the_bench_shows_the_cases_title_after_the_retest_and_not_before_the_repair() -> None:
    hands = seated()
    title = bench_of(hands).desk.attempt.case.title
    name_the_fault(hands.press("t").wait(0.2))
    assert hands.text_of("bench.title") != title
    hands.press("r", "m", "y")
    assert hands.text_of("bench.title") != title
    hands.press("e").act("as_it_stands")
    assert hands.text_of("bench.title") == title


def bench_attempt(hands: Hands) -> str:
    return hands.shell.screen.desk.attempt_id  # type: ignore[attr-defined]


def test_the_same_case_by_mouse_alone() -> None:
    hands = seated()
    hands.click("run_test").wait(25.0, 0.5).click("codes").click("injector.3")
    assert bench_of(hands).marked == 3
    hands.click("stand.left")
    assert bench_of(hands).place == "left"
    hands.click("strip.3").click("point.module_connector")
    hands.click("pin.2").click("pin.3").click("read")
    assert hands.text_of("display") == "OL"


def test_moving_the_listener_changes_the_sound() -> None:
    hands = seated()
    player = hands.player
    assert isinstance(player, ClockedPlayer)
    hands.press("3").act("stand.left").press("3", "b", "3", "b", "3", "y")
    front, left, cover, rod = (samples for samples, _frame in player.heard)
    assert not (front == left).all()
    assert not (left == cover).all()
    assert not (cover == rod).all()
    assert [event.place for event in bench_of(hands).desk.attempt.events if isinstance(event, Heard)] == [
        "front", "left", "cover 3", "probe 3",
    ]  # fmt: skip


def test_a_replay_at_hand_plays_at_once_and_is_counted_but_not_charged() -> None:
    hands = seated()
    hands.press("t").wait(0.2)
    before = bench_of(hands).desk.attempt.minutes
    hands.press("t").wait(0.2)
    attempt = bench_of(hands).desk.attempt
    heard = [event for event in attempt.events if isinstance(event, Heard)]
    assert len(heard) == 2
    assert attempt.minutes == before
    assert heard[0].sound == heard[1].sound


def test_a_sound_is_never_replayed_from_before_something_changed() -> None:
    hands = seated()
    hands.press("t").wait(0.2)
    hands.press("x", "1", "3").press("t").wait(0.2)
    heard = [event.sound for event in bench_of(hands).desk.attempt.events if isinstance(event, Heard)]
    assert heard[0] != heard[1]


def test_shift_and_a_digit_compare_two_slots_in_one_buffer() -> None:
    hands = seated()
    hands.press("3", "shift+5").wait(0.1)
    assert bench_of(hands).desk.attempt.events[-1].slots == (3, 5)


def test_two_digits_name_a_cylinder_where_there_are_ten_or_more() -> None:
    from trainer.window.kit.digits import WAIT_S, Digits

    digits, twelve = Digits(), tuple(range(1, 13))
    assert digits.press("1", twelve, 0.0) is None
    assert digits.press("2", twelve, 0.2) == 12
    assert digits.press("7", twelve, 1.0) == 7
    assert digits.press("1", twelve, 2.0) is None
    assert digits.waited(twelve, 2.0 + WAIT_S / 2) is None
    assert digits.waited(twelve, 2.0 + WAIT_S + 0.01) == 1
    assert digits.press("9", (1, 2), 3.0) is None
    assert digits.typed == ""


def test_the_draft_of_a_finding_stays_while_the_learner_looks_again_and_nothing_is_committed_unasked() -> None:
    hands = seated()
    hands.press("f", "3").act("place.pass_through_connector").press("escape", "c", "f")
    assert hands.shell.screen.drafts[0].location is Location.PASS_THROUGH  # type: ignore[attr-defined]
    assert hands.shell.screen.drafts[0].cylinders == {3}  # type: ignore[attr-defined]
    hands.act("kind.open").act("side.none").press("a").act("commit").press("n")
    assert bench_of(hands).desk.attempt.finding is None
    hands.press("backspace")
    assert hands.shell.screen.drafts[0].location is None  # type: ignore[attr-defined]


def test_dear_work_is_asked_about_first_and_costs_nothing_when_refused() -> None:
    hands = seated()
    hands.press("l", "3")
    assert "90 min" in hands.text_of("question")
    hands.press("n")
    assert bench_of(hands).desk.attempt.minutes == 0.0
    hands.press("l", "3", "y")
    assert bench_of(hands).desk.attempt.minutes == 90.0


def test_places_ruled_out_are_kept_and_struck() -> None:
    hands = seated()
    hands.act("suspect.armature")
    assert bench_of(hands).desk.attempt.ruled_out == {"armature"}
    hands.act("suspect.armature")
    assert bench_of(hands).desk.attempt.ruled_out == frozenset()


def test_hints_rise_and_stand_on_the_card() -> None:
    hands = seated()
    hands.press("i").wait(0.1)
    hands.press("i").wait(0.1)
    assert [event.strength for event in bench_of(hands).desk.attempt.events if isinstance(event, Hinted)] == [
        1,
        2,
    ]


def test_window_and_terminal_write_the_same_attempt() -> None:
    window_store, terminal_store = open_store(None), open_store(None)
    hands = seated(store=window_store)
    hands.press("t").wait(0.1)
    hands.press("3").wait(0.1)
    hands.press("c", "p", "3").act("pin.2").act("pin.3").go("expect").write("about 3").press("enter").press("escape")
    hands.act("suspect.armature")
    name_the_fault(hands)
    hands.press("r", "m", "y", "e").act("as_it_stands").press("d")
    lines = (
        "hear", "hear 3", "codes", "expect about 3", "pair module 3", "out armature",
        "finding", "1", "3", "3", "1", "2", "2", "yes", "repair connector 3 return", "yes", "retest", "debrief",
    )  # fmt: skip
    type_in(terminal_desk(CASE, terminal_store), *lines)
    ours = window_store.events(bench_attempt(hands))
    theirs = terminal_store.events("a1")
    assert [(event.number, event.kind, json.dumps(event.data, sort_keys=True)) for event in ours] == [
        (event.number, event.kind, json.dumps(event.data, sort_keys=True)) for event in theirs
    ]


def test_nothing_drawn_or_said_before_the_finding_names_the_fault() -> None:
    for name in ("green_pin_on_two", "tired_feed_crimp", "rests_on_its_edge"):
        hands = seated(name, settings=Settings(trace="off"))
        hands.press("t").wait(0.1)
        case = bench_of(hands).desk.attempt.case
        pictures = [node.picture for node in hands.shell.root().walk() if node.picture is not None]
        assert all(getattr(picture, "outline", None) is None for picture in pictures)
        assert all(
            not getattr(picture, "gaps", ()) and getattr(picture, "currents_a", None) is None for picture in pictures
        )
        assert case.faults[0].kind.value.replace("_", " ") not in hands.text_of("card").lower()


def test_leaving_and_coming_back_goes_on_where_it_was(tmp_path: Path) -> None:
    store = open_store(tmp_path)
    hands = seated(store=store)
    hands.press("t").wait(25.0, 0.5)
    hands.press("c", "escape")
    begun = next(name for name in hands.layout.order if name.startswith("begun."))
    hands.act(begun)
    assert [line.kind for line in bench_of(hands).desk.attempt.events][-1] is EventKind.CODES_READ
    store.close()


def test_unknown_codes_and_files_are_told_and_nothing_begins() -> None:
    hands = Hands()
    hands.press("enter").go("code").write("no such case").press("enter")
    assert "no such case" in hands.text_of("notice")
    assert hands.store.count() == 0


def test_the_first_lesson_is_worked_step_by_step_to_a_proved_finding() -> None:
    hands = Hands()
    hands.press("enter", "g")
    for step in range(1, 14):
        assert hands.text_of("lesson.step") == f"Step {step} of 14"
        hands.press("g").wait(0.1)
    assert "open in the pass-through connector" in hands.text_of("lesson.text")
    hands.press("g").wait(0.1)
    assert hands.shell.screen.name == "debrief"
    assert hands.text_of("debrief.score") == "100 of 100"
    hands.press("escape")
    assert "Lesson 2" in hands.text_of("lesson")


def test_a_lesson_can_be_taken_over_at_any_step_and_gone_on_with_after_leaving() -> None:
    hands = Hands()
    hands.press("enter", "g", "g").wait(0.1)
    hands.press("g").wait(0.1).press("escape", "g")
    assert hands.text_of("lesson.step") == "Step 3 of 14"
    hands.press("q")
    assert "You have taken over." in hands.text_of("lesson.intro")
    hands.press("c").wait(0.1)
    assert "P0203" in hands.text_of("said")


@pytest.mark.parametrize("language", LANGUAGES)
def test_how_bad_a_fault_is_has_words_for_every_kind_that_has_more_than_one_amount(language: str) -> None:
    speak(language)
    try:
        for kind in KINDS.values():
            shown = [amount_text(kind.unit, amount) for amount in kind.severities if len(kind.severities) > 1]
            assert len(set(shown)) == len(shown)
    finally:
        speak("en")


def test_the_free_bench_shows_how_bad_a_fault_is_with_its_unit_from_the_least_on() -> None:
    hands = Hands()
    hands.press("f2").act("kind.burnt_pin")
    assert hands.text_of("amount.0") == "28 Ω"
    assert hands.shown.index("0.4 Ω") < hands.shown.index("1.5 Ω") < hands.shown.index("60 Ω")
    hands.act("kind.cured_by_reseating")
    assert [hands.text_of("amount.1"), hands.text_of("amount.0")] == ["60 Ω", "Open"]
    hands.act("kind.shorted_turns")
    assert hands.text_of("amount.0") == "25 % of the turns"


@pytest.mark.parametrize("kind", ["open", "short_to_ground", "low_supply"])
def test_any_fault_can_be_put_in_and_heard_on_the_free_bench_without_a_score(kind: str) -> None:
    hands = Hands()
    hands.press("f2").act(f"kind.{kind}").press("b", "t").wait(0.1)
    assert hands.shell.listening.on
    assert not hands.has("finding")
    assert "Truth:" in hands.text_of("card.truth")
    assert hands.text_of("bench.title") == "Free bench"
    assert hands.store.count() == 0


def test_two_at_one_bench_are_on_record_and_change_roles() -> None:
    hands = Hands()
    hands.act("two").go("name").write("anna").go("partner").write("ben").press("enter")
    hands.go("code").write(CASE).press("enter")
    assert "anna listens, ben measures" in hands.shown
    assert hands.store.events(bench_attempt(hands))[0].data["pair"] == ["anna", "ben"]
    name_the_fault(hands)
    hands.press("d").press("escape").go("code").press("enter")
    assert "ben listens, anna measures" in hands.shown
