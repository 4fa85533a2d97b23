"""Bad input: one message a problem, with file, line, field, what was found, what is allowed and the mend."""

from __future__ import annotations

from pathlib import Path

import pytest
import yaml
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from trainer.cases.files.yaml_text import YamlText
from trainer.cases.profiles.profile_file import profile_from
from trainer.cases.single_case.case_file import case_from
from trainer.cases.single_case.shipped import profile_named, scenarios_folder
from trainer.errors import ProblemsFoundError
from trainer.words import problem_line, said, speaking
from trainer.words.visible import unseen_in

CASE = (scenarios_folder() / "cases" / "faint_hum_on_three.yaml").read_text("utf-8")
PROFILE = (scenarios_folder() / "profiles" / "north_v8.yaml").read_text("utf-8")


def problems_of_case(text: str) -> list[str]:
    with pytest.raises(ProblemsFoundError) as caught:
        case_from(text, "mine.yaml", profile_named)
    return [problem_line(problem) for problem in caught.value.problems]


def problems_of_profile(text: str) -> list[str]:
    with pytest.raises(ProblemsFoundError) as caught:
        profile_from(text, "mine.yaml")
    return [problem_line(problem) for problem in caught.value.problems]


def test_a_misspelt_kind_is_told_whole() -> None:
    (line,) = problems_of_case(CASE.replace("kind: open", "kind: opne", 1))
    assert line.startswith("mine.yaml, line 8: faults.0.kind is 'opne'. Allowed: one of open, added_resistance,")
    assert line.endswith(".")
    assert "To fix it: use one of open" in line


def test_an_unknown_field_names_the_nearest() -> None:
    (line,) = problems_of_case(CASE.replace("temperature_c:", "temprature_c:"))
    assert "line 12: temprature_c is an unknown field" in line
    assert "To fix it: write temperature_c" in line


CASE_SLIPS = [
    ("cylinders: [3]", "cylinders: [9]", "faults.0.cylinders is [9]. Allowed: 1 to 8."),
    ("cylinders: [3]", "cylinders: [1, 3]", "faults.0.cylinders is [1, 3]. Allowed: 1; 2; 3;"),
    ("cylinders: [3]", "cylinders: three", "faults.0.cylinders is 'three'"),
    ("side: return", "side: feed", "faults.0 is open at pass_through_connector"),
    ("location: pass_through_connector", "location: armature", "faults.0.location is armature"),
    ("location: pass_through_connector", "location: solenoid_coil", "faults.0.side is return. Allowed: no side"),
    ("profile: north_v8", "profile: south_v8", "profile is 'south_v8'. Allowed: field_six, harbour_v8"),
    ("form: case/1", "form: case/9", "form is 'case/9'"),
    ("seed: ", "seed: -", "seed is -"),
    ("temperature_c: 20.0", "temperature_c: hot", "temperature_c is 'hot'"),
    ("temperature_c: 20.0", "temperature_c: .nan", "temperature_c is nan"),
    ("level_dba: 32.0", "level_dba: 90", "bed.level_dba is 90"),
    ("evidence: all", "evidence: [codes]", "evidence is no actuation_test"),
    ("evidence: all", "evidence: [actuation_test, tarot]", "evidence.1 is 'tarot'"),
    ("difficulty: 1", "difficulty: 1\nstored_codes: [{cylinder: 11, sensed: open}]", "stored_codes.0.cylinder is 11"),
    ("difficulty: 1", "difficulty: 1\ndifficulty: 2", "line 18: difficulty is given twice. Allowed: each field once"),
    ("title: ", "titel: ", "title is missing"),
    ("translations:\n  es:", "translations:\n  xx:", "translations.xx is an unknown field. Allowed: en, es"),
    ("  es:\n    title", "  es:\n    titel", "translations.es.title is missing"),
    (
        "kind: open\n    location: pass_through_connector\n    side: return",
        "kind: worn_armature\n    location: armature\n    severity: 0",
        "severity is 0",
    ),
]


@pytest.mark.parametrize(("right", "wrong", "told"), CASE_SLIPS, ids=[slip[1][:40] for slip in CASE_SLIPS])
def test_each_slip_in_a_case_is_named(right: str, wrong: str, told: str) -> None:
    lines = problems_of_case(CASE.replace(right, wrong, 1))
    assert any(told in line for line in lines), lines
    assert all("Allowed: " in line and "To fix it: " in line for line in lines)


