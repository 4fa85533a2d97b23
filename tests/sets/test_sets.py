"""Sets: what a file may say, what each learner gets, and what sealing keeps."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable
from pathlib import Path

import pytest

from tests.exam_sets import PASSPHRASE, SMALL, sealed_set, small_set
from tests.universes import UNIVERSES
from trainer.cases.drawing.random_case import is_group
from trainer.cases.single_case.shipped import case_named, case_names
from trainer.cases.solved.case_proofs import inaudible
from trainer.circuit.elements import Location
from trainer.errors import ProblemsFoundError, WrongCallError
from trainer.sets.case_set import CaseSet, Draw, Seeds
from trainer.sets.draft import SetDraft, set_text
from trainer.sets.items import items_of
from trainer.sets.pack import pack_from
from trainer.sets.proofs import set_problems
from trainer.sets.sealed import MAGIC, NONCE_BYTES, is_sealed, key_of, pad, read_head, seal, unseal
from trainer.sets.set_access import refuse_open_exam
from trainer.sets.set_file import read_set, set_of
from trainer.words import problem_line, said

DRAWN = """
form: set/1
name: mixed
title: Mixed
draw_key: a key for tests only
seeds: per_learner
cases:
  - draw: 8
    profiles: [north_v8]
    difficulty: [1]
