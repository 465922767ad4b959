"""How often something has happened in the present window of time, counted for all processes together."""

from dataclasses import dataclass
from datetime import UTC, datetime
from hashlib import sha256

from sqlalchemy import delete, text

from spreadwright.store.database import Database
from spreadwright.store.tables import CounterRow

_UPSERT = text(
    "INSERT INTO counters (name, starts, used, ends) VALUES (:name, :starts, :by, :ends) "
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
        short = name if len(name) <= 100 else sha256(name.encode("utf-8", "replace")).hexdigest()
        values = {"name": f"{window_s}:{short}", "starts": starts, "by": by, "ends": starts + window_s}
        with self._database.writing_connection() as connection:
            used = connection.execute(_UPSERT, values).scalar_one()
        return Count(int(used), datetime.fromtimestamp(starts + window_s, UTC))

    def forget(self) -> None:
        """Drops the windows that are over."""
        now = int(self._database.now().timestamp())
        with self._database.writing() as session:
            session.execute(delete(CounterRow).where(CounterRow.ends <= now))
