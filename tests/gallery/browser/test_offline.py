"""The gallery with the network off, after a first visit."""

import time

import pytest

from gallery.browser.chromium import QuietHandler, served, until

pytestmark = pytest.mark.browser

FOLDER = "recipes/window-seat"
FILES = 4 + 3 + 18
"""Of that recipe: its page, its steps in either unit, the script of the other; its papers; a picture for each step."""
PAPERS = "[...new Set([...document.querySelectorAll('[data-spread] image')].map((image) => image.href.baseVal))]"
KEPT = """async () => {
  const found = {};
  for (const name of await caches.keys()) {
    found[name] = (await (await caches.open(name)).keys()).map((each) => each.url);
  }
  return found;
}"""


@pytest.fixture
def visitor(browser):
    context = browser.new_context()
    yield context.new_page()
    context.close()


def kept(page) -> list[str]:
    return [url for name, urls in page.evaluate(KEPT).items() if " recipe " in name for url in urls]


def visit(page, url):
    """Open a page and wait until its recipe is kept."""
    page.goto(url)
    page.wait_for_function("navigator.serviceWorker.controller")
    until(
        page,
        """async (count) => {
          const names = (await caches.keys()).filter((name) => name.includes(" recipe "));
          const sizes = await Promise.all(names.map(async (name) => (await (await caches.open(name)).keys()).length));
          return Math.max(0, ...sizes) >= count;
        }""",
        FILES,
    )


def test_steps_are_there_without_a_network(visitor, address):
    visit(visitor, f"{address}/{FOLDER}/steps.html")
    visitor.context.set_offline(True)
    visitor.reload()
    visitor.wait_for_selector(".one-by-one")
    visitor.keyboard.press("ArrowRight")
    assert "Cut 1" in visitor.locator(".screen:visible h2").inner_text()
    fonts = visitor.evaluate(
        "document.fonts.ready.then(() => [...document.fonts].filter(f => f.status === 'loaded').length)"
    )
    assert fonts >= 2
    visitor.get_by_role("button", name="Millimetres").click()
    visitor.wait_for_url("**/steps-mm.html*")
    assert visitor.locator(".screen:visible").count() == 1


def test_a_visited_recipe_is_there_with_its_step_pictures(visitor, address):
    visit(visitor, f"{address}/{FOLDER}/index.html")
    assert any(url.endswith("/cut-1.svg") for url in kept(visitor))
    visitor.context.set_offline(True)
    visitor.goto(f"{address}/{FOLDER}/index.html")
    picture = visitor.locator("img.step").first
    picture.scroll_into_view_if_needed()
    visitor.wait_for_function("document.querySelector('img.step').naturalWidth > 0")
    visitor.get_by_role("link", name="Step by step").click()
    visitor.wait_for_selector(".one-by-one")


@pytest.mark.parametrize("last", ["index.html", "steps.html"])
def test_a_visited_recipe_is_there_with_its_papers_whichever_page_was_last(visitor, address, last):
    visit(visitor, f"{address}/{FOLDER}/index.html")
    papers = visitor.evaluate(f"{PAPERS}.map((path) => new URL(path, location.href).href)")
    assert len(papers) >= 3
    steps = [f"{address}/pictures/window-seat/cut-1.svg", f"{address}/pictures/window-seat/piece-1.svg"]
    visitor.goto(f"{address}/{FOLDER}/{last}")
    visitor.wait_for_timeout(500)
    assert set(papers + steps) <= set(kept(visitor))


def change_steps(gallery) -> None:
    """In the place of the gallery that was linked, steps of a later one."""
    text = (gallery / FOLDER / "steps.html").read_text(encoding="utf-8").replace("What you need", "What you need now")
    gallery.unlink()
    (gallery / FOLDER).mkdir(parents=True)
    (gallery / FOLDER / "steps.html").write_text(text, encoding="utf-8")


def test_what_is_gone_is_kept_no_longer(visitor, site, tmp_path):
    folder = tmp_path / "gallery"
    folder.symlink_to(site)
    with served(tmp_path) as root:
        url = f"{root}/gallery/{FOLDER}/steps.html"
        visit(visitor, url)
        assert url in kept(visitor)
        folder.unlink()
        folder.mkdir()
        visitor.goto(f"{url}?now")
        visitor.wait_for_timeout(300)
        assert url not in kept(visitor)


class Slow(QuietHandler):
    """Answers later than anybody waits, where it is about steps."""

    is_slow = False

    def send_head(self):
        """The file, late."""
        if self.is_slow and "steps.html" in self.path:
            time.sleep(5)
        return super().send_head()


def test_what_comes_late_is_shown_the_next_time(visitor, site, tmp_path, monkeypatch):
    (tmp_path / "gallery").symlink_to(site)
    with served(tmp_path, Slow) as root:
        url = f"{root}/gallery/{FOLDER}/steps.html"
        visit(visitor, url)
        monkeypatch.setattr(Slow, "is_slow", True)
        change_steps(tmp_path / "gallery")
        visitor.goto(f"{url}#step=start")
        visitor.reload(wait_until="commit")
        visitor.wait_for_selector("#needs", state="attached")
        assert visitor.locator("#needs").inner_text() == "What you need"
        visitor.wait_for_timeout(2500)
        visitor.context.set_offline(True)
        visitor.reload(wait_until="commit")
        visitor.wait_for_selector("#needs", state="attached")
        assert visitor.locator("#needs").inner_text() == "What you need now"


