"""Sealed sets: one file whose answers and seeds cannot be read, nor a byte changed unseen, without the passphrase.

The file is a first line that names it, a readable line of JSON (name, title, dates, size, mode, salt), and
the pack encrypted with AES-256-GCM, whose tag covers both lines. The key comes from the passphrase by scrypt. The pack
is padded before it is encrypted, and never compressed: either way its length would show which cases it holds.
"""

from __future__ import annotations

import hmac
import json
import os
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

from trainer.cases.files.plain_file import UnfitFileError, open_plain, read_plain
from trainer.cases.files.whole_file import write_bytes
from trainer.cases.files.yaml_text import SEALED_BEGINS as MAGIC
from trainer.errors import WrongCallError
from trainer.sets.case_set import CaseSet, Mode, SetPack
from trainer.sets.set_file import set_of

NONCE_BYTES, KEY_BYTES = 12, 32
SCRYPT_N, SCRYPT_R, SCRYPT_P = 2**17, 8, 1
"""OWASP's password storage cheat sheet gives these three for scrypt: 128 MB and some tenths of a second a guess."""

LEAST_PASSPHRASE, LEAST_KEY = 10, 16
LEAST_PADDED = 65_536
"""Bytes to which every pack is padded at least: all shipped cases in one set take 49,000."""

MOST_PADDED = 2**23
MOST_BYTES = MOST_PADDED + 16_384
"""The longest pack, and the longest file: the pack with its nonce, its tag and the two lines before it."""


@dataclass(frozen=True, slots=True)
class SetKey:
    """The key that opens a set and signs its results; made without a passphrase, it shows damage but no forgery."""

    secret: bytes
    salt: bytes

    def derived(self, purpose: str) -> bytes:
        """Return the key for one purpose; one purpose's key reveals nothing of another's."""
        from cryptography.hazmat.primitives.hashes import SHA256
        from cryptography.hazmat.primitives.kdf.hkdf import HKDF

        return HKDF(SHA256(), KEY_BYTES, self.salt, purpose.encode("utf-8")).derive(self.secret)

    @property
    def mark(self) -> str:
        """A short value that distinguishes a wrong passphrase from a changed file."""
        return hmac.digest(self.derived("mark"), b"mark", "sha256").hex()[:16]


@dataclass(frozen=True, slots=True)
class SealedHead:
    """The part of a sealed set that can be read without its passphrase."""

    name: str
    title: str
    mode: Mode
    size: int
    opens: str
    closes: str
    salt: bytes
    mark: str


def key_of(passphrase: str, salt: bytes) -> SetKey:
    """Return the key that a passphrase and a salt make; takes some tenths of a second on purpose."""
    from cryptography.hazmat.primitives.kdf.scrypt import Scrypt

    scrypt = Scrypt(salt=salt, length=KEY_BYTES, n=SCRYPT_N, r=SCRYPT_R, p=SCRYPT_P)
    return SetKey(scrypt.derive(passphrase.encode("utf-8")), salt)


def salt_of_set(case_set: CaseSet) -> bytes:
    """Return the salt of a set: its own digest, so that the same passphrase makes the same key wherever it is typed.

    The digest is public; the set's draw key, which nobody guesses, keeps it from confirming a guess at the cases.
    """
    return bytes.fromhex(case_set.id)


def open_key_of(pack: SetPack) -> SetKey:
    """Return the key of a set that is not sealed: anybody who has the set has it."""
    return SetKey(pack.plain, b"not sealed")


