"""Papers for a recipe that no paper set at hand fits: quiet tints and small prints, so that it can be seen in paper."""

from spreadwright.geometry import Size
from spreadwright.lengths import TICKS, Unit
from spreadwright.model import Choice, Colourway, Face, Kind, Paper, Pattern, Recipe, Role

_GROUNDS = ("#e9e4d8", "#8c9aa0", "#c9b79c", "#b9c4b6", "#d8cfc4", "#a89a90")
_PRINTS = (Pattern.STRIPE, Pattern.DOTS, Pattern.GINGHAM)
_INK = "#f6f2ea"
_REPEAT = 12 * TICKS[Unit.MILLIMETRE]


def stand_in(recipe: Recipe) -> Colourway:
    """One tint for each role, printed where the role asks for a print; the same for every reader."""
    return Colourway("", tuple((role.id, Choice(_paper(role, index))) for index, role in enumerate(recipe.roles)))


def _paper(role: Role, index: int) -> Paper:
    ground = _GROUNDS[index % len(_GROUNDS)]
    if role.kind is Kind.PATTERNED:
        face = Face(_PRINTS[index % len(_PRINTS)], (ground, _INK), _REPEAT)
    else:
        face = Face(Pattern.PLAIN, (ground,), _REPEAT)
    return Paper(role.id, role.title or role.id, Size(0, 0), face, face)
