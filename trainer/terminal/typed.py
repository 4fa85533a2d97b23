"""From typed words to what they ask for; every mistake says what is allowed."""

from __future__ import annotations

import unicodedata
from collections.abc import Sequence
from dataclasses import replace

from trainer.circuit.elements import Location, Side
from trainer.circuit.profile import Profile
from trainer.errors import Sentence, WrongCallError
from trainer.instruments.bench import MODULE_CONNECTOR
from trainer.instruments.requests import OF_THE_WHOLE, Request, What, next_driven, plug_point
from trainer.instruments.tries import Effort
from trainer.practice.attempt.repair import Repair
from trainer.sound.places import places_of
from trainer.words import text

PLACES = {
    "module": Location.DRIVE_MODULE,
    "engine": Location.ENGINE_HARNESS,
    "connector": Location.PASS_THROUGH,
    "cover": Location.UNDER_COVER,
    "coil": Location.COIL,
    "armature": Location.ARMATURE,
    "power": Location.MODULE_POWER,
}
"""The words for the seven places where a fault can be."""

SLIPS = {"connected", "firm", "live", "leads", "nowait", "minmax"}
"""Ways to measure, wrong ones first; `minmax` keeps the least and the most while something is moved."""
READINGS: dict[str, What] = {
    "pair": "pair", "returns": "returns", "ground": "ground", "wire": "wire", "insulation": "insulation",
    "volts": "volts", "lamp": "lamp", "crank": "crank",
    "plusdrop": "plus_drop", "grounddrop": "ground_drop", "clamp": "clamp",
    "contribution": "contribution", "compression": "compression",
    "drop": "drop", "supply": "supply", "trace": "trace", "dummy": "dummy",
}  # fmt: skip


def is_yes(line: str) -> bool:
    """Tell whether a typed line is a yes in the language that is spoken; anything else is a no."""
    return unicodedata.normalize("NFC", line).strip().casefold() in text("typed.yes").split()


def number_of(word: str) -> int:
    """Return a typed number; raises WrongCallError."""
    if not word.isascii() or not word.isdigit() or len(word) > 3:
        raise WrongCallError("no_number", word=word)
    return int(word)


def place_of(word: str) -> Location:
    """Return the place of a fault that a word names; raises WrongCallError."""
    word = word.lower()
    if word in PLACES:
        return PLACES[word]
    if word in [location.value for location in Location]:
        return Location(word)
    raise WrongCallError("no_place", place=word, places=", ".join(PLACES))


def try_of(profile: Profile, words: Sequence[str]) -> tuple[Location | None, str, Effort]:
    """Return the place that is moved or warmed, under which bank's cover if under one, and how hard.

    None as a place lets go. Raises WrongCallError.
    """
    rest = [word.lower() for word in words]
    effort = Effort.GENTLE if Effort.GENTLE.value in rest else Effort.THOROUGH
    rest = [word for word in rest if word != Effort.GENTLE]
    if not rest or (rest[0] == "none" and rest[1:]):
        raise WrongCallError("needs_one_place", places=", ".join(PLACES))
    if rest[0] == "none":
        return None, "", effort
    place, bank = place_of(rest[0]), " ".join(rest[1:])
    if bank and bank not in profile.banks:
        raise WrongCallError("needs_bank", place=Sentence(f"location.{place}"), banks=", ".join(profile.banks))
    return place, bank, effort


def slots_of(words: Sequence[str]) -> list[int] | None:
    """Return the slots named, 0 for `all`; None where none is named: the whole test."""
    return [0 if word == "all" else number_of(word) for word in words] or None


def listening_place(profile: Profile, words: Sequence[str]) -> str:
    """Return a listening place by its words; raises WrongCallError."""
    place = " ".join(words)
    if place not in places_of(profile):
        raise WrongCallError("no_place", place=place, places=", ".join(places_of(profile)))
    return place


