"""What MkDocs is told while it builds: the pages to add, what each of them shows, how text is escaped."""

from collections.abc import Callable, Sequence
from pathlib import Path
from typing import Any, TypeVar

from jinja2 import Environment
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.structure.files import File
from mkdocs.structure.files import Files as SiteFiles
from mkdocs.structure.nav import Navigation
from mkdocs.structure.pages import Page
from mkdocs.utils.templates import TemplateContext

from spreadwright import words
from spreadwright.gallery.jobs import RecipeJob
from spreadwright.gallery.paper_set_page import PaperSetPage, face_words, paper_set_page, stock_words, weight_words
from spreadwright.gallery.pictures import Files
from spreadwright.gallery.recipe_page import RecipePage, recipe_page
from spreadwright.gallery.reference import chapters
from spreadwright.gallery.typesetting import FILTERS
from spreadwright.model import PaperSet

Progress = Callable[[int, int, str], None]
Shown = TypeVar("Shown", RecipePage, PaperSetPage)


_MAP = "sitemap.xml"


class GalleryHook:
    """Adds the pages of a collection to the site.

    Args:
        jobs: One for each recipe.
        papers: The paper sets.
        output: Where the site is built; pictures and downloads are written there as soon as they are made.
        progress: Told after each recipe.
    """

    def __init__(
        self, jobs: Sequence[RecipeJob], papers: Sequence[PaperSet], output: Path, progress: Progress | None
    ) -> None:
        self._jobs, self._papers = jobs, papers
        self._output, self._progress = output, progress
        self._everywhere: dict[str, Any] = {}
        self._pages: dict[str, dict[str, Any]] = {}

    def on_config(self, config: MkDocsConfig) -> MkDocsConfig:
        """Without a map of the site: it would carry the day of the build, and an address that is not known here."""
        config.theme.static_templates.discard(_MAP)
        return config

    def on_files(self, files: SiteFiles, *, config: MkDocsConfig) -> SiteFiles:
        """Draw everything, then add a page for each recipe and paper set, and the reference."""
        files.remove(files.src_uris[_MAP])  # no template any more, so it would be copied as it stands
        recipes = [self._recipe(number, job) for number, job in enumerate(self._jobs, start=1)]
        sets = [self._written(paper_set_page(papers, recipes)) for papers in self._papers]
        self._everywhere = {"recipes": recipes, "sets": sets}
        self._pages = {_source(recipe.path): {"template": "recipe.html", "recipe": recipe} for recipe in recipes}
        self._pages |= {_source(each.path): {"template": "paper_set.html", "set": each} for each in sets}
        self._pages["format.md"] = {"template": "format.html", "chapters": chapters()}
        for source in self._pages:
            files.append(File.generated(config, source, content=""))
        return files

    def on_env(self, env: Environment, *, config: MkDocsConfig, files: SiteFiles) -> Environment:
        """Titles are text, whatever characters they hold: escape everything that is not marked as safe."""
        env.autoescape = True
        env.add_extension("jinja2.ext.i18n")
        env.install_gettext_callables(words.gettext, words.ngettext)  # type: ignore[attr-defined]  # by the extension
        env.filters.update(FILTERS, face_words=face_words, weight_words=weight_words, stock_words=stock_words)
        return env

    def on_page_markdown(self, markdown: str, *, page: Page, config: MkDocsConfig, files: SiteFiles) -> str:
        """Choose the template of a page of ours."""
        if page.file.src_uri in self._pages:
            page.meta["template"] = self._pages[page.file.src_uri]["template"]
        return markdown

    def on_page_context(
        self, context: TemplateContext, *, page: Page, config: MkDocsConfig, nav: Navigation
    ) -> TemplateContext:
        """Hand a page what it shows."""
        shown: dict[str, Any] = {
            "language": words.spoken(),
            **self._everywhere,
            **self._pages.get(page.file.src_uri, {}),
        }
        return {**context, **shown}  # type: ignore[typeddict-item]

    def _recipe(self, number: int, job: RecipeJob) -> RecipePage:
        page = self._written(recipe_page(job))
        if self._progress:
            self._progress(number, len(self._jobs), job.recipe.title)
        return page

    def _written(self, made: tuple[Shown, Files]) -> Shown:
        page, files = made
        for path, data in files.items():
            file = self._output / path
            file.parent.mkdir(parents=True, exist_ok=True)
            file.write_bytes(data)
        return page


def _source(path: str) -> str:
    """The Markdown file that MkDocs believes a page to come from."""
    return path.removesuffix(".html") + ".md"
