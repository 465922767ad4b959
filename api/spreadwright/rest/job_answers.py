"""What a client is told about a job."""

from typing import Any

from spreadwright.rest.links import address
from spreadwright.store.jobs import Job, JobState


def over(job: Job) -> bool:
    """Whether nothing about it changes any more."""
    return job.state in (JobState.DONE, JobState.FAILED, JobState.CANCELLED)


def job_path(job: Job) -> str:
    """Where the job is."""
    return address("jobs.job", job_id=job.id)


def job_answer(job: Job) -> dict[str, Any]:
    """A job as JSON."""
    links = {"self": job_path(job)}
    if job.state in (JobState.DONE, JobState.FAILED):
        links["result"] = address("jobs.job_result", job_id=job.id)
    return {
        "id": job.id,
        "verb": job.verb.partition(".")[2],
        "state": job.state,
        "progress": round(job.progress, 3),
        "words": job.words,
        "made_at": job.made_at.isoformat(timespec="milliseconds"),
        "changed_at": job.changed_at.isoformat(timespec="milliseconds"),
        "links": links,
    }
