import json

import pytest

from spreadwright.rest.languages import liked


@pytest.mark.parametrize(
    ("accept", "language"),
    [
        ([("de", 1.0)], "de"),
        ([("de-CH", 0.5), ("fr-CA", 0.9)], "fr"),
        ([("pt", 1.0), ("en-US", 0.3)], "en"),
        ([("fr", 0.0)], ""),
        ([("*", 1.0)], ""),
        ([], ""),
        ([("fr", 0.5), ("de", 0.5)], "fr"),
    ],
)
def test_the_language_liked_best_is_chosen(accept, language):
    assert liked(accept) == language


@pytest.mark.parametrize("path", ["cuts", "placement", "tolerance"])
def test_instructions_speak_as_the_client_likes(client, path):
    answer = client.get(f"/recipes/window-seat/{path}", headers={"Accept-Language": "de-AT, en;q=0.5"})
    assert answer.headers["Content-Language"] == "de"
    assert "Accept-Language" in answer.vary


def test_a_language_that_is_named_comes_before_what_the_client_likes(client):
    answer = client.get("/recipes/window-seat/cuts?language=fr", headers={"Accept-Language": "de"})
    assert answer.headers["Content-Language"] == "fr" and answer.json["language"] == "fr"
    assert "Accept-Language" not in answer.vary
    assert answer.json["steps"][0]["words"]["board"].startswith("Placez la feuille")


def test_without_a_wish_the_recipe_speaks_its_own_language(client):
    answer = client.get("/recipes/window-seat/cuts")
    assert answer.headers["Content-Language"] == "en"
    assert answer.json["cautions"][0].startswith("The blade is sharp")


def test_each_language_has_an_entity_tag_of_its_own(client):
    german, french = (client.get("/recipes/window-seat/cuts", headers={"Accept-Language": tag}) for tag in ("de", "fr"))
    assert german.headers["ETag"] != french.headers["ETag"]
    again = {"Accept-Language": "de", "If-None-Match": german.headers["ETag"]}
    same = client.get("/recipes/window-seat/cuts", headers=again)
    assert same.status_code == 304 and "Accept-Language" in same.vary
    other = client.get("/recipes/window-seat/cuts", headers={**again, "Accept-Language": "fr"})
    assert other.status_code == 200


def test_a_language_that_nobody_speaks_here_is_refused(client):
    answer = client.get("/recipes/window-seat/cuts?language=tlh")
    assert answer.status_code == 400
    assert "de, en, fr" in json.dumps(answer.json) or "en, de, fr" in json.dumps(answer.json)


def test_pictures_speak_too(client):
    english, german = (client.get(f"/recipes/window-seat/cuts.svg?language={tag}").data for tag in ("en", "de"))
    assert b"Sheet 3" in english and b"Bogen 3" in german


def test_documents_speak_no_language_of_their_own(client):
    assert "Content-Language" not in client.get("/recipes/window-seat").headers
