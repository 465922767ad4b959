"""The JSON form of every answer: the same on the command line and over HTTP.

Lengths are whole ticks (320 to the millimetre, 8128 to the inch), beside the words for people in the bench's unit.
"""

from collections.abc import Iterable, Sequence
from fractions import Fraction
from typing import Any

from spreadwright.cutting import CutSheet, CutStep, Effort, Share
from spreadwright.errors import (
    Finding,
    InvalidDocument,
    NoColourway,
    NoPlan,
    SpreadwrightError,
    UnreadableDocument,
    error,
)
from spreadwright.geometry import Rect, Size
from spreadwright.lengths import TICKS, Unit, size_text, with_unit
from spreadwright.model import Bench, Colourway, Paper, PaperSet, Piece, Recipe
from spreadwright.tasks.check import Report
from spreadwright.tasks.colourways import listed
from spreadwright.tasks.cut import Cutting
from spreadwright.words import gettext as _
from spreadwright.words import ngettext, spoken

Json = dict[str, Any]

SCALE = {"ticks_per_mm": TICKS[Unit.MILLIMETRE], "ticks_per_inch": TICKS[Unit.INCH]}
"""What the numbers of every answer that holds lengths are counted in."""


def finding_answer(finding: Finding) -> Json:
    """One finding."""
    return {
        "code": finding.code,
        "severity": finding.severity.value,
        "where": finding.where,
        "message": finding.message,
        "remedy": finding.remedy,
    }


def report_answer(report: Report) -> Json:
    """What a check found out."""
    return {
        "kind": report.kind,
        "title": report.title,
        "fine": report.is_fine,
        "findings": [finding_answer(finding) for finding in report.findings],
    }


def refusal_answer(reason: SpreadwrightError) -> Json:
    """Why there is no answer, in the form of a report."""
    if isinstance(reason, InvalidDocument):
        return {"title": reason.name, "fine": False, "findings": [finding_answer(each) for each in reason.findings]}
    if isinstance(reason, NoColourway):
        return {"fine": False, "findings": [finding_answer(each) for each in reason.findings]}
    if isinstance(reason, NoPlan):
        return {"fine": False, "impossible": True, "findings": [finding_answer(each) for each in reason.causes]}
    if isinstance(reason, UnreadableDocument):
        finding = error("unreadable", reason.where, reason.reason, reason.remedy)
        return {"fine": False, "findings": [finding_answer(finding)]}
    return {"fine": False, "findings": [], "detail": str(reason)}


def paper_figures(paper: Paper) -> Json:
    """One paper of a set: what its sides show in words, what it weighs, how many sheets there are."""
    return {
        "id": paper.id,
        "title": paper.title,
        "front": str(paper.front),
        "back": str(paper.back),
        "grammage_g_per_m2": round(float(paper.weight.grammage), 2),
        "sheet_g": round(float(paper.weight.mass_g(paper.size)), 2),
        "core": paper.core.value,
        "sheets": paper.sheets,
    }


def cuts_answer(cutting: Cutting) -> Json:
    """The cut sheets, the steps at the trimmer and the piles."""
    pieces = {piece.id: piece for piece in cutting.pieces}
    return {
        "recipe": cutting.recipe.id,
        "bench": bench_answer(cutting.bench),
        **SCALE,
        "language": spoken(),
        "effort": effort_answer(cutting.effort),
        "cautions": list(cutting.cautions),
        "rounding": cutting.rounding,
        "sheets": [_sheet(sheet, cutting, pieces) for sheet in cutting.sheets],
        "steps": [_cut_step(step, cutting, index) for index, step in enumerate(cutting.steps)],
        "piles": [
            {"page": pile.page, "pieces": [{"id": piece.id, "mark": piece.mark} for piece in pile.pieces]}
            for pile in cutting.piles
        ],
    }


def effort_answer(effort: Effort) -> Json:
    """What cutting costs, by which orders of cuts are compared."""
    return {
        "narrow_held": effort.narrow,
        "settings": effort.settings,
        "quarter_turns": effort.quarter_turns,
        "pick_ups": effort.pick_ups,
        "reach_ticks": effort.reach,
        "sum": effort.sum,
    }