class Tidy(QuietHandler):
    """Sends on from every index to its folder, as many hosts do, and from one picture to another page."""

    def send_head(self):
        """The file, or where it is."""
        path = self.path.partition("?")[0]
        if not path.endswith(("/index.html", "/cut-2.svg")):
            return super().send_head()
        self.send_response(301)
        self.send_header(
            "Location", path.removesuffix("index.html") if path.endswith(".html") else "/gallery/about.html"
        )
        self.end_headers()
        return None


def test_what_a_host_sends_on_to_its_folder_is_kept_and_nothing_else_that_is_sent_on(visitor, site, tmp_path):
    (tmp_path / "gallery").symlink_to(site)
    with served(tmp_path, Tidy) as root:
        here = f"{root}/gallery/{FOLDER}/index.html"
        visitor.goto(here)
        visitor.wait_for_function("navigator.serviceWorker.controller")
        until(visitor, f"caches.match({here!r}).then(Boolean)")
        until(visitor, f"caches.match({root + '/gallery/index.html'!r}).then(Boolean)")
        assert any(url.endswith("/cut-1.svg") for url in kept(visitor))
        assert not any(url.endswith("/cut-2.svg") for url in kept(visitor))
        visitor.context.set_offline(True)
        for path in ("", f"{FOLDER}/index.html", f"{FOLDER}/"):
            visitor.goto(f"{root}/gallery/{path}")
            assert visitor.locator("h1").count() == 1 and "no network" not in visitor.locator("h1").inner_text()


def test_what_is_not_kept_says_so(visitor, address):
    visit(visitor, f"{address}/{FOLDER}/steps.html")
    visitor.context.set_offline(True)
    visitor.goto(f"{address}/about.html")
    assert visitor.get_by_role("heading", level=1).inner_text() == "There is no network"


def test_the_network_comes_first_and_renews_what_is_kept(visitor, site, tmp_path):
    folder = tmp_path / "gallery"
    folder.symlink_to(site)
    with served(tmp_path) as root:
        url = f"{root}/gallery/{FOLDER}/steps.html"
        visit(visitor, url)
        change_steps(folder)
        visitor.goto(f"{url}#step=start")
        visitor.reload()
        assert visitor.locator("#needs").inner_text() == "What you need now"
        visitor.wait_for_timeout(300)
        visitor.context.set_offline(True)
        visitor.reload()
        assert visitor.locator("#needs").inner_text() == "What you need now"


def test_caches_of_an_older_build_are_deleted(visitor, address):
    visitor.goto(f"{address}/about.html")
    here = visitor.evaluate("new URL('.', location.href).pathname")
    visitor.evaluate("name => caches.open(name)", f"spreadwright {here} shell 0000")
    visitor.evaluate("() => caches.open('somebody else')")
    visitor.evaluate("navigator.serviceWorker.ready.then((it) => it.unregister())")
    visitor.goto(f"{address}/about.html")
    until(visitor, "caches.keys().then((names) => !names.some((name) => name.endsWith('shell 0000')))")
    names = visitor.evaluate("caches.keys()")
    assert "somebody else" in names and any(name.startswith(f"spreadwright {here} shell ") for name in names)


def test_only_so_many_recipes_are_kept(visitor, address):
    visit(visitor, f"{address}/{FOLDER}/steps.html")
    visitor.evaluate(
        """async () => {
          const { active } = await navigator.serviceWorker.ready;
          for (let number = 0; number < 20; number += 1) {
            active.postMessage({ recipe: `recipe-${number}`, keep: [location.href] });
            await new Promise((done) => { setTimeout(done, 60); });
          }
        }"""
    )
    visitor.wait_for_timeout(500)
    names = [name for name in visitor.evaluate("caches.keys()") if " recipe " in name]
    assert len(names) <= 12 and any(name.endswith("recipe-19") for name in names)


def test_the_worker_keeps_nothing_from_elsewhere(visitor, address):
    visit(visitor, f"{address}/{FOLDER}/steps.html")
    visitor.evaluate(
        """async () => {
          const { active } = await navigator.serviceWorker.ready;
          const urls = ["https://elsewhere.example/x", 7, `${location.origin}/outside`];
          active.postMessage({ recipe: "stranger", keep: urls });
          active.postMessage("nonsense");
        }"""
    )
    visitor.wait_for_timeout(300)
    assert all(url.startswith(address) for url in kept(visitor))


def test_it_can_be_installed_below_a_path(visitor, address):
    visitor.goto(f"{address}/index.html")
    client = visitor.context.new_cdp_session(visitor)
    found = client.send("Page.getAppManifest")
    assert found["errors"] == [] and found["url"] == f"{address}/manifest.webmanifest"
    scope = visitor.evaluate("navigator.serviceWorker.ready.then((it) => it.scope)")
    assert scope == f"{address}/"
