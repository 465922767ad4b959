import json
from threading import Barrier, Thread

import numpy as np
import pytest

from builder import PAPERS, SOUND, sound, spoilt
from spreadwright.document import canonical
from spreadwright.errors import InvalidDocument, Severity, UnknownName, UnreadableDocument, UnreadablePicture
from spreadwright.images import encode_png
from spreadwright.store.errors import BadId, Gone, IdTaken, KeyReused, StaleWrite
from spreadwright.store.values import Action, RequestKey, State


def titled(title):
    return json.dumps({**SOUND, "title": title}).encode()


def test_what_is_created_is_read_back(store):
    made = store.documents.create("recipes", sound(), "ann", note="First.").document
    found = store.documents.get("recipes", "window-seat")
    assert found == made
    assert found.content == SOUND
    assert found.data == canonical(SOUND)
    assert (found.head.state, found.head.owner, found.revision) == (State.DRAFT, "ann", 1)
    assert store.documents.head("recipes", "window-seat") == found.head


def test_an_id_is_made_from_the_title_and_numbered(store):
    names = [store.documents.create("recipes", sound(), "ann").document.id for _ in range(3)]
    assert names == ["window-seat", "window-seat-2", "window-seat-3"]


def test_a_title_that_everybody_uses_still_finds_an_id(store):
    names = {store.documents.create("recipes", sound(), "ann").document.id for _ in range(12)}
    assert len(names) == 12


def test_the_same_id_may_stand_in_each_kind(store):
    store.documents.create("recipes", sound(), "ann", name="harbour")
    store.documents.create("paper-sets", json.dumps(PAPERS).encode(), "ann", name="harbour")
    assert store.documents.get("paper-sets", "harbour").content == PAPERS


def test_a_named_id_is_taken_once(store, recipe):
    with pytest.raises(IdTaken):
        store.documents.create("recipes", sound(), "bob", name="window-seat")
    store.documents.delete("recipes", "window-seat", "ann", expected=1)
    with pytest.raises(IdTaken):
        store.documents.create("recipes", sound(), "bob", name="window-seat")


@pytest.mark.parametrize("name", ["", "Window", "a b", "../up", "a--b", "-a", "a" * 61, "a\0b", "ä", "a\n"])
def test_text_that_is_no_id_is_refused(store, name):
    with pytest.raises(BadId):
        store.documents.create("recipes", sound(), "ann", name=name)
    with pytest.raises(UnknownName):
        store.documents.get("recipes", name)
    with pytest.raises(UnknownName):
        store.documents.head("recipes", name)


def test_an_unknown_id_names_those_that_begin_alike(store, recipe):
    store.publishing.publish("recipes", "window-seat", "ann", expected=1)
    with pytest.raises(UnknownName, match="Did you mean “window-seat”"):
        store.documents.get("recipes", "window-seet")


def test_a_document_with_errors_of_form_is_not_kept(store):
    with pytest.raises(InvalidDocument):
        store.documents.create("recipes", spoilt(lambda recipe: recipe.update(colour="red")), "ann")
    with pytest.raises(InvalidDocument) as refused:
        store.documents.create("recipes", spoilt(lambda recipe: recipe.update(licence="CC-BY")), "ann")
    assert [finding.code for finding in refused.value.findings] == ["unknown-licence"]
    with pytest.raises(UnreadableDocument):
        store.documents.create("recipes", b"[1]", "ann")
    with pytest.raises(UnknownName):
        store.documents.get("recipes", "window-seat")


def test_every_change_is_a_revision(store, recipe, clock):
    changed = store.documents.change("recipes", "window-seat", titled("Bay window"), "bob", expected=1, note="Renamed.")
    assert (changed.revision, changed.facts.title, changed.head.owner) == (2, "Bay window", "ann")
    assert changed.head.changed_at > recipe.head.changed_at
    assert changed.head.etag != recipe.head.etag
    newest, _ = store.history.revisions("recipes", "window-seat")
    assert (newest.number, newest.action, newest.who, newest.note) == (2, Action.CHANGED, "bob", "Renamed.")


