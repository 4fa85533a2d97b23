"""Translate errors of a database into errors that are shown to the user."""

from __future__ import annotations

import re
import sqlite3
from collections.abc import Mapping

from sqlalchemy import ExceptionContext
from sqlalchemy.engine import make_url
from sqlalchemy.exc import ArgumentError, DBAPIError, StatementError

from trainer.errors import DamagedError, MissingHereError, UserError

_SQLITE: Mapping[str, str] = {
    "SQLITE_BUSY": "store_locked",
    "SQLITE_LOCKED": "store_locked",
    "SQLITE_READONLY": "store_read_only",
    "SQLITE_FULL": "store_full",
}
"""By SQLite's primary result code: sqlite.org/rescode.html."""

_POSTGRES: Mapping[str, str] = {
    "28": "shared_login",
    "3D": "shared_no_database",
    "42501": "shared_rights",
    "25006": "shared_read_only",
    "53100": "shared_full",
    "53": "shared_busy",
    "57P03": "shared_busy",
    "57": "shared_silent",
    "08": "shared_silent",
}
"""By SQLSTATE or its class, the longer one first: PostgreSQL's manual, appendix A."""

_CONNECTING = (
    (r"resolve host|translate host name", "shared_no_host"),
    (r"refused|No such file or directory|No route|unreachable", "shared_refused"),
    (r"authentication failed|no password supplied|role .* does not exist|pg_hba\.conf", "shared_login"),
    (r"database .* does not exist", "shared_no_database"),
    (r"too many|starting up|shutting down|reserved for", "shared_busy"),
    (r"timeout|timed out|closed the connection|terminating connection|connection is closed|lost", "shared_silent"),
)
"""While a connection is made there is no SQLSTATE, only words, and those in English where the driver brings its own."""


_SQLITE_DAMAGE = {sqlite3.SQLITE_ERROR, sqlite3.SQLITE_CORRUPT, sqlite3.SQLITE_NOTADB, sqlite3.SQLITE_CONSTRAINT}
"""Primary result codes of SQLite for a file that is not whole; SQLITE_ERROR is a table or column that is not there."""

_POSTGRES_DAMAGE = ("42P01", "42703", "23", "XX")
"""Beginnings of SQLSTATE codes of PostgreSQL for tables, columns or content that are not whole."""


def user_error_of(error: DBAPIError) -> UserError:
    """Return what is wrong with the store that raised an error, and where: DamagedError for records not whole."""
    place = error.detail[0] if error.detail else ""
    reason = (str(error.orig).strip().splitlines() or [""])[0]
    if _is_damage(error):
        return DamagedError("store_damaged", place=place, reason=reason)
    state = getattr(error.orig, "sqlstate", "") or ""
    try:
        url = make_url(place)
    except ArgumentError:  # a file's path, or a store in memory
        key = _longest(_SQLITE, getattr(error.orig, "sqlite_errorname", "")) or "store_unwritable"
        return MissingHereError(key, place=place, reason=reason)
    by_words = (key for words, key in _CONNECTING if re.search(words, reason))
    key = _longest(_POSTGRES, state) or next(by_words, "shared_unusable")
    host = url.host or "localhost"
    return MissingHereError(
        key, place=place, reason=re.sub(r"^connection .* failed: (FATAL: +)?", "", reason), host=host,
        server=f"{f'[{host}]' if ':' in host else host}:{url.port or 5432}", database=url.database or "",
    )  # fmt: skip


def _is_damage(error: DBAPIError) -> bool:
    """Tell whether a database's error comes from what it holds, and not from the machine or the network."""
    code = getattr(error.orig, "sqlite_errorcode", None)
    if code is not None:
        return code & 0xFF in _SQLITE_DAMAGE  # the low byte of an extended code is the primary one
    return str(getattr(error.orig, "sqlstate", "") or "").startswith(_POSTGRES_DAMAGE)


def _longest(keys: Mapping[str, str], found: str) -> str:
    """Return the value of the longest code that `found` begins with, "" for none."""
    return max(((code, key) for code, key in keys.items() if found.startswith(code)), default=("", ""))[1]


def note_place(place: str, context: ExceptionContext) -> None:
    """Add the store's address to an error; a listener of an engine's errors."""
    error = context.sqlalchemy_exception
    if isinstance(error, StatementError) and not error.detail:
        error.add_detail(place)
