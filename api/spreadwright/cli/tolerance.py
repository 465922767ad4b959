"""The command `tolerance`."""

from collections.abc import Iterator

import click

from spreadwright.cli import printing, sources
from spreadwright.cli.options import bench_option, json_option, language_option
from spreadwright.lengths import told, told_size
from spreadwright.store import Collection
from spreadwright.tasks.tolerance import Tolerance
from spreadwright.tasks.tolerance import tolerance as expected
from spreadwright.tasks.tolerance_answers import tolerance_answer
from spreadwright.tolerance import Expected, amount
from spreadwright.words import gettext as _
from spreadwright.words import speaking, title


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
    accuracy = told(found.bench.trimmer.accuracy, found.bench.unit)
    click.echo(f"{found.recipe.title}, " + _("for: {bench}").format(bench=title(found.bench.title)))
    click.echo(_("Each cut may lie up to {accuracy} from its reading.").format(accuracy=accuracy) + "\n")
    heads = (_("Piece"), _("Size"), "", _("At worst"), _("Typically"), _("Why"))
    printing.print_columns([heads, *_rows(found)])
    click.echo("\n" + _("About nine makers in ten stay within what is typical, all within the worst.") + "\n")
    printing.print_findings(_("what could come out wrong"), found.findings)


def _rows(found: Tolerance) -> Iterator[tuple[str, ...]]:
    unit = found.bench.unit
    for each in found.pieces:
        size = told_size(each.width.length, each.height.length, unit)
        yield (f"{each.piece.mark} {each.piece.id}", size, _("Width"), *_cells(each.width, found))
        yield ("", "", _("Height"), *_cells(each.height, found))


def _cells(side: Expected, found: Tolerance) -> tuple[str, str, str]:
    unit = found.bench.unit
    if not side.worst:
        return (_("exact"), _("exact"), side.why)
    return (f"± {amount(side.worst, unit)}", f"± {amount(side.typical, unit)}", side.why)
