from datetime import timedelta
from threading import Thread

import numpy as np
from click.testing import CliRunner
from sqlalchemy import insert, select

from builder import SOUND, sound
from spreadwright.cli import main
from spreadwright.document import canonical
from spreadwright.images import encode_png
from spreadwright.rest.cleaner import clean_in_turn
from spreadwright.rest.settings import Settings
from spreadwright.store import cleaning, counters, creating, jobs
from spreadwright.store.opening import open_store
from spreadwright.store.rows import digest_of
from spreadwright.store.tables import ContentRow, RequestKeyRow
from spreadwright.store.values import RequestKey
from store.test_documents import scans

DAY, HOUR = timedelta(days=1), timedelta(hours=1)


def sweep(store, **kept):
    return store.cleaning.sweep(**{"keys": 30 * DAY, "jobs": HOUR, **kept})


def loose(store, *contents):
    with store.database.writing() as session:
        session.execute(insert(ContentRow), [{"digest": digest_of(data), "data": data} for data in contents])


def kept(store):
    with store.database.reading() as session:
        return set(session.scalars(select(ContentRow.digest)))


def grey(value):
    return encode_png(np.full((8, 8, 3), value, dtype=np.uint8))


def test_a_key_is_known_as_long_as_is_set_and_then_makes_anew(store, clock):
    key = RequestKey("ann", "k-1", "f" * 64)
    first = store.documents.create("recipes", sound(), "ann", key=key).document
    clock.moment += 29 * DAY
    assert sweep(store).keys == 0
    assert store.documents.create("recipes", sound(), "ann", key=key).is_replay
    clock.moment += 2 * DAY
    assert sweep(store).keys == 1
    again = store.documents.create("recipes", sound(), "ann", key=key)
    assert not again.is_replay and again.document.id != first.id


def test_jobs_and_counts_go_when_their_time_is_over(store, clock):
    old = store.jobs.add("plan", "ann", b"{}")
    store.jobs.cancel(old.id)
    store.counters.hit("ann", 60)
    clock.moment += 2 * HOUR
    young = store.jobs.add("plan", "ann", b"{}")
    store.counters.hit("ann", 3600)
    found = sweep(store)
    assert (found.jobs, found.counters) == (1, 1)
    assert store.jobs.get(young.id).state == "queued" and store.counters.hit("ann", 3600).used == 2


def test_what_any_revision_refers_to_stays_and_what_none_does_goes(store):
    names = ("rope.png", "sail.png")
    pictures = dict(zip(names, (grey(1), grey(2)), strict=True))
    store.documents.create("paper-sets", scans(*names), "ann", name="scans", pictures=pictures)
    store.documents.put_pictures("scans", {"rope.png": grey(3)}, "ann", expected=1)
    store.documents.delete("paper-sets", "scans", "ann", expected=2)
    store.documents.create("recipes", sound(), "ann", name="seat")
    store.documents.change("recipes", "seat", canonical({**SOUND, "title": "Other"}), "ann", expected=1)
    before = kept(store)
    assert {digest_of(grey(value)) for value in (1, 2, 3)} < before
    loose(store, b"nobody's", b"nobody else's")
    assert sweep(store).contents == 2
    assert kept(store) == before
    assert sweep(store) == cleaning.Cleaned(0, 0, 0, 0)
    back = store.documents.restore("paper-sets", "scans", 1, "ann", expected=3)
    assert store.documents.picture(back, "rope.png") == grey(1)


def test_it_is_done_a_few_at_a_time(store, clock, monkeypatch):
    for module, name in ((cleaning, "MOST"), (counters, "MOST_FORGOTTEN"), (jobs, "MOST_FORGOTTEN")):
        monkeypatch.setattr(module, name, 2)
    row = {"fingerprint": "f", "made_at": clock.moment, "owner": "ann"}
    document = store.documents.create("recipes", sound(), "ann", key=RequestKey("ann", "k", "f"))
    with store.database.writing() as session:
        made = session.scalars(select(RequestKeyRow.document_key)).one()
        session.execute(insert(RequestKeyRow), [{**row, "key": f"k-{n}", "document_key": made} for n in range(4)])
    for number in range(5):
        store.counters.hit(f"name {number}", 60)
        store.jobs.add("plan", "ann", b"{}")
    loose(store, *(b"%d" % number for number in range(5)))
    clock.moment += 40 * DAY
    pauses = []
    found = sweep(store, pause=lambda: pauses.append(1))
    assert found == cleaning.Cleaned(5, 5, 5, 5) and len(pauses) == 4 * 3
    assert store.documents.get("recipes", document.document.id).data


def test_a_writer_who_refers_to_loose_content_in_the_same_moment_keeps_it(store, monkeypatch):
    """Between its contents and its revision, cleaning begins; it has to wait."""
    data, picture = canonical({**SOUND, "title": "Late"}), grey(7)
    loose(store, data, picture)
    add_revision, cleaners = creating.add_revision, []

    def slowly(*found, **options):
        cleaners.append(Thread(target=lambda: sweep(store)))
        cleaners[0].start()
        cleaners[0].join(0.4)
        assert cleaners[0].is_alive()
        add_revision(*found, **options)

    monkeypatch.setattr(creating, "add_revision", slowly)
    made = store.documents.create("paper-sets", scans("rope.png"), "ann", pictures={"rope.png": picture}).document
    cleaners[0].join()
    assert kept(store) == {made.head.digest, digest_of(picture)}
    assert store.documents.picture(made, "rope.png") == picture


def test_one_of_many_processes_cleans_in_an_hour(store, clock):
    clock.moment = clock.moment.replace(minute=1)
    assert [clean_in_turn(store, Settings()) is not None for _ in range(3)] == [True, False, False]
    clock.moment += HOUR
    assert clean_in_turn(store, Settings()) is not None


def test_it_is_done_by_hand_too(tmp_path):
    address = f"sqlite:///{tmp_path}/store.db"
    store = open_store(address)
    loose(store, b"nobody's")
    done = CliRunner().invoke(main, ["clean"], env={"SPREADWRIGHT_DATABASE_URL": address})
    assert done.exit_code == 0 and "1 contents" in done.output and kept(store) == set()


def test_a_store_that_is_not_named_is_not_cleaned():
    assert CliRunner().invoke(main, ["clean"], env={"SPREADWRIGHT_DATABASE_URL": ""}).exit_code != 0
