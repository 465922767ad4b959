"""Where orders are carried out: in this process, in processes of our own, or wherever an executor has it done."""

import multiprocessing
import os
import signal
from collections.abc import Callable, Iterator, Sequence
from concurrent.futures import FIRST_COMPLETED, Executor, Future, ProcessPoolExecutor, wait
from contextlib import contextmanager
from itertools import islice
from multiprocessing.connection import Connection
from threading import Thread
from types import TracebackType
from typing import ParamSpec, TypeVar

AT_ONCE = 64
"""So many orders are given to an executor at a time: what they bring is written before more are given."""

Order = TypeVar("Order")
Result = TypeVar("Result")
Given = ParamSpec("Given")


def carried_out(
    make: Callable[[Order], Result], orders: Sequence[Order], executor: Executor
) -> Iterator[tuple[int, Future[Result]]]:
    """The number of each order and what came of it, in order of completion.

    Args:
        make: A function of a module; it and the orders travel to where the executor works.
        orders: What it is called with.
        executor: Anything that keeps to `concurrent.futures`.
    """
    at_once = 1 if isinstance(executor, Here) else AT_ONCE
    waiting, running = iter(enumerate(orders)), dict[Future[Result], int]()
    try:
        while True:
            for number, order in islice(waiting, at_once - len(running)):
                running[executor.submit(make, order)] = number
            if not running:
                return
            done, _ = wait(running, return_when=FIRST_COMPLETED)
            for future in sorted(done, key=running.__getitem__):
                yield running.pop(future), future
    finally:
        for future in running:
            future.cancel()


class Here(Executor):
    """Does at once, in this process, what it is given."""

    def submit(self, fn: Callable[Given, Result], /, *args: Given.args, **kwargs: Given.kwargs) -> Future[Result]:
        """A future that is done; whoever presses Ctrl+C is not made to wait for it."""
        future: Future[Result] = Future()
        try:
            future.set_result(fn(*args, **kwargs))
        except Exception as reason:
            future.set_exception(reason)
        return future


class Workers(ProcessPoolExecutor):
    """Processes that begin from nothing, since threads of libraries do not survive a fork, and that end with this one.

    Left by an exception, they end in the middle of what they do. They do not hear Ctrl+C, which is ours to answer.
    """

    def __init__(self, count: int) -> None:
        self._ending, self._end = multiprocessing.Pipe(duplex=False)
        context = multiprocessing.get_context("spawn")
        super().__init__(count, mp_context=context, initializer=_end_with, initargs=(self._ending,))

    def submit(self, fn: Callable[Given, Result], /, *args: Given.args, **kwargs: Given.kwargs) -> Future[Result]:
        """As every executor; a process that begins on the way inherits which signals it does not hear."""
        with _unheard(signal.SIGINT):
            return super().submit(fn, *args, **kwargs)

    def __exit__(
        self, kind: type[BaseException] | None, reason: BaseException | None, at: TracebackType | None
    ) -> bool | None:
        if kind is not None:
            self._end.close()
            for process in list((self._processes or {}).values()):  # one that only begins does not watch the pipe yet
                process.kill()
        self.shutdown(wait=True, cancel_futures=True)
        self._end.close()
        self._ending.close()
        return None


@contextmanager
def _unheard(number: signal.Signals) -> Iterator[None]:
    """A signal waits until the block is over."""
    before = signal.pthread_sigmask(signal.SIG_BLOCK, {number})
    try:
        yield
    finally:
        signal.pthread_sigmask(signal.SIG_SETMASK, before)


def _end_with(ending: Connection) -> None:
    """In a worker: end as soon as the other end of a pipe is closed, by its owner or by its owner's death."""

    def watch() -> None:
        try:
            ending.recv_bytes()
        except (EOFError, OSError):
            os._exit(1)

    Thread(target=watch, daemon=True).start()
