import json
import time
from datetime import UTC, datetime, timedelta
from threading import Event

import pytest

from builder import sound
from rest.test_openapi import fits
from rest.test_problems import refused
from spreadwright.document import canonical, pieces_in_short
from spreadwright.rest import create_app, jobs
from spreadwright.rest.cleaner import see_to_jobs
from spreadwright.rest.preferences import MOST_WAIT_S, preference
from spreadwright.rest.runner import MOST_TRIES
from spreadwright.rest.settings import Settings
from spreadwright.rest.working import Cancelled
from spreadwright.store import Collection
from spreadwright.store.opening import open_store

PAGE = canonical(pieces_in_short("7x7 left, 3 1/2x5 *2 right, 5x6 *2 tile"))
LONG = {"seconds": "20"}


@pytest.fixture
def ask(client):
    def ask(prefer="", data=PAGE, **query):
        headers = {"Prefer": prefer} if prefer else {}
        return client.post("/plan", data=data, query_string=query, headers=headers, content_type="application/json")

    return ask


@pytest.fixture
def held(monkeypatch):
    """A search that goes on until it is cancelled or let go."""
    let_go = Event()

    def search(*_, is_over, **__):
        while not (is_over() or let_go.wait(0.02)):
            pass
        raise Cancelled

    monkeypatch.setattr("spreadwright.rest.views.plans.plan", search)
    yield let_go
    let_go.set()


def until(is_enough, look, seconds=60):
    """What a look shows as soon as it is enough."""
    end = time.monotonic() + seconds
    while time.monotonic() < end:
        if is_enough(found := look()):
            return found
        time.sleep(0.02)
    raise TimeoutError


def over(client, path):
    """The job once nothing about it changes any more."""
    return until(lambda job: job["state"] not in ("queued", "running"), lambda: client.get(path).json)


def test_long_search_is_a_job_that_leads_to_its_result(client, ask):
    accepted = ask(**LONG)
    assert accepted.status_code == 202 and accepted.headers["Retry-After"] == "1"
    job = over(client, accepted.headers["Location"])
    assert (job["state"], job["progress"], job["verb"]) == ("done", 1, "plan_pieces")
    result = client.get(job["links"]["result"])
    assert result.data == ask(seconds="5").data and result.content_type == "application/json"


def test_jobs_are_as_described(client, ask):
    described, accepted = client.get("/openapi.json").json, ask("respond-async")
    shape = {"$ref": "#/components/schemas/JobState"}
    fits(described, accepted.json, shape)
    fits(described, over(client, accepted.headers["Location"]), shape)


def test_who_prefers_to_wait_gets_the_result(ask):
    answer = ask("wait=25", **LONG)
    assert answer.status_code == 200 and answer.headers["Preference-Applied"] == "wait=25"
    assert answer.json["plans"][0]["optimal"]


def test_waiting_ends_with_the_job_when_it_takes_longer(ask, held, client):
    answer = ask("wait=1", **LONG)
    assert answer.status_code == 202 and "Preference-Applied" not in answer.headers
    assert client.delete(answer.headers["Location"]).json["state"] == "cancelled"


def test_short_search_becomes_a_job_for_who_wants_one(ask, client):
    answer = ask("respond-async", seconds="2")
    assert answer.status_code == 202 and answer.headers["Preference-Applied"] == "respond-async"
    assert over(client, answer.headers["Location"])["state"] == "done"


def test_job_tells_how_far_it_is_and_can_be_cancelled(ask, held, client):
    path = ask(**LONG).headers["Location"]
    job = until(lambda job: job.json["progress"], lambda: client.get(path), seconds=20)
    assert job.json["state"] == "running" and 0 < job.json["progress"] < 1 and job.json["words"] == "searching"
    assert job.headers["Retry-After"] == "1"
    refused(client.get(f"{path}/result"), 409, "unfinished")
    assert client.delete(path).json["state"] == over(client, path)["state"] == "cancelled"
    refused(client.get(f"{path}/result"), 409, "unfinished")


