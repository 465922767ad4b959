import json
from dataclasses import replace
from threading import Event, Thread

import pytest

from builder import SOUND
from spreadwright.errors import UnknownName
from spreadwright.store import listing
from spreadwright.store.errors import BadCursor
from spreadwright.store.values import State
from spreadwright.store.wanted import SORTS, Range, Wanted

ALL = (State.DRAFT, State.PUBLISHED, State.WITHDRAWN)
WANTED = Wanted("recipes", states=ALL)
TITLES = ["Crème on oak", "Ash", "apple", "Zebra", "Oak-apple", "Ash", "Öland", "creme"]


WAYS = {"looked up": {}, "walked": {"RARE": 0, "FAR": 2, "SEVERAL": 0}, "walk given up": {"RARE": 0, "FAR": 2}}


@pytest.fixture(params=WAYS)
def shelf(store, request, monkeypatch):
    """Eight recipes; every way of finding them has to find the same."""
    for name, value in WAYS[request.param].items():
        monkeypatch.setattr(listing, name, value)
    for number, title in enumerate(TITLES):
        photos = SOUND["photos"][: number % 4]
        tags = ["even" if number % 2 == 0 else "odd", "all"]
        document = {**SOUND, "title": title, "photos": photos, "tags": tags, "licence": "CC0-1.0" if number else "MIT"}
        store.documents.create("recipes", json.dumps(document).encode(), "ann" if number < 6 else "bob")
    return store


def names(store, wanted=WANTED, **members):
    return [document.id for document in store.listing.page(replace(wanted, **members)).documents]


def walked(store, wanted):
    """Every page one after the other."""
    found = []
    while True:
        page = store.listing.page(wanted)
        found.append([document.id for document in page.documents])
        if page.next is None:
            return found
        wanted = replace(wanted, after=page.next)


def flat(pages):
    return [name for page in pages for name in page]


def numbers(store, **members):
    """Which of `TITLES`, by their place, since two are the same."""
    page = store.listing.page(replace(WANTED, sort="created", **members))
    created = store.listing.page(replace(WANTED, sort="created"))
    order = [document.id for document in created.documents]
    return [order.index(document.id) for document in page.documents]


def test_pages_of_any_size_make_up_the_whole_list(shelf):
    for sort in [*SORTS, *(f"-{name}" for name in SORTS)]:
        whole = names(shelf, sort=sort, limit=100)
        assert len(set(whole)) == len(TITLES)
        for limit in (1, 3, 8):
            pages = walked(shelf, replace(WANTED, sort=sort, limit=limit))
            assert flat(pages) == whole
            assert all(len(page) == limit for page in pages[:-1])


def test_downward_is_upward_reversed(shelf):
    for sort in SORTS:
        assert names(shelf, sort=f"-{sort}") == names(shelf, sort=sort)[::-1]


def test_titles_sort_by_code_point(shelf):
    shown = [d.facts.title for d in shelf.listing.page(replace(WANTED, sort="title")).documents]
    assert shown == sorted(TITLES)


FOUND = [
    ({"words": "oak"}, [0, 4]),
    ({"words": "CRÈME"}, [0, 7]),
    ({"words": "app"}, [2, 4]),
    ({"words": "oak apple"}, [4]),
    ({"words": "oland"}, [6]),
    ({"words": "ak"}, []),
    ({"words": "!!"}, []),
    ({"words": "oak' OR *"}, []),
    ({"words": "even"}, [0, 2, 4, 6]),
    ({"tags": ("odd",)}, [1, 3, 5, 7]),
    ({"tags": ("odd", "all")}, [1, 3, 5, 7]),
    ({"tags": ("odd", "even")}, []),
    ({"tags": ("od",)}, []),
    ({"tags": ("a\0",)}, []),
    ({"photos": Range(2)}, [2, 3, 6, 7]),
    ({"photos": Range(1, 2)}, [1, 2, 5, 6]),
    ({"photos": Range(most=0)}, [0, 4]),
    ({"sheets": Range(4, 4)}, list(range(8))),
    ({"cuts": Range(1000)}, []),
    ({"cuts": Range(10**30)}, []),
    ({"cuts": Range(-(10**30), 10**30)}, list(range(8))),
    ({"photos": Range(10**30, 10**30)}, []),
    ({"page_size": (10**30, -(10**30))}, []),
    ({"tags": ("\ud800",)}, []),
    ({"pages": Range(2, 2), "words": "ash"}, [1, 5]),
    ({"licence": "MIT"}, [0]),
    ({"language": "en"}, list(range(8))),
    ({"authors": ("The Spreadwright maintainers",)}, list(range(8))),
    ({"roles": ("plain", "print")}, list(range(8))),
    ({"roles": ("plain", "sky")}, []),
    ({"owner": "bob"}, [6, 7]),
    ({"page_size": (97536, 97536)}, list(range(8))),
    ({"page_size": (97536, 1)}, []),
]


