"""What a recipe's page is told of papers is what the tasks say of them."""

import json
import re
from itertools import product
from xml.etree.ElementTree import fromstring

import numpy as np
import pytest

from builder import PAPERS, SOUND, spoilt
from gallery.exchanged import SLATE, write_exchanged
from spreadwright.colour.colourways import choices
from spreadwright.colour.legible import Sight, sight_matrix
from spreadwright.document import read_paper_set, read_recipe
from spreadwright.drawing.spread import spread_picture
from spreadwright.gallery.recipe.exchange import exchange, face_files
from spreadwright.gallery.recipe.exchange_data import exchange_data, exchange_script
from spreadwright.gallery.recipe.left_out import left_out
from spreadwright.model import Choice, Colourway, Side
from spreadwright.store import Collection
from spreadwright.tasks import chosen_colourway
from spreadwright.tasks.apart import Writing, faces_of, writing_on
from spreadwright.tasks.layout import layout
from spreadwright.tasks.ranking import propose
from spreadwright.words import speaking

WINDOW_SEAT = read_recipe(json.dumps(SOUND).encode(), "window-seat")


@pytest.fixture(scope="module")
def collection(tmp_path_factory):
    return Collection(write_exchanged(tmp_path_factory.mktemp("exchanged")))


def shown(collection, recipe_id):
    reading = WINDOW_SEAT if recipe_id == "window-seat" else collection.recipe(recipe_id)
    sets = [collection.paper_set(name) for name in ("two", "wharf")]
    found = exchange(reading, tuple(propose(reading.model, [papers], 6) for papers in sets))
    assert found is not None
    return found


@pytest.mark.parametrize("recipe_id", ["window-seat", "turned"])
def test_every_colourway_that_is_offered_is_one_of_the_recipe(collection, recipe_id):
    found = shown(collection, recipe_id)
    for offer, told in zip(found.offers, exchange_data(found)["sets"], strict=True):
        faces, recipe = faces_of(offer.papers), found.recipe
        roles = [role.id for role in recipe.roles]
        for ranked, best in zip(offer.proposal.colourways, told["best"], strict=True):
            picked = tuple(zip(roles, (faces[number] for number in best["faces"]), strict=True))
            colourway = Colourway(offer.papers.id, picked)
            assert colourway == ranked.colourway == chosen_colourway(recipe, offer.papers, colourway.id)
            assert best["why"] == offer.proposal.reason(ranked)
        assert told["best"][0]["faces"] == [faces.index(choice) for _, choice in offer.best.choices]


@pytest.mark.parametrize("recipe_id", ["window-seat", "turned"])
def test_by_hand_only_faces_that_fit_are_offered_and_any_of_them_may_be_combined(collection, recipe_id):
    found = shown(collection, recipe_id)
    for offer, told in zip(found.offers, exchange_data(found)["sets"], strict=True):
        faces = faces_of(offer.papers)
        offered = [[faces[number] for number in numbers] for numbers in told["fitting"]]
        assert offered == [list(choices(found.recipe, role, offer.papers)) for role in found.recipe.roles]
        for picked in product(*offered):
            colourway = Colourway(
                offer.papers.id, tuple(zip([role.id for role in found.recipe.roles], picked, strict=True))
            )
            chosen_colourway(found.recipe, offer.papers, colourway.id)


def test_faces_are_told_as_they_are_drawn(collection):
    """Edge and pencil, in a colourway for every face."""
    found = shown(collection, "turned")
    data = exchange_data(found)
    for offer, told in zip(found.offers, data["sets"], strict=True):
        fronts = [choice for choice in faces_of(offer.papers) if choice.paper.size == found.recipe.spread.size]
        for choice in fronts:
            drawn = drawing(found.recipe, offer.papers.id, choice)
            for side in Side:
                face = faces_told(told)[faces_of(offer.papers).index(choice.lying(side))]
                edge, pencil = face.get("edge", data["edge"]), data["pencils"][face.get("pencil", 0)]
                assert {tuple(each) for each in drawn["edges"][side]} == {(edge[0], edge[2]), (edge[1], 0.55)}
                assert set(drawn["pencils"][side]) <= {pencil}


def faces_told(told):
    """By their numbers, as the page counts them."""
    return [face | {"paper": paper["id"]} for paper in told["papers"] for face in paper["faces"]]


def drawing(recipe, set_id, choice):
    colourway = Colourway(set_id, tuple((role.id, choice) for role in recipe.roles))
    root = spread_picture(recipe, *layout(recipe), colourway).root
    found = {"edges": {side: [] for side in Side}, "pencils": {side: [] for side in Side}}
    for group in root.iter("g"):
        paths = group.findall("path")
        if group.get("data-piece"):
            lines = [path for path in paths if path.get("stroke-width") == "0.25"]
            found["edges"][group.get("data-side")] += [
                (each.get("stroke"), float(each.get("opacity"))) for each in lines
            ]
        if group.get("data-caption"):
            found["pencils"][group.get("data-side")] += [path.get("stroke") for path in paths]
    return found


