from datetime import timedelta
from threading import Thread

import pytest

from spreadwright.errors import UnknownName
from spreadwright.store.jobs import ABANDONED_AFTER


@pytest.fixture
def job(store):
    return store.jobs.add("plan", "ann", b"{}")


def test_a_job_is_done_and_its_answer_fetched(store, job):
    assert store.jobs.get(job.id) == job
    claimed = store.jobs.claim()
    assert (claimed.id, claimed.state, claimed.request) == (job.id, "running", b"{}")
    store.jobs.progress(job.id, 0.5, "Half.")
    assert (store.jobs.get(job.id).progress, store.jobs.get(job.id).words) == (0.5, "Half.")
    store.jobs.finish(job.id, b"plan", "text/plain")
    done = store.jobs.get(job.id)
    assert (done.state, done.answer, done.media_type, done.progress) == ("done", b"plan", "text/plain", 1.0)
    assert store.jobs.claim() is None


def test_the_oldest_job_comes_first_and_is_taken_once(store):
    made = [store.jobs.add("plan", "ann", b"") for _ in range(6)]
    assert store.jobs.claim().id == made[0].id
    taken = []
    threads = [Thread(target=lambda: taken.append(store.jobs.claim().id)) for _ in range(5)]
    for each in threads:
        each.start()
    for each in threads:
        each.join()
    assert sorted(taken) == sorted(each.id for each in made[1:])


def test_the_job_of_a_lost_worker_is_taken_again(store, job, clock):
    store.jobs.claim(30)
    assert store.jobs.claim(30) is None
    clock.moment += timedelta(seconds=20)
    store.jobs.progress(job.id, 0.1)
    clock.moment += timedelta(seconds=40)
    assert store.jobs.claim(30) is None
    clock.moment += timedelta(seconds=40)
    assert store.jobs.claim(30).id == job.id


def test_what_is_cancelled_stays_so(store, job):
    store.jobs.claim()
    assert not store.jobs.is_cancelled(job.id)
    assert store.jobs.cancel(job.id).state == "cancelled"
    assert store.jobs.is_cancelled(job.id)
    store.jobs.finish(job.id, b"plan", "text/plain")
    store.jobs.fail(job.id, b"{}")
    store.jobs.progress(job.id, 0.9)
    assert (store.jobs.get(job.id).state, store.jobs.get(job.id).answer) == ("cancelled", None)


def test_what_is_over_is_not_cancelled(store, job):
    store.jobs.claim()
    store.jobs.fail(job.id, b"problem")
    assert (store.jobs.cancel(job.id).state, store.jobs.get(job.id).answer) == ("failed", b"problem")


def test_unfinished_jobs_are_counted(store, job):
    store.jobs.add("plan", "bob", b"")
    store.jobs.claim()
    assert (store.jobs.unfinished(), store.jobs.unfinished("ann"), store.jobs.unfinished("eve")) == (2, 1, 0)
    store.jobs.finish(job.id, b"", "text/plain")
    assert (store.jobs.unfinished(), store.jobs.unfinished("ann")) == (1, 0)


def test_jobs_that_wait_outlast_results_but_not_everything(store, job, clock):
    soon = clock.moment + timedelta(minutes=1)
    assert store.jobs.forget(soon) == 0 and store.jobs.claim().tries == 1
    assert store.jobs.forget(soon) == 0
    assert store.jobs.forget(soon + ABANDONED_AFTER) == 1


def test_old_jobs_are_forgotten(store, job, clock):
    store.jobs.cancel(job.id)
    assert store.jobs.forget(job.changed_at) == 0
    assert store.jobs.forget(clock.moment + timedelta(hours=1)) == 1
    for name in (job.id, "", "a\0b", "ä", "x" * 99):
        with pytest.raises(UnknownName):
            store.jobs.get(name)
    assert store.jobs.is_cancelled(job.id)
