"""The papers of a recipe's page exchanged as a person would, in a real Chromium."""

import re
from io import BytesIO
from pathlib import Path

import numpy as np
import pytest
from PIL import Image

from gallery.browser.chromium import served
from gallery.exchanged import SLATE, write_exchanged
from spreadwright.gallery import build
from spreadwright.gallery.site import Site
from spreadwright.store import Collection
from spreadwright.tasks import chosen_colourway
from spreadwright.tasks.draw import preview_svg

pytestmark = pytest.mark.browser

PAGE = "recipes/turned/index.html"


@pytest.fixture(scope="module")
def collection(tmp_path_factory) -> Collection:
    return Collection(write_exchanged(tmp_path_factory.mktemp("exchanged")))


@pytest.fixture(scope="module")
def built(collection, tmp_path_factory) -> Path:
    output = tmp_path_factory.mktemp("exchange") / "gallery"
    build(collection, output, site=Site(("en",)), processes=1)
    return output


@pytest.fixture(scope="module")
def root(built):
    with served(built) as address:
        yield address


@pytest.fixture
def recipe(page, root):
    page.goto(f"{root}/{PAGE}")
    page.wait_for_load_state("networkidle")
    return page


def now(page) -> str:
    return page.locator(".now").inner_text()


def choose(page, group: str, number: int) -> None:
    """As by a click on a label, and wait until it is shown."""
    before = now(page)
    page.locator(f"input[name={group}]").nth(number).check()
    page.wait_for_function("before => document.querySelector('.now').textContent !== before", arg=before)


def papers(page) -> list[str]:
    """What lies on each piece, by the name of its picture."""
    found = page.eval_on_selector_all(
        "[data-spread] image", "images => images.map(image => image.getAttribute('href'))"
    )
    return [name.rpartition("pictures/")[2] for name in found]


def seen(page) -> np.ndarray:
    page.add_style_tag(content=".opening { position: static !important; }")
    page.wait_for_load_state("networkidle")
    shot = page.locator("[data-spread] > svg").screenshot()
    return np.asarray(Image.open(BytesIO(shot)).convert("RGB")).astype(int)


def test_any_colourway_looks_as_it_is_drawn_alone(recipe, collection):
    """Turned pieces, backs that are up and one-way prints among them: but for the pixels of edges nothing differs."""
    still = recipe.context.new_page()
    reading, pictures = collection.recipe("turned"), {}
    for set_id, which in (("two", 0), ("two", REED), ("wharf", 1), ("wharf", REED)):
        ids = recipe.evaluate(CHOSEN, [set_id, which])
        colourway = chosen_colourway(reading.model, collection.paper_set(set_id), ids)
        shown = seen(recipe)
        pictures[ids] = shown, alone(still, preview_svg(reading, colourway, is_on_table=False), recipe)
    still.close()
    assert len(pictures) == 4 and sum(".reed." in ids for ids in pictures) == 2
    apart = {ids: np.abs(shown - drawn).max(axis=2) for ids, (shown, drawn) in pictures.items()}
    assert {ids: each.mean() < 0.6 and (each > 60).mean() < 0.001 for ids, each in apart.items()} == dict.fromkeys(
        apart, True
    )
    (first, _), (_, second), *_ = pictures.values()
    assert np.abs(first - second).max(axis=2).mean() > 2


REED = [6, 1, 5]
"""A one-way print as the ground of both pages; by the numbers of faces."""
CHOSEN = """async ([set, number]) => {
  const told = (done) => document.addEventListener("spread:choice", (event) => done(event.detail.id), { once: true });
  const shown = new Promise(told);
  exchange.choose(set, number);
  return shown;
}"""