VALUES_OF_ANOTHER_KIND = [
    ("temperature_c: 20.0", "temperature_c: 900", "temperature_c", "at most 120.0", "como mucho 120.0"),
    ("temperature_c: 20.0", "temperature_c: -90", "temperature_c", "at least -30.0", "al menos -30.0"),
    ("temperature_c: 20.0", "temperature_c: .inf", "temperature_c", "a finite number", "un número finito"),
    ("temperature_c: 20.0", "temperature_c: hot", "temperature_c", "a number", "un número"),
    ("seed: ", "seed: 1.5 # ", "seed", "a whole number", "un número entero"),
    ("title: ", "title: 7 # ", "title", "a text, in quotes where it looks like a number", "un texto, entre comillas si parece un número"),
    ("cylinders: [3]", "cylinders: []", "faults.0.cylinders", "at least 1 in the list", "al menos 1 en la lista"),
    ("evidence: all", f"evidence: [{'codes, ' * 30}]", "evidence", "at most 28 in the list", "como mucho 28 en la lista"),
    ("evidence: all", "evidence: [1]", "evidence.0", "a text, in quotes where it looks like a number", "un texto, entre comillas si parece un número"),
    ("evidence: all", "evidence: some", "evidence", "'all'", "'all'"),
]  # fmt: skip


@pytest.mark.parametrize(
    ("right", "wrong", "field", "english", "spanish"),
    VALUES_OF_ANOTHER_KIND,
    ids=[slip[1][:30] for slip in VALUES_OF_ANOTHER_KIND],
)
def test_what_a_value_may_be_is_said_in_the_language_that_is_spoken(
    right: str, wrong: str, field: str, english: str, spanish: str
) -> None:
    with pytest.raises(ProblemsFoundError) as caught:
        case_from(CASE.replace(right, wrong, 1), "mine.yaml", profile_named)
    (problem,) = caught.value.problems
    for language, allowed in (("en", english), ("es", spanish)):
        with speaking(language):
            assert (said(problem.field), said(problem.allowed)) == (field, allowed)


PROFILE_SLIPS = [
    ("right: [1, 3, 5, 7]", "right: [1, 3, 5, 5]", "banks is"),
    ("firing_order: [1, 8,", "firing_order: [1, 1,", "firing_order is"),
    ("live: all", "live: some", "wiring.live is 'some'"),
    ("mass_kg: 0.015", "mass_kg: -1", "solenoid.mass_kg is -1"),
    ("pulse_s: 0.003", "pulse_s: 0.015", "test.pulse_s is"),
    ("drive_module: 0.08", "drive_module: 0.49", "priors is a sum of 1.4"),
    ("  codes: 6\n", "", "minutes is missing or unknown: codes"),
    ("codes: 6", "codes: -6", "minutes.codes is -6"),
    ("injectors: [1, 3]", "injectors: [1, 2]", "wiring.connectors"),
    ("contact_ohm: 0.008", "contact_ohm: .inf", "wiring.contact_ohm"),
    ("limit_a: 8.0", "limit_a: 1.5", "module.open_below_a is"),
    ("stop_n_per_m: 15000000.0", "stop_n_per_m: 1e8", "solenoid.stop_n_per_m is a swing of 0.85 radians a step"),
    ("    right_front:", "    live:", "wiring.connectors.live is live"),
    ("    right_front:", "    plug:", "wiring.connectors.plug is plug"),
    ("  right: [1, 3, 5, 7]", "  front: [1, 3, 5, 7]", "banks.front is front"),
    ("translations:\n  es:", "translations:\n  xx:", "translations.xx is an unknown field. Allowed: en, es"),
    ("es: {title:", "es: {titel:", "translations.es.title is missing"),
    ("es: {title: ", "es: {title: V8}  # ", "translations.es.title is"),
]


@pytest.mark.parametrize(("right", "wrong", "told"), PROFILE_SLIPS, ids=[slip[1][:40] for slip in PROFILE_SLIPS])
def test_each_slip_in_a_profile_is_named(right: str, wrong: str, told: str) -> None:
    lines = problems_of_profile(PROFILE.replace(right, wrong, 1))
    assert any(told in line for line in lines), lines


FOUR_ROWS = "    right: [1, 3]\n    right_rear: [5, 7]\n    left: [2, 4]\n    left_rear: [6, 8]\n"
TWO_OUTPUTS = "    right: [1, 3, 5, 7]\n    left: [2, 4, 6, 8]\n"


def test_more_feed_groups_than_the_code_system_has_codes_for_are_refused() -> None:
    """J1939 has numbers for three groups here (from memory), J2012 for four."""
    four = PROFILE.replace(TWO_OUTPUTS, FOUR_ROWS, 1)
    assert four != PROFILE
    assert len(profile_from(four, "mine.yaml").wiring.outputs) == 4
    (line,) = problems_of_profile(four.replace("codes: p02xx", "codes: spn_fmi", 1))
    assert "wiring.outputs is 4. Allowed: at most 3." in line
    assert "To fix it: feed more injectors from each output" in line


