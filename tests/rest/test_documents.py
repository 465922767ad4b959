import json

import pytest

from builder import SOUND
from spreadwright.rest import create_app
from spreadwright.rest.settings import Settings
from spreadwright.store import Collection


class Author:
    """Somebody with a token."""

    def __init__(self, app, owner, *scopes):
        self._client = app.test_client()
        secret = app.extensions["spreadwright"].store.tokens.create(owner, scopes or ("write",)).secret
        self._headers = {"Authorization": f"Bearer {secret}"}

    def ask(self, method, path, body=None, **headers):
        named = {name.replace("_", "-"): value for name, value in headers.items()}
        kind = "application/merge-patch+json" if method == "PATCH" else "application/json"
        data = None if body is None else json.dumps(body)
        return self._client.open(
            path, method=method, data=data, content_type=kind if data else None, headers={**self._headers, **named}
        )


@pytest.fixture(scope="module")
def own_app(tmp_path_factory, folder):
    return create_app(Collection(folder))


@pytest.fixture
def ann(own_app):
    return Author(own_app, "Ann")


@pytest.fixture
def ben(own_app):
    return Author(own_app, "Ben")


@pytest.fixture
def eve(own_app):
    """A reviewer."""
    return Author(own_app, "Eve", "write", "review")


@pytest.fixture
def anybody(own_app):
    return own_app.test_client()


@pytest.fixture
def draft(ann):
    """The path of a draft of Ann's."""
    return ann.ask("POST", "/recipes", {**SOUND, "title": "Mudflats"}).headers["Location"]


def test_new_document_is_a_draft_at_its_location(ann):
    made = ann.ask("POST", "/recipes?id=first-one", SOUND)
    assert (made.status_code, made.headers["Location"]) == (201, "/recipes/first-one")
    assert (made.json["state"], made.json["revision"], made.json["owner"]) == ("draft", 1, "Ann")
    read = ann.ask("GET", "/recipes/first-one")
    assert read.json == SOUND and read.headers["ETag"] == made.headers["ETag"]
    assert read.headers["Cache-Control"] == "private, no-cache"


def test_draft_is_unknown_to_others_in_every_form(anybody, ben, draft):
    for path in ("", ".json", "/status", "/revisions", "/revisions/1", "/revisions/1/changes", "/cuts", "/preview.svg"):
        assert anybody.get(draft + path).status_code == 404
        assert ben.ask("GET", draft + path).status_code == 404


def test_same_request_with_the_same_key_is_done_once(ann):
    first = ann.ask("POST", "/recipes", SOUND, Idempotency_Key="k-1")
    again = ann.ask("POST", "/recipes", SOUND, Idempotency_Key="k-1")
    assert again.status_code == 201 and again.headers["Location"] == first.headers["Location"]
    other = ann.ask("POST", "/recipes", {**SOUND, "title": "Other"}, Idempotency_Key="k-1")
    assert (other.status_code, other.json["type"].split("/")[-1]) == (422, "key-reused")


@pytest.mark.parametrize(("method", "body"), [("PUT", SOUND), ("PATCH", {"tags": []}), ("DELETE", None)])
def test_write_needs_a_condition_that_holds(ann, draft, method, body):
    assert ann.ask(method, draft, body).status_code == 428
    assert ann.ask(method, draft, body, If_Match='"1-0000000000000000"').status_code == 412
    etag = ann.ask("GET", draft).headers["ETag"]
    assert ann.ask(method, draft, body, If_Match=etag).status_code in (200, 204)
    assert ann.ask(method, draft, body, If_Match=etag).status_code in (410, 412)


def test_merge_patch_changes_adds_and_removes(ann, draft):
    changed = ann.ask("PATCH", draft, {"tags": ["mud"], "summary": None}, If_Match="*")
    assert changed.status_code == 200 and changed.json["revision"] == 2
    found = ann.ask("GET", draft).json
    assert found["tags"] == ["mud"] and "summary" not in found and found["title"] == "Mudflats"
    changes = ann.ask("GET", f"{draft}/revisions/2/changes").json["changes"]
    assert {each["path"] for each in changes} == {"/tags/0", "/summary"}


def test_patch_that_breaks_the_document_changes_nothing(ann, draft):
    refused = ann.ask("PATCH", draft, {"sheets": "none"}, If_Match="*")
    assert refused.status_code == 422 and refused.json["errors"][0]["pointer"] == "/sheets"
    assert ann.ask("GET", f"{draft}/status").json["revision"] == 1


