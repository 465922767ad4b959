"""What the planner answers: how each sheet is cut, what is left, and what is proved about it."""

from collections import defaultdict
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from enum import StrEnum

from spreadwright.cutting.problem import Problem, Wanted
from spreadwright.cutting.search.kinds import Kind, kind
from spreadwright.cutting.search.trees import Block
from spreadwright.geometry import Size
from spreadwright.model import Axis, Branch, Content, Leaf, Split, Use


class Standing(StrEnum):
    """How sure it is that no plan takes fewer sheets or costs less, and that none of that cost is worth more."""

    OPTIMAL = "optimal"
    STOPPED = "stopped"


@dataclass(frozen=True, slots=True)
class Certificate:
    """What is proved about one paper's part of a plan.

    Attributes:
        cost: Of the sheets that are cut; with equal costs of 1, their number.
        lower_bound: No plan costs less.
        reason: One sentence: what proves it, or what the search stopped after.
        value: Of the optional pieces that are cut.
        most_value: No plan of that cost has optional pieces of more value.
        is_gathered: Whether it is proved that no plan of that cost and value leaves a larger spare.
    """

    standing: Standing
    cost: int
    lower_bound: int
    reason: str
    value: int = 0
    most_value: int = 0
    is_gathered: bool = False

    @property
    def gap(self) -> int:
        """How much a better plan could save at most."""
        return self.cost - self.lower_bound


@dataclass(frozen=True, slots=True)
class PlannedSheet:
    """One sheet of the stock and how it is cut.

    Attributes:
        stock: Which entry of the problem's stock it is, counted from 0.
        content: The cut tree; what is left over stands in it as spares.
        spares: Sizes of what is left over, the largest first, ticks.
    """

    paper: str
    size: Size
    stock: int
    content: Content
    spares: tuple[Size, ...]


@dataclass(frozen=True, slots=True)
class Plan:
    """A plan for all papers.

    Attributes:
        left_out: Names of the optional pieces that are not cut.
        certificates: One a paper, in the order of the problem's papers.
    """

    sheets: tuple[PlannedSheet, ...]
    left_out: tuple[str, ...]
    certificates: tuple[tuple[str, Certificate], ...]

    @property
    def is_optimal(self) -> bool:
        """Whether it is proved for every paper that no plan costs less, and none of that cost is worth more."""
        return all(c.standing is Standing.OPTIMAL for _, c in self.certificates)

    @property
    def spares(self) -> tuple[Size, ...]:
        """Sizes of all that is left over, the largest first, ticks."""
        return _by_area(spare for sheet in self.sheets for spare in sheet.spares)


def wanted_kinds(problem: Problem) -> list[tuple[Wanted, int, Kind]]:
    """Each piece, the number of its group (-1 for none), and its kind; groups and values tell equal sizes apart."""
    words = dict.fromkeys(w.together for w in problem.pieces if w.together)
    groups = {word: number for number, word in enumerate(words)}
    # An optional piece must not be taken for one that has to be cut, nor for one of another group or value.
    tags = {(-1, 0): 0}
    found = []
    for wanted in problem.pieces:
        group = groups.get(wanted.together, -1)
        tag = tags.setdefault((group, wanted.value), len(tags))
        found.append((wanted, group, kind(wanted.size.width, wanted.size.height, wanted.may_turn, tag)))
    return found


class Names:
    """The names of the wanted pieces by kind, handed out one by one."""

    def __init__(self, problem: Problem) -> None:
        self._left: dict[Kind, list[str]] = defaultdict(list)
        for wanted, _, made in wanted_kinds(problem):
            self._left[made] += [wanted.name] * wanted.count

    def take(self, of: Kind) -> str:
        """The next name of a kind."""
        return self._left[of].pop(0)


def content(block: Block, names: Names) -> Content:
    """A block as a cut tree of the model: parallel cuts in one split, equal neighbours counted with `times`."""
    if not block.parts:
        return Leaf(Use.PIECE, names.take(block.kind)) if block.kind else Leaf(Use.SPARE)
    axis = Axis.COLUMNS if block.is_row else Axis.ROWS
    branches: list[Branch] = []
    for part in strips(block):
        made = Branch(part.wide if block.is_row else part.high, content(part, names))
        last = branches[-1] if branches else None
        if last and (last.extent, last.content) == (made.extent, made.content):
            branches[-1] = Branch(last.extent, last.content, times=last.times + 1)
        else:
            branches.append(made)
    return Split(axis, tuple(branches))


def strips(block: Block) -> tuple[Block, ...]:
    """The parts that parallel cuts make of a block, rests put together at the end."""
    parts = [part for part in _strips(block, block.is_row) if part.wide and part.high]
    rests = [part for part in parts if part.is_rest]
    pieces = [part for part in parts if not part.is_rest]
    if not rests:
        return tuple(pieces)
    if block.is_row:
        return (*pieces, Block(sum(r.wide for r in rests), block.high))
    return (*pieces, Block(block.wide, sum(r.high for r in rests)))


def _strips(block: Block, is_row: bool) -> Iterator[Block]:
    for part in block.parts:
        if part.parts and part.is_row == is_row:
            yield from _strips(part, is_row)
        else:
            yield part


def tidy(block: Block) -> Block:
    """The same block with the rests of each split put together, and nothing but rests taken as one rest."""
    if not block.parts:
        return block
    parts = strips(Block(block.wide, block.high, tuple(tidy(p) for p in block.parts), block.is_row))
    if all(part.is_rest for part in parts):
        return Block(block.wide, block.high)
    return parts[0] if len(parts) == 1 else Block(block.wide, block.high, parts, block.is_row)


def rests(block: Block) -> tuple[Size, ...]:
    """Sizes of what a block leaves over, the largest first."""
    return _by_area(Size(leaf.wide, leaf.high) for leaf in block.leaves() if leaf.is_rest)


def longest_cut(block: Block) -> int:
    """The longest cut that the trimmer must make."""
    if not block.parts:
        return 0
    return max(block.high if block.is_row else block.wide, *(longest_cut(part) for part in block.parts))


def narrowest_part(block: Block) -> int:
    """The narrowest part that falls from the trimmer."""
    return min(min(leaf.wide, leaf.high) for leaf in block.leaves())


def _by_area(sizes: Iterable[Size]) -> tuple[Size, ...]:
    return tuple(sorted(sizes, key=lambda s: (-s.area, s)))
