"""Bodies made lately, so that the same picture is not drawn twice; bounded in bytes.

The key is the content itself: the frozen documents that a body was made from, so nothing ever needs to be thrown away
because it went stale.
"""

from collections import OrderedDict
from collections.abc import Callable, Hashable
from dataclasses import dataclass
from functools import cached_property
from hashlib import sha256
from threading import Lock

MOST_BYTES = 64 * 1024 * 1024
"""A preview has 0.1 MB as SVG and up to 5 MB as PNG."""


@dataclass(frozen=True)
class Body:
    """The bytes of a response, and the hash that names them."""

    data: bytes

    @cached_property
    def digest(self) -> str:
        """SHA-256, hexadecimal."""
        return sha256(self.data).hexdigest()


class Memory:
    """Bodies by key; the one that was not asked for longest goes first."""

    def __init__(self, most_bytes: int = MOST_BYTES) -> None:
        self._most_bytes = most_bytes
        self._bytes = 0
        self._bodies: OrderedDict[Hashable, Body] = OrderedDict()
        self._lock = Lock()

    def __contains__(self, key: Hashable) -> bool:
        with self._lock:
            return key in self._bodies

    def body(self, key: Hashable, make: Callable[[], bytes]) -> Body:
        """The body of that key, made only if it is not there; two threads may make the same one at once."""
        with self._lock:
            if key in self._bodies:
                self._bodies.move_to_end(key)
                return self._bodies[key]
        made = Body(make())
        with self._lock:
            self._keep(key, made)
        return made

    def _keep(self, key: Hashable, made: Body) -> None:
        if key in self._bodies or len(made.data) > self._most_bytes:
            return
        self._bodies[key] = made
        self._bytes += len(made.data)
        while self._bytes > self._most_bytes:
            _, oldest = self._bodies.popitem(last=False)
            self._bytes -= len(oldest.data)
