"""What stands on a part of a cut sheet: mark, name, size and pile, as many of them as the part has room for.

A label comes in several forms: stacked or in one line, upright or turned to read from the right, with a large mark or
a small one. The form that keeps most of the words is taken, the first of them in the order of looks; the mark is never
left out.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import product

from spreadwright.drawing.canvas import Canvas, filled
from spreadwright.drawing.fonts import Typeface
from spreadwright.drawing.marks import PILE_HEIGHT, PILE_WIDTH, WHITE, pile_sign
from spreadwright.drawing.rooms import centred, nearest_place, rooms
from spreadwright.drawing.theme import BODY, LARGE, MM, QUIET, SMALL
from spreadwright.drawing.type import Align, Style, width, write
from spreadwright.geometry import Rect, Size

_NAME = Style(size=SMALL)
_MEASURE = Style(size=SMALL, colour=QUIET, is_tabular=True)
_LINE_HEIGHT = 4 * MM
_EDGE, _NEAR_EDGE = MM * 3 // 4, MM // 4
_GAP = 2 * MM
_BACK = MM * 3 // 8
"""What the white behind a label takes beyond it."""
_MARK_SIZES = (LARGE, BODY, SMALL)
_KEPT = ("mark name size pile", "mark name size", "mark name pile", "mark pile", "mark name", "mark")
"""What is kept of a piece's label, the fullest first."""
_KEPT_WITHOUT_MARK = ("name size", "name", "size")


@dataclass(frozen=True, slots=True)
class Pile:
    """The page on whose pile a piece goes, among all pages."""

    pages: tuple[str, ...]
    page: str


@dataclass(frozen=True, slots=True)
class Label:
    """The words of one part; a part that is no piece has neither mark nor pile."""

    mark: str
    name: str
    size: str
    pile: Pile | None = None


@dataclass(frozen=True, slots=True)
class _Form:
    """One way of setting a label: its lines of words, and whether the sign of the pile follows."""

    lines: tuple[tuple[str, Style], ...]
    pile: Pile | None
    is_stacked: bool
    is_turned: bool

    @property
    def box(self) -> Size:
        """What it takes as it is read, ticks."""
        wide = [width(words, style) for words, style in self.lines]
        high = [_height(style) if self.is_stacked else style.size * 3 // 4 for _, style in self.lines]
        if self.pile:
            wide.append(PILE_WIDTH)
            high.append(PILE_HEIGHT + (2 * MM if self.is_stacked else 0))
        if self.is_stacked:
            return Size(max(wide), sum(high))
        return Size(sum(wide) + _GAP * (len(wide) - 1), max(high))

    @property
    def lying(self) -> Size:
        """What it takes on the sheet, ticks."""
        return self.box.turned() if self.is_turned else self.box


def part_label(canvas: Canvas, label: Label, drawn: Rect, obstacles: Sequence[Rect] = ()) -> Rect:
    """Write a label on its part, as near to the middle as the obstacles let it; what it takes.

    Args:
        drawn: The part as it is drawn.
        obstacles: What must stay readable, such as the numbers of cuts.
    """
    near = [each for each in obstacles if each.overlaps(drawn)]
    airy, close = (rooms(drawn.inset(edge), near) for edge in (_EDGE, _NEAR_EDGE))
    for kept in _KEPT if label.mark else _KEPT_WITHOUT_MARK:
        for free, form in product((airy, close), _forms(label, kept)):
            place = nearest_place(form.lying, free, drawn)
            if place is not None:
                _draw(canvas, form, place, has_back=not label.mark)
                return place
    if not label.mark:
        return Rect.at(drawn.left, drawn.top, Size(0, 0))
    smallest = _form(label, "mark", SMALL, is_stacked=False, is_turned=drawn.height > drawn.width)
    place = _along(smallest.lying, drawn, obstacles)
    _draw(canvas, smallest, place, has_back=True)
    return place.inset(-_BACK)


def _along(box: Size, drawn: Rect, obstacles: Sequence[Rect]) -> Rect:
    """Where a box that is wider than its part hides no other: in the middle, or further along the part."""
    middle, is_upright = centred(box, drawn, drawn), drawn.height > drawn.width
    step = (box.height if is_upright else box.width) + 2 * _BACK + MM
    most = (drawn.height if is_upright else drawn.width) // 2 // step
    ways = [sign * count * step for count in range(most) for sign in (1, -1)]
    places = [middle.moved(0, way) if is_upright else middle.moved(way, 0) for way in ways]
    return next((each for each in places if not any(each.inset(-_BACK).overlaps(o) for o in obstacles)), middle)


def _forms(label: Label, kept: str) -> Iterator[_Form]:
    """All forms that keep the same, the handsomest first."""
    sizes = _MARK_SIZES if label.mark else (SMALL,)
    for mark_size, is_turned, is_stacked in product(sizes, (False, True), (True, False)):
        yield _form(label, kept, mark_size, is_stacked=is_stacked, is_turned=is_turned)


def _form(label: Label, kept: str, mark_size: int, *, is_stacked: bool, is_turned: bool) -> _Form:
    offered = {
        "mark": (label.mark, Style(face=Typeface.SANS_BOLD, size=mark_size)),
        "name": (label.name, _NAME),
        "size": (label.size, _MEASURE),
    }
    words = kept.split()
    lines = tuple(line for key, line in offered.items() if key in words)
    return _Form(lines, label.pile if "pile" in words else None, is_stacked, is_turned)


def _draw(canvas: Canvas, form: _Form, place: Rect, *, has_back: bool) -> None:
    middle = (place.left + place.width // 2, place.top + place.height // 2)
    if has_back:
        canvas.rect(place.inset(-_BACK), filled(WHITE))
    with canvas.group(at=middle, turned_deg=-90 if form.is_turned else 0):
        if form.is_stacked:
            _stacked(canvas, form)
        else:
            _in_line(canvas, form)


def _stacked(canvas: Canvas, form: _Form) -> None:
    top = -form.box.height // 2
    for words, style in form.lines:
        top += _height(style)
        write(canvas, words, (0, top - _height(style) // 4), style, align=Align.MIDDLE)
    if form.pile:
        pile_sign(canvas, form.pile.pages, form.pile.page, (0, top + MM + PILE_HEIGHT // 2))


def _in_line(canvas: Canvas, form: _Form) -> None:
    left = -form.box.width // 2
    for words, style in form.lines:
        write(canvas, words, (left, style.size // 3), style)
        left += width(words, style) + _GAP
    if form.pile:
        pile_sign(canvas, form.pile.pages, form.pile.page, (left + PILE_WIDTH // 2, 0))


def _height(style: Style) -> int:
    """Of a line in a stack: more than the letters, but just them for the smallest."""
    return {LARGE: 6 * MM, BODY: 5 * MM, SMALL: _LINE_HEIGHT}.get(style.size, style.size)
