"""Requests a second beside a bare Flask view: `python -m tests.bench.service [SECONDS]`.

Both applications run on the same server, one process with four threads each, and are asked in turns by the same number
of connections that stay open: a second of one, a second of the other. So what else the machine does weighs on both.
Each line is the median of the turns. How long lists take with many recipes is measured by `tests.bench.store`.
"""

import http.client
import json
import multiprocessing
import socket
import statistics
import sys
import time
from collections.abc import Callable, Iterator
from concurrent.futures import ThreadPoolExecutor
from contextlib import contextmanager
from dataclasses import dataclass, field
from types import SimpleNamespace

from flask import Flask, Response
from tests.builder import SOUND

from spreadwright.rest import create_app
from spreadwright.rest.server import serve
from spreadwright.rest.settings import Settings
from spreadwright.store import Collection
from spreadwright.store.opening import open_store

CONNECTIONS, TURN_S = 4, 1.0
RECIPE = "/recipes/rain-until-four"


@dataclass(frozen=True, slots=True)
class Request:
    """What is asked again and again."""

    path: str
    method: str = "GET"
    body: bytes | None = None
    headers: dict[str, str] = field(default_factory=dict)


def bare() -> Flask:
    """The least that Flask can answer."""
    app = Flask("bare")
    app.extensions["spreadwright"] = SimpleNamespace(
        settings=Settings(), store=open_store()
    )  # what the server asks for

    @app.route("/")
    def view() -> Response:
        return Response(b'{"fine": true}', content_type="application/json")

    return app


@contextmanager
def served(make: Callable[[], Flask]) -> Iterator[int]:
    """The port at which an application answers, in a process of its own."""
    with socket.create_server(("127.0.0.1", 0)) as free:
        port = free.getsockname()[1]
    process = multiprocessing.get_context("fork").Process(target=lambda: serve(make(), port=port), daemon=False)
    process.start()
    try:
        _await(port)
        yield port
    finally:
        process.terminate()
        process.join(20)


def _await(port: int) -> None:
    for _ in range(600):
        try:
            socket.create_connection(("127.0.0.1", port), 1).close()
        except OSError:
            time.sleep(0.1)
        else:
            return
    raise TimeoutError


def rate(port: int, request: Request, seconds: float = TURN_S) -> float:
    """Answers a second, over all connections."""
    end = time.perf_counter() + seconds

    def ask(_: int) -> int:
        count, connection = 0, http.client.HTTPConnection("127.0.0.1", port, timeout=30)
        while time.perf_counter() < end:
            answer(connection, request)
            count += 1
        connection.close()
        return count

    with ThreadPoolExecutor(CONNECTIONS) as threads:
        return sum(threads.map(ask, range(CONNECTIONS))) / seconds


def answer(connection: http.client.HTTPConnection, request: Request) -> http.client.HTTPResponse:
    """One answer, read to its end."""
    connection.request(request.method, request.path, request.body, request.headers)
    response = connection.getresponse()
    response.read()
    if response.status >= 400:
        raise ValueError(response.status)
    return response


def asked(port: int) -> dict[str, Request]:
    """What is measured, by its line."""
    connection = http.client.HTTPConnection("127.0.0.1", port)
    tag = answer(connection, Request(RECIPE)).headers["ETag"]
    body = json.dumps(SOUND).encode()
    return {
        "GET a recipe": Request(RECIPE),
        "GET a recipe, unchanged (304)": Request(RECIPE, headers={"If-None-Match": tag}),
        "GET cuts as JSON": Request(f"{RECIPE}/cuts"),
        "GET a preview as SVG": Request(f"{RECIPE}/preview.svg?set=windfall"),
        "GET a page of 20 recipes": Request("/recipes"),
        "POST /check": Request("/check", "POST", body, {"Content-Type": "application/json"}),
    }


def main() -> None:
    """Prints one table."""
    seconds = float(sys.argv[1]) if len(sys.argv) > 1 else 6.0
    turns = max(1, round(seconds / TURN_S))
    with served(bare) as plain, served(lambda: create_app(Collection())) as ours:
        print("| asked for | requests/s | bare view, same minute | share |\n| --- | --- | --- | --- |")
        for name, request in asked(ours).items():
            rate(ours, request, 0.3)
            pairs = [(rate(ours, request), rate(plain, Request("/"))) for _ in range(turns)]
            here, beside = (statistics.median(each) for each in zip(*pairs, strict=True))
            share = statistics.median(one / other for one, other in pairs)
            print(f"| {name} | {here:,.0f} | {beside:,.0f} | {share:.2f} |", flush=True)


if __name__ == "__main__":
    main()
