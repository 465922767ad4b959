"""MkDocs, run over the site's sources: the prose, the reference, and whatever files lie beside them."""

from collections.abc import Sequence
from pathlib import Path

from mkdocs.commands.build import build as build_site
from mkdocs.exceptions import MkDocsException

from spreadwright.gallery.prose.commands import Command
from spreadwright.gallery.prose.hook import GalleryHook
from spreadwright.gallery.refusals import GalleryNotBuilt
from spreadwright.gallery.shell import configuration
from spreadwright.gallery.site import Site


def run_mkdocs(site: Site, output: Path, commands: Sequence[Command] = ()) -> None:
    """Build strictly into an existing folder, which is emptied; the site's sources are only read.

    Raises:
        GalleryNotBuilt: A page is faulty, or a link leads nowhere.
    """
    try:
        config = configuration(site, str(output))
        config.plugins["gallery"] = GalleryHook(site, commands)  # type: ignore[assignment]  # any object with its events will do
        build_site(config)
    except MkDocsException as cause:
        raise GalleryNotBuilt(str(cause)) from cause