"""


def problems_of(text: str) -> list[str]:
    with pytest.raises(ProblemsFoundError) as caught:
        small_set(text)
    return [problem_line(problem) for problem in caught.value.problems]


DRAW_FIELDS = "difficulty, draw, kinds, places, profiles, source, weight"

SLIPS = [
    # (of SMALL or DRAWN, what is replaced, by what, what is told)
    (SMALL, "form: set/1", "form: set/9", "form is 'set/9'"),
    (SMALL, "name: first_week", "name: First Week", "line 3: name is 'First Week'"),
    (SMALL, "title: First week", "title: F", "line 4: title is 'F'. Allowed: at least 3 characters"),
    (SMALL, "title: First week", "titel: First week", "To fix it: write title"),
    (SMALL, "draw_key: a key for tests only", "draw_key: short", "line 5: draw_key is 'short'"),
    (SMALL, "case: faint_hum_on_three", "case: faint_hum_on_tree", "line 7: cases.0.case is 'faint_hum_on_tree'"),
    (SMALL, "case: faint_hum_on_three", "cose: faint_hum_on_three", "cases.0.cose is an unknown field. Allowed: case, weight. To fix it: write case"),
    (SMALL, "case: faint_hum_on_three", "5", "cases.0 is 5. Allowed: these fields, each on a line below: case, weight"),
    (SMALL, "case: faint_hum_on_three", "case: faint_hum_on_three\n    draw: 2", "cases.0.draw is an unknown field. Allowed: case, weight"),
    (DRAWN, "draw: 8", "drow: 8", f"cases.0.drow is an unknown field. Allowed: {DRAW_FIELDS}. To fix it: write draw"),
    (DRAWN, "difficulty: [1]", "dificulty: [1]", f"cases.0.dificulty is an unknown field. Allowed: {DRAW_FIELDS}. To fix it: write difficulty"),
    (SMALL, "case: one_side_asleep", "case: faint_hum_on_three", "cases.2.case is faint_hum_on_three. Allowed: each once"),
    (SMALL, "case: one_side_asleep", "case: 3K7M-XXXX-XXXX", "cases.2.case is '3K7M-XXXX-XXXX'"),
    (SMALL, "case: one_side_asleep", "case: one_side_asleep\n    weight: -1", "cases.2.weight is -1"),
    (SMALL, "mode: exam", "mode: test", "policy.mode is 'test'. Allowed: one of practice, exam"),
    (SMALL, "mode: exam", "mode: exam\n  hints: true", "policy.hints is true"),
    (SMALL, "mode: exam", "mode: exam\n  debrief: after_each", "Allowed: after_set, after_closing"),
    (SMALL, "mode: exam", "mode: exam\n  debrief: after_closing", "a date in closes"),
    (SMALL, "mode: exam", "mode: exam\n  trace: shown", "give it to individual learners under support"),
    (SMALL, "mode: exam", "mode: exam\n  tries: 0", "policy.tries is 0"),
    (SMALL, "mode: exam", "mode: exam\n  plays: many", "policy.plays is 'many'"),
    (SMALL, "mode: exam", "mode: exam\n  opens: tomorrow", "a date with time and zone, for example 2027-03-01T08:00:00+01:00"),
    (SMALL, "mode: exam", "mode: exam\n  opens: 2027-03-01T08:00:00", "a date with time and zone"),
    (SMALL, "mode: exam", "mode: exam\n  opens: 2027-03-02T08:00:00Z\n  closes: 2027-03-01T08:00:00Z", "later than 2027-03-02"),
    (SMALL, "mode: exam", "mode: exam\n  certainty_weight: 0.9", "policy.certainty_weight is 0.9"),
    (SMALL, "mode: exam", "mode: exam\n  counts: worst", "policy.counts is 'worst'"),
    (SMALL, "policy:", "seeds: versions\npolicy:", "seeds: versions together with a list in versions"),
    (SMALL, "policy:", "versions: [1, 2]\npolicy:", "seeds: versions together with a list in versions"),
    (SMALL, "policy:", "support:\n  - learner: ann\n  - learner: ann\npolicy:", "support.1.learner is ann"),
    (SMALL, "policy:", "support:\n  - learner: ann\n    extra_time: 9\npolicy:", "support.0.extra_time is 9"),
    (DRAWN, "draw_key: a key for tests only\n", "", "draw_key is missing"),
    (DRAWN, "draw: 8", "draw: 0", "cases.0.draw is 0"),
    (DRAWN, "profiles: [north_v8]", "profiles: [nowhere]", "cases.0.profiles.0 is 'nowhere'"),
    (DRAWN, "difficulty: [1]", "difficulty: [4]", "cases.0.difficulty.0 is 4"),
    (DRAWN, "difficulty: [1]", "places: [roof]", "cases.0.places.0 is 'roof'"),
    (DRAWN, "difficulty: [1]", "kinds: [stuck_armature]\n    places: [solenoid_coil]", "a draw that no fault fits"),
    (DRAWN, "difficulty: [1]", "places: [armature]", "shares.circuit_passes is 0 of 8 cases. Allowed: at least 2"),
    (DRAWN, "difficulty: [1]", "source: shipped\n    kinds: [stuck_armature]", "cases.0.draw is 8. Allowed: at most"),
]  # fmt: skip


@pytest.mark.parametrize(("text", "old", "new", "told"), SLIPS, ids=[slip[2].strip()[-40:] or "key" for slip in SLIPS])
def test_each_slip_in_a_set_is_reported_with_its_line_and_mend(text: str, old: str, new: str, told: str) -> None:
    assert old in text
    lines = problems_of(text.replace(old, new, 1))
    assert any(told in line for line in lines), lines
    assert all("To fix it: " in line for line in lines)


def test_a_set_that_is_good_reads_back_the_same() -> None:
    draft = SetDraft("weekly", "Weekly", drawn=6, profiles=("north_v8", "ridge_v6"), draw_key="a key for tests only")
    text = set_text(draft)
    first = small_set(text).case_set
    assert set_of(first.pack, "again.yaml") == first
    assert first.id == pack_from(text, "other.yaml", Path()).id
    assert first.size == 6


def test_every_learner_gets_other_cases_and_the_same_ones_again() -> None:
    """People's acceptance: distinct cases, classes balanced within one, regenerated from the name alone."""
    case_set = small_set(DRAWN).case_set
    drawn = {f"learner {number}": items_of(case_set, f"learner {number}") for number in range(12)}
    seen = {tuple(item.case.digest for item in items) for items in drawn.values()}
    assert len(seen) == len(drawn)
    assert items_of(case_set, "learner 7") == drawn["learner 7"]
    draw = case_set.lines[0]
    assert isinstance(draw, Draw)
    for items in drawn.values():
        cases = [item.case for item in items]
        assert sum(not case.faults for case in cases) == 2  # 15 % of 8, rounded up
        assert sum(any(is_group(fault) for fault in case.faults) for case in cases) == 1  # 10 % of 8, rounded up
        single = Counter(case.faults[0].location for case in cases if case.faults and not is_group(case.faults[0]))
        counts = [single[place] for place in draw.places]
        assert max(counts) - min(counts) <= 1
        assert len({case.faults for case in cases if case.faults}) == 6  # none twice


@pytest.mark.parametrize("place", Location)
def test_a_set_can_ask_for_each_place(place: Location) -> None:
    text = DRAWN.replace("draw: 8", "draw: 1").replace(
        "difficulty: [1]", f"difficulty: [1, 2, 3]\n    places: [{place}]"
    )
    (draw,) = small_set(f"{text}shares: {{circuit_passes: 0, groups: 0}}\n").case_set.lines
    assert isinstance(draw, Draw)
    assert draw.places == (place,)


def test_only_cases_whose_decisive_slots_can_be_heard_are_drawn() -> None:
    """Shorts to ground leave a low hum that many a bed would hide."""
    text = DRAWN.replace("draw: 8", "draw: 3").replace(
        "difficulty: [1]", "difficulty: [2]\n    kinds: [short_to_ground]"
    )
    for learner in ("ann", "ben", "cid"):
        for item in items_of(small_set(text).case_set, learner):
            assert item.case.faults[0].kind == "short_to_ground"
            assert not list(inaudible(item.case))


