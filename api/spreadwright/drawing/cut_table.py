"""The table of a cut sheet: what lies on the board, what to set the scale to, where both parts go."""

from collections.abc import Mapping, Sequence

from spreadwright.cutting import Arrival, CutSheet, CutStep, CutWords, Fate, Share
from spreadwright.drawing.readings import reading
from spreadwright.drawing.tables import Table
from spreadwright.lengths import Unit, size_text
from spreadwright.model import Axis, Bench, Measures, Piece, Use

_ARRIVALS = {Arrival.NEW_SHEET: "new sheet", Arrival.STAYS: "stays", Arrival.PICKED_UP: "set aside"}
_FATES = {Fate.SPARE: "spare, keep it", Fate.SET_ASIDE: "set aside", Fate.ON_BOARD: "cut further", Fate.SCRAP: "scrap"}


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
    measured = "stays" if steps[0].measures is Measures.KEPT else "falls"
    rows = tuple(
        (
            str(step.number),
            _on_board(step, bench.unit),
            reading(step.exact, bench.trimmer.graduation, bench.unit),
            _goes(step.falling, pieces, page_of),
            _goes(step.kept, pieces, page_of),
        )
        for step in steps
    )
    warned = frozenset(index for index, each in enumerate(words) if each.caution)
    heads = ("Cut", "On the board", f"Set to (part that {measured})", "Falls", "Stays")
    return Table(heads, rows, warned, f"Sizes are width × height as drawn. Readings for the bench “{bench.title}”.")


def whole_sheet_table(sheet: CutSheet, pieces: Mapping[str, Piece], page_of: Mapping[str, str]) -> Table:
    """One row: where a sheet goes that is not cut."""
    part = sheet.parts[0]
    if part.rect is None:
        raise ValueError("a sheet of unknown size cannot be drawn; check the recipe first")
    goes = _goes(Share(part.rect, Fate(part.use or Use.SCRAP), part.id), pieces, page_of)
    return Table(("Whole sheet", ""), ((goes, "It is not cut."),))


def _on_board(step: CutStep, unit: Unit) -> str:
    """How the part comes to lie there, its size as it is drawn, and how it is turned for this cut."""
    parts = [_ARRIVALS[step.arrival]]
    if step.arrival is not Arrival.NEW_SHEET:
        parts.append(size_text(step.on_board.width, step.on_board.height, unit))
    if step.is_turned_now:
        parts.append("turned left" if step.axis is Axis.ROWS else "upright")
    return ", ".join(parts)


def _goes(share: Share, pieces: Mapping[str, Piece], page_of: Mapping[str, str]) -> str:
    if share.fate is not Fate.PIECE:
        return _FATES[share.fate]
    mark, page = pieces[share.id].mark, page_of.get(share.id)
    if page is None:
        return f"{mark}, placed nowhere yet"
    return f"{mark} to the {page if page == 'page' else page + ' page'}"
