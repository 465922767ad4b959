"""Clients that send slowly: whoever has not sent a whole request in time is not listened to any longer."""

import socket
from threading import Lock, Thread
from time import monotonic, sleep

_EVERY_S = 1.0


class Patience:
    """Listens to each connection for so long; what is answered meanwhile is still sent.

    Args:
        seconds: From the first byte of a request to the last one.
    """

    def __init__(self, seconds: float) -> None:
        self._seconds = seconds
        self._ends: dict[socket.socket, float] = {}
        self._lock = Lock()
        self._is_watching = False

    def begin(self, client: socket.socket) -> None:
        """A request begins to arrive."""
        with self._lock:
            self._ends[client] = monotonic() + self._seconds
            if not self._is_watching:
                self._is_watching = True
                Thread(target=self._watch, daemon=True, name="patience").start()

    def end(self, client: socket.socket) -> None:
        """It is answered."""
        with self._lock:
            self._ends.pop(client, None)

    def _watch(self) -> None:
        while True:
            sleep(_EVERY_S)
            now = monotonic()
            with self._lock:
                late = [client for client, end in self._ends.items() if end < now]
                for client in late:
                    del self._ends[client]
                    _turn_away(client)


def _turn_away(client: socket.socket) -> None:
    try:
        client.shutdown(socket.SHUT_RD)
    except OSError:  # the client has gone
        return
