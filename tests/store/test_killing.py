"""Processes are killed in the middle of their writes: what was acknowledged is there, and nothing is half there."""

import os
import random
import signal
import subprocess
import sys
from hashlib import sha256
from pathlib import Path

import pytest
from sqlalchemy import select, text

from spreadwright.store.database import Database
from spreadwright.store.tables import ContentRow, DocumentRow, LabelRow, RevisionRow

TESTS = Path(__file__).parents[1]


def killed_after(address, seed, lines):
    """What a writer said before it was killed: name, revision, digest."""
    command = [sys.executable, str(TESTS / "store" / "writer.py"), address, str(seed)]
    environment = {**os.environ, "PYTHONPATH": str(TESTS)}
    with subprocess.Popen(command, stdout=subprocess.PIPE, env=environment, text=True) as writer:
        said = [writer.stdout.readline() for _ in range(lines)]
        writer.send_signal(signal.SIGKILL)
        said += writer.stdout.readlines()
    return {tuple(line.split()) for line in said if line.endswith("\n")}


def inspected(address):
    """Every revision that is there, after looking whether all of it fits together."""
    database = Database(address)
    with database.reading() as session:
        if database.is_sqlite:
            assert session.execute(text("PRAGMA integrity_check")).scalars().all() == ["ok"]
            assert session.execute(text("PRAGMA foreign_key_check")).all() == []
        contents = {row.digest: row.data for row in session.scalars(select(ContentRow))}
        documents = {row.key: row for row in session.scalars(select(DocumentRow))}
        revisions = session.scalars(select(RevisionRow).order_by(RevisionRow.document_key, RevisionRow.number)).all()
        labelled = {
            row.document_key: row.value for row in session.scalars(select(LabelRow).where(LabelRow.field == "tag"))
        }
        found = "SELECT rowid FROM search" if database.is_sqlite else "SELECT document_key FROM search"
        searched = set(session.execute(text(found)).scalars())
    database.dispose()
    assert all(sha256(data).hexdigest() == digest for digest, data in contents.items())
    for key, row in documents.items():
        own = [each for each in revisions if each.document_key == key]
        assert [each.number for each in own] == list(range(1, row.revision + 1))
        assert (own[-1].digest, own[-1].state) == (row.digest, row.state)
        assert row.title.encode() in contents[row.digest] and labelled[key].encode() in contents[row.digest]
    assert searched == set(documents)
    return {(documents[each.document_key].id, str(each.number), each.digest) for each in revisions}


def killed_many_times(address, times):
    chance = random.Random(times)
    acknowledged = set()
    for seed in range(times):
        acknowledged |= killed_after(address, seed, chance.randint(2, 40))
        assert acknowledged <= inspected(address)
    assert len(acknowledged) > 2 * times


def test_writers_are_killed_five_times(address):
    killed_many_times(address, 5)


@pytest.mark.soak
def test_writers_are_killed_fifty_times(address):
    killed_many_times(address, 50)
