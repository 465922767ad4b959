"""How the tests of this folder drive Chromium: where a built site is served, how a page is opened."""

import threading
from collections.abc import Iterator
from contextlib import contextmanager
from functools import partial
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path

CHROMIUM = "/usr/bin/chromium"
QUIET = [
    "--no-sandbox",
    "--disable-gpu",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
]


class QuietHandler(SimpleHTTPRequestHandler):
    """Serves files without a word about it."""

    def log_message(self, *_):
        """Say nothing."""


@contextmanager
def served(folder: Path, handler: type[SimpleHTTPRequestHandler] = QuietHandler) -> Iterator[str]:
    """The address of a folder that is served while the block lasts."""
    server = ThreadingHTTPServer(("127.0.0.1", 0), partial(handler, directory=folder))
    threading.Thread(target=server.serve_forever, daemon=True).start()
    try:
        yield f"http://127.0.0.1:{server.server_port}"
    finally:
        server.shutdown()
        server.server_close()


def paths(site: Path) -> list[str]:
    """Every page of a site, by its path."""
    return [page.relative_to(site).as_posix() for page in sorted(site.rglob("*.html"))]


def opened(page, url: str) -> None:
    """Open a page with every picture loaded, however far down it is."""
    page.goto(url)
    page.evaluate("for (const image of document.images) image.loading = 'eager'")
    page.wait_for_load_state("networkidle")


def until(page, script: str, arg=None) -> None:
    """Wait until a script that gives a promise gives something true; `wait_for_function` takes the promise for that."""
    for _ in range(200):
        if page.evaluate(script, arg):
            return
        page.wait_for_timeout(50)
    raise AssertionError(f"never true: {script}")
