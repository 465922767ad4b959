"""The shipped collection, over HTTP."""

import time

import pytest

from spreadwright.rest import create_app
from spreadwright.store import Collection

CLIENT = create_app(Collection()).test_client()
RECIPES = [each["id"] for each in CLIENT.get("/recipes?limit=100").json["recipes"]]
SETS = [each["id"] for each in CLIENT.get("/paper-sets?limit=100").json["paper_sets"]]


@pytest.mark.parametrize("recipe", RECIPES)
@pytest.mark.parametrize("view", ["", "/preview", "/preview.png?width=64", "/placement.svg", "/cuts.svg", "/cuts.pdf"])
def test_every_recipe_answers_in_every_form(recipe, view):
    response = CLIENT.get(f"/recipes/{recipe}{view}")
    assert response.status_code == 200 and response.data


@pytest.mark.parametrize("bench", ["bench-inch", "bench-inch-falling"])
@pytest.mark.parametrize("recipe", RECIPES)
def test_every_recipe_is_fine_on_inch_benches(recipe, bench):
    report = CLIENT.post(f"/check?bench={bench}", data=CLIENT.get(f"/recipes/{recipe}.json").data).json
    assert report["fine"], report["findings"]
    assert CLIENT.get(f"/recipes/{recipe}/cuts?bench={bench}").json["steps"]


@pytest.mark.parametrize("papers", SETS)
def test_every_paper_has_swatches(papers):
    for paper in CLIENT.get(f"/paper-sets/{papers}").json["papers"]:
        for side in ("", "~back"):
            assert CLIENT.get(f"/paper-sets/{papers}/swatches/{paper['id']}{side}.svg").status_code == 200


@pytest.mark.parametrize("recipe", RECIPES)
def test_every_recipe_shows_its_last_colourway_within_a_second(recipe):
    path = f"/recipes/{recipe}/colourways/all"
    count = CLIENT.get(path).json["count"]
    began = time.process_time()
    assert len(CLIENT.get(f"{path}?start={count - 1}").json["colourways"]) == 1
    assert time.process_time() - began < 1
