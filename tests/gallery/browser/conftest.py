import pytest

from gallery.browser.chromium import CHROMIUM, QUIET, served


@pytest.fixture(scope="session")
def browser():
    api = pytest.importorskip("playwright.sync_api")
    with api.sync_playwright() as playwright:
        chromium = playwright.chromium.launch(executable_path=CHROMIUM, args=QUIET)
        yield chromium
        chromium.close()


@pytest.fixture(scope="session")
def address(site):
    """The built gallery, served under a sub-path, as from somebody's own web space."""
    with served(site.parent) as root:
        yield f"{root}/{site.name}"


@pytest.fixture
def page(browser):
    """A fresh page on a desk screen; what its console complains of fails the test."""
    context = browser.new_context(viewport={"width": 1440, "height": 900})
    shown, wrong = context.new_page(), []
    shown.on("console", lambda message: wrong.append(message.text) if message.type in ("error", "warning") else None)
    shown.on("pageerror", lambda error: wrong.append(str(error)))
    yield shown
    context.close()
    assert wrong == []
