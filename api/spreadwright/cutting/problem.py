"""What the planner is asked: pieces wanted, stock to cut them from, limits of the bench. Lengths in ticks."""

from collections import defaultdict
from collections.abc import Iterator
from dataclasses import dataclass

from spreadwright.cutting.search.bounds import fewest_sheets
from spreadwright.cutting.search.kinds import Kind, kind
from spreadwright.errors import Finding, error
from spreadwright.geometry import Size
from spreadwright.lengths import Unit, neighbours, size_text, with_unit
from spreadwright.model import Stock, Wanted

__all__ = ["MOST_PIECES", "Limits", "Problem", "Stock", "Wanted", "causes"]

MOST_PIECES = 1000
"""More pieces than this in one problem are refused before anything is searched."""


@dataclass(frozen=True, slots=True)
class Limits:
    """What the bench allows; None or 0 for anything.

    Attributes:
        longest_cut: Longest cut of the trimmer, ticks.
        narrowest: Narrowest strip that can be held, ticks.
        graduation: Distance between two marks of the scale, ticks; sides lie on marks.
    """

    longest_cut: int | None = None
    narrowest: int = 0
    graduation: int = 0


@dataclass(frozen=True, slots=True)
class Problem:
    """Pieces, stock, limits; `unit` is for messages."""

    pieces: tuple[Wanted, ...]
    stock: tuple[Stock, ...]
    limits: Limits = Limits()
    unit: Unit = Unit.INCH

    @property
    def papers(self) -> tuple[str, ...]:
        """Every paper that a piece asks for, in order."""
        return tuple(dict.fromkeys(wanted.paper for wanted in self.pieces))

    def of_paper(self, paper: str) -> "Problem":
        """The part of the problem that concerns one paper."""
        pieces = tuple(w for w in self.pieces if w.paper == paper)
        return Problem(pieces, tuple(s for s in self.stock if s.paper == paper), self.limits, self.unit)


def causes(problem: Problem) -> tuple[Finding, ...]:
    """Every reason, seen without search, why the problem has no plan."""
    plain = (*_not_sizes(problem), *_too_many(problem))
    return plain or (
        *_off_marks(problem),
        *_too_narrow(problem),
        *_misfits(problem),
        *_scattered(problem),
        *_uncuttable(problem),
        *_too_much(problem),
    )


def _not_sizes(problem: Problem) -> Iterator[Finding]:
    for number, wanted in enumerate(problem.pieces):
        if min(wanted.size.width, wanted.size.height) <= 0 or wanted.count < 0 or wanted.value < 0:
            message = f"“{wanted.name}” has a side, a count or a value that is not positive."
            yield error("piece-not-positive", wanted.where or f"/pieces/{number}", message, "Give it a positive one.")
    for number, stock in enumerate(problem.stock):
        if min(stock.size.width, stock.size.height) <= 0 or (stock.count or 0) < 0 or stock.cost < 0:
            message = "A sheet has a side, a count or a cost that is not positive."
            yield error("stock-not-positive", stock.where or f"/stock/{number}", message, "Give it a positive one.")


def _too_many(problem: Problem) -> Iterator[Finding]:
    count = sum(max(0, wanted.count) for wanted in problem.pieces)
    if count > MOST_PIECES:
        message = f"{count:,} pieces are wanted; at most {MOST_PIECES:,} are planned at once."
        yield error("too-many-pieces", "/pieces", message, "Plan them in several parts.")


def _off_marks(problem: Problem) -> Iterator[Finding]:
    step = problem.limits.graduation
    for number, wanted in enumerate(problem.pieces if step else ()):
        for side in sorted({wanted.size.width, wanted.size.height}):
            if side % step:
                below, above = (with_unit(mark, problem.unit) for mark in neighbours(side, step))
                message = f"“{wanted.name}” has a side of {with_unit(side, problem.unit)}, between two marks."
                where = wanted.where or f"/pieces/{number}"
                yield error("piece-between-marks", where, message, f"The nearest marks are {below} and {above}.")


