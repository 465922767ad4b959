"""A recipe with its sheets cut by a plan: every piece lies where it lay, turned back where it is now cut lying.

Sizes and roles that placements name are dropped, since the cut trees say them.
"""

from collections.abc import Sequence
from dataclasses import replace
from typing import Any

from spreadwright.cutting import cut_sheets, pieces
from spreadwright.document import Reading, sheet_document
from spreadwright.geometry import Size
from spreadwright.model import PieceList, Recipe, Sheet


def replanned(reading: Reading[Recipe], wish: PieceList, sheets: Sequence[Sheet]) -> dict[str, Any]:
    """The document of the recipe with these sheets in place of its own.

    Args:
        reading: The recipe as it was.
        wish: Its pieces as they were planned.
        sheets: How they are cut now.
    """
    turned = _turned(reading.model, wish, sheets)
    named = reading.document.get("placements", [])
    placements = [_turned_back(_as_placed(each)) if each["piece"] in turned else _as_placed(each) for each in named]
    written = [sheet_document(sheet, reading.model.unit) for sheet in sheets]
    changed = {"sheets": written, "placements": placements}
    if "sheets" in reading.document:
        return {**reading.document, **changed}
    return _with_sheets_before_placements(reading.document) | changed


def _with_sheets_before_placements(document: dict[str, Any]) -> dict[str, Any]:
    """The members in the order in which recipes are written."""
    ordered: dict[str, Any] = {}
    for name, value in document.items():
        if name == "placements":
            ordered["sheets"] = []
        ordered[name] = value
    return ordered


def _as_placed(placement: dict[str, Any]) -> dict[str, Any]:
    return {name: value for name, value in placement.items() if name not in ("size", "role")}


def _turned(recipe: Recipe, wish: PieceList, sheets: Sequence[Sheet]) -> set[str]:
    """Ids of the pieces that are cut lying now."""
    was: dict[str, Size] = {wanted.name: wanted.size for wanted in wish.pieces}
    cut = pieces(cut_sheets(replace(recipe, sheets=tuple(sheets))))
    return {piece.id for piece in cut if piece.size != was[piece.name]}


def _turned_back(placement: dict[str, Any]) -> dict[str, Any]:
    changed = {**placement, "turned": not placement.get("turned", False)}
    if not changed["turned"]:
        del changed["turned"]
    return changed
