"""What is to be planned: a piece list, the pieces and sheets of a recipe, or the placements of a draft."""

import re
from collections import Counter, defaultdict
from dataclasses import replace
from typing import Any, TypeGuard

from spreadwright.cutting import cut_sheets, pieces, tree_findings
from spreadwright.document import AnyReading, Reading
from spreadwright.errors import InvalidDocument, error, has_errors
from spreadwright.geometry import Size
from spreadwright.lengths import TICKS, Unit
from spreadwright.model import Piece, PieceList, Placement, Recipe, Stock, Wanted
from spreadwright.placing import draft_findings, role_of
from spreadwright.tasks.check import is_draft


def is_recipe(reading: AnyReading) -> TypeGuard[Reading[Recipe]]:
    """Whether the reading is one of a recipe."""
    return isinstance(reading.model, Recipe)


def wish_of(reading: AnyReading, stock: PieceList | None = None) -> PieceList:
    """The pieces wanted and the stock, of a piece list or of a recipe.

    Args:
        reading: The document.
        stock: A piece list whose stock takes the place of the document's; sheets of no role are there in every role.

    Raises:
        InvalidDocument: The document carries an error, or names no pieces.
    """
    if is_recipe(reading):
        wish = _wish_of_draft(reading) if is_draft(reading) else _wish_of_recipe(reading)
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
    """Stock that names no role is there in every role that the pieces need."""
    papers = dict.fromkeys(wanted.paper for wanted in wish.pieces)
    return tuple(replace(each, paper=paper) for each in stock for paper in ([each.paper] if each.paper else papers))


def _wish_of_recipe(reading: Reading[Recipe]) -> PieceList:
    """Its pieces, with the sheets that it has as stock.

    The name of a piece that others share, but not in size and role, is its id, so that placements keep their meaning.
    """
    recipe = reading.model
    _refuse(recipe.title, (*reading.findings, *tree_findings(recipe)))
    cut = pieces(cut_sheets(recipe))
    alike: dict[str, set[tuple[str, Size | None]]] = defaultdict(set)
    for piece in cut:
        alike[piece.name].add((piece.role, piece.size))
    counts = Counter((p.name if len(alike[p.name]) == 1 else p.id, p.role, p.size) for p in cut)
    first = {p.name if len(alike[p.name]) == 1 else p.id: p for p in reversed(cut)}
    wanted = tuple(_wanted(name, first[name], count, recipe) for (name, _, _), count in counts.items())
    return PieceList(recipe.id, recipe.title, recipe.unit, wanted, _stock(recipe))


def _wish_of_draft(reading: Reading[Recipe]) -> PieceList:
    """The pieces that its placements name, from as many 12 × 12 in sheets of each role as are needed."""
    recipe = reading.model
    _refuse(recipe.title, (*reading.findings, *draft_findings(recipe)))
    names = _shared_names(recipe)
    counts = Counter(names.values())
    first = {names[each.piece]: each for each in reversed(recipe.placements)}
    wanted = tuple(
        _wanted(name, Piece(name, name, "", role_of(each, recipe), *_sides(each), each.where), counts[name], recipe)
        for name, each in reversed(first.items())
    )
    whole = Size(12 * TICKS[Unit.INCH], 12 * TICKS[Unit.INCH])
    stock = tuple(Stock(whole, None, role) for role in dict.fromkeys(each.paper for each in wanted))
    return PieceList(recipe.id, recipe.title, recipe.unit, wanted, stock)


def _shared_names(recipe: Recipe) -> dict[str, str]:
    """The name in the cut tree of each piece that a draft places.

    `mat-1` to `mat-3` of one size and role are three times `mat`, which numbers them again; others keep their own.
    """
    by_base: dict[str, list[Placement]] = defaultdict(list)
    for each in recipe.placements:
        by_base[re.sub(r"-[1-9]\d*$", "", each.piece)].append(each)
    names = {each.piece: each.piece for each in recipe.placements}
    for base, group in by_base.items():
        numbered = {f"{base}-{number}" for number in range(1, len(group) + 1)}
        alike = len({(each.size, role_of(each, recipe)) for each in group}) == 1
        if len(group) > 1 and alike and numbered == {each.piece for each in group}:
            names |= dict.fromkeys(numbered, base)
    return names


def _sides(each: Placement) -> tuple[int, int]:
    return (each.size.width, each.size.height) if each.size else (0, 0)


def _wanted(name: str, piece: Piece, count: int, recipe: Recipe) -> Wanted:
    role = recipe.role(piece.role)
    may_turn = role is None or not role.is_directional
    return Wanted(name, piece.size or Size(0, 0), count, may_turn, piece.role, where=piece.where)


def _stock(recipe: Recipe) -> tuple[Stock, ...]:
    counts: Counter[tuple[str, Size | None]] = Counter()
    for sheet in recipe.sheets:
        counts[sheet.role, sheet.size] += sheet.times
    return tuple(Stock(size, count, role, where="/sheets") for (role, size), count in counts.items() if size)
