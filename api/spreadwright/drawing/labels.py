"""What stands on a part of a cut sheet: mark, name, size and pile, as many of them as the part has room for."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from spreadwright.drawing.canvas import Canvas, filled
from spreadwright.drawing.fonts import Typeface
from spreadwright.drawing.marks import NUMBER_RADIUS, PILE_WIDTH, WHITE, pile_sign
from spreadwright.drawing.theme import LARGE, MM, QUIET, SMALL
from spreadwright.drawing.type import Align, Style, width, write
from spreadwright.geometry import Rect, Size

_MARK = Style(face=Typeface.SANS_BOLD, size=LARGE)
_NAME = Style(size=SMALL)
_MEASURE = Style(size=SMALL, colour=QUIET, is_tabular=True)
_LINE_HEIGHT = 4 * MM
_MARK_HEIGHT = 6 * MM
_SIGN_HEIGHT = 6 * MM
_EDGE = MM
_GAP = 2 * MM
_NUMBER = 2 * NUMBER_RADIUS + 2 * MM
"""What the number of a cut takes at the near end of a strip."""


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

    def lines(self) -> Iterator[tuple[str, Style, int]]:
        """Words, style and height, the most important first."""
        if self.mark:
            yield self.mark, _MARK, _MARK_HEIGHT
        yield self.name, _NAME, _LINE_HEIGHT
        yield self.size, _MEASURE, _LINE_HEIGHT


def part_label(canvas: Canvas, label: Label, drawn: Rect) -> None:
    """Stacked in the middle of the part, in one line in a strip, turned to read from the right in an upright one."""
    widest = max(width(words, style) for words, style, _ in label.lines())
    is_upright = drawn.height > drawn.width and widest > drawn.width - 3 * MM
    room = Size(drawn.height, drawn.width) if is_upright else drawn.size
    middle = (drawn.left + drawn.width // 2, drawn.top + drawn.height // 2)
    with canvas.group(at=middle, turned_deg=-90 if is_upright else 0):
        if room.height > 2 * _LINE_HEIGHT + 4 * MM:
            _stacked(canvas, label, room)
        else:
            _in_line(canvas, label, room)


def _stacked(canvas: Canvas, label: Label, room: Size) -> None:
    shown = [line for line in label.lines() if width(line[0], line[1]) <= room.width - 2 * _EDGE]
    sign = _SIGN_HEIGHT if label.pile else 0
    while shown and sum(line[2] for line in shown) + sign > room.height - 2 * _EDGE:
        shown.pop()
    top = -(sum(line[2] for line in shown) + sign) // 2
    for words, style, height in shown:
        if not label.mark:
            _back(canvas, words, style, -width(words, style) // 2, top)
        top += height
        write(canvas, words, (0, top - height // 4), style, align=Align.MIDDLE)
    if label.pile:
        pile_sign(canvas, label.pile.pages, label.pile.page, (0, top + sign // 2))


def _in_line(canvas: Canvas, label: Label, room: Size) -> None:
    """One after the other, beyond the number of the cut."""
    shown = [(words, style) for words, style, _ in label.lines()]
    free = room.width - 2 * _EDGE - _NUMBER
    sign = PILE_WIDTH + _GAP if label.pile else 0
    while len(shown) > 1 and _run(shown) + sign > free:
        shown.pop()
    if _run(shown) + sign > free:
        sign = 0
    left = (_NUMBER - _run(shown) - sign) // 2
    for words, style in shown:
        if not label.mark:
            _back(canvas, words, style, left, -_LINE_HEIGHT // 2)
        write(canvas, words, (left, style.size // 3), style)
        left += width(words, style) + _GAP
    if label.pile and sign:
        pile_sign(canvas, label.pile.pages, label.pile.page, (left + PILE_WIDTH // 2, 0))


def _run(lines: Sequence[tuple[str, Style]]) -> int:
    return sum(width(words, style) for words, style in lines) + _GAP * (len(lines) - 1)


def _back(canvas: Canvas, words: str, style: Style, left: int, top: int) -> None:
    """White behind words that stand on hatching."""
    canvas.rect(Rect(left - MM, top, width(words, style) + 2 * MM, _LINE_HEIGHT), filled(WHITE))
