"""Photographs, the colours that they are made of, and beneath them the papers that suit them best.

On top the photographs as prints; out from under them come their colours as slips of paper, the longer the more there is
of each: below a row of prints, to the right of one or two. Below all that, for every set or colourway that is proposed,
the spread in it or its papers, and on each of these a slip of the photographs' colour that it is closest to.
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from spreadwright.drawing import relief
from spreadwright.drawing.canvas import Canvas, filled
from spreadwright.drawing.fonts import Typeface
from spreadwright.drawing.scenes import PRINT_WHITE
from spreadwright.drawing.swatch import draw_leaf
from spreadwright.drawing.theme import BODY, HEADING, INK, LARGE, MM, QUIET, SPACE, TABLE
from spreadwright.drawing.type import Align, Style, fitted, width, wrapped, write
from spreadwright.geometry import Rect, Size
from spreadwright.model import Core, Face

_WIDTH, _MARGIN, _GUTTER = 260 * MM, 12 * MM, 10 * MM
_LOW_PRINT, _HIGH_PRINT, _PRINT_EDGE = 62 * MM, 80 * MM, 3 * MM // 2
_SHORTEST, _LONGEST_SLIP, _TUCKED = 5 * MM, 34 * MM, 8 * MM
_SWATCH, _TAB = 26 * MM, 5 * MM
_FAN_HEIGHT = 44 * MM
_LINE = 6 * MM

_QUIET = Style(Typeface.SANS, BODY, QUIET)
_PLAIN = Style(Typeface.SANS, BODY, INK)
_TITLE = Style(Typeface.SANS_BOLD, HEADING, INK)
_FIGURE = Style(Typeface.SANS_MEDIUM, LARGE, INK, is_tabular=True)


@dataclass(frozen=True, slots=True)
class Print:
    """A photograph to be shown as it is: a JPEG, and its width and height in pixels."""

    jpeg: bytes
    width: int
    height: int


@dataclass(frozen=True, slots=True)
class Slip:
    """A colour of the photographs, and what is written below it.

    Attributes:
        share: Of their area, 0 to 1.
    """

    colour: str
    share: float
    label: str
    share_label: str


@dataclass(frozen=True, slots=True)
class Swatch:
    """A paper that is proposed.

    Attributes:
        label: What it is called.
        near: The colour of the photographs that it is closest to; empty when it is close to none.
    """

    face: Face
    core: Core
    label: str
    near: str = ""


@dataclass(frozen=True, slots=True)
class Proposal:
    """A set or a colourway, with what is said of it.

    Attributes:
        spread: Draws the spread at real scale with its top left corner at the origin; None where no recipe is named.
        size: Of the spread, ticks.
    """

    title: str
    score: str
    words: str
    swatches: tuple[Swatch, ...]
    spread: Callable[[Canvas], None] | None = None
    size: Size | None = None


def match_picture(
    title: str, heading: str, prints: Sequence[Print], slips: Sequence[Slip], found: Sequence[Proposal]
) -> Canvas:
    """All of it, as high as it needs to be.

    Args:
        title: What the picture shows, for people who cannot see it.
        heading: Stands above the proposals.
    """
    row = Rect.at(_MARGIN, _MARGIN, _row_size(prints))
    hangs = row.width > _WIDTH // 2
    below = row.bottom + (_slips_height(slips) if hangs else 2 * SPACE)
    lines = [tuple(found[start : start + 2]) for start in range(0, len(found), 2)]
    heights = [max(_proposal_height(each) for each in line) for line in lines]
    total = below + 12 * MM + sum(heights) + len(lines) * _GUTTER
    canvas = Canvas(Size(_WIDTH, total), title=title)
    relief.table(canvas, Rect.at(0, 0, canvas.size), TABLE)
    (_hang_slips if hangs else _lay_slips)(canvas, slips, row)
    _draw_prints(canvas, prints)
    write(canvas, heading, (_MARGIN, below + 5 * MM), _TITLE)
    place = below + 12 * MM
    for line, height in zip(lines, heights, strict=True):
        for number, each in enumerate(line):
            _draw_proposal(canvas, each, _MARGIN + number * (_cell() + _GUTTER), place)
        place += height + _GUTTER
    return canvas


def _cell() -> int:
    return (_WIDTH - 2 * _MARGIN - _GUTTER) // 2


def _print_sizes(prints: Sequence[Print]) -> list[Size]:
    """Side by side in one line, all of one height: low where that leaves room beside them, else as high as can be."""
    gaps = (len(prints) - 1) * SPACE
    wide = sum(_LOW_PRINT * each.width // each.height for each in prints)
    room = _WIDTH - 2 * _MARGIN - gaps
    height = _LOW_PRINT if wide + gaps <= _WIDTH // 2 else min(_HIGH_PRINT, _LOW_PRINT * room // max(1, wide))
    return [Size(max(1, height * each.width // each.height), height) for each in prints]


def _row_size(prints: Sequence[Print]) -> Size:
    sizes = _print_sizes(prints)
    return Size(sum(size.width for size in sizes) + SPACE * (len(sizes) - 1), max(size.height for size in sizes))


def _draw_prints(canvas: Canvas, prints: Sequence[Print]) -> None:
    left = _MARGIN
    for each, size in zip(prints, _print_sizes(prints), strict=True):
        rect = Rect.at(left, _MARGIN, size)
        relief.shadow(canvas, rect, relief.depth_of(3))
        canvas.rect(rect, filled(PRINT_WHITE))
        canvas.image(rect.inset(min(_PRINT_EDGE, size.height // 12, size.width // 12)), each.jpeg, "image/jpeg")
        left += size.width + SPACE


def _slip_lengths(slips: Sequence[Slip], longest: int) -> list[int]:
    most = max((slip.share for slip in slips), default=1.0)
    return [_SHORTEST + round((longest - _SHORTEST) * slip.share / most) for slip in slips]


def _slips_height(slips: Sequence[Slip]) -> int:
    return max(_slip_lengths(slips, _LONGEST_SLIP), default=0) + 2 * _LINE + SPACE


def _hang_slips(canvas: Canvas, slips: Sequence[Slip], row: Rect) -> None:
    """Side by side, out from under the lower edge of the prints."""
    wide = row.width // max(1, len(slips))
    for number, (slip, length) in enumerate(zip(slips, _slip_lengths(slips, _LONGEST_SLIP), strict=True)):
        left = _MARGIN + number * wide
        rect = Rect.between(left, row.bottom - _TUCKED, left + wide - MM, row.bottom + length)
        _slip(canvas, slip, rect)
        write(canvas, slip.label, (left, rect.bottom + 5 * MM), fitted(slip.label, _PLAIN, wide - 2 * MM))
        write(canvas, slip.share_label, (left, rect.bottom + 10 * MM), _QUIET)


def _lay_slips(canvas: Canvas, slips: Sequence[Slip], row: Rect) -> None:
    """One under the other, out from under the right edge of the prints."""
    high = row.height // max(1, len(slips))
    longest = min(2 * _LONGEST_SLIP, _WIDTH - row.right - 60 * MM)
    for number, (slip, length) in enumerate(zip(slips, _slip_lengths(slips, longest), strict=True)):
        top = row.top + number * high
        rect = Rect.between(row.right - _TUCKED, top, row.right + length, top + high - MM)
        _slip(canvas, slip, rect)
        start, middle = rect.right + 3 * MM, top + high // 2 + MM
        write(canvas, slip.label, (start, middle), _PLAIN)
        write(canvas, slip.share_label, (start + width(slip.label, _PLAIN) + 2 * MM, middle), _QUIET)


def _slip(canvas: Canvas, slip: Slip, rect: Rect) -> None:
    relief.shadow(canvas, rect, relief.depth_of(1))
    canvas.rect(rect, filled(slip.colour))


def _spread_height(each: Proposal) -> int:
    return _cell() * each.size.height // each.size.width if each.size else _FAN_HEIGHT


def _proposal_height(each: Proposal) -> int:
    lines = len(wrapped(each.words, _QUIET, _cell()))
    swatches = _swatch(each) + _swatch_label_height(each) if each.spread else _swatch_label_height(each)
    return _spread_height(each) + 9 * MM + lines * 5 * MM + SPACE + 2 * MM + swatches


def _swatch_label_height(each: Proposal) -> int:
    return 3 * MM + 5 * MM * max((len(_label_lines(each, swatch)) for swatch in each.swatches), default=0)


def _draw_proposal(canvas: Canvas, each: Proposal, left: int, top: int) -> None:
    if each.spread and each.size:
        scale = _cell() / each.size.width
        with canvas.group(at=(left, top), scale=scale):
            each.spread(canvas)
    else:
        _draw_swatches(canvas, each, left, top, Size(_fan_width(each), _FAN_HEIGHT - MM))
    place = top + _spread_height(each) + 9 * MM
    if not each.spread:
        place += _swatch_label_height(each)
    write(canvas, each.title, (left, place), _TITLE)
    write(canvas, each.score, (left + _cell(), place), _FIGURE, align=Align.END)
    for line in wrapped(each.words, _QUIET, _cell()):
        place += 5 * MM
        write(canvas, line, (left, place), _QUIET)
    if each.spread:
        _draw_swatches(canvas, each, left, place + SPACE + 2 * MM, Size(_swatch(each), _swatch(each)))


def _step(each: Proposal) -> int:
    return (_cell() + SPACE) // max(1, len(each.swatches))


def _swatch(each: Proposal) -> int:
    return min(_SWATCH, _step(each) - SPACE)


def _fan_width(each: Proposal) -> int:
    return min(_FAN_HEIGHT, _step(each) - SPACE)


def _label_lines(each: Proposal, swatch: Swatch) -> tuple[str, ...]:
    return wrapped(swatch.label, _PLAIN, _step(each) - 2 * MM)


def _draw_swatches(canvas: Canvas, each: Proposal, left: int, top: int, size: Size) -> None:
    for number, swatch in enumerate(each.swatches):
        rect = Rect.at(left + number * _step(each), top, size)
        if swatch.near:
            tab = Rect(rect.right - 2 * _TAB, rect.top - _TAB // 2, _TAB, _TAB + rect.height // 2)
            relief.shadow(canvas, tab, relief.depth_of(1))
            canvas.rect(tab, filled(swatch.near))
        draw_leaf(canvas, rect, swatch.face, swatch.core, 2)
        for line, words in enumerate(_label_lines(each, swatch)):
            write(canvas, words, (rect.left, rect.bottom + (line + 1) * 5 * MM), _PLAIN)
