"""The commands `contact-sheet` and `test-strip`."""

from pathlib import Path
from typing import TYPE_CHECKING

import click

from spreadwright import tasks
from spreadwright.cli import printing, signals, sources
from spreadwright.cli.options import (
    colourway_option,
    json_option,
    language_option,
    page_option,
    picture_option,
    set_option,
    width_option,
)
from spreadwright.cli.pictures import suffix_of, write_file
from spreadwright.store import Collection
from spreadwright.tasks.booklet import Format
from spreadwright.tasks.draw import as_png
from spreadwright.words import speaking

if TYPE_CHECKING:
    from spreadwright.tasks.contact_sheet import ContactSheet

_MOST = 24
_WIDTH_PX = 2400


@click.command(name="contact-sheet")
@click.argument("recipes", nargs=-1, metavar="[RECIPE]...")
@set_option
@click.option(
    "-n",
    "wanted",
    default=12,
    show_default=True,
    type=click.IntRange(1, _MOST),
    help="Of one RECIPE: how many colourways.",
)
@page_option("The paper that a PDF is printed on.")
@width_option(_WIDTH_PX)
@language_option
@json_option
@picture_option()
@click.pass_obj
def contact_sheet(
    collection: Collection,
    recipes: tuple[str, ...],
    set_id: str | None,
    wanted: int,
    page: str,
    width: int,
    language: str | None,
    as_json: bool,
    output: Path | None,
) -> None:
    """Show one RECIPE in the colourways that please most, or several in their best ones of a set.

    With one RECIPE: in the papers of --set, or of all sets. With several, or with none for all of the collection: each
    in its best colourway of --set, and those that the set cannot fill by name.
    """
    if output is None and not as_json:
        raise click.BadParameter("says where the sheet goes: NAME.svg, .png or .pdf.", param_hint="--output")
    signals.unwind_on_terminate()
    readings = [sources.recipe(each, collection) for each in recipes or collection.recipes]
    own = readings[0].model.language if len(recipes) == 1 else "en"
    with speaking(language or own):
        if len(recipes) == 1:
            from spreadwright.tasks.contact_sheet import colourways_sheet  # numpy takes long to load

            sheet = colourways_sheet(readings[0], sources.paper_sets(set_id, collection), wanted)
        else:
            from spreadwright.tasks.contact_sheet import MOST_LAYOUTS, recipes_sheet

            if not set_id:
                raise click.BadParameter("goes with several recipes: name the set.", param_hint="--set")
            if not 1 <= len(readings) <= MOST_LAYOUTS:
                reason = f"{len(readings)} of them do not go on a sheet; name 1 to {MOST_LAYOUTS}."
                raise click.BadParameter(reason, param_hint="RECIPE")
            sheet = recipes_sheet(readings, sources.paper_set(set_id, collection))
        _show(sheet, output, Format(page), width, as_json=as_json)


def _show(sheet: "ContactSheet", output: Path | None, page: Format, width: int, *, as_json: bool) -> None:
    from spreadwright.tasks.contact_answers import contact_answer
    from spreadwright.tasks.contact_sheet import sheet_pdf, sheet_png, sheet_svg

    if as_json:
        printing.print_json(contact_answer(sheet))
    else:
        click.echo(f"{sheet.title}: {sheet.about}")
        for note in sheet.notes:
            click.echo(note)
        printing.print_columns([(frame.number, frame.score, frame.title, frame.id) for frame in sheet.frames])
        if sheet.left_out:
            click.echo(f"\n{sheet.left_out_heading}")
            for each in sheet.left_out:
                click.echo(f"  {each.name}: {each.reason}")
    if output:
        made = {
            "svg": lambda: sheet_svg(sheet),
            "png": lambda: sheet_png(sheet, width),
            "pdf": lambda: sheet_pdf(sheet, page),
        }
        write_file(output, made[suffix_of(output)]())


@click.command(name="test-strip")
@click.argument("recipe")
@set_option
@colourway_option("One colourway of the set; otherwise the best one.")
@page_option("The paper that a PDF is printed on.")
@width_option(_WIDTH_PX)
@language_option
@json_option
@picture_option()
@click.pass_obj
def strip_command(
    collection: Collection,
    recipe: str,
    set_id: str | None,
    colourway_id: str | None,
    page: str,
    width: int,
    language: str | None,
    as_json: bool,
    output: Path | None,
) -> None:
    """Show one colourway in colour, as a grey print and with deficient colour vision, and say what is lost."""
    from spreadwright.tasks.contact_answers import strip_answer
    from spreadwright.tasks.strip import sentences, sight_name, strip, strip_pdf, strip_svg

    reading = sources.recipe(recipe, collection)
    found = tasks.proven(reading)
    with speaking(language or found.language):
        papers = sources.papers_for(found, set_id, colourway_id, collection)
        shown = strip(reading, papers, tasks.chosen_colourway(found, papers, colourway_id))
        if as_json:
            printing.print_json(strip_answer(shown))
        else:
            click.echo(f"{found.title}: {shown.colourway.id}")
            for each in shown.exposed:
                click.echo(f"\n{sight_name(each.sight)}")
                for sentence in sentences(each):
                    click.echo(f"  {sentence}")
        if output:
            made = {
                "svg": lambda: strip_svg(shown),
                "png": lambda: as_png(strip_svg(shown), width),
                "pdf": lambda: strip_pdf(shown, Format(page)),
            }
            write_file(output, made[suffix_of(output)]())
