import json
from datetime import timedelta

import httpx
import numpy as np
import pytest

from builder import PAPERS, SOUND
from spreadwright.client import Client, Patience, Problem, Stale, Unreachable
from spreadwright.client.jobs import Cancelled
from spreadwright.client.retries import retry_after_s
from spreadwright.document import pieces_in_short
from spreadwright.images import encode_png
from spreadwright.rest import create_app
from spreadwright.store import Collection
from spreadwright.store.opening import open_store


@pytest.fixture(scope="module")
def store():
    return open_store()


@pytest.fixture(scope="module")
def app(store):
    return create_app(Collection(), store=store)


@pytest.fixture
def connect(app, store):
    def connect(*scopes, owner="ana", **options):
        token = store.tokens.create(owner, scopes).secret if scopes else None
        return Client("http://albums.example/", token, transport=httpx.WSGITransport(app=app), **options)

    return connect


@pytest.fixture
def writer(connect):
    with connect("write") as client:
        yield client


class Answers(httpx.BaseTransport):
    """Gives one answer after the other, and counts what was asked."""

    def __init__(self, *answers):
        self.answers, self.asked, self.waited = list(answers), [], []

    def handle_request(self, request):
        self.asked.append(request)
        answer = self.answers.pop(0)
        if isinstance(answer, Exception):
            raise answer
        return answer

    def client(self, **options):
        return Client("http://a/shelf", transport=self, patience=Patience(sleep=self.waited.append, **options))


def ok(**members):
    return httpx.Response(200, json=members, headers={"ETag": '"1-a"'})


def busy(after="3"):
    return httpx.Response(503, headers={"Retry-After": after} if after else {})


def test_list_is_followed_page_by_page(connect):
    client = connect()
    all_ids = [each["id"] for each in client.documents("recipes", limit=100)]
    assert [each["id"] for each in client.documents("recipes", limit=2)] == all_ids and len(all_ids) > 2
    assert next(client.documents("paper-sets", limit=1))["id"]


def test_unchanged_document_does_not_travel_again(connect):
    client = connect()
    first = client.get("recipes", "rain-until-four")
    assert first.content["title"] and client.get("recipes", "rain-until-four") is first


def test_draft_is_made_changed_published_and_deleted(writer, connect):
    made = writer.create("recipes", SOUND, name="round-trip")
    changed = writer.put(made, {**SOUND, "title": "Another title"}, note="a better title")
    patched = writer.patch(changed, {"tags": ["home"]})
    assert (patched.content["title"], patched.content["tags"]) == ("Another title", ["home"])
    published = writer.publish(patched)
    assert connect().get("recipes", "round-trip").content == patched.content
    writer.delete(writer.withdraw(published))
    with pytest.raises(Problem) as refused:
        writer.get("recipes", "round-trip")
    assert refused.value.status == 410


def test_nobodys_change_is_overwritten(writer):
    made = writer.create("recipes", SOUND, name="contested")
    writer.put(made, {**SOUND, "title": "First"})
    with pytest.raises(Stale):
        writer.put(made, {**SOUND, "title": "Second"})
    edited = writer.change("recipes", "contested", lambda content: {**content, "tags": [content["title"].lower()]})
    assert edited.content["tags"] == ["first"]


def test_edit_is_made_again_when_somebody_was_quicker(writer, connect):
    other = connect("write")
    writer.create("recipes", SOUND, name="raced")
    seen = []

    def edit(content):
        if not seen:
            other.change("recipes", "raced", lambda theirs: {**theirs, "title": "Theirs"})
        seen.append(content["title"])
        return {**content, "tags": ["ours"]}

    assert writer.change("recipes", "raced", edit).content["title"] == "Theirs"
    assert seen == [SOUND["title"], "Theirs"]


def test_request_sent_twice_makes_one_document(writer):
    first, second = (writer.create("recipes", SOUND, key="one-key") for _ in range(2))
    assert first.id == second.id and writer.create("recipes", SOUND).id != first.id


def test_problem_tells_code_and_errors(connect):
    with pytest.raises(Problem, match="no-token") as refused:
        connect().create("recipes", SOUND)
    assert (refused.value.status, refused.value.code) == (401, "no-token")
    with pytest.raises(Problem, match="rain-until-four"):
        connect().get("recipes", "rain-until-fuor")


