"""Opens a database by its URL and brings its tables to the version that this program knows."""

from __future__ import annotations

import contextlib
import sqlite3
import time
from functools import partial
from pathlib import Path

from sqlalchemy import Connection, Engine, create_engine, event, inspect, select
from sqlalchemy import text as statement
from sqlalchemy.exc import DBAPIError

from trainer.errors import DamagedError, MissingHereError, Sentence, UserError
from trainer.records.store.database_errors import note_place, user_error_of
from trainer.records.store.store_url import display_url, store_url
from trainer.records.store.tables import SCHEMA_VERSION, metadata, schema_table

CONNECT_TIMEOUT_S = 5
STORE_LOCK = 7_316_450_021
"""The number under which stations that open a PostgreSQL store together wait for one another."""


def engine_for(url: str, statement_timeout_s: int = 0) -> Engine:
    """Return an engine; raises WrongCallError for a URL that is none and MissingHereError for a missing driver.

    `statement_timeout_s` ends what a PostgreSQL server does not answer in time; 0 waits for ever.
    """
    parsed = store_url(url)
    if parsed.get_backend_name() == "sqlite":
        engine = create_engine(parsed)
        event.listen(engine, "connect", lambda connection, _record: _durable(connection, place_of(engine)))
        event.listen(engine, "begin", _begin)
    else:
        # a server that went silent is noticed after some seconds, not after the system's quarter of an hour
        silence = {"keepalives_idle": 5, "keepalives_interval": 2, "keepalives_count": 3, "tcp_user_timeout": 10_000}
        limits = {"options": f"-c statement_timeout={1000 * statement_timeout_s}"}
        arguments = {"connect_timeout": CONNECT_TIMEOUT_S, **silence, **limits}
        try:
            engine = create_engine(parsed, connect_args=arguments, pool_pre_ping=True)
        except ImportError as error:  # the driver, or the C library that it needs
            raise MissingHereError("no_postgres_driver") from error
    event.listen(engine, "handle_error", partial(note_place, place_of(engine)))
    return engine


WRITES = "writes"
"""The option of a connection that is going to write: an embedded store then lets one after another in."""

OPENS = "opens"
"""The option of a connection that opens a store: another program may be making the tables just now."""

ACTION_WAIT_MS, OPENING_WAIT_MS, SWITCHING_WAIT_MS = 2000, 10_000, 50
"""How long an embedded store that another program has locked is waited for: a person waits for an action."""


def place_of(engine: Engine) -> str:
    """Return where a store is, without its password."""
    url = engine.url
    if url.get_backend_name() == "sqlite":
        return url.database or "memory"
    return display_url(url)


def user_error(error: Exception) -> UserError | None:
    """Return the error to show to the user for a database's error, or None for any other error."""
    return user_error_of(error) if isinstance(error, DBAPIError) else None


def upgrade_tables(engine: Engine) -> None:
    """Create the tables, or upgrade them to this program's version.

    Raises MissingHereError for a newer or unreachable store and DamagedError for one that is not whole.
    """
    place = place_of(engine)
    try:
        if engine.dialect.name == "sqlite" and engine.url.database:
            _check_after_crash(Path(engine.url.database))
        with engine.execution_options(**{OPENS: True}).connect() as connection:
            if _version(connection, place) == SCHEMA_VERSION:
                return
        with engine.execution_options(**{OPENS: True, WRITES: True}).begin() as connection:
            if engine.dialect.name == "postgresql":
                connection.execute(statement("SELECT pg_advisory_xact_lock(:key)"), {"key": STORE_LOCK})
            version = _version(connection, place)
            if version is not None and version > SCHEMA_VERSION:
                raise MissingHereError("store_version", place=place, version=version, known=SCHEMA_VERSION)
            if version != SCHEMA_VERSION:
                _upgrade(connection, version, place)
    except DBAPIError as error:
        raise user_error_of(error) from error


ROW_FINDINGS = ("NULL value in", "TEXT value in", "NUMERIC value in", "CHECK constraint failed")
"""How findings of `PRAGMA quick_check` about single rows begin: those rows are left out where they are read."""


