"""The command `match`."""

from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

import click

from spreadwright.cli import printing, sources
from spreadwright.cli.options import json_option, language_option, picture_option, set_option, width_option
from spreadwright.cli.pictures import write_pictures
from spreadwright.errors import UnreadablePicture
from spreadwright.lengths import told_size
from spreadwright.photos import share_text
from spreadwright.store import Collection
from spreadwright.words import gettext as _
from spreadwright.words import speaking, title

if TYPE_CHECKING:
    from spreadwright.photos.cropping import Focus
    from spreadwright.tasks.match import Match, Photograph, PhotographInMat


@click.command()
@click.argument("photos", nargs=-1, required=True, metavar="PHOTO...")
@click.option("--recipe", metavar="RECIPE", help="On whose mats they are to lie: a file, or an id of the collection.")
@set_option
@click.option(
    "-n", "wanted", default=4, show_default=True, type=click.IntRange(1, 12), help="Sets or colourways, at most."
)
@click.option(
    "--focus",
    "points",
    multiple=True,
    metavar="[PHOTO=]X,Y",
    help="Crop about this point, in percent from the left and from the top.",
)
@picture_option("--preview", words="Draw the spread with the photos in their mats:")
@picture_option(words="Draw the colours beside the papers:")
@width_option()
@language_option
@json_option
@click.pass_obj
def match(
    collection: Collection,
    photos: tuple[str, ...],
    recipe: str | None,
    set_id: str | None,
    wanted: int,
    points: tuple[str, ...],
    preview: Path | None,
    output: Path | None,
    width: int,
    language: str | None,
    as_json: bool,
) -> None:
    """Say which papers suit photos, and how the photos are cropped for the mats of a recipe.

    PHOTO is a JPEG, PNG, WebP or TIFF file, or HEIF where spreadwright[heif] is installed.
    """
    from spreadwright.tasks import match as matching  # numpy takes longer to load than most commands to run
    from spreadwright.tasks.match_answers import match_answer
    from spreadwright.tasks.match_pictures import match_preview_svg, match_svg

    if preview and not recipe:
        raise click.BadParameter("goes with --recipe only.", param_hint="--preview")
    if len(photos) > matching.MOST_PHOTOGRAPHS:
        raise click.BadParameter(f"at most {matching.MOST_PHOTOGRAPHS} photos at a time.", param_hint="PHOTO...")
    reading = sources.recipe(recipe, collection) if recipe else None
    sets = sources.paper_sets(set_id, collection)
    focus = _focus(points, photos)
    seen = [_looked_at(name) for name in photos]
    with speaking(language or (reading.model.language if reading else "en")):
        found = matching.match(seen, sets, reading=reading, wanted=wanted, focus=focus)
        if as_json:
            printing.print_json(match_answer(found))
        else:
            _print(found)
        if preview:
            write_pictures((match_preview_svg(found),), preview, width)
        if output:
            write_pictures((match_svg(found),), output, width)


def _focus(points: Sequence[str], photos: Sequence[str]) -> "dict[int, Focus]":
    from spreadwright.photos.focus import FORM, focus_points

    try:
        return focus_points(points, [Path(name).name for name in photos])
    except ValueError as reason:
        raise click.BadParameter(f"{reason} {FORM}", param_hint="--focus") from None


def _looked_at(name: str) -> "Photograph":
    from spreadwright.images import MOST_BYTES
    from spreadwright.tasks.match import looked_at

    try:
        with Path(name).open("rb") as file:
            data = file.read(MOST_BYTES + 1)
    except (OSError, ValueError) as reason:
        why = getattr(reason, "strerror", None) or str(reason)
        raise UnreadablePicture(
            "not-a-picture", f"The file cannot be opened: {why}.", "Name a file that is there.", name=name
        ) from reason
    return looked_at(Path(name).name, data)


def _print(found: "Match") -> None:
    from spreadwright.colour.names import colour_name
    from spreadwright.tasks.suiting import share_words

    click.echo(_("Colours of the photos"))
    printing.print_columns([(tone.hex, colour_name(tone.hex), share_words(tone)) for tone in found.tones])
    click.echo("\n" + (_("Colourways that suit them") if found.recipe else _("Paper sets that suit them")))
    for suit in found.suits:
        named = suit.colourway.id if suit.colourway else suit.papers.id
        click.echo(f"  {suit.score:5.1f}  {title(suit.papers.title)}  ({named})")
        for line in filter(None, (suit.words, suit.reason)):
            click.echo(f"         {line}")
    if found.recipe:
        click.echo("\n" + _("Photos in their mats"))
        heads = (_("Mat"), _("Photo"), _("Trim to"), _("Cut off"), _("Pixels per inch"))
        printing.print_columns([heads, *(_row(each, found) for each in found.in_mats)])
    if found.findings:
        click.echo("")
        printing.print_findings(_("Photos"), found.findings)


def _row(each: "PhotographInMat", found: "Match") -> tuple[str, ...]:
    assert found.recipe is not None
    size = told_size(each.size.width, each.size.height, found.recipe.unit)
    lost = share_text(each.crop.lost)
    return f"{each.mark} {each.on}", each.photograph.name, size, lost, str(int(each.laid.per_inch))
