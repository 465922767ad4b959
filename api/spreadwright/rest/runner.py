"""The threads of one process that work off jobs: started when there is something to do, gone when there is nothing."""

import os
import time
from collections.abc import Callable
from datetime import UTC, datetime, timedelta
from threading import Event, Lock, Thread

from flask import Flask, Response
from werkzeug.exceptions import InternalServerError

from spreadwright.rest.problems import problem
from spreadwright.rest.service import Service
from spreadwright.rest.working import Cancelled, Work, at_work
from spreadwright.store.jobs import Job, Jobs

MOST_AT_ONCE = 2
MOST_TRIES = 5
"""A job that was begun so often and never ended is given up: it may be what ends the processes."""
IDLE_S, LOOK_S = 20.0, 0.5
_TELL_S = 0.25

Perform = Callable[[Flask, Job], Response]


class Runner:
    """Takes jobs, answers what they ask, and keeps what came out."""

    def __init__(self, app: Flask, jobs: Jobs, perform: Perform) -> None:
        self.jobs = jobs
        self._app, self._perform = app, perform
        self._lock, self._news = Lock(), Event()
        self._threads: list[Thread] = []
        self._process = os.getpid()

    def wake(self) -> None:
        """Sees to it that somebody looks for jobs."""
        self._news.set()
        with self._lock:
            if self._process != os.getpid():  # threads stay behind in a fork
                self._process, self._threads = os.getpid(), []
            self._threads = [each for each in self._threads if each.is_alive()]
            if len(self._threads) < MOST_AT_ONCE:
                thread = Thread(target=self._work, name="jobs", daemon=True)
                self._threads.append(thread)
                thread.start()

    def _work(self) -> None:
        end = time.monotonic() + IDLE_S
        while time.monotonic() < end:
            job = self._claimed()
            if job is not None:
                self._do(job)
                end = time.monotonic() + IDLE_S
            elif self._news.wait(LOOK_S):
                self._news.clear()

    def _claimed(self) -> Job | None:
        try:
            self.jobs.forget(datetime.now(UTC) - self._kept())
            return self.jobs.claim()
        except Exception:
            self._app.logger.exception("Jobs cannot be looked for")
            time.sleep(LOOK_S)
            return None

    def _kept(self) -> timedelta:
        """How long what came out of a job is kept."""
        service: Service = self._app.extensions["spreadwright"]
        return timedelta(seconds=service.settings.results_s)

    def _do(self, job: Job) -> None:
        work = _Told(self.jobs, job)
        try:
            if job.tries > MOST_TRIES:
                raise RuntimeError(f"Begun {MOST_TRIES} times, and never ended.")
            with at_work(Work(work.tell, work.is_cancelled)):
                response = self._perform(self._app, job)
        except Cancelled:
            return
        except Exception:
            self._app.logger.exception("Job %s failed", job.id)
            with self._app.test_request_context():
                response = problem(InternalServerError())
        if response.status_code >= 400:
            self.jobs.fail(job.id, response.get_data())
        else:
            self.jobs.finish(job.id, response.get_data(), response.content_type or "")


class _Told:
    """Progress of one job, not written more often than anybody looks."""

    def __init__(self, jobs: Jobs, job: Job) -> None:
        self._jobs, self._id = jobs, job.id
        self._look_at, self._tell_at, self._words = 0.0, 0.0, ""
        self._is_cancelled = False

    def tell(self, done: float, words: str) -> None:
        """Keeps how far it is."""
        if words != self._words or time.monotonic() >= self._tell_at:
            self._tell_at, self._words = time.monotonic() + _TELL_S, words
            self._jobs.progress(self._id, done, words)

    def is_cancelled(self) -> bool:
        """Whether it is to stop; asked of the database a few times a second."""
        if time.monotonic() >= self._look_at:
            self._look_at = time.monotonic() + _TELL_S
            self._is_cancelled = self._jobs.is_cancelled(self._id)
        return self._is_cancelled


def performed(app: Flask, arguments: dict[str, object], begin: Callable[[], None]) -> Response:
    """The response to a request that nobody sent just now; its problems are responses, too.

    Args:
        app: What answers.
        arguments: What makes the request.
        begin: Is done first, in the place of what a client would have sent with it.
    """
    with app.test_request_context(**arguments):
        try:
            begin()
            return app.make_response(app.dispatch_request())
        except Cancelled:
            raise
        except Exception as reason:
            return app.make_response(app.handle_user_exception(reason))