def alone(still, svg: bytes, page) -> np.ndarray:
    """A drawn spread on a page of its own, at the very place where the other lies."""
    box = page.locator("[data-spread] > svg").bounding_box()
    place = f"position:absolute;left:{box['x']}px;top:{box['y'] % 1}px;width:{box['width']}px;height:auto"
    ground = page.evaluate("getComputedStyle(document.body).backgroundColor")
    still.set_viewport_size(page.viewport_size)
    still.set_content(f"<style>body{{margin:0;background:{ground}}}svg{{{place}}}</style>{svg.decode()}")
    shot = still.locator("svg").screenshot()
    return np.asarray(Image.open(BytesIO(shot)).convert("RGB")).astype(int)


def test_a_paper_set_is_chosen_and_the_whole_spread_lies_in_it(recipe):
    assert {name.split("/")[0] for name in papers(recipe)} == {"two"}
    choose(recipe, "set", 1)
    assert {name.split("/")[0] for name in papers(recipe)} == {"wharf"}
    assert recipe.url.endswith("#in=wharf")
    assert now(recipe).startswith("Colourway 1 of ")
    assert recipe.locator("h2#papers").inner_text() == "In Wharf"
    assert recipe.locator("h2#papers a").get_attribute("href") == "../../paper-sets/wharf/index.html"
    assert "Wharf" not in recipe.locator("[data-spread] svg").get_attribute("aria-label")
    assert "laid in " in recipe.locator("[data-spread] svg").get_attribute("aria-label")


def test_another_of_the_best_colourways_is_chosen(recipe):
    before = papers(recipe)
    choose(recipe, "best", 1)
    assert papers(recipe) != before
    assert now(recipe).startswith("Colourway 2 of ")
    assert re.search(r"#.*in=two", recipe.url)
    recipe.locator("button.reset").click()
    recipe.wait_for_function("document.querySelector('.reset').hidden")
    assert papers(recipe) == before
    assert "#in" not in recipe.url


def test_papers_are_given_to_a_role_by_hand_with_the_keyboard_alone(recipe):
    part = recipe.locator(".parts button").nth(1)
    part.focus()
    recipe.keyboard.press("Enter")
    assert part.get_attribute("aria-expanded") == "true"
    offered = recipe.locator("input[name=face]")
    assert offered.count() == len(recipe.evaluate("exchange.data.sets[0].fitting[1]"))
    focused = "document.activeElement.closest('label').textContent.trim()"
    first, before = recipe.evaluate(focused), now(recipe)
    recipe.keyboard.press("ArrowDown")
    recipe.wait_for_function("before => document.querySelector('.now').textContent !== before", arg=before)
    second = recipe.evaluate(focused)
    assert second != first
    assert second.startswith(recipe.locator(".parts b").nth(1).inner_text())
    assert f", {recipe.locator('.parts b').nth(1).inner_text()}, " in now(recipe)
    recipe.keyboard.press("Escape")
    assert recipe.locator("#by-role").is_hidden()
    assert recipe.evaluate("document.activeElement.getAttribute('aria-expanded')") == "false"


def test_what_does_not_fit_is_not_offered_and_told(recipe):
    recipe.locator(".parts button").nth(2).click()
    assert "Reed" not in recipe.locator("#by-role .offered").inner_text()
    assert "one-way prints do not suit this part: Reed." in recipe.locator(".left-out").inner_text()


def test_pieces_that_lie_back_up_show_the_other_side(recipe):
    names = recipe.eval_on_selector_all(
        "[data-spread] [data-piece]", "pieces => pieces.map(piece => piece.dataset.piece)"
    )
    sides = {
        piece: name.removesuffix(".svg").rpartition("-")[2] for piece, name in zip(names, papers(recipe), strict=True)
    }
    assert {sides["block-2"], sides["block-1"]} == {"front", "back"}
    assert {sides["tile-1"], sides["tile-2"]} == {"front", "back"}


