"""The table of a cut sheet: what lies on the board, what to set the scale to, where both parts go."""

from collections.abc import Iterator, Mapping, Sequence
from itertools import zip_longest

from spreadwright.cutting import (
    HALF_ROUND,
    TO_THE_LEFT,
    TO_THE_RIGHT,
    UPRIGHT,
    Arrival,
    CutSheet,
    CutStep,
    CutWords,
    Fate,
    Share,
    told_part,
)
from spreadwright.drawing.tables import Table
from spreadwright.lengths import on_scale
from spreadwright.model import Bench, Measures, Piece, Use
from spreadwright.words import gettext as _
from spreadwright.words import title

_ON_A_LINE = 3
"""Marks of pieces that stand in one cell."""


def cut_table(
    steps: Sequence[CutStep],
    words: Sequence[CutWords],
    pieces: Mapping[str, Piece],
    page_of: Mapping[str, str],
    bench: Bench,
) -> Table:
    """A row for each cut; those with a caution of their own carry its sign.

    Args:
        steps: The cuts of one sheet, at least one.
        words: One entry for each step.
        pieces: Every piece by id.
        page_of: The page on whose pile each piece goes, by id.
        bench: Whose readings they are; its unit is that of every figure.
    """
    rows: list[tuple[str, ...]] = []
    warned: list[int] = []
    for step, each in zip(steps, words, strict=True):
        warned += [len(rows)] if each.caution else []
        rows += _rows(step, pieces, page_of, bench)
    is_kept = steps[0].measures is Measures.KEPT
    measured = _("Scale (part that stays)") if is_kept else _("Scale (part that falls)")
    heads = (_("Cut"), _("On the board"), measured, _("Falls"), _("Stays"))
    note = _("Sizes are width × height as drawn. Readings for the bench “{bench}”.").format(bench=title(bench.title))
    return Table(heads, tuple(rows), frozenset(warned), note)


def _rows(
    step: CutStep, pieces: Mapping[str, Piece], page_of: Mapping[str, str], bench: Bench
) -> Iterator[tuple[str, ...]]:
    """The row of a cut; the pieces of many sheets run on below it."""
    head = (str(step.number), _on_board(step, bench), _setting(step, bench))
    goes = [_goes(share, pieces, page_of) for share in (step.falling, step.kept)]
    for index, (falls, stays) in enumerate(zip_longest(*goes, fillvalue="")):
        yield (*(head if index == 0 else ("", "", "")), falls, stays)


def whole_sheet_table(sheet: CutSheet, pieces: Mapping[str, Piece], page_of: Mapping[str, str]) -> Table:
    """One row: where a sheet goes that is not cut."""
    part = sheet.parts[0]
    if part.rect is None:
        raise ValueError("a sheet of unknown size cannot be drawn; check the recipe first")
    goes = _goes(Share(part.rect, part.rect, Fate(part.use or Use.SCRAP), (part.id,)), pieces, page_of)
    return Table((_("Whole sheet"), ""), ((goes[0], _("It is not cut.")),))


def _on_board(step: CutStep, bench: Bench) -> str:
    """How the part comes to lie there, its size as it is drawn, and how it lies where it is turned for this cut."""
    size = told_part(step.true_board, bench)
    told = {
        Arrival.NEW_SHEET: _("new sheet"),
        Arrival.STAYS: _("stays, {size}"),
        Arrival.PICKED_UP: _("stayed at cut {cut}, {size}") if step.had_stayed else _("fell at cut {cut}, {size}"),
    }
    lies = {
        UPRIGHT: _("{part}, upright"),
        TO_THE_LEFT: _("{part}, top edge left"),
        HALF_ROUND: _("{part}, top edge near you"),
        TO_THE_RIGHT: _("{part}, top edge right"),
    }
    part = told[step.arrival].format(size=size, cut=step.set_aside_at)
    return lies[step.quarter_turns_left].format(part=part) if step.turned else part


def _setting(step: CutStep, bench: Bench) -> str:
    shown = on_scale(step.reading, bench.trimmer.graduation, bench.unit)
    return shown if step.is_set_now else _("as before, {reading}").format(reading=shown)


def _goes(share: Share, pieces: Mapping[str, Piece], page_of: Mapping[str, str]) -> list[str]:
    """Where a part goes; the pieces of sheets cut together by their piles, a few on a line."""
    if share.fate is Fate.SET_ASIDE:
        return [_("aside until cut {cut}").format(cut=share.until)]
    if share.fate is not Fate.PIECE:
        told = {Fate.SPARE: _("spare, keep it"), Fate.ON_BOARD: _("cut further"), Fate.SCRAP: _("scrap")}
        return [told[share.fate]]
    lines = []
    for page in dict.fromkeys(page_of.get(each) for each in share.ids):
        ids = [each for each in share.ids if page_of.get(each) == page]
        lines += [_to_pile(page, ids[i : i + _ON_A_LINE], pieces) for i in range(0, len(ids), _ON_A_LINE)]
    return lines


def _to_pile(page: str | None, ids: Sequence[str], pieces: Mapping[str, Piece]) -> str:
    told = {
        "left": _("{marks} to the left page"),
        "right": _("{marks} to the right page"),
        "page": _("{marks} to the page"),
        None: _("{marks}, placed nowhere yet"),
    }
    return told[page].format(marks=" + ".join(pieces[each].mark for each in ids))