def test_put_says_how_a_new_document_is_made(ann, anybody):
    refused = ann.ask("PUT", "/recipes/not-yet", SOUND)
    assert refused.status_code == 428 and "`If-None-Match: *`" in refused.json["detail"]
    assert ann.ask("PUT", "/recipes/not-yet", SOUND, If_Match="*").status_code == 404
    assert ann.ask("PATCH", "/recipes/not-yet", {"tags": []}).status_code == 404
    described = anybody.get("/openapi.json").json["paths"]["/recipes/{recipe_id}"]
    conditions = {
        each["name"]: each.get("required", False) for each in described["put"]["parameters"] if "name" in each
    }
    assert conditions["If-Match"] is conditions["If-None-Match"] is False
    names = [each["name"] for each in described["delete"]["parameters"] if each.get("required")]
    assert "If-Match" in names


def test_put_makes_a_document_only_where_none_is(ann):
    made = ann.ask("PUT", "/recipes/put-here", SOUND, If_None_Match="*")
    assert (made.status_code, made.headers["Location"]) == (201, "/recipes/put-here")
    assert ann.ask("PUT", "/recipes/put-here", SOUND, If_None_Match="*").status_code == 412


def test_others_cannot_change_what_they_can_read(anybody, ann, ben, draft):
    ann.ask("POST", f"{draft}/publish", If_Match="*")
    assert anybody.get(draft).status_code == 200
    for method, path, body in (("PUT", draft, SOUND), ("DELETE", draft, None), ("POST", f"{draft}/withdraw", None)):
        assert ben.ask(method, path, body, If_Match="*").status_code == 403
        assert anybody.open(path, method=method).status_code == 401


def test_deleted_document_is_gone_and_can_be_brought_back(ann, anybody, draft):
    ann.ask("POST", f"{draft}/publish", If_Match="*")
    etag = ann.ask("GET", draft).headers["ETag"]
    assert ann.ask("DELETE", draft, If_Match=etag).status_code == 204
    gone = anybody.get(draft)
    assert gone.status_code == 410 and gone.headers["ETag"] != etag
    assert ann.ask("POST", f"{draft}/revisions/1/restore", If_Match=etag).status_code == 412
    back = ann.ask("POST", f"{draft}/revisions/1/restore", If_Match=gone.headers["ETag"])
    assert (back.status_code, back.json["state"]) == (200, "draft")
    actions = [each["action"] for each in ann.ask("GET", f"{draft}/revisions").json["revisions"]]
    assert actions == ["restored", "deleted", "published", "created"]


def test_revisions_of_the_draft_stay_with_those_who_may_read_drafts(ann, ben, eve, anybody, draft):
    ann.ask("PATCH", draft, {"title": "Secret"}, If_Match="*")
    ann.ask("PATCH", draft, {"title": "Mudflats"}, If_Match="*")
    ann.ask("POST", f"{draft}/publish", If_Match="*")
    ann.ask("PATCH", draft, {"title": "High water"}, If_Match="*")
    for who in (ann, eve):
        listed = who.ask("GET", f"{draft}/revisions")
        assert [each["number"] for each in listed.json["revisions"]] == [5, 4, 3, 2, 1]
        assert listed.headers["Cache-Control"] == "private, no-cache"
        assert who.ask("GET", f"{draft}/revisions/2").json["title"] == "Secret"
    stranger = [each["number"] for each in anybody.get(f"{draft}/revisions").json["revisions"]]
    assert stranger == [5, 4] == [each["number"] for each in ben.ask("GET", f"{draft}/revisions").json["revisions"]]
    for path in ("/revisions/2", "/revisions/3/changes", "/revisions/5/changes?since=2"):
        assert anybody.get(draft + path).status_code == ben.ask("GET", draft + path).status_code == 404
    assert [each["path"] for each in anybody.get(f"{draft}/revisions/5/changes").json["changes"]] == ["/title"]
    first = anybody.get(f"{draft}/revisions/4/changes").json
    assert (first["first"], first["changes"]) == (4, [])


def answers_to(who, *paths):
    return [who.get(path).status_code if hasattr(who, "get") else who.ask("GET", path).status_code for path in paths]


def test_draft_that_was_deleted_is_as_unknown_to_others_as_it_was_before(ann, ben, eve, anybody, draft):
    ann.ask("DELETE", draft, If_Match="*")
    there = [draft, f"{draft}/status", f"{draft}/revisions", f"{draft}/revisions/1", f"{draft}/revisions/2"]
    for stranger in (anybody, ben):
        assert answers_to(stranger, *there) == [404] * 5
    for who in (ann, eve):
        assert answers_to(who, *there) == [410, 410, 200, 200, 200]
    assert ben.ask("POST", f"{draft}/revisions/1/restore", If_Match="*").status_code == 404
    assert anybody.get(draft).json["type"].endswith("/unknown-name")


