"""Eight writers change the same documents a thousand times, each on condition that nobody else was faster."""

import json
import random
from threading import Lock, Thread

from spreadwright.store import Collection
from spreadwright.store.errors import StaleWrite
from spreadwright.store.opening import open_store

WRITERS, WRITES = 8, 1000
BENCH = json.loads(Collection().benches["bench-metric"].data)
NAMES = ("one", "two")


class Writing:
    """So many writes, told of by who made them."""

    def __init__(self, address):
        self.address, self.lock = address, Lock()
        self.left, self.stale = WRITES, 0
        self.acknowledged = []

    def taken(self):
        with self.lock:
            self.left -= 1
            return self.left >= 0

    def run(self, who):
        """Adds one to a number that stands in a document, until all is written."""
        store, chance = open_store(self.address), random.Random(who)
        while self.taken():
            while not self.added(store, chance.choice(NAMES), f"writer {who}"):
                self.stale += 1
        store.database.dispose()

    def added(self, store, name, who):
        found = store.documents.get("benches", name)
        number = int(found.facts.title) + 1
        data = json.dumps({**BENCH, "title": str(number)}).encode()
        try:
            done = store.documents.change("benches", name, data, who, expected=found.revision)
        except StaleWrite:
            return False
        self.acknowledged.append((name, done.revision, who, number))
        return True


def test_no_update_is_lost(address):
    store, writing = open_store(address), Writing(address)
    for name in NAMES:
        store.documents.create("benches", json.dumps({**BENCH, "title": "0"}).encode(), "ann", name=name)
    threads = [Thread(target=writing.run, args=(who,)) for who in range(WRITERS)]
    for each in threads:
        each.start()
    for each in threads:
        each.join()
    assert len(writing.acknowledged) == WRITES
    assert sum(int(store.documents.get("benches", name).facts.title) for name in NAMES) == WRITES
    for name in NAMES:
        kept = store.history.revisions("benches", name, limit=WRITES + 1)[::-1]
        assert [each.number for each in kept] == list(range(1, len(kept) + 1))
        told = sorted((number, who) for at, number, who, _ in writing.acknowledged if at == name)
        assert told == [(each.number, each.who) for each in kept[1:]]
        assert all(number == revision - 1 for at, revision, _, number in writing.acknowledged if at == name)
