"""The command `plan`."""

from pathlib import Path

import click

from spreadwright import tasks
from spreadwright.cli import printing, sources
from spreadwright.cli.options import FILE, json_option, width_option
from spreadwright.cli.patience import Announcement, Patience, Progress
from spreadwright.cli.pictures import suffix_of, write_file, write_pictures
from spreadwright.cli.plan_printing import print_plans
from spreadwright.document import AnyReading
from spreadwright.model import Bench, PieceList
from spreadwright.store import Collection
from spreadwright.tasks import draw

_RECIPE = "json"


def _suffix_of(output: Path, reading: AnyReading) -> str:
    """Which format the name of a file asks for; only a recipe is written as a document."""
    if output.suffix.lower() != f".{_RECIPE}":
        return suffix_of(output)
    if not tasks.is_recipe(reading):
        message = "A list of pieces has no placements, so no recipe comes of it; --json prints its cut trees."
        raise click.BadParameter(message, param_hint="--output")
    return _RECIPE


@click.command()
@click.argument("pieces", metavar="PIECES")
@click.option(
    "--stock",
    multiple=True,
    metavar="WxH*N",
    help="Sheets to cut from, like 12x12*2, or 12x12 for as many as are needed; a word after it is their role, "
    "without one they are there in every role. "
    "In place of the document's own; may be said several times.",
)
@click.option("--bench", metavar="BENCH", help="Keep to the limits of this bench: a file, or an id of the collection.")
@click.option(
    "--seconds", default=10.0, show_default=True, type=click.FloatRange(0.1, 86_400), help="Search no longer than this."
)
@click.option("--seed", default=1, show_default=True, type=click.IntRange(1, 2**31 - 1), help="Where chance begins.")
@click.option("-n", "--plans", default=1, show_default=True, type=click.IntRange(1, 20), help="Plans that differ.")
@click.option(
    "--explain",
    is_flag=True,
    help="Draw the sheets here, and say what binds: the bound, its proof, what is left over.",
)
@click.option(
    "-o",
    "--output",
    type=FILE,
    help="Draw the sheets of the first plan, too: NAME.svg, .png or .pdf; or write the planned recipe: NAME.json",
)
@width_option()
@json_option
@click.pass_obj
def plan(
    collection: Collection,
    pieces: str,
    stock: tuple[str, ...],
    bench: str | None,
    seconds: float,
    seed: int,
    plans: int,
    explain: bool,
    output: Path | None,
    width: int,
    as_json: bool,
) -> None:
    """Find out how pieces are cut from the fewest sheets.

    PIECES is a document of that kind, a recipe whose sheets are to be cut otherwise, - for standard input, or a list
    in short: "7x7 left, 3 1/2x5 *2 right". A ! after a size says that the piece may not be turned.
    A recipe that has placements with sizes but no sheets yet gets them; -o NAME.json writes it whole.
    Ctrl+C stops the search with the best plan so far.
    """
    reading = sources.pieces_or_recipe(pieces, stock, collection)
    suffix = _suffix_of(output, reading) if output else ""
    given = sources.stock_list(stock, reading.model.unit) if stock else None
    on = sources.bench(bench, collection, reading) if bench else None
    planning = _searched(reading, on, seconds, stock=given, seed=seed, wanted=plans)
    if as_json:
        printing.print_json(tasks.plan_answer(planning))
    else:
        print_plans(planning, explain=explain)
    if output and suffix == _RECIPE:
        write_file(output, tasks.planned_recipe(planning, planning.plans[0]))
    elif output:
        drawn = tasks.planned_cutting(planning, planning.plans[0], on or sources.bench(None, collection, reading))
        write_pictures(draw.cut_sheets_svg(drawn), output, width)


def _searched(
    reading: AnyReading, on: Bench | None, seconds: float, *, stock: PieceList | None, seed: int, wanted: int
) -> tasks.Planning:
    """The plans found in so many seconds, or until Ctrl+C; progress on stderr."""
    with Patience(seconds) as patience:
        progress = Progress(patience)
        preparing = Announcement("preparing the search; this takes up to half a minute once")

        def on_ready() -> None:
            preparing.cancel()
            patience.restart()

        try:
            planning = tasks.plan(
                reading,
                on,
                stock=stock,
                seed=seed,
                wanted=wanted,
                effort=tasks.effort(seconds),
                on_ready=on_ready,
                is_over=patience.is_over,
                reporter=progress,
            )
        finally:
            preparing.cancel()
            progress.close()
    if patience.has_ended:
        click.echo(f"stopped after {patience.passed:.1f} s; this is the best so far.", err=True)
    return planning
