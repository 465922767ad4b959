"""One thread of a process that now and then removes what nothing needs any more; of all processes one an hour does.

It also sees to jobs that were left by a process that has ended, which nobody may ask for meanwhile.
"""

from collections.abc import Callable
from datetime import timedelta
from logging import getLogger
from threading import Thread
from time import sleep

from spreadwright.rest.settings import Settings
from spreadwright.store.cleaning import Cleaned
from spreadwright.store.opening import Store

EVERY_S = 3600
"""How often the store is cleaned."""
_LOOK_S, _PAUSE_S = 300, 0.2
_NAME = "cleaning"


def start_cleaner(store: Store, settings: Settings, wake: Callable[[], None]) -> None:
    """Begins to clean, in a thread that ends with its process.

    Args:
        store: What is cleaned.
        settings: How long what is kept.
        wake: Has jobs worked off.
    """
    Thread(target=_clean_for_ever, args=(store, settings, wake), name="cleaner", daemon=True).start()


def _clean_for_ever(store: Store, settings: Settings, wake: Callable[[], None]) -> None:
    while True:
        try:
            see_to_jobs(store, wake)
            clean_in_turn(store, settings)
        except Exception:  # a database that is away comes back; the thread has to be there then
            getLogger(__name__).exception("The store cannot be cleaned")
        sleep(_LOOK_S)


def see_to_jobs(store: Store, wake: Callable[[], None]) -> None:
    """Has jobs worked off if there are any."""
    if store.jobs.unfinished():
        wake()


def clean_in_turn(store: Store, settings: Settings) -> Cleaned | None:
    """What was removed; None when somebody has cleaned this hour."""
    if store.counters.hit(_NAME, EVERY_S).used > 1:
        return None
    return clean(store, settings)


def clean(store: Store, settings: Settings) -> Cleaned:
    """What was removed, here and now."""
    keys, jobs = timedelta(days=settings.keys_days), timedelta(seconds=settings.results_s)
    return store.cleaning.sweep(keys=keys, jobs=jobs, pause=lambda: sleep(_PAUSE_S))
