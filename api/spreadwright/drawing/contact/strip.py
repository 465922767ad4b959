"""A test strip: the same spread in several kinds of sight, one below the other, each beside its words."""

from dataclasses import dataclass

from spreadwright.drawing.canvas import Canvas, filled
from spreadwright.drawing.contact.lines import SECOND, Line, height_of, lines_of, write_lines
from spreadwright.drawing.fonts import Typeface
from spreadwright.drawing.theme import BODY, DISPLAY, LARGE, MM, SMALL
from spreadwright.drawing.type import Style, fitted, write
from spreadwright.geometry import Rect, Size

_WIDE, _HIGH = 210 * MM, 297 * MM
"""An upright sheet of A4; higher where single pages need it."""
_MARGIN, _GUTTER = 12 * MM, 7 * MM
_PICTURE = 90 * MM
_HIGHEST = 45 * MM
"""How high a picture is at most."""

_TITLE = Style(Typeface.TEXT, DISPLAY)
_ABOUT = Style(Typeface.SANS, LARGE, SECOND)
_NAME = Style(Typeface.SANS_BOLD, LARGE)
_WORDS = Style(Typeface.SANS, BODY)
_NOTE = Style(Typeface.SANS, SMALL, SECOND)


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
    heights = [max(size.height, height_of(lines)) + 3 * MM for lines in words]
    notes = lines_of(plan.note, _NOTE, _WIDE - 2 * _MARGIN)
    title, about = Line(plan.title, _TITLE), Line(plan.about, _ABOUT)
    top = _MARGIN + height_of([title, about]) + 3 * MM
    below = top + sum(heights) + MM
    high = below + height_of(notes) + _MARGIN // 2
    canvas = Canvas(Size(_WIDE, max(high, _HIGH)), title=f"{plan.title}: {plan.about}")
    canvas.rect(Rect.at(0, 0, canvas.size), filled("#ffffff"))
    baseline = write_lines(canvas, [title], (_MARGIN, _MARGIN)) + about.height * 3 // 4
    write(canvas, plan.about, (_MARGIN, baseline), fitted(plan.about, _ABOUT, _WIDE - 2 * _MARGIN))
    for each, lines, height in zip(plan.exposures, words, heights, strict=True):
        canvas.image(Rect.at(_MARGIN, top, size), each.jpeg, "image/jpeg")
        write_lines(canvas, lines, (left, top))
        top += height
    write_lines(canvas, notes, (_MARGIN, below))
    return canvas


def _lines(exposure: Exposure, room: int) -> list[Line]:
    words = [line for sentence in exposure.sentences for line in lines_of(sentence, _WORDS, room)]
    return [Line(exposure.name, _NAME), *words]


def picture_size(plan: StripPlan) -> Size:
    """Of one picture on the sheet, ticks."""
    wide = min(_PICTURE, _HIGHEST * plan.size.width // plan.size.height)
    return Size(wide, wide * plan.size.height // plan.size.width)
