"""The verb *colourways*: which papers a recipe is shown in."""

from spreadwright.colour import colourway_findings, first, named
from spreadwright.cutting import cut_sheets, pieces
from spreadwright.errors import InvalidDocument, has_errors
from spreadwright.model import Colourway, PaperSet, Recipe


def chosen_colourway(recipe: Recipe, papers: PaperSet, colourway_id: str | None = None) -> Colourway:
    """The colourway of an id, or the one that stands for the set when no id is given.

    Raises:
        UnknownName: The id names no colourway of this recipe and set.
        InvalidDocument: A face does not suit its role.
        NoColourway: No paper of the set fits one of the roles.
    """
    if colourway_id is None:
        return first(recipe, papers)
    colourway = named(recipe, papers, colourway_id)
    findings = colourway_findings(recipe, colourway, pieces(cut_sheets(recipe)))
    if has_errors(findings):
        raise InvalidDocument(recipe.title, findings)
    return colourway