def test_the_address_holds_the_choice_and_back_undoes_it(recipe, root):
    first = papers(recipe)
    choose(recipe, "set", 1)
    choose(recipe, "best", 1)
    chosen, said = papers(recipe), now(recipe)
    recipe.reload()
    recipe.wait_for_function("said => document.querySelector('.now').textContent === said", arg=said)
    assert papers(recipe) == chosen
    assert recipe.locator("input[name=set]").nth(1).is_checked()
    assert recipe.locator("input[name=best]").nth(1).is_checked()
    for expected in ("Colourway 1 of", "Colourway 1 of"):
        recipe.go_back()
        recipe.wait_for_function("text => document.querySelector('.now').textContent.startsWith(text)", arg=expected)
    recipe.wait_for_function(
        "name => document.querySelector('[data-spread] image').getAttribute('href').endsWith(name)", arg=first[0]
    )
    assert papers(recipe) == first


def test_an_address_with_nonsense_shows_what_fits_best(page, root):
    page.goto(f"{root}/{PAGE}#in=nowhere&print=chart.front&background=chart.front&paper-of-in=%00&sight=x-ray")
    page.wait_for_load_state("networkidle")
    assert now(page).startswith("Colourway 1 of ")
    page.goto(f"{root}/{PAGE}#in=wharf&print=chart.front")
    page.wait_for_function("exchange.now().set.id === 'wharf'")
    assert now(page).startswith("Colourway 1 of ")


def test_everybody_is_told_of_the_choice(recipe):
    told = recipe.evaluate(
        """() => new Promise((done) => {
             document.addEventListener("spread:choice", (event) => done(event.detail), { once: true });
             document.querySelectorAll("input[name=set]")[1].click();
           })"""
    )
    assert told["set"] == "wharf"
    assert list(told["roles"]) == ["background", "in", "print"]
    assert told["id"] == ".".join(["wharf", *told["roles"].values()])


def test_papers_that_cannot_be_loaded_leave_the_spread_as_it_is(browser, root):
    context = browser.new_context()
    context.route("**/wharf/face-*", lambda route: route.abort())
    page = context.new_page()
    page.goto(f"{root}/{PAGE}")
    before = papers(page)
    page.locator("input[name=set]").nth(1).click()  # it falls back at once
    page.wait_for_function("document.querySelector('.now').textContent.startsWith('These papers could not')")
    assert papers(page) == before
    assert page.locator(".now").is_visible()
    assert page.locator("input[name=set]").nth(0).is_checked()
    context.close()


def test_what_could_not_be_loaded_before_is_no_way_back(browser, root):
    context = browser.new_context()
    context.route("**/wharf/face-*", lambda route: route.abort())
    page = context.new_page()
    page.goto(f"{root}/{PAGE}")
    page.evaluate("exchange.choose('wharf', 0); exchange.choose('wharf', 1)")
    page.wait_for_function("document.querySelector('.now').textContent.startsWith('These papers could not')")
    assert page.evaluate("exchange.now().set.id") == "two"
    assert page.locator("input[name=set]").nth(0).is_checked()
    context.close()


def test_titles_stay_as_they_are_in_every_sentence(recipe):
    recipe.evaluate("exchange.choose('wharf', [0, 3, 4])")
    recipe.wait_for_function("document.querySelector('.now').textContent.includes('Wharf')")
    told = f"{SLATE} (back)"
    assert told in recipe.locator("[data-spread] > svg").get_attribute("aria-label")
    assert told in now(recipe) and recipe.locator(".parts b").nth(1).inner_text() == told


