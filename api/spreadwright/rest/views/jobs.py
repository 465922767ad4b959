"""Long work: how far it is, what came out, and that nobody wants it any more."""

from flask import Response

from spreadwright.document import canonical
from spreadwright.rest import jobs
from spreadwright.rest.forms import JSON, PDF, PNG, SVG
from spreadwright.rest.job_answers import job_answer, over
from spreadwright.rest.job_envelopes import JobState
from spreadwright.rest.openapi import RETRY_AFTER
from spreadwright.rest.plain_routes import serve_plain
from spreadwright.rest.replies import UNKEPT
from spreadwright.rest.resources import Resources
from spreadwright.store.jobs import Job

blueprint = Resources("jobs", __name__, description=__doc__)

_RULE = "/jobs/<job_id>"
_BINARY = {"type": "string", "format": "binary"}
_FAILURES = (404, 429)


def _told(job: Job) -> Response:
    response = Response(canonical(job_answer(job)), content_type=JSON)
    response.headers["Cache-Control"] = UNKEPT
    if not over(job):
        response.headers["Retry-After"] = str(jobs.POLL_S)
    return response


def job(_: object, job_id: str) -> Response:
    """How far a job is.

    Ask again after `Retry-After` seconds.
    """
    return _told(jobs.found(job_id))


def cancel_job(_: object, job_id: str) -> Response:
    """Nobody wants it any more.

    What is over stays as it is. Whoever knows the id, which cannot be guessed, may cancel.
    """
    return _told(jobs.cancelled(job_id))


def job_result(_: object, job_id: str) -> Response:
    """What came out of a job.

    As the request would have been answered if the client had waited, problems included. It is kept for an hour. While
    there is none the answer is 409 and `unfinished`.
    """
    return jobs.result(jobs.found(job_id))


_job = blueprint.response(200, JobState, description="The job.", headers=RETRY_AFTER)
_prints = [
    blueprint.response(200, _BINARY, content_type=kind, description="What came out.") for kind in (PDF, PNG, SVG)
]
_computed = blueprint.response(200, {"type": "object"}, content_type=JSON, description="What came out.")

serve_plain(blueprint, "GET", _RULE, job, _job, failures=_FAILURES)
serve_plain(blueprint, "DELETE", _RULE, cancel_job, _job, failures=_FAILURES)
serve_plain(blueprint, "GET", f"{_RULE}/result", job_result, *_prints, _computed, failures=(*_FAILURES, 409, 422, 500))
