"""How often something has happened in the present window of time, counted for all processes together."""

from dataclasses import dataclass
from datetime import UTC, datetime
from typing import Protocol

from sqlalchemy import delete, select, tuple_

from spreadwright.store.database import Database
from spreadwright.store.tables import CounterRow
from spreadwright.store.words import fitting

_LONGEST = 100
"""Of one name; what is longer is counted under its hash."""
MOST_FORGOTTEN = 500
"""Windows that are dropped at a time."""
_UPSERT = (
    "INSERT INTO counters (name, starts, used, ends) VALUES (?, ?, ?, ?) "
    "ON CONFLICT (name, starts) DO UPDATE SET used = counters.used + excluded.used RETURNING used"
)


@dataclass(frozen=True, slots=True)
class Count:
    """What a window has seen, this time included."""

    used: int
    resets_at: datetime


@dataclass(frozen=True, slots=True)
class Window:
    """A stretch of time that begins at a whole multiple of its length; seconds since 1970."""

    name: str
    starts: int
    ends: int

    @classmethod
    def at(cls, name: str, window_s: int, now: datetime) -> "Window":
        """The present window of that length for a name of any length."""
        moment = int(now.timestamp())
        starts = moment - moment % window_s
        return cls(f"{window_s}:{fitting(name, _LONGEST)}", starts, starts + window_s)


class Counting(Protocol):
    """What counts."""

    def hit(self, name: str, window_s: int, *, by: int = 1) -> Count:
        """Counts so many more."""

    def forget(self) -> int:
        """Drops windows that are over, a bounded number of them; how many."""


class Counters:
    """Windows of fixed length by name; they begin at whole multiples of their length."""

    def __init__(self, database: Database) -> None:
        self._database = database

    def hit(self, name: str, window_s: int, *, by: int = 1) -> Count:
        """Counts so many more."""
        window = Window.at(name, window_s, self._database.now())
        (used,) = self._database.quick_write(_UPSERT, window.name, window.starts, by, window.ends)
        return Count(int(used), datetime.fromtimestamp(window.ends, UTC))

    def forget(self) -> int:
        """Drops windows that are over, so many at most; how many."""
        now = int(self._database.now().timestamp())
        over = select(CounterRow.name, CounterRow.starts).where(CounterRow.ends <= now).limit(MOST_FORGOTTEN)
        with self._database.reading() as session:  # mostly there are none, and nobody has to wait for that
            keys = [tuple(row) for row in session.execute(over)]
        if keys:
            with self._database.writing() as session:
                session.execute(delete(CounterRow).where(tuple_(CounterRow.name, CounterRow.starts).in_(keys)))
        return len(keys)
