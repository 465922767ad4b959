"""Documents of a service: what it keeps, as it keeps it; and what else could answer there."""

import json

import httpx
import pytest

from builder import PAPERS, SOUND
from spreadwright.errors import InvalidDocument
from spreadwright.gallery import CannotFetch, Kept, collected
from spreadwright.gallery.work.documents import paper_set_of, recipe_of
from spreadwright.gallery.work.fetched import Bounds, fetched
from spreadwright.rest import create_app
from spreadwright.store import Collection

ADDRESS = "http://albums.example/shelf/"


class Counted(httpx.BaseTransport):
    """Carries requests to an application below a path, and counts the answers by status."""

    def __init__(self, app):
        self._inner = httpx.WSGITransport(app=app, script_name="/shelf")
        self.statuses = []

    def handle_request(self, request):
        url = request.url.copy_with(raw_path=request.url.raw_path.removeprefix(b"/shelf"))
        response = self._inner.handle_request(httpx.Request(request.method, url, headers=request.headers))
        self.statuses.append(response.status_code)
        return response


@pytest.fixture(scope="module")
def app():
    return create_app(Collection())


@pytest.fixture
def service(app):
    return Counted(app)


def test_a_service_gives_what_its_collection_has(service):
    ours, theirs = collected(Collection()), fetched(ADDRESS, transport=service)
    assert [each.id for each in theirs.recipes] == [each.id for each in ours.recipes]
    assert [each.id for each in theirs.paper_sets] == [each.id for each in ours.paper_sets]
    for own, their in zip(ours.recipes, theirs.recipes, strict=True):
        assert recipe_of(own).model == recipe_of(their).model
    assert any(each.pictures for each in ours.paper_sets)
    for own, their in zip(ours.paper_sets, theirs.paper_sets, strict=True):
        assert paper_set_of(own).papers == paper_set_of(their).papers
    assert [(unit, json.loads(each.data)) for unit, each in theirs.benches] == [
        (unit, json.loads(each.data)) for unit, each in ours.benches
    ]


def test_what_is_unchanged_does_not_travel_again(service, tmp_path):
    first = fetched(ADDRESS, Kept(tmp_path / "kept"), transport=service)
    del service.statuses[:]
    assert fetched(ADDRESS, Kept(tmp_path / "kept"), transport=service) == first
    lists = [status for status in service.statuses if status != 304]
    assert lists == [200, 200]


PICTURED = PAPERS | {
    "papers": [
        PAPERS["papers"][0] | {"front": {"pattern": "picture", "picture": "a b.png", "repeat": "1"}},
        *PAPERS["papers"][1:],
    ]
}


def pictured(answer):
    """A service whose set names a picture, and what it answers to who asks for that."""

    def told(path, request):
        if "/pictures/" in path:
            assert path.endswith("/paper-sets/one/pictures/a b.png")
            return answer
        if path.endswith("/paper-sets/one"):
            return httpx.Response(200, json=PICTURED)
        return document(path, request)

    return answering(told)


def test_a_picture_that_a_service_lacks_is_named():
    found = fetched(ADDRESS, transport=pictured(httpx.Response(404, json={"title": "No such picture"})))
    with pytest.raises(InvalidDocument) as refused:
        paper_set_of(found.paper_sets[0])
    assert [finding.code for finding in refused.value.findings] == ["picture-missing"]


def test_pictures_are_bounded_apart_from_documents():
    bounds = Bounds(answer_bytes=4000, picture_bytes=9000)
    large = pictured(httpx.Response(200, content=bytes(8000)))
    (papers,) = fetched(ADDRESS, bounds=bounds, transport=large).paper_sets
    assert papers.pictures == (("a b.png", bytes(8000)),)
    with pytest.raises(CannotFetch, match="more than 9000 bytes"):
        fetched(ADDRESS, bounds=bounds, transport=pictured(httpx.Response(200, content=bytes(9001))))


def listed(kind, *ids, **links):
    headers = {"Link": f'<{links["next"]}>; rel="next"'} if links else {}
    return httpx.Response(200, json={kind: [{"id": each} for each in ids]}, headers=headers)


def answering(answer):
    return httpx.MockTransport(lambda request: answer(request.url.path, request))


def document(path, _):
    kind = path.split("/")[2]
    if path.count("/") == 2:
        return listed(kind.replace("-", "_"), "one")
    return httpx.Response(200, json=SOUND if kind == "recipes" else PAPERS, headers={"ETag": '"1"'})


def test_only_what_is_asked_for_is_asked():
    asked = []

    def told(path, request):
        asked.append((request.headers["Accept-Encoding"], path))
        return document(path, request)

    fetched(ADDRESS, transport=answering(told))
    assert [path for _, path in asked] == [
        "/shelf/recipes",
        "/shelf/recipes/one",
        "/shelf/paper-sets",
        "/shelf/paper-sets/one",
        *(f"/shelf/benches/{name}" for name in ("bench-inch", "bench-metric", "bench-metric")),
    ]
    assert {encoding for encoding, _ in asked} == {"identity"}


@pytest.mark.parametrize(
    ("answer", "told"),
    [
        (lambda *_: httpx.Response(200, text="<html>"), "not those of a service"),
        (lambda *_: httpx.Response(200, json=[]), "not those of a service"),
        (lambda *_: httpx.Response(200, json={"recipes": [3]}), "not those of a service"),
        (lambda *_: listed("recipes", "../../etc"), "“../../etc” is no id"),
        (lambda *_: listed("recipes", "a", next="http://elsewhere.example/recipes"), "leads elsewhere"),
        (lambda *_: listed("recipes", *"abcd", next="?page=2"), "lists more than 5 recipes"),
        (lambda *_: httpx.Response(200, content=b" " * 5000), "more than 4000 bytes"),
        (lambda *_: httpx.Response(200, headers={"Content-Encoding": "gzip"}), "a form that was not asked for"),
        (lambda *_: httpx.Response(403, json={"detail": "Members only."}), "403 : Members only"),
    ],
)
def test_what_else_answers_is_told_in_one_sentence(answer, told):
    with pytest.raises(CannotFetch, match=f"^Nothing comes from {ADDRESS}: .*{told.replace('.', '[.]')}.*") as refused:
        fetched(ADDRESS, bounds=Bounds(documents=5, answer_bytes=4000), transport=answering(answer))
    assert str(refused.value).endswith(".")


def test_time_is_bounded():
    with pytest.raises(CannotFetch, match="more than 0 s"):
        fetched(ADDRESS, bounds=Bounds(seconds=0), transport=answering(document))