def within(picture: np.ndarray) -> np.ndarray:
    """The pages without the shadow that they throw on the ground."""
    high, wide = picture.shape[:2]
    return picture[high // 8 : -high // 8, wide // 16 : -wide // 16]


def test_grey_shows_the_luminance_and_says_what_is_lost(recipe):
    colour = within(seen(recipe))
    recipe.locator("input[name=sight]").nth(1).check()
    grey = within(seen(recipe))
    assert np.ptp(grey, axis=2).max() <= 2
    light = np.where(colour / 255 <= 0.04045, colour / 255 / 12.92, ((colour / 255 + 0.055) / 1.055) ** 2.4)
    luminance = light @ [0.2126, 0.7152, 0.0722]
    expected = np.where(luminance <= 0.0031308, luminance * 12.92, 1.055 * luminance ** (1 / 2.4) - 0.055) * 255
    assert np.quantile(np.abs(grey[..., 0] - expected), 0.995) <= 3  # but for the softened edges of shapes
    assert recipe.url.endswith("#sight=grey")
    assert "As a grey print" in recipe.locator(".notes").inner_text()
    recipe.reload()
    assert recipe.locator("input[name=sight]").nth(1).is_checked()
    recipe.locator("input[name=sight]").nth(0).check()
    assert (within(seen(recipe)) == colour).all()


def test_what_is_at_hand_and_how_to_write_is_said(recipe):
    choose(recipe, "set", 1)
    recipe.locator(".parts button").nth(1).click()
    recipe.locator("#by-role label", has_text="Fog").first.locator("input").check()
    recipe.wait_for_function("document.querySelector('.notes').textContent.includes('white one')")
    assert "A dark pencil hardly shows on “Fog”: write on it with a white one." in recipe.locator(".notes").inner_text()


def test_everything_works_from_plain_files(page, built):
    page.goto((built / PAGE).as_uri())
    choose(page, "set", 1)
    assert {name.split("/")[0] for name in papers(page)} == {"wharf"}
    assert page.evaluate(
        "[...document.querySelectorAll('[data-piece] image')].every((image) => image.getBBox().width > 0)"
    )
    assert seen(page).std() > 20


def test_without_scripts_the_best_colourway_is_shown_and_other_sets_are_linked(browser, root):
    context = browser.new_context(java_script_enabled=False)
    page = context.new_page()
    page.goto(f"{root}/{PAGE}")
    assert page.locator(".exchanging").is_hidden()
    assert page.locator(".parts a").count() == 3
    assert page.locator(".also a").get_attribute("href") == "../../paper-sets/wharf/index.html"
    assert page.locator("[data-spread] [data-piece] image").count() == 11
    context.close()


def test_what_is_focused_is_never_behind_the_spread(browser, root):
    context = browser.new_context(viewport={"width": 1440, "height": 700})
    page = context.new_page()
    page.goto(f"{root}/{PAGE}")
    page.locator(".parts button").nth(0).click()
    page.locator(".reset, .sights input").last.focus()
    for _ in range(12):
        page.keyboard.press("Shift+Tab")
        hidden = page.evaluate(
            """() => {
              const box = document.activeElement.getBoundingClientRect();
              const spread = document.querySelector(".opening").getBoundingClientRect();
              return document.activeElement.closest(".colourway") && box.top < spread.bottom - 20;
            }"""
        )
        assert not hidden, page.evaluate("document.activeElement.outerHTML.slice(0, 200)")
    context.close()


@pytest.fixture
def beside_a_service(page, root):
    """The page as it is where it may ask a service."""

    def told_of_it(route):
        page_as_built = route.fetch()
        meta = '<meta name="spreadwright-api" content="/service/"></head>'
        route.fulfill(response=page_as_built, body=page_as_built.text().replace("</head>", meta))

    page.route(f"**/{PAGE}", told_of_it)
    page.goto(f"{root}/{PAGE}")
    page.wait_for_load_state("networkidle")
    return page


def test_downloads_that_show_papers_follow_the_choice_where_a_service_gives_them(beside_a_service, root):
    page = beside_a_service
    links = page.locator("[data-downloads] a")
    before = {link.inner_text(): link.get_attribute("href") for link in links.all()}
    choose(page, "set", 1)
    after = {link.inner_text(): (link.get_attribute("href"), link.get_attribute("download")) for link in links.all()}
    changed = {name for name, address in before.items() if after[name][0] != address}
    assert changed == {"The booklet, PDF", "The spread, SVG", "The spread, PNG", "The spread, PDF"}
    address, name = after["The spread, PNG"]
    assert address.startswith(f"{root}/service/recipes/turned/preview.png?set=wharf&colourway=wharf.")
    assert name == "turned-spread-wharf.png" and after["The booklet, PDF"][1] == "turned-booklet-wharf.pdf"
    assert "wharf" in page.locator(".chosen").inner_text().lower()
