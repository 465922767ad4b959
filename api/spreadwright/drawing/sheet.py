"""The cut sheet: one sheet with its parts, dimensions, numbered cuts and piles, to be printed and followed.

The same drawing for every bench; the readings in its table are those of the bench.
"""

from collections.abc import Mapping, Sequence
from contextlib import AbstractContextManager, nullcontext
from dataclasses import dataclass, field

from spreadwright.cutting import CutSheet, CutStep, CutWords, Region, told_part, told_rect
from spreadwright.drawing.canvas import Canvas, filled, stroked
from spreadwright.drawing.cautions import caution, remark
from spreadwright.drawing.cut_table import cut_table, whole_sheet_table
from spreadwright.drawing.fonts import Typeface
from spreadwright.drawing.labels import Label, Pile, Placed, draw_label, part_labels
from spreadwright.drawing.leaves import LEAF_HEIGHT, NO_END, SPACE_BETWEEN, Block, bottom_of, leaves
from spreadwright.drawing.marks import NUMBER_RADIUS, WHITE, corner_box, cut_number, first_corner, hatching, number_box
from spreadwright.drawing.path import Point
from spreadwright.drawing.sheet_frame import OVERALL, Frame, dimensions
from spreadwright.drawing.theme import ACCENT, BODY, BOLD_LINE, INK, LINE, MM, QUIET, SMALL, THIN, TITLE
from spreadwright.drawing.type import Align, Style, write
from spreadwright.geometry import Rect, Size
from spreadwright.lengths import Unit, told_size
from spreadwright.model import Axis, Bench, Piece, Use
from spreadwright.words import gettext as _
from spreadwright.words import listed, ngettext

_PAGE = 186 * MM
_MARGIN = 8 * MM
_MEASURE = _PAGE - 2 * _MARGIN
LONGEST_SIDE, _LEAST_SIDE = 136 * MM, 100 * MM
_LEAST_PIECE = 17 * MM // 2
"""How long a piece is drawn at least, where that can be: its mark and its pile need as much beside numbers of cuts."""
_HEAD, _UNDER = 20 * MM, OVERALL + 3 * MM
_BESIDE, _BELOW = OVERALL + 4 * MM, 9 * MM
"""What the dimensions take left of a sheet and below it."""

_HEADING = Style(face=Typeface.SANS_BOLD, size=TITLE)
_SUBTITLE = Style(size=BODY, colour=QUIET)
_NOTE = Style(size=SMALL, colour=QUIET)


@dataclass(frozen=True, slots=True)
class SheetPlan:
    """All that a cut sheet shows.

    Attributes:
        steps: The cuts of this sheet, in order.
        words: One entry for each step.
        pieces: Every piece by id.
        page_of: The page on whose pile each piece goes, by id.
        pages: The pages of the spread, from left to right.
        bench: Its unit is that of every figure.
        cautions: What is said before the first cut.
        fellows: The equal sheets that are cut together with it.
        sizes: Of pieces as they are told, by id; those of others are told by where their edges lie.
        rounding: What the marks of the scale do to sizes, in words; empty where they show all of them.
    """

    title: str
    role: str
    sheet: CutSheet
    steps: Sequence[CutStep]
    words: Sequence[CutWords]
    pieces: Mapping[str, Piece]
    page_of: Mapping[str, str]
    pages: Sequence[str]
    bench: Bench
    cautions: Sequence[str] = ()
    fellows: Sequence[CutSheet] = ()
    sizes: Mapping[str, Size] = field(default_factory=dict)
    rounding: str = ""

    @property
    def sheets(self) -> tuple[CutSheet, ...]:
        """The sheet, and those that are cut together with it."""
        return (self.sheet, *self.fellows)

    @property
    def numbers(self) -> tuple[int, ...]:
        """The numbers of those sheets."""
        return tuple(sheet.number for sheet in self.sheets)

    @property
    def heading(self) -> str:
        """What the sheet is called, or those that are cut together."""
        if len(self.numbers) == 1:
            return _("Sheet {number}").format(number=self.sheet.number)
        told = _("Sheets {numbers}, cut together")
        return told.format(numbers=listed([str(number) for number in self.numbers]))

    @property
    def unit(self) -> Unit:
        """The unit of every figure."""
        return self.bench.unit


