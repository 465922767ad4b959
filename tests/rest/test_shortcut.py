import json
from contextlib import contextmanager
from functools import partial
from itertools import product

import pytest
from flask import Flask, request, request_started

from builder import SOUND
from spreadwright.rest import create_app, shortcut
from spreadwright.rest.settings import Settings
from spreadwright.store import Collection
from spreadwright.store.errors import Busy
from spreadwright.store.opening import open_store

PATH = "/recipes/window-seat"


@contextmanager
def walked():
    """The paths of the requests that went the long way meanwhile."""
    paths = []

    def note(sender, **_):
        paths.append(request.path)

    with request_started.connected_to(note):
        yield paths


def told(response):
    """Everything that a client is told, but for the id of the request."""
    return response.status, [each for each in response.headers if each[0] != "X-Request-Id"], response.data


@pytest.fixture
def apps(address, folder):
    """Two services over one database, which share nothing else."""
    stores = [open_store(address) for _ in range(2)]
    yield [create_app(Collection(folder), store=each) for each in stores]
    for each in stores:
        each.database.dispose()


@pytest.fixture
def ann(apps):
    """Asks the first service with a token that may do everything."""
    secret = apps[0].extensions["spreadwright"].store.tokens.create("Ann", ("write", "review", "admin")).secret

    def ask(method, path, body=None):
        headers = {"Authorization": f"Bearer {secret}", "If-Match": "*"}
        kind = "application/merge-patch+json" if method == "PATCH" else "application/json"
        data = None if body is None else json.dumps(body)
        return apps[0].test_client().open(path, method=method, data=data, content_type=kind, headers=headers)

    return ask


@pytest.mark.parametrize("settings", [Settings(), Settings(origins="https://one.example https://two.example")])
def test_short_way_tells_what_the_long_way_tells(folder, gallery, settings):
    """Whatever is asked first, and however often."""
    remembers = create_app(Collection(folder), gallery, settings=settings).test_client()
    without = create_app(Collection(folder), gallery, settings=settings)
    without.wsgi_app = partial(Flask.wsgi_app, without)
    forgets = without.test_client()
    tag = forgets.get(PATH).headers["ETag"]
    conditions = (None, tag, f"W/{tag}", f'"1-0000000000000000", {tag}', '"1-0000000000000000"', "*")
    accepts = (None, "*/*", "image/png", "text/html, */*;q=0.5")
    origins = ("https://one.example", "https://three.example")
    targets = (PATH, f"{PATH}.json", f"{PATH}?width=3", "/benches/bench-inch")
    for path, accept, condition, origin in product(targets, accepts, conditions, origins):
        given = {"Accept": accept, "If-None-Match": condition, "Origin": origin, "Accept-Language": "de"}
        headers = {name: value for name, value in given.items() if value is not None} | {"X-Request-Id": "same-for-all"}
        wanted = told(forgets.get(path, headers=headers))
        assert [told(remembers.get(path, headers=headers)) for _ in range(2)] == [wanted, wanted], (path, headers)
        assert told(remembers.head(path, headers=headers)) == told(forgets.head(path, headers=headers))


@pytest.mark.parametrize("condition", [None, "tag"])
def test_second_request_goes_the_short_way_and_below_another_mount_the_long_one(folder, condition):
    client = create_app(Collection(folder), settings=Settings(proxies=1)).test_client()
    tag = client.get(PATH).headers["ETag"]
    headers = {"If-None-Match": tag} if condition else {}
    first = client.get(PATH, headers=headers)
    with walked() as paths:
        again = client.get(PATH, headers=headers)
        assert paths == [] and told(again) == told(first)
        below = client.get(PATH, headers={**headers, "X-Forwarded-Prefix": "/shelf"})
        assert paths == [PATH] and "</shelf/openapi.json>" in below.headers["Link"]


