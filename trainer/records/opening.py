"""Opens a database by its URL and brings its tables to the version that this program knows."""

from __future__ import annotations

from pathlib import Path

from sqlalchemy import Connection, Engine, create_engine, event, inspect, select
from sqlalchemy import text as statement
from sqlalchemy.engine import make_url
from sqlalchemy.exc import ArgumentError, DatabaseError, NoSuchModuleError

from trainer.errors import MissingHereError, WrongCallError
from trainer.records.tables import SCHEMA_VERSION, schema_table

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
            event.listen(engine, "connect", _durable)
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


def as_told(error: Exception) -> MissingHereError | None:
    """Return what a database's error comes to for a person, or None for another error."""
    return lacking("", error) if isinstance(error, DatabaseError) else None


def lacking(place: str, error: DatabaseError) -> MissingHereError:
    """Return what a database's own error comes to for a person."""
    reason = str(error.orig).strip().splitlines()[0] if error.orig and str(error.orig).strip() else "it does not answer"
    return MissingHereError("store_unwritable", place=place, reason=reason)


def made_ready(engine: Engine) -> None:
    """Bring the tables up to this program's version; raises MissingHereError for a newer or unreachable store."""
    place = place_of(engine)
    try:
        with engine.connect() as connection:
            if _version(connection) == SCHEMA_VERSION:
                return
        with engine.execution_options(**{WRITES: True}).begin() as connection:
            if engine.dialect.name == "postgresql":
                connection.execute(statement("SELECT pg_advisory_xact_lock(:key)"), {"key": STORE_LOCK})
            version = _version(connection)
            if version is not None and version > SCHEMA_VERSION:
                raise MissingHereError("store_version", place=place, version=version, known=SCHEMA_VERSION)
            if version != SCHEMA_VERSION:
                _upgrade(connection, version)
    except DatabaseError as error:
        raise lacking(place, error) from error


def _version(connection: Connection) -> int | None:
    if not inspect(connection).has_table("schema_version"):
        return None
    return connection.execute(select(schema_table.c.version)).scalar_one_or_none()


def _upgrade(connection: Connection, version: int | None) -> None:
    from alembic import command
    from alembic.config import Config

    config = Config()
    config.set_main_option("script_location", str(Path(__file__).parent / "migrations"))
    config.attributes["connection"] = connection
    if version == 1:
        command.stamp(config, "0001")
    command.upgrade(config, "head")


def _durable(connection: object, _record: object) -> None:
    """An event counts once it is on the disk: a write-ahead log, synchronised at every commit.

    The driver's own transactions are switched off, since they leave changes of tables outside: SQLAlchemy's manual,
    "Serializable isolation / Savepoints / Transactional DDL" under SQLite.
    """
    connection.isolation_level = None  # type: ignore[attr-defined]  # SQLAlchemy hands in the driver's own connection
    cursor = connection.cursor()  # type: ignore[attr-defined]
    for line in ("PRAGMA journal_mode=WAL", "PRAGMA synchronous=FULL", "PRAGMA foreign_keys=ON"):
        cursor.execute(line)
    cursor.close()


def _begin(connection: Connection) -> None:
    writes = connection.get_execution_options().get(WRITES)
    connection.exec_driver_sql("BEGIN IMMEDIATE" if writes else "BEGIN")
