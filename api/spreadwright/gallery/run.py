"""MkDocs, run over the site's sources with the pages of a collection added: the only door to it."""

from pathlib import Path

from mkdocs.commands.build import build as build_site
from mkdocs.config import load_config
from mkdocs.exceptions import MkDocsException

from spreadwright import shipped
from spreadwright.errors import SpreadwrightError
from spreadwright.gallery.hook import GalleryHook


class GalleryNotBuilt(SpreadwrightError):
    """MkDocs gave up; its error is the cause and what it found wrong stands in its log."""

    def __str__(self) -> str:
        return f"The gallery was not built: {self.__cause__}"


def run_mkdocs(hook: GalleryHook, output: Path) -> None:
    """Build strictly into an existing folder; the site's sources are only read.

    Raises:
        GalleryNotBuilt: A page is faulty, or a link leads nowhere.
    """
    try:
        config = load_config(str(shipped.folder("site") / "mkdocs.yml"), site_dir=str(output))
        config.plugins["gallery"] = hook  # type: ignore[assignment]  # any object with its events will do
        build_site(config)
    except MkDocsException as cause:
        raise GalleryNotBuilt from cause
