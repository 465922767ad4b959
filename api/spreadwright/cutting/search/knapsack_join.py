"""The inner loops of the exact knapsack: blocks joined best first, with counts of their pieces.

A block is a rectangle with the pieces it is made of. Two blocks lie side by side or one above the other; what the lower
or narrower one lacks is waste. A block may become worth at most its own value and what unlimited copies are worth in
the rest of the sheet; blocks are taken in this order, so that the first that promises too little ends the search
(Viswanathan and Bagchi 1993). A block is left out only for one of the same rest that is worth as much and uses no more
of any kind, or leaves more of it than the rest can hold.
"""

from typing import NamedTuple

from spreadwright.cutting.search.speed import Ints, compiled

BLOCKS, HEAP, CLOSED, GROUPS, BEST, BEST_BLOCK, IS_FULL, WORK, CURRENT, CURSOR = range(10)
"""Numbers in `Pool.state`; `CURRENT` is the block that is being joined, -1 if none, `CURSOR` its next group."""


class Pool(NamedTuple):
    """Blocks, one number a block in each column.

    Attributes:
        wide: Width; `high`: height; true lengths.
        group: Cell of the rest beside and below it.
        worth: True value of its pieces.
        score: Value of its pieces less what weighs on overused kinds, in parts of `Weights.scale`.
        bound: What it may become worth, in the same unit.
        left: The block it is joined from, or -1 and the kind's number as `right`.
        axis: 0 if joined one above the other, 1 if side by side.
        count: Its pieces, packed; as many numbers a block as there are words.
        after: The next closed block of the same group, in falling order of scores.
        heap: Open blocks.
        slots: Hash table of block numbers, -1 where free.
        state: Numbers named above.
    """

    wide: Ints
    high: Ints
    group: Ints
    worth: Ints
    score: Ints
    bound: Ints
    left: Ints
    right: Ints
    axis: Ints
    count: Ints
    after: Ints
    heap: Ints
    slots: Ints
    state: Ints


class Groups(NamedTuple):
    """Closed blocks that leave the same rest of the sheet.

    Attributes:
        number: For every cell its group, -1 if none.
        cell: Its cell; `best`: the highest score in it; `first`: the block of this score.
        wide: The least width in it; `high`: the least height.
    """

    number: Ints
    cell: Ints
    best: Ints
    first: Ints
    wide: Ints
    high: Ints


class Ground(NamedTuple):
    """The sheet and its pieces.

    Attributes:
        rest: What the rest of the sheet is worth, by cell.
        column: `Axis.below` of widths; `row`: of heights.
        sides: Width, height of the sheet, units of both axes, number of rows, whether no length was rounded.
        guard: Guard bits of packed counts; `total`: all there are, packed.
        fields: Of each kind: word, shift, mask, count, area.
        cut: Its one number is the bound that a block has to exceed.
        scale: Its numbers: parts of a value, and what all weights add to every score.
    """

    rest: Ints
    column: Ints
    row: Ints
    sides: Ints
    guard: Ints
    total: Ints
    fields: Ints
    cut: Ints
    scale: Ints


@compiled
def is_before(pool: Pool, a: int, b: int) -> bool:
    """Whether one block is taken before another: higher bounds first, then those made last."""
    if pool.bound[a] != pool.bound[b]:
        return bool(pool.bound[a] > pool.bound[b])
    return a > b


