"""Pages put into the theme by MkDocs' own environment, navigation and context, anywhere and in any order.

MkDocs itself builds pages one after the other in one process. Those of a collection are rendered where they are made.
"""

from collections.abc import Callable
from functools import lru_cache
from typing import Any

from jinja2 import Environment, TemplateError, pass_context
from jinja2.runtime import Context
from markupsafe import Markup
from mkdocs.commands.build import get_context
from mkdocs.config import load_config
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.structure.files import File, get_files
from mkdocs.structure.nav import get_navigation
from mkdocs.structure.pages import Page

from spreadwright import shipped, words
from spreadwright.gallery.naming import named
from spreadwright.gallery.overview.paper_words import core_words, face_words, stock_words, weight_words
from spreadwright.gallery.refusals import GalleryNotBuilt
from spreadwright.gallery.site import Site
from spreadwright.gallery.typesetting import FILTERS

PageOf = tuple[str, str, dict[str, Any]]
"""A template, the path of what is made from it below the home of its language, and what it is shown."""


class Shell:
    """What surrounds every page of a gallery."""

    def __init__(self, site: Site) -> None:
        self._site = site
        self._config = configuration(site)
        self._files = get_files(self._config)
        self._nav = get_navigation(self._files, self._config)
        self._env = dressed(self._config.theme.get_env())

    @property
    def name(self) -> str:
        """What the gallery is called."""
        return str(self._config.site_name)

    def page(self, template: str, path: str, language: str, shown: dict[str, Any]) -> bytes:
        """One page as HTML.

        Args:
            template: Of the theme.
            path: Of the page, below the home of its language.
            language: The one that it speaks.
            shown: What the template is given, beside what every template is given.

        Raises:
            GalleryNotBuilt: The template is faulty.
        """
        source = (self._site.home(language) + path).removesuffix(".html") + ".md"
        page = Page(None, File(source, None, "", use_directory_urls=False), self._config)
        context = {
            **get_context(self._nav, (), self._config, page),
            **surroundings(self._site, language, path),
            **shown,
        }
        with words.speaking(language):
            try:
                return self._env.get_template(template).render(context).encode()
            except TemplateError as reason:
                raise GalleryNotBuilt(f"{template} cannot show {path}: {reason}") from reason


@lru_cache(maxsize=2)
def shell(site: Site, theme: str) -> Shell:
    """The shell of a gallery, made once in a process for each state of the theme, of which `theme` is a digest."""
    return Shell(site)


def configuration(site: Site, output: str = "") -> MkDocsConfig:
    """The site's sources as MkDocs reads them; they are only read.

    Raises:
        MkDocsException: They are faulty.
    """
    file = str(shipped.folder("site") / "mkdocs.yml")
    given: dict[str, Any] = {"site_dir": output} if output else {}
    return load_config(file, site_url=site.address, extra={"api": site.api}, **given)


def dressed(env: Environment) -> Environment:
    """Templates that speak, and escape everything that is not marked as safe: titles are text, whatever they hold."""
    env.autoescape = True
    env.add_extension("jinja2.ext.i18n")
    env.install_gettext_callables(words.gettext, words.ngettext)  # type: ignore[attr-defined]  # by the extension
    env.globals["in_every_language"] = _in_every_language
    env.filters.update(
        FILTERS,
        named=named,
        face_words=face_words,
        weight_words=weight_words,
        core_words=core_words,
        stock_words=stock_words,
        page=_page,
    )
    return env


def surroundings(site: Site, language: str, path: str = "") -> dict[str, Any]:
    """What every template is given; a page that has one language only is given without its path."""
    alternates = site.alternates(path) if path else ()
    return {"site": site, "language": language, "home": site.home(language), "alternates": alternates, "here": path}


def _in_every_language(site: Site, caller: Callable[[str], str]) -> Markup:
    """What a template says in its `call` block, once in each language of the gallery."""
    parts = []
    for language in site.languages:
        with words.speaking(language):
            parts.append(caller(language))
    return Markup("").join(parts)


@pass_context
def _page(context: Context, path: str) -> str:
    """The path of a page, or of a file with words in it, in the language of the page that leads there."""
    return str(context["home"]) + path
