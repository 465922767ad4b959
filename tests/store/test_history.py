import json

import pytest

from builder import SOUND
from spreadwright.errors import UnknownName
from spreadwright.store.comparing import changes


def change(store, number, **members):
    data = json.dumps({**SOUND, **members}).encode()
    return store.documents.change("recipes", "window-seat", data, "ann", expected=number)


def test_every_revision_can_be_read_back(store, recipe):
    second = change(store, 1, title="Bay window")
    for document, number in ((recipe, 1), (second, 2)):
        revision, data = store.history.revision("recipes", "window-seat", number)
        assert (data, revision.digest, revision.number) == (document.data, document.head.digest, number)
    for number in (0, -1, 3, 10**12):
        with pytest.raises(UnknownName):
            store.history.revision("recipes", "window-seat", number)


def test_revisions_are_listed_from_the_newest_in_parts(store, recipe):
    for number in range(1, 6):
        change(store, number, title=f"Title {number}")
    first = store.history.revisions("recipes", "window-seat", limit=4)
    rest = store.history.revisions("recipes", "window-seat", before=first[-1].number)
    assert [each.number for each in (*first, *rest)] == [6, 5, 4, 3, 2, 1]
    assert len(store.history.revisions("recipes", "window-seat", before=10**30)) == 6
    assert store.history.revisions("recipes", "window-seat", before=-(10**30)) == ()


def test_revisions_are_compared_member_by_member(store, recipe):
    members = {"title": "Bay window", "tags": ["home", "light"], "summary": ""}
    change(store, 1, **members)
    found = store.history.compare("recipes", "window-seat", 1, 2)
    assert {(each.op, each.path) for each in found} == {
        ("changed", "/title"),
        ("changed", "/summary"),
        ("added", "/tags/1"),
    }
    back = store.history.compare("recipes", "window-seat", 2, 1)
    assert ("removed", "/tags/1") in {(each.op, each.path) for each in back}


def test_content_is_found_by_its_hash(store, recipe):
    change(store, 1, title="Bay window")
    assert store.history.content(recipe.head.digest) == recipe.data
    with pytest.raises(UnknownName):
        store.history.content("0" * 64)


@pytest.mark.parametrize(
    ("was", "now", "found"),
    [
        ({"a/b": 1, "c~d": 2}, {"a/b": 2, "c~d": 3}, ["/a~1b", "/c~0d"]),
        (1, 1.0, [""]),
        (True, 1, [""]),
        ([1, [2]], [1, [3]], ["/1/0"]),
        ({}, [], [""]),
        ({"a": None}, {}, ["/a"]),
    ],
)
def test_differences_are_told_by_pointer(was, now, found):
    assert [each.path for each in changes(was, now)] == found


def test_only_what_was_published_is_public(store, recipe):
    change(store, 1, title="Bay window")
    store.publishing.publish("recipes", "window-seat", "ann", expected=2)
    change(store, 3, title="Open window")
    store.publishing.withdraw("recipes", "window-seat", "ann", expected=4)
    change(store, 5, title="Shut window")
    public = store.history.revisions("recipes", "window-seat", public=True)
    assert [each.number for each in public] == [4, 3]
    assert len(store.history.revisions("recipes", "window-seat")) == 6
    for number in (1, 2, 5, 6):
        assert store.history.revision("recipes", "window-seat", number)[0].number == number
        with pytest.raises(UnknownName):
            store.history.revision("recipes", "window-seat", number, public=True)
        with pytest.raises(UnknownName):
            store.history.compare("recipes", "window-seat", number, 4, public=True)
    assert store.history.compare("recipes", "window-seat", 3, 4, public=True)
