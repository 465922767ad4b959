import socket

import pytest

from builder import sound
from spreadwright.rest import create_app
from spreadwright.rest.settings import Settings
from spreadwright.rest.slow_clients import Patience
from spreadwright.store import Collection


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


def test_whoever_sends_slowly_is_not_listened_to_for_ever():
    ours, theirs = socket.socketpair()
    with ours, theirs:
        ours.settimeout(5)
        Patience(0.1).begin(ours)
        theirs.sendall(b"GET")
        assert ours.recv(10) == b"GET"
        assert ours.recv(10) == b""  # though the client has not closed
        ours.sendall(b"HTTP/1.1 400")
        assert theirs.recv(20) == b"HTTP/1.1 400"
