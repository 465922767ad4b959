import json
import time
from io import RawIOBase
from urllib.parse import quote

import pytest

from builder import SOUND, spoilt

MEGABYTE = 1024 * 1024
BODIES = {
    "nothing": b"",
    "no JSON": b"<recipe/>",
    "half": json.dumps(SOUND).encode()[:300],
    "a list": b"[]",
    "not UTF-8": b'{"title": "\xff"}',
    "deep lists": b"[" * 10_000 + b"]" * 10_000,
    "deep objects": b'{"a":' * 10_000 + b"1" + b"}" * 10_000,
    "NaN": b'{"title": NaN}',
    "beyond a double": b'{"title": 1e400}',
    "a member twice": b'{"title": "a", "title": "b"}',
    "half a character": b'{"title": "\\ud800"}',
    "many digits": b'{"title": ' + b"9" * 100_000 + b"}",
    "many values": json.dumps({"sheets": [0] * 100_000}).encode(),
}


def posted(client, data, **options):
    """The response, which must come within a second and be no fault of ours."""
    began = time.process_time()
    response = client.post("/check", data=data, **{"content_type": "application/json", **options})
    assert time.process_time() - began < 1
    assert response.status_code < 500 and "Traceback" not in response.text
    return response


@pytest.mark.parametrize("body", BODIES.values(), ids=BODIES)
def test_unreadable_bytes_are_a_problem_with_a_remedy(client, body):
    response = posted(client, body)
    assert (response.status_code, response.content_type) == (400, "application/problem+json")
    assert response.json["errors"][0]["code"] == "unreadable" and response.json["errors"][0]["remedy"]


def test_a_long_body_is_refused_unread(client):
    class Unread:
        def read(self, *_):
            raise AssertionError("the body was read")

    environ = {"wsgi.input": Unread(), "CONTENT_LENGTH": str(50 * MEGABYTE)}
    response = posted(client, None, environ_overrides=environ)
    assert response.status_code == 413 and "1,048,576 bytes" in response.json["detail"]


def test_a_long_body_of_unknown_length_is_read_no_further_than_needed(client):
    class Endless(RawIOBase):
        given = 0

        def readinto(self, buffer):
            self.given += len(buffer)
            assert self.given < 3 * MEGABYTE
            buffer[:] = b" " * len(buffer)
            return len(buffer)

    environ = {"wsgi.input": Endless(), "wsgi.input_terminated": True, "HTTP_TRANSFER_ENCODING": "chunked"}
    assert posted(client, None, environ_overrides=environ).status_code == 413


def test_the_longest_body_is_a_matter_of_one_byte(client):
    padded = json.dumps(SOUND).encode().ljust(MEGABYTE)
    assert posted(client, padded).status_code == 200
    assert posted(client, padded + b" ").status_code == 413


def test_a_tree_of_a_hundred_thousand_parts_is_a_finding(client):
    part = {"width": "rest", "piece": "bit", "times": 100}
    for side, axis in (("height", "columns"), ("width", "rows"), ("height", "columns")):
        part = {side: "rest", "times": 100, axis: [part]}
    data = spoilt(lambda recipe: recipe["sheets"].append({"role": "print", "size": ["12", "12"], "rows": [part]}))
    found = posted(client, data).json
    assert not found["fine"] and found["findings"]


@pytest.mark.parametrize(
    "kind", ["text/plain", "application/xml", "multipart/form-data", "application/jsonp", "nonsense"]
)
def test_another_type_of_body_is_refused(client, kind):
    assert posted(client, json.dumps(SOUND), content_type=kind).status_code == 415


@pytest.mark.parametrize("kind", ["application/json; charset=utf-8", "application/merge-patch+json", None])
def test_json_by_any_type_or_none_is_read(client, kind):
    assert posted(client, json.dumps(SOUND), content_type=kind).status_code == 200


def test_a_compressed_body_is_refused(client):
    assert posted(client, b"\x1f\x8b", headers={"Content-Encoding": "gzip"}).status_code == 415


NAMES = [
    "\0",
    "a\r\nX-Evil: 1",
    "../benches/bench-inch",
    "..%2f",
    "%00",
    "\ud7ff",
    "a" * 8000,
    "<script>",
    "{x}",
    "'\"",
]


@pytest.mark.parametrize("view", ["", "/cuts", "/preview.png", "/colourways"])
@pytest.mark.parametrize("name", NAMES)
def test_no_name_is_more_than_unknown(site, view, name):
    response = site.get(f"/recipes/{quote(name, safe='')}{view}")
    assert (response.status_code, response.content_type) == (404, "application/problem+json")
    assert "X-Evil" not in response.headers and len(response.data) < 10_000


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("parameter", ["set", "colourway", "bench"])
def test_no_parameter_is_more_than_unknown(client, parameter, name):
    view = "cuts" if parameter == "bench" else "preview"
    response = client.get(f"/recipes/window-seat/{view}", query_string={parameter: name})
    assert response.status_code in (400, 404) and len(response.data) < 10_000


def test_a_far_start_is_refused_before_anything_is_counted(client):
    assert client.get("/recipes/window-seat/colourways/all?start=99999999999").status_code == 400


@pytest.mark.parametrize("accept", ["", ";;;", "a/b;q=x", "*/*;q=2", ",", "image/*;q=0.0001", "x" * 5000])
def test_no_accept_header_is_a_fault(client, accept):
    assert client.get("/recipes/window-seat/cuts", headers={"Accept": accept}).status_code in (200, 406)


@pytest.mark.parametrize("etag", ['"', "W/", '"a', "\xff", ",,,"])
def test_no_condition_is_a_fault(client, etag):
    assert client.get("/recipes/window-seat", headers={"If-None-Match": etag}).status_code == 200