def cut_sheet_picture(plan: SheetPlan, *, prefix: str = "") -> Canvas:
    """The cut sheet of one sheet, 186 mm wide and as high as its table needs."""
    return _pictures(plan, NO_END, prefix)[0]


def cut_sheet_leaves(plan: SheetPlan, *, prefix: str = "") -> tuple[Canvas, ...]:
    """The same for the printer: leaves of at most 186 × 265 mm, the rest of a long table on further ones."""
    return _pictures(plan, LEAF_HEIGHT, prefix)


def sheet_figure(plan: SheetPlan, *, wide: int = _PAGE, longest: int = LONGEST_SIDE, prefix: str = "") -> Canvas:
    """The drawing of a cut sheet alone, without heading and table.

    Args:
        wide: The width of the picture, ticks.
        longest: How long the longer side of the sheet is drawn, ticks; the dimensions beside it want 30 mm more.
    """
    frame = _frame(plan, wide, longest)
    top, height = _HEAD, frame.rect(_whole(plan.sheet)).bottom + _BELOW - _HEAD
    canvas = Canvas(Size(wide, height), title=plan.title, description=_described(plan), prefix=prefix, origin=(0, top))
    write(canvas, _units(plan), (0, top + 3 * MM), _NOTE)
    _figure(canvas, plan, frame)
    return canvas


