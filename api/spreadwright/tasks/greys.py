"""Greys that stand for papers, so that a recipe that no paper set fills can be seen all the same."""

from spreadwright.drawing.spread import spread_size
from spreadwright.lengths import TICKS, Unit
from spreadwright.model import Choice, Colourway, Face, Kind, Paper, Pattern, Recipe, Role

_TONES = ("#d9d5cd", "#8f8b84", "#efece6", "#b5b0a7", "#6f6c66")
"""Each stands apart from the next, and the first is quiet, since a recipe begins with what lies below everything."""
_BACK = "#c4bfb5"
"""Of every sheet, so that a piece that lies with its back up is told from one that does not."""
_PRINTED = "#fbf9f5"
_REPEAT = 6 * TICKS[Unit.MILLIMETRE]


def in_greys(recipe: Recipe) -> Colourway:
    """A grey for every role, a striped one where only prints fill it.

    Raises:
        CannotDraw: The recipe does not say how large its pages are.
    """
    return Colourway("", tuple((role.id, Choice(_paper(recipe, role, at))) for at, role in enumerate(recipe.roles)))


def _paper(recipe: Recipe, role: Role, at: int) -> Paper:
    tone = _TONES[at % len(_TONES)]
    is_print = role.kind is Kind.PATTERNED
    face = Face(Pattern.STRIPE, (tone, _PRINTED), _REPEAT) if is_print else Face(Pattern.PLAIN, (tone,), 0)
    return Paper(role.id, "", spread_size(recipe), face, Face(Pattern.PLAIN, (_BACK,), 0))
