"""The signs of the pictures one by one, to be explained before they are needed."""

from collections.abc import Callable, Sequence

from spreadwright.drawing.booklet.board import BOARD, READING
from spreadwright.drawing.canvas import Canvas, filled, stroked
from spreadwright.drawing.dimensions import Span, across
from spreadwright.drawing.marks import WHITE, cut_number, hatching, pile_sign
from spreadwright.drawing.path import Path
from spreadwright.drawing.theme import ACCENT, BOLD_LINE, INK, LINE, MM, THIN, TINT
from spreadwright.drawing.type import Align, write
from spreadwright.geometry import Rect, Size

_SIZE = Size(18 * MM, 11 * MM)
_PART = Rect(3 * MM, 2 * MM, 12 * MM, 7 * MM)
_MIDDLE = (_SIZE.width // 2, _SIZE.height // 2)


def _sign(draw: Callable[[Canvas], None]) -> Callable[[], Canvas]:
    def drawn() -> Canvas:
        canvas = Canvas(_SIZE, title="")
        draw(canvas)
        return canvas

    return drawn


@_sign
def board(canvas: Canvas) -> None:
    """The board under its fence."""
    canvas.rect(Rect(2 * MM, 2 * MM, 14 * MM, 8 * MM), filled(BOARD))
    canvas.rect(Rect(2 * MM, 2 * MM, 14 * MM, 3 * MM // 2), filled(INK))


@_sign
def arm(canvas: Canvas) -> None:
    """The arm line with the number of a cut."""
    canvas.circle((_MIDDLE[0], MM), MM, filled(ACCENT))
    canvas.line((_MIDDLE[0], MM), (_MIDDLE[0], 8 * MM), stroked(ACCENT, 3 * LINE // 2))
    cut_number(canvas, 1, (_MIDDLE[0], 8 * MM))


@_sign
def reading(canvas: Canvas) -> None:
    """A reading on the scale."""
    across(canvas, [Span(2 * MM, 16 * MM, "")], edge=9 * MM, line=6 * MM)
    write(canvas, "7", (_MIDDLE[0], 5 * MM), READING, align=Align.MIDDLE)


@_sign
def stays(canvas: Canvas) -> None:
    """A part that stays."""
    canvas.rect(_PART, filled(WHITE))
    canvas.rect(_PART, stroked(INK, BOLD_LINE))


@_sign
def falls(canvas: Canvas) -> None:
    """A part that falls."""
    canvas.rect(_PART, filled(TINT))
    hatching(canvas, _PART, pitch=2 * MM)
    canvas.rect(_PART, stroked(INK, THIN, dash=(MM, MM // 2)))


@_sign
def corner(canvas: Canvas) -> None:
    """The first corner of a part."""
    canvas.rect(_PART, filled(WHITE))
    left, top = _PART.left, _PART.top
    canvas.path(Path().move(left, top).line(left + 3 * MM, top).line(left, top + 3 * MM).close(), filled(INK))
    canvas.rect(_PART, stroked(INK, BOLD_LINE))


def pile(pages: Sequence[str]) -> Canvas:
    """The sign of the first page's pile."""
    canvas = Canvas(_SIZE, title="")
    pile_sign(canvas, pages, pages[0], _MIDDLE)
    return canvas
