"""How often something has happened in the present window of time, counted for all processes together."""

from dataclasses import dataclass
from datetime import UTC, datetime

from sqlalchemy import delete

from spreadwright.store.database import Database
from spreadwright.store.tables import CounterRow
from spreadwright.store.words import fitting

_LONGEST = 100
"""Of one name; what is longer is counted under its hash."""
_UPSERT = (
    "INSERT INTO counters (name, starts, used, ends) VALUES (?, ?, ?, ?) "
    "ON CONFLICT (name, starts) DO UPDATE SET used = counters.used + excluded.used RETURNING used"
)


@dataclass(frozen=True, slots=True)
class Count:
    """What a window has seen, this time included."""

    used: int
    resets_at: datetime


class Counters:
    """Windows of fixed length by name; they begin at whole multiples of their length."""

    def __init__(self, database: Database) -> None:
        self._database = database

    def hit(self, name: str, window_s: int, *, by: int = 1) -> Count:
        """Counts so many more."""
        now = int(self._database.now().timestamp())
        starts = now - now % window_s
        ends = starts + window_s
        (used,) = self._database.quick_write(_UPSERT, f"{window_s}:{fitting(name, _LONGEST)}", starts, by, ends)
        return Count(int(used), datetime.fromtimestamp(ends, UTC))

    def forget(self) -> None:
        """Drops the windows that are over."""
        now = int(self._database.now().timestamp())
        with self._database.writing() as session:
            session.execute(delete(CounterRow).where(CounterRow.ends <= now))
