"""Slow clients: who has not sent a whole request in time is not listened to, who has not taken the answer is let go."""

import socket
from threading import Lock, Thread
from time import monotonic, sleep

_EVERY_S = 1.0

_Wait = list[tuple[float, int]]
"""When what is shut, the soonest first."""


class Patience:
    """Listens to each connection for so long, and speaks to it for so long.

    Args:
        read_s: From the first byte of a request to its last one; what is answered meanwhile is still sent.
        hold_s: From the first byte of a request to the last one of its answer.
    """

    def __init__(self, read_s: float, hold_s: float) -> None:
        self._steps = ((read_s, socket.SHUT_RD), (hold_s, socket.SHUT_RDWR))
        self._waiting: dict[socket.socket, _Wait] = {}
        self._lock = Lock()
        self._is_watching = False

    def begin(self, client: socket.socket) -> None:
        """A request begins to arrive."""
        with self._lock:
            began = monotonic()
            self._waiting[client] = [(began + seconds, how) for seconds, how in self._steps]
            if not self._is_watching:
                self._is_watching = True
                Thread(target=self._watch, daemon=True, name="patience").start()

    def end(self, client: socket.socket) -> None:
        """It is answered."""
        with self._lock:
            self._waiting.pop(client, None)

    def _watch(self) -> None:
        while True:
            sleep(_EVERY_S)
            now = monotonic()
            with self._lock:
                for client, steps in self._waiting.items():
                    while steps and steps[0][0] < now:
                        _turn_away(client, steps.pop(0)[1])


def _turn_away(client: socket.socket, how: int) -> None:
    try:
        client.shutdown(how)
    except OSError:  # the client has gone
        return
