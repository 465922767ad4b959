"""Photographs that are uploaded: matched, drawn, refused, and never kept."""

import json
import tempfile
import tracemalloc
from contextlib import ExitStack
from io import BytesIO

import pytest
from PIL import Image

import photographs
from builder import SOUND
from images.test_reading import header, saved, slope
from rest.test_jobs import over
from rest.test_openapi import fits
from rest.test_problems import refused
from spreadwright.rest import create_app, jobs, uploads
from spreadwright.rest.settings import Settings
from spreadwright.rest.turns import MOST_AT_ONCE, turn
from spreadwright.rest.views import match as views
from spreadwright.store import Collection

BEACH = photographs.as_jpeg(photographs.beach())
PORTRAIT = photographs.as_jpeg(photographs.portrait())


@pytest.fixture
def ask(client):
    def ask(*photos, path="/match", accept="application/json", recipe=None, **query):
        named = [
            each if isinstance(each, tuple) else (each, f"photo-{number}.jpg") for number, each in enumerate(photos)
        ]
        parts = {"photo": [(BytesIO(data), name) for data, name in named]}
        if recipe is not None:
            parts["recipe"] = (BytesIO(json.dumps(recipe).encode()), "recipe.json")
        return client.post(
            path, data=parts, query_string=query, headers={"Accept": accept}, content_type="multipart/form-data"
        )

    return ask


def test_the_palette_and_the_sets_come_back(ask):
    answer = ask(BEACH).json
    assert [each["name"] for each in answer["photographs"]] == ["photo-0.jpg"]
    assert answer["photographs"][0]["pixels"] == {"width": 900, "height": 600}
    assert "blue" in {tone["name"] for tone in answer["palette"]}
    assert [suit["set"] for suit in answer["suits"]] == ["two"] and answer["suits"][0]["colourway"] is None


def test_a_recipe_of_the_collection_takes_the_photographs(ask):
    answer = ask(BEACH, PORTRAIT, recipe=None, set="two").json
    assert answer["in_mats"] == []
    answer = ask(BEACH, PORTRAIT, set="two", n=3, recipe=SOUND).json
    assert sorted(each["name"] for each in answer["in_mats"]) == ["photo-0.jpg", "photo-1.jpg"]
    assert 1 <= len(answer["suits"]) <= 3 and answer["suits"][0]["colourway"]["set"] == "two"


def test_the_recipe_may_be_named(client):
    parts = {"photo": (BytesIO(BEACH), "beach.jpg")}
    answer = client.post("/match?recipe=window-seat", data=parts, content_type="multipart/form-data").json
    (laid,) = answer["in_mats"]
    crop = laid["crop"]
    assert crop["left"] + crop["width"] <= 900 and crop["top"] + crop["height"] <= 600
    assert abs(1 - crop["width"] * crop["height"] / (900 * 600) - laid["lost"]) < 0.01


def test_the_answer_is_as_described(ask, client):
    described = client.get("/openapi.json").json
    shape = {"$ref": "#/components/schemas/Match"}
    fits(described, ask(BEACH).json, shape)
    fits(described, ask(BEACH, recipe=SOUND).json, shape)
    body = described["paths"]["/match"]["post"]["requestBody"]["content"]
    assert set(body) == {"multipart/form-data"}


@pytest.mark.parametrize(
    ("media_type", "start"), [("image/svg+xml", b"<svg"), ("image/png", b"\x89PNG"), ("application/pdf", b"%PDF")]
)
@pytest.mark.parametrize("path", ["/match", "/match/preview"])
def test_it_comes_as_a_picture_too(ask, path, media_type, start):
    response = ask(BEACH, path=path, accept=media_type, recipe=SOUND)
    assert response.status_code == 200 and response.data.startswith(start)
    assert response.headers["Cache-Control"] == "no-store"


def test_it_speaks_the_language_that_is_asked_for(client):
    parts = {"photo": (BytesIO(BEACH), "beach.jpg")}
    response = client.post("/match?language=de", data=parts, content_type="multipart/form-data")
    assert response.headers["Content-Language"] == "de"
    assert "blau" in {tone["name"] for tone in response.json["palette"]}


def test_a_focus_moves_the_crop(ask):
    crops = [
        ask(BEACH, recipe=SOUND, focus=focus).json["in_mats"][0]["crop"] for focus in ("0,0", "photo-0.jpg=100,100")
    ]
    assert crops[0] != crops[1] and (crops[0]["left"], crops[0]["top"]) == (0, 0)