def test_failed_job_gives_the_problem_that_a_waiting_client_would_have_got(ask, client):
    sheet = canonical(pieces_in_short("70x30, 26x60, 60x36, 36x66, 34x30", ["96x96*1"]))
    job = over(client, ask(data=sheet, **LONG).headers["Location"])
    assert job["state"] == "failed"
    refused(client.get(job["links"]["result"]), 422, "no-plan")
    refused(ask("wait", data=sheet, **LONG), 422, "no-plan")


def test_fault_in_a_job_is_told_without_its_inside(ask, client, monkeypatch):
    monkeypatch.setattr("spreadwright.rest.views.plans.plan", lambda *_, **__: 1 / 0)
    job = over(client, ask(**LONG).headers["Location"])
    problem = refused(client.get(job["links"]["result"]), 500, "internal")
    assert "division" not in json.dumps(problem)


def test_what_is_wrong_with_a_request_is_said_before_it_is_a_job(ask):
    refused(ask(data=b"{", **LONG), 400, "unreadable-document")
    refused(ask(bench="bench-inhc", **LONG), 404, "unknown-name")


def test_one_client_has_only_so_many_unfinished_jobs(ask, held, client):
    paths = [ask(**LONG).headers["Location"] for _ in range(jobs.MOST_OF_ONE)]
    refused(ask(**LONG), 429, "too-many-jobs")
    assert all(client.delete(path).json["state"] == "cancelled" for path in paths)
    path = ask(**LONG).headers["Location"]
    assert client.delete(path).status_code == 200


def test_all_clients_together_have_only_so_many_and_those_are_worked_off(ask, app, monkeypatch):
    monkeypatch.setattr(jobs, "MOST_IN_ALL", 0)
    woken = []
    monkeypatch.setattr(app.extensions["jobs"], "wake", lambda: woken.append(True))
    assert refused(ask(**LONG), 503, "busy")["detail"].startswith("0 jobs wait or run already.")
    assert woken


def test_unknown_job_is_not_found(client):
    for answer in (client.get("/jobs/none"), client.delete("/jobs/none"), client.get("/jobs/none/result")):
        refused(answer, 404, "unknown-name")


def test_long_booklet_is_a_job_and_then_at_hand(client, monkeypatch):
    monkeypatch.setattr("spreadwright.rest.views.booklet._LONG", 5)
    path = client.get("/recipes/window-seat/booklet.pdf?page=letter").headers["Location"]
    result = client.get(over(client, path)["links"]["result"])
    assert result.content_type == "application/pdf" and result.data.startswith(b"%PDF")
    again = client.get("/recipes/window-seat/booklet.pdf?page=letter")
    assert again.status_code == 200 and again.data == result.data


@pytest.mark.parametrize(
    ("header", "is_async", "wait_s"),
    [
        ("", False, None),
        ("wait", False, MOST_WAIT_S),
        ("wait=7", False, 7),
        ('Wait="7"', False, 7),
        ("wait = 7; foo=bar, respond-async", True, 7),
        ("wait=3, wait=9", False, 3),
        ("wait=1000000000000", False, MOST_WAIT_S),
        ("wait=-1", False, None),
        ("wait=soon, handling=lenient, ;;,=,", False, None),
    ],
)
def test_preferences_are_read_as_rfc_7240_writes_them(header, is_async, wait_s):
    found = preference([header])
    assert (found.is_async, found.wait_s) == (is_async, wait_s)


def test_job_is_done_by_whichever_process_is_free(folder, tmp_path, monkeypatch):
    address = f"sqlite:///{tmp_path}/store.db"
    first, second = (create_app(Collection(folder), store=open_store(address)) for _ in range(2))
    monkeypatch.setattr(first.extensions["jobs"], "wake", lambda: None)
    path = first.test_client().post("/plan?seconds=20", data=PAGE, content_type="application/json").headers["Location"]
    job = over(second.test_client(), path)
    assert job["state"] == "done"
    assert first.test_client().get(job["links"]["result"]).json["plans"]


