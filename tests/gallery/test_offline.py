import json
import posixpath
import re
from pathlib import Path

import pytest

from spreadwright.gallery.offline import offline_files
from spreadwright.gallery.shell import Shell
from spreadwright.gallery.site import Site
from spreadwright.images import read


@pytest.fixture(scope="module")
def files():
    return offline_files(Shell(Site(("en",))), Site(("en",)))


def resolved(home: str, path: str) -> str:
    """The path in the site of what a file in the home of a language names."""
    return posixpath.normpath(home + path)


def listed(worker: bytes) -> list[str]:
    return json.loads(re.search(r"const SHELL = (\[.*\]);", worker.decode())[1])


def test_manifest_names_icons_that_are_there_at_their_size(files):
    manifest = json.loads(files["manifest.webmanifest"])
    assert {icon["purpose"] for icon in manifest["icons"]} == {"any", "maskable"}
    for icon in manifest["icons"]:
        pixels = read(files[icon["src"]]).pixels
        assert f"{pixels.shape[1]}x{pixels.shape[0]}" == icon["sizes"]


def test_manifest_holds_below_any_path(files):
    manifest = json.loads(files["manifest.webmanifest"])
    assert all(manifest[name].startswith("./") for name in ("start_url", "scope"))
    assert not any(icon["src"].startswith("/") for icon in manifest["icons"])
    assert "id" not in manifest  # it would not heed the path


def test_every_language_has_a_page_and_a_manifest_of_its_own():
    languages = ("en", "de", "fr")
    files = offline_files(Shell(Site(languages)), Site(languages))
    for language, home in zip(languages, ("", "de/", "fr/"), strict=True):
        assert f'<html lang="{language}">'.encode() in files[f"{home}offline.html"]
        manifest = json.loads(files[f"{home}manifest.webmanifest"])
        assert manifest["lang"] == language
        assert {resolved(home, manifest["start_url"]), resolved(home, manifest["scope"])} == {f"{home}index.html", "."}
        assert all(resolved(home, icon["src"]) in files for icon in manifest["icons"])
    assert {f"{home}{page}" for home in ("", "de/", "fr/") for page in ("index.html", "offline.html")} <= {
        *listed(files["sw.js"])
    }


def test_a_masked_icon_is_one_colour_where_it_may_be_cut_off(files):
    pixels = read(files["assets/icon-mask-512.png"]).pixels
    rim = {tuple(colour) for colour in (*pixels[:40].reshape(-1, 3), *pixels[:, :40].reshape(-1, 3))}
    assert rim == {(0x2B, 0x2A, 0x28)}


def test_worker_keeps_files_that_are_in_the_site(site: Path):
    assert [path for path in listed((site / "sw.js").read_bytes()) if not (site / path).is_file()] == []


def test_worker_is_another_when_what_every_page_needs_is(files, monkeypatch):
    changed = {"assets/gallery.css": b"body { color: red }"}
    monkeypatch.setattr("spreadwright.gallery.offline._assets", lambda: changed)
    other = offline_files(Shell(Site(("en",))), Site(("en",)))["sw.js"]
    version = re.compile(rb'const VERSION = "([0-9a-f]{16})"')
    assert version.match(other)[1] != version.match(files["sw.js"])[1]


def test_same_files_give_the_same_worker():
    one, other = (offline_files(Shell(Site(("en",))), Site(("en",))) for _ in range(2))
    assert one == other
