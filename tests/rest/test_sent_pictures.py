"""Pictures of papers that are sent, read and deleted over HTTP."""

import struct
import zlib
from io import BytesIO

import numpy as np
import pytest
from PIL import Image

from builder import PAPERS, SOUND
from images.test_reading import header
from rest.test_documents import Author
from rest.test_openapi import fits
from rest.test_paper_pictures import DOCUMENT, ROPE
from rest.test_problems import refused
from spreadwright.images import encode_jpeg, encode_png, read
from spreadwright.rest import create_app
from spreadwright.rest.settings import Settings
from spreadwright.store import Collection
from spreadwright.store.opening import open_store


def plain(red, green, blue, size=300):
    return np.full((size, size, 3), (red, green, blue), dtype=np.uint8)


RED, BLUE = encode_png(plain(220, 0, 0)), encode_png(plain(0, 0, 220))
TWO = {**PAPERS, "papers": [ROPE, {**ROPE, "id": "sail", "front": {**ROPE["front"], "picture": "sail.jpg"}}]}


class Sender(Author):
    """Somebody with a token who sends pictures."""

    def send(self, path, data, kind="image/png", **headers):
        named = {name.replace("_", "-"): value for name, value in headers.items()}
        return self._client.put(path, data=data, content_type=kind, headers={**self._headers, **named})


@pytest.fixture(scope="module")
def service(address_of_module, folder):
    store = open_store(address_of_module)
    yield create_app(Collection(folder), store=store, settings=Settings(set_pictures=3, picture_bytes=2_000_000))
    store.database.dispose()


@pytest.fixture
def ann(service):
    return Sender(service, "Ann")


@pytest.fixture
def anybody(service):
    return service.test_client()


@pytest.fixture
def made(ann):
    """The path of a draft that names a picture, and its ETag."""
    answer = ann.ask("POST", "/paper-sets", DOCUMENT)
    return answer.headers["Location"], answer.headers["ETag"]


def test_a_picture_that_is_sent_is_shown_by_swatch_and_preview(ann, made):
    path, etag = made
    shown = f"/recipes/window-seat/preview.svg?set={path.rpartition('/')[2]}&colourway="
    colourways = ann.ask("GET", f"/recipes/window-seat/colourways?set={path.rpartition('/')[2]}&n=50").json[
        "colourways"
    ]
    name = next(each["id"] for each in colourways if "rope-scan" in each["id"])
    before = ann.ask("GET", shown + name)
    assert before.status_code == 200 and b"data:image" not in before.data
    sent = ann.send(f"{path}/pictures/rope.png", RED, If_Match=etag)
    assert (sent.status_code, sent.json["revision"]) == (200, 2) and sent.headers["ETag"] != etag
    assert b"data:image/png" in ann.ask("GET", shown + name).data
    swatch = ann.ask("GET", f"{path}/swatches/rope-scan.png?width=200").data
    assert tuple(read(swatch).pixels[80, 80]) == (220, 0, 0)
    again = ann.send(f"{path}/pictures/rope.png", BLUE, If_Match=sent.headers["ETag"])
    swatch = ann.ask("GET", f"{path}/swatches/rope-scan.png?width=200").data
    assert again.json["revision"] == 3 and tuple(read(swatch).pixels[80, 80]) == (0, 0, 220)


def test_pictures_are_listed_with_those_that_are_missing(ann):
    path = ann.ask("POST", "/paper-sets", TWO).headers["Location"]
    empty = ann.ask("GET", f"{path}/pictures").json
    assert (empty["pictures"], empty["missing"]) == ([], ["rope.png", "sail.jpg"])
    ann.send(f"{path}/pictures/sail.jpg", encode_jpeg(plain(9, 9, 9)), "image/jpeg", If_Match="*")
    ann.send(f"{path}/pictures/spare.png", RED, If_Match="*")
    listed = ann.ask("GET", f"{path}/pictures")
    fits(ann.ask("GET", "/openapi.json").json, listed.json, {"$ref": "#/components/schemas/PictureList"})
    faces = {each["name"]: each["faces"] for each in listed.json["pictures"]}
    assert faces == {"sail.jpg": ["/papers/1/front/picture"], "spare.png": []}
    assert listed.json["missing"] == ["rope.png"]
    assert listed.json["etag"] == ann.ask("GET", path).headers["ETag"]