def test_the_same_draws_for_all_and_versions_by_name() -> None:
    same = small_set(DRAWN.replace("per_learner", "same")).case_set
    assert [i.case.digest for i in items_of(same, "ann")] == [i.case.digest for i in items_of(same, "ben")]
    versions = small_set(DRAWN.replace("per_learner", "versions\nversions: [1, 2, 3]")).case_set
    assert versions.seeds is Seeds.VERSIONS
    forms = {tuple(i.case.digest for i in items_of(versions, f"l{number}")) for number in range(30)}
    assert len(forms) == 3


def test_another_key_another_try_and_another_draw_give_other_cases() -> None:
    case_set = small_set(DRAWN).case_set
    first = items_of(case_set, "ann")
    other_key = small_set(DRAWN.replace("a key for tests only", "another key altogether")).case_set
    assert [i.seed for i in items_of(other_key, "ann")] != [i.seed for i in first]
    assert [i.case.digest for i in items_of(case_set, "ann", 2)] != [i.case.digest for i in first]
    redrawn = items_of(case_set, "ann", 1, {3: 1})
    assert redrawn[2].case.digest != first[2].case.digest
    assert [i for i in redrawn if i.index != 3] == [i for i in first if i.index != 3]


def test_in_an_exam_no_case_tells_itself_by_name_code_or_story() -> None:
    exam = small_set(DRAWN + "  - case: faint_hum_on_three\npolicy: {mode: exam}\n").case_set
    for item in items_of(exam, "ann"):
        assert item.case.name == f"mixed_{item.index}"
        assert item.case.code is None
        assert item.case.story == ""
        assert item.case.translations == ()


def test_a_shuffled_set_keeps_what_each_number_in_the_records_means() -> None:
    case_set = small_set(SMALL.replace("mode: exam", "mode: exam\n  order: shuffled")).case_set
    orders = {learner: items_of(case_set, learner) for learner in ("ann", "ben", "cid", "dot", "eve")}
    assert len({tuple(item.index for item in items) for items in orders.values()}) > 1
    for items in orders.values():
        assert [item.number for item in items] == [1, 2, 3]
        assert {item.index: item.case.profile.name for item in items}[1] == "north_v8"


def test_a_quieter_bed_is_the_support_and_nothing_else_changes() -> None:
    text = SMALL + "support:\n  - learner: ann\n    quieter_bed_db: 4\n"
    case_set = small_set(text).case_set
    ann, ben = (items_of(case_set, name)[0].case for name in ("ann", "ben"))
    assert ann.bed.level_dba == ben.bed.level_dba - 4.0
    assert (ann.faults, ann.profile) == (ben.faults, ben.profile)


def test_every_case_of_a_good_set_is_proved_and_a_hopeless_one_is_told(tmp_path: Path) -> None:
    case_set = small_set().case_set
    told: list[str] = []
    assert set_problems(case_set, "small.yaml", UNIVERSES, told.append) == []
    assert len(told) == 3
    (tmp_path / "mine.yaml").write_text(
        Path("scenarios/cases/faint_hum_on_three.yaml").read_text().replace("name: faint_hum_on_three", "name: mine")
        .replace("evidence: all", "evidence: [actuation_test, codes]")
    )  # fmt: skip
    hopeless = small_set(SMALL.replace("case: faint_hum_on_three", "case: mine"), tmp_path).case_set
    (problem,) = set_problems(hopeless, "small.yaml", UNIVERSES, told.append)
    assert said(problem.found) == "a case that its own evidence cannot decide"


# sealing


def test_a_sealed_set_opens_with_its_passphrase_alone(tmp_path: Path) -> None:
    path, opened = sealed_set(tmp_path)
    assert is_sealed(path)
    assert opened.case_set == small_set().case_set
    with pytest.raises(WrongCallError, match="wrong_passphrase"):
        unseal(path, PASSPHRASE + " ")
    head = read_head(path)
    assert (head.title, head.size, head.mode) == ("First week", 3, "exam")


def test_nothing_that_matters_can_be_read_from_a_sealed_file(tmp_path: Path) -> None:
    path, opened = sealed_set(tmp_path)
    whole = path.read_bytes()
    for word in (b"faint_hum", b"misfire", b"draw_key", b"tests only", b"pass_through", b"seed"):
        assert word not in whole
    assert opened.case_set.draw_key.encode() not in whole


SINGLE = SMALL.replace("  - case: misfire_without_a_circuit\n  - case: one_side_asleep\n", "")