@compiled
def push(pool: Pool, block: int) -> None:
    """Puts a block on the heap."""
    at = pool.state[HEAP]
    pool.state[HEAP] += 1
    while at > 0 and is_before(pool, block, pool.heap[(at - 1) // 2]):
        pool.heap[at] = pool.heap[(at - 1) // 2]
        at = (at - 1) // 2
    pool.heap[at] = block


@compiled
def pop(pool: Pool) -> int:
    """Takes the first block from the heap."""
    top = pool.heap[0]
    pool.state[HEAP] -= 1
    size = pool.state[HEAP]
    last = pool.heap[size]
    at = 0
    while 2 * at + 1 < size:
        child = 2 * at + 1
        if child + 1 < size and is_before(pool, pool.heap[child + 1], pool.heap[child]):
            child += 1
        if not is_before(pool, pool.heap[child], last):
            break
        pool.heap[at] = pool.heap[child]
        at = child
    pool.heap[at] = last
    return int(top)


@compiled
def slot_of(pool: Pool, words: int, block: int) -> int:
    """Where in the hash table a block of this rest and these pieces is, or would be."""
    mixed = pool.group[block]
    for k in range(words):
        mixed = (mixed ^ (mixed >> 29)) * 1181783497276652981 + pool.count[block * words + k]
    mixed = (mixed ^ (mixed >> 31)) * 7046029254386353131
    at = (mixed ^ (mixed >> 32)) & (len(pool.slots) - 1)
    while pool.slots[at] >= 0 and not is_same(pool, words, block, pool.slots[at]):
        at = (at + 1) & (len(pool.slots) - 1)
    return int(at)


@compiled
def place(pool: Pool, words: int) -> None:
    """Enters all blocks into an empty hash table."""
    for block in range(pool.state[BLOCKS]):
        pool.slots[slot_of(pool, words, block)] = block


@compiled
def is_same(pool: Pool, words: int, a: int, b: int) -> bool:
    """Whether two blocks leave the same rest and hold the same pieces."""
    if pool.group[a] != pool.group[b]:
        return False
    for k in range(words):
        if pool.count[a * words + k] != pool.count[b * words + k]:
            return False
    return bool(words)


@compiled
def offer(pool: Pool, ground: Ground, wide: int, high: int, limit: int) -> None:
    """Keeps the block whose pieces, score and parts lie behind the last one, if it is of use."""
    block, words = pool.state[BLOCKS], len(ground.guard)
    sides = ground.sides
    beside = ground.column[(sides[0] - wide) // sides[2]]
    below = ground.row[(sides[1] - high) // sides[3]]
    pool.group[block] = beside * sides[4] + below
    bound = min(limit, pool.score[block] + ground.rest[pool.group[block]])
    if bound <= ground.cut[0]:
        return
    pool.wide[block], pool.high[block], pool.bound[block] = wide, high, bound
    slot = slot_of(pool, words, block)
    twin = pool.slots[slot]
    if twin >= 0 and is_no_larger(pool, ground, twin, wide, high):
        return
    if twin < 0:
        pool.slots[slot] = block
    pool.state[BLOCKS] += 1
    push(pool, block)
    note_best(pool, ground, block)


@compiled
def note_best(pool: Pool, ground: Ground, block: int) -> None:
    """Remembers the block that is worth most, and asks more of all others."""
    if pool.worth[block] > pool.state[BEST]:
        pool.state[BEST] = pool.worth[block]
        pool.state[BEST_BLOCK] = block
        ground.cut[0] = (pool.worth[block] + 1) * ground.scale[0] - ground.scale[1] - 1


@compiled
def is_dominated(pool: Pool, groups: Groups, ground: Ground, block: int, allowed: Ints) -> bool:
    """Whether a closed block of the same rest does as well with pieces that are missed nowhere."""
    group = groups.number[pool.group[block]]
    if group < 0:
        return False
    allow(pool, ground, block, allowed)
    words = len(ground.guard)
    worth, wide, high = pool.worth[block], pool.wide[block], pool.high[block]
    other = groups.first[group]
    while other >= 0:
        pool.state[WORK] += 1
        is_as_good = pool.worth[other] >= worth and is_no_larger(pool, ground, other, wide, high)
        if is_as_good and is_within(pool.count, other * words, allowed, ground.guard):
            return True
        other = pool.after[other]
    return False


@compiled
def is_no_larger(pool: Pool, ground: Ground, block: int, wide: int, high: int) -> bool:
    """Whether a block goes wherever a rectangle of the same rest goes; where lengths are rounded, the rest lies."""
    return bool(ground.sides[5] or (pool.wide[block] <= wide and pool.high[block] <= high))


@compiled
def allow(pool: Pool, ground: Ground, block: int, allowed: Ints) -> None:
    """The most of each kind that may be used in the block's place: its own, or what the rest cannot miss."""
    words, fields = len(ground.guard), ground.fields
    room = ground.sides[0] * ground.sides[1] - pool.wide[block] * pool.high[block]
    for k in range(words):
        allowed[k] = 0
    for at in range(0, len(fields), 5):
        word, shift = fields[at], fields[at + 1]
        own = (pool.count[block * words + word] >> shift) & fields[at + 2]
        allowed[word] |= max(own, fields[at + 3] - room // fields[at + 4]) << shift


@compiled
def is_within(count: Ints, at: int, allowed: Ints, guard: Ints) -> bool:
    """Whether packed counts exceed allowed ones nowhere."""
    for k in range(len(guard)):
        if ((allowed[k] | guard[k]) - count[at + k]) & guard[k] != guard[k]:
            return False
    return len(guard) > 0


@compiled
def close(pool: Pool, groups: Groups, block: int) -> None:
    """Puts a block among those that others are joined with."""
    cell = pool.group[block]
    group = groups.number[cell]
    if group < 0:
        group = pool.state[GROUPS]
        pool.state[GROUPS] += 1
        groups.number[cell] = group
        groups.cell[group] = cell
        groups.first[group] = -1
        groups.wide[group], groups.high[group] = pool.wide[block], pool.high[block]
    groups.wide[group] = min(groups.wide[group], pool.wide[block])
    groups.high[group] = min(groups.high[group], pool.high[block])
    before, at = -1, groups.first[group]
    while at >= 0 and pool.score[at] >= pool.score[block]:
        before, at = at, pool.after[at]
        pool.state[WORK] += 1
    pool.after[block] = at
    if before < 0:
        groups.first[group] = block
        groups.best[group] = pool.score[block]
    else:
        pool.after[before] = block
    pool.state[CLOSED] += 1


@compiled
def join(pool: Pool, ground: Ground, a: int, b: int, is_row: bool) -> None:
    """Offers two blocks as one, if the sheet and the pieces there are allow it."""
    wide = pool.wide[a] + pool.wide[b] if is_row else max(pool.wide[a], pool.wide[b])
    high = max(pool.high[a], pool.high[b]) if is_row else pool.high[a] + pool.high[b]
    if wide > ground.sides[0] or high > ground.sides[1]:
        return
    words, new = len(ground.guard), pool.state[BLOCKS]
    for k in range(words):
        both = pool.count[a * words + k] + pool.count[b * words + k]
        if ((ground.total[k] | ground.guard[k]) - both) & ground.guard[k] != ground.guard[k]:
            return
        pool.count[new * words + k] = both
    pool.worth[new] = pool.worth[a] + pool.worth[b]
    pool.score[new] = pool.score[a] + pool.score[b]
    pool.left[new], pool.right[new], pool.axis[new] = a, b, int(is_row)
    offer(pool, ground, wide, high, min(pool.bound[a], pool.bound[b]))


@compiled
def join_with_group(pool: Pool, groups: Groups, ground: Ground, block: int, group: int, is_row: bool) -> None:
    """Joins a block with all of a group that may yet lead to more than the best."""
    sides = ground.sides
    beside, below = groups.cell[group] // sides[4], groups.cell[group] % sides[4]
    if is_row:
        wide = pool.wide[block] + groups.wide[group]
        if wide > sides[0]:
            return
        beside = ground.column[(sides[0] - wide) // sides[2]]
        below = min(below, pool.group[block] % sides[4])
    else:
        high = pool.high[block] + groups.high[group]
        if high > sides[1]:
            return
        below = ground.row[(sides[1] - high) // sides[3]]
        beside = min(beside, pool.group[block] // sides[4])
    rest = ground.rest[beside * sides[4] + below] + pool.score[block]
    other = groups.first[group]
    while other >= 0 and rest + pool.score[other] > ground.cut[0]:
        if pool.state[BLOCKS] + 2 > len(pool.wide):
            pool.state[IS_FULL] = 1
            return
        join(pool, ground, block, other, is_row)
        pool.state[WORK] += 1 + len(ground.guard) // 4
        other = pool.after[other]


@compiled
def advance(pool: Pool, groups: Groups, ground: Ground, allowed: Ints, most_work: int) -> None:
    """Closes open blocks, the best first, until so much work is done, the pool is full, or nothing may be better."""
    state = pool.state
    end = state[WORK] + most_work
    while state[WORK] < end and not state[IS_FULL]:
        if state[CURRENT] < 0:
            if state[HEAP] == 0 or pool.bound[pool.heap[0]] <= ground.cut[0]:
                state[HEAP] = 0
                return
            block = pop(pool)
            state[WORK] += 1 + state[GROUPS] // 8 + len(ground.fields) // 20
            if is_dominated(pool, groups, ground, block, allowed):
                continue
            close(pool, groups, block)
            state[CURRENT], state[CURSOR] = block, 0
        join_on(pool, groups, ground, end)


@compiled
def join_on(pool: Pool, groups: Groups, ground: Ground, end: int) -> None:
    """Joins the current block with further groups, as far as work and room go."""
    state = pool.state
    block, group = state[CURRENT], state[CURSOR]
    while group < state[GROUPS] and state[WORK] < end:
        join_with_group(pool, groups, ground, block, group, True)
        join_with_group(pool, groups, ground, block, group, False)
        if state[IS_FULL]:
            break
        group += 1
    state[CURSOR] = group
    if group >= state[GROUPS]:
        state[CURRENT] = -1
