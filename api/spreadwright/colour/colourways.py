"""Colourways: every way of giving the faces of a paper set to the roles of a recipe."""

from collections.abc import Iterator
from itertools import chain
from math import prod

from spreadwright.colour.picks import distinct_picks, repeating_picks
from spreadwright.colour.supply import is_enough, sheets_of_roles
from spreadwright.errors import Finding, NoColourway, UnknownName, error
from spreadwright.model import Choice, Colourway, Face, Kind, PaperSet, Recipe, Role, Side, piece_roles


def choices(recipe: Recipe, role: Role, papers: PaperSet) -> tuple[Choice, ...]:
    """The faces that may fill a role: of its kind, one-way only where the role allows, on sheets of the right size.
    A print whose turned pieces would lie on their side is left out, and a paper with too few sheets at hand.

    In the order of the set, each paper's front before its back.
    """
    sizes = {sheet.size for sheet in recipe.sheets if sheet.role == role.id and sheet.size}
    turned, needed = _turned_sides(recipe, role), sheets_of_roles(recipe)[role.id]
    return tuple(
        choice
        for choice in (Choice(paper, side) for paper in papers.papers for side in Side)
        if sizes == {choice.paper.size}
        and is_enough(choice.paper, needed)
        and takes(role, choice.face)
        and not any(choice.shown(side).is_directional for side in turned)
    )


def _turned_sides(recipe: Recipe, role: Role) -> set[Side]:
    """Which sides of a role's paper show on pieces that lie turned: no one-way print may be there."""
    role_of = piece_roles(recipe)
    return {each.side for each in recipe.placements if each.is_turned and role_of.get(each.piece) == role.id}


def takes(role: Role, face: Face) -> bool:
    """Whether a face is of the role's kind and, if it is a one-way print, allowed there."""
    is_kind = role.kind in (Kind.ANY, face.kind)
    return is_kind and (role.is_directional or not face.is_directional)


def colourways(recipe: Recipe, papers: PaperSet) -> Iterator[Colourway]:
    """Every colourway, in a stable order: first those in which every role has a paper of its own.

    Within both halves the first role changes slowest, each role going through the set in its order.

    Raises:
        NoColourway: No paper fits one of the roles.
    """
    playing = options(recipe, papers)
    lists = list(playing.values())
    for picked in chain(distinct_picks(lists), repeating_picks(lists)):
        yield Colourway(papers.id, tuple(zip(playing, picked, strict=True)))


def count(recipe: Recipe, papers: PaperSet) -> int:
    """How many colourways there are; 0 when a role has no paper."""
    return prod(len(choices(recipe, role, papers)) for role in recipe.roles)


def first(recipe: Recipe, papers: PaperSet) -> Colourway:
    """The first in the order of `colourways`, found without comparing any.

    Raises:
        NoColourway: No paper fits one of the roles.
    """
    return next(colourways(recipe, papers))


def set_of(colourway_id: str) -> str:
    """The id of the set that a colourway's id begins with."""
    return colourway_id.split(".")[0]


def named(recipe: Recipe, papers: PaperSet, colourway_id: str) -> Colourway:
    """The colourway of an id, whether or not the faces fit the roles; the check says if they do.

    Raises:
        UnknownName: The id does not name one paper of this set for each role.
    """
    set_id, *picked = colourway_id.split(".")
    if set_id != papers.id or len(picked) != len(recipe.roles):
        example = ".".join((papers.id, *(role.id for role in recipe.roles)))
        raise UnknownName("colourway", colourway_id, [f"the set, then a paper for each role: {example}"])
    pairs = zip(recipe.roles, picked, strict=True)
    return Colourway(papers.id, tuple((role.id, _choice(papers, name)) for role, name in pairs))


def _choice(papers: PaperSet, name: str) -> Choice:
    paper_id, tilde, side = name.partition("~")
    paper = papers.paper(paper_id)
    if paper is None or (tilde and side != "back"):
        known = [f"{each.id}{suffix}" for each in papers.papers for suffix in ("", "~back")]
        raise UnknownName("paper", name, known)
    return Choice(paper, Side.BACK if side else Side.FRONT)


def options(recipe: Recipe, papers: PaperSet) -> dict[str, tuple[Choice, ...]]:
    """What may fill each role, in the order of the roles.

    Raises:
        NoColourway: No paper fits one of them.
    """
    found = {role.id: choices(recipe, role, papers) for role in recipe.roles}
    if not all(found.values()):
        raise NoColourway(unfilled(recipe, papers))
    return found


def unfilled(recipe: Recipe, papers: PaperSet) -> tuple[Finding, ...]:
    """Which roles no paper of a set fits, and why."""
    return tuple(
        error(
            "no-paper-for-role",
            role.where,
            f"No paper of “{papers.title}” fits the role “{role.id}”: {reason_for_none(recipe, role, papers)}.",
            "Use another paper set, or change the role.",
        )
        for role in recipe.roles
        if not choices(recipe, role, papers)
    )


def reason_for_none(recipe: Recipe, role: Role, papers: PaperSet) -> str:
    """Why no paper of a set fits a role, as half a sentence."""
    sizes = {sheet.size for sheet in recipe.sheets if sheet.role == role.id and sheet.size}
    if len(sizes) != 1:
        return "its sheets have several sizes" if sizes else "no sheet plays it"
    faces = [(paper, paper.face(side)) for paper in papers.papers for side in Side]
    of_kind = [(paper, face) for paper, face in faces if role.kind in (Kind.ANY, face.kind)]
    if not of_kind:
        return f"the set has no {role.kind} face"
    if not any(takes(role, face) for _, face in of_kind):
        return f"every {role.kind} face of the set is a one-way print, and the role is not directional"
    if not any(paper.size in sizes for paper, _ in of_kind):
        return "the sheets of the set have another size"
    needed = sheets_of_roles(recipe)[role.id]
    if not any(is_enough(paper, needed) for paper, face in of_kind if paper.size in sizes and takes(role, face)):
        return f"it takes {needed} sheet{'s' if needed != 1 else ''}, and fewer are at hand of every paper that fits"
    return "its turned pieces would show a one-way print on its side"
