import pypdfium2
import pytest

from spreadwright.rest.turns import turn


@pytest.fixture(scope="module")
def answer(app):
    return app.test_client().get("/recipes/window-seat/booklet", base_url="https://albums.example/shelf")


def test_booklet_is_a_pdf_with_an_etag(answer):
    assert (answer.status_code, answer.content_type) == (200, "application/pdf")
    assert answer.headers["ETag"] and len(pypdfium2.PdfDocument(answer.data)) > 5


def test_code_leads_to_where_it_is_served(answer):
    first = pypdfium2.PdfDocument(answer.data)[0].get_textpage().get_text_bounded()
    assert "https://albums.example/shelf/recipes/window-seat" in "".join(first.split())


def test_page_size_is_chosen_in_the_query(client):
    answer = client.get("/recipes/window-seat/booklet.pdf?page=letter&bench=bench-inch")
    assert tuple(map(round, pypdfium2.PdfDocument(answer.data).get_page_size(0))) == (612, 792)


def test_unknown_page_size_is_refused_with_the_known_ones(client):
    answer = client.get("/recipes/window-seat/booklet?page=a7")
    [error] = answer.json["errors"]
    assert answer.status_code == 400 and error["code"] == "wrong-parameter" and "a4, letter" in error["remedy"]


def test_more_pieces_than_are_printed_here_are_refused_with_the_bound(client, monkeypatch):
    monkeypatch.setattr("spreadwright.rest.views.booklet.MOST_PIECES", 5)
    answer = client.get("/recipes/window-seat/booklet")
    assert (answer.status_code, answer.content_type) == (422, "application/problem+json")
    assert answer.json["type"].endswith("/print-too-long")
    assert "11 pieces; at most 5" in answer.json["detail"] and "command line" in answer.json["detail"]


def test_long_booklets_take_turns(client, monkeypatch):
    monkeypatch.setattr("spreadwright.rest.views.booklet._LONG", 5)
    with turn(1), turn(1):
        answer = client.get("/recipes/window-seat/booklet?page=letter")
    assert (answer.status_code, answer.headers["Retry-After"]) == (503, "13")
    assert client.get("/recipes/window-seat/booklet?page=letter").status_code == 200


def test_recipe_with_errors_is_refused(client):
    answer = client.get("/recipes/broken/booklet")
    assert answer.status_code == 422 and answer.json["errors"]
