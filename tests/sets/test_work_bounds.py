"""What a file may ask of the program is bounded: the solver's steps for an engine, a set's cases, draws and engines."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import groupby
from pathlib import Path

import pytest

from tests.exam_sets import small_set
from trainer.cases.profiles import engine_trial
from trainer.cases.profiles.engine_trial import MOST_STEPS
from trainer.cases.profiles.profile_file import profile_from
from trainer.cases.single_case.case import Case
from trainer.cases.single_case.case_file import SEVERITY_RANGE, case_from
from trainer.cases.single_case.shipped import profile_named, profile_names, scenarios_folder
from trainer.cases.solved.case_proofs import Inaudible
from trainer.cases.solved.universe_cache import Universes, universe_key
from trainer.circuit.faults import KINDS
from trainer.circuit.stepping import Stage
from trainer.commands.case_commands.check_files import check_paths
from trainer.errors import ProblemsFoundError, WrongCallError
from trainer.sets import items as set_drawing
from trainer.sets import proofs as set_proofs
from trainer.sets.items import MOST_UNHEARD, items_of
from trainer.sets.proofs import set_problems
from trainer.words import problem_line, said

PROFILE = (scenarios_folder() / "profiles" / "north_v8.yaml").read_text("utf-8")
CASE = (scenarios_folder() / "cases" / "faint_hum_on_three.yaml").read_text("utf-8")
SET = """
form: set/1
name: mixed
title: Mixed
draw_key: a key for tests only
seeds: same
shares: {circuit_passes: 0, groups: 0}
cases:
"""
RUNS_AWAY = PROFILE.replace("source_ohm: 0.4", "source_ohm: 0.01").replace("reservoir_f: 0.01", "reservoir_f: 0.0001")
NEVER_RESTS = PROFILE.replace("stop_damping_n_s_per_m: 300.0", "stop_damping_n_s_per_m: 1.0")


def told_of(content: str, folder: Path, name: str = "mine.yaml") -> list[str]:
    """Return what check says of a file."""
    path = folder / name
    path.write_text(content, "utf-8")
    result = check_paths([path], Universes(None))
    return list(result.lines[:-1]) if result.exit_code else []


def problems_of(lines: str, head: str = SET) -> list[str]:
    with pytest.raises(ProblemsFoundError) as caught:
        small_set(head + lines)
    return [problem_line(problem) for problem in caught.value.problems]


@pytest.mark.parametrize(
    ("content", "told"),
    [
        (
            RUNS_AWAY,
            "solenoid is an engine whose currents or armatures run away. Allowed: an engine whose test can be solved",
        ),
        (NEVER_RESTS, "solenoid is an engine that does not settle: each of its pulses runs into the next"),
    ],
    ids=["runs away", "never rests"],
)
def test_an_engine_that_cannot_be_solved_is_told_within_a_budget_of_steps(
    content: str, told: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    steps = []
    step = Stage.step
    monkeypatch.setattr(Stage, "step", lambda self, *rest: steps.append(len(self.matrix)) or step(self, *rest))
    engine_trial.trial_of.cache_clear()
    (line,) = told_of(content, tmp_path)
    number = content[: content.index("\nsolenoid:")].count("\n") + 2
    assert f"mine.yaml, line {number}: {told}" in line
    slots, longest_pulse, parts_of_steps = 9, 1200, 1.2
    assert sum(steps) <= slots * (MOST_STEPS + longest_pulse) * parts_of_steps


def test_a_case_and_a_set_with_such_an_engine_are_told_the_same(tmp_path: Path) -> None:
    (tmp_path / "tired.yaml").write_text(NEVER_RESTS.replace("name: north_v8", "name: tired"), "utf-8")
    case = CASE.replace("profile: north_v8", "profile: tired")
    (line,) = told_of(case, tmp_path)
    assert "mine.yaml, line 6: profile is an engine that does not settle" in line
    (tmp_path / "mine.yaml").write_text(case, "utf-8")
    (line,) = told_of(f"{SET}  - case: mine\n", tmp_path, "set.yaml")
    assert "set.yaml: cases.0 is an engine that does not settle" in line


def test_shipped_engines_take_less_than_half_of_what_is_allowed(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(engine_trial, "MOST_STEPS", MOST_STEPS // 2)
    engine_trial.trial_of.cache_clear()
    for name in profile_names():
        assert engine_trial.engine_problem(profile_named(name)) is None


ENGINE_SLIPS = [
    ("source_ohm: 0.4", "source_ohm: 1e-6", "module.source_ohm is 1e-06"),
    ("feed_on_ohm: 0.05", "feed_on_ohm: 1e9", "module.feed_on_ohm is 1000000000.0"),
    ("iron_reluctance_per_h: 400000.0", "iron_reluctance_per_h: 1e-9", "solenoid.iron_reluctance_per_h is 1e-09"),
    ("spring_n_per_m: 15000.0", "spring_n_per_m: 1e9", "solenoid.spring_n_per_m is 1000000000.0"),
    ("spring_n_per_m: 15000.0", "spring_n_per_m: 1e6\n  # a stop and a spring together", "radians a step"),
    ("pulses_per_s: 80.0", "pulses_per_s: 5", "test.pulses_per_s is 5"),
    ("slot_s: 1.6", "slot_s: 3600", "test.slot_s is 3600"),
    ("percent: 0.9", "percent: 0", "meter.percent is 0"),
    ("counts: 2", "counts: 0", "meter.counts is 0"),
    ("open: 8.0", "open: 1e-300", "kinds.open is 1e-300"),
    ("codes: 6\n", "".join(f"test_{row}: 1\n  " for row in range(50)) + "codes: 6\n", "minutes is {"),
    ("right: [1, 3, 5, 7]", f"right: {list(range(1, 40))}", "banks.right"),
]


@pytest.mark.parametrize(("right", "wrong", "told"), ENGINE_SLIPS, ids=[slip[1][:30] for slip in ENGINE_SLIPS])
def test_figures_that_no_engine_has_are_refused(right: str, wrong: str, told: str) -> None:
    assert right in PROFILE
    content = PROFILE.replace(right, wrong, 1)
    if "a stop and a spring" in wrong:
        content = content.replace("stop_n_per_m: 15000000.0", "stop_n_per_m: 67500000.0")
        assert profile_from(content.replace("1e6", "0"), "mine.yaml")  # the stop alone would do
    with pytest.raises(ProblemsFoundError) as caught:
        profile_from(content, "mine.yaml")
    lines = [problem_line(problem) for problem in caught.value.problems]
    assert any(told in line for line in lines), lines


def test_every_unit_of_severity_has_a_range_that_holds_its_own_values() -> None:
    for rule in KINDS.values():
        least, most = SEVERITY_RANGE[rule.unit]
        assert all(least <= severity <= most for severity in (*rule.severities, *rule.severities_of((1, 2))))


@pytest.mark.parametrize(
    ("kind", "severity", "allowed"),
    [("low_supply", 1e6, "0.01 to 1"), ("slow_recharge", 1e-9, "1 to 1000"), ("slow_recharge", 1e9, "1 to 1000")],
)
def test_a_severity_that_no_solver_can_follow_is_refused(kind: str, severity: float, allowed: str) -> None:
    cylinders = list(range(1, 9))
    start, end = CASE.index("faults:"), CASE.index("temperature_c:")
    fault = f"faults: [{{kind: {kind}, location: drive_module, cylinders: {cylinders}, severity: {severity}}}]\n"
    with pytest.raises(ProblemsFoundError) as caught:
        case_from(CASE[:start] + fault + CASE[end:], "mine.yaml", profile_named)
    (problem,) = caught.value.problems
    assert (said(problem.field), said(problem.allowed)) == ("faults.0.severity", allowed)


DRAW = "  - {{draw: {count}, profiles: [{profiles}], difficulty: [{levels}]}}\n"
TOO_MUCH = {
    "cases of a set": (
        DRAW.format(count=150, profiles="north_v8", levels=1) * 2,
        "cases is 300 cases. Allowed: at most 200. To fix it: split it into two sets",
    ),
    "cases of all versions": (
        DRAW.format(count=100, profiles="north_v8", levels=1) + "versions: [1, 2, 3, 4, 5]\n",
        "versions is 500 cases in all versions of the set together. Allowed: at most 400",
    ),
    "one draw": (DRAW.format(count=1000, profiles="north_v8", levels=1), "cases.0.draw is 1000"),
    "places": (
        f"  - {{draw: 1, profiles: [north_v8], places: [{', '.join(['armature'] * 9)}]}}\n",
        "cases.0.places is ['armature'",
    ),
}


@pytest.mark.parametrize(("lines", "told"), TOO_MUCH.values(), ids=TOO_MUCH.keys())
def test_a_set_that_asks_too_much_is_told_what_and_how_much(lines: str, told: str) -> None:
    head = SET.replace("seeds: same", "seeds: versions" if "versions" in lines else "seeds: same")
    assert any(told in line for line in problems_of(lines, head))


def test_a_set_of_many_temperatures_is_told_that_each_is_solved(tmp_path: Path) -> None:
    lines = ""
    for degrees in range(13):
        content = CASE.replace("temperature_c: 20.0", f"temperature_c: {30 + degrees}")
        (tmp_path / f"at_{degrees}.yaml").write_text(content, "utf-8")
        lines += f"  - case: at_{degrees}\n"
    with pytest.raises(ProblemsFoundError) as caught:
        small_set(SET + lines, tmp_path)
    (line,) = map(problem_line, caught.value.problems)
    assert "cases is 13 combinations of engine and temperature to solve. Allowed: at most 12" in line


def test_a_set_of_very_long_cases_is_told_where_it_is_too_much(tmp_path: Path) -> None:
    lines = ""
    for number in range(20):
        (tmp_path / f"long_{number}.yaml").write_text(CASE + "#" * 200_000, "utf-8")
        lines += f"  - case: long_{number}\n"
    with pytest.raises(ProblemsFoundError) as caught:
        small_set(SET + lines, tmp_path)
    (problem,) = caught.value.problems
    assert (problem.line, said(problem.field), said(problem.found)) == (
        18,
        "cases.9.case",
        "too much text in the cases up to this line",
    )


@pytest.fixture
def draws(monkeypatch: pytest.MonkeyPatch) -> list[int]:
    """What is drawn, one entry a draw."""
    drawn: list[int] = []
    draw = set_drawing.draw_case
    monkeypatch.setattr(set_drawing, "draw_case", lambda *rest: drawn.append(1) or draw(*rest))
    monkeypatch.setattr(set_drawing, "inaudible", lambda case: iter(()))
    return drawn


def test_a_pool_that_is_used_up_is_told_without_further_draws(draws: list[int]) -> None:
    """Eight worn armatures can be drawn of eight cylinders; the ninth is not looked for."""
    eight = "  - {draw: 8, profiles: [north_v8], difficulty: [3], kinds: [worn_armature]}\n"
    assert len(items_of(small_set(SET + eight).case_set, "ann")) == 8
    before = len(draws)
    with pytest.raises(WrongCallError, match="pool_empty"):
        items_of(small_set(SET + eight.replace("draw: 8", "draw: 9")).case_set, "ann")
    assert len(draws) == 2 * before


def test_all_cases_of_a_set_share_one_budget_of_draws(draws: list[int], monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(set_drawing, "MOST_DRAWS_IN_SET", 50)
    many = "  - {draw: 30, profiles: [north_v8], difficulty: [1]}\n"
    with pytest.raises(WrongCallError, match="pool_empty"):
        items_of(small_set(SET + many).case_set, "ann")
    assert len(draws) == 50


def test_a_pool_in_which_nothing_can_be_heard_is_given_up(draws: list[int], monkeypatch: pytest.MonkeyPatch) -> None:
    heard: list[int] = []

    def nothing_heard(case: Case) -> Iterator[Inaudible]:
        heard.append(1)
        yield Inaudible(1, 0.0, 30.0)

    monkeypatch.setattr(set_drawing, "inaudible", nothing_heard)
    with pytest.raises(WrongCallError, match="pool_empty"):
        items_of(
            small_set(f"{SET}  - {{draw: 3, profiles: [north_v8], places: [armature, solenoid_coil]}}\n").case_set,
            "ann",
        )
    assert len(heard) == MOST_UNHEARD


def test_cases_are_proved_one_engine_after_the_other(monkeypatch: pytest.MonkeyPatch) -> None:
    """So that an engine's solved circuits are asked for once, however few find room in memory."""
    proved: list[object] = []
    monkeypatch.setattr(set_proofs, "unsolvable", lambda case, universes: proved.append(universe_key(case)))
    monkeypatch.setattr(set_proofs, "inaudible", lambda case: iter(()))
    monkeypatch.setattr(set_drawing, "inaudible", lambda case: iter(()))
    drawn = DRAW.format(count=12, profiles="north_v8, ridge_v6", levels=2)
    case_set = small_set(SET.replace("same", "per_learner") + drawn).case_set
    assert set_problems(case_set, "set.yaml", Universes(None), lambda line: None) == []
    assert len(proved) == 24
    assert len([key for key, _cases in groupby(proved)]) == len(set(proved)) > 3
