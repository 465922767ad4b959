import json
from concurrent.futures import ThreadPoolExecutor
from contextlib import ExitStack
from threading import Timer
from time import sleep

import pytest

from builder import PAPERS, SOUND, sound
from rest.test_openapi import fits
from rest.test_problems import refused
from spreadwright.document import canonical, pieces_in_short
from spreadwright.rest import turns
from spreadwright.rest.turns import MOST_AT_ONCE, turn

PAGE = "7x7 left, 3 1/2x5 *2 right, 5x6 *2 tile"
PINWHEEL = "70x30, 26x60, 60x36, 36x66, 34x30"


@pytest.fixture
def ask(client):
    def ask(data, **query):
        body = data if isinstance(data, bytes) else canonical(data)
        return client.post("/plan", data=body, query_string=query, content_type="application/json")

    return ask


def test_a_piece_list_is_answered_with_sheets_and_what_is_proved(ask):
    answer = ask(pieces_in_short(PAGE)).json
    (made,) = answer["plans"]
    assert (made["sheet_count"], made["optimal"], made["spares"], made["recipe"]) == (1, True, [], None)
    assert made["certificates"][0]["gap"] == 0 and answer["bench"] is None


def test_a_recipe_is_answered_with_the_whole_of_it(ask, client):
    made = ask(sound()).json["plans"][0]
    assert made["recipe"]["title"] == SOUND["title"]
    assert client.post("/check", json=made["recipe"]).json["fine"]


def test_the_answer_is_as_described(ask, client):
    described = client.get("/openapi.json").json
    shape = {"$ref": "#/components/schemas/Plans"}
    for document in (pieces_in_short(PAGE), SOUND):
        fits(described, ask(document, bench="bench-inch").json, shape)
    fits(described, ask(pieces_in_short("13x13")).json, {"$ref": "#/components/schemas/Problem"})


def test_what_is_impossible_is_422_with_its_causes(ask):
    problem = refused(ask(pieces_in_short(PINWHEEL, ["96x96*1"])), 422, "no-plan")
    assert [each["code"] for each in problem["errors"]] == ["no-through-cuts"]
    problem = refused(ask(pieces_in_short("7x7, 13x13")), 422, "no-plan")
    assert [(e["code"], e["pointer"]) for e in problem["errors"]] == [("piece-larger-than-stock", "/pieces/1")]


def test_a_search_that_finds_nothing_in_time_is_another_problem(ask, monkeypatch):
    clock = iter(range(0, 10**9, 100))
    monkeypatch.setattr("spreadwright.rest.turns.monotonic", lambda: next(clock))
    problem = refused(ask(pieces_in_short(PINWHEEL, ["96x96*1"])), 422, "plan-too-long")
    assert "proves nothing" in problem["detail"]


@pytest.mark.parametrize(
    "query",
    [
        {"seconds": "0"},
        {"seconds": "20.1"},
        {"seconds": "nan"},
        {"seconds": "1e9"},
        {"seed": "0"},
        {"n": "11"},
        {"x": "1"},
    ],
)
def test_queries_have_bounds(ask, query):
    problem = refused(ask(pieces_in_short(PAGE), **query), 400, "bad-query")
    assert problem["errors"][0]["parameter"] == next(iter(query))


@pytest.mark.parametrize(
    ("document", "code"),
    [
        (PAPERS, "unknown-schema"),
        ({name: value for name, value in SOUND.items() if name != "sheets"}, "size-needed"),
        (pieces_in_short("1x1 *10000"), "too-many-pieces"),
        ({**pieces_in_short("1x1"), "colour": "red"}, "unknown-member"),
    ],
)
def test_documents_that_cannot_be_planned_are_invalid(ask, document, code):
    problem = refused(ask(document), 422, "invalid-document")
    assert code in [each["code"] for each in problem["errors"]]


def test_bodies_that_are_no_document_are_refused(ask):
    refused(ask(b"{"), 400, "unreadable-document")
    refused(ask(json.dumps([1]).encode()), 400, "unreadable-document")


def test_same_seed_gives_the_same_bytes(ask):
    assert ask(pieces_in_short(PAGE), seed=4).data == ask(pieces_in_short(PAGE), seed=4).data


def test_other_sheets_may_be_named_in_short(ask):
    made = ask(pieces_in_short("14x12 long"), stock="15x12*1").json["plans"][0]
    assert made["sheets"][0]["size"] == ["15", "12"] and made["sheet_count"] == 1
    assert ask(pieces_in_short("14x12 long"), stock="x").status_code == 400


def test_a_search_waits_for_its_turn_while_one_is_likely_to_come(ask):
    with ExitStack() as taken:
        for _ in range(MOST_AT_ONCE):
            taken.enter_context(turn(1))
        soon = Timer(0.3, taken.pop_all().close)
        soon.start()
        assert ask(pieces_in_short(PAGE)).status_code == 200
    soon.join()


def test_only_one_request_waits_for_a_turn(ask, monkeypatch):
    monkeypatch.setattr("spreadwright.rest.turns.PATIENCE_S", 60)
    with ExitStack() as taken, ThreadPoolExecutor(1) as other:
        for _ in range(MOST_AT_ONCE):
            taken.enter_context(turn(1))
        waiting = other.submit(ask, pieces_in_short(PAGE))
        while turns._queue._value:
            sleep(0.01)
        refused(ask(pieces_in_short(PAGE)), 503, "busy")
        taken.close()
        assert waiting.result().status_code == 200


def test_while_all_turns_are_taken_a_search_is_told_when_to_ask_again(ask, monkeypatch):
    monkeypatch.setattr("spreadwright.rest.turns.PATIENCE_S", 0)
    with ExitStack() as taken:
        for _ in range(MOST_AT_ONCE):
            taken.enter_context(turn(1))
        response = ask(pieces_in_short(PAGE), seconds="4")
    assert refused(response, 503, "busy") and response.headers["Retry-After"] == "4"
    assert ask(pieces_in_short(PAGE)).status_code == 200


def test_pieces_in_short_are_planned_like_their_document(ask, client):
    posted = client.post("/plan", data="7x7 left, 3 1/2x5 *2 right", content_type="text/plain; charset=utf-8")
    assert posted.data == ask(pieces_in_short("7x7 left, 3 1/2x5 *2 right")).data


@pytest.mark.parametrize("text", [b"", b"left", b"0x5 left", b"{}", b"\xff7x7"])
def test_text_that_names_no_pieces_is_refused(client, text):
    refused(client.post("/plan", data=text, content_type="text/plain"), 400, "unreadable-document")


def test_only_plans_are_asked_for_in_short(client):
    assert client.post("/check", data="7x7 left", content_type="text/plain").status_code == 415