def test_deleting_brings_nothing_to_light_that_was_withdrawn(ann, anybody, draft):
    ann.ask("POST", f"{draft}/publish", If_Match="*")
    there = [draft, f"{draft}/revisions", f"{draft}/revisions/2", f"{draft}/revisions/2/changes"]
    ann.ask("POST", f"{draft}/withdraw", If_Match="*")
    assert answers_to(anybody, *there) == [404] * 4
    ann.ask("DELETE", draft, If_Match="*")
    assert answers_to(anybody, *there) == [404] * 4
    assert answers_to(ann, *there) == [410, 200, 200, 200]


def test_what_was_published_when_it_was_deleted_is_gone_and_its_revisions_are_read(ann, anybody, draft):
    ann.ask("POST", f"{draft}/publish", If_Match="*")
    content = anybody.get(f"{draft}/status").json["links"]["content"]
    ann.ask("DELETE", draft, If_Match="*")
    assert answers_to(anybody, draft, f"{draft}/revisions/2", content) == [410, 200, 200]


def test_content_is_read_by_its_hash_by_those_who_may_read_what_it_stands_in(ann, ben, eve, anybody, draft):
    ann.ask("PATCH", draft, {"title": "Only once, on a wall"}, If_Match="*")
    content = ann.ask("GET", f"{draft}/status").json["links"]["content"]
    assert answers_to(anybody, content) == answers_to(ben, content) == [404]
    assert answers_to(eve, content) == [200]
    own = ann.ask("GET", content)
    assert own.status_code == 200 and own.headers["Cache-Control"] == "private, no-cache"
    assert "authorization" in {each.lower() for each in own.vary}
    ann.ask("POST", f"{draft}/publish", If_Match="*")
    assert anybody.get(content).data == own.data
    ann.ask("PATCH", draft, {"title": "Mudflats"}, If_Match="*")
    assert answers_to(anybody, content) == [200]
    ann.ask("POST", f"{draft}/withdraw", If_Match="*")
    assert (answers_to(anybody, content), answers_to(ann, content)) == ([404], [200])


def test_publishing_runs_the_check(ann):
    broken = {**SOUND, "placements": SOUND["placements"][1:]}
    path = ann.ask("POST", "/recipes", broken).headers["Location"]
    refused = ann.ask("POST", f"{path}/publish", If_Match="*")
    assert refused.status_code == 422 and refused.json["errors"]
    assert ann.ask("GET", f"{path}/status").json["state"] == "draft"


def test_note_with_control_characters_is_refused(eve, draft):
    for note in ("%00", "a%02b", "a%0Ab"):
        refused = eve.ask("POST", f"{draft}/refuse?note={note}", If_Match="*")
        assert refused.status_code == 400 and refused.json["errors"][0]["parameter"] == "note"


def test_reviewer_refuses_with_a_note_that_the_author_reads(ann, eve, draft):
    assert ann.ask("POST", f"{draft}/refuse?note=No", If_Match="*").status_code == 403
    assert eve.ask("POST", f"{draft}/refuse", If_Match="*").status_code == 400
    assert eve.ask("POST", f"{draft}/refuse?note=Too+narrow", If_Match="*").status_code == 200
    assert ann.ask("GET", f"{draft}/status").json["review_note"] == "Too narrow"


def test_content_at_the_address_of_its_hash_never_changes(ann, anybody, draft):
    ann.ask("POST", f"{draft}/publish", If_Match="*")
    status = anybody.get(f"{draft}/status").json
    content = anybody.get(status["links"]["content"])
    assert content.data == anybody.get(draft).data
    assert "immutable" in content.headers["Cache-Control"]


def test_change_of_state_changes_the_etag_and_the_old_one_gets_a_body(ann, draft):
    before = ann.ask("GET", draft).headers["ETag"]
    assert ann.ask("GET", draft, If_None_Match=before).status_code == 304
    ann.ask("POST", f"{draft}/publish", If_Match=before)
    assert ann.ask("GET", draft, If_None_Match=before).status_code == 200


