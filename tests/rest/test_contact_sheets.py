import pytest

from rest.test_jobs import over

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


def test_long_sheets_are_jobs_and_then_at_hand(client):
    long = f"{SHEET}.png?n=9&width=100"
    accepted = client.get(long)
    assert accepted.status_code == 202 and accepted.json["verb"] == "contact_sheet_as"
    job = over(client, accepted.headers["Location"])
    result = client.get(job["links"]["result"])
    assert (job["state"], result.mimetype) == ("done", "image/png")
    again = client.get(long)
    assert again.status_code == 200 and again.data == result.data
    for quick in (f"{SHEET}.svg?n=9", f"{SHEET}.json?n=9", f"{SHEET}.png?n=6&width=100", f"{OF_SET}.png?width=100"):
        assert client.get(quick).status_code == 200


def test_long_sheets_of_a_set_are_jobs_too(client, monkeypatch):
    monkeypatch.setattr("spreadwright.rest.views.contact_sheets._QUICK", 1)
    answer = client.get(f"{OF_SET}.pdf?page=letter", headers={"Prefer": "wait=25"})
    assert answer.status_code == 200 and answer.headers["Preference-Applied"] == "wait=25"
    assert answer.data.startswith(b"%PDF")


def test_strips_speak_the_language_that_is_liked(client):
    answer = client.get(STRIP, headers={"Accept": "application/json", "Accept-Language": "de"})
    assert answer.headers["Content-Language"] == answer.json["language"] == "de"
    assert answer.json["sights"][1]["title"] != "As a grey print"
