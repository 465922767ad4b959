"""The commands, one for each verb."""

import sys
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

import click

from spreadwright import __version__, tasks
from spreadwright.cli import printing, signals, sources
from spreadwright.cli.booklet import booklet
from spreadwright.cli.cleaning import clean
from spreadwright.cli.colourways import colourways
from spreadwright.cli.contact_sheet import contact_sheet, strip_command
from spreadwright.cli.cut_paths import cut_paths
from spreadwright.cli.gallery import build_gallery, gallery
from spreadwright.cli.group import FINE, FOUND_ERRORS, Commands, exit_code
from spreadwright.cli.match import match
from spreadwright.cli.options import (
    bench_option,
    colourway_option,
    json_option,
    language_option,
    picture_option,
    set_option,
    width_option,
)
from spreadwright.cli.photos import photos
from spreadwright.cli.pictures import suffix_of, write_file, write_pictures
from spreadwright.cli.pieces import pieces
from spreadwright.cli.planning import plan
from spreadwright.cli.templates import templates
from spreadwright.cli.tokens import token
from spreadwright.cli.tolerance import tolerance
from spreadwright.errors import SpreadwrightError
from spreadwright.store import Collection
from spreadwright.tasks import answers, draw
from spreadwright.tasks.placement_answers import placement_answer
from spreadwright.words import speaking

PICTURES = ("spread", "cut-sheets", "placement")


@click.group(cls=Commands, context_settings={"help_option_names": ["-h", "--help"]})
@click.version_option(__version__, prog_name="spreadwright")
@click.option(
    "--collection",
    "folder",
    envvar="SPREADWRIGHT_COLLECTION",
    type=click.Path(path_type=Path, exists=True, file_okay=False),
    help="A folder of recipes, paper-sets/ and benches/ in place of the one that ships.",
)
@click.pass_context
def main(ctx: click.Context, folder: Path | None) -> None:
    """Recipes for album layouts: prove, cut, place, colour, draw and share them.

    RECIPE is a file, - for standard input, or the id of a recipe in the collection.
    Exit codes: 0 fine, 1 findings of severity error, 2 unusable input, 130 stopped.
    """
    ctx.obj = Collection(folder)


@main.command()
@click.argument("documents", nargs=-1, required=True, metavar="DOCUMENT...")
@bench_option
@set_option
@colourway_option("One colourway of the set, checked too.")
@json_option
@click.pass_obj
def check(
    collection: Collection,
    documents: tuple[str, ...],
    bench: str | None,
    set_id: str | None,
    colourway_id: str | None,
    as_json: bool,
) -> None:
    """Say everything that can be known about recipes, paper sets or benches."""
    papers = sources.named_papers(set_id, colourway_id, collection)
    found: list[Any] = []
    codes: list[int] = []
    for name in documents:
        try:
            reading = sources.document(name, collection)
        except SpreadwrightError as reason:  # one that cannot be read hides none of the others
            found.append(answers.refusal_answer(reason))
            codes.append(exit_code(reason))
            if not as_json:
                click.echo(f"spreadwright: {name}: {reason}", err=True)
            continue
        report = tasks.check(reading, sources.bench(bench, collection, reading), papers, colourway_id)
        found.append(answers.report_answer(report))
        codes.append(FINE if report.is_fine else FOUND_ERRORS)
        if not as_json:
            printing.print_findings(name, report.findings)
    if as_json:
        printing.print_json(found[0] if len(found) == 1 else found)
    sys.exit(max(codes))


@main.command()
@click.argument("recipe")
@bench_option
@language_option
@json_option
@click.pass_obj
def cut(collection: Collection, recipe: str, bench: str | None, language: str | None, as_json: bool) -> None:
    """Write the steps at the trimmer, and the piles."""
    reading = sources.recipe(recipe, collection)
    with speaking(language or reading.model.language):
        cutting = tasks.cut(reading, sources.bench(bench, collection, reading))
        if as_json:
            printing.print_json(answers.cuts_answer(cutting))
        else:
            printing.print_cuts(cutting)


