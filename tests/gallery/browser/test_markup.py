"""The whole site through the Nu HTML checker (https://validator.github.io/validator/), and over plain files."""

import json
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from gallery.browser.chromium import paths
from gallery.built import dead_ends

pytestmark = pytest.mark.browser

CHECKER = Path(sys.prefix) / "checker/node_modules/vnu-jar/build/dist/vnu.jar"


def messages(folder: Path, *options: str) -> list[str]:
    """What the checker has against the pages of a folder."""
    done = subprocess.run(
        ["java", "-jar", CHECKER, "--format", "json", "--skip-non-html", *options, str(folder)],
        capture_output=True,
        text=True,
        check=False,
    )
    found = json.loads(done.stderr)["messages"]
    return [f"{each.get('url', '')}:{each.get('lastLine', '')} {each['message']}" for each in found]


@pytest.fixture(scope="module", autouse=True)
def _checker():
    if not (CHECKER.is_file() and shutil.which("java")):
        pytest.skip("`make test-browser` installs the checker")


def test_every_page_is_sound_html(site):
    assert messages(site) == []


def test_checker_finds_what_is_wrong(tmp_path):
    (tmp_path / "page.html").write_text("<!doctype html><html lang=en><title>x</title><p id=a><p id=a><img>")
    assert len(messages(tmp_path, "--errors-only")) >= 2


def test_links_lead_somewhere(site):
    assert list(dead_ends(site)) == []


def test_every_page_opens_from_a_folder_of_plain_files(browser, site):
    context = browser.new_context()
    page, wrong = context.new_page(), []
    page.on("console", lambda message: wrong.append(f"{page.url}: {message.text}") if message.type == "error" else None)
    page.on("pageerror", lambda error: wrong.append(f"{page.url}: {error}"))
    page.on("requestfailed", lambda request: wrong.append(f"{page.url}: {request.url}"))
    for path in paths(site):
        page.goto((site / path).as_uri())
        page.wait_for_load_state("networkidle")
    context.close()
    assert wrong == []
