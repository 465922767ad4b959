"""Pages on paper, as somebody takes them to the trimmer: 186 mm wide, what margins of 12 mm leave of A4."""

import pytest
from pypdfium2 import PdfDocument

from gallery.browser.chromium import opened

pytestmark = pytest.mark.browser

PAPER_PX = 703
READABLE_PT = 9
MM = 72 / 25.4
SMALLEST_PT = """() => Math.min(...[...document.querySelectorAll(".drawing text, .picture text")]
  .filter((text) => text.checkVisibility() && text.textContent.trim())
  .map((text) => {
    const { a, b } = text.getScreenCTM();
    return parseFloat(getComputedStyle(text).fontSize) * Math.hypot(a, b) * 0.75;
  }))"""


@pytest.fixture
def printed(browser):
    page = browser.new_page(viewport={"width": PAPER_PX, "height": 1032})
    page.emulate_media(media="print")
    yield page
    page.close()


@pytest.mark.parametrize("path", ["recipes/window-seat/index.html", "recipes/window-seat/steps.html"])
def test_dimensions_can_be_read_on_paper(printed, address, path):
    opened(printed, f"{address}/{path}")
    assert printed.evaluate(SMALLEST_PT) >= READABLE_PT - 0.05


def test_pictures_of_steps_are_printed_as_large_beside_all_steps_as_one_by_one(printed, address):
    opened(printed, f"{address}/recipes/window-seat/steps.html")
    alone = printed.locator(".screen[data-step='1'] .picture").bounding_box()["width"]
    opened(printed, f"{address}/recipes/window-seat/index.html")
    assert printed.locator("img.step").first.bounding_box()["width"] == pytest.approx(alone, abs=1)


def test_nothing_is_printed_that_only_leads_elsewhere(printed, address):
    opened(printed, f"{address}/recipes/window-seat/index.html")
    text = "".join(sheet.get_textpage().get_text_range() for sheet in PdfDocument(printed.pdf(format="A4")))
    assert "Before you glue" in text
    assert not {words for words in ("To take away", "What shows papers", "Open it large", "Copy it") if words in text}


def test_a_thumbnail_keeps_to_its_place_on_paper(printed, address):
    """What stands over the top of a picture would be printed at the foot of the page before."""
    opened(printed, f"{address}/index.html")
    over = """all => all.filter((laid) => getComputedStyle(laid).overflowY === "visible"
      && laid.querySelector("img").getBoundingClientRect().top < laid.getBoundingClientRect().top)"""
    assert printed.locator(".spreads .laid").count() and printed.locator(".spreads .laid").evaluate_all(over) == []


@pytest.mark.parametrize("path", ["index.html", "recipes/window-seat/index.html", "recipes/window-seat/steps.html"])
@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_no_word_stands_in_the_margin_that_printers_cannot_reach(printed, address, path, paper):
    opened(printed, f"{address}/{path}")
    for sheet in PdfDocument(printed.pdf(format=paper, prefer_css_page_size=True)):
        text, (wide, high) = sheet.get_textpage(), sheet.get_size()
        boxes = [text.get_rect(at) for at in range(text.count_rects())]
        lefts, lows, rights, tops = zip(*boxes, strict=True)
        assert min(lefts) > 11 * MM and max(rights) < wide - 11 * MM
        assert min(lows) > 10 * MM and max(tops) < high - 11 * MM
