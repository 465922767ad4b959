import json

import pytest

from builder import PAPERS, sound, spoilt
from spreadwright.errors import InvalidDocument, UnknownName
from spreadwright.lengths import Unit
from spreadwright.store import Collection


@pytest.fixture
def folder(tmp_path):
    for name in ("paper-sets", "benches"):
        (tmp_path / name).mkdir()
    (tmp_path / "window-seat.json").write_bytes(sound())
    (tmp_path / "attic.json").write_bytes(sound())
    (tmp_path / "notes.txt").write_text("not a recipe")
    (tmp_path / "paper-sets" / "two.json").write_text(json.dumps(PAPERS))
    return tmp_path


def test_documents_are_known_by_the_names_of_their_files(folder):
    collection = Collection(folder)
    assert list(collection.recipes) == ["attic", "window-seat"]
    assert collection.recipe("attic").model.id == "attic"
    assert collection.paper_set("two").title == "Two and two"


def test_folder_without_benches_has_those_that_ship(folder):
    collection = Collection(folder)
    assert list(collection.benches) == ["bench-inch", "bench-inch-falling", "bench-metric"]
    own = (Collection().folder / "benches" / "bench-metric.json").read_bytes()
    (folder / "benches" / "bench-inch.json").write_bytes(own)
    assert Collection(folder).bench("bench-inch").unit is Unit.MILLIMETRE


@pytest.mark.parametrize(("unit", "bench"), [("in", "bench-inch"), ("cm", "bench-metric"), ("mm", "bench-metric")])
def test_bench_suits_the_unit_when_none_is_named(unit, bench):
    assert Collection().bench(unit=Unit(unit)).id == bench


def test_documents_are_kept_as_they_lie(folder):
    assert Collection(folder).recipe("attic").data == (folder / "attic.json").read_bytes()


@pytest.mark.parametrize("name", ["atic", "", "../attic", "attic.json", "two"])
def test_name_of_nothing_is_refused(folder, name):
    with pytest.raises(UnknownName):
        Collection(folder).recipe(name)


def test_faulty_paper_set_is_named_with_its_findings(folder):
    (folder / "paper-sets" / "bad.json").write_bytes(spoilt(lambda d: d["papers"][0].pop("front"), PAPERS))
    with pytest.raises(InvalidDocument) as refusal:
        Collection(folder).paper_set("bad")
    assert [finding.code for finding in refusal.value.findings] == ["missing-member"]


def test_unreadable_file_is_kept_with_its_reason_and_hides_no_other(folder):
    (folder / "broken.json").write_bytes(b"{")
    (folder / "dangling.json").symlink_to(folder / "nothing.json")
    recipes = Collection(folder).recipes
    assert list(recipes) == ["attic", "broken", "dangling", "window-seat"]
    for name, words in (("broken", "no JSON"), ("dangling", "No such file")):
        (finding,) = recipes[name].findings
        assert finding.code == "unreadable" and words in finding.message
    assert recipes["attic"].is_sound


def test_names_of_files_become_fit_for_addresses(folder):
    for name in ("Low Tide.v2.json", "low-tide-v2.json", "#.json"):
        (folder / name).write_bytes(sound())
    assert list(Collection(folder).recipes) == ["attic", "document", "low-tide-v2", "low-tide-v2-2", "window-seat"]


def test_empty_folder_is_an_empty_collection(tmp_path):
    assert Collection(tmp_path).recipes == Collection(tmp_path).paper_sets == {}


def test_shipped_collection_is_found_without_being_named():
    assert Collection().recipes and Collection().paper_sets and "bench-inch" in Collection().benches
