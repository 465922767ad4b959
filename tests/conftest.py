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


KINDS = ["sqlite", "postgresql"]


@pytest.fixture(params=KINDS)
def address(request, tmp_path):
    """A new database of either kind; what holds for one holds for the other."""
    yield from _new(request, tmp_path)


@pytest.fixture(scope="module", params=KINDS)
def address_of_module(request, tmp_path_factory):
    """The same, shared by the tests of a module."""
    yield from _new(request, tmp_path_factory.mktemp("database"))


def _new(request, folder):
    if request.param == "sqlite":
        yield f"sqlite:///{folder}/store.db"
        return
    with databases.database(request.getfixturevalue("postgres"), f"test_{next(_numbers)}", "migrated") as made:
        yield made