def cylinders_of(word: str) -> frozenset[int]:
    """Return cylinders typed as `3`, `1,3`, `1 3` or `1 and 3`; raises WrongCallError."""
    parts = word.replace(",", " ").replace(" and ", " ").split()
    return frozenset(number_of(part) for part in parts or [word])


def request_of(profile: Profile, words: Sequence[str]) -> Request:
    """Return the measurement that words ask for, the first being its name; raises WrongCallError."""
    what = READINGS[words[0]]
    rest = [word for word in words[1:] if word not in SLIPS]
    asked = Request(
        what,
        connected="connected" in words,
        firm="firm" in words,
        key_on="live" in words,
        nulled="leads" not in words,
        captured="minmax" in words,
        at_once="nowait" in words,
        side=Side.FEED if "feed" in rest else Side.RETURN,
    )
    if what in OF_THE_WHOLE:
        refuse_extra(words[0], rest)
        return asked
    if what in ("trace", "dummy"):
        return replace(asked, cylinder=_numbers(rest, 1, words)[0])
    if what == "clamp":
        number, other = _numbers(rest if len(rest) == 2 else [*rest, "0"], 2, words)
        return replace(asked, cylinder=number, other=other or next_driven(profile, number))
    if what in ("wire", "lamp", "drop"):
        if not rest:
            raise WrongCallError("needs_place", word=words[0])
        numbers = _numbers([word for word in rest[1:] if word not in ("feed", "return")], 1, words)
        return replace(asked, cylinder=numbers[0], location=place_of(rest[0]))
    point, half, left = _point(profile, rest, words)
    named = [word for word in left if word not in ("feed", "return")]
    count = 2 if what == "returns" or (what == "insulation" and len(named) > 1) else 1
    numbers = _numbers(named, count, words)
    if point == "plug":
        point = plug_point(numbers[0])
    other = numbers[1] if count > 1 else 0
    return replace(asked, point=point, half=half, cylinder=numbers[0], other=other)


def _point(profile: Profile, rest: Sequence[str], words: Sequence[str]) -> tuple[str, str, list[str]]:
    """Return break point, half and the words left."""
    names = list(profile.wiring.connectors)
    left = list(rest)
    word = left.pop(0) if left else ""
    if word == "module":
        return MODULE_CONNECTOR, "harness", left
    if word == "plug":
        half = "injector"
        if left and left[0] in ("harness", "injector"):
            half = left.pop(0)
        return "plug", half, left
    if word in names:
        half = "cover"
        if left and left[0] in ("engine", "cover"):
            half = left.pop(0)
        return f"pass_through.{word}", half, left
    raise WrongCallError("no_point", word=word, words=" ".join(words), points=", ".join(["module", "plug", *names]))


def _numbers(left: Sequence[str], count: int, words: Sequence[str]) -> list[int]:
    if len(left) != count:
        raise WrongCallError("needs_numbers", words=" ".join(words), n=count)
    return [number_of(word) for word in left]


def refuse_extra(word: str, extra: Sequence[str]) -> None:
    """Refuse words that mean nothing where they stand, before anything is done or charged; raises WrongCallError."""
    if extra:
        raise WrongCallError("extra_words", word=word, extra=" ".join(extra))


def retest_of(words: Sequence[str]) -> tuple[Location | None, Location | None]:
    """Return which place is moved and which is warm in a retest; raises WrongCallError."""
    if not words:
        return None, None
    if len(words) != 2 or words[0] not in ("moving", "warm"):
        raise WrongCallError("extra_words", word="retest", extra=" ".join(words))
    place = place_of(words[1])
    return (place, None) if words[0] == "moving" else (None, place)


def repair_of(words: Sequence[str]) -> Repair:
    """Return the repair that words ask for: place, cylinders, side; raises WrongCallError."""
    if len(words) < 2:
        raise WrongCallError("needs_repair")
    sides = [side for side in Side if side.value in words[2:]]
    refuse_extra("repair", [word for word in words[2:] if word not in [side.value for side in sides]])
    return Repair(place_of(words[0]), cylinders_of(words[1]), sides[0] if sides else None)
