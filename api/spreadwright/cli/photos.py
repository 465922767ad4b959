"""The command `photos`."""

from collections.abc import Iterator, Sequence

import click

from spreadwright.cli import printing, sources
from spreadwright.cli.options import bench_option, json_option, language_option
from spreadwright.lengths import told, told_size
from spreadwright.photos import WIDE, print_label, share_text
from spreadwright.store import Collection
from spreadwright.tasks.photo_answers import photos_answer, photos_csv
from spreadwright.tasks.photos import Border, Photographs, PhotoPlan
from spreadwright.tasks.photos import photos as photographs
from spreadwright.words import gettext as _
from spreadwright.words import speaking

_MOST_PRINTS = 3


@click.command()
@click.argument("recipe")
@bench_option
@click.option(
    "--border",
    type=click.Choice([each.value for each in Border]),
    default=Border.RECIPE.value,
    show_default=True,
    help="As the recipe says, or 1/8 in (narrow) or 1/4 in (wide) round every photo.",
)
@language_option
@click.option("--csv", "as_csv", is_flag=True, help="Print a table for spreadsheets.")
@json_option
@click.pass_obj
def photos(
    collection: Collection,
    recipe: str,
    bench: str | None,
    border: str,
    language: str | None,
    as_csv: bool,
    as_json: bool,
) -> None:
    """Say what each photo is trimmed to, from which prints, and how many pixels it takes."""
    reading = sources.recipe(recipe, collection)
    with speaking(language or reading.model.language):
        found = photographs(reading, sources.bench(bench, collection, reading), Border(border))
        if as_json:
            printing.print_json(photos_answer(found))
        elif as_csv:
            click.echo(photos_csv(found), nl=False)
        else:
            _print(found)


def _print(found: Photographs) -> None:
    click.echo(f"{found.recipe.title}\n")
    printing.print_columns([_heads(), *(row for plan in found.plans for row in _rows(plan, found))])
    click.echo("")
    for plan in found.plans:
        click.echo(f"  {plan.mark} {plan.photo.on}: {plan.words}")


def _heads() -> tuple[str, ...]:
    pixels, prints = _("Pixels at 300, at 150 per inch"), _("From a print of (share cut off)")
    return _("Mat"), _("Border"), _("Trim to"), pixels, prints


def _rows(plan: PhotoPlan, found: Photographs) -> Iterator[tuple[str, ...]]:
    """The photo, and below it the same with the wide border where that is another one."""
    name, wide = f"{plan.mark} {plan.photo.on}", found.widened(plan)
    yield _row(name, plan, found)
    if wide is None:
        yield ("", told(WIDE, found.bench.unit), "–", "–", "–")
    elif wide.border != plan.border:
        yield _row("", wide, found)


def _row(name: str, plan: PhotoPlan, found: Photographs) -> tuple[str, ...]:
    unit = found.bench.unit
    size = told_size(plan.on_ruler.width, plan.on_ruler.height, unit)
    if plan.on_ruler != plan.size:
        size += f" ({told_size(plan.size.width, plan.size.height, unit)})"
    return (name, told(plan.border, unit), size, f"{plan.fine}, {plan.coarse}", _prints(plan, found))


def _prints(plan: PhotoPlan, found: Photographs) -> str:
    prints: Sequence[str] = [
        f"{print_label(trim.print, found.bench.unit)}: {share_text(trim.lost)}" for trim in plan.trims[:_MOST_PRINTS]
    ]
    return ", ".join(prints) or _("none that is usual")
