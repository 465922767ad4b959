"""What is to be planned: the piece list of a document, or the pieces and sheets that a recipe amounts to."""

from collections import Counter, defaultdict
from dataclasses import replace
from typing import Any, TypeGuard

from spreadwright.cutting import cut_sheets, pieces, tree_findings
from spreadwright.document import AnyReading, Reading
from spreadwright.errors import InvalidDocument, error, has_errors
from spreadwright.geometry import Size
from spreadwright.model import Piece, PieceList, Recipe, Stock, Wanted


def is_recipe(reading: AnyReading) -> TypeGuard[Reading[Recipe]]:
    """Whether the reading is one of a recipe."""
    return isinstance(reading.model, Recipe)


def wish_of(reading: AnyReading, stock: PieceList | None = None) -> PieceList:
    """The pieces wanted and the stock, of a piece list or of a recipe.

    Args:
        reading: The document.
        stock: A piece list whose stock takes the place of the document's; sheets of no role take the only one.

    Raises:
        InvalidDocument: The document carries an error, or names no pieces.
    """
    if is_recipe(reading):
        wish = _wish_of_recipe(reading)
    elif isinstance(reading.model, PieceList):
        _refuse(_title(reading), reading.findings)
        wish = reading.model
    else:
        message = f"A document of the kind “{reading.kind}” names no pieces."
        finding = error("unknown-schema", "/schema", message, "Give a recipe or “pieces/1”.")
        raise InvalidDocument(_title(reading), [finding])
    return replace(wish, stock=_roled(stock.stock, wish)) if stock else wish


def _title(reading: AnyReading) -> str:
    return str(reading.document.get("title") or reading.model.id)


def _refuse(title: str, findings: Any) -> None:
    if has_errors(findings):
        raise InvalidDocument(title, findings)


def _roled(stock: tuple[Stock, ...], wish: PieceList) -> tuple[Stock, ...]:
    papers = {wanted.paper for wanted in wish.pieces}
    if len(papers) != 1:
        return stock
    return tuple(replace(each, paper=each.paper or next(iter(papers))) for each in stock)


def _wish_of_recipe(reading: Reading[Recipe]) -> PieceList:
    """Its pieces, with the sheets that it has as stock.

    The name of a piece that others share, but not in size and role, is its id, so that placements keep their meaning.
    """
    recipe = reading.model
    if not recipe.sheets:
        message = "The recipe has no sheets that can be read, so the sizes of its pieces are not known."
        remedy = "Name the pieces with their sizes in a document of the kind “pieces/1”, and plan that."
        raise InvalidDocument(recipe.title, [error("sizes-unknown", "/sheets", message, remedy), *reading.findings])
    _refuse(recipe.title, (*reading.findings, *tree_findings(recipe)))
    cut = pieces(cut_sheets(recipe))
    alike: dict[str, set[tuple[str, Size | None]]] = defaultdict(set)
    for piece in cut:
        alike[piece.name].add((piece.role, piece.size))
    counts = Counter((p.name if len(alike[p.name]) == 1 else p.id, p.role, p.size) for p in cut)
    first = {p.name if len(alike[p.name]) == 1 else p.id: p for p in reversed(cut)}
    wanted = tuple(_wanted(name, first[name], count, recipe) for (name, _, _), count in counts.items())
    return PieceList(recipe.id, recipe.title, recipe.unit, wanted, _stock(recipe))


def _wanted(name: str, piece: Piece, count: int, recipe: Recipe) -> Wanted:
    role = recipe.role(piece.role)
    may_turn = role is None or not role.is_directional
    return Wanted(name, piece.size or Size(0, 0), count, may_turn, piece.role, where=piece.where)


def _stock(recipe: Recipe) -> tuple[Stock, ...]:
    counts: Counter[tuple[str, Size | None]] = Counter()
    for sheet in recipe.sheets:
        counts[sheet.role, sheet.size] += sheet.times
    return tuple(Stock(size, count, role, where="/sheets") for (role, size), count in counts.items() if size)
