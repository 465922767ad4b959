from io import BytesIO

import numpy as np
import pytest
from PIL import Image

from spreadwright.gallery import Site
from spreadwright.gallery.make import made_recipe, recipe_orders
from spreadwright.gallery.overview.finding import found_by
from spreadwright.gallery.overview.page_size import PageSize
from spreadwright.gallery.recipe.card import card_file
from spreadwright.gallery.recipe.job import RecipeJob, recipe_job
from spreadwright.gallery.recipe.thumbnails import thumbnails
from spreadwright.gallery.work.documents import Documents, collected


@pytest.fixture(scope="module")
def job(collection) -> RecipeJob:
    documents = collected(collection)
    return recipe_job(next(each for each in documents.recipes if each.id == "window-seat"), documents)


@pytest.fixture(scope="module")
def made(job):
    return thumbnails(job)


def opened(data: bytes) -> Image.Image:
    return Image.open(BytesIO(data))


def test_every_size_that_is_stated_is_there(made):
    (shown,), files = made
    assert tuple(files) == shown.paths
    assert [opened(files[path]).width for path in shown.paths] == list(shown.widths_px)
    assert opened(files[shown.paths[-1]]).height == shown.height_px


def test_ground_shows_through_and_pages_do_not(made):
    (shown,), files = made
    opacity = np.asarray(opened(files[shown.paths[-1]]))[:, :, 3]
    bleed = round(shown.widths_px[-1] * shown.bleed_percent / (100 + 2 * shown.bleed_percent))
    pages = opacity[bleed + 2 : -bleed - 2, bleed + 2 : -bleed - 2]
    assert pages.min() > 250 and opacity[0].max() < 10 and opacity[:, 0].max() < 10
    assert abs(pages.shape[1] / pages.shape[0] - shown.shape) < 0.02


def test_thumbnails_are_light_and_the_same_each_time(job, made):
    _shown, files = made
    assert max(map(len, files.values())) < 45_000
    assert thumbnails(job) == made


def test_dots_show_papers_of_the_colourway(job, made):
    (shown,), _files = made
    (_papers, colourway), *_ = job.colourways
    colours = {colour for _role, choice in colourway.choices for colour in choice.face.colours}
    assert set(shown.colours) <= colours and shown.colours[0] != shown.colours[1]


@pytest.fixture(scope="module")
def unfilled(collection):
    """A recipe for which there are no papers: its picture, its files, its page."""
    documents = collected(collection)
    recipe = next(each for each in documents.recipes if each.id == "window-seat")
    (order,) = recipe_orders(Documents((recipe,), (), documents.benches), Site())
    made = made_recipe(order)
    return made.pictures.told, made.pictures.files, made.pages


def test_a_recipe_that_no_paper_set_fills_is_seen_in_greys(unfilled):
    pictures, files, _pages = unfilled
    assert pictures.thumbnails == () and pictures.in_greys.set_id == ""
    assert set(pictures.in_greys.paths) <= set(files) and "pictures/window-seat/card.png" in files
    for colour in pictures.in_greys.colours:
        red, green, blue = bytes.fromhex(colour[1:])
        assert red - blue < 16 and red >= green >= blue


def test_its_page_and_the_index_show_them(unfilled):
    pictures, _files, pages = unfilled
    page = pages.files["recipes/window-seat/index.html"].decode()
    assert f'<img src="../../{pictures.in_greys.paths[-1]}"' in page and "shown in plain greys" in page
    (facts, *_others) = pages.told
    assert facts.thumbnail_in() == pictures.in_greys and facts.thumbnail_in("two") is None
    assert "in" not in found_by([facts])[0]["values"]


def test_card_has_the_size_that_pages_expect(job):
    ((path, data),) = card_file(job).items()
    assert path == "pictures/window-seat/card.png" and opened(data).size == (1200, 630) and len(data) < 150_000


@pytest.mark.parametrize(
    ("size", "said"),
    [
        (PageSize(8128 * 12, 8128 * 12, "in"), "12 × 12 in (305 × 305 mm)"),
        (PageSize(8128 * 17 // 2, 8128 * 11, "in"), "8 1/2 × 11 in (216 × 279 mm)"),
        (PageSize(210 * 320, 297 * 320, "mm"), "210 × 297 mm (8 1/4 × 11 11/16 in)"),
    ],
)
def test_sizes_are_told_in_both_units(size, said):
    assert size.both == said