def test_the_module_cannot_sense_a_short_after_its_pulse() -> None:
    slow = PROFILE.replace("short_sense_s: 2e-05", "short_sense_s: 0.0008").replace("pulse_s: 0.003", "pulse_s: 0.0006")
    (line,) = problems_of_profile(slow)
    assert "module.short_sense_s is 0.0008. Allowed: shorter than the pulse" in line


def test_all_problems_come_in_one_go() -> None:
    broken = (
        CASE.replace("seed: ", "seed: -")
        .replace("temperature_c: 20.0", "temperature_c: hot")
        .replace("kind: open", "kind: x")
    )
    assert len(problems_of_case(broken)) == 3


HOSTILE = {
    "python object": "form: !!python/object/apply:os.system ['true']",
    "billion laughs": "a: &a [x, x]\nb: &b [*a, *a]\nc: [*b, *b]",
    "deep": "form: " + "[" * 400 + "]" * 400,
    "huge": "form: " + "x" * 300_000,
    "not a mapping": "- 1\n- 2",
    "empty": "",
    "a list as key": "? [1, 2]\n: 3",
    "tab": "form:\n\t- x",
    "two documents": "form: a\n---\nform: b",
    "a huge number": "form: case/1\nseed: " + "9" * 5000,
}


@pytest.mark.parametrize("text", HOSTILE.values(), ids=HOSTILE.keys())
def test_hostile_yaml_is_refused_with_a_message(text: str) -> None:
    assert problems_of_case(text)
    assert problems_of_profile(text)


RAW, WRITTEN = "\u202e", "\\u202e"
UNSEEN = [
    ("title: ", f"title: {RAW}", "line 3: title is '\\u202e", "\\u202e"),
    ('title: "', f'title: "{WRITTEN}', "line 3: title is '\\u202e", "\\u202e"),
    ('title: "', 'title: "\\e[2J', "line 3: title is '\\x1b[2J", "\\x1b"),
    ('title: "', 'title: "\\x9b2J', "line 3: title is '\\x9b2J", "\\x9b"),
    ('title: "', 'title: "\\t', "line 3: title is '\\tA", "\\t"),
    ('title: "', 'title: "\\0', "line 3: title is '\\x00", "\\x00"),
    ('title: "', 'title: "\\ud800', "line 3: title is '\\ud800", "\\ud800"),
    ('title: "', 'title: "\\u200b', "line 3: title is '\\u200b", "\\u200b"),
    ('title: "', 'title: "\u2028', "line 3: title is '\\u2028", "\\u2028"),
    ("title: ", "title: \x1b[2J", "line 3: the file is '", "\\x1b"),
    ("cylinders: [3]", '"x\\ny: fine": 1\n    cylinders: [3]', "faults.0.x\\ny: fine is 'x\\ny: fine'", "\\n"),
    ("cylinders: [3]", "cylinders: [3]  # \u2066 turned", "line 11: the file is '", "\\u2066"),
    ("cylinders: [3]", "cylinders: [3]\r    # an old line's end", "the file is '", "\\r"),
]  # fmt: skip


@pytest.mark.parametrize(("right", "wrong", "told", "character"), UNSEEN)
def test_a_character_that_is_not_seen_is_refused_with_its_field_and_shown(
    right: str, wrong: str, told: str, character: str
) -> None:
    (line,) = problems_of_case(CASE.replace(right, wrong, 1))
    assert told in line
    assert f"with the invisible character {character}. Allowed: characters that you can see. To fix it: take" in line
    assert unseen_in(line) is None


@pytest.mark.parametrize("value", ['"Two\\nlines"', "|\n  Two\n  lines"])
def test_a_title_is_on_one_line(value: str) -> None:
    title = next(line for line in CASE.splitlines() if line.startswith("title: "))
    (line,) = problems_of_case(CASE.replace(title, f"title: {value}"))
    assert "title is 'Two\\nlines" in line
    assert "Allowed: text on one line." in line


def test_a_story_may_have_paragraphs_and_a_file_a_byte_order_mark_and_windows_line_ends(tmp_path: Path) -> None:
    from trainer.cases.single_case.case_file import read_case

    start = CASE.index("story: ")
    paragraphs = "story: |\n  It shakes when cold.\n\n  Since Monday.\n"
    content = CASE[:start] + paragraphs + CASE[CASE.index("profile: ") :]
    path = tmp_path / "mine.yaml"
    path.write_bytes(b"\xef\xbb\xbf" + content.replace("\n", "\r\n").encode())
    assert read_case(path, profile_named).story == "It shakes when cold.\n\nSince Monday.\n"


