import json

import pytest

from builder import PAPERS, SOUND, sound, spoilt
from spreadwright.store import Collection
from spreadwright.store.importing import IMPORTER, import_collection
from spreadwright.store.values import State
from spreadwright.store.wanted import Wanted


@pytest.fixture
def folder(tmp_path):
    root = tmp_path / "documents"
    (root / "paper-sets").mkdir(parents=True)
    (root / "window-seat.json").write_bytes(sound())
    (root / "paper-sets" / "two-and-two.json").write_text(json.dumps(PAPERS))
    return root


def test_the_shipped_collection_is_imported_once(store):
    collection = Collection()
    first = import_collection(store.database, collection)
    again = import_collection(store.database, collection)
    assert again.same == first.added and not first.refused
    assert not (again.added or again.changed or again.refused)
    for kind, there in (
        ("recipes", collection.recipes),
        ("paper-sets", collection.paper_sets),
        ("benches", collection.benches),
    ):
        page = store.listing.page(Wanted(kind, limit=100))
        assert [document.id for document in page.documents] == list(there)
        assert all(document.content == there[document.id].document for document in page.documents)


def test_shelves_find_what_a_collection_finds(store):
    collection = Collection()
    import_collection(store.database, collection)
    assert store.shelves.sound_paper_sets() == collection.sound_paper_sets()
    assert store.shelves.bench() == collection.bench()
    assert store.shelves.recipe("rain-until-four").model == collection.recipe("rain-until-four").model
    assert store.shelves.pictures("potting-bench")("chips.png") == collection.pictures("potting-bench")("chips.png")


def test_what_changes_in_the_folder_is_a_revision(store, folder):
    import_collection(store.database, Collection(folder))
    (folder / "window-seat.json").write_text(json.dumps({**SOUND, "title": "Bay window"}))
    assert import_collection(store.database, Collection(folder)).changed == ("recipes/window-seat",)
    found = store.documents.get("recipes", "window-seat")
    assert (found.revision, found.facts.title, found.head.owner) == (2, "Bay window", IMPORTER)


def test_what_was_changed_or_deleted_here_is_kept(store, folder):
    import_collection(store.database, Collection(folder))
    mine = json.dumps({**SOUND, "title": "Mine"}).encode()
    store.documents.change("recipes", "window-seat", mine, "ann", expected=1)
    store.documents.delete("paper-sets", "two-and-two", "ann", expected=1)
    (folder / "window-seat.json").write_text(json.dumps({**SOUND, "title": "Theirs"}))
    again = import_collection(store.database, Collection(folder))
    assert again.kept == ("recipes/window-seat",)
    assert store.documents.get("recipes", "window-seat").facts.title == "Mine"
    assert len(store.history.revisions("paper-sets", "two-and-two")) == 2


def test_broken_and_torn_files_hide_no_other(store, folder):
    (folder / "broken.json").write_bytes(spoilt(lambda recipe: recipe["placements"].pop()))
    (folder / "torn.json").write_bytes(sound()[:100])
    (folder / "odd.json").write_bytes(spoilt(lambda recipe: recipe.update(colour="red")))
    import_collection(store.database, Collection(folder))
    page = store.listing.page(Wanted("recipes"))
    assert [document.id for document in page.documents] == ["broken", "odd", "torn", "window-seat"]
    assert [finding.code for finding in store.readings.latest("recipes", "torn").findings] == ["unreadable"]
    (folder / "torn.json").write_bytes(sound())
    assert import_collection(store.database, Collection(folder)).changed == ("recipes/torn",)
    assert store.readings.latest("recipes", "torn").is_sound


def test_children_are_imported_after_their_parents(store, folder):
    child = {**SOUND, "derived_from": ["window-seat"]}
    (folder / "a-child.json").write_text(json.dumps(child))
    (folder / "b-child.json").write_text(json.dumps({**SOUND, "derived_from": ["a-child"]}))
    (folder / "orphan.json").write_text(json.dumps({**SOUND, "derived_from": ["nobody"]}))
    done = import_collection(store.database, Collection(folder))
    assert done.refused == ("recipes/orphan",)
    assert [head.id for head in store.lineage.children("recipes", "window-seat")] == ["a-child"]
    assert store.documents.head("recipes", "b-child").state is State.PUBLISHED
