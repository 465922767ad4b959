"""Work that takes longer than a request: kept until somebody does it, and until what came out is fetched.

Any process may take a job. It holds it by a lease, which its progress renews; a job whose worker was lost is taken by
another one.
"""

import re
from dataclasses import dataclass
from datetime import datetime, timedelta
from enum import StrEnum
from secrets import token_urlsafe
from typing import Any

from sqlalchemy import ColumnElement, and_, delete, func, or_, select, update

from spreadwright.errors import UnknownName
from spreadwright.store.database import Database
from spreadwright.store.tables import JobRow

LEASE_S = 60.0
ABANDONED_AFTER = timedelta(days=1)
"""A job that nobody has worked on for so long is not wanted any more."""
MOST_FORGOTTEN = 100
"""Jobs that are dropped at a time; a result may have megabytes."""
_ID = re.compile(r"[A-Za-z0-9_-]{1,64}")


class JobState(StrEnum):
    """How far a job is."""

    QUEUED = "queued"
    RUNNING = "running"
    DONE = "done"
    FAILED = "failed"
    CANCELLED = "cancelled"


_UNFINISHED = (JobState.QUEUED.value, JobState.RUNNING.value)


@dataclass(frozen=True, slots=True)
class Job:
    """One job.

    Attributes:
        id: Nobody guesses it.
        owner: Who asked for it.
        progress: From 0 to 1.
        words: What is being done.
        request: What is asked, in the words of whoever added it; empty once it is over.
        answer: What came out, or the problem that it ran into; None before.
        tries: How often somebody began with it.
    """

    id: str
    verb: str
    owner: str
    state: str
    progress: float
    words: str
    request: bytes
    answer: bytes | None
    media_type: str
    made_at: datetime
    changed_at: datetime
    tries: int = 0


class Jobs:
    """Every job that was not forgotten."""

    def __init__(self, database: Database) -> None:
        self._database = database

    def add(self, verb: str, owner: str, request: bytes) -> Job:
        """A new job, in the queue."""
        now = self._database.now()
        row = JobRow(
            id=token_urlsafe(18),
            verb=verb[:64],
            owner=owner[:200],
            state=JobState.QUEUED.value,
            progress=0.0,
            words="",
            request=request,
            media_type="",
            tries=0,
            made_at=now,
            changed_at=now,
        )
        with self._database.writing() as session:
            session.add(row)
        return _job(row)

    def get(self, job_id: str) -> Job:
        """The job of an id.

        Raises:
            UnknownName: There is none, or no longer.
        """
        with self._database.reading() as session:
            row = session.get(JobRow, job_id) if _ID.fullmatch(job_id) else None
        if row is None:
            raise UnknownName("job", job_id, None)
        return _job(row)

    def unfinished(self, owner: str | None = None) -> int:
        """How many wait or run, of one owner or of all."""
        mine = select(func.count()).where(JobRow.state.in_(_UNFINISHED))
        with self._database.reading() as session:
            return session.scalar(mine if owner is None else mine.where(JobRow.owner == owner)) or 0

    def waiting_bytes(self) -> int:
        """How many bytes the requests of unfinished jobs have."""
        with self._database.reading() as session:
            return (
                session.scalar(select(func.sum(func.length(JobRow.request))).where(JobRow.state.in_(_UNFINISHED))) or 0
            )

    def claim(self, lease_s: float = LEASE_S) -> Job | None:
        """The oldest job that nobody works on, which is the caller's until its lease ends; None when there is none."""
        now = self._database.now()
        is_lost = and_(JobRow.state == JobState.RUNNING.value, JobRow.leased_until < now)
        free = (
            select(JobRow).where(or_(JobRow.state == JobState.QUEUED.value, is_lost)).order_by(JobRow.made_at).limit(1)
        )
        with self._database.reading() as session:  # most of the time there is none, and nobody has to wait for that
            if session.scalar(free) is None:
                return None
        with self._database.writing() as session:
            row = session.scalar(free.with_for_update(skip_locked=True))
            if row is None:
                return None
            row.state, row.changed_at = JobState.RUNNING.value, now
            row.leased_until, row.tries = now + timedelta(seconds=lease_s), row.tries + 1
            return _job(row)

    def progress(self, job_id: str, done: float, words: str = "", *, lease_s: float = LEASE_S) -> None:
        """How far it is; its worker keeps it for another lease."""
        until = self._database.now() + timedelta(seconds=lease_s)
        self._set(_is(job_id, JobState.RUNNING), progress=done, words=words, leased_until=until)

    def finish(self, job_id: str, answer: bytes, media_type: str) -> None:
        """What came out, unless it was cancelled meanwhile; what was sent for it goes, as at every end of a job."""
        done = {
            "request": b"",
            "state": JobState.DONE.value,
            "progress": 1.0,
            "answer": answer,
            "media_type": media_type[:100],
        }
        self._set(_is(job_id, JobState.RUNNING), **done)

    def fail(self, job_id: str, problem: bytes) -> None:
        """What went wrong, unless it was cancelled meanwhile."""
        self._set(_is(job_id, JobState.RUNNING), state=JobState.FAILED.value, answer=problem, request=b"")

    def cancel(self, job_id: str) -> Job:
        """The job, cancelled unless it is over already; raises like `get`."""
        self.get(job_id)
        self._set(_is(job_id, *map(JobState, _UNFINISHED)), state=JobState.CANCELLED.value, request=b"")
        return self.get(job_id)

    def is_cancelled(self, job_id: str) -> bool:
        """Whether nobody wants it any more."""
        with self._database.reading() as session:
            state = session.scalar(select(JobRow.state).where(JobRow.id == job_id))
        return state in (None, JobState.CANCELLED.value)

    def forget(self, before: datetime) -> int:
        """Drops what is over and has not changed since, and what was abandoned; so many at most; how many."""
        is_over = JobRow.state.not_in(_UNFINISHED)
        is_old = or_(and_(is_over, JobRow.changed_at < before), JobRow.changed_at < before - ABANDONED_AFTER)
        with self._database.reading() as session:
            old = session.scalars(select(JobRow.id).where(is_old).limit(MOST_FORGOTTEN)).all()
        if old:
            with self._database.writing() as session:
                session.execute(delete(JobRow).where(JobRow.id.in_(old), is_old))
        return len(old)

    def _set(self, which: ColumnElement[bool], **new: Any) -> None:
        with self._database.writing() as session:
            session.execute(update(JobRow).where(which).values(changed_at=self._database.now(), **new))


def _is(job_id: str, *states: JobState) -> ColumnElement[bool]:
    return and_(JobRow.id == job_id, JobRow.state.in_([state.value for state in states]))


def _job(row: JobRow) -> Job:
    return Job(
        row.id,
        row.verb,
        row.owner,
        row.state,
        row.progress,
        row.words,
        row.request,
        row.answer,
        row.media_type,
        row.made_at,
        row.changed_at,
        row.tries,
    )
