"""What long work tells about itself while it is done, and how it learns that nobody wants it any more.

A view calls `told` and `is_cancelled` wherever it can; without a job behind it neither does anything.
"""

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from contextvars import ContextVar
from dataclasses import dataclass


class Cancelled(Exception):
    """Somebody cancelled the job, or another process has it."""


@dataclass(frozen=True, slots=True)
class Work:
    """Where a job keeps how far it is.

    Attributes:
        tell: Takes the share that is done, 0 to 1, and what is done next in words.
        is_cancelled: Whether it is to stop.
    """

    tell: Callable[[float, str], None]
    is_cancelled: Callable[[], bool]


_work: ContextVar[Work | None] = ContextVar("work", default=None)


@contextmanager
def at_work(work: Work) -> Iterator[None]:
    """What is done here is done for a job."""
    mark = _work.set(work)
    try:
        yield
    finally:
        _work.reset(mark)


def is_job() -> bool:
    """Whether a job is behind what is done, and no client that waits."""
    return _work.get() is not None


def told(done: float, words: str = "") -> None:
    """Tells how far the work is.

    Raises:
        Cancelled: It is to stop.
    """
    work = _work.get()
    if work is None:
        return
    if work.is_cancelled():
        raise Cancelled
    work.tell(done, words)


def is_cancelled() -> bool:
    """Whether the work is to stop."""
    work = _work.get()
    return work is not None and work.is_cancelled()
