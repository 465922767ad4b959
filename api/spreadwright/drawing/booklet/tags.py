"""What stands on a share of a cut: its mark, name, size and pile, never smaller than 9 pt.

Inside the share when it has room for them, upright or turned; else beside it on the board, with a line to it. The
sentences beside the picture say everything, so name and size are left out where they have no room, the mark never.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from spreadwright.drawing.canvas import Canvas, filled, stroked
from spreadwright.drawing.fonts import Typeface
from spreadwright.drawing.labels import Pile
from spreadwright.drawing.marks import PILE, WHITE, pile_sign
from spreadwright.drawing.rooms import middle_of, nearest_place, nearest_point, rooms
from spreadwright.drawing.theme import HAIRLINE, INK, LARGE, MM, points
from spreadwright.drawing.type import Align, Style, width, write
from spreadwright.geometry import Rect, Size

MARK = Style(face=Typeface.SANS_BOLD, size=LARGE)
WORDS = Style(size=points(9), is_tabular=True)
_LINE = {MARK: 11 * MM // 2, WORDS: 4 * MM}
_PAD = MM // 2
_AWAY = 3 * MM // 2


@dataclass(frozen=True, slots=True)
class Tag:
    """The words for one share; what is no piece has neither mark nor piles, what is cut from several sheets several."""

    mark: str = ""
    name: str = ""
    size: str = ""
    piles: tuple[Pile, ...] = ()

    @property
    def lines(self) -> tuple[tuple[str, Style], ...]:
        """What is written, from top to bottom."""
        offered = ((self.mark, MARK), (self.name, WORDS), (self.size, WORDS))
        return tuple(line for line in offered if line[0])

    @property
    def box(self) -> Size:
        """What it takes, upright, ticks."""
        wide = [width(words, style) for words, style in self.lines]
        high = [_LINE[style] for _, style in self.lines]
        if self.piles:
            wide.append(len(self.piles) * (PILE.width + MM))
            high.append(PILE.height + MM)
        return Size(max(wide, default=0) + 2 * _PAD, sum(high) + 2 * _PAD)


def draw_tag(canvas: Canvas, tag: Tag, share: Rect, *, room: Rect, taken: Sequence[Rect] = ()) -> None:
    """Write a tag on a share, or beside it.

    Args:
        share: As it is drawn.
        room: The part of the board where it may stand when the share is too small.
        taken: What must stay readable.
    """
    free = rooms(share.inset(_PAD), [each for each in taken if each.overlaps(share)])
    for form in _forms(tag):
        for is_turned in (False, True):
            place = nearest_place(form.box.turned() if is_turned else form.box, free, share)
            if place is not None:
                _write(canvas, form, place, is_turned=is_turned)
                return
    _beside(canvas, tag, share, room, taken)


def _beside(canvas: Canvas, tag: Tag, share: Rect, room: Rect, taken: Sequence[Rect]) -> None:
    free = rooms(room, [share.inset(-_AWAY), *taken])
    for form in _forms(tag):
        place = nearest_place(form.box, free, share)
        if place is not None:
            _line_to(canvas, place, share)
            _write(canvas, form, place, is_turned=False)
            return


def _forms(tag: Tag) -> Iterator[Tag]:
    """The tag with ever fewer words."""
    yield tag
    if tag.mark:
        yield replace(tag, name="")
        yield replace(tag, name="", size="")
        yield replace(tag, name="", size="", piles=())
    else:
        yield replace(tag, size="")


def _line_to(canvas: Canvas, place: Rect, share: Rect) -> None:
    start, end = nearest_point(middle_of(share), place), nearest_point(middle_of(place), share)
    canvas.line(start, middle_of(share) if start == end else end, stroked(INK, HAIRLINE))
    canvas.circle(end, MM // 2, filled(INK))


def _write(canvas: Canvas, tag: Tag, place: Rect, *, is_turned: bool) -> None:
    canvas.rect(place, filled(WHITE), radius=MM // 2)
    with canvas.group(at=middle_of(place), turned_deg=-90 if is_turned else 0):
        top = _PAD - tag.box.height // 2
        for words, style in tag.lines:
            top += _LINE[style]
            write(canvas, words, (0, top - _LINE[style] // 4), style, align=Align.MIDDLE)
        left = -(len(tag.piles) - 1) * (PILE.width + MM) // 2
        for number, pile in enumerate(tag.piles):
            middle = (left + number * (PILE.width + MM), top + MM // 2 + PILE.height // 2)
            pile_sign(canvas, pile.pages, pile.page, middle)
