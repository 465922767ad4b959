"""Where somebody is who goes through a page by keyboard: always in sight, even under a spread that stays in sight."""

import pytest

from gallery.browser.chromium import opened

pytestmark = pytest.mark.browser

HIDDEN = """() => {
  const now = document.activeElement;
  const { left, top, width, height } = now.getBoundingClientRect();
  const seen = [0.1, 0.5, 0.9].some((share) => {
    const there = document.elementFromPoint(left + width * share, top + height / 2);
    return there && (now.contains(there) || there.contains(now) || there.closest("label")?.contains(now));
  });
  return seen ? "" : now.textContent.trim();
}"""


@pytest.mark.parametrize("size", [(1280, 720), (820, 1180), (360, 740)])
@pytest.mark.parametrize("way", ["Tab", "Shift+Tab"])
@pytest.mark.parametrize("recipe", ["window-seat", "one-page"])
def test_focus_is_never_hidden(browser, address, recipe, way, size):
    page = browser.new_page(viewport={"width": size[0], "height": size[1]})
    opened(page, f"{address}/recipes/{recipe}/index.html")
    hidden = []
    for _ in range(200):
        page.keyboard.press(way)
        if page.evaluate("document.activeElement === document.body"):
            break
        hidden.append(page.evaluate(HIDDEN))
    page.close()
    assert len(hidden) > 30 and not any(hidden)
