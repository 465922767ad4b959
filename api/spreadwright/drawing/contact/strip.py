"""A test strip: the same spread in several kinds of sight, one below the other, each beside its words."""

from collections.abc import Sequence
from dataclasses import dataclass

from spreadwright.drawing.canvas import Canvas, filled
from spreadwright.drawing.fonts import Typeface
from spreadwright.drawing.theme import BODY, DISPLAY, LARGE, MM, SMALL
from spreadwright.drawing.type import Style, width, wrapped, write
from spreadwright.geometry import Rect, Size

_WIDE, _HIGH = 210 * MM, 297 * MM
"""An upright sheet of A4; higher where single pages need it."""
_MARGIN, _GUTTER = 12 * MM, 7 * MM
_PICTURE = 90 * MM
_HIGHEST = 45 * MM
"""How high a picture is at most."""
_SECOND = "#57534d"

_TITLE = Style(Typeface.TEXT, DISPLAY)
_ABOUT = Style(Typeface.SANS, LARGE, _SECOND)
_NAME = Style(Typeface.SANS_BOLD, LARGE)
_WORDS = Style(Typeface.SANS, BODY)
_NOTE = Style(Typeface.SANS, SMALL, _SECOND)


@dataclass(frozen=True, slots=True)
class Exposure:
    """One kind of sight: a JPEG of the spread, what it is called, and what is lost in it."""

    jpeg: bytes
    name: str
    sentences: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class StripPlan:
    """What a test strip shows.

    Attributes:
        title: What the layout is called.
        about: Its papers.
        size: Of every JPEG, pixels.
        note: What was measured.
    """

    title: str
    about: str
    exposures: tuple[Exposure, ...]
    size: Size
    note: str


def strip_picture(plan: StripPlan) -> Canvas:
    """All of them on a sheet of A4; on a higher one where they need it."""
    size = picture_size(plan)
    left = _MARGIN + size.width + _GUTTER
    words = [_lines(each, _WIDE - _MARGIN - left) for each in plan.exposures]
    heights = [max(size.height, _line(_NAME) + len(lines) * _line(_WORDS)) + 3 * MM for lines in words]
    notes = wrapped(plan.note, _NOTE, _WIDE - 2 * _MARGIN)
    top = _MARGIN + _line(_TITLE) + _line(_ABOUT) + 3 * MM
    below = top + sum(heights) + MM
    high = below + len(notes) * _line(_NOTE) + _MARGIN // 2
    canvas = Canvas(Size(_WIDE, max(high, _HIGH)), title=f"{plan.title}: {plan.about}")
    canvas.rect(Rect.at(0, 0, canvas.size), filled("#ffffff"))
    write(canvas, plan.title, (_MARGIN, _MARGIN + _line(_TITLE) * 3 // 4), _TITLE)
    write(canvas, plan.about, (_MARGIN, _MARGIN + _line(_TITLE) + _line(_ABOUT) * 3 // 4), _fitting(plan.about))
    for each, lines, height in zip(plan.exposures, words, heights, strict=True):
        canvas.image(Rect.at(_MARGIN, top, size), each.jpeg, "image/jpeg")
        write(canvas, each.name, (left, top + _line(_NAME) * 3 // 4), _NAME)
        _write(canvas, lines, left, top + _line(_NAME), _WORDS)
        top += height
    _write(canvas, notes, _MARGIN, below, _NOTE)
    return canvas


def _lines(exposure: Exposure, room: int) -> list[str]:
    return [line for words in exposure.sentences for line in wrapped(words, _WORDS, room)]


def picture_size(plan: StripPlan) -> Size:
    """Of one picture on the sheet, ticks."""
    wide = min(_PICTURE, _HIGHEST * plan.size.width // plan.size.height)
    return Size(wide, wide * plan.size.height // plan.size.width)


def _line(style: Style) -> int:
    return style.size * 13 // 10


def _fitting(about: str) -> Style:
    """So small that it stands on one line."""
    room = _WIDE - 2 * _MARGIN
    return Style(_ABOUT.face, min(LARGE, LARGE * room // max(1, width(about, _ABOUT))), _SECOND)


def _write(canvas: Canvas, lines: Sequence[str], left: int, top: int, style: Style) -> None:
    for line in lines:
        write(canvas, line, (left, top + _line(style) * 3 // 4), style)
        top += _line(style)
