import json
from datetime import UTC, datetime
from xml.etree.ElementTree import fromstring

import pytest
from click import BadParameter

from gallery.table import varied
from spreadwright.cli.moments import moment
from spreadwright.gallery.overview import feeds
from spreadwright.gallery.overview.feeds import feed_files, feed_links, sitemap_files
from spreadwright.gallery.site import Site

ATOM, MAP = "{http://www.w3.org/2005/Atom}", "{http://www.sitemaps.org/schemas/sitemap/0.9}"
SITE = Site(("en", "de"), address="https://albums.example/ours")
DATED = datetime(2026, 11, 30, 9, tzinfo=UTC)
RECIPES = varied(5)


def test_both_forms_say_the_same():
    files = feed_files(RECIPES, SITE, DATED, "Ours")
    atom, told = fromstring(files["feed.atom"]), json.loads(files["feed.json"])
    entries = [(each.findtext(f"{ATOM}id"), each.findtext(f"{ATOM}title")) for each in atom.iter(f"{ATOM}entry")]
    assert entries == [(each["id"], each["title"]) for each in told["items"]]
    assert entries[0] == ("https://albums.example/ours/recipes/layout-0/", RECIPES[0].title)
    assert {each.findtext(f"{ATOM}updated") for each in atom.iter(f"{ATOM}entry")} == {"2026-11-30T09:00:00+00:00"}
    assert all(each.find(f"{ATOM}author") is not None for each in atom.iter(f"{ATOM}entry"))


def test_readers_of_feeds_read_it():
    feedparser = pytest.importorskip("feedparser")
    read = feedparser.parse(feed_files(RECIPES, SITE, DATED, "Ours")["feed.atom"])
    assert (
        not read.bozo
        and read.version == "atom10"
        and [each.title for each in read.entries] == [each.title for each in RECIPES]
    )


@pytest.mark.parametrize(("site", "dated"), [(Site(("en",)), DATED), (SITE, None)])
def test_without_address_or_date_there_is_no_feed(site, dated):
    assert feed_files(RECIPES, site, dated, "Ours") == {} and feed_links(site, dated) == ()


def test_every_form_is_linked_to():
    assert {each.path for each in feed_links(SITE, DATED)} == set(feed_files(RECIPES, SITE, DATED, "Ours"))


def test_map_lists_ways_in_and_no_others():
    paths = [
        "index.html",
        "404.html",
        "recipes/a b/index.html",
        "recipes/a b/steps.html",
        "de/offline.html",
        "about.html",
    ]
    found = [each.text for each in fromstring(sitemap_files(SITE, paths)["sitemap.xml"]).iter(f"{MAP}loc")]
    home = "https://albums.example/ours/"
    assert found == [f"{home}about.html", home, f"{home}recipes/a%20b/"]
    assert sitemap_files(Site(("en",)), paths) == {}


def test_too_many_pages_are_listed_in_several_maps(monkeypatch):
    monkeypatch.setattr(feeds, "MOST_LISTED", 3)
    files = sitemap_files(SITE, [f"{letter}.html" for letter in "abcdefgh"])
    led = [each.text for each in fromstring(files["sitemap.xml"]).iter(f"{MAP}loc")]
    assert led == [f"https://albums.example/ours/sitemap-{number}.xml" for number in (1, 2, 3)]
    listed = [
        each.text for number in (1, 2, 3) for each in fromstring(files[f"sitemap-{number}.xml"]).iter(f"{MAP}loc")
    ]
    assert listed == [f"https://albums.example/ours/{letter}.html" for letter in "abcdefgh"]


def test_moments_are_read_as_days_times_and_seconds():
    assert moment("2026-11-30T09:00") == moment("2026-11-30T10:00+01:00") == DATED
    assert moment(str(int(DATED.timestamp()))) == DATED and moment("") is None


@pytest.mark.parametrize("given", ["yesterday", "9" * 30, "2026-13-01", "-5"])
def test_no_moment_is_refused(given):
    with pytest.raises(BadParameter, match="is no date"):
        moment(given)
