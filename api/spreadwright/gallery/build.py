"""From a collection to a folder of pages, all at once or not at all."""

from collections.abc import Callable
from pathlib import Path

from spreadwright.gallery.folder import replaced
from spreadwright.gallery.hook import GalleryHook, Progress
from spreadwright.gallery.jobs import recipe_jobs, sound_paper_sets
from spreadwright.gallery.run import run_mkdocs
from spreadwright.store import Collection

__all__ = ["Progress", "build"]


def build(collection: Collection, output: Path, *, progress: Callable[[int, int, str], None] | None = None) -> None:
    """Write the gallery of a collection into a folder; the same collection gives the same bytes.

    Whatever lay there before stays whole until everything is built.

    Args:
        collection: Recipes, paper sets and benches.
        output: The folder to write; made when missing, replaced when it holds an earlier gallery.
        progress: Told after each recipe: how many are done, how many there are, and the title.

    Raises:
        InvalidDocument: A recipe or a paper set carries an error.
        NotAGallery: The folder holds something else.
        CannotWrite: The folder cannot be written.
        CannotDraw: A picture could not be drawn.
        GalleryNotBuilt: The pages themselves did not build.
    """
    papers = sound_paper_sets(collection)
    jobs = recipe_jobs(collection, papers)
    with replaced(output) as stage:
        run_mkdocs(GalleryHook(jobs, papers, stage, progress), stage)
