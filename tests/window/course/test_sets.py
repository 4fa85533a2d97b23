"""Sets in the window: an instructor builds and seals one, a learner works it, the instructor collects."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.exam_sets import SMALL, sealed_set, small_set
from tests.window_hands import Hands
from trainer.desk.settings import Settings, hashed_pin
from trainer.practice.attempt.event_record import EventKind
from trainer.records.store.store import open_store
from trainer.sets.sealed import is_sealed
from trainer.sets.set_file import read_set
from trainer.window.course.set_page import SetScreen

PHRASE = "anvil lantern plum seven"


@pytest.fixture
def hands(tmp_path: Path) -> Hands:
    return Hands(folder=tmp_path, store=open_store(tmp_path))


def commit_none(hands: Hands) -> None:
    """Commit that the circuit passes, with the keyboard alone."""
    hands.press("f").act("count.0").press("b").act("commit").press("y").wait(0.1)


def test_an_instructor_builds_seals_and_collects_without_a_text_editor(hands: Hands, tmp_path: Path) -> None:
    hands.press("f7", "b").go("title").write("Week three")
    hands.act("mode.exam").act("plays.more").act("drawn.less").act("drawn.less")
    hands.act("save").wait(0.1)
    path = tmp_path / "sets" / "week_three.yaml"
    case_set = read_set(path)
    assert (case_set.size, case_set.policy.mode, case_set.policy.plays) == (4, "exam", 1)
    assert "can be solved and heard" in hands.shown
    hands.press("escape").act("file.week_three.yaml").act("seal")
    hands.write(PHRASE).go("again").write(PHRASE + "x").press("enter")
    assert "do not match" in hands.shown
    hands.go("passphrase").write(PHRASE).go("again").write(PHRASE).press("enter")
    assert is_sealed(path.with_suffix(".sealed"))
    assert PHRASE not in hands.shown
    # a learner
    hands.press("escape").go("name").write("ann").press("enter", "s")
    hands.act("set.week_three.sealed").write("not it at all").press("enter")
    assert "not the passphrase" in hands.shown
    hands.write(PHRASE).press("enter").wait(0.1)
    assert "Handed in: 0 of 4" in hands.shown
    for number in range(1, 5):
        assert f"case {number}" in hands.text_of("next")
        hands.press("n").wait(0.1)
        assert f"Case {number} of 4" in hands.text_of("bench.title")
        assert not hands.has("hint")
        if number == 1:
            hands.press("t").wait(0.1)
            hands.press("t").wait(0.1)
            assert "You have no sounds left in this case" in hands.shown
        commit_none(hands)
        assert not hands.has("debrief")
    assert "Handed in: 4 of 4" in hands.shown
    assert len(list((tmp_path / "results").glob("*.results"))) == 1
    # the debriefs are open now
    hands.act("look.1").wait(0.1)
    assert hands.has("debrief.score")
    (bundle,) = (tmp_path / "results").glob("*.results")
    assert b'"looked_back"' in bundle.read_bytes()
    hands.press("escape", "escape", "escape", "escape")
    # the instructor collects
    hands.press("f7").act("file.week_three.sealed").go("folder").write(str(tmp_path / "results"))
    hands.act("collect").write(PHRASE).press("enter").wait(0.1)
    assert "Marked: 4" in hands.shown
    report = next(name for name in hands.layout.order if name.startswith("report."))
    hands.act(report)
    assert "What to teach next" in (tmp_path / "sheets" / "report_week_three.html").read_text("utf-8")


def test_leaving_the_window_in_a_set_is_taken_down(tmp_path: Path) -> None:
    path, _exam = sealed_set(tmp_path)
    hands = Hands(folder=tmp_path)
    hands.go("name").write("ann").press("enter", "s").go("path").write(str(path)).press("enter")
    hands.write(PHRASE).press("enter").wait(0.1).press("n").wait(0.1)
    for screen in hands.shell.screens:
        screen.away()
    (row,) = hands.store.all_in_set(small_set().case_set.id)
    assert hands.store.events(row.id)[-1].kind is EventKind.AWAY


def test_a_case_without_sound_is_let_go_with_a_reason_and_the_passphrase(tmp_path: Path) -> None:
    path, _exam = sealed_set(tmp_path)
    hands = Hands(folder=tmp_path)
    hands.go("name").write("ann").press("enter", "s").go("path").write(str(path)).press("enter")
    hands.write(PHRASE).press("enter").wait(0.1).press("n").wait(0.1).press("escape")
    hands.go("reason").write("headphones failed").press("enter")
    hands.write("a learner's guess").press("enter").wait(0.1)
    assert "only the instructor" in hands.shown
    assert hands.shell.screen.name == "passphrase"
    hands.write(PHRASE).press("enter").wait(0.1)
    assert "You get another" in hands.shown
    assert "case 1" in hands.text_of("next")
    hands.press("n").wait(0.1)
    assert [row.redraw for row in hands.store.all_in_set(small_set().case_set.id)] == [0, 1]


def test_a_practice_set_debriefs_each_case_at_once(tmp_path: Path) -> None:
    plain = tmp_path / "small.yaml"
    plain.write_text(SMALL.replace("mode: exam", "mode: practice"))
    hands = Hands(folder=tmp_path)
    hands.go("name").write("ann").press("enter", "s").go("path").write(str(plain)).press("enter").wait(0.1)
    hands.press("n").wait(0.1)
    commit_none(hands)
    hands.press("d").wait(0.1)
    assert hands.has("debrief.score")
    hands.press("escape")
    assert isinstance(hands.shell.screen, SetScreen)
    assert "Handed in: 1 of 3" in hands.shown


def test_an_exam_that_is_not_sealed_is_not_worked(tmp_path: Path) -> None:
    plain = tmp_path / "small.yaml"
    plain.write_text(SMALL)
    hands = Hands(folder=tmp_path)
    hands.go("name").write("ann").press("enter", "s").go("path").write(str(plain)).press("enter")
    assert "Seal it first" in hands.shown


def test_a_station_keeps_the_instructors_page_shut(tmp_path: Path) -> None:
    hands = Hands(folder=tmp_path, settings=Settings(station_pin=hashed_pin("1234")))
    hands.press("f7")
    assert not hands.has("build")


def test_a_path_that_leads_nowhere_is_told(tmp_path: Path) -> None:
    hands = Hands(folder=tmp_path)
    hands.go("name").write("ann").press("enter", "s").go("path").write("/no/such/set.sealed").press("enter")
    assert "There is no file /no/such/set.sealed" in hands.shown


@pytest.mark.parametrize("missing", [("memory", "isolated"), ()])
def test_an_exam_that_other_programs_can_reach_says_so(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, missing: tuple[str, ...]
) -> None:
    monkeypatch.setattr("trainer.window.course.set_page.guards_missing", lambda: missing)
    path, _exam = sealed_set(tmp_path)
    hands = Hands(folder=tmp_path)
    hands.go("name").write("ann").press("enter", "s").go("path").write(str(path)).press("enter")
    hands.write(PHRASE).press("enter").wait(0.1)
    assert hands.has("set.unguarded") is bool(missing)


def test_the_memory_is_guarded_before_a_passphrase_is_typed(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    guarded: list[str] = []
    monkeypatch.setattr("trainer.window.shell.passphrase_screen.guard_memory", lambda: guarded.append("memory"))
    path, _exam = sealed_set(tmp_path)
    hands = Hands(folder=tmp_path)
    hands.go("name").write("ann").press("enter", "s").go("path").write(str(path))
    assert not guarded
    hands.press("enter")
    assert hands.shell.screen.name == "passphrase"
    assert guarded == ["memory"]
