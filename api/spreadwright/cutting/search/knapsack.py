"""The most valuable pieces that sheets yield when there are only so many of each kind: plans and an upper bound.

Lengths are whole numbers without a unit. What is common to all of them is divided out first, and no array is as long
as a sheet.
"""

from collections.abc import Sequence

from spreadwright.cutting.search.bounds import fewest_sheets
from spreadwright.cutting.search.exact import Answer, Verdict
from spreadwright.cutting.search.kinds import Kind, Size
from spreadwright.cutting.search.knapsack_items import Effort, Item, Listener, Stop, Yield, case
from spreadwright.cutting.search.knapsack_sheets import several_sheets
from spreadwright.cutting.search.knapsack_single import knapsack, one_sheet
from spreadwright.cutting.search.trees import rest

__all__ = ["Effort", "Item", "Yield", "all_fit", "most_valuable"]

FULL = Effort()


def never() -> bool:
    """Time without end."""
    return False


def most_valuable(
    items: Sequence[Item],
    sheets: Sequence[Size],
    *,
    is_over: Stop = never,
    on_better: Listener | None = None,
    effort: Effort = FULL,
    seed: int = 0,
) -> Yield:
    """The most value from sheets, as far as it is found.

    Args:
        items: No two of the same kind with different values, or the trees do not tell them apart.
        sheets: Width and height of each.
        is_over: Asked about every tenth of a second; the best so far is the answer once it says yes.
        on_better: Is told value and upper bound whenever one of them changes.
        seed: Decides on the scores that are tried at random.
    """
    asked = case(items, sheets)
    if len(sheets) != 1 or not asked.items:
        return several_sheets(asked, is_over, on_better, effort, seed)
    found = knapsack(asked, is_over, effort, on_better)
    one_sheet(found, seed)
    return Yield(found.value, found.bound, (asked.restored(found.tree or rest(*asked.sheets[0])),))


def all_fit(
    pieces: Sequence[tuple[Kind, int]],
    width: int,
    height: int,
    *,
    is_over: Stop = never,
    effort: Effort = FULL,
) -> Answer:
    """Whether one sheet yields all pieces, with any rest: a plan, a proof that it does not, or no answer.

    Args:
        pieces: Kinds, and how many of each.
    """
    items = [Item(kind, count, kind.area) for kind, count in pieces if count > 0]
    wanted = sum(item.value * item.count for item in items)
    asked = case(items, [(width, height)], is_whole=True)
    if asked.total < wanted or fewest_sheets(pieces, width, height) > 1:
        return Answer(Verdict.IMPOSSIBLE)
    found = knapsack(asked, is_over, effort)
    found.value = wanted - 1
    if items:
        one_sheet(found, 0)
    if found.tree or not items:
        return Answer(Verdict.FOUND, asked.restored(found.tree or rest(*asked.sheets[0])))
    return Answer(Verdict.IMPOSSIBLE if found.is_settled else Verdict.STOPPED)
