"""The verb *pieces*: every piece with its size, where it is cut and where it goes, as JSON and CSV."""

from collections.abc import Sequence
from dataclasses import dataclass

from spreadwright.cutting import cut_sheets, pieces
from spreadwright.document import Reading
from spreadwright.geometry import Size
from spreadwright.lengths import Unit
from spreadwright.model import Piece, Recipe, Side
from spreadwright.photos import matted_photos
from spreadwright.placing import placed_pieces
from spreadwright.tasks.answers import SCALE, Json, size_answer
from spreadwright.tasks.check import proven
from spreadwright.tasks.tables import csv_bytes, in_inches, in_mm

__all__ = ["PieceRow", "piece_rows", "pieces_answer", "pieces_csv", "pieces_of"]

_HEADS = (
    *("mark", "name", "sheet", "page", "width_mm", "height_mm", "width_in", "height_in"),
    *("turned", "face", "role", "photo_width_mm", "photo_height_mm", "photo_width_in", "photo_height_in"),
)


@dataclass(frozen=True, slots=True)
class PieceRow:
    """One piece.

    Attributes:
        sheet: The number of the sheet that it is cut from.
        page: Where it goes, and so its pile.
        size: As cut, before any turn, ticks.
        photo: Of the photograph on it, as cut, ticks; None when there is none.
    """

    piece: Piece
    sheet: int
    page: str
    size: Size
    is_turned: bool
    side: Side
    photo: Size | None


def pieces_of(reading: Reading[Recipe]) -> tuple[PieceRow, ...]:
    """Every piece of a recipe, sheet by sheet.

    Raises:
        InvalidDocument: The recipe carries an error.
    """
    return piece_rows(proven(reading))


def piece_rows(recipe: Recipe) -> tuple[PieceRow, ...]:
    """The same of a recipe that is known to be sound."""
    sheets = cut_sheets(recipe)
    cut = pieces(sheets)
    number_of = {part.id: sheet.number for sheet in sheets for part in sheet.parts}
    placed = {each.piece.id: each for each in placed_pieces(recipe, cut)}
    photos = {photo.on: photo.size for photo in matted_photos(recipe, cut)}
    return tuple(
        PieceRow(
            piece,
            number_of[piece.id],
            placed[piece.id].page,
            piece.size,
            placed[piece.id].is_turned,
            placed[piece.id].side,
            photos.get(piece.id),
        )
        for piece in cut
        if piece.size is not None
    )


def pieces_csv(rows: Sequence[PieceRow]) -> bytes:
    """A row for each piece; lengths in millimetres and in inches, as the heads say."""
    return csv_bytes(_HEADS, (_row(row) for row in rows))


def pieces_answer(recipe: Recipe, rows: Sequence[PieceRow]) -> Json:
    """The same as JSON, lengths in ticks."""
    return {
        "recipe": recipe.id,
        **SCALE,
        "pieces": [_piece(row, recipe.unit) for row in rows],
    }


def _row(row: PieceRow) -> list[object]:
    return [
        *(row.piece.mark, row.piece.id, row.sheet, row.page),
        *_sides(row.size),
        "yes" if row.is_turned else "no",
        row.side.value,
        row.piece.role,
        *(_sides(row.photo) if row.photo else [""] * 4),
    ]


def _sides(size: Size) -> list[str]:
    return [unit(side) for unit in (in_mm, in_inches) for side in (size.width, size.height)]


def _piece(row: PieceRow, unit: Unit) -> Json:
    return {
        "mark": row.piece.mark,
        "id": row.piece.id,
        "sheet": row.sheet,
        "page": row.page,
        "size": size_answer(row.size, unit),
        "turned": row.is_turned,
        "face": row.side.value,
        "role": row.piece.role,
        "photo": size_answer(row.photo, unit) if row.photo else None,
    }
