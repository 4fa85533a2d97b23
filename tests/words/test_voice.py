"""Sentences keep the rules of the house's voice, as far as a machine can hold them."""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from pathlib import Path

import pytest

from tests.words.catalogues import TEXTS, texts_of
from tests.words.reading_ease import reading_ease, sentences_of, syllables_in, with_values, words_of
from trainer.cases.single_case.shipped import case_named, case_names
from trainer.window.kit.nodes import Node, button, spot, tick
from trainer.words.languages import LANGUAGES

PACKAGE = Path(__file__).parents[2] / "trainer"
LEARNERS = (
    "course", "exercises", "faults", "general", "measuring", "reasoning", "sets", "station", "window",
)  # fmt: skip
"""The catalogues with sentences that a learner reads."""

MOST_WORDS, LEAST_EASE = 25, 60.0

COLUMNS = {"cases.head", "codes.line", "debrief.best_step", "debrief.left_line", "help", "hint.finding"}
"""What is laid out in columns with spaces."""

NOT_SAID = (
    # a native technician would put these in other words
    "stands",
    "anew",
    "by itself",
    "by themselves",
    "plainly",
    "it is so",
    "at its beginning",
    "(is|are|was|were|be) told(?! apart)",
    # these things have another name in the trainer: repair, armature, good injector
    "mend",
    "plates?",
    "mates?",
)
UNNATURAL = re.compile(rf"\b({'|'.join(NOT_SAID)})\b", re.IGNORECASE)

SENTENCES = (
    "caution.", "kind_of_step.", "lesson.again", "lesson.hear", "lesson.intro.", "lesson.look", "meaning.", "mend.",
    "refute.", "rule.", "setup.advice.", "setup.hum.", "setup.sides.", "slip.", "why.case.", "wrong.",
)  # fmt: skip
"""The beginnings of ids whose texts are sentences, whatever their length."""

QUOTED_LINES = re.compile(r"((For example|Por ejemplo|Zum Beispiel): |\{[a-z]+\} )[^.]*$|^\{[a-z]+\}$")
"""An example to type, which has no full stop that somebody might type too."""


def labels() -> Iterator[tuple[str, str]]:
    """Yield the ids of buttons and ticks, and of titles and heads, as the window's code writes them out, with where."""
    for path in (PACKAGE / "window").rglob("*.py"):
        for call in ast.walk(ast.parse(path.read_text("utf-8"))):
            if not isinstance(call, ast.Call) or not isinstance(call.func, ast.Name) or len(call.args) < 2:
                continue
            shown, look = call.args[1], call.args[1]
            if call.func.id == "words" and isinstance(look, ast.Constant) and look.value in ("title", "bold"):
                shown = call.args[0]
            elif call.func.id not in ("button", "tick"):
                continue
            for one in ast.walk(shown):
                if isinstance(one, ast.Constant) and one.value in TEXTS:
                    yield str(one.value), path.name


SHARED = {"side.none", "slot.all"}
"""Labels that are also parts of sentences; a button writes them with a capital."""


@pytest.mark.parametrize("language", LANGUAGES)
def test_titles_and_buttons_begin_with_a_capital(language: str) -> None:
    texts = texts_of(language)
    found = {key: where for key, where in labels() if key not in SHARED}
    assert len(found) > 100
    assert {key: (texts[key], where) for key, where in found.items() if texts[key][0].islower()} == {}


@pytest.mark.parametrize("language", sorted(LANGUAGES.keys() - {"de"}))
def test_titles_and_buttons_are_in_sentence_case(language: str) -> None:
    """No word after the first has a capital, but names, keys and what follows a full stop or a colon.

    German writes every noun with one.
    """
    named = {
        *(language.name for language in LANGUAGES.values()),
        "Ctrl", "DIR", "FOLDER", "Injector", "Ear", "Trainer", "G", "S", "I", "PIN", "USB", "T",
    }  # fmt: skip
    texts = texts_of(language)
    odd = {}
    for key, _where in labels():
        for sentence in re.split(r"(?<=[.?!:;])\s+", texts[key]):
            capitals = [word for word in sentence.split()[1:] if word.strip("(,.:?¿\"'")[:1].isupper()]
            capitals = [word for word in capitals if word.strip("(,.:?)") not in named]
            if capitals:
                odd[key] = texts[key]
    assert odd == {}


def a_label(make: str, text: str) -> Node:
    def act() -> None:
        raise AssertionError("nothing is pressed here")

    if make == "button":
        return button("b", text, act)
    return tick("t", text, chosen=False, act=act) if make == "tick" else spot("s", text, Node("rule").at, act)  # type: ignore[arg-type]


