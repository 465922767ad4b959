"""Cut steps in the words of somebody who teaches them."""

from collections.abc import Mapping
from dataclasses import dataclass

from spreadwright.cutting.steps import Arrival, CutStep, Fate, Share
from spreadwright.geometry import Rect
from spreadwright.lengths import on_scale, size_text, with_unit
from spreadwright.model import Axis, Bench, Measures, Piece

CAUTIONS = (
    "The blade is sharp: latch the arm down whenever you are not cutting.",
    "Keep your fingers behind the guard and never reach across the blade.",
    "Hold narrow strips down with a ruler or a scrap of card, not with your fingers.",
    "Children cut only with an adult beside them.",
    "Follow the instructions of your trimmer’s maker and your local rules; they come before these.",
)
"""Common cautions for arm trimmers, always shown before the first cut."""


@dataclass(frozen=True, slots=True)
class CutWords:
    """One step in sentences: what to lay on the board, what to set, what happens to both parts; caution first."""

    caution: str
    board: str
    setting: str
    falls: str
    stays: str


def sentences(
    step: CutStep, paper: str, bench: Bench, pieces: Mapping[str, Piece], page_of: Mapping[str, str]
) -> CutWords:
    """A step in words, lengths in the bench's unit.

    Args:
        step: The step to tell.
        paper: What the role of its sheet is called.
        bench: The maker's bench.
        pieces: Every piece by id.
        page_of: The page on whose pile each piece goes, by id.
    """
    return CutWords(
        caution=_caution(step, bench),
        board=_board(step, paper, bench),
        setting=_setting(step, bench),
        falls="What falls is " + _share(step.falling, bench, pieces, page_of),
        stays="What stays is " + _share(step.kept, bench, pieces, page_of),
    )


def _caution(step: CutStep, bench: Bench) -> str:
    narrow = min(_side(step.falling.rect, step), _side(step.kept.rect, step), step.length)
    if narrow >= bench.trimmer.shortest:
        return ""
    return f"This strip is only {with_unit(narrow, bench.unit)} wide: hold it with a ruler, not with your fingers."


def _side(rect: Rect, step: CutStep) -> int:
    return rect.width if step.axis is Axis.COLUMNS else rect.height


def _board(step: CutStep, paper: str, bench: Bench) -> str:
    size = size_text(step.on_board.width, step.on_board.height, bench.unit)
    turn = _turn(step)
    if step.arrival is Arrival.NEW_SHEET:
        lay = f"Lay sheet {step.sheet} ({paper}, {size}) against the fence"
        return lay + (", turned a quarter to the left so that its top edge lies left." if turn else ", top edge up.")
    if step.arrival is Arrival.PICKED_UP:
        return f"Take up the part set aside last, {size}{turn}."
    return f"Leave the part of {size} on the board{turn}."


def _turn(step: CutStep) -> str:
    if not step.is_turned_now:
        return ""
    if step.axis is Axis.ROWS:
        return ", and turn it a quarter to the left, its top edge to the left"
    return ", and turn it a quarter to the right, upright again"


def _setting(step: CutStep, bench: Bench) -> str:
    measured = "the part that stays" if step.measures is Measures.KEPT else "the part that falls"
    reading = on_scale(step.exact, bench.trimmer.graduation, bench.unit)
    return f"Set the scale to {reading} for {measured}, and cut."


def _share(share: Share, bench: Bench, pieces: Mapping[str, Piece], page_of: Mapping[str, str]) -> str:
    size = size_text(share.rect.width, share.rect.height, bench.unit)
    if share.fate is Fate.PIECE:
        return f"“{share.id}” ({pieces[share.id].mark}), {size}: put it on {pile_name(page_of[share.id])}."
    if share.fate is Fate.SPARE:
        return f"a spare of {size}: keep it for later."
    if share.fate is Fate.SET_ASIDE:
        return f"a part of {size}: set it aside until its turn."
    if share.fate is Fate.ON_BOARD:
        return f"a part of {size}: it is cut further."
    return f"scrap of {size}."


def pile_name(page: str) -> str:
    """What the pile of a page is called in a sentence."""
    return "the pile" if page == "page" else f"the pile of the {page} page"
