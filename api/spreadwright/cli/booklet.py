"""The command `booklet`."""

from pathlib import Path

import click

from spreadwright import tasks
from spreadwright.cli import signals, sources
from spreadwright.cli.options import (
    bench_option,
    colourway_option,
    language_option,
    page_option,
    pdf_option,
    set_option,
)
from spreadwright.cli.pictures import write_file
from spreadwright.store import Collection
from spreadwright.tasks.booklet import Format, dress, recipe_address
from spreadwright.tasks.booklet import booklet as booklet_pdf


@click.command()
@click.argument("recipe")
@set_option
@colourway_option()
@bench_option
@page_option("The paper that it is printed on, upright.")
@language_option
@click.option(
    "--address",
    envvar="SPREADWRIGHT_ADDRESS",
    metavar="URL",
    default="",
    help="Where the collection is published: the cover then carries a square code that leads to the recipe there.",
)
@pdf_option
@click.pass_obj
def booklet(
    collection: Collection,
    recipe: str,
    set_id: str | None,
    colourway_id: str | None,
    bench: str | None,
    page: str,
    language: str | None,
    address: str,
    output: Path,
) -> None:
    """Print everything that a class needs as one PDF: cover, cuts, piles, gluing, photographs."""
    signals.unwind_on_terminate()
    reading = sources.recipe(recipe, collection)
    found = tasks.proven(reading)
    worn = dress(
        found, sources.named_papers(set_id, colourway_id, collection), collection.sound_paper_sets(), colourway_id
    )
    if worn is None:
        click.echo("no paper set fits this recipe: the booklet is printed without papers …", err=True)
    try:
        code = recipe_address(address, found.id)
    except ValueError as reason:
        raise click.BadParameter(str(reason), param_hint="--address") from reason
    printed = booklet_pdf(
        reading,
        sources.bench(bench, collection, reading),
        worn,
        paper=Format(page),
        language=language or found.language,
        address=code,
        told=lambda what: click.echo(f"{what} …", err=True),
    )
    write_file(output, printed)
