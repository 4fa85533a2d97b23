"""Every language is whole: each sentence, its values, its plural forms, where it is shown; decimals in its own way."""

from __future__ import annotations

import os
import re
import shutil
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path
from string import Formatter
from typing import Any

import pytest
from babel import Locale
from babel.messages.catalog import Catalog

from tests.words.catalogues import DOMAINS, forms, forms_of, messages
from tests.words.renew_catalogues import english_in, english_of, renewed
from trainer import words
from trainer.errors import ExitCode, Problem, ProblemsFoundError, Sentence, WrongCallError
from trainer.words import catalogue
from trainer.words.build_catalogues import FOLDER, id_of, read
from trainer.words.languages import FIRST, LANGUAGES, CatalogueMissingError

PACKAGE = Path(words.__file__).parents[1]
TRANSLATIONS = [language for language in LANGUAGES if language != FIRST]


@pytest.fixture
def in_spanish() -> Iterator[None]:
    with words.speaking("es"):
        yield


def values_in(sentence: str) -> set[tuple[str, str]]:
    return {(name, spec or "") for _text, name, spec, _conversion in Formatter().parse(sentence) if name}


def test_each_language_has_a_folder_and_each_folder_is_a_language() -> None:
    assert {path.name for path in FOLDER.iterdir() if path.is_dir()} == LANGUAGES.keys()


@pytest.mark.parametrize("language", LANGUAGES)
def test_a_language_has_the_catalogues_of_english_and_no_id_twice(language: str) -> None:
    assert {path.stem for path in (FOLDER / language).glob("*.po")} == set(DOMAINS)
    written = [
        found
        for domain in DOMAINS
        for found in re.findall(r'^msgid "(.+)"$', (FOLDER / language / f"{domain}.po").read_text("utf-8"), re.M)
    ]
    assert len(written) == len(set(written)) == len(forms_of(language)) > 2000


@pytest.mark.parametrize("language", TRANSLATIONS)
@pytest.mark.parametrize("domain", DOMAINS)
def test_a_catalogue_has_the_ids_of_the_english_one_in_its_order(language: str, domain: str) -> None:
    theirs, ours = (messages(FOLDER / one / f"{domain}.po") for one in (language, FIRST))
    assert [id_of(message) for message in theirs] == [id_of(message) for message in ours]
    assert [message.pluralizable for message in theirs] == [message.pluralizable for message in ours]


@pytest.mark.parametrize("language", TRANSLATIONS)
@pytest.mark.parametrize("domain", DOMAINS)
def test_a_translation_is_one_of_the_present_english_sentence(language: str, domain: str) -> None:
    """Otherwise: python -m tests.words.renew_catalogues, then look at what it marks as fuzzy."""
    theirs, ours = (messages(FOLDER / one / f"{domain}.po") for one in (language, FIRST))
    stale = [
        id_of(translation)
        for translation, english in zip(theirs, ours, strict=True)
        if english_in(translation) != english_of(english) or translation.auto_comments[0] not in english.auto_comments
    ]
    assert stale == []


def test_a_changed_english_sentence_marks_its_translation_and_no_other() -> None:
    english, spanish = (read(FOLDER / language / "general.po") for language in (FIRST, "es"))
    english["card.head"].string = "Another card"
    after = renewed(english, spanish)
    assert [id_of(message) for message in after if message.id and message.fuzzy] == ["card.head"]
    assert english_in(after["card.head"]) == "Another card"
    assert after["card.head"].string == spanish["card.head"].string


def test_a_new_language_is_written_whole_and_every_sentence_is_marked() -> None:
    english = read(FOLDER / FIRST / "general.po")
    after = renewed(english, Catalog("pl", fuzzy=False))
    assert [message.id for message in after if message.id] == [message.id for message in english if message.id]
    assert all(message.fuzzy for message in after if message.id)
    assert len(after["check.files"].string) == 3  # as the Unicode tables of Babel have it for Polish


@pytest.mark.parametrize("language", LANGUAGES)
def test_a_language_has_all_its_plural_forms(language: str) -> None:
    """As many as its catalogues' heads say, and at least as many as a table from outside says for whole numbers."""
    count = read(FOLDER / language / "general.po").num_plurals
    rules = Locale(language).plural_form
    assert count == len({rules(number) for number in range(1000)})
    several = [
        message
        for domain in DOMAINS
        for message in messages(FOLDER / language / f"{domain}.po")
        if message.pluralizable
    ]
    assert len(several) > 60
    assert [id_of(message) for message in several if len(forms(message)) != count or not all(forms(message))] == []


@pytest.mark.parametrize("language", LANGUAGES)
def test_a_sentence_has_the_same_values_in_every_language_and_form(language: str) -> None:
    """A form for one may leave out the number itself: `through the other one`."""
    ours, count = forms_of(FIRST), {("n", "")}
    differing = {
        key: (said, sentence)
        for key, sentences in forms_of(language).items()
        for said in [ours[key][-1]]
        for number, sentence in enumerate(sentences)
        if values_in(sentence) != values_in(said) and (number or values_in(sentence) != values_in(said) - count)
    }
    assert differing == {}