VALUES = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats() | st.text(max_size=12) | st.dates(),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.text(max_size=6), inner, max_size=3),
    max_leaves=5,
)


def _leaves(value: object, path: tuple = ()) -> list[tuple]:
    if isinstance(value, dict):
        return [path] + [leaf for key, inner in value.items() for leaf in _leaves(inner, (*path, key))]
    if isinstance(value, list):
        return [path] + [leaf for key, inner in enumerate(value) for leaf in _leaves(inner, (*path, key))]
    return [path]


def _with(value: object, path: tuple, new: object) -> object:
    if not path:
        return new
    copy = dict(value) if isinstance(value, dict) else list(value)
    copy[path[0]] = _with(copy[path[0]], path[1:], new)
    return copy


@settings(max_examples=150, deadline=None, suppress_health_check=list(HealthCheck))
@given(st.data())
def test_no_value_in_any_field_of_a_case_makes_a_traceback(data: st.DataObject) -> None:
    plain = yaml.safe_load(CASE)
    path = data.draw(st.sampled_from(_leaves(plain)))
    text = yaml.safe_dump(_with(plain, path, data.draw(VALUES)))
    try:
        case_from(text, "mine.yaml", profile_named)
    except ProblemsFoundError as error:
        assert all(problem_line(problem) for problem in error.problems)  # noqa: PT017  # any other error fails


@settings(max_examples=150, deadline=None, suppress_health_check=list(HealthCheck))
@given(st.data())
def test_no_value_in_any_field_of_a_profile_makes_a_traceback(data: st.DataObject) -> None:
    plain = YamlText(PROFILE, "north").value
    path = data.draw(st.sampled_from(_leaves(plain)))
    text = yaml.safe_dump(_with(plain, path, data.draw(VALUES)))
    try:
        profile_from(text, "mine.yaml")
    except ProblemsFoundError as error:
        assert all(problem_line(problem) for problem in error.problems)  # noqa: PT017  # any other error fails


@given(st.text(max_size=300))
def test_no_text_at_all_makes_a_traceback(text: str) -> None:
    with pytest.raises(ProblemsFoundError):
        case_from(text, "mine.yaml", profile_named)


def test_a_file_that_is_not_there_or_not_text_is_told(tmp_path: Path) -> None:
    from trainer.cases.single_case.case_file import read_case

    binary = tmp_path / "x.yaml"
    binary.write_bytes(b"\xff\xfe\x00")
    for path in (tmp_path / "none.yaml", binary, tmp_path):
        with pytest.raises(ProblemsFoundError):
            read_case(path, profile_named)


def test_an_engine_that_someone_else_writes_works_without_any_code(tmp_path: Path) -> None:
    # an inline four with a connector for three and one, written as a file
    plain = YamlText(PROFILE, "north").value
    plain |= {"name": "my_four", "title": "My four", "banks": {"row": [1, 2, 3, 4]}, "firing_order": [1, 3, 4, 2]}
    plain["wiring"] |= {
        "outputs": {"both": [1, 2, 3, 4]},
        "connectors": {
            "front": {"injectors": [1, 2, 3], "feed_pins": "shared", "engine_length_m": 0.5, "heater_pin": False},
            "rear": {"injectors": [4], "feed_pins": "single", "engine_length_m": 0.7, "heater_pin": True},
        },
        "under_cover_length_m": {1: 0.2, 2: 0.2, 3: 0.2, 4: 0.2},
    }
    profile = profile_from(yaml.safe_dump(plain), "my_four.yaml")
    from tests.engines import fault_of, solved
    from trainer.circuit.codes import codes_of
    from trainer.circuit.fault import FaultKind
    from trainer.circuit.fault_space import single_faults

    assert len(single_faults(profile)) > 100
    test = solved(profile, fault_of(profile, FaultKind.OPEN, 2))
    assert codes_of(test)
    assert [slot.number for slot in test.slots] == [0, 1, 2, 3, 4]


def test_an_engines_file_from_before_a_place_was_known_gives_it_a_share_and_the_others_give_way() -> None:
    before = PROFILE.replace("  module_power: 0.03\n", "").replace("circuit_passes: 0.12", "circuit_passes: 0.15")
    priors = profile_from(before, "before.yaml").priors
    assert priors["module_power"] == pytest.approx(0.03)
    assert priors["circuit_passes"] == pytest.approx(0.97 * 0.15)
    assert sum(priors.values()) == pytest.approx(1.0)
