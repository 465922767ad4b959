"""The verb *colourways*: which papers a recipe is shown in."""

from collections.abc import Iterable
from functools import lru_cache
from itertools import islice

from spreadwright.colour import colourway_findings, colourways, count, named
from spreadwright.cutting import cut_sheets, pieces
from spreadwright.errors import InvalidDocument, UnknownName, has_errors
from spreadwright.model import Colourway, PaperSet, Recipe


def fitting_set(recipe: Recipe, sets: Iterable[PaperSet]) -> PaperSet:
    """The set that is meant when none is named: the first that fills every role, else the first.

    Raises:
        UnknownName: There is no set at all.
    """
    known = list(sets)
    if not known:
        raise UnknownName("paper set", "", ())
    return next((papers for papers in known if count(recipe, papers)), known[0])


def chosen_colourway(recipe: Recipe, papers: PaperSet, colourway_id: str | None = None) -> Colourway:
    """The colourway of an id, or the best one when no id is given.

    Raises:
        UnknownName: The id names no colourway of this recipe and set.
        InvalidDocument: A face does not suit its role.
        NoColourway: No paper of the set fits one of the roles.
    """
    if colourway_id is None:
        return best_colourway(recipe, papers)
    colourway = named(recipe, papers, colourway_id)
    findings = colourway_findings(recipe, colourway, pieces(cut_sheets(recipe)))
    if has_errors(findings):
        raise InvalidDocument(recipe.title, findings)
    return colourway


@lru_cache(maxsize=256)
def best_colourway(recipe: Recipe, papers: PaperSet) -> Colourway:
    """The colourway that stands for a set: the first of `ranking.propose`.

    Raises:
        NoColourway: No paper of the set fits one of the roles.
    """
    from spreadwright.tasks.ranking import propose  # numpy takes longer to load than most commands to run

    return propose(recipe, [papers], 1).colourways[0].colourway


def listed(recipe: Recipe, papers: PaperSet, start: int, limit: int) -> tuple[int, Iterable[Colourway]]:
    """How many colourways there are, and a stretch of their list, which is never built as a whole.

    Raises:
        NoColourway: No paper of the set fits one of the roles.
    """
    total = count(recipe, papers)
    return total, islice(colourways(recipe, papers), start, start + limit) if start < total else ()