def _too_narrow(problem: Problem) -> Iterator[Finding]:
    least = problem.limits.narrowest
    for number, wanted in enumerate(problem.pieces):
        narrow = min(wanted.size.width, wanted.size.height)
        if narrow < least:
            message = (
                f"“{wanted.name}” is {with_unit(narrow, problem.unit)} wide, narrower than the "
                f"{with_unit(least, problem.unit)} that can be held."
            )
            yield error("piece-too-narrow", wanted.where or f"/pieces/{number}", message, "Make it wider.")


def _misfits(problem: Problem) -> Iterator[Finding]:
    for number, wanted in enumerate(problem.pieces):
        sizes = [s.size for s in problem.stock if s.paper == wanted.paper and s.count != 0]
        ways = [wanted.size, wanted.size.turned()] if wanted.may_turn else [wanted.size]
        if wanted.count and not wanted.value and not any(size.fits(way) for size in sizes for way in ways):
            size = size_text(wanted.size.width, wanted.size.height, problem.unit)
            paper = f" of “{wanted.paper}”" if wanted.paper else ""
            message = f"“{wanted.name}” is {size} and fits on no sheet{paper} in stock."
            yield error("piece-larger-than-stock", wanted.where or f"/pieces/{number}", message, "Add a larger sheet.")


def _scattered(problem: Problem) -> Iterator[Finding]:
    """Groups that take more than one sheet of every size, each piece of which fits by itself."""
    groups: dict[tuple[str, str], list[tuple[Kind, int]]] = defaultdict(list)
    for wanted in problem.pieces:
        if wanted.together and wanted.count and not wanted.value:
            made = kind(wanted.size.width, wanted.size.height, wanted.may_turn)
            groups[wanted.paper, wanted.together].append((made, wanted.count))
    for (paper, word), pieces in groups.items():
        sizes = {s.size for s in problem.stock if s.paper == paper and s.count != 0}
        fitting = [{size for size in sizes if any(size.fits(Size(*way)) for way in k.sides())} for k, _ in pieces]
        shared = set.intersection(*fitting)
        if all(fitting) and all(fewest_sheets(pieces, s.width, s.height) > 1 for s in shared):
            message = f"The pieces that stay together as “{word}” go together on no single sheet in stock."
            remedy = "Add a larger sheet, or let some of them come from another one."
            yield error("group-larger-than-stock", "/pieces", message, remedy)


def _uncuttable(problem: Problem) -> Iterator[Finding]:
    """The first cut of a sheet is as long as one of its sides, so a trimmer shorter than both makes none."""
    longest = problem.limits.longest_cut
    if longest is None:
        return
    for number, wanted in enumerate(problem.pieces):
        ways = [wanted.size, wanted.size.turned()] if wanted.may_turn else [wanted.size]
        large = [s.size for s in problem.stock if s.paper == wanted.paper and s.count != 0]
        large = [size for size in large if any(size.fits(way) for way in ways)]
        if large and not any(min(size.width, size.height) <= longest or size in ways for size in large):
            trimmer, side = with_unit(longest, problem.unit), size_text(large[0].width, large[0].height, problem.unit)
            message = f"“{wanted.name}” fits sheets such as {side} only, which a trimmer of {trimmer} cannot cut."
            remedy = "Use a longer trimmer, or sheets with a side that is no longer than its cut."
            if wanted.count and not wanted.value:
                yield error("trimmer-too-short", wanted.where or f"/pieces/{number}", message, remedy)


def _too_much(problem: Problem) -> Iterator[Finding]:
    wanted: dict[str, int] = defaultdict(int)
    for piece in problem.pieces:
        wanted[piece.paper] += piece.size.area * piece.count if not piece.value else 0
    for paper, area in wanted.items():
        stock = [s for s in problem.stock if s.paper == paper]
        if any(s.count is None for s in stock) or not stock:
            continue
        there = sum(s.size.area * (s.count or 0) for s in stock)
        if area > there:
            message = f"The pieces take {100 * area / there if there else 0:.1f} % of the area in stock."
            yield error("more-area-than-stock", "/stock", message, "Add sheets, or leave pieces out.")
