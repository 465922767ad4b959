"""Part of *draw*: the pictures of instructions one by one, for pages that lay their own words around them.

What is called `inline` is an SVG element for a page that sets its words (`drawing/lettering.py`); the others are files.
"""

from dataclasses import dataclass

from spreadwright.drawing.booklet.album import Picture
from spreadwright.drawing.booklet.board import board_for
from spreadwright.drawing.booklet.cuts import cut_drawn
from spreadwright.drawing.booklet.gluing import place_drawn
from spreadwright.drawing.canvas import Canvas
from spreadwright.drawing.lettering import as_text, with_letters_once
from spreadwright.drawing.placement import placement_figure, placement_picture
from spreadwright.drawing.sheet import SheetPlan, cut_sheet_picture, sheet_figure
from spreadwright.drawing.svg import markup, svg_bytes
from spreadwright.tasks.cut import Cutting
from spreadwright.tasks.draw import placement_plan, sheet_plans
from spreadwright.tasks.place import Placing
from spreadwright.words import gettext as _


@dataclass(frozen=True, slots=True)
class StepPicture:
    """One step as it lies in a page, as a file of its own where one is wanted, and in words."""

    inline: str
    file: bytes
    alt: str


def inline_sheets(cutting: Cutting) -> dict[int, str]:
    """The drawing of every sheet that is cut, by its number; of sheets that are cut together by the first."""
    return {plan.sheet.number: _inline_sheet(plan) for plan in sheet_plans(cutting) if plan.steps}


def inline_placement(placing: Placing) -> str:
    """The pages with every piece that lies on them."""
    alt = _("All pages with their pieces; the small figure is the place in gluing order, the letter is the mark.")
    return _inline(placement_figure(placement_plan(placing), prefix="placement-"), alt)


def sheet_files(cutting: Cutting) -> dict[int, bytes]:
    """The cut sheet of every sheet that is cut, with its table, by number like `inline_sheets`: a file of its own."""
    return {
        plan.sheet.number: svg_bytes(with_letters_once(cut_sheet_picture(plan)))
        for plan in sheet_plans(cutting)
        if plan.steps
    }


def placement_file(placing: Placing) -> bytes:
    """The placement with its tables: a file of its own."""
    return svg_bytes(with_letters_once(placement_picture(placement_plan(placing))))


def cut_pictures(cutting: Cutting, *, has_files: bool = True) -> tuple[StepPicture, ...]:
    """Every cut on the board, in order; each is drawn once for both ends."""
    plans, board = sheet_plans(cutting), board_for(cutting.steps)
    drawn = (cut_drawn(plans[0], step, words, board) for step, words in zip(cutting.steps, cutting.words, strict=True))
    return tuple(_step(each, has_files) for each in drawn)


def move_pictures(placing: Placing, *, has_files: bool = True) -> tuple[StepPicture, ...]:
    """Every piece on its page, in gluing order, likewise."""
    return tuple(_step(place_drawn(step), has_files) for step in placing.steps)


def _step(drawn: Picture, has_files: bool) -> StepPicture:
    file = svg_bytes(drawn.canvas) if has_files else b""  # first, since setting words in a page changes the canvas
    return StepPicture(_inline(drawn.canvas, drawn.alt), file, drawn.alt)


def _inline_sheet(plan: SheetPlan) -> str:
    alt = _("{sheet}: the cuts with their numbers, and the size of every part.").format(sheet=plan.heading)
    return _inline(sheet_figure(plan, prefix=f"sheet-{plan.sheet.number}-"), alt)


def _inline(canvas: Canvas, alt: str) -> str:
    return markup(as_text(canvas, alt))
