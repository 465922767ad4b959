"""The command `templates`."""

from pathlib import Path

import click

from spreadwright.cli import signals, sources
from spreadwright.cli.options import bench_option, language_option, page_option, pdf_option
from spreadwright.cli.pictures import write_file
from spreadwright.store import Collection
from spreadwright.tasks.booklet import Format
from spreadwright.tasks.templates import templates as templates_pdf
from spreadwright.words import speaking


@click.command()
@click.argument("recipe")
@bench_option
@page_option("The paper that is printed on, upright or on its side, whichever takes fewer sheets.")
@language_option
@pdf_option
@click.pass_obj
def templates(
    collection: Collection, recipe: str, bench: str | None, page: str, language: str | None, output: Path
) -> None:
    """Print the placement at full size, on several sheets that are taped together."""
    signals.unwind_on_terminate()
    reading = sources.recipe(recipe, collection)
    with speaking(language or reading.model.language):
        printed = templates_pdf(reading, sources.bench(bench, collection, reading), Format(page))
    write_file(output, printed)
