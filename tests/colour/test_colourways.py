import json
from itertools import product

import pytest

from builder import PAPERS, sound, spoilt
from spreadwright.colour import choices, colourway_findings, colourways, count, first, named
from spreadwright.cutting import cut_sheets, pieces
from spreadwright.document import read_paper_set, read_recipe
from spreadwright.errors import NoColourway, UnknownName
from spreadwright.model import Kind, Side

RECIPE = read_recipe(sound()).model
SET = read_paper_set(json.dumps(PAPERS).encode(), "two").model


def test_colourways_are_every_assignment_that_the_kinds_allow():
    faces = [(paper.id, side) for paper in SET.papers for side in Side]

    def is_allowed(role, paper_id, side):
        face = SET.paper(paper_id).face(side)
        return role.kind in (Kind.ANY, face.kind) and (role.is_directional or not face.is_directional)

    expected = {
        picked
        for picked in product(faces, repeat=len(RECIPE.roles))
        if all(is_allowed(role, *choice) for role, choice in zip(RECIPE.roles, picked, strict=True))
    }
    found = list(colourways(RECIPE, SET))
    assert {tuple((c.paper.id, c.side) for _, c in each.choices) for each in found} == expected
    assert len(found) == len(expected) == count(RECIPE, SET)


def test_colourways_with_a_paper_for_each_role_come_first():
    distinct = [len({c.paper.id for _, c in each.choices}) == len(each.choices) for each in colourways(RECIPE, SET)]
    assert distinct == sorted(distinct, reverse=True) and distinct[0]


def test_no_listed_colourway_lays_a_one_way_print_on_its_side():
    def spoil(document):
        document["roles"]["print"]["directional"] = False
        document["placements"][6] |= {"turned": True, "face": "back"}

    recipe = read_recipe(spoilt(spoil)).model
    found = list(colourways(recipe, SET))
    assert found and all(not colourway_findings(recipe, each, pieces(cut_sheets(recipe))) for each in found)
    assert "reed~back" not in [choice.id for choice in choices(recipe, recipe.role("print"), SET)]


def test_turned_piece_of_another_role_with_a_like_name_does_not_matter():
    def spoil(document):
        document["sheets"][1]["columns"][0]["rows"][0]["piece"] = "block-left"
        document["placements"][4] |= {"piece": "block-left", "turned": True}
        document["photos"].pop(0)

    recipe = read_recipe(spoilt(spoil)).model
    assert "reed" in [choice.id for choice in choices(recipe, recipe.role("print"), SET)]


def test_ids_are_stable_and_lead_back():
    for each in colourways(RECIPE, SET):
        assert named(RECIPE, SET, each.id) == each
    assert first(RECIPE, SET).id == "two.fog.slate.rope"
    assert len({each.id for each in colourways(RECIPE, SET)}) == count(RECIPE, SET)


def test_adding_a_paper_keeps_the_ids_there_were():
    more = json.loads(json.dumps(PAPERS))
    more["papers"].insert(0, PAPERS["papers"][0] | {"id": "mist"})
    grown = read_paper_set(json.dumps(more).encode(), "two").model
    assert {c.id for c in colourways(RECIPE, SET)} < {c.id for c in colourways(RECIPE, grown)}


def test_one_way_print_only_fills_a_directional_role():
    upright = read_recipe(spoilt(lambda d: d["roles"]["print"].update(directional=False))).model
    assert "reed" not in [choice.id for choice in choices(upright, upright.role("print"), SET)]
    assert "reed" in [choice.id for choice in choices(RECIPE, RECIPE.role("print"), SET)]
    assert "reed~back" in [choice.id for choice in choices(upright, upright.role("print"), SET)]


@pytest.mark.parametrize(
    ("spoil", "reason"),
    [
        (lambda d: d["papers"].__delitem__(slice(2, 4)), "no patterned face"),
        (lambda d: d["papers"].__delitem__(slice(0, 4)) or d["papers"].append(_one_way()), "no plain face"),
        (lambda d: [p.update(size=["6", "6"]) for p in d["papers"]], "another size"),
    ],
)
def test_set_without_a_fitting_paper_says_why(spoil, reason):
    with pytest.raises(NoColourway, match=reason):
        next(colourways(RECIPE, read_paper_set(spoilt(spoil, PAPERS), "two").model))


def _one_way():
    face = {"pattern": "leaf", "colours": ["#ffffff"], "directional": True}
    return {"id": "one-way", "title": "One way", "size": ["12", "12"], "front": face, "back": face}


@pytest.mark.parametrize(
    "name",
    [
        "two",
        "two.fog",
        "two.fog.slate.ropes",
        "two.fog.slate.rope~front",
        "two.fog.slate.rope~",
        "three.fog.slate.rope",
        "",
    ],
)
def test_id_that_names_nothing_is_refused(name):
    with pytest.raises(UnknownName):
        named(RECIPE, SET, name)