def test_the_same_content_again_changes_nothing(store, recipe):
    same = store.documents.change("recipes", "window-seat", json.dumps(SOUND, indent=7).encode(), "ann", expected=1)
    assert same == recipe


def test_a_stale_write_is_refused(store, recipe):
    store.documents.change("recipes", "window-seat", titled("Bay window"), "ann", expected=1)
    for write in (
        lambda: store.documents.change("recipes", "window-seat", titled("Porch"), "bob", expected=1),
        lambda: store.documents.delete("recipes", "window-seat", "bob", expected=1),
        lambda: store.documents.restore("recipes", "window-seat", 1, "bob", expected=1),
        lambda: store.publishing.publish("recipes", "window-seat", "bob", expected=1),
        lambda: store.documents.change("recipes", "window-seat", titled("Porch"), "bob", expected=7),
    ):
        with pytest.raises(StaleWrite) as refused:
            write()
        assert refused.value.current == 2
    assert store.documents.get("recipes", "window-seat").facts.title == "Bay window"


def test_deletion_leaves_a_tombstone(store, recipe):
    gone = store.documents.delete("recipes", "window-seat", "ann", expected=1, note="By mistake.")
    assert (gone.number, gone.action, gone.state) == (2, Action.DELETED, State.DELETED)
    for read in (store.documents.get, store.documents.head, store.readings.latest):
        with pytest.raises(Gone):
            read("recipes", "window-seat")
    with pytest.raises(Gone):
        store.documents.change("recipes", "window-seat", sound(), "ann", expected=2)
    assert store.history.revision("recipes", "window-seat", 1)[1] == recipe.data


def test_what_was_deleted_comes_back_as_a_draft(store, recipe):
    store.publishing.publish("recipes", "window-seat", "ann", expected=1)
    store.documents.delete("recipes", "window-seat", "ann", expected=2)
    back = store.documents.restore("recipes", "window-seat", 1, "ann", expected=3)
    assert (back.head.state, back.revision, back.data) == (State.DRAFT, 4, recipe.data)


def test_a_restored_revision_is_a_new_one(store, recipe):
    store.documents.change("recipes", "window-seat", titled("Bay window"), "ann", expected=1)
    back = store.documents.restore("recipes", "window-seat", 1, "ann", expected=2)
    assert (back.revision, back.data, back.facts) == (3, recipe.data, recipe.facts)
    with pytest.raises(UnknownName):
        store.documents.restore("recipes", "window-seat", 9, "ann", expected=3)


def test_a_request_with_a_key_is_carried_out_once(store):
    key = RequestKey("ann", "k-1", "f" * 64)
    first = store.documents.create("recipes", sound(), "ann", key=key)
    again = store.documents.create("recipes", sound(), "ann", key=key)
    assert (first.is_replay, again.is_replay) == (False, True)
    assert again.document == first.document
    other = store.documents.create("recipes", sound(), "bob", key=RequestKey("bob", "k-1", "f" * 64))
    assert other.document.id == "window-seat-2"


def test_a_key_belongs_to_one_request(store):
    store.documents.create("recipes", sound(), "ann", key=RequestKey("ann", "k-1", "f" * 64))
    with pytest.raises(KeyReused):
        store.documents.create("recipes", titled("Porch"), "ann", key=RequestKey("ann", "k-1", "0" * 64))


def test_a_key_that_is_sent_twice_at_once_makes_one_document(store):
    barrier, names = Barrier(4), []

    def create():
        barrier.wait()
        names.append(
            store.documents.create("recipes", sound(), "ann", key=RequestKey("ann", "k", "f" * 64)).document.id
        )

    threads = [Thread(target=create) for _ in range(4)]
    for each in threads:
        each.start()
    for each in threads:
        each.join()
    assert names == ["window-seat"] * 4


def test_a_parsed_revision_is_the_same_object_each_time(store, recipe):
    first = store.readings.latest("recipes", "window-seat")
    assert store.readings.of(recipe) is first
    store.documents.change("recipes", "window-seat", titled("Bay window"), "ann", expected=1)
    assert store.readings.latest("recipes", "window-seat").model.title == "Bay window"