def test_every_request_sees_what_another_process_wrote_before(apps, ann):
    reader = apps[1].test_client()
    ann("PUT", PATH, {**SOUND, "title": "High water"})
    before = reader.get(PATH)
    tag = before.headers["ETag"]
    assert reader.get(PATH, headers={"If-None-Match": tag}).status_code == 304
    assert reader.get(PATH, headers={"If-None-Match": tag}).status_code == 304
    for title in ("Low water", "Slack water"):
        ann("PATCH", PATH, {"title": title})
        changed = reader.get(PATH, headers={"If-None-Match": tag})
        assert (changed.status_code, changed.json["title"]) == (200, title)
        assert changed.headers["ETag"] != tag
        assert reader.get(PATH).json["title"] == title
        tag = changed.headers["ETag"]


def test_withdrawn_and_deleted_documents_are_as_unknown_as_ever(apps, ann):
    reader = apps[1].test_client()
    tag = reader.get(PATH).headers["ETag"]
    unknown = reader.get("/recipes/window-sea")

    def asked():
        return [reader.get(PATH, headers=each).status_code for each in ({}, {"If-None-Match": tag}) for _ in range(2)]

    assert asked() == [200, 200, 304, 304]
    assert ann("POST", f"{PATH}/withdraw").status_code == 200
    assert asked() == [404] * 4
    assert reader.get(PATH).json["type"] == unknown.json["type"]
    assert ann("GET", PATH).status_code == 200
    assert asked() == [404] * 4  # what its owner was shown is not for others
    assert ann("POST", f"{PATH}/publish").status_code == 200
    tag = reader.get(PATH).headers["ETag"]
    assert asked() == [200, 200, 304, 304]
    ann("DELETE", PATH)
    assert asked() == [410] * 4


def test_own_request_id_count_and_line_in_the_log(folder, capsys):
    app = create_app(Collection(folder), settings=Settings(log="json"))
    client = app.test_client()
    lines = []
    with walked() as paths:
        for given in ("", "abcdefgh-1", "abcdefgh-2", "not sane\x7f"):
            response = client.get(PATH, headers={"X-Request-Id": given} if given else {})
            lines.append(json.loads(capsys.readouterr().err))
            assert lines[-1]["id"] == response.headers["X-Request-Id"]
            assert (lines[-1]["id"] == given) == given.startswith("abc")
    assert paths == [PATH]
    assert len({each["id"] for each in lines}) == 4
    assert {(each["status"], each["path"], each["bytes"], each["client"]) for each in lines} == {
        (200, PATH, len(response.data), "127.0.0.1")
    }
    text = client.get("/metrics").text
    assert 'endpoint="recipes.recipe",status="2xx"} 4\n' in text
    assert "spreadwright_requests_in_progress 1\n" in text


def test_database_that_does_not_answer_is_told_in_our_own_words(folder, monkeypatch):
    app = create_app(Collection(folder))
    client = app.test_client()
    assert [client.get(PATH).status_code for _ in range(2)] == [200, 200]

    def busy(*_):
        raise Busy

    monkeypatch.setattr(app.extensions["spreadwright"].store.database, "quick_row", busy)
    response = client.get(PATH)
    assert response.status_code == 503 and response.mimetype == "application/problem+json"
    monkeypatch.undo()
    assert client.get(PATH).status_code == 200


def test_few_answers_are_remembered_and_none_that_nobody_asks_for_again(folder, monkeypatch):
    monkeypatch.setattr(shortcut, "MOST", 3)
    client = create_app(Collection(folder)).test_client()
    paths = [PATH, "/recipes/window-two", "/benches/bench-inch", "/benches/bench-metric"]
    for path in paths:
        client.get(path)
    for number in range(50):
        client.get(PATH, headers={"If-None-Match": f'"1-{number:016x}"'})
        client.get("/paper-sets/two", headers={"Accept": f"application/x-{number}, */*"})
    with walked() as walks:
        for path in reversed(paths):
            client.get(path)
    assert walks == [PATH]  # the first of four
