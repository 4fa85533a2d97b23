"""Sentences: every id that is used has a sentence, and none is left over."""

from __future__ import annotations

import ast
import re
from pathlib import Path

import numpy as np
import pytest

from tests.engines import ALL, solved
from trainer.circuit.codes import Sensed
from trainer.circuit.elements import Location, Side
from trainer.circuit.fault import FaultKind
from trainer.instruments.reading import Slip
from trainer.reasoning.universe.hearing import Heard
from trainer.words import LANGUAGES, TEXTS, numbers, text

PACKAGE = Path(__file__).parents[2] / "trainer"


def used_ids() -> tuple[set[str], set[str]]:
    """Return ids written out, and beginnings of ids that are completed at run time."""
    whole, begun = set(), set()
    for path in PACKAGE.rglob("*.py"):
        if "words" in path.relative_to(PACKAGE).parts:
            continue
        for node in ast.walk(ast.parse(path.read_text("utf-8"))):
            if isinstance(node, ast.Constant) and isinstance(node.value, str):
                whole.add(node.value)
            if isinstance(node, ast.JoinedStr) and isinstance(node.values[0], ast.Constant):
                begun.add(str(node.values[0].value))
    return whole, begun


def told_ids() -> set[str]:
    """Return the ids that are written out where `text` is called."""
    ids = set()
    for path in PACKAGE.rglob("*.py"):
        for node in ast.walk(ast.parse(path.read_text("utf-8"))):
            if not (isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.func.id == "text"):
                continue
            chosen = [node.args[0]]
            while chosen:
                one = chosen.pop()
                if isinstance(one, ast.IfExp):
                    chosen += [one.body, one.orelse]
                elif isinstance(one, ast.Constant):
                    ids.add(str(one.value))
    return ids


def test_every_sentence_is_used_and_every_id_has_one() -> None:
    whole, begun = used_ids()
    prefixes = tuple(part for part in begun if part.endswith("."))
    problems = {"problem.line", "problem.no_line"}
    unused = {
        key for key in TEXTS
        if key not in whole and not key.startswith(prefixes) and not key.startswith(("wrong.", "mend.", "percent.", "list.", "slot.cylinders_")) and key not in problems
    }  # fmt: skip
    assert not unused
    assert {key for key in told_ids() if key not in TEXTS} == set()


def test_every_kind_place_side_slip_and_answer_has_its_words() -> None:
    for prefix, members in (("kind", FaultKind), ("location", Location), ("side", Side), ("slip", Slip), ("heard", Heard),
                            ("code", Sensed), ("rule", FaultKind)):  # fmt: skip
        for member in members:
            assert f"{prefix}.{member}" in TEXTS


def test_each_error_says_what_is_wrong_and_how_to_mend_it() -> None:
    keys = {key.split(".", 1)[1] for key in TEXTS if key.startswith("wrong.")}
    raised = set()
    for path in PACKAGE.rglob("*.py"):
        source = path.read_text("utf-8")
        raised |= set(
            re.findall(
                r"(?:WrongCallError|UnsolvableError|DamagedError|MissingHereError)\(\s*[\"']([a-z_]+)[\"']", source
            )
        )
    assert raised <= keys
    # what is wrong with a store is chosen from tables
    store = PACKAGE / "records" / "store"
    chosen = "".join((store / f"{name}.py").read_text("utf-8") for name in ("database_errors", "store_url"))
    raised |= set(re.findall(r'"((?:store|shared)_[a-z0-9_]+)"', chosen))
    assert keys - raised == set()
    assert {f"mend.{key}" for key in keys} <= set(TEXTS)


def test_numbers_as_a_person_writes_them() -> None:
    assert numbers([3]) == "3"
    assert numbers([3, 1]) == "1 and 3"
    assert numbers([4, 2, 3]) == "2, 3 and 4"
    assert text("slot.one", number=3) == "slot 3"


NOT_OF_THE_TRADE = {
    "en": (
        "allowance of current", "one allowance", "turns missing", "nothing to look for", "eight bad injectors", "now halve the circuit",
        "carried current as it should", "no current of its own", "leave rail pressure", " rod ",
    ),
    "es": ("una sola cuota", "faltan espiras", "nada que buscar", "ocho inyectores malos", "llevó corriente como debe"),
}  # fmt: skip
"""Phrases that the trade does not use: common practice, no published source."""


@pytest.mark.parametrize("language", NOT_OF_THE_TRADE)
def test_sentences_use_the_words_of_the_trade(language: str) -> None:
    said = {one: sentence.lower() for one, sentence in LANGUAGES[language][0].items()}
    odd = [
        (one, phrase) for one, sentence in said.items() for phrase in NOT_OF_THE_TRADE[language] if phrase in sentence
    ]
    assert odd == []


@pytest.mark.parametrize("language", LANGUAGES)
def test_the_currents_that_the_glossary_names_are_those_of_the_shipped_engines(language: str) -> None:
    background, least, most = (
        float(number) for number in re.findall(r"\d+", LANGUAGES[language][0]["meaning.background"])
    )
    for profile in ALL:
        test = solved(profile)
        for row, slot in enumerate(test.slots[1:], start=1):
            pulse, place = test.pulses_of(row)[-1]
            peaks_a = dict(zip(profile.cylinders, np.abs(pulse.coil_a[:, place]).max(axis=0), strict=True))
            assert least <= round(peaks_a.pop(slot.number)) <= most
            assert max(peaks_a.values()) <= background
