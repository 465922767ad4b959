"""Brings a database to the shape of the tables that this version knows, or back; no step is ever half done.

The steps lie in `migrations/versions` and ship with the package. Processes that start together take turns.
"""

from collections.abc import Callable
from pathlib import Path
from typing import Any

from alembic.config import Config
from alembic.runtime.environment import EnvironmentContext
from alembic.runtime.migration import MigrationContext
from alembic.script import ScriptDirectory
from sqlalchemy import Connection, text

from spreadwright.store.database import Database
from spreadwright.store.errors import BadAddress
from spreadwright.store.tables import Base

BASE, NEWEST = "base", "head"
_TURN = 0x5950_5257
"""The advisory lock of PostgreSQL that migrations hold."""


def migrate(database: Database, target: str = NEWEST) -> None:
    """Up to the newest shape, or to another one that is named.

    Raises:
        BadAddress: A newer version of the program has been at work there.
    """
    _run(database, target, lambda script, here: script._upgrade_revs(target, here))


def migrate_down(database: Database, target: str = BASE) -> None:
    """Back to an earlier shape; what that one has no place for is lost."""
    _run(database, target, lambda script, here: script._downgrade_revs(target, here))


def version(database: Database) -> str | None:
    """The shape that the database has; None when it is empty."""
    with database.engine.connect() as connection:
        return MigrationContext.configure(connection).get_current_revision()


def newest() -> str | None:
    """The shape that this version of the program knows."""
    return _script().get_current_head()


def _run(database: Database, target: str, steps: Callable[[ScriptDirectory, Any], Any]) -> None:
    script = _script()
    with database.writing_connection() as connection:
        if not database.is_sqlite:  # SQLite's writers take turns anyway
            connection.execute(text("SELECT pg_advisory_xact_lock(:turn)"), {"turn": _TURN})
        _refuse_newer(connection, script, database)
        environment = EnvironmentContext(
            Config(), script, fn=lambda here, _: steps(script, here), destination_rev=target
        )
        with environment:
            environment.configure(
                connection=connection, target_metadata=Base.metadata, render_as_batch=True, transactional_ddl=False
            )
            environment.run_migrations()


def _refuse_newer(connection: Connection, script: ScriptDirectory, database: Database) -> None:
    here = MigrationContext.configure(connection).get_current_revision()
    known = {each.revision for each in script.walk_revisions()}
    if here is not None and here not in known:
        raise BadAddress(database.url_shown, "a newer version of Spreadwright keeps its documents there.")


def _script() -> ScriptDirectory:
    return ScriptDirectory(str(Path(__file__).parent / "migrations"))
