"""Brings every translation into the order of the English catalogues, with their comments and sentences beside it.

`python -m tests.words.renew_catalogues [LANGUAGE]` marks as fuzzy what is new or whose English has changed: look at it,
correct it and take the mark out. A catalogue with a mark cannot be compiled. With a new language, it writes all of it.
"""

from __future__ import annotations

import sys
from io import BytesIO

from babel.messages.catalog import Catalog, Message
from babel.messages.pofile import write_po

from tests.words.catalogues import DOMAINS, forms
from trainer.words.build_catalogues import FOLDER, id_of, read
from trainer.words.languages import FIRST, LANGUAGES

BESIDE = "English: "
HOW = " How to add a language: docs/adding_a_language.md"
KEPT = ('"Language:', '"Plural-Forms:', '"MIME-Version:', '"Content-Type:', '"Content-Transfer-Encoding:')
"""Lines of a catalogue's head that do not change from day to day."""


def english_in(message: Message) -> str:
    """Return the English sentence that a translation was made from, spaces as they come."""
    return " ".join(message.auto_comments).partition(BESIDE)[2]


def english_of(message: Message) -> str:
    """Return an English message as a translation shows it: on one line, its forms parted by a bar."""
    return " ".join(" | ".join(forms(message)).split())


def renewed(english: Catalog, before: Catalog) -> Catalog:
    """Return a translation in the order of the English catalogue, with what has to be looked at marked as fuzzy."""
    after = Catalog(before.locale, fuzzy=False, header_comment=before.header_comment)
    after.mime_headers = [("Plural-Forms", before.plural_forms)]
    for message in english:
        if message.id:
            _add(after, message, before.get(id_of(message)), before.num_plurals)
    return after


def _add(after: Catalog, english: Message, known: Message | None, plurals: int) -> None:
    comments = [*english.auto_comments, BESIDE + english_of(english)]
    whole = known is not None and known.pluralizable == english.pluralizable
    nothing: str | tuple[str, ...] = ("",) * plurals if english.pluralizable else ""
    fuzzy = known is None or known.fuzzy or not whole or english_in(known) != english_of(english)
    after.add(
        english.id,
        known.string if known is not None and whole else nothing,
        auto_comments=comments,
        user_comments=known.user_comments if known is not None else (),
        flags={"fuzzy"} if fuzzy else set(),
    )


def _written(catalogue: Catalog) -> str:
    file = BytesIO()
    write_po(file, catalogue, width=110)
    head, _gap, rest = file.getvalue().decode("utf-8").partition("\n\n")
    lines = [line for line in head.split("\n") if not line.startswith('"') or line.startswith(KEPT)]
    return "\n".join(lines) + "\n\n" + rest.rstrip("\n") + "\n"


def main() -> None:
    for language in sys.argv[1:] or [language for language in LANGUAGES if language != FIRST]:
        (FOLDER / language).mkdir(exist_ok=True)
        for domain in DOMAINS:
            path = FOLDER / language / f"{domain}.po"
            new = Catalog(language, fuzzy=False, header_comment=f"# {LANGUAGES[language].name}: {domain}.{HOW}")
            before = read(path) if path.is_file() else new
            path.write_text(_written(renewed(read(FOLDER / FIRST / path.name), before)), "utf-8")


if __name__ == "__main__":
    main()
