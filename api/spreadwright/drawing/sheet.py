"""The cut sheet: one sheet with its parts, dimensions, numbered cuts and piles, to be printed and followed.

The same drawing for every bench; the readings in its table are those of the bench.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from spreadwright.cutting import CutSheet, CutStep, Fate, Region, Share
from spreadwright.drawing.canvas import Canvas, filled, stroked
from spreadwright.drawing.dimensions import Span, across, down, fits
from spreadwright.drawing.fonts import Typeface
from spreadwright.drawing.labels import Label, Pile, part_label
from spreadwright.drawing.marks import (
    NUMBER_RADIUS,
    WHITE,
    cut_number,
    first_corner,
    hatching,
)
from spreadwright.drawing.path import Point
from spreadwright.drawing.tables import Table, table
from spreadwright.drawing.theme import ACCENT, BODY, BOLD_LINE, INK, LINE, MM, QUIET, THIN, TITLE
from spreadwright.drawing.type import Align, Style, write
from spreadwright.geometry import Rect, Size
from spreadwright.lengths import UNIT_WORDS, Unit, size_text, text, with_unit
from spreadwright.model import Axis, Measures, Piece, Use

_PAGE = 186 * MM
_MARGIN = 8 * MM
_LONGEST_SIDE = 136 * MM
_CHAIN, _OVERALL = 6 * MM, 13 * MM
_HEAD = 20 * MM

_HEADING = Style(face=Typeface.SANS_BOLD, size=TITLE)
_SUBTITLE = Style(size=BODY, colour=QUIET)


@dataclass(frozen=True, slots=True)
class SheetPlan:
    """All that a cut sheet shows.

    Attributes:
        steps: The cuts of this sheet, in order.
        pieces: Every piece by id.
        page_of: The page on whose pile each piece goes, by id.
        pages: The pages of the spread, from left to right.
        unit: Of the bench, for every figure.
    """

    title: str
    role: str
    sheet: CutSheet
    steps: Sequence[CutStep]
    pieces: Mapping[str, Piece]
    page_of: Mapping[str, str]
    pages: Sequence[str]
    unit: Unit


@dataclass(frozen=True, slots=True)
class _Frame:
    """Where the sheet lies in the picture, and how much smaller it is drawn."""

    at: Point
    drawn: int
    real: int

    def rect(self, rect: Rect) -> Rect:
        left, top = self._scaled(rect.left), self._scaled(rect.top)
        right, bottom = self._scaled(rect.right), self._scaled(rect.bottom)
        return Rect.between(self.at[0] + left, self.at[1] + top, self.at[0] + right, self.at[1] + bottom)

    def _scaled(self, length: int) -> int:
        return length * self.drawn // self.real


def cut_sheet_picture(plan: SheetPlan, *, prefix: str = "") -> Canvas:
    """The cut sheet of one sheet, 186 mm wide and as high as its tables need."""
    whole = _whole(plan.sheet)
    frame = _Frame(
        ((_PAGE - _drawn(whole.width, whole)) // 2, _HEAD + _OVERALL + 5 * MM), _LONGEST_SIDE, _longest(whole)
    )
    bottom = frame.rect(whole).bottom + _OVERALL + 5 * MM
    tables = _tables(plan)
    height = bottom + sum(each.height + 6 * MM for each in tables) + _MARGIN - 6 * MM
    canvas = Canvas(
        Size(_PAGE, height),
        title=f"{plan.title}: sheet {plan.sheet.number}",
        description=_described(plan),
        prefix=prefix,
    )
    canvas.rect(Rect(0, 0, _PAGE, height), filled(WHITE))
    _heading(canvas, plan, whole)
    _parts(canvas, plan, frame)
    _cuts(canvas, plan, frame)
    canvas.rect(frame.rect(whole), stroked(INK, BOLD_LINE))
    first_corner(canvas, frame.rect(whole))
    _dimensions(canvas, plan, frame)
    for each in tables:
        table(canvas, each, (_MARGIN, bottom), total=_PAGE - 2 * _MARGIN)
        bottom += each.height + 6 * MM
    return canvas


def _whole(sheet: CutSheet) -> Rect:
    if sheet.root.rect is None:
        raise ValueError("a sheet of unknown size cannot be drawn; check the recipe first")
    return sheet.root.rect


def _longest(whole: Rect) -> int:
    return max(whole.width, whole.height)


def _drawn(length: int, whole: Rect) -> int:
    return length * _LONGEST_SIDE // _longest(whole)


def _described(plan: SheetPlan) -> str:
    parts = ", ".join(part.id for part in plan.sheet.parts)
    return f"{len(plan.steps)} cuts give {len(plan.sheet.parts)} parts: {parts}."


def _heading(canvas: Canvas, plan: SheetPlan, whole: Rect) -> None:
    baseline = _MARGIN + TITLE * 7 // 10
    write(canvas, f"Sheet {plan.sheet.number}", (_MARGIN, baseline), _HEADING)
    size = size_text(whole.width, whole.height, plan.unit)
    cuts = f"{len(plan.steps)} cut{'s' if len(plan.steps) != 1 else ''}"
    write(canvas, f"{plan.role}, {size}, {cuts}", (_MARGIN, baseline + 6 * MM), _SUBTITLE)
    right = (_PAGE - _MARGIN, baseline + 6 * MM)
    write(canvas, f"dimensions in {UNIT_WORDS[plan.unit]}", right, _SUBTITLE, align=Align.END)
    write(canvas, plan.title, (_PAGE - _MARGIN, baseline), _SUBTITLE, align=Align.END)


def _parts(canvas: Canvas, plan: SheetPlan, frame: _Frame) -> None:
    for part in plan.sheet.parts:
        if part.rect is None:
            continue
        drawn = frame.rect(part.rect)
        if part.use is not Use.PIECE:
            hatching(canvas, drawn)
        canvas.rect(drawn, stroked(INK, THIN))
        _label(canvas, plan, part, drawn)


def _label(canvas: Canvas, plan: SheetPlan, part: Region, drawn: Rect) -> None:
    size = size_text(part.rect.width, part.rect.height, plan.unit) if part.rect else ""
    piece = plan.pieces.get(part.id)
    if piece is None:
        part_label(canvas, Label("", part.name, size), drawn)
    else:
        pile = Pile(tuple(plan.pages), plan.page_of[part.id]) if part.id in plan.page_of else None
        part_label(canvas, Label(piece.mark, piece.id, size, pile), drawn)


def _cuts(canvas: Canvas, plan: SheetPlan, frame: _Frame) -> None:
    """Each cut as a line, its number at the end where the arm comes down: below for columns, left for rows."""
    ends: list[tuple[int, Point]] = []
    for step in plan.steps:
        part, falling = frame.rect(step.on_board), frame.rect(step.falling.rect)
        if step.axis is Axis.COLUMNS:
            canvas.line((falling.left, part.top), (falling.left, part.bottom), stroked(ACCENT, LINE))
            ends.append((step.number, (falling.left, part.bottom - NUMBER_RADIUS - MM)))
        else:
            canvas.line((part.left, falling.top), (part.right, falling.top), stroked(ACCENT, LINE))
            ends.append((step.number, (part.left + NUMBER_RADIUS + MM, falling.top)))
    for number, end in ends:
        cut_number(canvas, number, end)


def _dimensions(canvas: Canvas, plan: SheetPlan, frame: _Frame) -> None:
    """Chains along the four edges of the sheet where they say something, and the whole outside them."""
    whole, unit = _whole(plan.sheet), plan.unit
    drawn = frame.rect(whole)
    rects = [part.rect for part in plan.sheet.parts if part.rect]
    top = _columns(frame, [r for r in rects if r.top == whole.top], unit)
    bottom = _columns(frame, [r for r in rects if r.bottom == whole.bottom], unit)
    left = _rows(frame, [r for r in rects if r.left == whole.left], unit)
    right = _rows(frame, [r for r in rects if r.right == whole.right], unit)
    if len(top) > 1 and fits(top):
        across(canvas, top, edge=drawn.top, line=drawn.top - _CHAIN)
    if len(bottom) > 1 and bottom != top and fits(bottom):
        across(canvas, bottom, edge=drawn.bottom, line=drawn.bottom + _CHAIN + MM)
    if len(left) > 1 and fits(left):
        down(canvas, left, edge=drawn.left, line=drawn.left - _CHAIN + MM)
    if len(right) > 1 and right != left and fits(right):
        down(canvas, right, edge=drawn.right, line=drawn.right + _CHAIN)
    across(canvas, _columns(frame, [whole], unit), edge=drawn.top, line=drawn.top - _OVERALL)
    down(canvas, _rows(frame, [whole], unit), edge=drawn.left, line=drawn.left - _OVERALL + MM)


def _columns(frame: _Frame, rects: Sequence[Rect], unit: Unit) -> list[Span]:
    drawn = [(frame.rect(rect), rect) for rect in sorted(rects)]
    return [Span(d.left, d.right, text(rect.width, unit)) for d, rect in drawn]


def _rows(frame: _Frame, rects: Sequence[Rect], unit: Unit) -> list[Span]:
    drawn = [(frame.rect(rect), rect) for rect in sorted(rects, key=lambda rect: rect.top)]
    return [Span(d.top, d.bottom, text(rect.height, unit)) for d, rect in drawn]


def _tables(plan: SheetPlan) -> list[Table]:
    if not plan.steps:
        part = plan.sheet.parts[0]
        goes = _goes(Share(_whole(plan.sheet), Fate(part.use or Use.SCRAP), part.id), plan)
        return [Table(("Whole sheet", ""), ((goes, "It is not cut."),))]
    measured = "stays" if plan.steps[0].measures is Measures.KEPT else "falls"
    heads = ("Cut", "On the board", f"Set to (part that {measured})", "Falls", "Stays")
    return [Table(heads, tuple(_row(step, plan) for step in plan.steps))]


def _row(step: CutStep, plan: SheetPlan) -> tuple[str, ...]:
    lies = "as drawn" if step.axis is Axis.COLUMNS else "turned a quarter to the left"
    reading = with_unit(step.reading, plan.unit)
    if step.reading != step.exact:
        reading += f" (exactly {with_unit(step.exact, plan.unit)})"
    return (str(step.number), lies, reading, _goes(step.falling, plan), _goes(step.kept, plan))


def _goes(share: Share, plan: SheetPlan) -> str:
    if share.fate is Fate.PIECE:
        page = plan.page_of.get(share.id, "")
        return f"{plan.pieces[share.id].mark} to the {page if page == 'page' else page + ' page'}"
    return {Fate.SPARE: "spare, keep it", Fate.SET_ASIDE: "set aside", Fate.ON_BOARD: "cut further"}.get(
        share.fate, "scrap"
    )