@pytest.fixture
def sealed_length(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Callable[[CaseSet], int]:
    """Seals a set and returns the file's length; the key is made once, since no passphrase changes a length."""
    key = key_of(PASSPHRASE, b"salt" * 4)
    monkeypatch.setattr("trainer.sets.sealed.key_of", lambda _passphrase, _salt: key)

    def length(case_set: CaseSet) -> int:
        seal(case_set, PASSPHRASE, tmp_path / "any.sealed")
        return (tmp_path / "any.sealed").stat().st_size

    return length


def test_the_length_of_a_sealed_set_does_not_tell_its_cases(sealed_length: Callable[[CaseSet], int]) -> None:
    sets = [small_set(SINGLE.replace("faint_hum_on_three", name)).case_set for name in case_names()]
    assert len({len(case_set.pack.plain) for case_set in sets}) > 50
    assert len({sealed_length(case_set) for case_set in sets}) == 1


def test_sets_of_the_same_number_of_cases_are_sealed_to_the_same_length(
    sealed_length: Callable[[CaseSet], int],
) -> None:
    """One engine or four, short cases or long ones."""
    listed = "".join(
        f"  - case: {name}\n" for name in ("faint_hum_on_three", "misfire_without_a_circuit", "one_side_asleep")
    )
    engines = {case_named(name).profile.name: f"  - case: {name}\n" for name in case_names()}
    assert len(engines) == 4
    assert listed in SMALL
    others = SMALL.replace(listed, "".join(list(engines.values())[:3]))
    assert sealed_length(small_set().case_set) == sealed_length(small_set(others).case_set)


@pytest.mark.parametrize(("length", "sealed_as"), [(1, 2**16), (2**16, 2**16), (2**16 + 1, 2**17), (2**23, 2**23)])
def test_a_pack_is_padded_to_a_power_of_two(length: int, sealed_as: int) -> None:
    assert len(pad(b"x" * length)) == sealed_as


def test_a_set_that_no_sealed_file_holds_is_told_before_it_is_written() -> None:
    with pytest.raises(WrongCallError, match="set_too_large"):
        pad(b"x" * (2**23 + 1))


def test_a_set_sealed_before_packs_were_padded_still_opens(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("trainer.sets.sealed.pad", lambda plain: plain)
    path, opened = sealed_set(tmp_path)
    assert path.stat().st_size < 2**14
    assert opened.case_set == small_set().case_set


def test_every_flipped_byte_of_a_sealed_set_is_seen(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    path, opened = sealed_set(tmp_path)
    # the key is made once: what is tried here is every byte, not the passphrase
    monkeypatch.setattr("trainer.sets.sealed.key_of", lambda _passphrase, _salt: opened.key)
    whole = path.read_bytes()
    assert whole.startswith(MAGIC)
    changed = tmp_path / "changed.sealed"
    body = whole.index(b"\n", len(MAGIC)) + 1
    # every byte that is not the cipher's, which ties all of its own to the tag at the end: some of those
    for place in (
        *range(body + NONCE_BYTES),
        *range(body + NONCE_BYTES, len(whole), 211),
        *range(len(whole) - 16, len(whole)),
    ):
        changed.write_bytes(whole[:place] + bytes([whole[place] ^ (1 << place % 8)]) + whole[place + 1 :])
        with pytest.raises(WrongCallError):
            unseal(changed, PASSPHRASE)


def test_a_cut_sealed_set_is_seen(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    path, opened = sealed_set(tmp_path)
    monkeypatch.setattr("trainer.sets.sealed.key_of", lambda _passphrase, _salt: opened.key)
    whole = path.read_bytes()
    for length in range(0, len(whole), 293):
        path.write_bytes(whole[:length])
        with pytest.raises(WrongCallError):
            unseal(path, PASSPHRASE)


def test_a_set_is_not_sealed_weakly_and_an_open_exam_is_not_worked(tmp_path: Path) -> None:
    with pytest.raises(WrongCallError, match="short_passphrase"):
        sealed_set(tmp_path, passphrase="short")
    with pytest.raises(WrongCallError, match="seal_needs_key"):
        sealed_set(tmp_path, SMALL.replace("draw_key: a key for tests only\n", ""))
    with pytest.raises(WrongCallError, match="exam_not_sealed"):
        refuse_open_exam(small_set(), "small.yaml")
    assert not list(tmp_path.glob("*.sealed"))


def test_the_same_passphrase_makes_the_same_key_wherever_a_set_is_sealed(tmp_path: Path) -> None:
    _path, first = sealed_set(tmp_path)
    _path, second = sealed_set(tmp_path)
    assert first.key == second.key
    assert [path.name for path in tmp_path.iterdir()] == ["small.sealed"]


def test_shipped_sets_are_good() -> None:
    for path in sorted(Path("scenarios/sets").glob("*.yaml")):
        assert read_set(path).size >= 1