@pytest.mark.parametrize("make", ["button", "tick", "spot"])
def test_a_shared_name_gets_its_capital_where_it_is_a_label(make: str) -> None:
    assert a_label(make, "pass-through connector").text == "Pass-through connector"
    assert a_label(make, "éste").text == "Éste"


def test_a_file_keeps_its_own_name_on_a_button() -> None:
    assert button("b", "friday.yaml", None, verbatim=True).text == "friday.yaml"


@pytest.mark.parametrize("language", LANGUAGES)
def test_no_sentence_has_more_words_than_can_be_read_at_once(language: str) -> None:
    texts = texts_of(language)
    long = {
        key: sentence
        for key, text in texts.items()
        if key != "help"
        for sentence in sentences_of(text)
        if len(words_of(sentence)) > MOST_WORDS
    }
    assert long == {}


@pytest.mark.parametrize("language", LANGUAGES)
def test_no_text_has_double_spaces_but_columns(language: str) -> None:
    texts = texts_of(language)
    laid_out = COLUMNS | {key for key in texts if re.fullmatch(r"why\.(prior|line|rest|total)", key)}
    assert {key: text for key, text in texts.items() if "  " in text.strip() and key not in laid_out} == {}


@pytest.mark.parametrize("language", LANGUAGES)
def test_a_sentence_ends_with_a_full_stop_or_a_question_mark(language: str) -> None:
    texts = texts_of(language)
    several = re.compile(r"[a-zß-ü)'»“]\. [A-ZÀ-Ü¿«„'\"]")
    unended = {}
    for key, text in texts.items():
        if key == "help" or not (key.startswith(SENTENCES) or several.search(text)):
            continue
        if not text.rstrip().endswith((".", "?", "!", "…", ":", "}", ".)")) and not QUOTED_LINES.search(text):
            unended[key] = text
    unended = {key: text for key, text in unended.items() if "(yes/no)" not in text and "(sí/no)" not in text}
    assert unended == {}


def test_no_word_is_used_that_a_native_technician_would_not_say() -> None:
    assert {key: text for key, text in TEXTS.items() if UNNATURAL.search(with_values(text))} == {}


@pytest.mark.parametrize("domain", LEARNERS)
def test_what_a_learner_reads_is_plain_english(domain: str) -> None:
    texts = texts_of("en", domain)
    whole = [
        text for key, text in texts.items() if key != "help" and text.rstrip()[-1:] in ".?!" and len(words_of(text)) > 3
    ]
    assert len(whole) > 20
    assert reading_ease(whole) >= LEAST_EASE


@pytest.mark.parametrize("language", LANGUAGES)
@pytest.mark.parametrize("name", case_names())
def test_a_case_tells_its_story_in_short_whole_sentences(name: str, language: str) -> None:
    case = case_named(name)
    told_in = dict(case.translations).get(language) or case.in_words
    assert language == "en" or language in dict(case.translations)
    assert told_in.story.endswith((".", "?"))
    assert told_in.takeaway.endswith("?")
    for told in (told_in.title, told_in.story, told_in.takeaway):
        assert told.lstrip("¿")[:1].isupper() or told[:1].isdigit()
        assert "  " not in told
        assert all(len(words_of(sentence)) <= MOST_WORDS for sentence in sentences_of(told))


def test_the_stories_are_plain_english() -> None:
    assert reading_ease(case_named(name).story for name in case_names()) >= LEAST_EASE


SYLLABLES = {
    1: "the one coil please moved rules those ohm prove", 2: "engine measure table voltage boxes people quiet needed caution",
    3: "injector cylinder evidence together area idea radio resistance", 4: "mechanical isolated temperature",
}  # fmt: skip
"""As English dictionaries part them, from memory."""


@pytest.mark.parametrize("count", SYLLABLES)
def test_syllables_are_counted_as_a_dictionary_parts_them(count: int) -> None:
    assert {word: syllables_in(word) for word in SYLLABLES[count].split()} == dict.fromkeys(
        SYLLABLES[count].split(), count
    )


def test_reading_ease_is_the_published_formula() -> None:
    """Three words of one syllable: 206.835 − 1.015 · 3 − 84.6 (Flesch 1948). Long words are harder than short ones."""
    assert reading_ease(["The cat sat."]) == pytest.approx(119.19)
    assert reading_ease(["Identification necessitates considerable documentation."]) < 0.0