def test_documents_are_found_by_what_they_are(shelf):
    for members, found in FOUND:
        assert numbers(shelf, **members) == found, members
        assert shelf.listing.count(replace(WANTED, **members)) == len(found), members


def test_a_list_shows_what_is_published(shelf):
    assert names(shelf, Wanted("recipes")) == []
    shelf.publishing.publish("recipes", "zebra", "ann", expected=1)
    assert names(shelf, Wanted("recipes")) == ["zebra"]
    shelf.documents.delete("recipes", "zebra", "ann", expected=2)
    assert names(shelf, Wanted("recipes")) == []
    assert len(names(shelf)) == 7


def test_own_drafts_stand_among_what_is_published(shelf):
    shelf.publishing.publish("recipes", "zebra", "ann", expected=1)
    wanted = Wanted("recipes", also_of="bob", limit=2)
    assert flat(walked(shelf, wanted)) == ["creme", "oland", "zebra"]


def test_what_changes_is_found_by_what_it_is_now(shelf):
    changed = json.dumps({**SOUND, "title": "Larch", "tags": ["late"]}).encode()
    shelf.documents.change("recipes", "zebra", changed, "ann", expected=1)
    assert names(shelf, words="zebra") == []
    assert names(shelf, words="larch") == names(shelf, tags=("late",)) == ["zebra"]


def test_a_place_is_no_place_in_another_order(shelf):
    mark = shelf.listing.page(replace(WANTED, limit=2, sort="title")).next
    for after, sort in ((mark, "id"), (mark + "A", "title"), ("", "nothing"), ("ä", "id"), ("WyJpZCJd", "id")):
        with pytest.raises((BadCursor, UnknownName)):
            shelf.listing.page(replace(WANTED, after=after or "x", sort=sort))


@pytest.mark.parametrize(
    "value", ["null", "1", "[]", '["photos", "x", 1]', '["photos", 1e9, 1]', '["photos", 1, true]']
)
def test_a_made_up_place_is_refused(store, value):
    from base64 import urlsafe_b64encode

    with pytest.raises(BadCursor):
        store.listing.page(Wanted("recipes", sort="photos", after=urlsafe_b64encode(value.encode()).decode()))


def test_unknown_kinds_and_orders_are_named(store):
    for wanted in (Wanted("receipts"), Wanted("recipes", sort="colour")):
        with pytest.raises(UnknownName):
            store.listing.page(wanted)


def test_pages_stay_whole_while_others_write(store):
    old = {
        store.documents.create("recipes", json.dumps({**SOUND, "title": f"Old {n:02}"}).encode(), "ann").document.id
        for n in range(30)
    }
    over = Event()

    def write():
        number = 0
        while not over.is_set():
            data = json.dumps({**SOUND, "title": f"Aa {number}"}).encode()
            made = store.documents.create("recipes", data, "bob").document
            store.documents.delete("recipes", made.id, "bob", expected=1)
            number += 1

    writer = Thread(target=write)
    writer.start()
    try:
        for sort in ("id", "-id", "title", "-created"):
            seen = flat(walked(store, replace(WANTED, limit=4, sort=sort)))
            assert len(seen) == len(set(seen))
            assert old <= set(seen)
    finally:
        over.set()
        writer.join()
