"""The pieces of a pile in small, all to one scale."""

from collections.abc import Sequence

from spreadwright.drawing.booklet.tags import MARK
from spreadwright.drawing.canvas import Canvas, filled, stroked
from spreadwright.drawing.marks import WHITE
from spreadwright.drawing.theme import BODY, INK, MM, THIN
from spreadwright.drawing.type import Align, Style, width, write
from spreadwright.geometry import Rect, Size
from spreadwright.model import Piece

_LONGEST = 30 * MM
_SMALL = Style(face=MARK.face, size=BODY)
_AIR = MM


def pile_scale(pieces: Sequence[Piece]) -> tuple[int, int]:
    """How much smaller the pieces are drawn: so many ticks for so many."""
    return _LONGEST, max((max(piece.width or 1, piece.height or 1) for piece in pieces), default=1)


def piece_picture(piece: Piece, scale: tuple[int, int], *, prefix: str = "") -> Canvas:
    """The outline of a piece with its mark: inside, or beside it when it is too narrow."""
    drawn, real = scale
    size = Size(max(1, (piece.width or 1) * drawn // real), max(1, (piece.height or 1) * drawn // real))
    style = MARK if min(size.width - width(piece.mark, MARK), size.height - MARK.size) > MM else _SMALL
    run, high = width(piece.mark, style), style.size * 3 // 4
    is_inside = size.width >= run + _AIR and size.height >= high + _AIR
    beside = 0 if is_inside else run + _AIR
    canvas = Canvas(
        Size(size.width + beside + 2 * _AIR, max(size.height, high) + 2 * _AIR), title=piece.mark, prefix=prefix
    )
    rect = Rect.at(_AIR, _AIR + (max(size.height, high) - size.height) // 2, size)
    canvas.rect(rect, filled(WHITE))
    canvas.rect(rect, stroked(INK, THIN))
    baseline = rect.top + rect.height // 2 + high // 2
    if is_inside:
        write(canvas, piece.mark, (rect.left + size.width // 2, baseline), style, align=Align.MIDDLE)
    else:
        write(canvas, piece.mark, (rect.right + _AIR, baseline), style)
    return canvas
