"""Writes until it is killed, and says of each write that it was acknowledged: kind, id, revision, digest."""

import json
import random
import sys

from builder import PAPERS
from spreadwright.store.errors import StaleWrite
from spreadwright.store.opening import open_store


def main(address: str, seed: int) -> None:
    """Creates, changes, publishes, deletes and restores by turns."""
    store = open_store(address)
    chance = random.Random(seed)
    names = []
    for number in range(10**9):
        data = json.dumps({**PAPERS, "title": f"Set {seed} {number}", "tags": [f"tag-{number}"]}).encode()
        if len(names) < 3 or chance.random() < 0.1:
            made = store.documents.create("paper-sets", data, f"writer {seed}").document
            names.append(made.id)
            told(made.id, made.revision, made.head.digest)
            continue
        name = chance.choice(names)
        try:
            told(name, *written(store, name, data, chance.random()))
        except StaleWrite:
            continue


def written(store, name, data, chance):
    """The revision and digest of one write."""
    if chance < 0.05:
        gone = store.documents.delete("paper-sets", name, "writer", expected=None)
        told(name, gone.number, gone.digest)
        back = store.documents.restore("paper-sets", name, 1, "writer", expected=gone.number)
        return back.revision, back.head.digest
    done = store.documents.change("paper-sets", name, data, "writer", expected=None)
    return done.revision, done.head.digest


def told(name, revision, digest):
    print(name, revision, digest, flush=True)


if __name__ == "__main__":
    main(sys.argv[1], int(sys.argv[2]))
