import re
import socket
from pathlib import Path

import pytest

from builder import sound
from rest.test_problems import refused
from spreadwright.document import MOST_BYTES
from spreadwright.drawing.templates import MOST_TILES
from spreadwright.rest import create_app, jobs, runner, server, turns, uploads
from spreadwright.rest.preferences import MOST_WAIT_S
from spreadwright.rest.queries import FURTHEST
from spreadwright.rest.settings import Settings, described
from spreadwright.rest.slow_clients import Patience
from spreadwright.rest.views.match import MOST_PIXELS as MOST_PIXELS_OF_ONE
from spreadwright.rest.views.paper_pictures import LONGEST_NAME
from spreadwright.store import Collection
from spreadwright.tasks.booklet import Format
from spreadwright.tasks.templates import template_plan

FIXED = {
    "Bytes of a document, however it is set up": MOST_BYTES,
    "Characters of the name of a picture": LONGEST_NAME,
    "Photographs in one upload": uploads.MOST_PHOTOGRAPHS,
    "Pixels of one of them": MOST_PIXELS_OF_ONE,
    "Pixels of all of them": uploads.MOST_PIXELS,
    "Sheets of paper for one page of an album at full size": MOST_TILES,
    "How far into the list of all colourways one may begin": FURTHEST,
    "Seconds that an answer may take before it becomes a job": jobs.SOON_S,
    "Seconds for which a client may wait for a job": MOST_WAIT_S,
    "Unfinished jobs of one client": jobs.MOST_OF_ONE,
    "Unfinished jobs of all clients": jobs.MOST_IN_ALL,
    "Bytes that unfinished jobs were sent": jobs.MOST_WAITING_BYTES,
    "Jobs that one process works on": runner.MOST_AT_ONCE,
    "Searches, long prints and looks at photographs in one process": turns.MOST_AT_ONCE,
    "Requests that one process answers at once": server.THREADS,
    "Characters of the first line of a request": server.LONGEST_LINE,
}
"""What no setting changes: what is bounded, and by how much."""


@pytest.fixture(scope="module")
def narrow(folder):
    """A service that allows less than it could."""
    settings = Settings(
        document_bytes=2000, widest_px=500, search_s=1, booklet_pieces=3, list_items=2, origins="https://mine.example"
    )
    return create_app(Collection(folder), settings=settings).test_client()


@pytest.mark.parametrize("path", ["/recipes/window-seat/preview.png?width=501", "/recipes/window-seat/cuts?width=501"])
def test_wide_pictures_are_refused_with_the_bound(narrow, path):
    refused = narrow.get(path)
    assert refused.status_code == 400 and "500 px" in refused.json["errors"][0]["detail"]
    assert narrow.get(path.replace("501", "500")).status_code == 200


def test_long_documents_searches_and_prints_are_refused(narrow):
    assert narrow.post("/check", data=sound() + b" " * 2000).status_code == 413
    assert narrow.post("/plan?seconds=2", data="7x7 left", content_type="text/plain").status_code == 400
    assert narrow.get("/recipes/window-seat/booklet.pdf").status_code == 422


def test_pages_of_lists_are_as_long_as_configured(narrow):
    response = narrow.get("/recipes?limit=50")
    assert len(response.json["recipes"]) == 2 and 'rel="next"' in ",".join(response.headers.getlist("Link"))


def test_only_origins_that_are_named_may_read(narrow):
    theirs = narrow.get("/recipes", headers={"Origin": "https://theirs.example"})
    mine = narrow.get("/recipes", headers={"Origin": "https://mine.example"})
    assert "Access-Control-Allow-Origin" not in theirs.headers
    assert mine.headers["Access-Control-Allow-Origin"] == "https://mine.example" and "Origin" in mine.vary


def test_prints_have_so_many_pages_as_configured(folder):
    client = create_app(Collection(folder), settings=Settings(print_pages=3)).test_client()
    for path in ("/recipes/window-seat/booklet.pdf", "/recipes/window-seat/templates.pdf"):
        problem = refused(client.get(path), 422, "print-too-long")
        assert "pages; at most 3" in problem["detail"]
    count = template_plan(Collection(folder).recipe("window-seat"), Collection(folder).bench(), Format.A4).total
    client = create_app(Collection(folder), settings=Settings(print_pages=count)).test_client()
    assert client.get("/recipes/window-seat/templates.pdf").status_code == 200


def test_every_limit_stands_in_the_table():
    page = (Path(__file__).parents[2] / "site/docs/deployment.md").read_text().partition("## Limits that are fixed")[2]
    rows = re.findall(r"^\| (.+) \| ([0-9,]+) \|$", page, re.MULTILINE)
    assert {what: int(most.replace(",", "")) for what, most in rows} == FIXED


def test_every_setting_stands_in_the_table_and_nothing_else():
    page = (Path(__file__).parents[2] / "site/docs/deployment.md").read_text().partition("## Settings")[2]
    assert re.findall(r"^\| `(SPREADWRIGHT_\w+)` \|", page, re.MULTILINE) == [name for name, _, _ in described()]


def test_whoever_takes_the_answer_slowly_is_let_go():
    ours, theirs = socket.socketpair()
    with ours, theirs:
        ours.settimeout(20)
        Patience(0.1, 0.3).begin(ours)
        with pytest.raises(BrokenPipeError):
            ours.sendall(bytes(50_000_000))  # nobody ever reads it


def test_whoever_sends_slowly_is_not_listened_to_for_ever():
    ours, theirs = socket.socketpair()
    with ours, theirs:
        ours.settimeout(5)
        Patience(0.1, 60).begin(ours)
        theirs.sendall(b"GET")
        assert ours.recv(10) == b"GET"
        assert ours.recv(10) == b""  # though the client has not closed
        ours.sendall(b"HTTP/1.1 400")
        assert theirs.recv(20) == b"HTTP/1.1 400"
