"""The database: SQLite in a file, or PostgreSQL by address; transactions that read, and transactions that write.

SQLite: write-ahead log, so that readers never wait for a writer; a writer takes its turn when it begins
(BEGIN IMMEDIATE), never in the middle. PostgreSQL: read committed, rows locked where they are read to be changed.
"""

import os
import sqlite3
import tempfile
import weakref
from collections.abc import Callable, Iterator
from contextlib import closing, contextmanager
from datetime import UTC, datetime
from pathlib import Path
from shutil import rmtree
from typing import Any

from sqlalchemy import Connection, Engine, PoolProxiedConnection, create_engine, event, text
from sqlalchemy.engine import URL, make_url
from sqlalchemy.exc import ArgumentError, DBAPIError, InterfaceError, OperationalError
from sqlalchemy.exc import TimeoutError as PoolTimeout
from sqlalchemy.orm import Session

from spreadwright.store.errors import BadAddress, Busy

VARIABLE = "SPREADWRIGHT_DATABASE_URL"
BUSY_MS = 15_000
"""How long a writer waits for its turn at a SQLite file."""
SYNCED = "FULL"
"""What was acknowledged outlives a loss of power."""
POOL = 8

Clock = Callable[[], datetime]


def utc_now() -> datetime:
    """The clock of the machine."""
    return datetime.now(UTC)


class Database:
    """Connections to one database.

    Args:
        address: `sqlite:///path/to/file`, or `postgresql://user@host/name`; a temporary file when None.
        now: The clock.

    Raises:
        BadAddress: Nothing that is known here can be reached so.
    """

    def __init__(self, address: str | None = None, *, now: Clock = utc_now) -> None:
        self.now = now
        self.url = _url(address or _temporary(self))
        self.engine = _engine(self.url)
        self._writing = self.engine.execution_options(writes=True)
        _closed_before_fork(self)

    @property
    def is_sqlite(self) -> bool:
        """Whether it is a file."""
        return self.engine.dialect.name == "sqlite"

    @property
    def url_shown(self) -> str:
        """The address without its password and without the name of a driver."""
        return _shown(self.url)

    def reach(self) -> None:
        """Opens a connection, and tells what the driver says where there is none to be had.

        Raises:
            BadAddress: Nothing of that kind answers there, or it lets nobody in.
        """
        try:
            self.engine.connect().close()
        except (DBAPIError, ValueError) as reason:
            told = str(getattr(reason, "orig", None) or reason).strip().partition("\n")[0]
            raise BadAddress(self.url_shown, f"“{told}” is what the database says.") from reason

    @contextmanager
    def reading(self) -> Iterator[Session]:
        """A transaction that changes nothing.

        Raises:
            Busy: The database does not answer.
        """
        with _told_busy(), Session(self.engine, expire_on_commit=False) as session:
            yield session

    @contextmanager
    def writing(self) -> Iterator[Session]:
        """A transaction that happens as a whole or not at all; raises like `reading`."""
        with _told_busy(), Session(self._writing, expire_on_commit=False) as session, session.begin():
            yield session

    @contextmanager
    def writing_connection(self) -> Iterator[Connection]:
        """The same, without models."""
        with _told_busy(), self._writing.begin() as connection:
            yield connection

    def quick_row(self, sql: str, *values: object) -> Any:
        """One row of one statement, past everything that makes statements comfortable: a tenth of the time.

        Args:
            sql: With `?` for each value.

        Raises:
            Busy: The database does not answer.
        """
        with self._driver() as connection:
            return self._row(connection, sql, values)

    def quick_write(self, sql: str, *values: object) -> Any:
        """The row of a statement that writes what need not outlive a loss of power; raises like `quick_row`."""
        with self._driver() as connection:
            if not self.is_sqlite:
                return self._row(connection, sql, values)
            connection.execute("PRAGMA synchronous=NORMAL")
            try:
                return self._row(connection, sql, values)
            finally:
                connection.execute(f"PRAGMA synchronous={SYNCED}")

    def _row(self, connection: Any, sql: str, values: tuple[object, ...]) -> Any:
        found = connection.execute(sql if self.is_sqlite else sql.replace("?", "%s"), values).fetchall()
        return found[0] if found else None

    @contextmanager
    def _driver(self) -> Iterator[Any]:
        """A connection of the driver itself, which commits each statement."""
        with _told_busy():
            try:
                with closing(self.engine.raw_connection()) as pooled, _committing(pooled) as driver:
                    yield driver
            except self.engine.dialect.loaded_dbapi.OperationalError as reason:
                raise OperationalError("", None, reason) from reason

    def is_ready(self) -> bool:
        """Whether it answers."""
        try:
            with self.engine.connect() as connection:
                return connection.execute(text("SELECT 1")).scalar() == 1
        except (OperationalError, InterfaceError, PoolTimeout):
            return False

    def dispose(self) -> None:
        """Closes what is open; whatever comes later opens it again."""
        self.engine.dispose()


