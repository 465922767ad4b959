"""What people do with the instructions of a recipe's page: light pieces up, open drawings large, change the unit."""

import json

import pytest

from gallery.browser.chromium import opened

pytestmark = pytest.mark.browser

PATH = "recipes/window-seat/index.html"
PIECE, COPY = "mat-1", "mat-2"
CORNER = {"x": 4, "y": 4}
"""Of a piece in a drawing, where nothing is written over it."""
IN_SVG = f'svg [data-piece~="{PIECE}"]'


def shown(page, address, path=PATH):
    opened(page, f"{address}/{path}")
    return page


def lit(page) -> set[str]:
    return set(page.locator(".lit").evaluate_all("all => all.flatMap(each => each.dataset.piece.split(' '))"))


def lit_places(page) -> set[str]:
    """The parts of the page in which something is lit."""
    return set(
        page.locator(".lit").evaluate_all(
            "all => all.map(each => each.closest('.cut-sheet, .pile, table, figure, ol')?.className || 'table')"
        )
    )


def row(page, piece=PIECE):
    return page.locator(f'.pile [data-piece="{piece}"] button.row')


def test_pointing_at_a_sheet_lights_the_piece_in_every_place(page, address):
    shown(page, address)
    page.locator(f".cut-sheet {IN_SVG} rect").first.hover(position=CORNER)
    assert lit(page) == {PIECE}
    assert {"drawing", "steps", "pile", "table"} <= lit_places(page)
    assert page.locator(f'.named.lit[data-piece="{PIECE}"]').count() >= 2  # where it falls and where it is glued
    page.mouse.move(2, 2)
    assert lit(page) == set()


def test_pointing_at_a_pile_lights_the_sheet_and_the_placement(page, address):
    shown(page, address)
    row(page).hover()
    assert lit(page) == {PIECE}
    framed = page.locator("svg:has(> .frame-of-lit)").evaluate_all(
        "all => all.map(each => each.getAttribute('aria-label') || '')"
    )
    assert any(label.startswith("Sheet 3") for label in framed) and any("gluing order" in label for label in framed)


def test_the_frame_lies_around_the_piece(page, address):
    shown(page, address)
    row(page).hover()
    sheet = page.locator("section.cut-sheet").first
    frame = sheet.locator(".frame-of-lit .edge").bounding_box()
    piece = sheet.locator(f'[data-piece="{PIECE}"] rect').first.bounding_box()
    assert all(abs(frame[side] - piece[side]) <= 6 for side in frame)  # half a line to either side


def test_several_copies_are_each_their_own(page, address):
    shown(page, address)
    row(page, COPY).hover()
    assert lit(page) == {COPY}


def test_a_lit_piece_is_told_by_more_than_colour(page, address):
    shown(page, address)
    row(page).click()
    assert page.locator(".lit-bar").is_visible()
    mark = row(page).locator(".mark").inner_text()
    assert page.locator(".lit-bar [role=status]").inner_text() == f"{mark} {PIECE}"
    assert row(page).evaluate("row => getComputedStyle(row.parentElement).outlineStyle") == "solid"
    tags = page.locator(".laying .frame-of-lit text, .opening .frame-of-lit text")
    assert tags.all_text_contents() == [f"{mark} {PIECE}"]


def test_keys_light_hold_and_let_go(page, address):
    shown(page, address)
    row(page).focus()
    page.keyboard.press("Shift+Tab")
    page.keyboard.press("Tab")
    assert lit(page) == {PIECE} and row(page).get_attribute("aria-pressed") == "false"
    page.keyboard.press("Enter")
    assert row(page).get_attribute("aria-pressed") == "true"
    page.keyboard.press("Tab")
    page.keyboard.press("Tab")
    page.evaluate("document.activeElement.blur()")
    assert lit(page) == {PIECE}
    page.keyboard.press("Escape")
    assert lit(page) == set() and not page.locator(".lit-bar").is_visible()


def test_pressing_again_lets_go(page, address):
    shown(page, address)
    row(page).click()
    row(page).click()
    page.mouse.move(2, 2)
    assert lit(page) == set() and row(page).get_attribute("aria-pressed") == "false"


def test_the_bar_leads_to_each_place(page, address):
    shown(page, address)
    row(page).click()
    for name, target in (("On its sheet", "#sheet-3"), ("In its pile", "#piles"), ("In its place", "#placement")):
        page.locator(".lit-bar").get_by_text(name).click()
        assert page.evaluate("location.hash") == target
        assert page.locator(target).is_visible() and lit(page) == {PIECE}


def test_a_finger_lights_and_lets_go(browser, address):
    context = browser.new_context(viewport={"width": 360, "height": 740}, has_touch=True, is_mobile=True)
    page = context.new_page()
    shown(page, address)
    piece = page.locator(f".cut-sheet {IN_SVG} rect").first
    piece.tap(position=CORNER)
    assert lit(page) == {PIECE} and page.locator(".lit-bar").is_visible()
    piece.tap(position=CORNER)
    assert lit(page) == set()
    context.close()


