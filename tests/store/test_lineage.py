import json

import pytest

from builder import SOUND
from spreadwright.errors import InvalidDocument


def create(store, name, licence, *parents):
    document = {**SOUND, "licence": licence, **({"derived_from": list(parents)} if parents else {})}
    return store.documents.create("recipes", json.dumps(document).encode(), "ann", name=name).document


def codes(refused):
    return [(finding.code, finding.where) for finding in refused.value.findings]


def test_lineage_is_shown_both_ways(store):
    create(store, "one", "CC-BY-4.0")
    create(store, "two", "CC0-1.0")
    create(store, "child", "CC-BY-4.0", "two", "one")
    assert [head.id for head in store.lineage.parents("recipes", "child")] == ["two", "one"]
    assert store.lineage.children("recipes", "one") == ()
    store.publishing.publish("recipes", "child", "ann", expected=1)
    assert [head.id for head in store.lineage.children("recipes", "one")] == ["child"]


def test_a_parent_shared_alike_binds_its_children(store):
    create(store, "parent", "CC-BY-SA-4.0")
    with pytest.raises(InvalidDocument) as refused:
        create(store, "child", "CC-BY-4.0", "parent")
    assert codes(refused) == [("licence-not-alike", "/derived_from/0")]
    assert create(store, "child", "CC-BY-SA-4.0", "parent").revision == 1


def test_a_parent_without_derivatives_refuses_children(store):
    create(store, "free", "CC0-1.0")
    create(store, "closed", "CC-BY-ND-4.0")
    with pytest.raises(InvalidDocument) as refused:
        create(store, "child", "CC-BY-ND-4.0", "free", "closed")
    assert codes(refused) == [("parent-forbids-changes", "/derived_from/1")]


def test_an_unknown_parent_is_refused(store):
    with pytest.raises(InvalidDocument) as refused:
        create(store, "child", "CC-BY-4.0", "nobody")
    assert codes(refused) == [("unknown-parent", "/derived_from/0")]
    create(store, "child", "CC-BY-4.0")
    with pytest.raises(InvalidDocument):
        own = json.dumps({**SOUND, "derived_from": ["child"]}).encode()
        store.documents.change("recipes", "child", own, "ann", expected=1)


def test_the_licence_binds_that_was_given_at_the_time(store):
    create(store, "parent", "CC-BY-4.0")
    create(store, "child", "CC-BY-4.0", "parent")
    closed = json.dumps({**SOUND, "licence": "CC-BY-ND-4.0"}).encode()
    store.documents.change("recipes", "parent", closed, "ann", expected=1)
    again = json.dumps({**SOUND, "title": "Child", "derived_from": ["parent"]}).encode()
    assert store.documents.change("recipes", "child", again, "ann", expected=1).revision == 2
    with pytest.raises(InvalidDocument):
        create(store, "late", "CC-BY-4.0", "parent")


def test_a_deleted_parent_keeps_its_children(store):
    create(store, "parent", "CC-BY-4.0")
    create(store, "child", "CC-BY-4.0", "parent")
    store.documents.delete("recipes", "parent", "ann", expected=1)
    again = json.dumps({**SOUND, "title": "Child", "derived_from": ["parent"]}).encode()
    assert store.documents.change("recipes", "child", again, "ann", expected=1).revision == 2
    assert [head.id for head in store.lineage.parents("recipes", "child")] == ["parent"]
    with pytest.raises(InvalidDocument):
        create(store, "late", "CC-BY-4.0", "parent")


def test_nobody_derives_from_a_draft_of_others(store):
    create(store, "parent", "CC-BY-4.0")
    data = json.dumps({**SOUND, "derived_from": ["parent"]}).encode()
    with pytest.raises(InvalidDocument) as refused:
        store.documents.create("recipes", data, "bob", name="child")
    assert codes(refused) == [("unknown-parent", "/derived_from/0")]
    store.publishing.publish("recipes", "parent", "ann", expected=1)
    assert store.documents.create("recipes", data, "bob", name="child").document.revision == 1
