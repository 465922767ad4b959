import json

import pytest

from builder import PAPERS, sound, spoilt
from spreadwright.colour import colourways, count
from spreadwright.document import read_paper_set, read_recipe
from spreadwright.errors import NoColourway, UnknownName
from spreadwright.store import Collection
from spreadwright.tasks import chosen_colourway
from spreadwright.tasks.ranking import propose, seen
from spreadwright.tasks.ranking_answers import ranking_answer

RECIPE = read_recipe(sound()).model


def papers(spoil=lambda document: None, set_id="two"):
    return read_paper_set(spoilt(spoil, PAPERS), set_id).model


def at_hand(**sheets):
    def spoil(document):
        for paper in document["papers"]:
            paper["sheets"] = sheets.get(paper["id"], 9)

    return papers(spoil)


def test_the_best_stands_for_its_set():
    found = propose(RECIPE, [papers()], 4)
    assert chosen_colourway(RECIPE, papers()) == found.colourways[0].colourway


def test_all_sets_compete():
    dull = papers(lambda d: [p["front"].update(colours=["#888888", "#8a8a8a"]) for p in d["papers"]], "dull")
    found = propose(RECIPE, [dull, papers()], 3)
    assert {each.colourway.set_id for each in found.colourways[:1]} == {"two"}
    assert found.count == sum(len(list(colourways(RECIPE, each))) for each in (dull, papers()))


def test_sets_that_fill_no_role_are_left_out_and_told_about():
    plain = papers(lambda d: d["papers"].__delitem__(slice(2, 4)), "plain")
    found = propose(RECIPE, [plain, papers()], 3)
    assert [each.id for each in found.sets] == ["two"]
    assert [(f.code, f.where) for f in found.findings] == [("no-paper-for-role", "/roles/print")]
    with pytest.raises(NoColourway, match="no patterned face"):
        propose(RECIPE, [plain], 3)
    with pytest.raises(UnknownName):
        propose(RECIPE, [], 3)


def test_few_papers_repeat_and_are_told_about():
    few = papers(lambda d: d["papers"].__delitem__(slice(1, 3)))
    found = propose(RECIPE, [few], 3)
    assert [f.code for f in found.findings] == ["fewer-papers-than-roles"]
    assert all("is used for" in found.reason(each) for each in found.colourways)


def test_sheets_at_hand_are_heeded():
    plenty = propose(RECIPE, [papers()], 1).colourways[0].colourway
    base = plenty.choice("background").paper.id
    scarce = propose(RECIPE, [at_hand(**{base: 1})], 3)
    assert not scarce.lacks_sheets
    assert all(each.colourway.choice("background").paper.id != base for each in scarce.colourways)


def test_where_no_sheets_suffice_they_are_not_heeded():
    found = propose(RECIPE, [at_hand(fog=2, slate=0, rope=1, reed=0)], 2)
    assert found.lacks_sheets and len(found.colourways) == 2
    assert ranking_answer(found)["lacks_sheets"]


def test_answer_says_what_counted_and_why():
    answer = ranking_answer(propose(RECIPE, [papers()], 3))
    assert json.loads(json.dumps(answer)) == answer
    assert sum(answer["weights"].values()) == pytest.approx(100)
    assert [each["rank"] for each in answer["colourways"]] == [1, 2, 3]
    assert all(each["reason"] and each["parts"].keys() == answer["weights"].keys() for each in answer["colourways"])


def test_a_piece_that_is_placed_back_up_shows_its_reverse():
    turned = read_recipe(spoilt(lambda d: d["placements"][4].update(face="back"))).model
    areas = {(surface.role, surface.side.value) for surface in seen(turned).areas}
    assert {("plain", "back"), ("plain", "front")} <= areas


@pytest.mark.parametrize("recipe_id", Collection().recipes)
def test_best_of_every_recipe_can_be_written_on(recipe_id):
    recipe = Collection().recipe(recipe_id).model
    fitting = [each for each in Collection().sound_paper_sets() if count(recipe, each)]
    assert fitting
    for each in fitting:
        assert propose(recipe, [each], 1).colourways[0].parts.get("captions", 100) > 50
