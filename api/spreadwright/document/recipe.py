"""A recipe's document to its model, as complete as the document allows."""

from typing import Any

from spreadwright.document.cursor import Cursor
from spreadwright.errors import Finding
from spreadwright.lengths import LONGEST, Unit
from spreadwright.model import (
    Axis,
    Branch,
    Caption,
    Content,
    Edge,
    Kind,
    Leaf,
    Offset,
    Photo,
    Placement,
    Recipe,
    Role,
    Sheet,
    Side,
    Split,
    Spread,
    Use,
)

DEFAULT_BORDER = "1/8 in"
"""What a mat shows round its photo when nothing else is said: common practice of the trade."""

MOST_TIMES = 100
"""Of equal sheets or parts that one member counts, as in the schema."""
_ACROSS = (Edge.LEFT, Edge.RIGHT, Edge.CENTRE)
_DOWN = (Edge.TOP, Edge.BOTTOM, Edge.MIDDLE)


def recipe_model(document: Any, recipe_id: str) -> tuple[Recipe, tuple[Finding, ...]]:
    """The model of a recipe's document, and what its lengths have wrong.

    Whatever the schema refuses is left out of the model.
    """
    findings: list[Finding] = []
    unit = unit_of(document)
    root = Cursor(document, unit, findings)
    spread = root.child("spread")
    recipe = Recipe(
        id=recipe_id,
        title=root.text("title", recipe_id),
        unit=unit,
        spread=Spread(spread.texts("pages"), spread.size("size")),
        roles=tuple(_role(name, role) for name, role in root.child("roles").members()),
        sheets=tuple(_sheet(sheet) for sheet in root.child("sheets").items()),
        placements=tuple(_placement(each) for each in root.child("placements").items() if each.text("piece")),
        photos=tuple(_photo(photo) for photo in root.child("photos").items() if photo.text("on")),
        captions=tuple(Caption(c.text("on"), c.where) for c in root.child("captions").items() if c.text("on")),
        summary=root.text("summary"),
        authors=root.texts("authors"),
        licence=root.text("licence"),
        language=root.text("language", "en"),
        tags=root.texts("tags"),
    )
    return recipe, tuple(findings)


def unit_of(document: Any) -> Unit:
    """The unit that a document declares; inches where it declares none that is known."""
    named = document.get("unit") if isinstance(document, dict) else None
    return Unit(named) if isinstance(named, str) and named in list(Unit) else Unit.INCH


def _role(name: str, role: Cursor) -> Role:
    kind = role.text("kind")
    return Role(
        name,
        Kind(kind) if kind in list(Kind) else Kind.ANY,
        role.flag("directional"),
        role.text("title", name),
        role.where,
    )


def _sheet(sheet: Cursor) -> Sheet:
    times = sheet.count("times", 1, 1, MOST_TIMES)
    return Sheet(sheet.text("role"), sheet.size("size"), _content(sheet), times, sheet.where)


def _content(part: Cursor) -> Content:
    if part.text("piece"):
        return Leaf(Use.PIECE, part.text("piece"), part.where)
    if part.flag("spare"):
        return Leaf(Use.SPARE, where=part.where)
    for axis in Axis:
        branches = tuple(_branch(each, axis) for each in part.child(axis.value).items())
        if branches:
            return Split(axis, branches, part.child(axis.value).where)
    return Leaf(Use.SCRAP, where=part.where)


def _branch(part: Cursor, axis: Axis) -> Branch:
    side = "width" if axis is Axis.COLUMNS else "height"
    is_rest = part.text(side) == "rest"
    extent = None if is_rest else part.length(side, least=1)
    return Branch(extent, _content(part), is_rest, part.count("times", 1, 1, MOST_TIMES), part.where)


def _placement(each: Cursor) -> Placement:
    return Placement(
        each.text("piece"),
        each.text("page"),
        _offset(each, _ACROSS),
        _offset(each, _DOWN),
        each.flag("turned"),
        Side.BACK if each.text("face") == "back" else Side.FRONT,
        each.size("size"),
        each.text("role"),
        each.where,
    )


def _offset(each: Cursor, edges: tuple[Edge, ...]) -> Offset:
    """The one edge that is named; with none or several, which the schema refuses, the distance stays open."""
    named = [edge for edge in edges if each.has(edge.value)]
    distances = [each.length(edge.value, least=-LONGEST) for edge in named]
    return Offset(named[0], distances[0]) if len(named) == 1 else Offset(edges[0], None)


def _photo(photo: Cursor) -> Photo:
    return Photo(photo.text("on"), photo.length("border", DEFAULT_BORDER), photo.where)
