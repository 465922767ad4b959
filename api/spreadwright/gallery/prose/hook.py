"""What MkDocs is told while it builds the prose: what templates are given, and how text is escaped."""

from collections.abc import Sequence

from jinja2 import Environment
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.structure.files import Files
from mkdocs.structure.nav import Navigation
from mkdocs.structure.pages import Page
from mkdocs.utils.templates import TemplateContext

from spreadwright.gallery.prose.commands import Command
from spreadwright.gallery.prose.reference import chapters
from spreadwright.gallery.shell import dressed, surroundings
from spreadwright.gallery.site import Site
from spreadwright.words import SOURCE

_MAP = "sitemap.xml"


class GalleryHook:
    """Gives the templates of the prose what they need, and keeps MkDocs from what it would add."""

    def __init__(self, site: Site, commands: Sequence[Command] = ()) -> None:
        self._site = site
        self._shown = {"format.html": {"chapters": chapters()}, "commands.html": {"commands": commands}}

    def on_config(self, config: MkDocsConfig) -> MkDocsConfig:
        """Without a map of the site by MkDocs, which would carry the day of the build."""
        config.theme.static_templates.discard(_MAP)
        return config

    def on_files(self, files: Files, *, config: MkDocsConfig) -> Files:
        """The map is no template any more, so it would be copied as it stands."""
        files.remove(files.src_uris[_MAP])
        return files

    def on_env(self, env: Environment, *, config: MkDocsConfig, files: Files) -> Environment:
        """Dress the templates."""
        return dressed(env)

    def on_page_context(
        self, context: TemplateContext, *, page: Page, config: MkDocsConfig, nav: Navigation
    ) -> TemplateContext:
        """What surrounds a page, and what the reference shows."""
        shown = self._shown.get(page.meta.get("template", ""), {})
        return {**context, **surroundings(self._site, SOURCE), **shown}  # type: ignore[typeddict-item]

    def on_template_context(
        self, context: TemplateContext, *, template_name: str, config: MkDocsConfig
    ) -> TemplateContext:
        """Likewise for pages without Markdown."""
        return {**context, **surroundings(self._site, SOURCE)}  # type: ignore[typeddict-item]