def test_a_picture_is_read_with_its_own_type_and_may_be_kept(ann, anybody, made):
    path, _ = made
    ann.send(f"{path}/pictures/rope.png", RED, If_Match="*")
    where = f"{path}/pictures/rope.png"
    assert anybody.get(where).status_code == anybody.get(f"{path}/pictures").status_code == 404
    found = ann.ask("GET", where)
    assert (found.status_code, found.content_type, found.data[:4]) == (200, "image/png", b"\x89PNG")
    assert found.headers["X-Content-Type-Options"] == "nosniff" and "'none'" in found.headers["Content-Security-Policy"]
    assert found.headers["Cache-Control"] == "private, no-cache"
    assert ann.ask("GET", where, If_None_Match=found.headers["ETag"]).status_code == 304
    fixed = ann.ask("GET", f"{path}/pictures").json["pictures"][0]["links"]["content"]
    content = anybody.get(fixed)
    assert content.data == found.data and "immutable" in content.headers["Cache-Control"]


def test_no_document_is_a_picture_and_no_picture_a_document(ann, anybody, made):
    path, _ = made
    ann.send(f"{path}/pictures/rope.png", RED, If_Match="*")
    digest = ann.ask("GET", f"{path}/pictures").json["pictures"][0]["sha256"]
    refused(anybody.get(f"/contents/{digest}"), 404, "unknown-name")
    refused(anybody.get(f"/pictures/{ann.ask('GET', f'{path}/status').json['sha256']}"), 404, "unknown-name")
    refused(ann.ask("GET", f"{path}/pictures/roep.png"), 404, "unknown-name")


def test_only_the_owner_sends_and_only_to_the_revision_that_was_meant(service, ann, anybody, made):
    path, etag = made
    where = f"{path}/pictures/rope.png"
    refused(anybody.put(where, data=RED, content_type="image/png"), 401, "no-token")
    refused(Sender(service, "Ben").send(where, RED, If_Match="*"), 404, "unknown-name")
    refused(ann.send(where, RED), 428, "condition-required")
    assert ann.send(where, RED, If_Match=etag).status_code == 200
    refused(ann.send(where, BLUE, If_Match=etag), 412, "stale-write")
    refused(ann.ask("DELETE", where, If_Match=etag), 412, "stale-write")
    refused(ann.send("/paper-sets/nobody/pictures/a.png", RED, If_Match="*"), 404, "unknown-name")


def test_the_same_picture_again_changes_nothing(ann, made):
    path, _ = made
    revisions = [ann.send(f"{path}/pictures/rope.png", RED, If_Match="*").json["revision"] for _ in range(2)]
    assert revisions == [2, 2]


def test_a_set_is_published_with_all_its_pictures_and_then_keeps_them(ann, anybody, made):
    path, _ = made
    problem = refused(ann.ask("POST", f"{path}/publish", If_Match="*"), 422, "invalid-document")
    assert [each["code"] for each in problem["errors"]] == ["picture-missing"]
    ann.send(f"{path}/pictures/rope.png", RED, If_Match="*")
    assert ann.ask("POST", f"{path}/publish", If_Match="*").status_code == 200
    assert anybody.get(f"{path}/pictures/rope.png").status_code == 200
    refused(ann.ask("DELETE", f"{path}/pictures/rope.png", If_Match="*"), 422, "invalid-document")
    assert ann.ask("PUT", path, PAPERS, If_Match="*").status_code == 200
    assert ann.ask("DELETE", f"{path}/pictures/rope.png", If_Match="*").json["revision"] == 5
    refused(anybody.get(f"{path}/pictures/rope.png"), 404, "unknown-name")


def located():
    """A JPEG that says where it was taken."""
    exif = Image.Exif()
    exif[0x010E] = "behind the harbour"
    file = BytesIO()
    Image.fromarray(plain(9, 90, 9)).save(file, "JPEG", exif=exif, comment=b"by nobody")
    return file.getvalue() + b"<script>alert(1)</script>"


