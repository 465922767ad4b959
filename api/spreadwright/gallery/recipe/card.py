"""The picture that stands for a recipe elsewhere, `Shared.picture`: its leading colourway, or greys, and its title."""

from spreadwright.drawing.card import WIDTH_PX, card_picture
from spreadwright.drawing.raster import pixels
from spreadwright.drawing.svg import svg_bytes
from spreadwright.gallery.pictures import Files
from spreadwright.gallery.recipe.job import RecipeJob
from spreadwright.gallery.recipe.paths import card_path
from spreadwright.images import encode_few_colours
from spreadwright.tasks.greys import in_greys
from spreadwright.tasks.layout import layout
from spreadwright.words import ngettext


def card_file(job: RecipeJob) -> Files:
    """The card of a recipe.

    Raises:
        CannotDraw: It could not be drawn.
    """
    recipe = job.recipe
    placed, photos = layout(recipe)
    colourway = next((worn for _, worn in job.colourways), None) or in_greys(recipe)
    card = card_picture(recipe, placed, photos, colourway, _about(job))
    return {card_path(recipe.id): encode_few_colours(pixels(svg_bytes(card), WIDTH_PX))}


def _about(job: RecipeJob) -> str:
    pages, photos = len(job.recipe.spread.pages), len(job.recipe.photos)
    sheets = sum(sheet.times for sheet in job.recipe.sheets)
    return " · ".join(
        (
            ngettext("{count} page", "{count} pages", pages).format(count=pages),
            ngettext("{count} sheet", "{count} sheets", sheets).format(count=sheets),
            ngettext("{count} photo", "{count} photos", photos).format(count=photos),
        )
    )
