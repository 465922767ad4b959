"""Long work at the service: how far it is, what came out, and that nobody wants it any more."""

from __future__ import annotations

import time
from collections.abc import Callable
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Any

import httpx

if TYPE_CHECKING:
    from spreadwright.client.client import Client

_OVER = ("done", "failed", "cancelled")


class Cancelled(Exception):
    """The job was cancelled, so nothing comes out of it."""


@dataclass(slots=True)
class Job:
    """One job, as it was when the service was last asked.

    Attributes:
        state: queued, running, done, failed or cancelled.
        progress: The share that is done, 0 to 1.
        words: What is done at the moment.
    """

    client: Client = field(repr=False)
    path: str
    state: str = "queued"
    progress: float = 0.0
    words: str = ""
    poll_s: float = 1.0

    def refresh(self) -> Job:
        """Asks how far it is."""
        return self._read(self.client.request("GET", self.path))

    def cancel(self) -> Job:
        """Tells the service that nobody wants it any more."""
        return self._read(self.client.request("DELETE", self.path, is_repeatable=True))

    def wait(self, timeout_s: float = 600.0, told: Callable[[Job], None] = lambda _: None) -> httpx.Response:
        """What came out.

        Args:
            timeout_s: How long to wait.
            told: Is told each time that the service was asked.

        Raises:
            Problem: The work failed.
            Cancelled: Nobody wanted it any more.
            TimeoutError: It takes longer; it goes on.
        """
        end = time.monotonic() + timeout_s
        while self.state not in _OVER:
            if time.monotonic() >= end:
                raise TimeoutError(f"The job is {self.state} after {timeout_s:g} s.")
            self.client.patience.sleep(min(self.poll_s, max(0.0, end - time.monotonic())))
            told(self.refresh())
        if self.state == "cancelled":
            raise Cancelled
        return self.client.request("GET", f"{self.path}/result")

    def _read(self, response: httpx.Response) -> Job:
        members: dict[str, Any] = response.json()
        self.state, self.progress, self.words = members["state"], members["progress"], members["words"]
        self.poll_s = float(response.headers.get("Retry-After", self.poll_s))
        return self
