"""Turns at what keeps a processor busy for seconds, so that the rest of the service goes on answering."""

from collections.abc import Iterator
from contextlib import contextmanager
from threading import BoundedSemaphore
from time import monotonic

from spreadwright.rest.working import is_cancelled, is_job, told

MOST_AT_ONCE = 2
"""Searches that one process runs at the same time; fewer than the requests that it answers."""
PATIENCE_S = 10.0
"""How long a request waits for its turn; of all requests one, so that a thread is left for what needs no turn."""

_turns, _queue = BoundedSemaphore(MOST_AT_ONCE), BoundedSemaphore(1)


class Deadline:
    """So many seconds from its start."""

    def __init__(self, seconds: float) -> None:
        self._seconds = seconds
        self.start()

    def start(self) -> None:
        """The time begins now."""
        self._end = monotonic() + self._seconds

    def is_over(self) -> bool:
        """Whether they are over, or nobody wants to know any more; a job is told how many have passed."""
        left_s = self._end - monotonic()
        if left_s <= 0 or is_cancelled():
            return True
        told(1 - min(1.0, left_s / self._seconds), "searching")
        return False


class AllBusy(Exception):
    """As many searches run already as may.

    Attributes:
        seconds: When to ask again.
    """

    def __init__(self, seconds: int, running: str = f"{MOST_AT_ONCE} searches run") -> None:
        super().__init__(f"{running} already. Ask again in {seconds} s.")
        self.seconds = seconds


@contextmanager
def turn(seconds: float) -> Iterator[None]:
    """A turn for something that takes so many seconds at most; a job, for which no client waits, waits for it.

    Raises:
        AllBusy: None is free, nor was within the time that a request may wait.
    """
    if not _taken():
        raise AllBusy(max(1, round(seconds)))
    try:
        yield
    finally:
        _turns.release()


def _taken() -> bool:
    """Whether a turn was had."""
    if _turns.acquire(blocking=is_job()):
        return True
    if not _queue.acquire(blocking=False):
        return False
    try:
        return _turns.acquire(timeout=PATIENCE_S)
    finally:
        _queue.release()
