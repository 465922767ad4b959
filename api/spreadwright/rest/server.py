"""The application under gunicorn, in this process and its children."""

import os
import socket
import sys
from collections.abc import Callable
from errno import EADDRNOTAVAIL
from typing import Any, NoReturn

from flask import Flask
from gunicorn.app.base import BaseApplication
from gunicorn.arbiter import Arbiter

from spreadwright.rest.preferences import MOST_WAIT_S

THREADS = 4
"""Requests that one worker answers at once."""
STOP_S = MOST_WAIT_S + 5
"""How long what runs may take when the service is stopped: as long as a client may wait for a job."""
LONGEST_LINE = 8190
"""Characters of the first line of a request."""
UNUSABLE = 2


def serve(app: Flask, host: str = "127.0.0.1", port: int = 8000, workers: int = 1) -> None:
    """Serves until SIGINT or SIGTERM; then what runs is finished first.

    Args:
        app: The application.
        host: The address to listen on.
        port: The port; 0 takes a free one.
        workers: How many processes answer.

    Raises:
        SystemExit: With 2 when the address cannot be had, with 0 after the service was stopped.
    """
    parent = os.getpid()
    listener = _listening(host, port)
    announce = _announcement(listener)
    try:
        _Arbiter(_Server(app, listener.detach(), workers, announce)).run()
    except SystemExit as leaving:
        if os.getpid() != parent:
            _leave(leaving.code)
        raise


def refuse_taken(host: str, port: int) -> None:
    """Leaves with 2 now if the address cannot be had, before anything long is begun."""
    _listening(host, port).close()


def _leave(code: Any) -> NoReturn:
    """Ends a worker here, so that it does not unwind into what the parent still has to tidy up."""
    sys.stdout.flush()
    sys.stderr.flush()
    os._exit(code if isinstance(code, int) else 0)


def _listening(host: str, port: int) -> socket.socket:
    family = socket.AF_INET6 if ":" in host else socket.AF_INET
    try:
        socket.getaddrinfo(host or None, port, family)  # its errors are their own kind only here
        return socket.create_server((host, port), family=family, backlog=512)
    except OverflowError:
        _refuse(f"{port} is no port; ports go from 0 to 65535.")
    except (socket.gaierror, UnicodeError):
        _refuse(f"“{host}” is not an address of this machine.")
    except OSError as reason:
        if reason.errno == EADDRNOTAVAIL:
            _refuse(f"“{host}” is not an address of this machine.")
        why = os.strerror(reason.errno) if reason.errno else str(reason)
        _refuse(f"cannot listen on {_address(host, port)}: {why}.")


def _refuse(why: str) -> NoReturn:
    print(f"spreadwright: {why}", file=sys.stderr)
    raise SystemExit(UNUSABLE)


def _announcement(listener: socket.socket) -> Callable[[Any], None]:
    host, port = listener.getsockname()[:2]

    def announce(_: Any) -> None:
        print(f"Spreadwright is at {_address(host, port)} - Ctrl+C stops it.", file=sys.stderr, flush=True)

    return announce


def _address(host: str, port: int) -> str:
    return f"http://[{host}]:{port}/" if ":" in host else f"http://{host}:{port}/"


class _Arbiter(Arbiter):  # type: ignore[misc]
    """Stops as gently on Ctrl+C as when it is told to."""

    handle_int = Arbiter.handle_term


class _Server(BaseApplication):  # type: ignore[misc]
    """The configuration, and the application that is loaded already."""

    def __init__(self, app: Flask, descriptor: int, workers: int, announce: Callable[[Any], None]) -> None:
        self._app = app
        self._settings = {
            "bind": f"fd://{descriptor}",
            "workers": workers,
            "threads": THREADS,
            "worker_class": "spreadwright.rest.worker.Worker",
            "when_ready": announce,
            "loglevel": "warning",
            "limit_request_line": LONGEST_LINE,
            "graceful_timeout": STOP_S,
            "control_socket_disable": True,
        }
        super().__init__(prog="spreadwright")

    def load_config(self) -> None:
        """Takes the settings over."""
        for name, value in self._settings.items():
            self.cfg.set(name, value)

    def load(self) -> Flask:
        """The application."""
        return self._app
