"""When a request is sent again, and how long is waited before that.

What may have been done already is repeated only where doing it twice is doing it once: reading, writes that name a
revision, and requests with an Idempotency-Key. What was refused for lack of time (429, 503) was not done at all.
"""

import random
import time
from collections.abc import Callable
from dataclasses import dataclass, field
from datetime import UTC, datetime
from email.utils import parsedate_to_datetime

import httpx

from spreadwright.client.problems import Unreachable

REFUSED = (httpx.codes.TOO_MANY_REQUESTS, httpx.codes.SERVICE_UNAVAILABLE)
UNCLEAR = (httpx.codes.BAD_GATEWAY, httpx.codes.GATEWAY_TIMEOUT)
_FIRST_S, _UNSETTLED = 0.2, 0.5


@dataclass(frozen=True, slots=True)
class Patience:
    """How often a request is sent at most, and how long is waited in between.

    Attributes:
        times: How often in all; 1 never repeats.
        longest_s: A longer wait than this is not waited; then the refusal is told.
        sleep: Waits for so many seconds.
    """

    times: int = 5
    longest_s: float = 60.0
    sleep: Callable[[float], None] = field(default=time.sleep)

    def send(self, once: Callable[[], httpx.Response], *, is_repeatable: bool) -> httpx.Response:
        """The answer, after as many attempts as it takes and may take.

        Raises:
            Unreachable: There was none.
        """
        for attempt in range(1, self.times + 1):
            is_last = attempt == self.times
            try:
                response = once()
            except httpx.TransportError as reason:
                if is_last or not (is_repeatable or isinstance(reason, httpx.ConnectError)):
                    raise Unreachable(str(reason)) from reason
                self.sleep(_backoff_s(attempt))
                continue
            wait_s = self._wait_s(response, attempt, is_repeatable)
            if is_last or wait_s is None:
                return response
            response.close()
            self.sleep(wait_s)
        raise AssertionError

    def _wait_s(self, response: httpx.Response, attempt: int, is_repeatable: bool) -> float | None:
        """How long to wait before the request is repeated; None when it is not."""
        if response.status_code in REFUSED or (response.status_code in UNCLEAR and is_repeatable):
            named_s = retry_after_s(response)
            wait_s = _backoff_s(attempt) if named_s is None else named_s
            return wait_s if wait_s <= self.longest_s else None
        return None


def retry_after_s(response: httpx.Response) -> float | None:
    """The seconds of Retry-After, which may also name a date; None without it."""
    value = response.headers.get("Retry-After", "").strip()
    if value.isdigit():
        return float(value)
    try:
        return max(0.0, (parsedate_to_datetime(value) - datetime.now(UTC)).total_seconds()) if value else None
    except (TypeError, ValueError):
        return None


def _backoff_s(attempt: int) -> float:
    """Twice as long each time, and not for all clients alike."""
    return float(_FIRST_S * 2 ** (attempt - 1) * (1 - _UNSETTLED * random.random()))
