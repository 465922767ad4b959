"""Layouts found and turned to other papers, as people do it, beside what a count in Python says."""

import re
from dataclasses import replace
from random import Random
from urllib.parse import urlencode

import numpy as np
import pytest

from gallery.browser.chromium import served
from gallery.table import SETS, varied, write_table
from spreadwright.drawing.raster import see_through_pixels
from spreadwright.gallery.overview.finding import cuts_value, laid_out
from spreadwright.gallery.recipe.thumbnails import WIDTHS_PX
from spreadwright.images import encode_webp, resized
from spreadwright.store import Collection
from spreadwright.tasks import chosen_colourway
from spreadwright.tasks.draw import preview_svg

pytestmark = pytest.mark.browser

COUNT = 24
LAYOUTS = laid_out(varied(COUNT))


@pytest.fixture(scope="module")
def table(tmp_path_factory):
    """The address of the pages about many layouts, their pictures as heavy as real ones."""
    recipe = Collection().recipes["rain-until-four"]
    svg = preview_svg(recipe, chosen_colourway(recipe.model, Collection().paper_set("windfall")), is_on_table=False)
    largest = see_through_pixels(svg, WIDTHS_PX[-1])
    widths = {width: width * 9 // 17 for width in WIDTHS_PX} | {width * 9 // 17: width * 9 // 17 for width in WIDTHS_PX}
    pictures = {width: encode_webp(resized(largest, width, height)) for width, height in widths.items()}
    folder = write_table(tmp_path_factory.mktemp("table"), varied(COUNT), pictures)
    with served(folder) as address:
        yield f"{address}/index.html"


def values(recipe, kind):
    """What a layout is found by, told apart from the code that does it."""
    return {
        "pages": [str(recipe.pages)],
        "photos": [str(recipe.photos)],
        "sheets": [str(recipe.sheets)],
        "plain": [str(recipe.plain)],
        "patterned": [str(recipe.patterned)],
        "cuts": [cuts_value(recipe.cuts)],
        "difficulty": [recipe.difficulty.level.value],
        "size": [f"{recipe.page.width}x{recipe.page.height}"],
        "in": [each.set_id for each in recipe.thumbnails],
        "tag": list(recipe.tags),
        "author": list(recipe.authors),
        "licence": [recipe.licence] if recipe.licence else [],
    }[kind]


KINDS = (
    "pages",
    "photos",
    "sheets",
    "plain",
    "patterned",
    "cuts",
    "difficulty",
    "size",
    "in",
    "tag",
    "author",
    "licence",
)


def meets(recipe, asked, but=""):
    return all(set(wanted) & set(values(recipe, kind)) for kind, wanted in asked.items() if kind != but)


def seen(page):
    """The layouts in sight, in order."""
    return page.evaluate(
        "[...document.querySelectorAll('#layouts > li')].filter(li => !li.hidden).map(li => li.dataset.layout)"
    )


def counts(page):
    script = """[...document.querySelectorAll('#choices label')].map((label) => {
      const box = label.querySelector('input');
      return [box.name, box.value, Number(label.querySelector('.count').textContent)];
    })"""
    return {(kind, value): count for kind, value, count in page.evaluate(script)}


def some_choices(chance):
    kinds = chance.sample(KINDS, chance.choice((1, 2, 2, 3)))
    offered = {kind: sorted({value for recipe in LAYOUTS for value in values(recipe, kind)}) for kind in kinds}
    return {kind: chance.sample(found, min(len(found), chance.choice((1, 1, 2)))) for kind, found in offered.items()}


def test_choices_combine_and_count_as_counted_one_by_one(page, table):
    chance = Random(7)
    page.goto(table)
    for _ in range(25):
        asked = some_choices(chance)
        page.evaluate("text => { location.hash = text; }", urlencode(asked, doseq=True))
        expected = [recipe.id for recipe in LAYOUTS if meets(recipe, asked)]
        page.wait_for_function(
            "count => document.querySelectorAll('#layouts > li:not([hidden])').length === count", arg=len(expected)
        )
        assert seen(page) == expected, asked
        for (kind, value), count in counts(page).items():
            assert count == sum(value in values(each, kind) and meets(each, asked, kind) for each in LAYOUTS), (
                asked,
                kind,
            )


def test_every_value_is_offered(page, table):
    page.goto(table)
    expected = {(kind, value) for recipe in LAYOUTS for kind in KINDS for value in values(recipe, kind)}
    assert set(counts(page)) == expected


def test_a_view_can_be_shared_and_gone_back_from(page, browser, table):
    page.goto(table)
    page.get_by_role("button", name="Choose by").click()
    page.locator("fieldset.kind-pages label", has_text="2").click()
    two = seen(page)
    page.locator("fieldset.kind-tag label", has_text="woven").click()
    both = seen(page)
    assert page.url.endswith("#pages=2&tag=woven") and len(both) < len(two) < COUNT
    assert page.locator(".told").inner_text() == f"{len(both)} of {COUNT} layouts"
    other = browser.new_page()
    other.goto(page.url)
    assert seen(other) == both
    other.close()
    page.go_back()
    assert seen(page) == two and page.url.endswith("#pages=2")
    page.go_back()
    assert len(seen(page)) == COUNT
    page.go_forward()
    assert seen(page) == two


def test_places_on_the_page_leave_what_was_chosen(page, table):
    page.goto(f"{table}#pages=2")
    two = seen(page)
    page.locator(".skip").focus()
    page.keyboard.press("Enter")
    assert page.url.endswith("#main") and seen(page) == two
    page.get_by_role("button", name="Choose by").click()
    page.locator("fieldset.kind-tag label", has_text="woven").click()
    assert page.url.endswith("#pages=2&tag=woven")


def test_page_of_an_author_leads_to_further_choices(page, table):
    page.goto(table.replace("index.html", "authors/index.html"))
    page.get_by_role("link", name="水彩").click()
    listed = page.locator(".spreads > li").evaluate_all("items => items.map(item => item.dataset.layout)")
    page.get_by_role("link", name="Choose further among them").click()
    page.wait_for_selector("#finder:not([hidden])")
    assert seen(page) == listed == [each.id for each in LAYOUTS if "水彩" in each.authors]


def test_marks_take_back_what_was_chosen(page, table):
    page.goto(f"{table}#pages=2&tag=woven&words=strip")
    assert page.locator(".marks button").all_inner_texts() == ["“strip”", "Pages: 2", "Tag: woven"]
    page.get_by_role("button", name="Take back: Tag: woven").click()
    assert page.url.endswith("#pages=2&words=strip") or page.url.endswith("#words=strip&pages=2")
    assert page.evaluate("document.activeElement.closest('.marks') !== null")
    page.get_by_role("button", name="Clear all", exact=True).click()
    assert len(seen(page)) == COUNT and "#" not in page.url


def test_words_are_quoted_as_the_language_does(page, address):
    page.goto(f"{address}/de/index.html#words=%20zzz")
    assert page.locator(".marks button").all_inner_texts() == ["„zzz“"]


def test_no_layout_is_said_and_helped(page, table):
    page.goto(f"{table}#words=zzz")
    assert seen(page) == [] and page.get_by_text("No layout is all of that at once.").is_visible()
    page.get_by_role("button", name="Clear all and see every layout").click()
    assert len(seen(page)) == COUNT and not page.get_by_text("No layout is all of that").is_visible()


@pytest.mark.parametrize(
    ("typed", "found"), [("ete", "été"), ("STRASSE", "straße"), ("zoe", "zoë"), ("mar", "märz"), ("bohm", "böhm")]
)
def test_words_begin_words_whatever_accents(page, table, typed, found):
    page.goto(table)
    page.get_by_role("searchbox", name="Words").press_sequentially(typed)
    texts = {each.id: " ".join((each.title, each.summary, *each.authors)).lower() for each in LAYOUTS}
    assert seen(page) == [own for own, text in texts.items() if re.search(rf"\b{found}", text)] != []


def test_words_are_all_to_be_met_and_stay_words(page, table):
    page.goto(table)
    page.get_by_role("searchbox", name="Words").fill("moss strip")
    assert 0 < len(seen(page)) < COUNT
    page.get_by_role("searchbox", name="Words").fill("oss")
    assert seen(page) == []
    page.get_by_role("searchbox", name="Words").fill(".* <b>")
    assert len(seen(page)) == COUNT  # each has a role that begins with b


@pytest.mark.parametrize(
    ("order", "key"),
    [
        ("photos", lambda each: each.photos),
        ("-photos", lambda each: -each.photos),
        ("sheets", lambda each: each.sheets),
        ("cuts", lambda each: each.cuts),
        ("difficulty", lambda each: each.difficulty.points),
    ],
)
def test_layouts_can_be_put_in_another_order(page, table, order, key):
    by_id = {each.id: each for each in LAYOUTS}
    page.goto(table)
    page.get_by_role("combobox", name="Order").select_option(order)
    found = [key(by_id[own]) for own in seen(page)]
    assert found == sorted(found) and page.url.endswith(f"#order={order}")
    page.go_back()
    assert seen(page) == [each.id for each in LAYOUTS]


def first_with(sets):
    return next(each for each in LAYOUTS if len(each.thumbnails) == sets)


def laid_in(page, recipe_id):
    """The set that a picture shows, and what its layout's link leads to."""
    item = page.locator(f"[data-layout={recipe_id}]")
    return re.search(r"/in-(\w+)-", item.locator("img").evaluate("image => image.currentSrc || image.src"))[
        1
    ], item.locator("a").get_attribute("href")


def until_laid(page, recipe_id, set_id):
    shown = "([own, set]) => document.querySelector(`[data-layout=${own}] img`).src.includes(`/in-${set}-`)"
    page.wait_for_function(shown, arg=[recipe_id, set_id])


def test_a_layout_turns_to_other_papers_by_click_and_keys(page, table):
    chosen = first_with(3)
    sets = [each.set_id for each in chosen.thumbnails]
    page.goto(table)
    button = page.locator(f"[data-layout={chosen.id}] .turn")
    assert button.get_attribute("aria-label") == f"Papers: {SETS[sets[0]]}, 1 of 3. Show the next"
    button.focus()
    for key, expected in (("Enter", 1), ("ArrowRight", 2), ("Space", 0), ("ArrowLeft", 2)):
        page.keyboard.press(key)
        until_laid(page, chosen.id, sets[expected])
        shown, link = laid_in(page, chosen.id)
        assert shown == sets[expected] and link.endswith(f"#in={shown}" if expected else "index.html")
    assert page.locator("#turned").inner_text() == f"{chosen.title}, laid in {SETS[sets[2]]}"


def test_a_layout_whose_name_looks_like_a_picture_turns(browser, tmp_path):
    first = first_with(3)
    alike = first.thumbnails[0].set_id
    thumbnails = tuple(replace(each, stem=f"pictures/in-{alike}-light/in-{each.set_id}") for each in first.thumbnails)
    named = replace(first, id=f"in-{alike}-light", thumbnails=thumbnails)
    blank = encode_webp(np.zeros((9, 9, 4), np.uint8))
    page, missing = browser.new_page(), []
    page.on("response", lambda response: missing.append(response.url) if response.status == 404 else None)
    with served(write_table(tmp_path, [named], dict.fromkeys(thumbnails[0].widths_px, blank))) as root:
        page.goto(f"{root}/index.html")
        page.locator(".turn").click()
        until_laid(page, named.id, thumbnails[1].set_id)
    page.close()
    assert [url for url in missing if url.endswith(".webp")] == []


def test_resting_on_a_picture_turns_it_and_leaving_turns_it_back(page, table):
    chosen = first_with(3)
    sets = [each.set_id for each in chosen.thumbnails]
    page.goto(table)
    page.locator(f"[data-layout={chosen.id}] .laid").hover()
    until_laid(page, chosen.id, sets[1])
    page.mouse.move(0, 0)
    until_laid(page, chosen.id, sets[0])
    page.locator(f"[data-layout={chosen.id}] .turn span").nth(2).hover()
    until_laid(page, chosen.id, sets[2])


def test_nothing_turns_by_itself_for_who_asks_for_less(browser, table):
    page = browser.new_page(reduced_motion="reduce", viewport={"width": 1440, "height": 900})
    page.goto(table)
    page.locator(f"[data-layout={first_with(3).id}] .laid").hover()
    asked = []
    page.on("request", lambda request: asked.append(request.url))
    page.wait_for_timeout(1500)
    page.close()
    assert asked == []


def test_layouts_lie_in_the_papers_that_are_chosen(page, table):
    page.goto(f"{table}#in=rust")
    for own in seen(page)[:4]:
        until_laid(page, own, "rust")
    page.get_by_role("button", name="Clear all", exact=True).click()
    first = LAYOUTS[0]
    until_laid(page, first.id, first.thumbnails[0].set_id)


def test_without_scripts_there_is_a_plain_list(browser, table):
    context = browser.new_context(java_script_enabled=False)
    page = context.new_page()
    page.goto(f"{table}#pages=1")
    assert page.locator("#layouts > li").count() == COUNT == page.locator("#layouts img:visible").count()
    assert not page.locator("#finder").is_visible() and not page.get_by_text("No layout is all").is_visible()
    assert page.locator(".turn").count() == 0
    context.close()


@pytest.mark.parametrize(("width", "height"), [(1440, 900), (360, 780)])
def test_first_view_is_light(browser, table, width, height):
    page = browser.new_page(viewport={"width": width, "height": height})
    weights = []
    page.on("response", lambda response: weights.append(len(response.body())))
    page.goto(table)
    page.wait_for_load_state("networkidle")
    pictures = page.evaluate("[...document.images].filter(image => image.complete && image.naturalWidth).length")
    page.close()
    assert pictures >= 2 and sum(weights) < 300_000


def test_pictures_come_when_they_come_near(page, table):
    page.goto(table)
    last = page.locator("#layouts > li").last
    assert not last.locator("img").is_visible()
    last.scroll_into_view_if_needed()
    page.wait_for_function("document.querySelector('#layouts > li:last-child img').naturalWidth > 0")


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("width", [360, 1440])
def test_open_choices_are_sound(browser, table, width, scheme):
    from axe_playwright_python.sync_playwright import Axe

    page = browser.new_page(viewport={"width": width, "height": 900}, color_scheme=scheme)
    page.goto(f"{table}#tag=woven&pages=2")
    page.get_by_role("button", name="Choose by").press("Enter")
    found = Axe().run(page, options={"runOnly": ["wcag2a", "wcag2aa", "wcag21aa", "wcag22aa", "best-practice"]})
    is_narrow_enough = page.evaluate("document.documentElement.scrollWidth") <= width
    page.keyboard.press("Escape")
    is_closed, focus = not page.locator("#choices").is_visible(), page.evaluate("document.activeElement.className")
    page.close()
    assert found.response["violations"] == [] and is_narrow_enough and is_closed and focus == "opener"
