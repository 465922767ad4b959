"""Pages at 400 % on a desk, 320 pixels wide, also with the spacing that some readers set for themselves."""

import pytest

from gallery.browser.chromium import opened

pytestmark = pytest.mark.browser

SPACED = """* { line-height: 1.5 !important; letter-spacing: .12em !important; word-spacing: .16em !important; }
p { margin-bottom: 2em !important; }"""


@pytest.fixture
def narrow(browser):
    page = browser.new_page(viewport={"width": 320, "height": 640})
    yield page
    page.close()


def width(page) -> int:
    return page.evaluate("document.documentElement.scrollWidth")


@pytest.mark.parametrize(
    "path",
    ["index.html", "recipes/window-seat/index.html", "recipes/window-seat/steps.html", "paper-sets/two/index.html"],
)
@pytest.mark.parametrize("home", ["", "de/", "fr/"])
def test_wider_spacing_needs_no_sideways_scrolling(narrow, address, home, path):
    opened(narrow, f"{address}/{home}{path}")
    narrow.add_style_tag(content=SPACED)
    assert width(narrow) <= 320


def test_a_paper_with_a_long_name_takes_the_whole_line(narrow, address):
    opened(narrow, f"{address}/recipes/window-seat/index.html")
    parts = narrow.locator(".parts > li")
    assert parts.nth(0).bounding_box()["y"] == parts.nth(1).bounding_box()["y"]
    narrow.locator(".parts b").nth(1).evaluate("each => { each.textContent = 'Gewächshausgrünpapier'; }")
    assert parts.nth(0).bounding_box()["y"] < parts.nth(1).bounding_box()["y"]
    assert width(narrow) <= 320


def test_a_low_screen_leaves_most_of_itself_to_the_step(narrow, address):
    narrow.set_viewport_size({"width": 320, "height": 256})
    opened(narrow, f"{address}/recipes/window-seat/steps.html#step=2")
    assert narrow.locator(".steer").bounding_box()["height"] <= 64
    assert narrow.locator(".screen:visible .picture svg").bounding_box()["height"] >= 100
