"""Turns at what keeps a processor busy for seconds, so that the rest of the service goes on answering."""

from collections.abc import Iterator
from contextlib import contextmanager
from threading import BoundedSemaphore
from time import monotonic

MOST_AT_ONCE = 2
"""Searches that one process runs at the same time; fewer than the requests that it answers."""

_turns = BoundedSemaphore(MOST_AT_ONCE)


class Deadline:
    """So many seconds from its start."""

    def __init__(self, seconds: float) -> None:
        self._seconds = seconds
        self.start()

    def start(self) -> None:
        """The time begins now."""
        self._end = monotonic() + self._seconds

    def is_over(self) -> bool:
        """Whether they are over."""
        return monotonic() >= self._end


class AllBusy(Exception):
    """As many searches run already as may.

    Attributes:
        seconds: When to ask again.
    """

    def __init__(self, seconds: int) -> None:
        super().__init__(f"{MOST_AT_ONCE} searches run already. Ask again in {seconds} s.")
        self.seconds = seconds


@contextmanager
def turn(seconds: float) -> Iterator[None]:
    """A turn for something that takes so many seconds at most.

    Raises:
        AllBusy: None is free.
    """
    if not _turns.acquire(blocking=False):
        raise AllBusy(max(1, round(seconds)))
    try:
        yield
    finally:
        _turns.release()