def test_a_drawing_opens_large_and_closes_by_escape(page, address):
    shown(page, address)
    page.get_by_role("link", name="Open it large Sheet 3").click()
    dialog = page.get_by_role("dialog", name="Sheet 3")
    svg = dialog.locator("svg")
    assert svg.is_visible()
    width = svg.bounding_box()["width"]
    page.keyboard.press("+")
    assert svg.bounding_box()["width"] > 1.3 * width
    page.keyboard.press("0")
    assert svg.bounding_box()["width"] == pytest.approx(width, abs=1)
    page.keyboard.press("Escape")
    assert not dialog.is_visible() and page.locator("section.cut-sheet").first.locator("svg").is_visible()
    assert page.evaluate("document.activeElement.textContent").startswith("Open it large")


def test_wheel_and_buttons_change_the_size_and_drag_moves(page, address):
    shown(page, address)
    page.get_by_role("link", name="Open it large Sheet 3").click()
    room, svg = page.locator("dialog.zoom .room"), page.locator("dialog.zoom svg")
    middle = [
        room.bounding_box()[start] + room.bounding_box()[side] / 2 for start, side in (("x", "width"), ("y", "height"))
    ]
    width = svg.bounding_box()["width"]
    page.mouse.move(*middle)
    page.mouse.wheel(0, -300)
    page.wait_for_function("width => document.querySelector('dialog.zoom svg').clientWidth > 1.5 * width", arg=width)
    page.get_by_role("button", name="Larger").click()
    before = svg.bounding_box()
    page.mouse.move(*middle)
    page.mouse.down()
    page.mouse.move(middle[0] - 80, middle[1] - 60, steps=4)
    page.mouse.up()
    after = svg.bounding_box()
    assert (before["x"] - after["x"], before["y"] - after["y"]) == (pytest.approx(80, abs=2), pytest.approx(60, abs=2))
    page.get_by_role("button", name="All of it").click()
    assert svg.bounding_box()["width"] == pytest.approx(width, abs=1)
    assert page.get_by_role("button", name="Smaller").is_disabled()


@pytest.mark.parametrize("size", [(1440, 900), (360, 740)])
def test_an_enlarged_drawing_lies_whole_in_the_middle_of_its_room(page, address, size):
    page.set_viewport_size({"width": size[0], "height": size[1]})
    shown(page, address)
    page.get_by_role("link", name="Open it large Sheet 3").click()
    room, drawn = (page.locator(f"dialog.zoom {each}").bounding_box() for each in (".room", "svg"))
    for start, side in (("x", "width"), ("y", "height")):
        before = drawn[start] - room[start]
        after = room[start] + room[side] - drawn[start] - drawn[side]
        assert before >= 7 and before == pytest.approx(after, abs=2)
    tops = [button.bounding_box()["y"] for button in page.locator("dialog.zoom header > *").all()]
    assert max(tops) - min(tops) < 44  # name and buttons on one line


def test_two_fingers_change_the_size(page, address):
    shown(page, address)
    page.get_by_role("link", name="Open it large Sheet 3").click()
    svg = page.locator("dialog.zoom svg")
    width = svg.bounding_box()["width"]
    page.evaluate(
        """() => {
          const room = document.querySelector("dialog.zoom .room");
          const touch = (type, pointerId, x) => room.dispatchEvent(
            new PointerEvent(type, { pointerId, clientX: x, clientY: 400, pointerType: "touch", bubbles: true }));
          touch("pointerdown", 11, 600);
          touch("pointerdown", 12, 700);
          touch("pointermove", 12, 800);
          touch("pointerup", 11, 600);
          touch("pointerup", 12, 800);
        }"""
    )
    assert svg.bounding_box()["width"] == pytest.approx(2 * width, rel=0.02)


def test_the_other_unit_tells_the_other_bench(page, address):
    shown(page, address)
    before = page.locator("#cuts + .cautions ~ .cut-sheet .steps b").first.inner_text()
    page.get_by_role("button", name="Millimetres").click()
    page.wait_for_selector(".told svg text:has-text('dimensions in millimetres')")
    after = page.locator("#cuts + .cautions ~ .cut-sheet .steps b").first.inner_text()
    assert " in" in before and " mm" in after
    assert page.evaluate("location.hash") == "#unit=mm"
    assert page.locator("[id='cuts']").count() == 1
    assert all("mm" in size for size in page.locator(".pile button.row span:last-child").all_inner_texts())
    page.get_by_role("button", name="Inches").click()
    assert page.locator("#cuts + .cautions ~ .cut-sheet .steps b").first.inner_text() == before


