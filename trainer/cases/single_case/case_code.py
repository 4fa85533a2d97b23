"""Case codes: twelve characters in three groups that identify one drawn case on any computer.

Version, profile digest (3), options, seed (6), check. The alphabet has 31 characters, a prime: with the check
Σ (k + 1)·value(k) ≡ 0 (mod 31) any one wrong character and any swap of neighbours is caught, since no weight and no
difference of neighbouring weights is a multiple of 31.
"""

from __future__ import annotations

from dataclasses import dataclass

ALPHABET = "23456789ABCDEFGHJKMNPQRSTUVWXYZ"
"""No 0, 1, I, L, O: they are misread."""

VERSION = 6
"""Raised whenever the same seed would draw another case."""
SEED_LIMIT = len(ALPHABET) ** 6
DIGEST_LIMIT = len(ALPHABET) ** 3


@dataclass(frozen=True, slots=True)
class CodeContent:
    """The content of a code: the profile's short digest, the difficulty and the seed of the draw."""

    digest: int
    difficulty: int
    seed: int


class CodeError(ValueError):
    """Raised for a text that is no case code; `reason` is `length`, `character`, `check` or `version`."""

    def __init__(self, reason: str) -> None:
        super().__init__(reason)
        self.reason = reason


def short_digest(digest: str) -> int:
    """Return the short form of a profile's digest that a code contains."""
    return int(digest[:12], 16) % DIGEST_LIMIT


def format_code(drawn: CodeContent) -> str:
    """Return the code of a drawn case, in groups of four; raises ValueError for a seed out of range."""
    if not 0 <= drawn.seed < SEED_LIMIT:
        raise ValueError(f"a drawn case's seed lies from 0 up to {SEED_LIMIT}, found {drawn.seed}")
    values = [VERSION, *_digits(drawn.digest, 3), drawn.difficulty, *_digits(drawn.seed, 6)]
    total = sum((place + 1) * value for place, value in enumerate(values))
    # the twelfth weight is 12: solve 12·check ≡ −total
    check = -total * pow(len(values) + 1, -1, len(ALPHABET)) % len(ALPHABET)
    letters = "".join(ALPHABET[value] for value in [*values, check])
    return "-".join(letters[start : start + 4] for start in range(0, 12, 4))


def parse_code(code: str) -> CodeContent:
    """Parse a code, ignoring case and dashes; raises CodeError."""
    letters = code.strip().upper().replace("-", "").replace(" ", "")
    if len(letters) != 12:
        raise CodeError("length")
    if any(letter not in ALPHABET for letter in letters):
        raise CodeError("character")
    values = [ALPHABET.index(letter) for letter in letters]
    if sum((place + 1) * value for place, value in enumerate(values)) % len(ALPHABET):
        raise CodeError("check")
    if values[0] != VERSION:
        raise CodeError("version")
    return CodeContent(_number(values[1:4]), values[4], _number(values[5:11]))


def _digits(number: int, count: int) -> list[int]:
    base = len(ALPHABET)
    return [number // base**place % base for place in reversed(range(count))]


def _number(digits: list[int]) -> int:
    total = 0
    for digit in digits:
        total = total * len(ALPHABET) + digit
    return total
