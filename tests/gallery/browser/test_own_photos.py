"""Photos from the reader's own disk, laid on the mats in the page."""

from io import BytesIO

import pytest
from PIL import Image

pytestmark = pytest.mark.browser

RED, SKY = (190, 30, 30), (120, 170, 220)


def photo(name, size=(900, 600), left=RED, right=SKY, exif=None):
    """One half red, the other blue."""
    picture = Image.new("RGB", size, right)
    picture.paste(left, (0, 0, size[0] // 2, size[1]))
    out = BytesIO()
    picture.save(out, "JPEG", quality=95, **({"exif": exif} if exif else {}))
    return {"name": name, "mimeType": "image/jpeg", "buffer": out.getvalue()}


@pytest.fixture
def chosen(page, address):
    page.goto(f"{address}/recipes/window-seat/index.html")

    def choose(*photos):
        page.get_by_label("Choose photos").set_input_files(list(photos))
        page.wait_for_function("document.querySelector('.own-photos .told').textContent !== ''")

    return choose


def rows(page):
    return page.locator(".own-photos .mats > li")


def frame(page, mat):
    """What the spread shows of a photo, in its pixels: x, y, width and height."""
    inner = page.locator(f'[data-photo="{mat}"] svg.own-photo')
    return [float(number) for number in inner.get_attribute("viewBox").split()]


def test_photos_lie_on_the_mats_and_leave_no_trace_elsewhere(page, address, chosen):
    asked = []
    page.on("request", lambda request: asked.append(request))
    chosen(photo("one.jpg"))
    assert page.locator("svg.own-photo").count() == 1
    assert "1 of" in page.locator(".own-photos .told").inner_text()
    assert rows(page).locator("select").evaluate_all("all => all.filter(each => each.value).length") == 1
    page.wait_for_load_state("networkidle")
    assert all(request.url.startswith((address, "blob:", "data:")) for request in asked)
    assert all(request.method == "GET" and request.post_data is None for request in asked)


def test_crop_keeps_the_shape_of_the_mat_within_the_photo(page, chosen):
    chosen(photo("one.jpg"))
    mat = page.locator("svg.own-photo").evaluate("inner => inner.parentElement.dataset.photo")
    row = page.locator(f'.own-photos .mats > li[data-piece="{mat}"]')
    width_mm, height_mm = map(float, row.get_attribute("data-mm").split())
    _, _, width, height = frame(page, mat)
    assert width / height == pytest.approx(width_mm / height_mm, rel=1e-6)
    row.get_by_role("button").click()
    for key in ("-", "-", "-", "-", "ArrowLeft", "ArrowUp") + ("ArrowRight",) * 200:
        page.keyboard.press(key)
    x, y, width, height = frame(page, mat)
    assert width / height == pytest.approx(width_mm / height_mm, rel=1e-6)
    assert x + width == pytest.approx(900, abs=0.01) and 0 <= y <= 600 - height + 0.01
    page.keyboard.press("Escape")
    assert page.locator("dialog.crop").is_hidden()


def test_corner_handle_sizes_and_frame_drags(page, chosen):
    chosen(photo("one.jpg"))
    mat = page.locator("svg.own-photo").evaluate("inner => inner.parentElement.dataset.photo")
    page.locator(f'.own-photos .mats > li[data-piece="{mat}"]').get_by_role("button").click()
    before = frame(page, mat)
    corner = page.locator(".corner.se").bounding_box()
    at = (corner["x"] + corner["width"] / 2, corner["y"] + corner["height"] / 2)
    page.mouse.move(*at)
    page.mouse.down()
    page.mouse.move(at[0] - 60, at[1] - 60)
    page.mouse.up()
    smaller = frame(page, mat)
    assert smaller[2] < before[2] and smaller[:2] == pytest.approx(before[:2])
    box = page.locator(".frame").bounding_box()
    page.mouse.move(box["x"] + box["width"] / 2, box["y"] + box["height"] / 2)
    page.mouse.down()
    page.mouse.move(box["x"] + box["width"] / 2 + 30, box["y"] + box["height"] / 2 + 10)
    page.mouse.up()
    moved = frame(page, mat)
    assert moved[0] > smaller[0] and moved[2:] == pytest.approx(smaller[2:])


def test_marks_of_the_corners_are_whole_at_the_edge_of_the_photo(page, chosen):
    chosen(photo("one.jpg"))
    page.locator(".crop-it:enabled").click()
    marks = page.evaluate(
        """() => {
          const stage = document.querySelector(".stage").getBoundingClientRect();
          return [...document.querySelectorAll(".corner")].map((corner) => {
            const box = corner.getBoundingClientRect(), mark = getComputedStyle(corner, "::after");
            const [x, y] = mark.translate.split(" ").map(parseFloat), side = parseFloat(mark.width);
            const left = box.left + (box.width - side) / 2 + x, top = box.top + (box.height - side) / 2 + (y || 0);
            return [left - stage.left, top - stage.top, stage.right - left - side, stage.bottom - top - side];
          });
        }"""
    )
    assert len(marks) == 4 and all(distance >= -0.5 for mark in marks for distance in mark), marks


@pytest.mark.parametrize("button", [".see button", ".suggested button >> nth=0"])
def test_layout_is_shown_with_the_photos_when_it_is_asked_for(page, chosen, button):
    assert page.locator(".see button").is_hidden()
    chosen(photo("one.jpg"))
    page.locator(button).click()
    page.wait_for_function("document.querySelector('.opening').getBoundingClientRect().top >= 0")
    assert 0 <= page.locator("svg.own-photo").bounding_box()["y"] < 900


def test_a_mat_with_its_photo_lies_on_one_line_of_a_phone(page, chosen):
    page.set_viewport_size({"width": 360, "height": 740})
    chosen(photo("one.jpg"))
    for row in rows(page).all():
        select, button = (row.locator(each).bounding_box() for each in ("select", "button"))
        assert select["y"] == pytest.approx(button["y"], abs=2)
        assert select["x"] + select["width"] <= button["x"] and button["x"] + button["width"] <= 360


def test_photos_are_turned_as_they_were_taken(page, chosen):
    exif = Image.Exif()
    exif[0x0112] = 6  # a quarter turn to the right
    chosen(photo("turned.jpg", exif=exif))
    image = page.locator("svg.own-photo image")
    assert [int(image.get_attribute(side)) for side in ("width", "height")] == [600, 900]


def test_what_cannot_be_read_is_named_and_hides_no_other(page, chosen):
    chosen({"name": "notes.jpg", "mimeType": "image/jpeg", "buffer": b"no picture"}, photo("one.jpg"))
    told = page.locator(".own-photos .told").inner_text()
    assert "notes.jpg" in told and "JPEG" in told
    assert page.locator("svg.own-photo").count() == 1


def test_photo_can_be_taken_away_again(page, chosen):
    chosen(photo("one.jpg"))
    mat = page.locator("svg.own-photo").evaluate("inner => inner.parentElement.dataset.photo")
    page.locator(f'.own-photos .mats > li[data-piece="{mat}"] select').select_option("")
    assert page.locator("svg.own-photo").count() == 0


def test_colours_of_a_photo_are_found_and_colourways_suggested(page, chosen):
    chosen(photo("one.jpg"))
    tones = page.locator(".tones li").evaluate_all("all => all.map(each => getComputedStyle(each).backgroundColor)")
    found = [[int(part) for part in tone[4:-1].split(",")] for tone in tones]
    for colour in (RED, SKY):
        assert any(max(abs(a - b) for a, b in zip(colour, tone, strict=True)) < 12 for tone in found), (colour, found)
    page.locator(".suggested button").last.click()
    page.wait_for_function("document.querySelector('.now').textContent !== ''")
    assert page.locator("svg.own-photo").count() == 1


def test_colours_are_those_of_what_is_kept(page, chosen):
    chosen(photo("one.jpg"))
    mat = page.locator("svg.own-photo").evaluate("inner => inner.parentElement.dataset.photo")
    page.locator(f'.own-photos .mats > li[data-piece="{mat}"]').get_by_role("button").click()
    for key in ("-",) * 40 + ("ArrowRight",) * 60:
        page.keyboard.press(key)
    page.get_by_role("dialog").get_by_role("button", name="Done").click()
    assert page.locator(".tones li").count() == 1  # the red half is cut off


def test_what_is_see_through_is_white(page, chosen):
    out = BytesIO()
    Image.new("RGBA", (300, 300), (0, 0, 0, 0)).save(out, "PNG")
    chosen({"name": "clear.png", "mimeType": "image/png", "buffer": out.getvalue()})
    tones = page.locator(".tones li").evaluate_all("all => all.map(each => getComputedStyle(each).backgroundColor)")
    assert tones == ["rgb(255, 255, 255)"]


def test_lines_for_another_page_are_copied_and_said_to_be_only_then(browser, address):
    context = browser.new_context()
    context.add_init_script(
        """const clipboard = { writeText: async (text) => { window.held = text; } };
        Object.defineProperty(navigator, "clipboard", { value: clipboard });"""
    )
    page = context.new_page()
    page.goto(f"{address}/recipes/window-seat/index.html")
    page.locator(".copy").click()
    page.wait_for_selector("text=Copied.")
    assert f'href="{address}/recipes/window-seat/"' in page.evaluate("window.held")
    page.evaluate("navigator.clipboard.writeText = () => Promise.reject(); document.execCommand = () => false")
    page.locator(".copy").click()
    page.wait_for_function("!document.querySelector('.copy + [role=status]').textContent")
    context.close()


def test_without_script_nothing_is_offered_that_does_not_work(browser, address):
    context = browser.new_context(java_script_enabled=False)
    page = context.new_page()
    page.goto(f"{address}/recipes/window-seat/index.html")
    assert page.get_by_label("Choose photos").is_hidden()
    assert page.locator(".copy").is_hidden()
    context.close()