def _url(address: str) -> URL:
    try:
        url = make_url(address)
    except (ArgumentError, ValueError):
        raise BadAddress(address.partition("@")[2] or address, "it is no address of a database.") from None
    if url.drivername in ("postgres", "postgresql"):
        return url.set(drivername="postgresql+psycopg")
    if url.drivername == "sqlite" and url.database in (None, "", ":memory:"):
        raise BadAddress(address, "name a file, such as sqlite:////var/lib/spreadwright/store.db.")
    if url.drivername == "sqlite" and url.query:
        raise BadAddress(address, "name a file and nothing after it.")
    if url.drivername not in ("sqlite", "postgresql+psycopg"):
        raise BadAddress(url.render_as_string(), "begin it with sqlite:/// or postgresql://.")
    return url


def _engine(url: URL) -> Engine:
    if url.drivername != "sqlite":
        return create_engine(url, pool_size=POOL, max_overflow=POOL, pool_pre_ping=True)
    _make_room(url)
    engine = create_engine(url, pool_size=POOL, max_overflow=POOL)
    event.listen(engine, "connect", _prepare_sqlite)
    event.listen(engine, "begin", _begin_sqlite)
    return engine


def _make_room(url: URL) -> None:
    try:
        Path(str(url.database)).absolute().parent.mkdir(parents=True, exist_ok=True)
    except (OSError, ValueError) as reason:
        raise BadAddress(_shown(url), f"its folder cannot be made: {getattr(reason, 'strerror', reason)}.") from reason


def _shown(url: URL) -> str:
    return url.set(drivername=url.get_backend_name()).render_as_string(hide_password=True)


def _prepare_sqlite(connection: Any, _: Any) -> None:
    connection.isolation_level = None  # else Python begins transactions when it sees fit
    for pragma in (
        f"busy_timeout={BUSY_MS}",
        "journal_mode=WAL",
        f"synchronous={SYNCED}",
        "foreign_keys=ON",
        "trusted_schema=OFF",
    ):
        connection.execute(f"PRAGMA {pragma}")


def _begin_sqlite(connection: Connection) -> None:
    writes = connection.get_execution_options().get("writes", False)
    connection.exec_driver_sql("BEGIN IMMEDIATE" if writes else "BEGIN")


@contextmanager
def _committing(pooled: PoolProxiedConnection) -> Iterator[Any]:
    """PostgreSQL is told nothing but the statement, no beginning and no end; SQLite has been told so once for all."""
    driver: Any = pooled.driver_connection
    is_sqlite = isinstance(driver, sqlite3.Connection)
    try:
        if not is_sqlite:
            driver.autocommit = True
        yield driver
        if not is_sqlite:
            driver.autocommit = False
    except BaseException:
        pooled.invalidate()  # nobody gets a connection that still commits by itself
        raise


@contextmanager
def _told_busy() -> Iterator[None]:
    try:
        yield
    except (OperationalError, InterfaceError, PoolTimeout) as reason:
        if "no such" in str(reason):  # a table or column that lacks is a fault of ours
            raise
        raise Busy from reason


def _closed_before_fork(database: Database) -> None:
    """No connection may be used on both sides of a fork."""
    seen = weakref.ref(database)

    def close() -> None:
        found = seen()
        if found is not None:
            found.dispose()

    os.register_at_fork(before=close)


def _temporary(owner: Database) -> str:
    """The address of a file that goes with the process that made it, and with none of its children."""
    folder = tempfile.mkdtemp(prefix="spreadwright-")
    weakref.finalize(owner, _remove, folder, os.getpid())
    return f"sqlite:///{folder}/store.db"


def _remove(folder: str, process: int) -> None:
    if os.getpid() == process:
        rmtree(folder, ignore_errors=True)