def test_document_is_checked(connect):
    assert connect().check(SOUND)["fine"] is True


def test_long_work_is_waited_for(connect):
    client, pieces = connect(), pieces_in_short("7x7 left, 3 1/2x5 *2 right")
    assert client.plan(pieces, seconds=20)["plans"][0]["sheet_count"] == 1
    told = []
    job = client.start("POST", "/plan", json=pieces)
    assert job.wait(told=lambda each: told.append(each.state)).json()["plans"] and told[-1] == "done"
    assert client.booklet("rain-until-four").startswith(b"%PDF")


def test_job_is_cancelled_and_gives_nothing(connect):
    job = connect().start("POST", "/plan", json=pieces_in_short("7x7 left"))
    if job.cancel().state == "cancelled":
        with pytest.raises(Cancelled):
            job.wait()
    else:
        assert job.state in ("done", "failed")


def test_refusal_for_lack_of_time_is_repeated_after_the_time_it_names():
    answers = Answers(busy("3"), busy(None), ok(id="a"))
    assert answers.client().get("recipes", "a").content == {"id": "a"}
    assert answers.waited[0] == 3 and 0.2 <= answers.waited[1] <= 0.4
    assert str(answers.asked[0].url) == "http://a/shelf/recipes/a"


def test_wait_that_is_too_long_is_not_waited():
    answers = Answers(busy("3600"))
    with pytest.raises(Problem):
        answers.client().get("recipes", "a")
    assert answers.waited == []


def test_lost_answer_is_asked_for_again_where_that_does_no_harm():
    lost = httpx.ReadError("lost")
    answers = Answers(lost, ok(id="a"), lost, ok(id="b", etag='"1-b"'), lost)
    client = answers.client()
    stored = client.get("recipes", "a")
    assert client.create("recipes", {}).id == "b"
    keys = {request.headers["Idempotency-Key"] for request in answers.asked[2:]}
    assert len(keys) == 1
    with pytest.raises(Unreachable):
        client.put(stored, {})
    assert answers.answers == [] and answers.asked[-1].headers["If-Match"] == '"1-a"'


def test_service_that_never_answers_is_given_up():
    answers = Answers(*(httpx.ConnectError("down") for _ in range(3)))
    with pytest.raises(Unreachable, match="down"):
        answers.client(times=3).get("recipes", "a")


def test_retry_after_may_be_a_date_or_nonsense():
    date = httpx.Response(503, headers={"Retry-After": "Wed, 21 Oct 2015 07:28:00 GMT"})
    assert retry_after_s(date) == timedelta(0).total_seconds()
    assert retry_after_s(httpx.Response(503, headers={"Retry-After": "soon"})) is None


def test_answer_that_is_no_problem_document_is_an_error_all_the_same():
    answers = Answers(httpx.Response(418, text="<html>"))
    with pytest.raises(Problem) as refused:
        answers.client().request("GET", "/x")
    assert (refused.value.status, refused.value.code, json.dumps(refused.value.members)) == (418, "", "{}")


def test_pictures_of_papers_are_sent_read_and_deleted(writer):
    face = {"pattern": "picture", "picture": "rope and sail.png", "repeat": "15 mm"}
    papers = {**PAPERS, "papers": [{"id": "rope", "title": "Rope", "size": ["12", "12"], "front": face}]}
    stored = writer.create("paper-sets", papers)
    assert writer.pictures(stored.id)["missing"] == ["rope and sail.png"]
    sent = writer.put_picture(stored, "rope and sail.png", encode_png(np.full((300, 300, 3), 90, dtype=np.uint8)))
    assert writer.picture(stored.id, "rope and sail.png").startswith(b"\x89PNG")
    assert writer.get("paper-sets", stored.id) is sent and sent.content == papers
    with pytest.raises(Stale):
        writer.delete_picture(stored, "rope and sail.png")
    writer.publish(sent)
    with pytest.raises(Problem) as refused:
        writer.delete_picture(writer.get("paper-sets", stored.id), "rope and sail.png")
    assert refused.value.code == "invalid-document"
    bare = writer.put(writer.get("paper-sets", stored.id), PAPERS)
    assert writer.pictures(writer.delete_picture(bare, "rope and sail.png").id)["pictures"] == []
