"""What is shown, without a network, at the address of a page that is not kept."""

import pytest

from gallery.browser.chromium import until

pytestmark = pytest.mark.browser


@pytest.fixture
def reader(browser, address):
    """Somebody who read the German page of one recipe, and has no network any more."""
    context = browser.new_context()
    page = context.new_page()
    page.goto(f"{address}/de/recipes/window-seat/index.html")
    page.wait_for_function("navigator.serviceWorker.controller")
    until(
        page,
        """async (url) => {
          const name = (await caches.keys()).find((each) => each.includes(" recipe "));
          return Boolean(name && await caches.match(url, { cacheName: name }));
        }""",
        f"{address}/de/recipes/window-seat/index.html",
    )
    context.set_offline(True)
    yield page
    context.close()


@pytest.mark.parametrize(
    ("path", "language", "heading"),
    [
        ("de/recipes/three-by-the-sea/index.html", "de", "Es gibt kein Netz"),
        ("fr/tags/index.html", "fr", "Il n’y a pas de réseau"),
        ("recipes/three-by-the-sea/steps.html", "en", "There is no network"),
    ],
)
def test_it_speaks_the_language_of_the_page_that_was_wanted(reader, address, path, language, heading):
    reader.goto(f"{address}/{path}")
    assert reader.get_attribute("html", "lang") == language
    assert reader.get_by_role("heading", level=1).inner_text() == heading


def test_its_links_hold_at_any_depth(reader, address):
    reader.goto(f"{address}/de/recipes/three-by-the-sea/index.html")
    reader.get_by_role("link", name="Layouts", exact=True).click()
    reader.wait_for_url(f"{address}/de/index.html")
    assert reader.get_by_role("heading", level=1).inner_text() == "Layouts für den Basteltisch"


def test_it_leads_to_the_recipes_that_are_kept(reader, address):
    reader.goto(f"{address}/de/paper-sets/two/index.html")
    reader.locator("main").get_by_role("link", name="Window seat").click()
    reader.wait_for_url(f"{address}/de/recipes/window-seat/index.html")
    assert reader.get_by_role("heading", level=1).inner_text() == "Window seat"


def test_it_offers_nothing_where_no_recipe_of_its_language_is_kept(reader, address):
    reader.goto(f"{address}/fr/tags/index.html")
    assert reader.locator("main").get_by_role("link").count() == 0
    assert not reader.get_by_role("heading", level=2).is_visible()


def test_galleries_below_several_paths_are_several_apps(reader, address):
    identity = reader.context.new_cdp_session(reader)
    reader.context.set_offline(False)
    reader.goto(f"{address}/de/index.html")
    assert identity.send("Page.getAppId")["appId"] == f"{address}/de/index.html"
