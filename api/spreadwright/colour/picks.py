"""One choice from each of several lists: those whose papers all differ, and those in which one comes twice.

Both are found in lexicographic order without ever walking into a corner that holds none, however many there are.
"""

from collections.abc import Iterator, Sequence
from itertools import combinations, product

from spreadwright.model import Choice

Options = Sequence[tuple[Choice, ...]]
Picks = tuple[Choice, ...]


def distinct_picks(options: Options, picked: Picks = ()) -> Iterator[Picks]:
    """Every pick in which no paper comes twice."""
    if len(picked) == len(options):
        yield picked
        return
    used, rest = _papers(picked), options[len(picked) + 1 :]
    for choice in options[len(picked)]:
        paper = choice.paper.id
        if paper not in used and _can_all_differ(rest, used | {paper}):
            yield from distinct_picks(options, (*picked, choice))


def repeating_picks(options: Options, picked: Picks = ()) -> Iterator[Picks]:
    """Every pick in which some paper comes twice."""
    if len(picked) == len(options):
        return
    used, rest = _papers(picked), options[len(picked) + 1 :]
    for choice in options[len(picked)]:
        paper, longer = choice.paper.id, (*picked, choice)
        if paper in used:
            yield from ((*longer, *tail) for tail in product(*rest))
        elif _can_repeat(rest, used | {paper}):
            yield from repeating_picks(options, longer)


def _papers(choices: Sequence[Choice]) -> set[str]:
    return {choice.paper.id for choice in choices}


def _can_repeat(rest: Options, used: set[str]) -> bool:
    sets = [_papers(choices) for choices in rest]
    return any(papers & used for papers in sets) or any(a & b for a, b in combinations(sets, 2))


def _can_all_differ(rest: Options, used: set[str]) -> bool:
    """Whether each list can have a paper of its own: a matching of lists to papers, by augmenting paths."""
    owner: dict[str, int] = {}
    papers = [sorted(_papers(choices) - used) for choices in rest]
    return all(_takes(index, papers, owner, set()) for index in range(len(papers)))


def _takes(index: int, papers: Sequence[list[str]], owner: dict[str, int], tried: set[str]) -> bool:
    for paper in papers[index]:
        if paper in tried:
            continue
        tried.add(paper)
        if paper not in owner or _takes(owner[paper], papers, owner, tried):
            owner[paper] = index
            return True
    return False
