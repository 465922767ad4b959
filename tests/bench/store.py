"""How long lists take with 1,000 and with 100,000 recipes: `python -m tests.bench.store [ADDRESS]`.

Titles of two random words out of twenty, tags that all, a twentieth and a five-hundredth of the recipes have. Each line
is the best of nine, in milliseconds of the wall, from the call to twenty documents with their content, or to as many as
there are: where few of 1,000 meet what is asked for, a line grows by the rest of the page, too. An address of
PostgreSQL is emptied before and after; SQLite takes a temporary file.
"""

import random
import sys
import time
from collections.abc import Iterator
from datetime import UTC, datetime, timedelta
from typing import Any

from sqlalchemy import insert, text
from tests.builder import SOUND

from spreadwright.document import canonical
from spreadwright.store.database import Database
from spreadwright.store.facts import labels, marks, words_found_by
from spreadwright.store.migrating import migrate_down
from spreadwright.store.opening import Store, open_store
from spreadwright.store.rows import digest_of, fact_columns
from spreadwright.store.tables import ContentRow, DocumentRow, LabelRow
from spreadwright.store.values import Facts
from spreadwright.store.wanted import Range, Wanted

COUNTS = (1_000, 100_000)
WORDS = [
    "tide",
    "harbour",
    "lantern",
    "orchard",
    "pebble",
    "attic",
    "kite",
    "meadow",
    "ribbon",
    "winter",
    "summer",
    "garden",
    "picnic",
    "ferry",
    "cousin",
    "bakery",
    "tram",
    "lake",
    "mountain",
    "rain",
]
START = datetime(2026, 1, 1, tzinfo=UTC)
INCHES_12 = 97_536

ASKED: dict[str, dict[str, Any]] = {
    "first page": {},
    "by title": {"sort": "title"},
    "most photos first": {"sort": "-photos"},
    "a tag of all": {"tags": ("all",)},
    "a tag of a twentieth": {"tags": ("tide",)},
    "a tag of a five-hundredth": {"tags": ("t77",)},
    "a word of all": {"words": "quiet"},
    "a word of a seventh": {"words": "lantern", "sort": "title"},
    "two words": {"words": "lantern ferry", "sort": "-created"},
    "a word of none": {"words": "lantern zzz"},
    "twelve photos": {"photos": Range(12, 12)},
    "forty cuts or more": {"cuts": Range(40), "sort": "title"},
    "an author": {"authors": ("Author 5",)},
    "word, tag and photos": {"words": "lantern", "tags": ("kite",), "photos": Range(12, 12)},
    "two tags that never meet": {"tags": ("tide", "kite")},
}
"""What the line is called, and what is asked for."""


def main() -> None:
    """Prints one table."""
    address = sys.argv[1] if len(sys.argv) > 1 else None
    columns = [dict(_measured(address, count)) for count in COUNTS]
    heads = (head for count in COUNTS for head in (f"{count:,} recipes, ms", "found"))
    print("| asked for | " + " | ".join(heads) + " |\n| --- | --- | --- | --- | --- |")
    for name in ASKED:
        cells = (f"{column[name][0]:.1f} | {column[name][1]}" for column in columns)
        print(f"| {name} | " + " | ".join(cells) + " |")


def _measured(address: str | None, count: int) -> Iterator[tuple[str, tuple[float, int]]]:
    if address:
        migrate_down(Database(address))
    store = open_store(address)
    _fill(store, count)
    for name, members in ASKED.items():
        wanted = Wanted("recipes", **members)
        found = len(store.listing.page(wanted).documents)
        yield name, (min(_seconds(store, wanted) for _ in range(9)) * 1000, found)
    if address:
        migrate_down(store.database)


def _seconds(store: Store, wanted: Wanted) -> float:
    start = time.perf_counter()
    store.listing.page(wanted)
    return time.perf_counter() - start


def _fill(store: Store, count: int) -> None:
    """Past checks and revisions, which would take an hour."""
    chance = random.Random(count)
    recipes = [(key, *_recipe(chance, key)) for key in range(1, count + 1)]
    is_sqlite = store.database.is_sqlite
    with store.database.writing() as session:
        session.execute(insert(ContentRow), [{"digest": digest_of(data), "data": data} for _, _, data in recipes])
        session.execute(insert(DocumentRow), [_row(key, facts, data) for key, facts, data in recipes])
        session.execute(insert(LabelRow), [each for key, facts, _ in recipes for each in _labels(key, facts)])
        found = [(key, (*words_found_by(facts), *marks(facts))) for key, facts, _ in recipes]
        if is_sqlite:
            sql = "INSERT INTO search (rowid, words) VALUES (:key, :words)"
        else:
            sql = "INSERT INTO search VALUES (:key, array_to_tsvector(CAST(:words AS text[])))"
        session.execute(
            text(sql), [{"key": key, "words": " ".join(each) if is_sqlite else list(each)} for key, each in found]
        )
    if not is_sqlite:
        with store.database.writing_connection() as connection:
            connection.execute(text("ANALYZE"))


def _recipe(chance: random.Random, key: int) -> tuple[Facts, bytes]:
    title = f"{chance.choice(WORDS).title()} {chance.choice(WORDS)} {key}"
    facts = Facts(
        title=title,
        summary="Three photos round a quiet square.",
        licence="CC-BY-4.0",
        language="en",
        pages=chance.choice([1, 2]),
        sheets=chance.randint(1, 9),
        photos=chance.randint(0, 12),
        cuts=chance.randint(1, 40),
        page_width=INCHES_12,
        page_height=INCHES_12,
        roles=("background", "plain"),
        authors=(f"Author {key % 997}",),
        tags=("all", chance.choice(WORDS), f"t{key % 500}"),
    )
    return facts, canonical({**SOUND, "title": title})


def _row(key: int, facts: Facts, data: bytes) -> dict[str, Any]:
    at = START + timedelta(seconds=key)
    dates = {"created_at": at, "changed_at": at, "published_at": at}
    name = {"key": key, "kind": "recipes", "id": f"r-{key * 7919 % 1_000_003:07}", "revision": 1, "state": "published"}
    rest = {"digest": digest_of(data), "owner": f"o{key % 100}", "review_note": "", "pictures": {}}
    return {**name, **dates, **rest, **fact_columns(facts)}


def _labels(key: int, facts: Facts) -> list[dict[str, Any]]:
    return [{"document_key": key, "field": field, "value": value} for field, value in labels(facts)]


if __name__ == "__main__":
    main()
