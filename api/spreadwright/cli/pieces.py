"""The command `pieces`."""

from pathlib import Path

import click

from spreadwright.cli import printing, sources
from spreadwright.cli.options import FILE, json_option
from spreadwright.cli.pictures import write_file
from spreadwright.store import Collection
from spreadwright.tasks.pieces import pieces_answer, pieces_csv, pieces_of


@click.command()
@click.argument("recipe")
@click.option("-o", "--output", type=FILE, help="NAME.csv; otherwise standard output.")
@json_option
@click.pass_obj
def pieces(collection: Collection, recipe: str, output: Path | None, as_json: bool) -> None:
    """List every piece as a table for spreadsheets: size, sheet, page, face, role, photo."""
    reading = sources.recipe(recipe, collection)
    rows = pieces_of(reading)
    if as_json:
        printing.print_json(pieces_answer(reading.model, rows))
    elif output:
        write_file(output, pieces_csv(rows))
    else:
        click.echo(pieces_csv(rows), nl=False)
