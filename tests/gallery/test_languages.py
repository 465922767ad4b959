"""Every page in every language, each leading to the others, at whatever depth and in whatever folder."""

import json
import os
import re
import subprocess
import sys
from concurrent.futures import ThreadPoolExecutor
from pathlib import PurePosixPath

import pytest

from gallery.built import SINGLE, Html, dead_ends, fingerprints, write_collection
from spreadwright.errors import InvalidDocument, InvalidDocuments
from spreadwright.gallery import Kept, Site, build
from spreadwright.store import Collection
from spreadwright.words import LANGUAGES

PAGES = ("index.html", "recipes/one-page/index.html", "paper-sets/kitchen/index.html")


class Alternates(Html):
    """The language of a page, and where it says that it is in others."""

    def handle_starttag(self, tag, attrs):
        given = dict(attrs)
        if tag == "html":
            self.language = given["lang"]
        if given.get("rel") == "alternate" and "hreflang" in given:
            self.found = {**getattr(self, "found", {}), given["hreflang"]: given["href"]}
        super().handle_starttag(tag, attrs)


@pytest.mark.parametrize("path", PAGES)
def test_pages_lead_to_themselves_in_every_language(site, path):
    for language in LANGUAGES:
        page = site / Site().home(language) / path
        told = Alternates(page)
        assert told.language == language
        assert set(told.found) == set(LANGUAGES)
        leads = {other: (page.parent / address).resolve() for other, address in told.found.items()}
        assert leads == {other: (site / Site().home(other) / path).resolve() for other in LANGUAGES}


def test_links_within_a_language_stay_in_it(site):
    page = site / "de" / "index.html"
    links = [PurePosixPath(os.path.normpath(f"de/{link}")) for link in Html(page).links if "recipes/" in link]
    assert links and all(link.parts[0] == "de" for link in links)


def test_words_in_another_language_than_the_page_say_so(site):
    pages = site / "de" / "recipes" / "window-seat"
    assert '<p class="figures" lang="de">' in (pages / "index.html").read_text("utf-8").split("</header>")[1]
    assert '<bdi lang="en">Window seat</bdi>' in (pages / "steps.html").read_text("utf-8")


def test_a_colon_stands_apart_in_french(site):
    page = (site / "fr" / "recipes" / "window-seat" / "index.html").read_text("utf-8")
    headings = re.findall(r'<h3 id="sheet-\d+">(.*?)</h3>', page)
    assert headings and all("\N{NO-BREAK SPACE}: " in heading for heading in headings)


def test_an_unknown_address_is_told_in_every_language(site):
    page = (site / "404.html").read_text("utf-8")
    told = re.findall(r'<div lang="(\w+)">\s*<h([12])>(.*?)</h', page)
    assert [(language, level) for language, level, _ in told] == [("en", "1"), ("de", "2"), ("fr", "2")]
    assert len({words for *_, words in told}) == 3
    assert all(f'href="/{home}index.html"' in page for home in ("", "de/", "fr/"))


def test_pictures_and_downloads_without_words_lie_there_once(site):
    once = {file.name for folder in ("pictures", "downloads") for file in (site / folder).rglob("*.*")}
    in_german = {file.name for file in (site / "de").rglob("*.*")}
    assert {"one-page.json", "one-page-spread.png", "card.png"} <= once
    assert not {name for name in once & in_german if name.endswith((".webp", ".png", ".pdf", ".json"))}


@pytest.fixture(scope="session")
def alone(tmp_path_factory):
    """A collection of one small recipe that fits no papers, which is made quickly."""
    folder = tmp_path_factory.mktemp("alone")
    alone = {**SINGLE, "title": "Alone", "sheets": SINGLE["sheets"][:1], "placements": SINGLE["placements"][:1]}
    (folder / "alone.json").write_text(json.dumps({**alone, "photos": [], "language": "de"}))
    return Collection(folder)


