"""YAML is read by its plain forms, and a short hostile file costs no more than a long honest one."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from yaml.scanner import Scanner

from trainer.cases.files.plain_yaml import MOST_DEPTH, MOST_VALUES, plain_yaml, yaml_of
from trainer.cases.files.yaml_text import YamlText
from trainer.cases.single_case.case_file import case_from
from trainer.cases.single_case.shipped import profile_named
from trainer.errors import Problem, ProblemsFoundError
from trainer.words import said
from trainer.words.visible import unseen_in

PLAIN_FORMS = {
    # as it is written: as it is read
    "12": 12, "-3": -3, "+7": 7, "010": 10, "1.5e-4": 1.5e-4, "1e3": 1000.0, "12.": 12.0, ".5": 0.5, "-.inf": float("-inf"),
    "true": True, "False": False, "~": None, "null": None, "": None, '"12"': "12", "'true'": "true",
    # numbers, truth and dates of YAML 1.1 that somebody meant as words
    "1:30": "1:30", "0x1F": "0x1F", "0b11": "0b11", "0o17": "0o17", "1_000": "1_000", "yes": "yes", "no": "no", "on": "on",
    "off": "off", "2027-03-01": "2027-03-01", "2027-03-01T08:00:00Z": "2027-03-01T08:00:00Z", "<<": "<<", "=": "=",
}  # fmt: skip


@pytest.mark.parametrize(("written", "read"), PLAIN_FORMS.items(), ids=list(PLAIN_FORMS))
def test_a_value_is_what_yaml_1_2_says(written: str, read: object) -> None:
    value = YamlText(f"field: {written}", "mine.yaml").value["field"]
    assert (type(value), value) == (type(read), read)


DOCUMENTS = st.dictionaries(
    st.text(
        st.characters(codec="utf-8", exclude_categories=("Cc", "Cf", "Cs", "Co", "Cn", "Zl", "Zp")),
        min_size=1,
        max_size=20,
    ).filter(lambda key: unseen_in(key) is None),
    st.text("0123456789e+-.:_xyn~", max_size=30) | st.integers() | st.floats(allow_nan=False) | st.booleans(),
    max_size=4,
)


@given(DOCUMENTS)
def test_what_the_program_writes_reads_back_the_same(document: dict[str, object]) -> None:
    assert plain_yaml(yaml_of({"begin": 1, **document})).value == {"begin": 1, **document}


LONG = 100_000
HOSTILE = {
    # file: line, field and what is told
    "form: case/1\nseed: " + "7" * LONG: (2, "seed", "a number of 100000 characters"),
    "form: case/1\nseed: -1." + "7" * LONG: (2, "seed", "a number of 100003 characters"),
    "form: case/1\n? " + "x" * LONG + "\n: 1": (2, "the file", "a name of 100000 characters"),
    "faults:\n  - {? [1, 2] : 3}": (2, "faults.0", "a field whose name is neither a word nor a number"),
    "faults:\n  - {~: 3}": (2, "faults.0", "a field whose name is neither a word nor a number"),
    "faults:\n  - {a: 1, a: 2}": (2, "faults.0.a", "given twice"),
    "form: x\n\nseed: !!int ''": (3, "the file", "a tag, a word after !"),
    "form: x\nseed: !!bool x": (2, "the file", "a tag, a word after !"),
    "form: x\nseed: !" + "x" * LONG + " 1": (2, "the file", "a tag, a word after !"),
    "a: &a [x]\nb: *a": (2, "the file", "an alias"),
    "a: [&a x, " + "*a, " * (LONG // 4) + "]": (1, "the file", "an alias"),
    "form: " + "[" * LONG: (1, "the file", "nested too deeply"),
    "form: " + "{" * LONG: (1, "the file", "nested too deeply"),
    "form:\n" + "- " * LONG: (2, "the file", "nested too deeply"),
    "form: [" + "1," * LONG + "]": (1, "the file", "too many values"),
    "form: [" + "{}," * (LONG // 2) + "]": (1, "the file", "too many values"),
    "{" + "a: ," * (LONG // 4) + "}": (1, "the file", "too many values"),
    "form: x\n" + "".join(f"k{row}: 1\n" for row in range(20_000)): (4000, "the file", "too many values"),
    'form: x\nname: "\\UFFFFFFFF"': (2, "the file", "not YAML"),
    'form: x\nname: "\\U00110000"': (2, "the file", "not YAML"),
    "%YAML 1." + "9" * LONG + "\n---\na: 1": (1, "the file", "not YAML"),
}


@pytest.mark.parametrize(("content", "told"), HOSTILE.items(), ids=[content[:30] for content in HOSTILE])
def test_a_hostile_file_is_told_with_its_line_and_costs_little(
    content: str, told: tuple[int | None, str, str], monkeypatch: pytest.MonkeyPatch
) -> None:
    fetched = []
    fetch = Scanner.fetch_more_tokens
    monkeypatch.setattr(Scanner, "fetch_more_tokens", lambda self: fetched.append(1) or fetch(self))
    with pytest.raises(ProblemsFoundError) as caught:
        YamlText(content, "mine.yaml")
    (problem,) = caught.value.problems
    assert (problem.line, said(problem.field), said(problem.found)) == told
    assert all(len(words) < 100 for words in map(said, (problem.found, problem.allowed, problem.mend)))
    assert len(fetched) < 4 * MOST_VALUES


def test_bounds_leave_room_for_the_largest_honest_files() -> None:
    deep = "".join(f"{'  ' * level}k:\n" for level in range(MOST_DEPTH - 1))
    assert YamlText(deep, "deep.yaml").value
    learners = "".join(f"  - {{learner: ann{row}, extra_time: 1.5, trace: true}}\n" for row in range(300))
    assert len(YamlText(f"support:\n{learners}", "class.yaml").value["support"]) == 300


def problems_of(content: str) -> tuple[Problem, ...]:
    with pytest.raises(ProblemsFoundError) as caught:
        case_from(content, "mine.yaml", profile_named)
    return caught.value.problems


def test_thousands_of_wrong_fields_are_counted_and_the_first_are_told() -> None:
    problems = problems_of("form: case/1\n" + "".join(f"k{row}: 1\n" for row in range(3000)))
    assert len(problems) == 61
    assert (problems[-1].line, said(problems[-1].found)) == (None, "wrong in 2948 more fields")
    assert all(problem.line for problem in problems[:-1])