def test_the_unit_that_was_asked_for_last_is_shown(browser, address):
    context = browser.new_context(service_workers="block")
    page, waiting = context.new_page(), []
    shown(page, address)
    page.route("**/told-mm.js", lambda route: waiting.append(route))
    page.get_by_role("button", name="Millimetres").click()
    page.wait_for_timeout(100)
    page.get_by_role("button", name="Inches").click()
    with page.expect_response("**/told-mm.js"):
        waiting[0].continue_()
    page.wait_for_timeout(200)
    assert page.locator(".told svg text", has_text="dimensions in inches").count()
    assert page.get_by_role("button", name="Inches").get_attribute("aria-pressed") == "true"
    context.close()


def test_pieces_are_lit_in_the_other_unit_too(page, address):
    shown(page, address)
    row(page).click()
    page.get_by_role("button", name="Millimetres").click()
    page.wait_for_selector(".told svg text:has-text('dimensions in millimetres')")
    assert lit(page) == {PIECE} and row(page).get_attribute("aria-pressed") == "true"
    page.get_by_role("button", name="Open it large Sheet 3").click()
    assert page.get_by_role("dialog", name="Sheet 3").locator("svg").is_visible()


def test_the_choice_of_unit_is_remembered_and_shared(browser, address):
    context = browser.new_context()
    page = context.new_page()
    shown(page, address)
    page.get_by_role("button", name="Millimetres").click()
    page.wait_for_selector(".told svg text:has-text('dimensions in millimetres')")
    page.goto(f"{address}/index.html")
    page.goto(f"{address}/{PATH}")
    page.wait_for_selector(".told svg text:has-text('dimensions in millimetres')")
    page.goto(f"{address}/index.html")
    page.goto(f"{address}/{PATH}#unit=in")
    page.wait_for_load_state("networkidle")
    assert page.locator(".told svg text", has_text="dimensions in inches").count()
    context.close()


@pytest.mark.parametrize("storage", ["there", "refused"])
def test_units_work_from_plain_files(browser, site, storage):
    context = browser.new_context()
    if storage == "refused":
        context.add_init_script("Object.defineProperty(window, 'localStorage', { get() { throw new Error('no'); } })")
    page, wrong = context.new_page(), []
    page.on("console", lambda message: wrong.append(message.text) if message.type == "error" else None)
    page.on("pageerror", lambda error: wrong.append(str(error)))
    page.goto((site / PATH).as_uri())
    page.get_by_role("button", name="Millimetres").click()
    page.wait_for_selector(".told svg text:has-text('dimensions in millimetres')")
    page.get_by_role("link", name="Step by step").click()
    page.wait_for_url("**/steps-mm.html*")
    context.close()
    assert wrong == []


def test_without_a_script_everything_is_there_and_nothing_is_dead(browser, address):
    context = browser.new_context(java_script_enabled=False)
    page = context.new_page()
    page.goto(f"{address}/{PATH}")
    assert page.locator(".pile button, .units:visible, .lit-bar:visible").count() == 0
    assert page.locator(".cut-sheet svg").first.is_visible()
    page.get_by_role("link", name="The same in the other unit").click()
    page.wait_for_url("**/steps-mm.html")
    assert page.locator(".screen:visible").count() == page.locator(".screen").count() > 10
    page.go_back()
    page.get_by_role("link", name="Open it large Sheet 3").click()
    page.wait_for_url("**/sheet-3.svg")
    context.close()


def test_drawings_stay_white_sheets_in_the_dark(browser, address):
    page = browser.new_page(color_scheme="dark")
    shown(page, address)
    colours = page.locator(".drawing .sheet, img.step").evaluate_all(
        "all => all.map(each => getComputedStyle(each).backgroundColor)"
    )
    page.close()
    assert set(colours) == {"rgb(255, 255, 255)"}


def test_words_in_drawings_are_as_wide_as_they_were_drawn(page, address):
    """The page's typeface is the one that was measured: no line is squeezed or stretched by more than a hair."""
    shown(page, address)
    page.evaluate("document.fonts.ready")
    off = page.evaluate(
        """() => [...document.querySelectorAll(".drawing svg text[textLength]")].map((text) => {
          const wanted = Number(text.getAttribute("textLength"));
          text.removeAttribute("textLength");
          return Math.abs(text.getComputedTextLength() - wanted) / wanted;
        })"""
    )
    assert len(off) > 20 and sorted(off)[len(off) // 2] < 0.01 and max(off) < 0.12


def test_what_loads_first_is_light(browser, address):
    page = browser.new_page(viewport={"width": 1440, "height": 900})
    sizes = {}
    page.on("response", lambda response: sizes.update({response.url: len(response.body())}) if response.ok else None)
    page.goto(f"{address}/{PATH}")
    page.wait_for_load_state("load")
    page.wait_for_timeout(300)
    loaded = {url: size for url, size in sizes.items() if "sw.js" not in url}
    page.close()
    assert sum(loaded.values()) < 500_000, json.dumps(loaded, indent=1)
