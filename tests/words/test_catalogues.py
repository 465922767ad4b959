"""Every sentence that a maker reads is in every catalogue, with the same gaps."""

import re
from collections.abc import Iterator
from functools import cache
from pathlib import Path
from string import Formatter

import pytest
from babel.messages.catalog import Message
from babel.messages.extract import extract_from_dir
from babel.messages.pofile import read_po
from mkdocs.utils import yaml_load

import spreadwright
from spreadwright import shipped
from spreadwright.store import Collection
from spreadwright.words import CATALOGUES, LANGUAGES, TITLES, gettext, listed, ngettext, speaking, title

SOURCES = Path(spreadwright.__file__).parent
TEMPLATES = shipped.folder("site") / "theme"
ENGLISH = ("commands.html", "format.html", "told-script.html")
"""Templates of the prose, which is English, and of scripts."""
TRANSLATED = [path for path in sorted(TEMPLATES.rglob("*.html")) if path.name not in ENGLISH]
KEYWORDS = {"_": None, "gettext": None, "ngettext": (1, 2)}
OTHERS = [language for language in LANGUAGES if language != "en"]

Words = str | tuple[str, ...]


@cache
def said() -> dict[Words, str]:
    """Every message in the code and in the templates of the gallery, and where it stands."""
    found = [
        *extract_from_dir(SOURCES, method_map=[("**.py", "python")], keywords=KEYWORDS),
        *extract_from_dir(TEMPLATES, method_map=[("**.html", "jinja2")], keywords=KEYWORDS),
    ]
    return {words: f"{name}:{line}" for name, line, words, _, _ in found}


def catalogue(language: str, folder: Path = CATALOGUES) -> dict[Words, Message]:
    with (folder / f"{language}.po").open("rb") as file:
        return {message.id: message for message in read_po(file, locale=language) if message.id}


def titles() -> set[str]:
    """What benches, roles and papers that ship are called, and the pages of the gallery's reference."""
    collection = Collection()
    benches = {bench.model.title for bench in collection.benches.values()}
    roles = {role.title for recipe in collection.recipes.values() for role in recipe.model.roles if role.title}
    return (
        benches
        | roles
        | pages()
        | {paper.title for papers in collection.paper_sets.values() for paper in papers.model.papers}
    )


def pages() -> set[str]:
    """What stands in the navigation."""
    entries = [*yaml_load(shipped.folder("site").joinpath("mkdocs.yml").read_text())["nav"]]
    found: set[str] = set()
    while entries:
        ((name, below),) = entries.pop().items()
        found.add(name)
        entries += below if isinstance(below, list) else []
    return found


def gaps(words: str) -> set[str]:
    return {name for _, name, _, _ in Formatter().parse(words) if name is not None}


def forms(words: Words) -> tuple[str, ...]:
    return words if isinstance(words, tuple) else (words,)


def wrong_gaps(messages: dict[Words, Message]) -> Iterator[tuple[str, ...]]:
    for words, message in messages.items():
        meant = {frozenset(gaps(form)) for form in forms(words)}
        if any(frozenset(gaps(form)) not in meant for form in forms(message.string)):
            yield forms(message.string)


def test_there_are_sentences_and_languages():
    assert len(said()) > 100 and OTHERS == ["de", "fr"]


def test_sentences_of_templates_are_among_them():
    assert said()["Skip to the page"].startswith("base.html:")
    assert said()[("{count} layout", "{count} layouts")].endswith(tuple("0123456789"))


@pytest.mark.parametrize("language", OTHERS)
def test_every_sentence_is_translated(language):
    known = catalogue(language)
    missing = {
        where: words for words, where in said().items() if words not in known or not all(forms(known[words].string))
    }
    assert missing == {}


@pytest.mark.parametrize("language", OTHERS)
def test_no_translation_has_lost_its_sentence(language):
    assert [words for words in catalogue(language) if words not in said()] == []


@pytest.mark.parametrize("language", OTHERS)
def test_shipped_titles_are_translated_and_no_others(language):
    assert set(catalogue(language, TITLES)) == titles()
    with speaking(language):
        assert all(title(each) for each in titles()) and title("Mats") != "Mats"
        assert (title("My own trimmer"), title("")) == ("My own trimmer", "")


@pytest.mark.parametrize("language", OTHERS)
def test_gaps_have_the_same_names_in_every_language(language):
    assert list(wrong_gaps(catalogue(language))) == []


@pytest.mark.parametrize("language", OTHERS)
def test_no_translation_is_left_to_be_reviewed(language):
    assert [message.id for message in catalogue(language).values() if message.fuzzy] == []


def test_french_signs_stand_behind_unbroken_spaces():
    wrong = re.compile("(?<!\u202f)[;!?»]|«(?!\u202f)|(?<!\u00a0):")
    assert [m.string for m in catalogue("fr").values() if any(map(wrong.search, forms(m.string)))] == []


def test_no_message_hides_in_a_formatted_string():
    hidden = re.compile(r"\{(_|n?gettext)\(")
    assert [path.name for path in SOURCES.rglob("*.py") if hidden.search(path.read_text())] == []


@pytest.mark.parametrize("template", TRANSLATED, ids=lambda path: path.name)
def test_no_words_of_a_template_hide_from_the_catalogues(template):
    markup = re.sub(
        r"\{#.*?#\}|\{\{.*?\}\}|\{%.*?%\}|<(script|style).*?</\1>", "", template.read_text(), flags=re.DOTALL
    )
    spoken = re.findall(r"(?:aria-label|alt|title|placeholder)=\"([^\"]*)\"", markup)
    assert [words for words in [*spoken, re.sub(r"<[^>]*>", "", markup)] if re.search(r"[^\W\d_]{2}", words)] == []


def test_the_spoken_language_is_heard():
    with speaking("de-AT"):
        assert gettext("Turn it a quarter to the left.") == "Das Papier um eine Vierteldrehung nach links drehen."
        assert ngettext("{count} cut", "{count} cuts", 2) == "{count} Schnitte"
        assert listed(["1", "2", "3"]) == "1, 2 und 3"
    with speaking("fr"):
        assert ngettext("{count} cut", "{count} cuts", 0) == "{count} coupe"
