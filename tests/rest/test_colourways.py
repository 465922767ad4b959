import pytest

from builder import PAPERS


def test_the_best_come_first_with_reasons_and_previews(client):
    answer = client.get("/recipes/window-seat/colourways?set=two&n=3").json
    scores = [each["score"] for each in answer["colourways"]]
    assert len(scores) == 3 and scores == sorted(scores, reverse=True)
    assert all(each["reason"] for each in answer["colourways"])
    assert client.get(answer["colourways"][0]["links"]["preview"]).status_code == 200


def test_without_a_colourway_the_best_is_shown(client):
    best = client.get("/recipes/window-seat/colourways?n=1").json["colourways"][0]
    assert client.get(best["links"]["preview"]).data == client.get("/recipes/window-seat/preview?set=two").data


def test_the_list_of_all_is_linked(client):
    links = client.get("/recipes/window-seat/colourways?set=two").headers.getlist("Link")
    assert any('/colourways/all?set=two>; rel="collection"' in each for each in links)


@pytest.mark.parametrize("n", ["0", "101", "-1", "1.5", "many", ""])
def test_a_number_out_of_range_is_refused(client, n):
    response = client.get(f"/recipes/window-seat/colourways?n={n}")
    assert response.status_code == 400
    assert [each["parameter"] for each in response.json["errors"]] == ["n"]


def test_reasons_speak_the_language_that_is_liked(client):
    english, german = (
        client.get("/recipes/window-seat/colourways?n=1", headers={"Accept-Language": language})
        for language in ("en", "de")
    )
    assert german.headers["Content-Language"] == german.json["language"] == "de"
    assert english.json["colourways"][0]["reason"] != german.json["colourways"][0]["reason"]


def test_roles_that_nothing_fits_are_told_with_their_places(client, folder):
    from builder import spoilt
    from spreadwright.rest import create_app
    from spreadwright.store import Collection

    (folder / "paper-sets" / "plain.json").write_bytes(spoilt(lambda d: d["papers"].__delitem__(slice(2, 4)), PAPERS))
    try:
        other = create_app(Collection(folder)).test_client()
        response = other.get("/recipes/window-seat/colourways?set=plain")
        both = other.get("/recipes/window-seat/colourways").json
    finally:
        (folder / "paper-sets" / "plain.json").unlink()
    assert response.status_code == 422
    assert [(each["code"], each["pointer"]) for each in response.json["errors"]] == [
        ("no-paper-for-role", "/roles/print")
    ]
    assert both["sets"] == ["two"] and both["findings"][0]["code"] == "no-paper-for-role"
