"""Part of *draw*: the pictures of instructions one by one, for pages that lay their own words around them.

What is called `inline` is an SVG element for a page that sets its words (`drawing/lettering.py`); the others are files.
"""

from collections.abc import Iterable
from dataclasses import replace

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


def inline_sheets(cutting: Cutting) -> dict[int, str]:
    """The drawing of every sheet that is cut, by its number; of sheets that are cut together by the first."""
    return {plan.sheet.number: _inline_sheet(plan) for plan in sheet_plans(cutting) if plan.steps}


def inline_placement(placing: Placing) -> str:
    """The pages with every piece that lies on them."""
    alt = _("All pages with their pieces; the small figure is the place in gluing order, the letter is the mark.")
    return _inline(placement_figure(placement_plan(placing), prefix="placement-"), alt)


def inline_cuts(cutting: Cutting) -> tuple[str, ...]:
    """Every cut on the board, in order."""
    return tuple(_inline(each.canvas, each.alt) for each in _cuts(cutting))


def inline_moves(placing: Placing) -> tuple[str, ...]:
    """Every piece on its page, in gluing order."""
    return tuple(_inline(each.canvas, each.alt) for each in _moves(placing))


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


def cut_files(cutting: Cutting) -> tuple[tuple[bytes, str], ...]:
    """Every cut on the board, as a file of its own, with what it shows."""
    return _files(_cuts(cutting))


def move_files(placing: Placing) -> tuple[tuple[bytes, str], ...]:
    """Every piece on its page, likewise."""
    return _files(_moves(placing))


def _cuts(cutting: Cutting) -> list[Picture]:
    plans, board = sheet_plans(cutting), board_for(cutting.steps)
    return [cut_drawn(plans[0], step, words, board) for step, words in zip(cutting.steps, cutting.words, strict=True)]


def _moves(placing: Placing) -> list[Picture]:
    return [place_drawn(step) for step in placing.steps]


def _files(pictures: Iterable[Picture]) -> tuple[tuple[bytes, str], ...]:
    return tuple((svg_bytes(each.canvas), each.alt) for each in pictures)


def _inline_sheet(plan: SheetPlan) -> str:
    alt = _("{sheet}: the cuts with their numbers, and the size of every part.").format(sheet=plan.heading)
    shown = plan if len(plan.pages) > 1 else replace(plan, page_of={})  # a single pile needs no sign
    return _inline(sheet_figure(shown, prefix=f"sheet-{plan.sheet.number}-"), alt)


def _inline(canvas: Canvas, alt: str) -> str:
    return markup(as_text(canvas, alt))