def test_the_first_language_lies_at_the_root(alone, make, tmp_path):
    make(alone, tmp_path / "gallery", site=Site(("de", "fr")))
    languages = {name: Alternates(tmp_path / "gallery" / name / "index.html").language for name in (".", "fr")}
    assert languages == {".": "de", "fr": "fr"}
    assert not (tmp_path / "gallery" / "de").exists() and list(dead_ends(tmp_path / "gallery")) == []
    make(alone, tmp_path / "gallery", site=Site(("fr",)))
    assert not hasattr(Alternates(tmp_path / "gallery" / "index.html"), "found")


def test_pages_name_the_service_and_their_address(alone, make, tmp_path):
    site = Site(("en",), "https://albums.example/ours/", "https://api.example/")
    make(alone, tmp_path / "gallery", site=site)
    page = (tmp_path / "gallery/recipes/alone/index.html").read_text()
    assert '<meta name="spreadwright-api" content="https://api.example/">' in page
    assert '"https://albums.example/ours/recipes/alone/"' in page
    make(alone, tmp_path / "gallery", site=Site(api="."))
    page = (tmp_path / "gallery/fr/recipes/alone/index.html").read_text()
    assert re.search('<meta name="spreadwright-api" content="(../)*../../../?">'.replace(".", "[.]"), page)


def test_two_processes_another_seed_and_another_locale_give_the_same_bytes(collection, site, tmp_path):
    surroundings = {
        **os.environ,
        "PYTHONPATH": os.pathsep.join(sys.path),
        "XDG_CACHE_HOME": str(tmp_path / "cache"),
        "PYTHONHASHSEED": "7",
        "LC_ALL": "de_DE.UTF-8",
        "TZ": "Asia/Kolkata",
    }
    program = (
        "from pathlib import Path; from spreadwright.gallery import build; from spreadwright.store import Collection; "
        f"build(Collection(Path({str(collection.folder)!r})), Path({str(tmp_path / 'gallery')!r}), processes=2)"
    )
    subprocess.run([sys.executable, "-c", program], check=True, env=surroundings)
    assert fingerprints(tmp_path / "gallery") == fingerprints(site)


def test_any_executor_serves(alone, make, tmp_path):
    make(alone, tmp_path / "here")
    with ThreadPoolExecutor(2) as threads:
        build(alone, tmp_path / "there", executor=threads)
    assert fingerprints(tmp_path / "there") == fingerprints(tmp_path / "here")


def test_only_what_changed_is_made_again(alone, tmp_path, monkeypatch):
    from spreadwright.gallery import making

    made = []

    def counted(order):
        made.append((order.recipe.id, order.pictures is not None))
        return made_recipe(order)

    made_recipe = making.made_recipe
    monkeypatch.setattr(making, "made_recipe", counted)

    def again(**options):
        made.clear()
        build(Collection(folder), tmp_path / "gallery", processes=1, kept=Kept(tmp_path / "kept"), **options)
        return sorted(made)

    folder = tmp_path / "collection"
    folder.mkdir()
    text = (alone.folder / "alone.json").read_text()
    for name in ("one", "two"):
        (folder / f"{name}.json").write_text(text)
    assert again() == [("one", False), ("two", False)]
    assert again() == []
    (folder / "two.json").write_text(text.replace("Alone", "Changed"))
    assert again() == [("two", False)]
    assert "Changed" in (tmp_path / "gallery/index.html").read_text()
    assert again(site=Site(("en",))) == [("one", True), ("two", True)]
    (folder / "two.json").unlink()
    assert again(site=Site(("en",))) == []
    assert not (tmp_path / "gallery/recipes/two").exists()


def test_every_broken_recipe_is_named(make, tmp_path):
    folder = write_collection(tmp_path / "collection")
    for name in ("b-broken", "a-broken"):
        (folder / f"{name}.json").write_text(json.dumps({**SINGLE, "sheets": []}))
    with pytest.raises(InvalidDocuments) as refused:
        make(Collection(folder), tmp_path / "gallery")
    assert [each.name for each in refused.value.documents] == ["a-broken", "b-broken"]
    assert all(each.findings for each in refused.value.documents)
    (folder / "b-broken.json").unlink()
    with pytest.raises(InvalidDocument):
        make(Collection(folder), tmp_path / "gallery")
    assert not (tmp_path / "gallery").exists()