def test_a_picture_is_kept_as_pixels_alone(ann, made):
    path, _ = made
    assert b"harbour" in located() and b"<script>" in located()
    assert ann.send(f"{path}/pictures/green.jpg", located(), "image/jpeg", If_Match="*").status_code == 200
    kept = ann.ask("GET", f"{path}/pictures/green.jpg").data
    assert not any(word in kept for word in (b"harbour", b"nobody", b"<script>", b"Exif"))
    large = encode_png(plain(1, 2, 3, 2100))
    assert ann.send(f"{path}/pictures/large.png", large, If_Match="*").status_code == 200
    assert read(ann.ask("GET", f"{path}/pictures/large.png").data, longest=9999).pixels.shape == (2048, 2048, 3)


def bomb():
    """A small PNG of 20,000 by 20,000 pixels."""
    chunks = [(b"IHDR", struct.pack(">IIBBBBB", 20_000, 20_000, 1, 0, 0, 0, 0)), (b"IDAT", zlib.compress(bytes(10**6)))]
    made = [
        struct.pack(">I", len(d)) + k + d + struct.pack(">I", zlib.crc32(k + d)) for k, d in [*chunks, (b"IEND", b"")]
    ]
    return b"\x89PNG\r\n\x1a\n" + b"".join(made)


@pytest.mark.parametrize(
    ("data", "code"),
    [
        (b"<svg xmlns='http://www.w3.org/2000/svg'><script/></svg>", "not-a-picture"),
        (b"<!doctype html><script>alert(1)</script>", "not-a-picture"),
        (b"", "not-a-picture"),
        (RED[: len(RED) // 2], "picture-damaged"),
        (header(50_000, 50_000), "picture-too-large"),
        (bomb(), "picture-too-large"),
    ],
)
def test_what_is_no_picture_is_refused_by_name(ann, made, data, code):
    path, etag = made
    problem = refused(ann.send(f"{path}/pictures/rope.png", data, If_Match="*"), 422, "unreadable-picture")
    (told,) = problem["errors"]
    assert told["code"] == code and told["detail"].startswith("rope.png: ") and told["remedy"]
    assert ann.ask("GET", path).headers["ETag"] == etag


@pytest.mark.parametrize("kind", ["image/svg+xml", "text/html", "application/json", "multipart/form-data", ""])
def test_other_types_are_refused(ann, made, kind):
    refused(ann.send(f"{made[0]}/pictures/rope.png", RED, kind, If_Match="*"), 415, "unsupported-media-type")


def test_too_many_bytes_and_too_many_pictures_are_refused(ann, made):
    path, _ = made
    problem = refused(ann.send(f"{path}/pictures/a.png", RED + bytes(2_000_000), If_Match="*"), 413, "too-large")
    assert "2,000,000 bytes" in problem["detail"]
    for name in "abc":
        assert ann.send(f"{path}/pictures/{name}.png", RED, If_Match="*").status_code == 200
    problem = refused(ann.send(f"{path}/pictures/d.png", RED, If_Match="*"), 422, "unreadable-picture")
    assert problem["errors"][0]["code"] == "too-many-pictures"
    assert ann.send(f"{path}/pictures/c.png", BLUE, If_Match="*").status_code == 200


@pytest.mark.parametrize(
    "name", [".hidden.png", "..%5Cup.png", "c:a.png", "%00.png", "rope.svg", "rope", "x" * 200 + ".png", "a%0Ab.png"]
)
def test_names_that_no_file_has_are_refused(ann, made, name):
    refused(ann.send(f"{made[0]}/pictures/{name}", RED, If_Match="*"), 422, "unreadable-picture")


@pytest.mark.parametrize("name", ["..%2Fup.png", "%2Fetc%2Fpasswd.png", "a/b.png"])
def test_names_with_folders_lead_nowhere(ann, made, name):
    refused(ann.send(f"{made[0]}/pictures/{name}", RED, If_Match="*"), 404, "not-found")


def test_recipes_have_no_pictures(ann):
    path = ann.ask("POST", "/recipes", SOUND).headers["Location"]
    refused(ann.send(f"{path}/pictures/rope.png", RED, If_Match="*"), 404, "not-found")