def test_own_drafts_are_listed_for_their_owner_alone(ann, ben, eve, anybody, draft):
    name = draft.split("/")[-1]
    listed = [
        [each["id"] for each in who.ask("GET", "/recipes?state=draft&limit=100").json["recipes"]]
        for who in (ann, ben, eve)
    ]
    assert name in listed[0] and name not in listed[1] and name in listed[2]
    assert anybody.get("/recipes?state=draft").status_code == 401


@pytest.mark.parametrize(
    ("query", "count"),
    [
        ("sheets=4", 2),
        ("sheets=5..", 0),
        ("photos=..3", 2),
        ("role=print&page_size=12x12", 2),
        ("page_size=297 mm x 210 mm", 0),
        ("q=quiet", 2),
        ("q=seat+round", 2),
        ("tag=home", 2),
        ("tag=home,away", 0),
        ("licence=CC-BY-4.0&lang=en", 2),
    ],
)
def test_lists_are_filtered(client, query, count):
    found = client.get(f"/recipes?{query}").json["recipes"]
    assert len([each for each in found if each["id"].startswith("window")]) == count


def test_fields_are_left_out_unless_asked_for(client):
    assert set(client.get("/recipes?fields=title,photos&limit=1").json["recipes"][0]) == {"id", "title", "photos"}


@pytest.mark.parametrize("query", ["page_size=wide", "sheets=a", "sort=colour", "state=lost", "after=nowhere"])
def test_list_that_is_not_understood_is_refused(client, query):
    assert client.get(f"/recipes?{query}").status_code == 400


@pytest.mark.parametrize("header", ["Bearer nonsense", "Basic YTpi", "Bearer", "Bearer " + "a" * 5000])
def test_token_that_opens_nothing_is_challenged(client, header):
    refused = client.post("/recipes", json=SOUND, headers={"Authorization": header})
    assert refused.status_code == 401 and "invalid_token" in refused.headers["WWW-Authenticate"]


def test_writes_beyond_the_allowance_are_told_when_to_come_back(folder):
    author = Author(create_app(Collection(folder), settings=Settings(writes_per_minute=2)), "Ann")
    made = [author.ask("POST", "/recipes", SOUND) for _ in range(3)]
    assert [each.status_code for each in made] == [201, 201, 429]
    assert made[1].headers["RateLimit"].startswith('"writes";r=0;t=') and int(made[2].headers["Retry-After"]) >= 1


def test_problem_names_the_request_as_the_header_does(client):
    refused = client.get("/recipes/nobody", headers={"X-Request-Id": "mine-12345"})
    assert refused.json["request_id"] == refused.headers["X-Request-Id"] == "mine-12345"
    assert client.get("/recipes/nobody", headers={"X-Request-Id": "a b"}).json["request_id"] != "a b"


def test_request_log_holds_no_secret(folder, capsys):
    author = Author(create_app(Collection(folder), settings=Settings(log="json")), "Ann")
    author.ask("GET", "/recipes?q=hidden")
    text = capsys.readouterr().err
    line = json.loads(text.splitlines()[-1])
    assert (line["method"], line["path"], line["status"]) == ("GET", "/recipes", 200)
    assert "hidden" not in text and "spw_" not in text


def test_metrics_count_requests_by_endpoint_and_status(own_app, anybody):
    anybody.get("/recipes/nobody")
    text = anybody.get("/metrics").text
    assert 'spreadwright_requests_total{endpoint="recipes.recipe",status="4xx"}' in text
    assert "spreadwright_requests_in_progress 1\n" in text


def test_health_tells_living_from_ready(client):
    assert client.get("/health/live").json == client.get("/health/ready").json == {"status": "ok"}


def test_lineage_is_shown_both_ways_at_once(ann, anybody, draft):
    ann.ask("POST", f"{draft}/publish", If_Match="*")
    name = draft.split("/")[-1]
    assert anybody.get(f"{draft}/status").json["derived"] == []
    child = ann.ask("POST", "/recipes", {**SOUND, "title": "Child", "derived_from": [name]}).headers["Location"]
    ann.ask("POST", f"{child}/publish", If_Match="*")
    assert [each["id"] for each in anybody.get(f"{child}/status").json["derived_from"]] == [name]
    assert [each["links"]["self"] for each in anybody.get(f"{draft}/status").json["derived"]] == [child]


def test_draft_is_answered_as_an_id_that_nothing_has(anybody, ann):
    ann.ask("POST", "/recipes?id=hidden-b", SOUND)
    told = [{**anybody.get(f"/recipes/{name}").json, "request_id": ""} for name in ("hidden-b", "hidden-c")]
    assert json.loads(json.dumps(told[0]).replace("hidden-b", "hidden-c")) == told[1]
