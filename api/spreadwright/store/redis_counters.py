"""Counting in Redis, for services with so many requests that counting would keep the database busy.

It needs the extra `redis`. While the server does not answer, the database counts: nobody is turned away by that, and
nobody counts for nothing.
"""

from collections.abc import Callable
from contextlib import suppress
from datetime import UTC, datetime
from time import monotonic
from typing import TYPE_CHECKING

from spreadwright.store.counters import Count, Counters, Window
from spreadwright.store.database import Clock
from spreadwright.store.errors import BadAddress

if TYPE_CHECKING:
    from redis import Redis

_PREFIX = "spreadwright:"
_PATIENCE_S, _REST_S = 0.5, 5.0
"""How long an answer is waited for, and how long nothing is asked of a server that gave none."""


def redis_at(address: str) -> "Redis":
    """The server of an address, which is not asked yet.

    Raises:
        BadAddress: It is no address of a Redis, or what speaks to one is not installed.
    """
    shown = address.rpartition("@")[2]
    if not address.startswith(("redis://", "rediss://", "unix://")):
        raise BadAddress(shown, "begin it with redis://, rediss:// or unix://.")
    try:
        from redis import Redis

        return Redis.from_url(address, socket_timeout=_PATIENCE_S, socket_connect_timeout=_PATIENCE_S)
    except ImportError:
        raise BadAddress(shown, "install the extra for it: pip install '.[redis]'.") from None
    except ValueError:  # its text may hold the password
        raise BadAddress(shown, "it is no address of a Redis.") from None


class RedisCounters:
    """Windows as `Counters` has them, by the same names.

    Args:
        server: Where they are counted.
        otherwise: What counts while the server does not answer.
        now: The clock.
        time: Seconds that only go on, for how long to leave the server alone.
    """

    def __init__(self, server: "Redis", otherwise: Counters, now: Clock, time: Callable[[], float] = monotonic) -> None:
        self._server, self._otherwise, self._now, self._time = server, otherwise, now, time
        self._rests_until = float("-inf")

    def hit(self, name: str, window_s: int, *, by: int = 1) -> Count:
        """Counts so many more."""
        if self._time() >= self._rests_until:
            with suppress(OSError):
                return self._hit(Window.at(name, window_s, self._now()), by)
            self._rests_until = self._time() + _REST_S
        return self._otherwise.hit(name, window_s, by=by)

    def forget(self) -> int:
        """Redis forgets by itself; what the database counted meanwhile is dropped."""
        return self._otherwise.forget()

    def _hit(self, window: Window, by: int) -> Count:
        from redis import RedisError

        key = f"{_PREFIX}{window.name}:{window.starts}"
        try:
            with self._server.pipeline(transaction=True) as pipe:
                pipe.incrby(key, by)
                pipe.expireat(key, window.ends + 1)
                used = int(pipe.execute()[0])
        except RedisError as reason:
            raise OSError(str(reason)) from reason
        return Count(used, datetime.fromtimestamp(window.ends, UTC))
