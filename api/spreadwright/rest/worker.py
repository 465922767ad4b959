"""One process that answers requests: refuses in our own form what is no HTTP, and leaves Ctrl+C to its parent."""

import signal
from http import HTTPStatus
from typing import Any

from gunicorn import util
from gunicorn.http import errors as http
from gunicorn.workers.gthread import ThreadWorker

from spreadwright.document import canonical
from spreadwright.rest.cleaner import start_cleaner
from spreadwright.rest.problems import PROBLEM_JSON, TYPE_BASE, refusal
from spreadwright.rest.service import Service
from spreadwright.rest.slow_clients import Patience

STATUSES: dict[type[Exception], HTTPStatus] = {
    http.LimitRequestLine: HTTPStatus.REQUEST_URI_TOO_LONG,
    http.LimitRequestHeaders: HTTPStatus.REQUEST_HEADER_FIELDS_TOO_LARGE,
    http.UnsupportedTransferCoding: HTTPStatus.NOT_IMPLEMENTED,
    http.ExpectationFailed: HTTPStatus.EXPECTATION_FAILED,
    http.ParseException: HTTPStatus.BAD_REQUEST,
}
"""Class to status; what is not listed is a fault of ours."""


class Worker(ThreadWorker):  # type: ignore[misc]
    """Threads in one process."""

    def init_signals(self) -> None:
        """A terminal sends Ctrl+C to every process; the parent alone decides."""
        super().init_signals()
        signal.signal(signal.SIGINT, signal.SIG_IGN)

    def load_wsgi(self) -> None:
        """After the fork, and before the first request."""
        super().load_wsgi()
        service: Service = self.wsgi.extensions["spreadwright"]
        self._patience = Patience(service.settings.read_s, service.settings.hold_s)
        start_cleaner(service.store, service.settings, self.wsgi.extensions["jobs"].wake)

    def handle(self, conn: Any) -> Any:
        """A request on a connection, if it arrives in time."""
        self._patience.begin(conn.sock)
        try:
            return super().handle(conn)
        finally:
            self._patience.end(conn.sock)

    def handle_error(self, req: Any, client: Any, addr: Any, exc: Exception) -> None:
        """Answers what never reached the application with a problem document."""
        status = next((code for kind, code in STATUSES.items() if isinstance(exc, kind)), None)
        if status is None:
            self.log.exception("Error handling a request")
        write_problem(client, status or HTTPStatus.INTERNAL_SERVER_ERROR)


def write_problem(client: Any, status: HTTPStatus) -> None:
    """Writes a whole response and gives the connection up."""
    kind = refusal(status)
    members: dict[str, Any] = {
        "type": TYPE_BASE + kind.name,
        "title": kind.title,
        "status": kind.status,
        "instance": "",
        "errors": [],
    }
    body = canonical(members)
    head = (
        f"HTTP/1.1 {status.value} {status.phrase}\r\nConnection: close\r\nContent-Type: {PROBLEM_JSON}\r\n"
        f"X-Content-Type-Options: nosniff\r\nCache-Control: no-store\r\nContent-Length: {len(body)}\r\n\r\n"
    )
    try:
        util.write_nonblock(client, head.encode("latin-1") + body)
    except OSError:  # the client has gone
        client.close()
