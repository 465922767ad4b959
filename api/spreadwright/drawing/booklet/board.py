"""One cut as it lies on the board: arm line, reading and scale, what stays and what falls.

The board lies in the same place in every picture of a booklet, so that only the paper moves from one to the next. It is
told by geometry alone: the part is turned as the step says, and the blade stands where the kept share meets the other.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from spreadwright.cutting import CutStep
from spreadwright.drawing.booklet.tags import Tag, draw_tag
from spreadwright.drawing.canvas import Canvas, filled, stroked
from spreadwright.drawing.dimensions import Span, across
from spreadwright.drawing.fonts import Typeface
from spreadwright.drawing.marks import WHITE, cut_number, hatching, number_box
from spreadwright.drawing.path import Path, Point
from spreadwright.drawing.theme import ACCENT, BOLD_LINE, HAIRLINE, INK, LINE, MM, QUIET, THIN, TINT, points
from spreadwright.drawing.type import Align, Style, width, write
from spreadwright.geometry import Rect, Size
from spreadwright.model import Measures

WIDTH = 58 * MM
"""Of every picture, ticks: three lie side by side."""
_HIGHEST = 56 * MM
_LEAST_DEEP = 17 * MM
"""Room below the fence for the words of a narrow part."""
BOARD = "#f1efea"
_EDGE = 3 * MM
_SCALE = 9 * MM
"""Above the fence: the reading with its dimension line."""
_FENCE = 3 * MM // 2
_FOOT = 6 * MM
"""Below the paper: where the arm comes down, with the number of the cut."""
_CORNER = 3 * MM
READING = Style(face=Typeface.SANS_BOLD, size=points(10), is_tabular=True)
_TOGETHER = Style(face=Typeface.SANS_BOLD, size=points(9))
_TOGETHER_HEIGHT = 9 * MM // 2
"""What the words of several sheets on one another take below the number of the cut."""


@dataclass(frozen=True, slots=True)
class Board:
    """How much room all cuts of a booklet need beside the blade and below the fence, ticks of real paper."""

    left: int
    right: int
    deep: int

    @property
    def scale(self) -> tuple[int, int]:
        """How much smaller everything is drawn: `drawn` for `real`."""
        room_across, room_down = WIDTH - 2 * _EDGE, _HIGHEST - _SCALE - _FENCE - _FOOT
        real_across, real_down = self.left + self.right, self.deep
        if room_across * real_down <= room_down * real_across:
            return room_across, real_across
        return room_down, real_down

    def drawn(self, length: int) -> int:
        """A length as it is drawn, ticks."""
        drawn, real = self.scale
        return length * drawn // real

    @property
    def blade(self) -> int:
        """Where the blade stands, ticks from the left of the picture."""
        spare = WIDTH - 2 * _EDGE - self.drawn(self.left) - self.drawn(self.right)
        return _EDGE + spare // 2 + self.drawn(self.left)

    @property
    def fence(self) -> int:
        """Where the paper touches the fence, ticks from the top of the picture."""
        return _SCALE + _FENCE

    def height(self, deep: int) -> int:
        """Of the picture of a part that lies so deep on the board, ticks: the board ends sooner below a short one."""
        short = self.drawn(deep) <= _LEAST_DEEP
        return self.fence + (_LEAST_DEEP if short else max(_LEAST_DEEP, self.drawn(self.deep))) + _FOOT


@dataclass(frozen=True, slots=True)
class CutPicture:
    """What one picture shows.

    Attributes:
        reading: The figure on the scale, with its unit.
        kept: What is written on the part that stays.
        falling: What is written on the part that falls.
        together: How many sheets lie on one another, in words; empty for one.
        title: What the picture shows, for people who cannot see it.
    """

    step: CutStep
    reading: str
    kept: Tag
    falling: Tag
    together: str
    title: str


def board_for(steps: Sequence[CutStep]) -> Board:
    """The board on which every one of the cuts has room."""
    lying = [(lies(step, step.on_board), blade_of(step)) for step in steps]
    left = max((blade for _, blade in lying), default=1)
    right = max((rect.width - blade for rect, blade in lying), default=1)
    deep = max((rect.height for rect, _ in lying), default=1)
    least = (left + right) // 5  # a narrow strip has its words beside it
    return Board(max(left, least), max(right, least), deep)


def lies(step: CutStep, rect: Rect) -> Rect:
    """A place on the sheet as it lies on the board, ticks from the top left corner of the part that is cut."""
    left, top = rect.left - step.on_board.left, rect.top - step.on_board.top
    size, whole = rect.size, step.on_board.size
    for _turn in range(step.quarter_turns_left % 4):
        left, top = top, whole.width - left - size.width
        size, whole = size.turned(), whole.turned()
    return Rect.at(left, top, size)


def blade_of(step: CutStep) -> int:
    """Where the blade stands, ticks from the left edge of the part as it lies on the board."""
    return max(lies(step, step.kept.rect).left, lies(step, step.falling.rect).left)


def cut_picture(picture: CutPicture, board: Board, *, prefix: str = "") -> Canvas:
    """The picture of one cut, `WIDTH` wide."""
    step = picture.step
    foot = board.height(lies(step, step.on_board).height)
    high = foot + (_TOGETHER_HEIGHT if picture.together else 0)
    canvas = Canvas(Size(WIDTH, high), title=picture.title, prefix=prefix)
    bed = Rect.between(MM // 2, board.fence - _FENCE, WIDTH - MM // 2, high - MM // 2)
    canvas.rect(bed, filled(BOARD), radius=MM)
    canvas.rect(bed, stroked(QUIET, HAIRLINE), radius=MM)
    kept, falling = (_drawn(board, step, share.rect) for share in (step.kept, step.falling))
    _paper(canvas, kept, falling)
    _first_corner(canvas, board, step)
    canvas.rect(Rect.between(bed.left, bed.top, bed.right, board.fence), filled(INK))
    end = (board.blade, foot - _FOOT // 2 - MM // 2)
    _arm(canvas, board, end)
    taken = (number_box(end), _corner_box(board, step), Rect.between(bed.left, foot - MM // 2, bed.right, bed.bottom))
    room = Rect.between(bed.left + MM // 2, board.fence + MM // 2, bed.right - MM // 2, bed.bottom - MM // 2)
    draw_tag(canvas, picture.kept, kept, room=_side(room, kept, board.blade), taken=taken)
    draw_tag(canvas, picture.falling, falling, room=_side(room, falling, board.blade), taken=taken)
    cut_number(canvas, step.number, end)
    _reading(canvas, picture, kept if step.measures is Measures.KEPT else falling, board)
    write(canvas, picture.together, (bed.left + 3 * MM // 2, bed.bottom - 3 * MM // 2), _TOGETHER)
    return canvas


def _drawn(board: Board, step: CutStep, rect: Rect) -> Rect:
    """A place on the sheet, as drawn."""
    lying, blade = lies(step, rect), blade_of(step)
    left, right = (board.blade + board.drawn(x - blade) for x in (lying.left, lying.right))
    top, bottom = (board.fence + board.drawn(y) for y in (lying.top, lying.bottom))
    return Rect.between(left, top, right, bottom)


def _side(room: Rect, share: Rect, blade: int) -> Rect:
    """The half of the board on which a share lies, clear of the arm."""
    if share.right <= blade:
        return Rect.between(room.left, room.top, blade - MM, room.bottom)
    return Rect.between(blade + MM, room.top, room.right, room.bottom)


def _paper(canvas: Canvas, kept: Rect, falling: Rect) -> None:
    """What stays is solid, what falls is tinted and hatched."""
    canvas.rect(kept, filled(WHITE))
    canvas.rect(falling, filled(TINT))
    hatching(canvas, falling, pitch=2 * MM)
    canvas.rect(falling, stroked(INK, THIN, dash=(MM, MM // 2)))
    canvas.rect(kept, stroked(INK, BOLD_LINE))


def _first_corner(canvas: Canvas, board: Board, step: CutStep) -> None:
    """The corner that lay at the top left of the upright sheet, wherever it has been turned to."""
    box, whole = _corner_box(board, step), _drawn(board, step, step.on_board)
    x, across = (box.left, box.right) if box.left == whole.left else (box.right, box.left)
    y, down = (box.top, box.bottom) if box.top == whole.top else (box.bottom, box.top)
    canvas.path(Path().move(x, y).line(across, y).line(x, down).close(), filled(INK))


def _corner_box(board: Board, step: CutStep) -> Rect:
    whole = _drawn(board, step, step.on_board)
    side = min(_CORNER, whole.width, whole.height)
    turns = step.quarter_turns_left % 4
    left = whole.left if turns in (0, 1) else whole.right - side
    top = whole.top if turns in (0, 3) else whole.bottom - side
    return Rect(left, top, side, side)


def _arm(canvas: Canvas, board: Board, end: Point) -> None:
    """The line of the blade, from the hinge behind the fence to where the arm comes down."""
    canvas.line((board.blade, board.fence - 2 * _FENCE), end, stroked(ACCENT, 3 * LINE // 2))
    canvas.circle((board.blade, board.fence - 2 * _FENCE), MM, filled(ACCENT))


def _reading(canvas: Canvas, picture: CutPicture, measured: Rect, board: Board) -> None:
    """The part of the scale that is read, as a dimension."""
    line = _SCALE - 5 * MM // 2
    across(canvas, [Span(measured.left, measured.right, "")], edge=board.fence - _FENCE, line=line)
    half = width(picture.reading, READING) // 2 + MM // 2
    above = MM if measured.width > 2 * half else 2 * MM
    middle = max(half, min((measured.left + measured.right) // 2, WIDTH - half))
    write(canvas, picture.reading, (middle, line - above), READING, align=Align.MIDDLE)
