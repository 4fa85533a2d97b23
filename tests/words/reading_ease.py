"""Counts how easily English text is read: Flesch's reading ease, from sentences, words and syllables.

The formula is Flesch's (R. Flesch, A new readability yardstick, Journal of Applied Psychology 32, 1948):
206.835 − 1.015 · words a sentence − 84.6 · syllables a word. Syllables are counted by spelling.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from string import Formatter

SENTENCE_END = re.compile(r"(?<=[.?!:;])\s+")


def with_values(sentence: str) -> str:
    """Return a sentence with a short number in place of each value."""
    return "".join(literal + ("7" if name is not None else "") for literal, name, _, _ in Formatter().parse(sentence))


def sentences_of(text: str) -> list[str]:
    """Return the sentences and clauses of a text, parted at full stops, question marks, colons and semicolons."""
    return [part for part in SENTENCE_END.split(with_values(text).strip()) if words_of(part)]


def words_of(text: str) -> list[str]:
    """Return the words of a text: what has a letter or a digit in it."""
    return [word for word in re.split(r"[\s/·—–-]+", text) if re.search(r"[^\W_]", word)]


SPOKEN_LE = re.compile(r"[^aeiouy]les?$")
"""An end that is spoken: table, simple, cables."""


def syllables_in(word: str) -> int:
    """Return the syllables of an English word by its spelling: groups of vowels, less those at the end that are silent."""
    letters = re.sub(r"[^a-z]", "", word.lower()).replace("qu", "kw")
    bare = re.sub(r"(?<![szxcgl])(?<!sh)(?<!ch)es$", "s", letters)
    bare = re.sub(r"(?<![td])ed$", "d", bare)
    if not SPOKEN_LE.search(bare):
        bare = re.sub(r"(?<=[aeiouy])([^aeiouy]+)e$|(?<=[aeiouy])(l)es$", r"\1\2", bare)
    groups = re.findall(r"[aeiouy]+", bare)
    hiatus = re.findall(r"i[ao](?!n|us)|ie(?=t)|eo(?!pl)|ea$|ua(?!r)|uo", bare)
    return max(len(groups) + len(hiatus), 1)


def reading_ease(texts: Iterable[str]) -> float:
    """Return the reading ease of texts together: 60 and above is plain English, 100 is a child's."""
    sentences = [sentence for text in texts for sentence in sentences_of(text)]
    words = [word for sentence in sentences for word in words_of(sentence)]
    syllables = sum(map(syllables_in, words))
    return 206.835 - 1.015 * len(words) / len(sentences) - 84.6 * syllables / len(words)