def test_job_that_was_left_is_done_though_nobody_asks_for_it(folder, tmp_path, monkeypatch):
    address = f"sqlite:///{tmp_path}/store.db"
    first, second = (create_app(Collection(folder), store=open_store(address)) for _ in range(2))
    monkeypatch.setattr(first.extensions["jobs"], "wake", lambda: None)
    made = first.test_client().post("/plan?seconds=20", data=PAGE, content_type="application/json").json["id"]
    store = second.extensions["spreadwright"].store
    see_to_jobs(store, second.extensions["jobs"].wake)
    assert until(lambda job: job.state not in ("queued", "running"), lambda: store.jobs.get(made)).state == "done"


def test_job_that_ends_whoever_takes_it_is_given_up(folder):
    app = create_app(Collection(folder))
    app_jobs = app.extensions["spreadwright"].store.jobs
    made = app_jobs.add("plan.plan_pieces", "somebody", b"{}")
    for _ in range(MOST_TRIES):
        assert app_jobs.claim(lease_s=-1).id == made.id
    client = app.test_client()
    job = over(client, f"/jobs/{made.id}")
    assert job["state"] == "failed"
    refused(client.get(f"{job['links']['self']}/result"), 500, "internal")


def test_results_are_forgotten_after_an_hour(folder, tmp_path):
    store = open_store(f"sqlite:///{tmp_path}/store.db", now=lambda: datetime.now(UTC) - timedelta(hours=2))
    old = store.jobs.add("plan.plan_pieces", "somebody", b"{}")
    store.jobs.cancel(old.id)
    client = create_app(Collection(folder), store=open_store(f"sqlite:///{tmp_path}/store.db")).test_client()
    missing = until(lambda job: job.status_code != 200, lambda: client.get(f"/jobs/{old.id}"), seconds=10)
    refused(missing, 404, "unknown-name")


@pytest.fixture
def own(folder):
    """A service, and the headers of somebody with a draft `mudflats` there."""
    app = create_app(Collection(folder), settings=Settings(work_per_minute=2))
    issued = app.extensions["spreadwright"].store.tokens.create("Ann", ("write",))
    headers = {"Authorization": f"Bearer {issued.secret}"}
    made = app.test_client().post("/recipes?id=mudflats", data=sound(), headers=headers)
    assert made.status_code == 201
    return app, headers, issued.token.id


def test_job_on_a_draft_is_done_for_its_owner(own, monkeypatch):
    monkeypatch.setattr("spreadwright.rest.views.booklet._LONG", 5)
    app, headers, _ = own
    client = app.test_client()
    refused(client.get("/recipes/mudflats/booklet.pdf"), 404, "unknown-name")
    accepted = client.get("/recipes/mudflats/booklet.pdf", headers=headers)
    job = over(client, accepted.headers["Location"])
    assert job["state"] == "done" and client.get(job["links"]["result"]).data.startswith(b"%PDF")
    kept = app.extensions["spreadwright"].store.jobs.get(job["id"]).request
    assert headers["Authorization"].split()[1][4:].encode() not in kept


def test_job_of_a_token_that_is_revoked_meanwhile_fails(own, monkeypatch):
    monkeypatch.setattr("spreadwright.rest.views.booklet._LONG", 5)
    app, headers, token = own
    client, runner = app.test_client(), app.extensions["jobs"]
    with monkeypatch.context() as asleep:
        asleep.setattr(runner, "wake", lambda: None)
        path = client.get("/recipes/mudflats/booklet.pdf", headers=headers).headers["Location"]
    app.extensions["spreadwright"].store.tokens.revoke(token)
    refused(client.get(over(client, path)["links"]["result"]), 401, "invalid-token")


def test_long_work_is_counted_once_and_for_who_asked(own, monkeypatch):
    monkeypatch.setattr("spreadwright.rest.views.booklet._LONG", 5)
    monkeypatch.setattr("spreadwright.rest.rates.WINDOW_S", 10**9)  # no minute ends between the three requests
    app, headers, _ = own
    client = app.test_client()
    for left, page in ((1, "a4"), (0, "letter")):
        accepted = client.get(f"/recipes/mudflats/booklet.pdf?page={page}", headers=headers)
        assert accepted.status_code == 202 and f"r={left};" in accepted.headers["RateLimit"]
        assert over(client, accepted.headers["Location"])["state"] == "done"
    third = client.post("/plan?seconds=20", data=PAGE, headers=headers, content_type="application/json")
    refused(third, 429, "too-many-requests")