@pytest.mark.parametrize(
    ("data", "code"),
    [
        (b"GIF89a", "not-a-picture"),
        (b"no picture at all", "not-a-picture"),
        (b"", "not-a-picture"),
        (BEACH[: len(BEACH) // 2], "picture-damaged"),
        (header(50_000, 50_000), "picture-too-large"),
        (saved(slope(), "GIF", save_all=True, append_images=[slope().rotate(180)]), "picture-moves"),
    ],
)
def test_what_is_no_photograph_is_refused_by_name(ask, data, code):
    problem = refused(ask((BEACH, "good.jpg"), (data, "bad.jpg")), 422, "unreadable-picture")
    (error,) = problem["errors"]
    assert error["code"] == code and error["detail"].startswith("bad.jpg: ") and error["remedy"]


@pytest.mark.parametrize(
    "data",
    [
        saved(Image.new("CMYK", (60, 40), (200, 40, 0, 20)), "JPEG"),
        saved(slope().convert("I"), "TIFF"),
        saved(slope().convert("LA")),
        header(3, 2, bits=16),
    ],
)
def test_other_kinds_of_pixels_are_photographs_too(ask, data):
    assert ask(data).json["palette"]


def test_nothing_is_written_to_a_disk(ask, monkeypatch):
    def refuse(*_, **__):
        raise AssertionError("a file was made")

    for name in ("TemporaryFile", "NamedTemporaryFile", "SpooledTemporaryFile", "mkstemp"):
        monkeypatch.setattr(tempfile, name, refuse)
    noisy = photographs.as_jpeg(photographs.finished(photographs.beach((1800, 1200)), 0.1, 60), quality=98)
    assert len(noisy) > 1_000_000
    assert ask(noisy, noisy).status_code == 200


def test_memory_is_bounded_by_what_is_shown_not_by_what_is_claimed(ask):
    tracemalloc.start()
    try:
        refused(ask(header(50_000, 50_000)), 422, "unreadable-picture")
        assert tracemalloc.get_traced_memory()[1] < 20_000_000
    finally:
        tracemalloc.stop()


def test_a_body_of_another_type_is_415(client):
    problem = refused(client.post("/match", json={}), 415, "unsupported-media-type")
    assert "multipart/form-data" in problem["detail"]


@pytest.mark.parametrize(
    "parts",
    [{}, {"photo": "words"}, {"image": (BytesIO(BEACH), "beach.jpg")}, {"photo": (BytesIO(BEACH), "b.jpg"), "x": "1"}],
)
def test_other_parts_are_refused(client, parts):
    response = client.post("/match", data=parts, content_type="multipart/form-data")
    refused(response, 400, "unreadable-document")


def test_a_body_without_its_boundary_is_400(client):
    for kind in ("multipart/form-data", "multipart/form-data; boundary=xyz"):
        refused(client.post("/match", data=b"--abc\r\n", content_type=kind), 400, "unreadable-document")


def test_too_many_photographs_are_refused(ask):
    tiny = saved(slope(6, 4))
    assert ask(*[tiny] * uploads.MOST_PHOTOGRAPHS).status_code == 200
    refused(ask(*[tiny] * (uploads.MOST_PHOTOGRAPHS + 1)), 400, "unreadable-document")
    refused(ask(*[tiny] * 60), 413, "too-large")


def test_too_many_bytes_are_413(folder):
    client = create_app(Collection(folder), settings=Settings(upload_bytes=30_000)).test_client()
    parts = {"photo": (BytesIO(BEACH + b"\0" * 30_000), "beach.jpg")}
    problem = refused(client.post("/match", data=parts, content_type="multipart/form-data"), 413, "too-large")
    assert "photos" in problem["detail"]


def test_too_many_pixels_together_are_413_before_any_is_decoded(ask, monkeypatch):
    monkeypatch.setattr(views, "looked_at", lambda *_, **__: pytest.fail("decoded"))
    problem = refused(ask(*[header(7000, 7000)] * 5), 413, "too-large")
    assert "245 million pixels together; the most is 240 million" in problem["detail"]


def test_as_many_pixels_as_may_be_are_looked_at(ask, monkeypatch):
    monkeypatch.setattr(uploads, "MOST_PIXELS", 2 * 900 * 600)
    assert ask(BEACH, BEACH).status_code == 200
    refused(ask(BEACH, BEACH, saved(slope(1, 1))), 413, "too-large")


@pytest.mark.parametrize("query", [{"n": "0"}, {"focus": "here"}, {"focus": "9=1,1"}, {"width": "1"}, {"sets": "two"}])
def test_wrong_parameters_are_400(ask, query):
    refused(ask(BEACH, **query), 400, "bad-query")


def test_a_preview_needs_a_recipe(ask):
    refused(ask(BEACH, path="/match/preview", accept="image/png"), 400, "bad-query")


def test_unknown_names_are_404(ask):
    refused(ask(BEACH, set="three"), 404, "unknown-name")


def test_a_recipe_with_errors_is_422(ask):
    refused(ask(BEACH, recipe={**SOUND, "placements": []}), 422, "invalid-document")


def test_the_service_is_busy_while_others_are_looked_at(ask, monkeypatch):
    monkeypatch.setattr("spreadwright.rest.turns.PATIENCE_S", 0)
    with ExitStack() as others:
        for _ in range(MOST_AT_ONCE):
            others.enter_context(turn(9))
        response = ask(BEACH)
        refused(response, 503, "busy")
        assert int(response.headers["Retry-After"]) > 0


def test_what_was_uploaded_can_be_read_again(app):
    names = ['the "big" beach.jpg', "back\\slash", "Möwe, früh; x=1.jpg", "photo 4"]
    upload = uploads.Upload(tuple(zip(names, (BEACH, b"--\r\n", b"", b"\0"), strict=True)), b'{"a": 1}')
    body, kind = upload.as_body()
    with app.test_request_context("/match", method="POST", data=body, content_type=kind):
        found = uploads.uploaded()
    assert [data for _, data in found.photographs] == [data for _, data in upload.photographs]
    assert [name for name, _ in found.photographs] == ['the "big" beach.jpg', "slash", "Möwe, früh; x=1.jpg", "photo 4"]
    assert found.recipe == upload.recipe


def test_many_photographs_are_a_job_that_keeps_them_no_longer_than_it_takes(ask, client, app, monkeypatch):
    odd = [(BEACH, "beach.jpg"), (PORTRAIT, "Möwe, früh.jpg")]
    at_once = ask(*odd, recipe=SOUND, n=2).json
    monkeypatch.setattr(views, "_EACH_S", 4)
    accepted = ask(*odd, recipe=SOUND, n=2)
    assert accepted.status_code == 202
    job = over(client, accepted.headers["Location"])
    assert job["state"] == "done" and client.get(job["links"]["result"]).json == at_once
    assert app.extensions["spreadwright"].store.jobs.get(job["id"]).request == b""


def test_photographs_of_a_job_that_is_cancelled_or_fails_are_not_kept(ask, client, app, monkeypatch):
    monkeypatch.setattr(views, "_EACH_S", 9)
    store = app.extensions["spreadwright"].store
    failed = over(client, ask((b"no picture", "bad.jpg")).headers["Location"])
    problem = refused(client.get(failed["links"]["result"]), 422, "unreadable-picture")
    assert problem["errors"][0]["detail"].startswith("bad.jpg: ")
    monkeypatch.setattr(app.extensions["jobs"], "wake", lambda: None)
    waiting = ask(BEACH).json["id"]
    assert len(store.jobs.get(waiting).request) > len(BEACH)
    client.delete(f"/jobs/{waiting}")
    assert [store.jobs.get(each).request for each in (failed["id"], waiting)] == [b"", b""]


def test_photographs_that_wait_are_bounded(ask, client, app, monkeypatch):
    monkeypatch.setattr(views, "_EACH_S", 9)
    monkeypatch.setattr(app.extensions["jobs"], "wake", lambda: None)
    monkeypatch.setattr(jobs, "_SMALL", 1000)
    monkeypatch.setattr(jobs, "MOST_WAITING_BYTES", 3 * len(BEACH))
    first = ask(BEACH)
    assert first.status_code == 202
    response = ask(BEACH, BEACH)
    refused(response, 503, "busy")
    client.delete(first.headers["Location"])
    again = ask(BEACH, BEACH)
    assert again.status_code == 202
    client.delete(again.headers["Location"])


@pytest.mark.parametrize(
    ("photos", "is_long"),
    [([header(4000, 3000)] * 5, False), ([header(5000, 4000)] * 12, True), ([BEACH] * 12, False)],
)
def test_what_takes_long_is_told_from_kinds_and_pixels(photos, is_long):
    upload = uploads.Upload(tuple((str(number), data) for number, data in enumerate(photos)))
    assert (views._expected_s({}, upload) > jobs.SOON_S) is is_long
