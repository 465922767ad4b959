"""A recipe before anybody has said how its sheets are cut: its placements name the sizes of the pieces."""

from collections.abc import Iterator

from spreadwright.errors import Finding, error, nearest_hint
from spreadwright.model import Placement, Recipe


def draft_findings(recipe: Recipe) -> tuple[Finding, ...]:
    """What keeps a recipe without sheets from being planned; that it has none is not said here."""
    seen: set[str] = set()
    findings: list[Finding] = []
    for each in recipe.placements:
        findings += _unsized(each, recipe)
        if each.piece in seen:
            message = f"The piece “{each.piece}” is placed more than once."
            findings.append(error("piece-placed-twice", f"{each.where}/piece", message, "Give each piece a name."))
        seen.add(each.piece)
    if not recipe.placements:
        message = "The recipe has neither sheets nor placements, so there is no piece to plan."
        findings.append(error("size-needed", "/placements", message, "Place a piece with its size."))
    return tuple(findings)


def _unsized(each: Placement, recipe: Recipe) -> Iterator[Finding]:
    if each.size is None:
        message = f"Without sheets nothing says how large “{each.piece}” is."
        yield error("size-needed", each.where, message, 'Give the placement a “size”, like ["3 1/2", "5"].')
    known = [role.id for role in recipe.roles]
    if each.role and each.role not in known:
        message = f"“{each.piece}” is cut from “{each.role}”, which the recipe does not have."
        yield error("role-unknown", f"{each.where}/role", message, nearest_hint(each.role, known))
    if not each.role and len(known) != 1:
        message = f"Without sheets nothing says from which paper “{each.piece}” is cut."
        yield error(
            "role-needed", each.where, message, f"Give the placement a “role”: {', '.join(known) or 'none yet'}."
        )


def role_of(each: Placement, recipe: Recipe) -> str:
    """The role that a placement of a sound draft is cut from: its own, or the only one."""
    return each.role or recipe.roles[0].id
