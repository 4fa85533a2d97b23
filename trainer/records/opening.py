"""Opens a database by its URL and brings its tables to the version that this program knows."""

from __future__ import annotations

import sqlite3
from pathlib import Path

from sqlalchemy import Connection, Engine, create_engine, event, inspect, select
from sqlalchemy import text as statement
from sqlalchemy.engine import make_url
from sqlalchemy.exc import ArgumentError, DatabaseError, NoSuchModuleError

from trainer.errors import DamagedError, MissingHereError, ToldError, WrongCallError
from trainer.records.tables import SCHEMA_VERSION, metadata, schema_table
from trainer.words import text

CONNECT_TIMEOUT_S = 5
STORE_LOCK = 7_316_450_021
"""The number under which stations that open a PostgreSQL store together wait for one another."""


def engine_for(url: str, statement_timeout_s: int = 0) -> Engine:
    """Return an engine; raises WrongCallError for a URL that is none and MissingHereError for a missing driver.

    `statement_timeout_s` ends what a PostgreSQL server does not answer in time; 0 waits for ever.
    """
    try:
        parsed = make_url(url)
        if parsed.get_backend_name() == "sqlite":
            engine = create_engine(parsed)
            event.listen(engine, "connect", lambda connection, _record: _durable(connection, place_of(engine)))
            event.listen(engine, "begin", _begin)
            return engine
        if parsed.drivername != "postgresql+psycopg":
            raise WrongCallError("store_url", url=parsed.render_as_string(hide_password=True))
        # a server that went silent is noticed after some seconds, not after the system's quarter of an hour
        silence = {"keepalives_idle": 5, "keepalives_interval": 2, "keepalives_count": 3, "tcp_user_timeout": 10_000}
        limits = {"options": f"-c statement_timeout={1000 * statement_timeout_s}"}
        arguments = {"connect_timeout": CONNECT_TIMEOUT_S, **silence, **limits}
        return create_engine(parsed, connect_args=arguments, pool_pre_ping=True)
    except (ArgumentError, NoSuchModuleError) as error:
        raise WrongCallError("store_url", url=url.partition("@")[2] or url) from error
    except ModuleNotFoundError as error:
        raise MissingHereError("no_postgres_driver") from error


WRITES = "writes"
"""The option of a connection that is going to write: an embedded store then lets one after another in."""


def place_of(engine: Engine) -> str:
    """Return where a store is, without its password."""
    url = engine.url
    if url.get_backend_name() == "sqlite":
        return url.database or "memory"
    return url.render_as_string(hide_password=True)


def as_told(error: Exception) -> ToldError | None:
    """Return what a database's error comes to for a person, or None for another error."""
    return lacking("", error) if isinstance(error, DatabaseError) else None


def lacking(place: str, error: DatabaseError) -> ToldError:
    """Return what a database's own error comes to for a person: DamagedError for records that are not whole."""
    reason = str(error.orig).strip().splitlines()[0] if error.orig and str(error.orig).strip() else "it does not answer"
    if is_damage(error):
        return DamagedError("store_damaged", place=place, reason=reason)
    return MissingHereError("store_unwritable", place=place, reason=reason)


SQLITE_DAMAGE = {sqlite3.SQLITE_ERROR, sqlite3.SQLITE_CORRUPT, sqlite3.SQLITE_NOTADB, sqlite3.SQLITE_CONSTRAINT}
"""Primary result codes of SQLite for a file that is not whole; SQLITE_ERROR is a table or column that is not there."""

POSTGRES_DAMAGE = ("42P01", "42703", "23", "XX")
"""Beginnings of SQLSTATE codes of PostgreSQL for tables, columns or content that are not whole."""


def is_damage(error: DatabaseError) -> bool:
    """Tell whether a database's error comes from what it holds, and not from the machine or the network."""
    code = getattr(error.orig, "sqlite_errorcode", None)
    if code is not None:
        return code & 0xFF in SQLITE_DAMAGE  # the low byte of an extended code is the primary one
    return str(getattr(error.orig, "sqlstate", "") or "").startswith(POSTGRES_DAMAGE)


def made_ready(engine: Engine) -> None:
    """Bring the tables up to this program's version.

    Raises MissingHereError for a newer or unreachable store and DamagedError for one that is not whole.
    """
    place = place_of(engine)
    try:
        with engine.connect() as connection:
            if _version(connection, place) == SCHEMA_VERSION:
                return
        with engine.execution_options(**{WRITES: True}).begin() as connection:
            if engine.dialect.name == "postgresql":
                connection.execute(statement("SELECT pg_advisory_xact_lock(:key)"), {"key": STORE_LOCK})
            version = _version(connection, place)
            if version is not None and version > SCHEMA_VERSION:
                raise MissingHereError("store_version", place=place, version=version, known=SCHEMA_VERSION)
            if version != SCHEMA_VERSION:
                _upgrade(connection, version, place)
    except DatabaseError as error:
        raise lacking(place, error) from error


def _version(connection: Connection, place: str) -> int | None:
    """Return the version of the tables, None where there are none yet; raises DamagedError where it cannot be told."""
    names = set(inspect(connection).get_table_names())
    if schema_table.name in names:
        versions = connection.execute(select(schema_table.c.version).limit(2)).scalars().all()
        if len(versions) == 1 and type(versions[0]) is int and versions[0] >= 1:
            return versions[0]
    elif not names & metadata.tables.keys():
        return None
    raise DamagedError("store_damaged", place=place, reason=text("damage.no_version"))


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
        for line in ("PRAGMA journal_mode=WAL", "PRAGMA synchronous=FULL", "PRAGMA foreign_keys=ON"):
            cursor.execute(line)
    except UnicodeDecodeError as error:  # the driver cannot say what is wrong with the tables: it is not even text
        raise DamagedError("store_damaged", place=place, reason=text("damage.no_tables")) from error
    finally:
        cursor.close()


def _text(kept: bytes) -> str:
    """Return a text as it is kept; bytes that are no UTF-8 become U+FFFD, so that one does not hide all rows."""
    return kept.decode("utf-8", "replace")


def _begin(connection: Connection) -> None:
    writes = connection.get_execution_options().get(WRITES)
    connection.exec_driver_sql("BEGIN IMMEDIATE" if writes else "BEGIN")
