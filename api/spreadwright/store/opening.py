"""Opens the store: one database, and everything that is kept in it."""

import os
from dataclasses import dataclass
from functools import cached_property

from spreadwright.store.cleaning import Cleaning
from spreadwright.store.counters import Counters, Counting
from spreadwright.store.database import VARIABLE, Clock, Database, utc_now
from spreadwright.store.documents import Documents
from spreadwright.store.history import History
from spreadwright.store.jobs import Jobs
from spreadwright.store.lineage import Lineage
from spreadwright.store.listing import Listing
from spreadwright.store.migrating import migrate
from spreadwright.store.publishing import Publishing
from spreadwright.store.readings import Readings
from spreadwright.store.redis_counters import RedisCounters, redis_at
from spreadwright.store.renders import Renders, renders_at
from spreadwright.store.shelves import Shelves
from spreadwright.store.tokens import Tokens

RENDERS_VARIABLE, COUNTERS_VARIABLE = "SPREADWRIGHT_RENDERS", "SPREADWRIGHT_COUNTERS"


@dataclass(frozen=True)
class Store:
    """Everything that is kept, over one database."""

    database: Database
    renders: Renders
    counters: Counting

    @cached_property
    def documents(self) -> Documents:
        """Single documents."""
        return Documents(self.database)

    @cached_property
    def history(self) -> History:
        """Their revisions."""
        return History(self.database)

    @cached_property
    def publishing(self) -> Publishing:
        """Their states."""
        return Publishing(self.database, self.documents)

    @cached_property
    def listing(self) -> Listing:
        """Lists of them."""
        return Listing(self.database)

    @cached_property
    def lineage(self) -> Lineage:
        """What they are derived from."""
        return Lineage(self.database)

    @cached_property
    def readings(self) -> Readings:
        """Them, parsed."""
        return Readings(self.documents)

    @cached_property
    def shelves(self) -> Shelves:
        """Those that are published, as a collection."""
        return Shelves(self.database, self.documents, self.readings)

    @cached_property
    def tokens(self) -> Tokens:
        """Who may write."""
        return Tokens(self.database)

    @cached_property
    def cleaning(self) -> Cleaning:
        """What nothing needs any more."""
        return Cleaning(self.database, self.jobs, self.counters)

    @cached_property
    def jobs(self) -> Jobs:
        """What takes longer than a request."""
        return Jobs(self.database)


def open_store(
    address: str | None = None, *, renders: str | None = None, counters: str | None = None, now: Clock = utc_now
) -> Store:
    """The store at an address, in the shape of this version.

    Args:
        address: As `Database`; what `SPREADWRIGHT_DATABASE_URL` says when None, else a temporary file.
        renders: As `renders_at`; what `SPREADWRIGHT_RENDERS` says when None, else nothing is kept.
        counters: As `redis_at`; what `SPREADWRIGHT_COUNTERS` says when None, else the database counts.

    Raises:
        BadAddress: There is no store at one of the addresses, or it lets nobody in.
        Busy: The database does not answer.
    """
    database = Database(address or os.environ.get(VARIABLE) or None, now=now)
    database.reach()
    migrate(database)
    counted_at = counters or os.environ.get(COUNTERS_VARIABLE)
    return Store(database, renders_at(renders or os.environ.get(RENDERS_VARIABLE)), _counters(counted_at, database))


def _counters(address: str | None, database: Database) -> Counting:
    counted = Counters(database)
    return RedisCounters(redis_at(address), counted, database.now) if address else counted
