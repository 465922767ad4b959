"""All pieces onto whole sheets with nothing left over: exact search and random filling by turns.

The exact search settles small problems at once, and with growing tables also proves that there is no plan. In between,
fillers of different manners get equal shares of work. Shares are counted, not timed: a seed always gives the same plan,
and a time limit only stops the search.
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from random import Random

from spreadwright.cutting.search.exact import Answer, Verdict, settled
from spreadwright.cutting.search.filler import Filler, Manner
from spreadwright.cutting.search.kinds import Size, Stock, common_step, divided
from spreadwright.cutting.search.trees import Block, scaled

MANNERS = (
    Manner(blocks=200, alike=300, tries=4, last=20, last_blocks=1200, steps=80),
    Manner(),
    Manner(tries=4, steps=60, noise=512, last=20, last_blocks=1500),
    Manner(alike=4000, tries=3, steps=150, last=26, last_blocks=4000),
)

SHARE = 250
"""Work of one filler before the next has its turn."""

EFFORTS = ((200, 2000), (3000, 100_000), (15_000, 200_000), (40_000, 500_000), (250_000, 3_000_000))
"""Blocks of the exact search's table, and rectangles it looks at on the way down: from milliseconds to some seconds."""

TURNS = ((30, (0, 0, 0, 1, 30)), (44, (0, 0, 2, 8, 60)), (None, (0, 1)))
"""For up to so many pieces (None: any number), the rounds in which these efforts have their turn.

Large tables settle few pieces best; of many, chance finds more in the same time.
"""

FIRST_SEED = 1
"""With this seed the exact search goes first; with others chance does, so that they find other plans."""


@dataclass(frozen=True, slots=True)
class Fit:
    """What came out.

    Attributes:
        trees: One a sheet, if a plan was found.
        rounds: How often every manner had its share.
    """

    verdict: Verdict
    trees: tuple[Block, ...] = ()
    rounds: int = 0


def fit(
    pieces: Stock,
    sheets: Sequence[Size],
    *,
    seed: int = FIRST_SEED,
    most_rounds: int = 1_000_000,
    is_over: Callable[[], bool] = lambda: False,
    on_round: Callable[[int], None] = lambda _: None,
) -> Fit:
    """Plans that cut all pieces from whole sheets without any rest.

    Args:
        pieces: All pieces.
        sheets: Sizes of the sheets, in the same unit as the pieces; together they have the area of the pieces.
        seed: Another seed may give another plan.
        most_rounds: Stops after so many rounds.
        is_over: Asked often; the search stops as soon as it says yes.
        on_round: Told the number of each round.

    Returns:
        The trees stand in the order of the sheets given.
    """
    if pieces.area != sum(w * h for w, h in sheets):
        return Fit(Verdict.IMPOSSIBLE)
    if not sheets:
        return Fit(Verdict.FOUND)
    step = common_step([*sheets, *((k.wide, k.high) for k in pieces.kinds)])
    order = sorted(range(len(sheets)), key=lambda i: (sheets[i][0] * sheets[i][1], sheets[i]))
    sizes = [(sheets[i][0] // step, sheets[i][1] // step) for i in order]
    found = _search(divided(pieces, step), sizes, seed, most_rounds, is_over, on_round)
    trees = {i: scaled(tree, step) for i, tree in zip(order, found.trees, strict=False)}
    return Fit(found.verdict, tuple(trees[i] for i in sorted(trees)), found.rounds)


def _search(
    pieces: Stock,
    sizes: Sequence[Size],
    seed: int,
    most_rounds: int,
    is_over: Callable[[], bool],
    on_round: Callable[[int], None],
) -> Fit:
    fillers: list[Filler] = []
    for number in range(most_rounds):
        on_round(number)
        answer = _exactly(pieces, sizes, number, is_over) if seed == FIRST_SEED or number else Answer(Verdict.STOPPED)
        if answer.verdict is not Verdict.STOPPED:
            return Fit(answer.verdict, (answer.tree,) if answer.tree else (), number)
        if number >= 2:
            other = _left_to_chance(_other_manner(Random(f"{seed} {number}")), pieces, seed)
            fillers[number % len(MANNERS)] = Filler(pieces, sizes, other, seed + number)
        for index, manner in enumerate(MANNERS):
            if is_over():
                return Fit(Verdict.STOPPED, (), number)
            if index == len(fillers):
                fillers.append(Filler(pieces, sizes, _left_to_chance(manner, pieces, seed), seed + index))
            trees = _share(fillers[index], is_over)
            if trees is not None:
                return Fit(Verdict.FOUND, tuple(trees), number)
    return Fit(Verdict.STOPPED, (), most_rounds)


def _left_to_chance(manner: Manner, pieces: Stock, seed: int) -> Manner:
    """The manner with enough pieces for chance to place, so that no two tries are the same."""
    most = pieces.pieces * 2 // 3 if seed == FIRST_SEED else pieces.pieces // 2
    return replace(manner, last=min(manner.last, most))


def _other_manner(rng: Random) -> Manner:
    """A manner at random: what the usual ones have missed, they may go on missing."""
    return Manner(
        blocks=rng.choice((150, 300, 600)),
        alike=rng.choice((300, 1000, 3000, 6000)),
        spread=rng.choice((1, 2, 4)),
        tries=rng.choice((2, 3, 4, 5)),
        noise=rng.choice((300, 600, 1000)),
        last=(last := rng.choice((18, 22, 26, 30))),
        last_blocks=150 * last - 1500,
        steps=rng.choice((40, 100, 250)),
        length_weight=rng.choice((1, 2, 3, 6)),
    )


def _exactly(pieces: Stock, sizes: Sequence[Size], number: int, is_over: Callable[[], bool]) -> Answer:
    answer = Answer(Verdict.STOPPED)
    for blocks, steps in _efforts(pieces.pieces, number) if len(sizes) == 1 else []:
        answer = settled(pieces, *sizes[0], blocks, steps, is_over)
        if answer.verdict is not Verdict.STOPPED or is_over():
            break
    return answer


def _efforts(pieces: int, number: int) -> list[tuple[int, int]]:
    """What the exact search spends in a round."""
    turns = next(turns for most, turns in TURNS if most is None or pieces <= most)
    return [effort for effort, turn in zip(EFFORTS, turns, strict=False) if turn == number]


def _share(filler: Filler, is_over: Callable[[], bool]) -> list[Block] | None:
    end = filler.work + SHARE
    while filler.work < end and not is_over():
        filler.work += 1
        trees = filler.attempt(is_over)
        if trees is not None:
            return trees
    return None
