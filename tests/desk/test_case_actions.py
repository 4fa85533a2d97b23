"""The rules of a case are the same through the window and the terminal, and written once."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

import pytest

from tests.desk_hands import RIGHT_ANSWER, RecordingPlayer, new_desk, type_in
from tests.exam_sets import SMALL, sitting_of, small_set
from tests.universes import UNIVERSES
from tests.window_hands import Hands
from trainer.circuit.elements import Location
from trainer.desk.case_actions import ASKED_FROM_MINUTES, CAUTIONS, CaseActions, cautions_of
from trainer.desk.case_requests import Hear, Lend, Look, Measure, Mend, Move, Retest, Swap
from trainer.desk.desk import Desk
from trainer.errors import WrongCallError
from trainer.instruments.bench import Work
from trainer.instruments.requests import Request
from trainer.practice.attempt.repair import Repair
from trainer.reasoning.universe.finding import Finding
from trainer.records.store.store import open_store
from trainer.terminal.session import WORDING
from trainer.terminal.typed import is_yes
from trainer.window.bench.bench_screen import BenchScreen
from trainer.words import speak, text
from trainer.words.languages import LANGUAGES

CASE = "faint_hum_on_three"
UNDER_COVER = Measure(Request("pair", "injector_plug.3", "injector", 3))


@dataclass
class Face:
    """One case worked through a face: `lends` asks for a known-good injector 3 and answers whether to do it."""

    desk: Desk
    lends: Callable[[bool], str]


def terminal() -> Face:
    desk = new_desk(CASE)
    return Face(desk, lambda agreed: type_in(desk, "lend injector 3", "yes" if agreed else "no"))


def window() -> Face:
    hands = Hands().sit_down(CASE)
    screen = hands.shell.screen
    assert isinstance(screen, BenchScreen)

    def lends(agreed: bool) -> str:
        asked = hands.press("l").shown + hands.press("3").shown
        hands.press("y" if agreed else "n")
        return asked + hands.shown

    return Face(screen.desk, lends)


FACES = pytest.mark.parametrize("face", [terminal, window])


@FACES
def test_an_hours_work_is_asked_about_and_left_without_a_charge(face: Callable[[], Face]) -> None:
    one = face()
    minutes = one.desk.attempt.case.profile.minutes["injector_swap"]
    assert minutes >= ASKED_FROM_MINUTES
    assert f"This takes {minutes:.0f} min. Go ahead?" in one.lends(False)
    assert (one.desk.attempt.minutes, one.desk.attempt.work.replaced) == (0.0, frozenset())


@FACES
def test_an_hours_work_is_done_and_charged_once_it_is_agreed_to(face: Callable[[], Face]) -> None:
    one = face()
    assert "Known-good part fitted: injector 3. Run the test again." in one.lends(True)
    assert one.desk.attempt.work.replaced == {(Location.COIL, 3)}
    assert one.desk.attempt.minutes >= ASKED_FROM_MINUTES


@FACES
def test_work_on_the_drive_modules_side_never_goes_without_its_caution(face: Callable[[], Face]) -> None:
    assert "Prove it dead" in face().lends(False)


def test_work_of_less_than_an_hour_is_done_at_once() -> None:
    desk = new_desk(CASE)
    reply = CaseActions(desk, WORDING).act(Swap(1, 3))
    assert 0.0 < desk.attempt.minutes < ASKED_FROM_MINUTES
    assert (reply.ask_first, reply.engine_changed) == (None, True)


def test_nothing_is_stored_until_long_work_is_agreed_to() -> None:
    desk = new_desk(CASE)
    doing = CaseActions(desk, WORDING)
    asked = doing.act(Lend(Location.COIL, 3))
    assert asked.ask_first == asked.done.event.labour_minutes
    assert not asked.message
    assert not desk.attempt.work.replaced
    agreed = doing.carry_out(Lend(Location.COIL, 3), asked.done, agreed=True)
    assert agreed.ask_first is None
    assert desk.attempt.work.replaced == {(Location.COIL, 3)}


def test_a_caution_comes_with_the_first_action_that_it_belongs_to_and_not_again() -> None:
    doing = CaseActions(new_desk(CASE), WORDING)
    assert doing.act(Move(Location.ENGINE_HARNESS)).cautions == (text("caution.moving"),)
    assert doing.act(Move(None)).cautions == ()
    assert doing.act(Swap(1, 3)).cautions == (text("caution.drive"),)
    assert doing.act(Lend(Location.DRIVE_MODULE, 0)).cautions == ()
    assert doing.act(Hear(None, "front")).cautions == (text("caution.repeat"),)


def test_a_reading_under_a_cover_brings_the_caution_of_the_cover() -> None:
    """Moving parts and hot oil lie open there: common practice, no published source."""
    doing = CaseActions(new_desk(CASE), WORDING)
    asked = doing.act(UNDER_COVER)
    assert asked.ask_first is not None
    done = doing.carry_out(UNDER_COVER, asked.done, agreed=True)
    assert (*asked.cautions, *done.cautions) == (text("caution.drive"), text("caution.cover"))


def test_what_touches_wiring_or_heat_has_a_caution() -> None:
    """Over 100 V at the injectors, a moving engine, a hot gun: common practice, no published source."""
    assert {action.__name__ for action in CAUTIONS} == {"Hear", "Measure", "Move", "Heat", "WarmRun", "Swap", "Lend"}
    assert cautions_of(Look, Work()) == ()


def test_a_pin_drag_has_the_caution_of_a_probe_and_readings_at_the_battery_their_own() -> None:
    desk = new_desk(CASE)
    doing = CaseActions(desk, WORDING)
    drops = doing.act(Measure(Request("plus_drop")))
    assert drops.cautions == (text("caution.battery"),)
    assert doing.act(Measure(Request("crank"))).cautions == (text("caution.crank"),)
    with pytest.raises(WrongCallError, match="nothing_unplugged"):
        doing.act(Look(drag=True))
    opened = CaseActions(desk, WORDING)
    doing.act(Measure(Request("pair", cylinder=3)))
    assert opened.act(Look(drag=True)).cautions == (text("caution.drive"),)


@pytest.mark.parametrize(
    ("language", "said"),
    [
        ("en", ("responsible under your local rules isolates the drive module's supply", "second person")),
        ("es", ("responsable según tus normas locales aísla la alimentación del módulo", "segunda persona")),
    ],
)
def test_the_caution_of_live_work_says_what_is_isolated_and_by_whom(language: str, said: tuple[str, ...]) -> None:
    speak(language)
    try:
        told = " ".join(text(name) for name in cautions_of(Measure, Work(), live=True))
    finally:
        speak("en")
    assert all(one in told for one in said)


def test_a_refused_action_stores_nothing() -> None:
    desk = new_desk(CASE)
    doing = CaseActions(desk, WORDING)
    before = desk.attempt
    for action, why in (
        (Swap(3, 3), "no_swap"),
        (Hear((99,), "front"), "no_slot"),
        (Lend(Location.COIL, 99), "needs_part"),
    ):
        with pytest.raises(WrongCallError, match=why):
            doing.act(action)
    assert desk.attempt == before


def test_repair_and_retest_wait_for_the_finding() -> None:
    doing = CaseActions(new_desk(CASE), WORDING)
    for action in (Mend(Repair(Location.COIL, frozenset({3}))), Retest("front")):
        with pytest.raises(WrongCallError, match="finding_first"):
            doing.act(action)


def test_a_repair_of_a_cylinder_that_the_engine_has_not_is_refused() -> None:
    desk = new_desk(CASE)
    doing = CaseActions(desk, WORDING)
    doing.commit(Finding((), 0.5))
    with pytest.raises(WrongCallError, match="no_cylinder"):
        doing.act(Mend(Repair(Location.COIL, frozenset({99}))))
    assert desk.attempt.wrong_repairs == 0


def test_in_an_exam_the_finding_hands_the_case_in_and_nothing_tells_whether_it_is_right() -> None:
    sitting = sitting_of(small_set(SMALL), open_store(None))
    desk = sitting.desk(RecordingPlayer(), UNIVERSES)
    sitting.start_case(desk)
    doing = CaseActions(desk, WORDING)
    committed = doing.commit(Finding((), 0.5))
    assert committed.handed_in
    assert committed.message == text("set.handed_in")
    assert desk.attempt.closed
    with pytest.raises(WrongCallError, match="not_in_exam"):
        doing.require_feedback()


def test_outside_an_exam_the_finding_leads_to_repair_or_where_nothing_is_named_to_the_debrief() -> None:
    assert text("repair.ask") in type_in(new_desk(CASE), *RIGHT_ANSWER)
    committed = CaseActions(new_desk(CASE), WORDING).commit(Finding((), 0.5))
    assert (committed.message, committed.handed_in) == (text("finding.passes_next"), False)


YES = {
    "en": ("yes", "y", "YES ", " Y"),
    "es": ("sí", "si", "s", "Sí", "S", "si\u0301"),
    "de": ("ja", "j", "Ja", "J", "yes", "y"),
}  # the last: i and its accent apart
NO = ("", "no", "n", "yess", "yes please", "oui", "ye")


@pytest.mark.parametrize("language", LANGUAGES)
def test_yes_is_understood_in_the_language_that_is_spoken(language: str) -> None:
    speak(language)
    try:
        assert [line for line in YES[language] if not is_yes(line)] == []
        assert [line for line in NO if is_yes(line)] == []
        assert is_yes(text("ui.yes"))
    finally:
        speak("en")


def test_the_spanish_terminal_does_an_hours_work_on_a_si() -> None:
    desk = new_desk(CASE)
    speak("es")
    try:
        assert "(sí/no)" in type_in(desk, "lend injector 3", "sí")
    finally:
        speak("en")
    assert desk.attempt.work.replaced == {(Location.COIL, 3)}


def test_the_english_terminal_takes_a_si_for_a_no() -> None:
    desk = new_desk(CASE)
    assert text("price.left") in type_in(desk, "lend injector 3", "sí")
    assert not desk.attempt.work.replaced
