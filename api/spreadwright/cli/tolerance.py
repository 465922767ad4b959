"""The command `tolerance`."""

from collections.abc import Iterator

import click

from spreadwright.cli import printing, sources
from spreadwright.cli.options import bench_option, json_option, language_option
from spreadwright.lengths import size_text, with_unit
from spreadwright.store import Collection
from spreadwright.tasks.tolerance import Tolerance
from spreadwright.tasks.tolerance import tolerance as expected
from spreadwright.tasks.tolerance_answers import tolerance_answer
from spreadwright.tolerance import Expected, amount
from spreadwright.words import speaking

_HEADS = ("piece", "size", "", "worst", "typical", "why")


@click.command()
@click.argument("recipe")
@bench_option
@language_option
@json_option
@click.pass_obj
def tolerance(collection: Collection, recipe: str, bench: str | None, language: str | None, as_json: bool) -> None:
    """Say how far each piece may come out off, and what that does to the layout."""
    reading = sources.recipe(recipe, collection)
    with speaking(language or reading.model.language):
        found = expected(reading, sources.bench(bench, collection, reading))
        if as_json:
            printing.print_json(tolerance_answer(found))
        else:
            _print(found)


def _print(found: Tolerance) -> None:
    accuracy = with_unit(found.bench.trimmer.accuracy, found.bench.unit)
    click.echo(f"{found.recipe.title}, for: {found.bench.title}, each cut within {accuracy} of its reading\n")
    rows = [_HEADS, *_rows(found)]
    widths = [max(len(row[column]) for row in rows) for column in range(len(_HEADS) - 1)]
    for row in rows:
        cells = [cell.ljust(width) for cell, width in zip(row, widths, strict=False)]
        click.echo(f"  {'  '.join(cells)}  {row[-1]}".rstrip())
    click.echo("\nAbout nine makers in ten stay within what is typical, all within the worst.\n")
    printing.print_findings("what could come out wrong", found.findings)


def _rows(found: Tolerance) -> Iterator[tuple[str, ...]]:
    unit = found.bench.unit
    for each in found.pieces:
        size = size_text(each.width.length, each.height.length, unit)
        yield (f"{each.piece.mark} {each.piece.id}", size, "width", *_cells(each.width, found))
        yield ("", "", "height", *_cells(each.height, found))


def _cells(side: Expected, found: Tolerance) -> tuple[str, str, str]:
    unit = found.bench.unit
    if not side.worst:
        return ("exact", "exact", side.why)
    return (f"± {amount(side.worst, unit)}", f"± {amount(side.typical, unit)}", side.why)
