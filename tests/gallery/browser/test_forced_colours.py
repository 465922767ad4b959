"""Pages in the colours that a reader has set for all programs: drawings and papers keep their own."""

import pytest

from gallery.browser.chromium import opened

pytestmark = pytest.mark.browser

WHITE = "rgb(255, 255, 255)"


@pytest.fixture
def page(browser):
    page = browser.new_page(forced_colors="active", color_scheme="dark")
    yield page
    page.close()


def ground(locator) -> str:
    return locator.evaluate("each => getComputedStyle(each).backgroundColor")


def test_drawings_stay_dark_on_white(page, address):
    opened(page, f"{address}/recipes/window-seat/index.html")
    assert {ground(page.locator(each).first) for each in (".drawing .sheet", "img.step")} == {WHITE}
    opened(page, f"{address}/recipes/window-seat/steps.html#step=1")
    assert ground(page.locator(".screen:visible .picture")) == WHITE != ground(page.locator("body"))


def test_papers_are_still_told_apart(page, address):
    opened(page, f"{address}/recipes/window-seat/index.html")
    chips = page.locator(".ranked .chips i").evaluate_all(
        "all => all.map(each => getComputedStyle(each).forcedColorAdjust)"
    )
    assert chips and set(chips) == {"none"}
