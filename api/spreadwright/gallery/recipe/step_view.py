"""The steps of a recipe one by one: a screen for each cut and each piece, in the order in which they are done."""

from collections.abc import Iterator
from dataclasses import dataclass

from markupsafe import Markup

from spreadwright.gallery.recipe.instructions import Cut, Instructions, Move
from spreadwright.lengths import on_scale
from spreadwright.words import gettext as _


@dataclass(frozen=True, slots=True)
class Screen:
    """One step.

    Attributes:
        number: Counts cuts and pieces together, from 1: what the address names.
        heading: What it is called.
        about: The sheet that is cut, or the page that is laid.
        caution: What to take care of; empty for most.
        before: Said before what is set large.
        large: The reading, or the mark of the piece.
        after: Said after it.
    """

    number: int
    heading: str
    about: str
    caution: str
    before: tuple[str, ...]
    large: str
    after: tuple[str, ...]
    drawn: Markup


@dataclass(frozen=True, slots=True)
class StepView:
    """All screens of a recipe on one bench; what is needed comes before them, photographs after."""

    told: Instructions
    cuts: tuple[Screen, ...]
    moves: tuple[Screen, ...]

    @property
    def total(self) -> int:
        """How many cuts and pieces there are."""
        return len(self.cuts) + len(self.moves)


def step_view(told: Instructions) -> StepView:
    """The screens of a recipe, in the language that is spoken."""
    return StepView(told, tuple(_cuts(told)), tuple(_moves(told)))


def _cuts(told: Instructions) -> Iterator[Screen]:
    for sheet in told.cut_sheets:
        about = _("{sheet}: {paper}").format(sheet=sheet.heading, paper=sheet.paper)
        yield from (_cut(each, about, told) for each in sheet.cuts)


def _cut(cut: Cut, about: str, told: Instructions) -> Screen:
    step, words = cut.step, cut.words
    reading = on_scale(step.reading, told.bench.trimmer.graduation, told.bench.unit)
    heading = _("Cut {number}").format(number=step.number)
    after = tuple(line for line in (words.setting, words.falls, words.stays, words.mark) if line)
    return Screen(step.number, heading, about, words.caution, (words.board,), reading, after, cut.drawn)


def _moves(told: Instructions) -> Iterator[Screen]:
    pages = {"page": _("The page"), "left": _("Left page"), "right": _("Right page")}
    first = len(told.cuts)
    for move in told.moves:
        yield _move(move, pages[move.step.placed.page], first + move.step.number)


def _move(move: Move, about: str, number: int) -> Screen:
    heading = _("Piece {number}").format(number=move.step.number)
    mark = move.step.placed.piece.mark
    return Screen(number, heading, about, "", (), mark, move.step.sentences, move.drawn)