def scans(*names):
    face = {"pattern": "picture", "repeat": "30 mm"}
    papers = [
        {"id": f"scan-{n}", "title": "Scan", "size": ["12", "12"], "front": {**face, "picture": name}}
        for n, name in enumerate(names)
    ]
    return json.dumps({**PAPERS, "papers": papers}).encode()


def grey(value):
    return encode_png(np.full((8, 8, 3), value, dtype=np.uint8))


def test_pictures_of_papers_have_revisions_too(store):
    made = store.documents.create(
        "paper-sets", scans("rope.png"), "ann", name="scans", pictures={"rope.png": grey(90)}
    ).document
    assert store.documents.picture(made, "rope.png") == grey(90)
    assert store.readings.of(made).model.papers[0].front.picture is not None
    changed = store.documents.put_pictures("scans", {"rope.png": grey(200)}, "ann", expected=1)
    assert (changed.revision, store.documents.picture(changed, "rope.png")) == (2, grey(200))
    back = store.documents.restore("paper-sets", "scans", 1, "ann", expected=2)
    assert store.documents.picture(back, "rope.png") == grey(90)
    with pytest.raises(UnreadablePicture):
        store.documents.picture(back, "sail.png")


def test_pictures_of_a_draft_come_one_by_one_and_all_of_them_before_it_is_published(store):
    made = store.documents.create("paper-sets", scans("rope.png", "sail.png"), "ann", name="scans").document
    assert store.readings.of(made).is_sound
    one = store.documents.put_pictures("scans", {"rope.png": grey(1)}, "ann", expected=1)
    assert [bool(paper.front.picture) for paper in store.readings.of(one).model.papers] == [True, False]
    with pytest.raises(InvalidDocument) as refused:
        store.publishing.publish("paper-sets", "scans", "ann", expected=2)
    errors = [each for each in refused.value.findings if each.severity is Severity.ERROR]
    assert [(each.code, each.where) for each in errors] == [("picture-missing", "/papers/1/front/picture")]
    store.documents.put_pictures("scans", {"sail.png": grey(2)}, "ann", expected=2)
    store.publishing.publish("paper-sets", "scans", "ann", expected=3)
    assert store.shelves.pictures("scans")("sail.png") == grey(2)
    assert all(paper.front.picture for paper in store.shelves.paper_set("scans").papers)


def test_a_picture_is_taken_away_unless_readers_would_miss_it(store):
    pictures = {"rope.png": grey(1), "spare.png": grey(3)}
    store.documents.create("paper-sets", scans("rope.png"), "ann", name="scans", pictures=pictures)
    store.publishing.publish("paper-sets", "scans", "ann", expected=1)
    with pytest.raises(InvalidDocument):
        store.documents.delete_picture("scans", "rope.png", "ann", expected=2)
    with pytest.raises(UnknownName):
        store.documents.delete_picture("scans", "sail.png", "ann", expected=2)
    without = store.documents.delete_picture("scans", "spare.png", "ann", expected=2)
    assert (without.revision, list(without.pictures)) == (3, ["rope.png"])
    back = store.documents.restore("paper-sets", "scans", 1, "ann", expected=3)
    assert store.documents.picture(back, "spare.png") == grey(3)


@pytest.mark.parametrize("name", ["../up.png", "a/b.png", ".hidden", "", "a\0.png", "\ud800"])
def test_pictures_have_names_of_files(store, name):
    store.documents.create("paper-sets", scans("rope.png"), "ann", name="scans")
    with pytest.raises(UnreadablePicture):
        store.documents.put_pictures("scans", {name: grey(1)}, "ann", expected=1)


def test_any_text_may_stand_in_notes_and_keys(store):
    odd = "a\0b\ud800" + "x" * 999
    key = RequestKey(odd, odd, "f" * 64)
    made = store.documents.create("recipes", sound(), odd, note=odd, key=key).document
    assert store.documents.create("recipes", sound(), odd, key=key).is_replay
    store.publishing.refuse("recipes", made.id, odd, expected=1, note=odd)
    assert [each.note[:3] for each in store.history.revisions("recipes", made.id)] == ["ab?", "ab?"]