def least_longest(plan: SheetPlan) -> int:
    """How long the longer side of a sheet is drawn at least, ticks, so that its smallest pieces can be told."""
    pieces = [part.rect for part in plan.sheet.parts if part.rect and part.id in plan.pieces]
    shortest = min((_longest(rect) for rect in pieces), default=_longest(_whole(plan.sheet)))
    return min(_LEAST_PIECE * _longest(_whole(plan.sheet)) // shortest, LONGEST_SIDE)


def _pictures(plan: SheetPlan, height: int, prefix: str) -> tuple[Canvas, ...]:
    frame, blocks = _frame(plan, longest=_longest_for(plan, height)), _blocks(plan)
    first = frame.rect(_whole(plan.sheet)).bottom + _UNDER
    shared = leaves(blocks, first=first, further=_HEAD, height=height - _MARGIN)
    pictures = []
    for number, leaf in enumerate(shared):
        canvas = _canvas(plan, bottom_of(leaf, first) + _MARGIN, number, prefix)
        if number == 0:
            _subtitles(canvas, plan, _whole(plan.sheet))
            _figure(canvas, plan, frame)
        for top, block in leaf:
            block.draw(canvas, (_MARGIN, top), _MEASURE)
        pictures.append(canvas)
    return tuple(pictures)


def _longest_for(plan: SheetPlan, height: int) -> int:
    """How long the longer side of the sheet is drawn: shorter where the table then ends on the same leaf."""
    blocks = _blocks(plan)
    under = sum(block.height + SPACE_BETWEEN for block in blocks) - SPACE_BETWEEN
    drawn = _frame(plan).rect(_whole(plan.sheet))
    over = drawn.bottom + _UNDER + under + _MARGIN - height
    smaller = LONGEST_SIDE - over * LONGEST_SIDE // drawn.height - MM
    return smaller if over > 0 and smaller >= max(_LEAST_SIDE, least_longest(plan)) else LONGEST_SIDE


def _canvas(plan: SheetPlan, height: int, leaf: int, prefix: str) -> Canvas:
    """An empty leaf under its heading."""
    heading = _("{heading}, continued").format(heading=plan.heading) if leaf else plan.heading
    title = f"{plan.title}: {heading}"
    canvas = Canvas(Size(_PAGE, height), title=title, description=_described(plan), prefix=prefix)
    canvas.rect(Rect(0, 0, _PAGE, height), filled(WHITE))
    baseline = _MARGIN + TITLE * 7 // 10
    write(canvas, heading, (_MARGIN, baseline), _HEADING)
    write(canvas, plan.title, (_PAGE - _MARGIN, baseline), _SUBTITLE, align=Align.END)
    return canvas


def _blocks(plan: SheetPlan) -> list[Block]:
    """What stands under the drawing: cautions before the cuts."""
    if not plan.steps:
        return [whole_sheet_table(plan.sheet, plan.pieces, plan.page_of)]
    cautions: list[Block] = [caution(plan.cautions, _MEASURE)] if plan.cautions else []
    if plan.rounding:
        cautions.append(remark(plan.rounding, _MEASURE))
    return [*cautions, cut_table(plan.steps, plan.words, plan.pieces, plan.page_of, plan.bench)]


def _figure(canvas: Canvas, plan: SheetPlan, frame: Frame) -> None:
    whole = _whole(plan.sheet)
    ends = _cut_ends(plan, frame)
    _parts(canvas, plan, frame)
    _cuts(canvas, plan, frame, ends)
    canvas.rect(frame.rect(whole), stroked(INK, BOLD_LINE))
    first_corner(canvas, frame.rect(whole))
    for part, placed in _labels(plan, frame, ends):
        with _shown_as(canvas, plan, part):
            draw_label(canvas, placed)
    rects = [part.rect for part in plan.sheet.parts if part.rect]
    dimensions(canvas, frame, _whole(plan.sheet), rects, plan.bench)


def _frame(plan: SheetPlan, wide: int = _PAGE, longest: int = LONGEST_SIDE) -> Frame:
    """The sheet in the middle, but for the room that its dimensions need on the left."""
    whole = _whole(plan.sheet)
    left = max(_BESIDE, (wide - whole.width * longest // _longest(whole)) // 2)
    return Frame((left, _HEAD + OVERALL + 5 * MM), longest, _longest(whole))


def _whole(sheet: CutSheet) -> Rect:
    if sheet.root.rect is None:
        raise ValueError("a sheet of unknown size cannot be drawn; check the recipe first")
    return sheet.root.rect


def _longest(whole: Rect) -> int:
    return max(whole.width, whole.height)


def _described(plan: SheetPlan) -> str:
    parts = ", ".join(part.id for part in plan.sheet.parts)
    if not plan.steps:
        return _("The sheet is not cut; the whole of it is {part}.").format(part=parts)
    told = ngettext("{cuts} cut gives the parts {parts}.", "{cuts} cuts give the parts {parts}.", len(plan.steps))
    return told.format(cuts=len(plan.steps), parts=parts)


def _subtitles(canvas: Canvas, plan: SheetPlan, whole: Rect) -> None:
    baseline = _MARGIN + TITLE * 7 // 10 + 6 * MM
    size = told_part(whole, plan.bench)
    told = ngettext("{paper}, {size}, {cuts} cut", "{paper}, {size}, {cuts} cuts", len(plan.steps))
    if not plan.steps:
        told = _("{paper}, {size}, not cut")
    words = told.format(paper=plan.role, size=size, cuts=len(plan.steps))
    write(canvas, words, (_MARGIN, baseline), _SUBTITLE)
    write(canvas, _units(plan), (_PAGE - _MARGIN, baseline), _SUBTITLE, align=Align.END)


def _units(plan: SheetPlan) -> str:
    """In which unit every figure is."""
    told = {
        Unit.INCH: _("dimensions in inches"),
        Unit.CENTIMETRE: _("dimensions in centimetres"),
        Unit.MILLIMETRE: _("dimensions in millimetres"),
    }
    return told[plan.unit]


def _parts(canvas: Canvas, plan: SheetPlan, frame: Frame) -> None:
    for part in plan.sheet.parts:
        if part.rect is None:
            continue
        drawn = frame.rect(part.rect)
        if part.use is not Use.PIECE:
            hatching(canvas, drawn)
        with _shown_as(canvas, plan, part):
            canvas.rect(drawn, stroked(INK, THIN))


def _labels(plan: SheetPlan, frame: Frame, ends: Sequence[Point]) -> list[tuple[Region, Placed]]:
    """The parts that have a label, in the order to draw them; numbers of cuts and the first corner stay readable."""
    shown = [(part, part.rect) for part in plan.sheet.parts if part.rect is not None]
    labels = [(_label(plan, part, rect), frame.rect(rect)) for part, rect in shown]
    obstacles = [*(number_box(end) for end in ends), corner_box(frame.rect(_whole(plan.sheet)))]
    return [(shown[index][0], placed) for index, placed in part_labels(labels, obstacles).items()]


def _shown_as(canvas: Canvas, plan: SheetPlan, part: Region) -> AbstractContextManager[None]:
    """What is drawn inside is a piece, or several that are cut together; or nothing that has a name."""
    ids = [each for each in _ids(plan, part) if each in plan.pieces]
    return canvas.group(names={"piece": " ".join(ids)}) if ids else nullcontext()


def _ids(plan: SheetPlan, part: Region) -> list[str]:
    """The part, and those in its place on the sheets that are cut together."""
    if not plan.fellows:
        return [part.id]
    index = plan.sheet.parts.index(part)
    return [sheet.parts[index].id for sheet in plan.sheets]


def _label(plan: SheetPlan, part: Region, rect: Rect) -> Label:
    """What stands on a part; of sheets cut together the marks of all, and the pile that they share.

    A single pile needs no sign.
    """
    told = plan.sizes.get(part.id) or told_rect(rect, plan.bench.trimmer).size
    size = told_size(told.width, told.height, plan.unit)
    ids = _ids(plan, part)
    if part.id not in plan.pieces:
        return Label("", _("spare") if part.use is Use.SPARE else part.name, size)
    marks = ", ".join(plan.pieces[each].mark for each in ids)
    pages = {plan.page_of.get(each) for each in ids}
    page = pages.pop() if len(pages) == 1 and len(plan.pages) > 1 else None
    return Label(marks, part.id if len(ids) == 1 else part.name, size, Pile(tuple(plan.pages), page) if page else None)


def _cut_ends(plan: SheetPlan, frame: Frame) -> list[Point]:
    """Where each cut has its number: at the end where the arm comes down, below for columns, left for rows.

    Beside the number of a near cut it stands further along its line.
    """
    ends: list[Point] = []
    for step in plan.steps:
        part, cut = frame.rect(step.on_board), _cut_line(step, frame)
        near, pitch = NUMBER_RADIUS + MM, 2 * NUMBER_RADIUS + MM
        if step.axis is Axis.COLUMNS:
            line = [(cut, y) for y in range(part.bottom - near, part.top + near, -pitch)]
            first = (cut, part.bottom - near)
        else:
            line = [(x, cut) for x in range(part.left + near, part.right - near, pitch)]
            first = (part.left + near, cut)
        ends.append(next((end for end in line if not any(_touch(end, other) for other in ends)), first))
    return ends


def _cut_line(step: CutStep, frame: Frame) -> int:
    """Where a cut lies as drawn: where what falls meets what is kept."""
    kept, falling = frame.rect(step.kept.rect), frame.rect(step.falling.rect)
    return max(kept.left, falling.left) if step.axis is Axis.COLUMNS else max(kept.top, falling.top)


def _touch(one: Point, other: Point) -> bool:
    return number_box(one).overlaps(number_box(other))


def _cuts(canvas: Canvas, plan: SheetPlan, frame: Frame, ends: Sequence[Point]) -> None:
    """Each cut as a line, and over all lines the numbers."""
    for step in plan.steps:
        part, cut = frame.rect(step.on_board), _cut_line(step, frame)
        if step.axis is Axis.COLUMNS:
            canvas.line((cut, part.top), (cut, part.bottom), stroked(ACCENT, LINE))
        else:
            canvas.line((part.left, cut), (part.right, cut), stroked(ACCENT, LINE))
    for step, end in zip(plan.steps, ends, strict=True):
        cut_number(canvas, step.number, end)
