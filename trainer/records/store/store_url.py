"""Parse and validate the address of a store, and show it without its password."""

from __future__ import annotations

import re

from sqlalchemy.engine import URL, make_url
from sqlalchemy.exc import ArgumentError, NoSuchModuleError

from trainer.errors import MissingHereError, WrongCallError

POSTGRES = "postgresql+psycopg"


def store_url(text: str) -> URL:
    """Return an address as a URL; raises WrongCallError for one that is none, MissingHereError without the driver."""
    secretless = text.rpartition("@")[2].partition("?")[0]
    try:
        url = make_url(text)
        kind = url.get_backend_name()
    except (ArgumentError, NoSuchModuleError) as error:
        raise WrongCallError("store_url", url=secretless) from error
    except ValueError as error:  # of the port, which is all that is read as a number
        bare_ipv6 = re.match(r"\[?[0-9a-fA-F]*:[0-9a-fA-F:.]*:[0-9a-fA-F:.]*(/|$)", secretless)
        raise WrongCallError("store_ipv6" if bare_ipv6 else "store_port", url=secretless) from error
    if kind == "sqlite" and not url.query and not url.host:
        return url
    if url.drivername != POSTGRES:
        raise WrongCallError("store_url", url=display_url(url))
    if url.port is not None and not 0 < url.port < 2**16:
        raise WrongCallError("store_port", url=secretless)
    try:
        (url.host or "").encode("idna")
    except UnicodeError as error:
        raise WrongCallError("store_url", url=secretless) from error
    _refuse_options(url)
    return url


def _refuse_options(url: URL) -> None:
    try:
        from psycopg import ProgrammingError
        from psycopg.conninfo import make_conninfo
    except ImportError as error:  # the driver, or the C library that it needs
        raise MissingHereError("no_postgres_driver") from error
    for name in url.query:
        try:
            make_conninfo("", **{name: ""})
        except ProgrammingError as error:
            raise WrongCallError("store_option", option=name) from error


def display_url(url: URL) -> str:
    """Return a URL without its password and without options, which may hold one too."""
    return url.set(query={}).render_as_string(hide_password=True)
