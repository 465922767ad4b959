"""What the page of a recipe gives to search engines and to take away."""

import csv
import io
import json
import re
import zipfile
from pathlib import Path

import pytest

from gallery.built import HOSTILE
from spreadwright.tasks import cut, place


def linked_data(page: Path) -> dict:
    """The JSON-LD of a page, as a browser cuts it out."""
    text = page.read_text(encoding="utf-8")
    (found,) = re.findall(r'<script type="application/ld\+json">(.*?)</script', text, re.DOTALL)
    return json.loads(found)


@pytest.fixture(scope="module")
def told(site):
    return linked_data(site / "recipes/window-seat/index.html")


def test_how_to_names_every_step_in_order(told, collection):
    reading = collection.recipe("window-seat")
    bench = collection.bench(unit=reading.model.unit)
    cutting, placing = told["step"]
    assert (told["@context"], told["@type"]) == ("https://schema.org", "HowTo")
    assert [step["position"] for step in cutting["itemListElement"]] == list(
        range(1, len(cut(reading, bench).steps) + 1)
    )
    moves = [step.sentence for step in place(reading, bench).steps]
    assert [step["text"] for step in placing["itemListElement"]] == moves


def test_how_to_counts_sheets_and_photos(told, collection):
    recipe = collection.recipe("window-seat").model
    *papers, photos = told["supply"]
    assert sum(paper["requiredQuantity"] for paper in papers) == sum(sheet.times for sheet in recipe.sheets)
    assert photos["requiredQuantity"] == len(recipe.photos)


def test_titles_cannot_leave_the_linked_data(site):
    assert linked_data(site / "recipes/one-page/index.html")["name"] == HOSTILE


def test_each_language_tells_its_own_steps(site):
    said = {linked_data(site / home / "recipes/window-seat/index.html")["step"][0]["name"] for home in ("", "de", "fr")}
    assert len(said) == 3


def test_everything_that_a_class_needs_can_be_taken_away(site):
    folder = site / "downloads/window-seat"
    assert sorted(file.name.removeprefix("window-seat") for file in folder.iterdir()) == [
        "-booklet.pdf",
        "-cut-paths.zip",
        "-cut-sheets.pdf",
        "-pieces.csv",
        "-placement.pdf",
        "-spread.pdf",
        "-spread.png",
        "-spread.svg",
        "-templates.pdf",
        ".json",
    ]
    assert all(file.read_bytes()[:5] == b"%PDF-" for file in folder.glob("*.pdf"))
    with zipfile.ZipFile(folder / "window-seat-cut-paths.zip") as archive:
        assert archive.testzip() is None
        assert {name.rpartition(".")[2] for name in archive.namelist()} == {"svg", "dxf", "csv"}
    rows = list(csv.DictReader(io.StringIO((folder / "window-seat-pieces.csv").read_text())))
    assert len(rows) > 1
