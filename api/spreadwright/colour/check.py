"""What papers have to say about a recipe: roles at odds with themselves, with their use, or with a paper set."""

from collections.abc import Iterator, Sequence

from spreadwright.colour.colourways import choices, takes, unfilled
from spreadwright.colour.supply import supply_findings
from spreadwright.errors import Finding, error, note, warning
from spreadwright.model import Colourway, Kind, PaperSet, Piece, Recipe


def role_findings(recipe: Recipe, pieces: Sequence[Piece]) -> tuple[Finding, ...]:
    """What can be said about the roles without any paper."""
    return (*_contradictions(recipe), *_captions_on_print(recipe, pieces))


def _contradictions(recipe: Recipe) -> Iterator[Finding]:
    for role in recipe.roles:
        if role.is_directional and role.kind is Kind.PLAIN:
            message = f"The role “{role.id}” is plain and directional; a plain paper has no direction."
            remedy = "Make its kind “patterned”, or leave “directional” out."
            yield warning("role-wrong-kind", f"{role.where}/directional", message, remedy)


def _captions_on_print(recipe: Recipe, pieces: Sequence[Piece]) -> Iterator[Finding]:
    role_of = {piece.id: recipe.role(piece.role) for piece in pieces}
    for caption in recipe.captions:
        role = role_of.get(caption.on)
        if role and role.kind is Kind.PATTERNED:
            message = (
                f"The caption is on “{caption.on}”, whose role “{role.id}” is patterned: writing gets lost on a print."
            )
            remedy = "Write on a piece of a plain role."
            yield warning("role-wrong-kind", f"{caption.where}/on", message, remedy)


def paper_findings(recipe: Recipe, papers: PaperSet) -> tuple[Finding, ...]:
    """Which roles a paper set cannot fill, and why; and that a paper must play two roles where there are too few."""
    return (*unfilled(recipe, papers), *_few_papers(recipe, papers))


def _few_papers(recipe: Recipe, papers: PaperSet) -> Iterator[Finding]:
    """Papers that may play a role count, whichever side of them is up."""
    options = [choices(recipe, role, papers) for role in recipe.roles]
    playing = {choice.paper.id for found in options for choice in found}
    if all(options) and len(playing) < len(recipe.roles):
        message = (
            f"“{papers.title}” has {len(playing)} {'paper' if len(playing) == 1 else 'papers'} for "
            f"{len(recipe.roles)} roles, so in every colourway a paper plays several roles."
        )
        remedy = "That is allowed; for a paper of its own in each role use a larger set."
        yield note("fewer-papers-than-roles", "/roles", message, remedy)


def colourway_findings(recipe: Recipe, colourway: Colourway, pieces: Sequence[Piece]) -> tuple[Finding, ...]:
    """Whether each face suits its role, no one-way print lies on its side, and there are sheets enough."""
    return (
        *_unsuited(recipe, colourway),
        *_turned_prints(recipe, colourway, pieces),
        *supply_findings(recipe, colourway),
    )


def _unsuited(recipe: Recipe, colourway: Colourway) -> Iterator[Finding]:
    for role in recipe.roles:
        choice = colourway.choice(role.id)
        if takes(role, choice.face):
            continue
        has = "a one-way print" if choice.face.is_directional else choice.face.kind
        wants = f"{role.kind}, not one-way" if not role.is_directional else role.kind
        message = f"“{choice.paper.title}” ({choice.side}) is {has}; the role “{role.id}” takes {wants}."
        yield error("role-wrong-kind", role.where, message, "Choose another paper or its other side.")


def _turned_prints(recipe: Recipe, colourway: Colourway, pieces: Sequence[Piece]) -> Iterator[Finding]:
    role_of = {piece.id: piece.role for piece in pieces}
    known = {name for name, _ in colourway.choices}
    for each in recipe.placements:
        if not each.is_turned or role_of.get(each.piece) not in known:
            continue
        choice = colourway.choice(role_of[each.piece])
        if choice.shown(each.side).is_directional:
            message = f"“{each.piece}” is turned, and “{choice.paper.title}” is a one-way print."
            remedy = "Choose a paper without direction for this role."
            yield error("print-turned", f"{each.where}/turned", message, remedy)
