from threading import BoundedSemaphore

import pytest

from spreadwright.rest import turns

SHEET, STRIP, OF_SET = (
    "/recipes/window-seat/contact-sheet",
    "/recipes/window-seat/test-strip",
    "/paper-sets/two/contact-sheet",
)


@pytest.mark.parametrize("where", [SHEET, STRIP, OF_SET])
@pytest.mark.parametrize(
    ("suffix", "kind"), [("svg", "image/svg+xml"), ("png", "image/png"), ("pdf", "application/pdf")]
)
def test_sheets_and_strips_come_in_every_form(client, where, suffix, kind):
    query = "?width=200" + ("&n=2" if where == SHEET else "")
    response = client.get(f"{where}.{suffix}{query}")
    assert response.status_code == 200 and response.mimetype == kind


def test_a_sheet_that_the_client_has_is_not_sent_again(client):
    first = client.get(f"{SHEET}?n=1")
    again = client.get(f"{SHEET}?n=1", headers={"If-None-Match": first.headers["ETag"]})
    assert first.status_code == 200 and again.status_code == 304 and not again.data


def test_what_stands_on_a_sheet_is_told_as_json(client):
    answer = client.get(f"{SHEET}.json?n=3").json
    ranked = client.get("/recipes/window-seat/colourways?n=3").json["colourways"]
    assert [each["colourway"] for each in answer["frames"]] == [each["id"] for each in ranked]


def test_recipes_with_an_error_are_named_on_the_sheet_of_a_set(client):
    answer = client.get(f"{OF_SET}.json").json
    assert [each["recipe"] for each in answer["frames"]] == ["window-seat", "window-two"]
    assert "error" in answer["left_out"][0]["reason"]


def test_the_recipes_of_a_set_come_a_page_at_a_time(client):
    where, seen = f"{OF_SET}.json?limit=2", []
    while where:
        response = client.get(where)
        seen += [each["recipe"] for each in response.json["frames"]]
        links = ", ".join(response.headers.getlist("Link"))
        where = next((each.split(">")[0].strip(" <") for each in links.split(",") if 'rel="next"' in each), None)
    assert seen == ["window-seat", "window-two"]


@pytest.mark.parametrize(
    ("where", "parameter"),
    [(f"{SHEET}?n=0", "n"), (f"{SHEET}?n=25", "n"), (f"{OF_SET}?limit=25", "limit")],
)
def test_numbers_out_of_range_are_problems(client, where, parameter):
    response = client.get(where)
    assert response.status_code == 400
    assert [each["parameter"] for each in response.json["errors"]] == [parameter]


def test_long_sheets_wait_for_a_turn(client, monkeypatch):
    taken = BoundedSemaphore(1)
    taken.acquire()
    monkeypatch.setattr(turns, "_turns", taken)
    response = client.get(f"{SHEET}.png?n=9&width=100")
    assert response.status_code == 503 and int(response.headers["Retry-After"]) > 0
    assert client.get(f"{SHEET}.svg?n=9").status_code == 200


def test_strips_speak_the_language_that_is_liked(client):
    answer = client.get(STRIP, headers={"Accept": "application/json", "Accept-Language": "de"})
    assert answer.headers["Content-Language"] == answer.json["language"] == "de"
    assert answer.json["sights"][1]["title"] != "As a grey print"
