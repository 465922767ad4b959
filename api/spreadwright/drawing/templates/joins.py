"""Where two tiles meet: the line along which they are cut or laid, and marks that must come to lie on one another."""

from dataclasses import dataclass

from spreadwright.drawing.canvas import Canvas, filled, stroked
from spreadwright.drawing.fonts import Typeface
from spreadwright.drawing.marks import WHITE
from spreadwright.drawing.path import Path, Point
from spreadwright.drawing.templates.plan import Leaf, TemplatePlan
from spreadwright.drawing.theme import INK, MM, SMALL, THIN
from spreadwright.drawing.type import Align, Style, width, write
from spreadwright.geometry import Rect
from spreadwright.words import gettext as _

JOIN = stroked(INK, THIN, dash=(6 * MM, 2 * MM))
_RADIUS, _ARM = 2 * MM, 4 * MM
_WORDS = Style(size=SMALL)
_LETTER = Style(face=Typeface.SANS_BOLD, size=SMALL)
_LETTERS = "abcdefghjklmnpqrstuvwxyz"


@dataclass(frozen=True, slots=True)
class Join:
    """One side on which a tile meets another.

    Attributes:
        start: Of the line, ticks; the line runs to the right or downward.
        other: The number of the other printed page.
        is_cut: Whether this tile is cut here and laid over the other; the other way round otherwise.
        number: The same on both tiles, and on no other join of the page.
    """

    start: Point
    end: Point
    other: int
    is_cut: bool
    number: int

    @property
    def is_upright(self) -> bool:
        """Whether it runs down the page."""
        return self.start[0] == self.end[0]

    @property
    def marks(self) -> tuple[Point, Point]:
        """Where its two marks lie, ticks."""
        (x1, y1), (x2, y2) = self.start, self.end
        first = (x1 + (x2 - x1) // 5, y1 + (y2 - y1) // 5)
        return first, (x1 + (x2 - x1) * 4 // 5, y1 + (y2 - y1) * 4 // 5)


def joins_of(plan: TemplatePlan, leaf: Leaf) -> list[Join]:
    """The sides of a tile that meet others: left and top are cut, right and bottom are laid over."""
    tile, shown, core = leaf.tile, leaf.tile.rect, leaf.tile.core
    sides = (
        ((core.left, shown.top), (core.left, shown.bottom), (0, -1), True),
        ((shown.left, core.top), (shown.right, core.top), (-1, 0), True),
        ((core.right, shown.top), (core.right, shown.bottom), (0, 1), False),
        ((shown.left, core.bottom), (shown.right, core.bottom), (1, 0), False),
    )
    found = []
    for start, end, (down, across), is_cut in sides:
        other = plan.number(leaf.page, tile.row + down, tile.column + across)
        if other is not None:
            own = (tile.row, tile.column) if not is_cut else (tile.row + down, tile.column + across)
            number = 2 * (own[0] * plan.tiling.columns + own[1]) + (0 if across else 1)
            found.append(Join(start, end, other, is_cut, number))
    return found


def draw_joins(canvas: Canvas, joins: list[Join]) -> None:
    """The lines first, over them the marks and the words."""
    for join in joins:
        canvas.line(join.start, join.end, JOIN)
    for join in joins:
        for index, middle in enumerate(join.marks):
            _mark(canvas, middle, f"{_letter(join.number)}{index + 1}")
        _say(canvas, join)


def _mark(canvas: Canvas, middle: Point, name: str) -> None:
    """A cross in a ring, with its name."""
    x, y = middle
    cross = Path().move(x - _ARM, y).line(x + _ARM, y).move(x, y - _ARM).line(x, y + _ARM)
    canvas.circle(middle, _RADIUS, stroked(INK, THIN))
    canvas.path(cross, stroked(INK, THIN))
    at = (x + MM * 3 // 2, y - MM * 3 // 2)
    box = Rect(at[0], at[1] - 3 * MM, width(name, _LETTER) + MM, 3 * MM)
    canvas.rect(box, filled(WHITE))
    write(canvas, name, (at[0] + MM // 2, at[1] - MM // 2), _LETTER)


def _say(canvas: Canvas, join: Join) -> None:
    """What to do at the join: outside the line where it is cut, so that the words go."""
    told = _("Cut here; lay over page {number}.") if join.is_cut else _("Page {number} lies over this, up to the line.")
    words = told.format(number=join.other)
    wide = width(words, _WORDS)
    (x1, y1), (x2, y2) = join.start, join.end
    middle = ((x1 + x2) // 2, (y1 + y2) // 2)
    if join.is_upright:
        x = middle[0] - MM if join.is_cut else middle[0] + MM + SMALL * 7 // 10
        canvas.rect(Rect(x - SMALL * 3 // 4, middle[1] - wide // 2 - MM, SMALL, wide + 2 * MM), filled(WHITE))
        write(canvas, words, (x, middle[1]), _WORDS, align=Align.MIDDLE, turned_deg=-90)
    else:
        y = middle[1] - MM if join.is_cut else middle[1] + MM + SMALL * 7 // 10
        canvas.rect(Rect(middle[0] - wide // 2 - MM, y - SMALL * 3 // 4, wide + 2 * MM, SMALL), filled(WHITE))
        write(canvas, words, (middle[0], y), _WORDS, align=Align.MIDDLE)


def _letter(number: int) -> str:
    """a, b ... z, aa, ab ..."""
    more, last = divmod(number, len(_LETTERS))
    return (_letter(more - 1) if more else "") + _LETTERS[last]