def _check_after_crash(path: Path) -> None:
    """Check the pages of an embedded store that was not closed; raises DamagedError where they are not whole.

    SQLite removes the write-ahead log when the last program closes the file, so a log with content means a crash or
    another running program. The check reads 40 MB (100,000 events) in 0.04 s. It opens the file for reading only:
    closing it then leaves the log there, and the next opening checks again.
    """
    log = path.with_name(f"{path.name}-wal")
    if not path.is_file() or not log.is_file() or not log.stat().st_size:
        return
    try:
        with contextlib.closing(sqlite3.connect(f"{path.resolve().as_uri()}?mode=ro", uri=True)) as connection:
            connection.text_factory = _text
            found = [str(line) for (line,) in connection.execute("PRAGMA quick_check")]
    except sqlite3.OperationalError:  # locked or unreadable: opening it says so
        return
    except sqlite3.DatabaseError as error:
        raise DamagedError("store_damaged", place=str(path), reason=Sentence("damage.not_closed")) from error
    if any(line != "ok" and not line.startswith(ROW_FINDINGS) for line in found):
        raise DamagedError("store_damaged", place=str(path), reason=Sentence("damage.not_closed"))


def _version(connection: Connection, place: str) -> int | None:
    """Return the version of the tables, None where there are none yet; raises DamagedError where they do not say it."""
    names = set(inspect(connection).get_table_names())
    if schema_table.name in names:
        versions = connection.execute(select(schema_table.c.version).limit(2)).scalars().all()
        if len(versions) == 1 and type(versions[0]) is int and versions[0] >= 1:
            return versions[0]
    elif not names & metadata.tables.keys():
        return None
    raise DamagedError("store_damaged", place=place, reason=Sentence("damage.no_version"))


def _upgrade(connection: Connection, version: int | None, place: str) -> None:
    from alembic import command
    from alembic.config import Config
    from alembic.util import CommandError

    config = Config()
    config.set_main_option("script_location", str(Path(__file__).parent / "migrations"))
    config.attributes["connection"] = connection
    try:
        if version == 1:
            command.stamp(config, "0001")
        command.upgrade(config, "head")
    except CommandError as error:  # the step that the tables claim to be at is none of this program's
        raise DamagedError("store_damaged", place=place, reason=str(error)) from error


def _durable(connection: object, place: str) -> None:
    """An event counts once it is on the disk: a write-ahead log, synchronised at every commit.

    The driver's own transactions are switched off, since they leave changes of tables outside: SQLAlchemy's manual,
    "Serializable isolation / Savepoints / Transactional DDL" under SQLite.
    """
    connection.isolation_level = None  # type: ignore[attr-defined]  # SQLAlchemy hands in the driver's own connection
    connection.text_factory = _text  # type: ignore[attr-defined]
    cursor = connection.cursor()  # type: ignore[attr-defined]
    try:
        _keep_a_log(cursor)
        for line in ("PRAGMA synchronous=FULL", "PRAGMA foreign_keys=ON"):
            cursor.execute(line)
    except UnicodeDecodeError as error:  # the driver cannot say what is wrong with the tables: it is not even text
        raise DamagedError("store_damaged", place=place, reason=Sentence("damage.no_tables")) from error
    finally:
        cursor.close()


def _keep_a_log(cursor: sqlite3.Cursor) -> None:
    """Switch a new file to its write-ahead log; a file keeps that.

    SQLite does not wait by itself where two programs switch at the same moment: it would be a deadlock.
    """
    for tries_left in reversed(range(OPENING_WAIT_MS // SWITCHING_WAIT_MS)):
        if cursor.execute("PRAGMA journal_mode").fetchone()[0] in ("wal", "memory"):
            return
        try:
            cursor.execute("PRAGMA journal_mode=WAL")
            return
        except sqlite3.OperationalError as error:
            if error.sqlite_errorcode & 0xFF != sqlite3.SQLITE_BUSY or not tries_left:
                raise
            time.sleep(SWITCHING_WAIT_MS / 1000.0)


def _text(kept: bytes) -> str:
    """Return a text as it is kept; bytes that are no UTF-8 become U+FFFD, so that one does not hide all rows."""
    return kept.decode("utf-8", "replace")


def _begin(connection: Connection) -> None:
    options = connection.get_execution_options()
    wait_ms = OPENING_WAIT_MS if options.get(OPENS) else ACTION_WAIT_MS
    connection.exec_driver_sql(f"PRAGMA busy_timeout={wait_ms}")
    connection.exec_driver_sql("BEGIN IMMEDIATE" if options.get(WRITES) else "BEGIN")
