"""The built gallery as people see it: a real Chromium, at three widths, in light and dark."""

import pytest
from pypdfium2 import PdfDocument

from gallery.browser.chromium import opened, paths

pytestmark = pytest.mark.browser

WIDTHS = (360, 820, 1440)
RULES = ("wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice")


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("width", WIDTHS)
def test_every_page_is_sound(browser, site, address, width, scheme):
    from axe_playwright_python.sync_playwright import Axe

    context = browser.new_context(viewport={"width": width, "height": 900}, color_scheme=scheme)
    page = context.new_page()
    wrong: list[str] = []
    page.on("console", lambda message: wrong.append(f"{page.url}: {message.text}"))
    page.on("requestfailed", lambda request: wrong.append(f"{page.url}: {request.url} failed"))
    page.on(
        "request", lambda request: wrong.append(request.url) if not request.url.startswith((address, "data:")) else None
    )
    for path in paths(site):
        opened(page, f"{address}/{path}")
        if page.evaluate("document.documentElement.scrollWidth") > width:
            wrong.append(f"{path} scrolls sideways")
        found = Axe().run(page, options={"runOnly": list(RULES)})
        wrong += [f"{path}: {each['id']} {each['nodes'][0]['html'][:120]}" for each in found.response["violations"]]
    context.close()
    assert wrong == []


def test_narrowest_phone_needs_no_sideways_scrolling(browser, site, address):
    page = browser.new_page(viewport={"width": 320, "height": 640})
    for path in paths(site):
        opened(page, f"{address}/{path}")
        assert page.evaluate("document.documentElement.scrollWidth") <= 320, path
    page.close()


REACHABLE = """() => {
  const all = [...document.querySelectorAll('a[href], summary, button, select, input, textarea')];
  const groups = new Set();
  return (window.reachable = all.filter((each) => {
    if (!each.checkVisibility({ visibilityProperty: true }) || each.disabled || each.tabIndex < 0) return false;
    if (each.type !== 'radio') return true;
    const group = [...document.getElementsByName(each.name)];  // one stop for all of them
    const isStop = group.some((other) => other.checked) ? each.checked : !groups.has(each.name);
    groups.add(each.name);
    return isStop;
  })).length;
}"""


@pytest.mark.parametrize(
    "path", ["index.html", "recipes/window-seat/index.html", "paper-sets/two/index.html", "tags/index.html"]
)
def test_keyboard_reaches_everything_in_order(browser, address, path):
    page = browser.new_page()
    opened(page, f"{address}/{path}")
    expected = page.evaluate(REACHABLE)
    reached: list[int] = []
    for _ in range(expected + 12):  # what scrolls is a stop, too
        page.keyboard.press("Tab")
        place = page.evaluate("window.reachable.indexOf(document.activeElement)")
        if place >= 0:
            reached.append(place)
            assert page.evaluate("getComputedStyle(document.activeElement).outlineStyle") != "none"
        if len(reached) == expected:
            break
    page.close()
    assert expected and reached == list(range(expected))


def test_skip_link_leads_past_the_head(browser, address):
    page = browser.new_page()
    opened(page, f"{address}/index.html")
    page.keyboard.press("Tab")
    page.keyboard.press("Enter")
    page.keyboard.press("Tab")
    assert page.evaluate("document.activeElement.closest('main') !== null")
    page.close()


def test_plain_files_work_without_script(browser, site):
    context = browser.new_context(java_script_enabled=False)
    page = context.new_page()
    wrong: list[str] = []
    page.on("requestfailed", lambda request: wrong.append(request.url))
    page.goto((site / "index.html").as_uri())
    page.get_by_role("link", name="Window seat").first.click()
    page.wait_for_url("**/recipes/window-seat/index.html")
    page.get_by_role("link", name="Fog").first.click()
    page.wait_for_url("**/paper-sets/two/index.html#paper-fog")
    assert page.get_by_role("heading", level=1).inner_text() == "Harbour"
    context.close()
    assert wrong == []


def test_shipped_typefaces_are_used(browser, address):
    page = browser.new_page()
    opened(page, f"{address}/recipes/window-seat/index.html")
    loaded = page.evaluate("[...document.fonts].filter(font => font.status === 'loaded').map(font => font.family)")
    page.close()
    assert {family.strip('"') for family in loaded} == {"Alegreya", "Alegreya Sans"}


@pytest.mark.parametrize(("motion", "moves"), [("no-preference", True), ("reduce", False)])
def test_nothing_moves_for_who_asks_for_less(browser, address, motion, moves):
    page = browser.new_page(reduced_motion=motion)
    opened(page, f"{address}/paper-sets/two/index.html")
    page.locator(".papers img").first.hover()
    page.wait_for_timeout(500)  # longer than the movement takes
    assert page.evaluate("getComputedStyle(document.querySelector('.papers img')).transform !== 'none'") == moves
    page.close()


def test_pages_print_in_ink_on_white(browser, address):
    page = browser.new_page(color_scheme="dark")
    opened(page, f"{address}/recipes/window-seat/index.html")
    page.emulate_media(media="print", color_scheme="dark")
    colours = page.evaluate("(style => [style.color, style.backgroundColor])(getComputedStyle(document.body))")
    page.close()
    assert colours == ["rgb(0, 0, 0)", "rgb(255, 255, 255)"]


@pytest.mark.parametrize("width", [360, 1440])
def test_every_drawing_says_that_it_opens_large(browser, address, width):
    page = browser.new_page(viewport={"width": width, "height": 800})
    opened(page, f"{address}/recipes/window-seat/index.html")
    told = page.get_by_role("link", name="Open it large").all()
    assert len(told) == page.locator(".drawing").count() and all(link.is_visible() for link in told)
    page.close()


def test_placing_begins_a_printed_page_with_its_picture(browser, address):
    page = browser.new_page()
    opened(page, f"{address}/recipes/window-seat/index.html")
    printed = PdfDocument(page.pdf())
    page.close()
    texts = [sheet.get_textpage().get_text_range() for sheet in printed]
    placing = next(text for text in texts if "Before you glue" in text)
    assert placing.startswith("Placing") and "is the left page itself" in placing
