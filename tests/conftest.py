from itertools import count

import pytest

import databases
from spreadwright.store.database import Database
from spreadwright.store.migrating import migrate

_numbers = count(1)


@pytest.fixture(scope="session")
def postgres():
    """The address of a private cluster with a database `migrated`, which others are copied from."""
    with databases.cluster() as cluster, databases.database(cluster, "migrated") as migrated:
        first = Database(migrated)
        migrate(first)
        first.dispose()
        yield cluster


@pytest.fixture(params=["sqlite", "postgresql"])
def address(request, tmp_path):
    """A new database of either kind; what holds for one holds for the other."""
    if request.param == "sqlite":
        yield f"sqlite:///{tmp_path}/store.db"
        return
    with databases.database(request.getfixturevalue("postgres"), f"test_{next(_numbers)}", "migrated") as made:
        yield made