def pad(plain: bytes) -> bytes:
    """Return JSON padded with spaces, which JSON ignores at its end, to a power of two of at least 64 KiB.

    With M the longest pack, powers of two leave log2(log2 M) bits in a length, the least that padding short of one
    length for all can reach (Nikitin et al., "Reducing metadata leakage from encrypted files and communication with
    PURBs", PoPETs 2019(4), section 4). Raises WrongCallError for a pack that no sealed file holds.
    """
    if len(plain) > MOST_PADDED:
        raise WrongCallError("set_too_large", most=MOST_PADDED // 2**20)
    return plain.ljust(max(LEAST_PADDED, 1 << (len(plain) - 1).bit_length()))


def seal(case_set: CaseSet, passphrase: str, path: Path) -> SealedHead:
    """Write a set to a sealed file and return its readable head.

    Raises WrongCallError for a short passphrase, a set without a draw key and one that is too large, MissingHereError
    where the file cannot be written.
    """
    from cryptography.hazmat.primitives.ciphers.aead import AESGCM

    if len(passphrase) < LEAST_PASSPHRASE:
        raise WrongCallError("short_passphrase", n=LEAST_PASSPHRASE)
    if len(case_set.draw_key) < LEAST_KEY:
        raise WrongCallError("seal_needs_key", n=LEAST_KEY)
    key = key_of(passphrase, salt_of_set(case_set))
    policy = case_set.policy
    head: dict[str, str | int] = {
        "name": case_set.name,
        "title": case_set.title,
        "mode": str(policy.mode),
        "size": case_set.size,
        "opens": policy.opens.isoformat() if policy.opens else "",
        "closes": policy.closes.isoformat() if policy.closes else "",
        "salt": key.salt.hex(),
        "mark": key.mark,
    }
    readable = MAGIC + json.dumps(head, sort_keys=True, ensure_ascii=True).encode("ascii") + b"\n"
    nonce = os.urandom(NONCE_BYTES)
    body = AESGCM(key.derived("seal")).encrypt(nonce, pad(case_set.pack.plain), readable)
    write_bytes(path, readable + nonce + body)
    return _head(head)


def is_sealed(path: Path) -> bool:
    """Return whether a file begins like a sealed set."""
    try:
        with open_plain(path) as file:
            return file.read(len(MAGIC)) == MAGIC
    except (UnfitFileError, OSError):
        return False


def read_head(path: Path) -> SealedHead:
    """Return the readable head of a sealed set; it is not authenticated before the passphrase has opened the set.

    Raises UnfitFileError for a file that cannot be read and WrongCallError for one that is no sealed set.
    """
    return _split(path)[0]


def unseal(path: Path, passphrase: str) -> tuple[CaseSet, SetKey]:
    """Open a sealed set.

    Raises UnfitFileError for a file that cannot be read, WrongCallError for a wrong passphrase or a changed file.
    """
    from cryptography.exceptions import InvalidTag
    from cryptography.hazmat.primitives.ciphers.aead import AESGCM

    head, readable, sealed = _split(path)
    key = key_of(passphrase, head.salt)
    try:
        plain = AESGCM(key.derived("seal")).decrypt(sealed[:NONCE_BYTES], sealed[NONCE_BYTES:], readable)
    except (InvalidTag, ValueError) as error:
        if not hmac.compare_digest(key.mark, head.mark):
            raise WrongCallError("wrong_passphrase", file=path.name) from error
        raise WrongCallError("sealed_altered", file=path.name) from error
    parts = json.loads(plain)
    return set_of(SetPack(parts["content"], parts["cases"], parts["profiles"]), path.name), key


def _split(path: Path) -> tuple[SealedHead, bytes, bytes]:
    whole = read_plain(path, MOST_BYTES)
    end = whole.find(b"\n", len(MAGIC))
    if not whole.startswith(MAGIC) or end < 0:
        raise WrongCallError("sealed_unreadable", file=path.name)
    try:
        head = _head(json.loads(whole[len(MAGIC) : end]))
    except (ValueError, KeyError, TypeError, OverflowError, RecursionError) as error:
        raise WrongCallError("sealed_unreadable", file=path.name) from error
    return head, whole[: end + 1], whole[end + 1 :]


def _head(parts: Mapping[str, str | int]) -> SealedHead:
    return SealedHead(
        name=str(parts["name"]),
        title=str(parts["title"]),
        mode=Mode(str(parts["mode"])),
        size=int(parts["size"]),
        opens=str(parts["opens"]),
        closes=str(parts["closes"]),
        salt=bytes.fromhex(str(parts["salt"])),
        mark=str(parts["mark"]),
    )
