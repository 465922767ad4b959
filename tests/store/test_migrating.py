from threading import Barrier, Thread

import pytest
from alembic.autogenerate import compare_metadata
from alembic.runtime.migration import MigrationContext
from sqlalchemy import inspect, text

from builder import sound
from spreadwright.store.database import Database
from spreadwright.store.errors import BadAddress
from spreadwright.store.migrating import migrate, migrate_down, newest, version
from spreadwright.store.opening import open_store
from spreadwright.store.tables import Base


@pytest.fixture
def database(address):
    opened = Database(address)
    yield opened
    opened.dispose()


def test_migrations_run_both_ways(database):
    for _ in range(2):
        migrate(database)
        assert version(database) == newest()
        assert set(Base.metadata.tables) < set(inspect(database.engine).get_table_names())
        migrate_down(database)
        assert version(database) is None
        left = {name for name in inspect(database.engine).get_table_names() if not name.startswith("sqlite")}
        assert left == {"alembic_version"}


def test_a_database_that_is_in_use_goes_down_and_up(address):
    store = open_store(address)
    store.documents.create("recipes", sound(), "ann")
    migrate_down(store.database)
    migrate(store.database)
    assert store.documents.create("recipes", sound(), "ann").document.id == "window-seat"


def test_migrations_make_what_the_models_say(database):
    migrate(database)

    def ours(_, name, kind, *__):
        return kind != "table" or not str(name).startswith("search")

    def of_search(difference):
        return "search" in str(difference)

    with database.engine.connect() as connection:
        context = MigrationContext.configure(
            connection, opts={"include_object": lambda thing, *rest: ours(thing, *rest)}
        )
        found = [each for each in compare_metadata(context, Base.metadata) if not of_search(each)]
    assert found == []


def test_processes_that_start_together_take_turns(database, address):
    migrate_down(database)
    barrier, faults = Barrier(4), []

    def start():
        barrier.wait()
        try:
            open_store(address).database.dispose()
        except Exception as reason:
            faults.append(reason)

    threads = [Thread(target=start) for _ in range(4)]
    for each in threads:
        each.start()
    for each in threads:
        each.join()
    assert faults == []
    assert version(database) == newest()


def test_a_newer_database_is_left_alone(database):
    migrate(database)
    with database.writing_connection() as connection:
        connection.execute(text("UPDATE alembic_version SET version_num = '9999'"))
    with pytest.raises(BadAddress, match="newer"):
        migrate(database)
