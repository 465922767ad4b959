"""One way to cut everything for one paper: what it is worth beside others, and whether the bench allows it."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cached_property

from spreadwright.cutting.plan import Names, PlannedSheet, content, longest_cut, narrowest_part, rests, tidy
from spreadwright.cutting.problem import Limits, Problem
from spreadwright.cutting.reslicing import easiest, handling
from spreadwright.cutting.search.kinds import Kind
from spreadwright.cutting.search.trees import Block
from spreadwright.cutting.sheet_sets import StockSheet


@dataclass(frozen=True)
class Candidate:
    """Trees, each with its sheet.

    Attributes:
        missing: Optional pieces that are not cut.
        lost: Their value.
    """

    cut: tuple[tuple[StockSheet, Block], ...]
    missing: tuple[Kind, ...] = ()
    lost: int = 0

    @property
    def cost(self) -> int:
        """Of all sheets."""
        return sum(sheet.cost for sheet, _ in self.cut)

    @cached_property
    def rest_areas(self) -> tuple[int, ...]:
        """Areas of what is left over, the largest first, square ticks."""
        return tuple(sorted((s.area for _, tree in self.cut for s in rests(tree)), reverse=True))

    @cached_property
    def rank(self) -> tuple[int, ...]:
        """Cost, lost value, sheets, largest spare, number of spares, cuts, turns, settings: smaller is better."""
        left = self.rest_areas
        efforts = [handling(tree) for _, tree in self.cut]
        at_bench = (sum(each) for each in zip(*efforts, strict=True)) if efforts else ()
        return (self.cost, self.lost, len(self.cut), -max(left, default=0), len(left), *at_bench)

    @property
    def is_gathered(self) -> bool:
        """Whether what is left over is one rectangle at most, so that nothing could be gathered further."""
        return len(self.rest_areas) <= 1

    def keeps(self, limits: Limits, groups: Mapping[int, int]) -> bool:
        """Whether the bench can make it, and each group, named by the tags of its pieces, comes from one sheet."""
        trees = [tree for _, tree in self.cut]
        if limits.longest_cut is not None and any(longest_cut(t) > limits.longest_cut for t in trees):
            return False
        if any(narrowest_part(t) < limits.narrowest for t in trees):
            return False
        homes: dict[int, int] = {}
        tags = [(leaf.kind.tag, n) for n, t in enumerate(trees) for leaf in t.leaves() if leaf.kind]
        return all(homes.setdefault(groups[tag], number) == number for tag, number in tags if tag in groups)

    def eased(self, limits: Limits) -> "Candidate":
        """The same parts, sliced with as little handling as was found within the limits."""
        easier = Candidate(tuple((s, tidy(easiest(t))) for s, t in self.cut), self.missing, self.lost)
        return easier if easier.keeps(limits, {}) and easier.rank < self.rank else self

    def sheets(self, problem: Problem, order: dict[int, int], names: Names) -> Iterator[PlannedSheet]:
        """The sheets as the plan has them; `order` numbers the stock of the whole problem, `names` are handed out."""
        for sheet, tree in self.cut:
            stock = problem.stock[sheet.stock]
            yield PlannedSheet(stock.paper, stock.size, order[id(stock)], content(tree, names), rests(tree))
