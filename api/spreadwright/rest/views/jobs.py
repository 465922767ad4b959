"""Long work: how far it is, what came out, and that nobody wants it any more."""

import inspect
from collections.abc import Callable, Sequence

from flask import Response

from spreadwright.document import canonical
from spreadwright.rest import jobs
from spreadwright.rest.forms import JSON, PDF
from spreadwright.rest.job_answers import job_answer, over
from spreadwright.rest.job_envelopes import JobState
from spreadwright.rest.openapi import PROBLEM_NAMES, RETRY_AFTER, Decorator, shared_parameters
from spreadwright.rest.parameters import Query
from spreadwright.rest.replies import UNKEPT
from spreadwright.rest.resources import Resources
from spreadwright.store.jobs import Job

blueprint = Resources("jobs", __name__, description=__doc__)

_RULE = "/jobs/<job_id>"
_BINARY = {"type": "string", "format": "binary"}
_FAILURES: tuple[int | str, ...] = (400, 404, 429, "default")
_PARAMETERS = shared_parameters(_RULE, (), "DELETE")


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


def _serve(
    method: str, rule: str, view: Callable[..., Response], *answers: Decorator, more: Sequence[int] = ()
) -> None:
    name, told = view.__name__, inspect.getdoc(view) or ""
    summary, _, description = told.partition("\n")
    described = blueprint.doc(operationId=name, summary=summary, description=description.strip())
    failures = (blueprint.alt_response(each, PROBLEM_NAMES[each]) for each in (*_FAILURES, *more))
    for decorate in (described, *failures, *answers, blueprint.arguments(Query(), location="query")):
        view = decorate(view)
    blueprint.route(rule, endpoint=name, methods=[method], parameters=_PARAMETERS)(view)


_job = blueprint.response(200, JobState, description="The job.", headers=RETRY_AFTER)
_print = blueprint.response(200, _BINARY, content_type=PDF, description="What came out.")
_computed = blueprint.response(200, {"type": "object"}, content_type=JSON, description="What came out.")

_serve("GET", _RULE, job, _job)
_serve("DELETE", _RULE, cancel_job, _job)
_serve("GET", f"{_RULE}/result", job_result, _print, _computed, more=(409, 422, 500))
