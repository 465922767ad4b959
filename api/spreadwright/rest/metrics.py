"""Counts over all processes of a service, in the text format of Prometheus.

They lie in one file that every process maps. Each process writes to a stretch of its own, so that none waits for
another; one that takes the place of a process that has ended counts on from where that one stopped.
"""

import fcntl
import mmap
import os
import tempfile
from array import array
from bisect import bisect_left
from collections.abc import Iterable, Sequence
from threading import Lock

MEDIA_TYPE = "text/plain; version=0.0.4; charset=utf-8"
BUCKETS_S = (0.001, 0.005, 0.01, 0.05, 0.1, 0.5, 1.0, 5.0, 20.0)
CLASSES = ("1xx", "2xx", "3xx", "4xx", "5xx")
_PROCESSES = 128
_BEGUN, _ENDED, _SECONDS, _BUCKETS = 1, 2, 3, 4
_FIRST = _BUCKETS + len(BUCKETS_S) + 1
"""Of a stretch: who writes it, requests begun and ended, their seconds, how many in each bucket; then the endpoints."""


class Metrics:
    """Counts of requests.

    Args:
        endpoints: The names of everything that can be asked for; what is none of them counts as nowhere.
    """

    def __init__(self, endpoints: Iterable[str]) -> None:
        self._endpoints = {name: number for number, name in enumerate(("", *sorted(set(endpoints) - {""})))}
        self._width = _FIRST + len(self._endpoints) * len(CLASSES)
        self._file = tempfile.TemporaryFile(prefix="spreadwright-")  # noqa: SIM115 - it lives as long as we do
        size = self._width * _PROCESSES * 8
        self._file.truncate(size)
        self._map = memoryview(mmap.mmap(self._file.fileno(), size)).cast("d")
        self._lock = Lock()
        self._process, self._start = 0, 0

    def began(self) -> None:
        """A request has arrived."""
        with self._lock:
            self._map[self._own() + _BEGUN] += 1

    def ended(self, endpoint: str, status: int, seconds: float) -> None:
        """A request is answered."""
        number = self._endpoints.get(endpoint, 0)
        bucket = bisect_left(BUCKETS_S, seconds)
        with self._lock:
            own = self._own()
            self._map[own + _ENDED] += 1
            self._map[own + _SECONDS] += seconds
            self._map[own + _BUCKETS + bucket] += 1
            self._map[own + _FIRST + number * len(CLASSES) + min(4, max(0, status // 100 - 1))] += 1

    def text(self) -> bytes:
        """All of it."""
        sums = self._sums()
        lines = ["# TYPE spreadwright_requests_total counter"]
        for name, number in self._endpoints.items():
            for place, label in enumerate(CLASSES):
                value = sums[_FIRST + number * len(CLASSES) + place]
                if value:
                    lines.append(f'spreadwright_requests_total{{endpoint="{name}",status="{label}"}} {value:.0f}')
        lines += [
            "# TYPE spreadwright_requests_in_progress gauge",
            f"spreadwright_requests_in_progress {max(0, sums[_BEGUN] - sums[_ENDED]):.0f}",
            *self._histogram(sums),
        ]
        return ("\n".join(lines) + "\n").encode()

    def _histogram(self, sums: Sequence[float]) -> list[str]:
        lines, total = ["# TYPE spreadwright_request_duration_seconds histogram"], 0.0
        for place, most in enumerate((*map(str, BUCKETS_S), "+Inf")):
            total += sums[_BUCKETS + place]
            lines.append(f'spreadwright_request_duration_seconds_bucket{{le="{most}"}} {total:.0f}')
        lines.append(f"spreadwright_request_duration_seconds_sum {sums[_SECONDS]:.6f}")
        lines.append(f"spreadwright_request_duration_seconds_count {total:.0f}")
        return lines

    def _sums(self) -> Sequence[float]:
        sums = array("d", bytes(8 * self._width))
        for process in range(_PROCESSES):
            start = process * self._width
            if self._map[start]:
                for place in range(1, self._width):
                    sums[place] += self._map[start + place]
        return sums

    def _own(self) -> int:
        """Where this process writes."""
        if self._process != os.getpid():
            self._start, self._process = self._claimed(), os.getpid()
        return self._start

    def _claimed(self) -> int:
        fcntl.lockf(self._file, fcntl.LOCK_EX)  # goes with the process, however it ends
        try:
            for start in range(0, _PROCESSES * self._width, self._width):
                if not _is_alive(int(self._map[start])):
                    self._map[start + _BEGUN] = self._map[start + _ENDED]
                    self._map[start] = os.getpid()
                    return start
            return 0
        finally:
            fcntl.lockf(self._file, fcntl.LOCK_UN)


def _is_alive(process: int) -> bool:
    if process == 0:
        return False
    try:
        os.kill(process, 0)
    except ProcessLookupError:
        return False
    except PermissionError:
        return True
    return True