def test_every_picture_that_may_be_shown_is_made(collection):
    found = shown(collection, "window-seat")
    for offer, told in zip(found.offers, exchange_data(found)["sets"], strict=True):
        files = face_files(offer.papers)
        named = {f"pictures/{told['id']}/face-{paper['id']}-{side}.svg" for paper in told["papers"] for side in Side}
        assert set(files) == named
        for data in files.values():
            assert fromstring(data).get("viewBox", "").startswith("0 0 ")
    assert {part.picture for part in found.parts} <= set(face_files(found.first.papers))


def test_the_spread_leads_to_its_pictures_and_says_what_is_seen(collection):
    found = shown(collection, "turned")
    spread = str(found.spread("../../pictures & more"))
    assert set(re.findall(r'href="([^#][^"]*)/[^/"]*/face-', spread)) == {"../../pictures &amp; more"}
    assert all(name.startswith("spread-") for name in re.findall(r' id="([^"]*)"', spread))
    label = fromstring(spread).get("aria-label")
    assert label == f"Two pages side by side, laid in {', '.join(part.title for part in found.parts)}, with 3 photos."


def test_words_are_those_of_the_language_that_is_spoken(collection):
    found = shown(collection, "window-seat")
    with speaking("de"):
        data = exchange_data(found)
    assert data["sets"][0]["papers"][0]["title"] == "Nebel"
    assert data["back"] == "{paper} (Rückseite)"


def test_sights_are_shown_by_the_numbers_that_papers_are_judged_by(collection):
    views = shown(collection, "window-seat").sights
    assert [view.sight for view in views] == list(Sight)
    for view in views:
        matrix = np.array([float(number) for number in view.matrix.split()]).reshape(4, 5)
        assert np.allclose(matrix[:3, :3], sight_matrix(view.sight), atol=1e-6)
        assert matrix[:3, 3:].any() == False  # noqa: E712
        assert matrix[3].tolist() == [0, 0, 0, 1, 0]


def test_what_is_left_out_is_told_with_its_reason(collection):
    recipe = collection.recipe("turned").model
    told = [left_out(recipe, role, collection.paper_set("wharf")) for role in recipe.roles]
    few, small = f"there are too few sheets: {SLATE} and {SLATE} (back).", "the sheets have another size: Chart"
    assert told[0] == f"Not offered, since {few} Not offered, since {small} and Chart (back)."
    assert told[1] == f"Not offered, since {small} (back)."
    assert "since one-way prints do not suit this part: Reed." in told[2]
    assert "since some pieces are turned, and a one-way print would lie on its side: Reed (back)." in told[2]


def test_a_role_that_takes_no_one_way_print_says_so():
    reading = read_recipe(spoilt(lambda recipe: recipe["roles"]["print"].pop("directional")), "strict")
    papers = read_paper_set(spoilt(lambda _: None, PAPERS), "two").model
    assert left_out(reading.model, reading.model.roles[2], papers) == (
        "Not offered, since one-way prints do not suit this part: Reed."
    )


def test_names_in_the_address_do_not_clash(collection):
    keys = [role["key"] for role in exchange_data(shown(collection, "turned"))["roles"]]
    assert keys == ["background", "paper-of-in", "print"]


def test_sheets_at_hand_are_told_where_they_are_counted(collection):
    two, wharf = exchange_data(shown(collection, "window-seat"))["sets"]
    assert "at_hand" not in two
    assert wharf["at_hand"] == {"slate": 1}


def test_writing_is_dark_on_light_paper_white_on_dark_and_lost_in_a_print(collection):
    papers = collection.paper_set("two")
    found = dict(zip(faces_of(papers), writing_on(papers), strict=True))
    by_id = {choice.id: writing for choice, writing in found.items()}
    assert (by_id["fog"], by_id["slate"], by_id["rope"]) == (Writing.DARK, Writing.WHITE, Writing.LOST)
    assert by_id["slate~back"] is Writing.DARK


def test_without_a_fitting_set_there_is_nothing_to_exchange():
    assert exchange(WINDOW_SEAT, ()) is None


def test_choices_are_numbered_so_that_the_other_side_is_the_neighbour(collection):
    faces = faces_of(collection.paper_set("two"))
    for number, choice in enumerate(faces):
        assert faces[number ^ 1] == Choice(choice.paper, choice.side.other)


def test_pictures_of_papers_are_no_finer_than_screens_show():
    files = face_files(Collection().paper_set("potting-bench"))
    printed = {path: data for path, data in files.items() if b"<image" in data}
    assert len(printed) == 6
    for data in printed.values():
        assert b"data:image/webp" in data
        assert len(data) < 40_000


def test_no_title_ends_the_script_that_holds_it(collection):
    reading = read_recipe(spoilt(lambda recipe: recipe["roles"]["print"].update(title="</script><b>")), "hostile")
    found = exchange(reading, (propose(reading.model, [collection.paper_set("two")], 6),))
    assert found is not None
    script = exchange_script(found)
    assert "<" not in script
    assert json.loads(script) == json.loads(json.dumps(exchange_data(found)))
