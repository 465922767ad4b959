"""What roles and papers are called in the language that is spoken."""

from spreadwright.model.papers import Choice
from spreadwright.model.recipe import Recipe, Role, Side
from spreadwright.words import gettext as _
from spreadwright.words import title


def role_title(role: Role) -> str:
    """The title of a role, or its id where it has none."""
    return title(role.title) or role.id


def role_titles(recipe: Recipe) -> dict[str, str]:
    """The same of every role, by its id."""
    return {role.id: role_title(role) for role in recipe.roles}


def face_title(choice: Choice) -> str:
    """A paper with the side that is up: ``Fog``, ``Fog (back)``."""
    return _sided(title(choice.paper.title), choice.side)


def quoted_face_title(choice: Choice | None) -> str:
    """The same with the paper in quotation marks: ``“Fog” (back)``; the bare page where there is no paper."""
    return _sided(quoted(title(choice.paper.title)), choice.side) if choice else _("the bare page")


def quoted(name: str) -> str:
    """A name in quotation marks."""
    return _("“{name}”").format(name=name)


def _sided(paper: str, side: Side) -> str:
    return _("{paper} (back)").format(paper=paper) if side is Side.BACK else paper
