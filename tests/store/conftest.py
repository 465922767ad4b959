from datetime import UTC, datetime, timedelta

import pytest

from builder import sound
from spreadwright.store.opening import open_store


class Clock:
    """A clock that goes on by a second whenever it is asked."""

    def __init__(self):
        self.moment = datetime(2026, 5, 4, 12, tzinfo=UTC)

    def __call__(self):
        self.moment += timedelta(seconds=1)
        return self.moment


@pytest.fixture
def clock():
    return Clock()


@pytest.fixture
def store(address, clock):
    opened = open_store(address, now=clock)
    yield opened
    opened.database.dispose()


@pytest.fixture
def recipe(store):
    """A draft, “window-seat”."""
    return store.documents.create("recipes", sound(), "ann").document