@main.command()
@click.argument("recipe")
@bench_option
@language_option
@json_option
@click.pass_obj
def place(collection: Collection, recipe: str, bench: str | None, language: str | None, as_json: bool) -> None:
    """Write the steps with the ruler, and the photo sizes."""
    reading = sources.recipe(recipe, collection)
    with speaking(language or reading.model.language):
        placing = tasks.place(reading, sources.bench(bench, collection, reading))
        if as_json:
            printing.print_json(placement_answer(placing))
        else:
            printing.print_placement(placing)


@main.command(name="draw")
@click.argument("recipe")
@click.option("--what", type=click.Choice(PICTURES), default="spread", show_default=True, help="Which picture.")
@set_option
@colourway_option()
@bench_option
@language_option
@picture_option(required=True)
@width_option()
@click.pass_obj
def draw_command(
    collection: Collection,
    recipe: str,
    what: str,
    set_id: str | None,
    colourway_id: str | None,
    bench: str | None,
    language: str | None,
    output: Path,
    width: int,
) -> None:
    """Draw the spread in a paper set, the cut sheets, or the placement."""
    is_pdf = suffix_of(output) == "pdf"
    reading = sources.recipe(recipe, collection)
    on = sources.bench(bench, collection, reading)
    with speaking(language or reading.model.language):
        if what == "spread":
            papers = sources.papers_for(reading.model, set_id, colourway_id, collection)
            colourway = tasks.chosen_colourway(tasks.proven(reading), papers, colourway_id)
            write_pictures((draw.preview_svg(reading, colourway, papers=papers.title),), output, width)
        elif what == "placement":
            placing = tasks.place(reading, on)
            if is_pdf:
                write_file(output, draw.placement_pdf(placing))
            else:
                write_pictures((draw.placement_svg(placing),), output, width)
        else:
            cutting = tasks.cut(reading, on)
            if is_pdf:
                write_file(output, draw.cut_sheets_pdf(cutting))
            else:
                write_pictures(draw.cut_sheets_svg(cutting), output, width)


main.add_command(booklet)
main.add_command(colourways)
main.add_command(contact_sheet)
main.add_command(cut_paths)
main.add_command(match)
main.add_command(photos)
main.add_command(pieces)
main.add_command(gallery)
main.add_command(plan)
main.add_command(strip_command)
main.add_command(templates)
main.add_command(token)
main.add_command(clean)
main.add_command(tolerance)


@main.command()
@click.option("--host", default="127.0.0.1", show_default=True, help="The address to listen on.")
@click.option("--port", default=8080, show_default=True, type=click.IntRange(1, 65535), help="The port to listen on.")
@click.option("--workers", default=2, show_default=True, type=click.IntRange(1, 64), help="Processes that answer.")
@click.option(
    "--gallery",
    "folder",
    type=click.Path(path_type=Path, exists=True, file_okay=False),
    help="A gallery that is built already; otherwise one is built at the start.",
)
@click.pass_obj
def serve(collection: Collection, host: str, port: int, workers: int, folder: Path | None) -> None:
    """Serve the API, and the gallery at the same address.

    Other machines are served only with SPREADWRIGHT_DATABASE_URL set. Without it documents are kept for this run alone,
    and a token for writing is shown at the start.
    """
    from spreadwright import rest
    from spreadwright.gallery import Site

    signals.unwind_on_terminate()
    settings = rest.settings_for(host)
    rest.refuse_taken(host, port)
    with TemporaryDirectory(prefix="spreadwright-") as built:
        shown = folder or Path(built) / "gallery"
        if folder is None:
            build_gallery(collection, shown, Site(api="."))
        app = rest.create_app(collection, shown, settings=settings)
        rest.show_first_token(app, host)
        rest.serve(app, host, port, workers)
