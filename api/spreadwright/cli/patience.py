"""How long a search may go on: until its time is over, or until Ctrl+C asks for the best so far."""

import signal
import sys
import time
from threading import Timer
from types import FrameType, TracebackType
from typing import Any

import click


class Announcement:
    """Says on stderr what goes on, unless it is cancelled within so many seconds."""

    def __init__(self, what: str, after: float = 1.0) -> None:
        self._timer = Timer(after, lambda: click.echo(what, err=True))
        self._timer.daemon = True
        self._timer.start()

    def cancel(self) -> None:
        """It is over."""
        self._timer.cancel()


class Patience:
    """Is asked whether the time is over. Within `with`, the first Ctrl+C ends it and the second ends the program."""

    def __init__(self, seconds: float) -> None:
        self.seconds = seconds
        self.was_interrupted = False
        self.has_ended = False
        self._start = time.monotonic()
        self._before: Any = None

    def __enter__(self) -> "Patience":
        self._before = signal.signal(signal.SIGINT, self._interrupted)
        return self

    def __exit__(
        self, kind: type[BaseException] | None, reason: BaseException | None, at: TracebackType | None
    ) -> None:
        signal.signal(signal.SIGINT, self._before)

    @property
    def passed(self) -> float:
        """Seconds since the beginning."""
        return time.monotonic() - self._start

    def restart(self) -> None:
        """The time begins now."""
        self._start = time.monotonic()

    def is_over(self) -> bool:
        """Whether to stop; `has_ended` keeps that it was said."""
        self.has_ended = self.has_ended or self.was_interrupted or self.passed >= self.seconds
        return self.has_ended

    def _interrupted(self, number: int, frame: FrameType | None) -> None:
        if self.was_interrupted:
            raise KeyboardInterrupt
        self.was_interrupted = True


class Progress:
    """Tells on stderr how a search goes on: one changing line on a terminal, otherwise a line for each better cost."""

    def __init__(self, patience: Patience) -> None:
        self._patience = patience
        self._is_live = sys.stderr.isatty()
        self._cost: dict[str, int] = {}
        self._bound: dict[str, int] = {}

    def bounded(self, paper: str, lower_bound: int) -> None:
        """No plan for this paper costs less."""
        self._bound[paper] = lower_bound
        self._say(paper, f"at least {lower_bound} needed")

    def improved(self, paper: str, cost: int, largest_spare: int) -> None:
        """A better plan."""
        if self._is_live or cost != self._cost.get(paper):
            self._cost[paper] = cost
            self._say(paper, f"found {cost}, at least {self._bound.get(paper, 0)} needed")

    def searched(self, paper: str, sheets: int, rounds: int) -> None:
        """Another round of the search."""
        if self._is_live:
            self._say(paper, f"trying {sheets}, round {rounds + 1}")

    def close(self) -> None:
        """Clears the line that changes."""
        if self._is_live:
            click.echo("\r\x1b[K", err=True, nl=False)

    def _say(self, paper: str, what: str) -> None:
        line = f"{self._patience.passed:5.1f} s  {paper + ': ' if paper else ''}{what}"
        click.echo(f"\r\x1b[K{line}" if self._is_live else line, err=True, nl=not self._is_live)
