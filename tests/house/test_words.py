"""Sentences: every id that is used has a sentence, and none is left over."""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from functools import cache
from pathlib import Path

import numpy as np
import pytest

from tests.engines import ALL, solved
from tests.words.catalogues import forms_of, texts_of
from trainer.circuit.codes import Sensed
from trainer.circuit.elements import Location, Side
from trainer.circuit.fault import FaultKind
from trainer.instruments.reading import Slip
from trainer.reasoning.universe.hearing import Heard
from trainer.words import numbers, text
from trainer.words.languages import LANGUAGES

PACKAGE = Path(__file__).parents[2] / "trainer"


@cache
def nodes() -> tuple[ast.AST, ...]:
    """Return every piece of the program's code but that of `words`."""
    paths = [path for path in PACKAGE.rglob("*.py") if "words" not in path.relative_to(PACKAGE).parts]
    return tuple(node for path in paths for node in ast.walk(ast.parse(path.read_text("utf-8"))))


def used_ids() -> tuple[set[str], set[str]]:
    """Return ids written out, and beginnings of ids that are completed at run time."""
    whole, begun = set(), set()
    for node in nodes():
        if isinstance(node, ast.Constant) and isinstance(node.value, str):
            whole.add(node.value)
        if isinstance(node, ast.JoinedStr) and isinstance(node.values[0], ast.Constant):
            begun.add(str(node.values[0].value))
    return whole, begun


def told() -> Iterator[tuple[str, ast.Call]]:
    """Yield the ids that are written out where a sentence or an error is made, with the call."""
    for node in nodes():
        if not (isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.args):
            continue
        if node.func.id not in ASKS and not node.func.id.endswith("Error"):
            continue
        chosen = [node.args[0]]
        while chosen:
            one = chosen.pop()
            if isinstance(one, ast.IfExp):
                chosen += [one.body, one.orelse]
            elif isinstance(one, ast.Constant):
                said = (f"wrong.{one.value}", f"mend.{one.value}")
                yield from ((key, node) for key in ([str(one.value)] if node.func.id in ASKS else said))


ASKS = ("text", "Sentence", "has")
SENTENCES = forms_of("en")


def test_every_sentence_is_used_and_every_id_has_one() -> None:
    whole, begun = used_ids()
    prefixes = tuple(part for part in begun if part.endswith("."))
    problems = {"problem.line", "problem.no_line"}
    unused = {
        key for key in SENTENCES
        if key not in whole and not key.startswith(prefixes) and not key.startswith(("wrong.", "mend.", "percent.", "list.", "slot.cylinders", "report.word.")) and key not in problems
    }  # fmt: skip
    assert not unused
    assert {key for key, call in told() if key not in SENTENCES and ast.unparse(call.func) in ASKS} == set()


def test_a_report_uses_every_word_of_its_own_and_no_other() -> None:
    report = (PACKAGE / "records" / "papers" / "templates" / "report.html").read_text("utf-8")
    charts = (PACKAGE / "records" / "papers" / "charts.py").read_text("utf-8")
    used = set(re.findall(r"\bwords\.([a-z_]+)", report)) | set(re.findall(r'words\["([a-z_]+)"\]', charts))
    assert used == {key.removeprefix("report.word.") for key in SENTENCES if key.startswith("report.word.")}


def test_a_sentence_with_a_count_is_always_given_one() -> None:
    counted = {key for key, forms in SENTENCES.items() if len(forms) > 1}
    assert counted
    uncounted = {
        f"{key}: {ast.unparse(call)}" for key, call in told()
        if key in counted and not {None, "n"} & {keyword.arg for keyword in call.keywords}
    }  # fmt: skip
    assert uncounted == set()


def test_every_kind_place_side_slip_and_answer_has_its_words() -> None:
    for prefix, members in (("kind", FaultKind), ("location", Location), ("side", Side), ("slip", Slip), ("heard", Heard),
                            ("code", Sensed), ("rule", FaultKind)):  # fmt: skip
        for member in members:
            assert f"{prefix}.{member}" in SENTENCES


def test_each_error_says_what_is_wrong_and_how_to_mend_it() -> None:
    keys = {key.split(".", 1)[1] for key in SENTENCES if key.startswith("wrong.")}
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
    assert {f"mend.{key}" for key in keys} <= set(SENTENCES)


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
    said = {one: sentence.lower() for one, sentence in texts_of(language).items()}
    odd = [
        (one, phrase) for one, sentence in said.items() for phrase in NOT_OF_THE_TRADE[language] if phrase in sentence
    ]
    assert odd == []


@pytest.mark.parametrize("language", LANGUAGES)
def test_the_currents_that_the_glossary_names_are_those_of_the_shipped_engines(language: str) -> None:
    background, least, most = (float(number) for number in re.findall(r"\d+", texts_of(language)["meaning.background"]))
    for profile in ALL:
        test = solved(profile)
        for row, slot in enumerate(test.slots[1:], start=1):
            pulse, place = test.pulses_of(row)[-1]
            peaks_a = dict(zip(profile.cylinders, np.abs(pulse.coil_a[:, place]).max(axis=0), strict=True))
            assert least <= round(peaks_a.pop(slot.number)) <= most
            assert max(peaks_a.values()) <= background