def _sheet(sheet: CutSheet, cutting: Cutting, pieces: dict[str, Piece]) -> Json:
    unit = cutting.bench.unit
    return {
        "number": sheet.number,
        "role": sheet.role,
        "size": sheet.root.rect and rect_answer(sheet.root.rect, unit),
        "parts": [
            {
                "id": part.id,
                "use": part.use,
                "mark": pieces[part.id].mark if part.id in pieces else None,
                "pile": cutting.page_of.get(part.id),
                "place": part.rect and rect_answer(part.rect, unit),
            }
            for part in sheet.parts
        ],
    }


def _cut_step(step: CutStep, cutting: Cutting, index: int) -> Json:
    unit, words = cutting.bench.unit, cutting.words[index]
    return {
        "number": step.number,
        "sheet": step.sheet,
        "sheets": list(step.sheets),
        "on_board": rect_answer(step.on_board, unit),
        "arrival": step.arrival.value,
        "set_aside_at": step.set_aside_at or None,
        "axis": step.axis.value,
        "quarter_turns_left": step.quarter_turns_left,
        "turned_now": step.is_turned_now,
        "turned": step.turned,
        "measures": step.measures.value,
        "reading": {"ticks": step.reading, "exact_ticks": step.exact, "text": with_unit(step.reading, unit)},
        "set_now": step.is_set_now,
        "falls": _share(step.falling, unit),
        "stays": _share(step.kept, unit),
        "words": {
            "caution": words.caution,
            "board": words.board,
            "setting": words.setting,
            "falls": words.falls,
            "stays": words.stays,
            "mark": words.mark,
            "together": words.together,
        },
    }


def _share(share: Share, unit: Unit) -> Json:
    return {
        "fate": share.fate.value,
        "id": share.id or None,
        "ids": list(share.ids),
        "until": share.until or None,
        "place": rect_answer(share.rect, unit),
    }


def bench_answer(bench: Bench) -> Json:
    """For which bench something was worked out."""
    return {"id": bench.id, "title": bench.title, "unit": bench.unit.value}


def rect_answer(rect: Rect, unit: Unit) -> Json:
    """A place from the top left corner of a sheet or page."""
    return {"left": rect.left, "top": rect.top, **size_answer(rect.size, unit)}


def size_answer(size: Size, unit: Unit) -> Json:
    """Width and height."""
    return {"width": size.width, "height": size.height, "text": size_text(size.width, size.height, unit)}


def length_answer(length: int, unit: Unit) -> Json:
    """A length."""
    return {"ticks": length, "text": with_unit(length, unit)}


def share_answer(share: Fraction) -> float:
    """A share, from 0 to 1."""
    return round(float(share), 5)


def colourway_answer(colourway: Colourway) -> Json:
    """One colourway: its id, and which side of which paper plays each role."""
    return {
        "id": colourway.id,
        "set": colourway.set_id,
        "roles": {
            role: {"paper": choice.paper.id, "title": choice.paper.title, "side": choice.side.value}
            for role, choice in colourway.choices
        },
    }


def colourways_answer(recipe: Recipe, papers: PaperSet, *, start: int, limit: int) -> Json:
    """A stretch of the list of all colourways, which is never built as a whole.

    Raises:
        NoColourway: No paper of the set fits one of the roles.
    """
    total, found = listed(recipe, papers, start, limit)
    return {
        "recipe": recipe.id,
        "set": papers.id,
        "count": total,
        "start": start,
        "colourways": [colourway_answer(each) for each in found],
    }


def severities(findings: Iterable[Finding]) -> dict[str, int]:
    """How many findings there are of each severity."""
    counted: dict[str, int] = {"error": 0, "warning": 0, "note": 0}
    for finding in findings:
        counted[finding.severity.value] += 1
    return counted


def summary(findings: Sequence[Finding]) -> str:
    """The findings counted, in words: ``2 errors, 1 warning``; ``no findings``."""
    words = {
        "error": lambda n: ngettext("{count} error", "{count} errors", n),
        "warning": lambda n: ngettext("{count} warning", "{count} warnings", n),
        "note": lambda n: ngettext("{count} note", "{count} notes", n),
    }
    counted = [words[severity](n).format(count=n) for severity, n in severities(findings).items() if n]
    return ", ".join(counted) or _("no findings")