def test_every_sentence_says_where_it_is_shown() -> None:
    bare = [
        id_of(message)
        for domain in DOMAINS
        for message in messages(FOLDER / FIRST / f"{domain}.po")
        if not message.auto_comments
    ]
    assert bare == []


def test_a_translator_reads_the_english_sentence_beside_each_id() -> None:
    (message,) = (one for one in messages(FOLDER / "es" / "general.po") if one.id == "card.head")
    assert english_in(message) == "Job card"


@pytest.mark.usefixtures("in_spanish")
def test_spanish_writes_decimals_with_a_comma_and_leaves_codes_alone() -> None:
    assert words.percent(0.256) == "25,6 %"
    assert words.text("codes.line", code="P0203", meaning="x.y").startswith("P0203  x.y")
    assert words.numbers([1, 3]) == "1 y 3"


@pytest.mark.parametrize("language", LANGUAGES)
def test_decimals_are_written_as_a_table_from_outside_says(language: str) -> None:
    assert LANGUAGES[language].decimal == Locale(language).number_symbols["latn"]["decimal"]


@pytest.mark.parametrize(
    ("language", "one", "several"),
    [("en", "1 file read.", "2 files read."), ("es", "1 archivo leído.", "2 archivos leídos.")],
)
def test_a_count_chooses_the_form(language: str, one: str, several: str) -> None:
    with words.speaking(language):
        assert [words.text("check.files", n=number) for number in (1, 2)] == [one, several]
        assert words.text("check.files", n=0) == several.replace("2", "0")


def test_a_language_that_is_not_there_is_refused_and_nothing_changes() -> None:
    with pytest.raises(KeyError):
        words.speak("xx")
    assert words.spoken() == "en"


def test_an_unknown_id_is_refused_and_never_shown() -> None:
    assert not words.has("no.such_id")
    for values in ({}, {"n": 2}):
        with pytest.raises(KeyError):
            words.text("no.such_id", **values)


def test_an_error_is_read_in_the_language_spoken_where_it_is_shown() -> None:
    error = WrongCallError("no_place", place="x", places=Sentence("list.and", first="a", last="b"))
    assert words.message_of(error) == "There is no place 'x'. Places: a and b."
    assert words.message_of(error, "es") == "No existe el lugar 'x'. Lugares: a y b."
    assert words.spoken() == "en"


def test_a_problem_is_read_in_the_language_spoken_where_it_is_shown() -> None:
    problem = Problem("a.yaml", 3, "seed", "-1", Sentence("file.at_least", count="0"), Sentence("file.lower_it"))
    assert words.problem_line(problem) == "a.yaml, line 3: seed is -1. Allowed: at least 0. To fix it: lower it."
    with words.speaking("es"):
        spanish = words.message_of(ProblemsFoundError([problem]))
    assert spanish == words.problem_line(problem, "es")
    assert "al menos 0" in spanish


def test_without_compiled_sentences_the_program_says_what_to_do(tmp_path: Path) -> None:
    copy = tmp_path / "trainer"
    shutil.copytree(PACKAGE, copy, ignore=shutil.ignore_patterns("*.mo", "__pycache__"))
    call = [sys.executable, "-m", "trainer"]
    options: dict[str, Any] = {"cwd": tmp_path, "env": {**os.environ, "PYTHONPATH": str(tmp_path)}, "text": True}
    done = subprocess.run([*call, "practice", "--text"], capture_output=True, check=False, **options)
    assert done.returncode == ExitCode.MISSING
    assert done.stderr.splitlines() == [
        f"The sentences of this program have not been compiled: {copy / 'words' / 'catalogues' / 'en.mo'} is missing or "
        "damaged. In a working copy, run: pip install -e . (or, with Babel: python -m trainer.words.build_catalogues). "
        "Otherwise, install the program again."
    ]
    assert subprocess.run([*call, "--help"], capture_output=True, check=False, **options).returncode == ExitCode.DONE


def test_help_reads_no_catalogue() -> None:
    """Loading words may take a tenth of a second; here it takes nothing, and neither does the language not spoken."""
    read = (
        "import sys\n"
        "from trainer.commands.entry import main\n"
        "main(['--help'], standalone_mode=False)\n"
        "assert 'trainer.words.catalogue' not in sys.modules\n"
        "from trainer.words import text\n"
        "from trainer.words.catalogue import catalogue_of\n"
        "text('help')\n"
        "assert catalogue_of.cache_info().currsize == 1\n"
        "assert 'babel' not in sys.modules\n"
    )
    subprocess.run([sys.executable, "-c", read], check=True, stdout=subprocess.DEVNULL)


@pytest.mark.parametrize("length", [0, 3, 20, 1000])
def test_a_catalogue_that_was_cut_short_is_named(length: int, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (tmp_path / "en.mo").write_bytes(catalogue.compiled_path("en").read_bytes()[:length])
    monkeypatch.setattr(catalogue, "FOLDER", tmp_path)
    with pytest.raises(CatalogueMissingError, match=r"en\.mo is missing or damaged"):
        catalogue.catalogue_of.__wrapped__("en")
