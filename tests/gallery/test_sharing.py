"""How a recipe is found, credited and shown elsewhere."""

import json
from html.parser import HTMLParser

import pytest

from builder import SOUND
from gallery.built import HOSTILE
from spreadwright.document import read_recipe
from spreadwright.gallery.recipe.lineage import Lineage, Relative, lineages
from spreadwright.gallery.recipe.sharing import UNKNOWN, absolute, shared
from spreadwright.gallery.work.documents import Outline


def recipe(recipe_id="window-seat", **members):
    return read_recipe(json.dumps(SOUND | members).encode(), recipe_id)


class Elements(HTMLParser):
    def __init__(self, text):
        super().__init__()
        self.found = []
        self.words = ""
        self.feed(text)

    def handle_starttag(self, tag, attrs):
        self.found.append((tag, dict(attrs)))

    def handle_data(self, data):
        self.words += data


def test_lineage_is_shown_both_ways_one_step_each():
    found = lineages(
        [
            Outline("first", "First", "en", ()),
            Outline("second", "Second", "en", ("first",)),
            Outline("third", "Third", "en", ("second", "lost")),
        ]
    )
    first, second, third = (
        Relative(each.title(), "en", f"recipes/{each}/index.html") for each in ("first", "second", "third")
    )
    assert found["first"] == Lineage((), (second,))
    assert found["second"] == Lineage((first,), (third,))
    assert found["third"] == Lineage((second, Relative("lost", "", "")), ())


def test_snippet_is_sound_html_whatever_the_titles_hold():
    model = recipe(title=HOSTILE, authors=["<b>A</b>"], licence="CC0-1.0").model
    found = shared(model, "recipes/window-seat/index.html", "https://albums.example/ours")
    elements = Elements(found.snippet)
    assert [tag for tag, _ in elements.found] == ["figure", "a", "img", "figcaption"]
    assert elements.found[1][1]["href"] == found.address == "https://albums.example/ours/recipes/window-seat/"
    assert elements.found[2][1]["src"] == "https://albums.example/ours/pictures/window-seat/card.png"
    assert elements.found[2][1]["alt"] == HOSTILE
    assert HOSTILE in elements.words and "<b>A</b>" in elements.words


def test_without_an_address_there_is_no_code_and_the_snippet_waits_for_it():
    found = shared(recipe().model, "recipes/window-seat/index.html", "")
    assert (found.address, found.picture, found.code) == ("", "", "")
    assert found.snippet.count(UNKNOWN) == 2


@pytest.mark.parametrize("site", ["https://albums.example/ours", "https://albums.example/ours/"])
def test_addresses_are_quoted_below_the_site(site):
    assert absolute(site, "recipes/über uns?/") == "https://albums.example/ours/recipes/%C3%BCber%20uns%3F/"
