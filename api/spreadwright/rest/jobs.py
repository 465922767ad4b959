"""Work that takes longer than a client should wait: kept as the request that asks for it, done by whoever is free.

A job is a request that is answered again without a client: any process that serves the same database may take it, and
takes it again when the one that had it was killed. So a view needs to say nothing but how long it may take.
"""

import json
import time
from base64 import b64decode, b64encode
from dataclasses import asdict, dataclass
from typing import Any

from flask import Flask, Response, current_app, request

from spreadwright.document import canonical
from spreadwright.rest.identity import act_for, caller
from spreadwright.rest.job_answers import job_answer, job_path, over
from spreadwright.rest.job_errors import TooManyJobs, Unfinished
from spreadwright.rest.preferences import Preference, preference
from spreadwright.rest.problems import PROBLEM_JSON
from spreadwright.rest.rates import client_name
from spreadwright.rest.replies import UNKEPT
from spreadwright.rest.runner import Runner, performed
from spreadwright.rest.turns import AllBusy
from spreadwright.rest.working import is_job
from spreadwright.store.jobs import Job, Jobs, JobState

SOON_S = 5.0
"""What takes no longer is answered at once."""
MOST_OF_ONE, MOST_IN_ALL = 4, 64
"""Unfinished jobs of one client, and of all."""
MOST_WAITING_BYTES = 200_000_000
"""Of all that unfinished jobs were sent: photographs, four full uploads of them as they are kept."""
POLL_S = 1
_LOOK_S, _FULL_S, _SMALL = 0.05, 30, 1_000_000
_KEPT = ("Accept", "Accept-Language")


@dataclass(frozen=True, slots=True)
class Asked:
    """A request as a job keeps it.

    Attributes:
        token: The number of the token that came with it, by which it is answered for the same client; never its secret.
    """

    method: str
    path: str
    query: str
    root: str
    headers: dict[str, str]
    body: str
    token: int | None = None

    @classmethod
    def now(cls, body: bytes, media_type: str) -> "Asked":
        """The request at hand, with what was read of its body."""
        headers = {name: request.headers[name] for name in _KEPT if name in request.headers}
        if body:
            headers["Content-Type"] = media_type
        query = request.query_string.decode("latin-1")
        token = caller()
        return cls(
            method=request.method,
            path=request.path,
            query=query,
            root=request.url_root,
            headers=headers,
            body=b64encode(body).decode(),
            token=token.id if token else None,
        )

    def arguments(self) -> dict[str, Any]:
        """What makes the same request again."""
        return {
            "path": self.path,
            "method": self.method,
            "query_string": self.query,
            "base_url": self.root,
            "headers": self.headers,
            "data": b64decode(self.body),
        }


def attach(app: Flask, jobs: Jobs) -> None:
    """Gives an application its jobs."""
    app.extensions["jobs"] = Runner(app, jobs, _performed)


def _performed(app: Flask, job: Job) -> Response:
    asked = Asked(**json.loads(job.request))
    return performed(app, asked.arguments(), lambda: act_for(asked.token))


def runner() -> Runner:
    """What works off the jobs in this process."""
    found: Runner = current_app.extensions["jobs"]
    return found


def is_put_off(seconds: float) -> bool:
    """Whether something that may take so many seconds becomes a job."""
    if is_job():
        return False
    return seconds > SOON_S or _preference().is_async


def put_off(body: bytes = b"", media_type: str = "") -> Response:
    """A job for the request at hand, or its result where the client waits long enough.

    Args:
        body: What was read of its body.
        media_type: Of that.

    Raises:
        TooManyJobs: Enough of this client's are unfinished.
        AllBusy: So are enough of all clients'.
    """
    runner().wake()  # what waits since another process ended counts below, and nobody else may be at it
    jobs, client = runner().jobs, client_name()
    if jobs.unfinished() >= MOST_IN_ALL:
        raise AllBusy(_FULL_S, f"{MOST_IN_ALL} jobs wait or run")
    if len(body) > _SMALL and jobs.waiting_bytes() + len(body) > MOST_WAITING_BYTES:
        raise AllBusy(_FULL_S, "As many photographs as are kept wait")
    if jobs.unfinished(client) >= MOST_OF_ONE:
        raise TooManyJobs(MOST_OF_ONE)
    job = jobs.add(str(request.endpoint), client, canonical(asdict(Asked.now(body, media_type))))
    runner().wake()
    wish = _preference()
    if wish.wait_s:
        job = _waited(job, wish.wait_s)
    response = result(job) if over(job) else _accepted(job)
    _tell_applied(response, wish, job)
    return response


def found(job_id: str) -> Job:
    """The job of an id.

    Raises:
        UnknownName: There is none, or no longer.
    """
    runner().wake()
    return runner().jobs.get(job_id)


def cancelled(job_id: str) -> Job:
    """The job of an id, cancelled unless it is over; raises like `found`."""
    return runner().jobs.cancel(found(job_id).id)


def result(job: Job) -> Response:
    """What came out of a job: its answer, or the problem that it ran into.

    Raises:
        Unfinished: Nothing did.
    """
    if job.state == JobState.FAILED:
        response = Response(job.answer, status=_status(job), content_type=PROBLEM_JSON)
    elif job.state == JobState.DONE:
        response = Response(job.answer, content_type=job.media_type)
    else:
        raise Unfinished(job.state)
    response.headers["Cache-Control"] = UNKEPT
    return response


def _status(job: Job) -> int:
    return int(json.loads(job.answer or b"{}")["status"])


def _accepted(job: Job) -> Response:
    response = Response(canonical(job_answer(job)), status=202, content_type="application/json")
    response.headers["Location"] = job_path(job)
    response.headers["Retry-After"] = str(POLL_S)
    response.headers["Cache-Control"] = UNKEPT
    return response


def _waited(job: Job, seconds: float) -> Job:
    end = time.monotonic() + seconds
    while not over(job) and time.monotonic() < end:
        time.sleep(_LOOK_S)
        job = runner().jobs.get(job.id)
    return job


def _tell_applied(response: Response, wish: Preference, job: Job) -> None:
    if wish.wait_s is not None and over(job) and job.state != JobState.CANCELLED:
        response.headers["Preference-Applied"] = f"wait={wish.wait_s}"
    elif wish.is_async:
        response.headers["Preference-Applied"] = "respond-async"
    response.vary.add("Prefer")


def _preference() -> Preference:
    return preference(request.headers.getlist("Prefer"))
