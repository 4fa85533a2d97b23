"""The shipped engines and cases cover what they must, and each reads back as it was written."""

from collections import Counter, defaultdict
from dataclasses import replace
from pathlib import Path

import pytest

from tests.engines import ALL
from tests.thinned import thinned
from tests.universes import UNIVERSES
from trainer.cases.profiles.profile_file import profile_from
from trainer.cases.profiles.profile_title import title_of
from trainer.cases.single_case.case import CaseWords
from trainer.cases.single_case.shipped import case_named, case_names, profile_named, profile_names, scenarios_folder
from trainer.circuit.elements import Location
from trainer.circuit.fault import FaultKind
from trainer.circuit.fault_space import single_faults
from trainer.commands.case_commands.check_files import check_paths
from trainer.practice.reports.attempt_lines import engine_lines
from trainer.sound.room import in_hall
from trainer.words import LANGUAGES, speak, text

CASES = [case_named(name) for name in case_names()]


FOLDER = scenarios_folder()
FILES = sorted(path for path in FOLDER.rglob("*.yaml") if path.parent.name != "sets")


def test_a_case_can_put_its_engine_into_a_hall_and_says_so() -> None:
    hall = case_named("echo_in_the_wash_hall").profile
    bay = profile_named("field_six")
    assert hall == in_hall(bay)
    assert hall.room.decay_s > 2.0 * bay.room.decay_s
    assert hall.digest != bay.digest  # it sounds different, so nothing solved in the bay may stand for it
    assert set(engine_lines(hall)) - set(engine_lines(bay)) == {"  " + text("engine.hall")}


@pytest.mark.long
def test_the_whole_folder_passes_check() -> None:
    result = check_paths([FOLDER], UNIVERSES)
    assert result.exit_code == 0, result.lines
    sets = list((FOLDER / "sets").glob("*.yaml"))
    assert len(sets) >= 2
    assert len(result.document["files"]) == len(case_names()) + len(profile_names()) + len(sets)


@pytest.mark.parametrize("path", thinned(FILES, 5), ids=lambda path: path.stem)
def test_a_shipped_file_passes_check(path: Path) -> None:
    result = check_paths([path], UNIVERSES)
    assert result.exit_code == 0, result.lines


def test_there_are_at_least_seventy_cases_and_no_two_alike() -> None:
    keys = Counter(
        (case.profile.name, tuple((f.kind, f.location, f.cylinders) for f in case.faults))
        for case in CASES
        if case.faults
    )
    assert len(CASES) >= 70
    assert max(keys.values()) == 1
    assert len({case.story for case in CASES}) == len(CASES)


def test_each_kind_is_in_two_engines_and_every_place_is_covered() -> None:
    engines = defaultdict(set)
    for case in CASES:
        for fault in case.faults:
            engines[fault.kind].add(case.profile.name)
    assert {kind for kind in FaultKind if len(engines[kind]) < 2} == set(), "write cases for these, on two engines"
    assert {fault.location for case in CASES for fault in case.faults} == set(Location)


def test_connector_faults_bank_faults_passing_circuits_old_codes_and_two_faults_are_there() -> None:
    groups = [fault.cylinders for case in CASES for fault in case.faults if len(fault.cylinders) > 1]
    assert (5, 7) in groups  # a whole connector
    assert (1, 2, 3, 4) in groups  # a whole bank
    assert sum(not case.faults for case in CASES) >= 3
    assert any(
        case.stored and case.faults and case.stored[0].cylinder not in case.faults[0].cylinders for case in CASES
    )
    assert sum(len(case.faults) == 2 for case in CASES) >= 2


def test_the_engines_number_and_connect_in_different_ways() -> None:
    assert {profile.wiring.live for profile in ALL} == {"all", "commanded"}
    assert {len(connector.injectors) for profile in ALL for connector in profile.wiring.connectors.values()} >= {
        1,
        2,
        4,
    }
    assert {connector.feed_pins for profile in ALL for connector in profile.wiring.connectors.values()} == {
        "shared",
        "single",
    }
    assert sorted(len(profile.cylinders) for profile in ALL) == [6, 6, 8, 8]


# even-fire orders are permutations; 720 degrees of crank over the cylinders (arithmetic)
@pytest.mark.parametrize("profile", ALL, ids=lambda p: p.name)
def test_a_firing_order_names_every_cylinder_once(profile) -> None:
    assert sorted(profile.firing_order) == list(profile.cylinders)


@pytest.mark.parametrize("profile", ALL, ids=lambda p: p.name)
def test_every_kind_of_fault_can_be_in_every_engine_that_has_its_place(profile) -> None:
    kinds = {fault.kind for fault in single_faults(profile)}
    pairs = any(len(connector.injectors) > 1 for connector in profile.wiring.connectors.values())
    heaters = any(connector.heater_pin for connector in profile.wiring.connectors.values())
    missing = set(FaultKind) - kinds
    assert missing <= ({FaultKind.RETURN_TO_HEATER} if not heaters else set())
    assert pairs or FaultKind.RETURN_TO_RETURN in kinds


def test_a_case_is_told_in_the_language_that_is_spoken_and_as_written_where_it_has_no_other() -> None:
    case = case_named("faint_hum_on_three")
    assert case.in_words == CaseWords(case.title, case.story, case.takeaway)
    speak("es")
    try:
        assert case.in_words.title == "Un zumbido tenue en el turno 3"
        assert case.in_words.story.startswith("Furgoneta de reparto")
        assert replace(case, translations=()).in_words.title == case.title
    finally:
        speak("en")


@pytest.mark.parametrize("language", LANGUAGES)
@pytest.mark.parametrize("profile", ALL, ids=lambda p: p.name)
def test_an_engine_is_called_by_its_title_in_the_language_that_is_spoken(profile, language: str) -> None:
    speak(language)
    try:
        called = title_of(profile)
        assert (called == profile.title) == (language == "en")
        assert engine_lines(profile)[0].startswith(called)
        assert title_of(replace(profile, translations=())) == profile.title
    finally:
        speak("en")


def test_a_title_in_another_language_leaves_an_engine_the_same() -> None:
    """Codes, solved engines and signed sets hold an engine's digest."""
    written = (FOLDER / "profiles" / "north_v8.yaml").read_text("utf-8")
    head, rest = written.split("translations:\n")
    only_english = profile_from(head + rest[rest.index("banks:") :], "north_v8.yaml")
    assert only_english.translations == ()
    assert only_english.digest == profile_named("north_v8").digest
