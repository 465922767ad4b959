"""A contact sheet as one picture: spreads in columns, each with its words below it, on white."""

from collections.abc import Iterator

from spreadwright.drawing.canvas import Canvas, filled
from spreadwright.drawing.contact.frame import ContactSheet, Frame, draw_frame, papers_line
from spreadwright.drawing.contact.lines import SECOND, Line, Pen, height_of, lines_of, write_lines
from spreadwright.drawing.fonts import Typeface
from spreadwright.drawing.theme import BODY, DISPLAY, HEADING, LARGE, MM, SMALL
from spreadwright.drawing.type import Align, Style, fitted, width, write, write_repeated
from spreadwright.geometry import Rect, Size

_MARGIN, _GUTTER, _ROW_GAP = 12 * MM, 9 * MM, 7 * MM
_WIDE, _NARROW = 92 * MM, 64 * MM
"""Of a column of double pages, and of single ones."""

_TITLE = Style(Typeface.TEXT, DISPLAY)
_ABOUT = Style(Typeface.SANS, LARGE, SECOND)
_NUMBER = Style(Typeface.SANS_BOLD, HEADING, is_tabular=True)
_NAME = Style(Typeface.SANS_BOLD, LARGE)
_SCORE = Style(Typeface.SANS_MEDIUM, LARGE, is_tabular=True)
_PAPERS = Style(Typeface.SANS, BODY)
_REASON = Style(Typeface.SANS, BODY, SECOND)
_ID = Style(Typeface.SANS_MEDIUM, SMALL)

_LINE, _HEAD = BODY * 13 // 10, 8 * MM


def contact_picture(sheet: ContactSheet, *, repeats: bool = True) -> Canvas:
    """All frames in as many columns as suit their number, as high as they need.

    Args:
        sheet: What is shown.
        repeats: Whether what several spreads share is kept once: a fifth of the bytes, but slower to make pixels of.
    """
    columns, room = _columns(sheet)
    whole = 2 * _MARGIN + columns * room + (columns - 1) * _GUTTER
    above = _above(sheet, whole)
    rows = [sheet.frames[start : start + columns] for start in range(0, len(sheet.frames), columns)]
    heights = [max(_height(sheet, frame, room) for frame in row) for row in rows]
    below = list(_below(sheet, whole))
    high = height_of(above) + sum(heights) + len(rows) * _ROW_GAP + len(below) * _LINE + 2 * _MARGIN
    canvas = Canvas(Size(whole, high), title=f"{sheet.title}: {sheet.about}")
    canvas.rect(Rect.at(0, 0, canvas.size), filled("#ffffff"))
    pen = write_repeated if repeats else write
    place = write_lines(canvas, above, (_MARGIN, _MARGIN), pen)
    for row, height in zip(rows, heights, strict=True):
        for number, frame in enumerate(row):
            _draw(canvas, sheet, frame, Rect(_MARGIN + number * (room + _GUTTER), place, room, height), repeats=repeats)
        place += height + _ROW_GAP
    write_lines(canvas, below, (_MARGIN, place), pen)
    return canvas


def _columns(sheet: ContactSheet) -> tuple[int, int]:
    """How many there are, and how wide each is, ticks."""
    count = len(sheet.frames)
    columns = 2 if count <= 4 else 3 if count <= 9 else 4
    return (columns, _WIDE) if sheet.has_wide else (columns + 1, _NARROW)


def _above(sheet: ContactSheet, whole: int) -> list[Line]:
    room = whole - 2 * _MARGIN
    lines = lines_of(sheet.title, _TITLE, room)
    for words in (sheet.about, *sheet.notes):
        lines += lines_of(words, _ABOUT, room)
    return [*lines, Line("", _ABOUT)]


def _below(sheet: ContactSheet, whole: int) -> Iterator[Line]:
    if not sheet.left_out:
        return
    yield Line(sheet.left_out_heading, _NAME)
    for each in sheet.left_out:
        yield from lines_of(f"{each.name}: {each.reason}", _PAPERS, whole - 2 * _MARGIN)


def _scale(sheet: ContactSheet, room: int) -> float:
    """The same for all, so that a single page is half as wide as a double one."""
    return room / sheet.widest


def _spread_height(sheet: ContactSheet, frame: Frame, room: int) -> int:
    return round(frame.layout.size.height * _scale(sheet, room)) + 2 * MM


def _words(frame: Frame, room: int) -> list[Line]:
    return [
        *lines_of(papers_line(frame), _PAPERS, room),
        *lines_of(frame.reason, _REASON, room),
        *(Line(line, _ID) for line in id_lines(frame.id, room)),
    ]


def id_lines(name: str, room: int) -> tuple[str, ...]:
    """The id of a colourway in lines that end at its full stops."""
    lines = [""]
    for part in name.replace(".", ".\n").split("\n"):
        if lines[-1] and width(lines[-1] + part, _ID) > room:
            lines.append("")
        lines[-1] += part
    return tuple(lines)


def _height(sheet: ContactSheet, frame: Frame, room: int) -> int:
    return _spread_height(sheet, frame, room) + _HEAD + height_of(_words(frame, room))


def _draw(canvas: Canvas, sheet: ContactSheet, frame: Frame, cell: Rect, *, repeats: bool) -> None:
    scale = _scale(sheet, cell.width)
    with canvas.group(at=(cell.left, cell.top), scale=scale):
        draw_frame(canvas, frame, repeats=_layout_name(sheet, frame) if repeats else "")
    top = cell.top + _spread_height(sheet, frame, cell.width)
    pen = write_repeated if repeats else write
    _write_head(canvas, frame, cell, top + _HEAD * 5 // 8, pen)
    write_lines(canvas, _words(frame, cell.width), (cell.left, top + _HEAD), pen)


def _layout_name(sheet: ContactSheet, frame: Frame) -> str:
    return str(next(number for number, each in enumerate(sheet.frames, 1) if each.layout == frame.layout))


def _write_head(canvas: Canvas, frame: Frame, cell: Rect, baseline: int, pen: Pen) -> None:
    """Number and name at the left, the score at the right."""
    pen(canvas, frame.number, (cell.left, baseline), _NUMBER)
    after = cell.left + width(frame.number, _NUMBER) + 2 * MM
    room = cell.right - width(frame.score, _SCORE) - 2 * MM - after
    pen(canvas, frame.title, (after, baseline), fitted(frame.title, _NAME, room, least=SMALL))
    pen(canvas, frame.score, (cell.right, baseline), _SCORE, align=Align.END)
