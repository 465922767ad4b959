"""The inner loops on tables of blocks: finding blocks in a table, and growing it.

A block is a rectangle that some pieces fill by through cuts alone: a single piece, or two blocks joined along a side
that they share. Where everything may turn, a block stands with its shorter side as `wide`.
"""

from typing import NamedTuple

from spreadwright.cutting.search.speed import Ints, compiled

PRIME = 2147483629


class Blocks(NamedTuple):
    """A table of blocks, one number a block in each column.

    Attributes:
        guard: The guard bits of each word of a packed count.
        total: The packed count of all pieces there are.
        apart: Its one number is 0 where everything may turn; else chains by height start that much further up.
        wide: Width.
        high: Height.
        area: Width times height.
        rank: Blocks are joined in this order: the area, or more for blocks of several kinds, see `grow`.
        mix: How many kinds it holds, kinds that meet again counted again.
        sole: The kind of all its pieces, -1 for several.
        count: Its pieces, packed; as many numbers a block as there are words.
        left: The block it is joined from, -1 for a single piece.
        right: The other one; the kind of a single piece.
        axis: 0 if joined along its width, one above the other; 1 if joined along its height.
        slots: Hash table of block numbers, -1 where free.
        head: First link of each chain; link 2 i is block i under its width, link 2 i + 1 under its height.
        after: The next link, -1 at the end.
        heap: Blocks not yet finished, smallest rank on top.
        state: 0 blocks, 1 size of the heap, 2 finished blocks, 3 area up to which the table is complete, 4 by how much
            a further kind raises the rank.
    """

    guard: Ints
    total: Ints
    apart: Ints
    wide: Ints
    high: Ints
    area: Ints
    rank: Ints
    mix: Ints
    sole: Ints
    count: Ints
    left: Ints
    right: Ints
    axis: Ints
    slots: Ints
    head: Ints
    after: Ints
    heap: Ints
    state: Ints


@compiled
def mixed(w: int, h: int, count: Ints, at: int, words: int) -> int:
    """A number below 2^31 that is the same for equal sizes and counts."""
    value = (w * 69069 + h) % PRIME
    for k in range(words):
        value = (value * 1540483477 + count[at + k] % PRIME) % PRIME
    return value


@compiled
def is_within(part: Ints, at: int, whole: Ints, start: int, guard: Ints) -> bool:
    """Whether one packed count fits inside another."""
    for k in range(len(guard)):
        g = guard[k]
        if (((whole[start + k] | g) - part[at + k]) & g) != g:
            return False
    return True


@compiled
def slot_of(b: Blocks, w: int, h: int, sought: Ints, at: int) -> int:
    """The slot where this block stands, or the free slot where it would stand."""
    words = len(b.guard)
    most = len(b.slots)
    slot = mixed(w, h, sought, at, words) % most
    while True:
        i = b.slots[slot]
        if i < 0:
            return slot
        if b.wide[i] == w and b.high[i] == h:
            same = True
            for k in range(words):
                if b.count[i * words + k] != sought[at + k]:
                    same = False
                    break
            if same:
                return slot
        slot += 1
        if slot == most:
            slot = 0


@compiled
def push(b: Blocks, i: int) -> None:
    """Puts block i on the heap: smallest rank on top, among equals the lowest number."""
    at = b.state[1]
    b.state[1] += 1
    while at > 0:
        up = (at - 1) // 2
        j = b.heap[up]
        if b.rank[j] < b.rank[i] or (b.rank[j] == b.rank[i] and j < i):
            break
        b.heap[at] = j
        at = up
    b.heap[at] = i


@compiled
def pop(b: Blocks) -> int:
    """Takes the top block off the heap."""
    top: int = b.heap[0]
    size = b.state[1] - 1
    b.state[1] = size
    i = b.heap[size]
    at = 0
    while 2 * at + 1 < size:
        down = 2 * at + 1
        if down + 1 < size:
            x, y = b.heap[down], b.heap[down + 1]
            if b.rank[y] < b.rank[x] or (b.rank[y] == b.rank[x] and y < x):
                down += 1
        j = b.heap[down]
        if b.rank[i] < b.rank[j] or (b.rank[i] == b.rank[j] and i < j):
            break
        b.heap[at] = j
        at = down
    b.heap[at] = i
    return top


@compiled
def join(b: Blocks, i: int, j: int, side: int, long: int, turn: int) -> None:
    """Adds the block that i and j make along a side, unless it stands there already."""
    words = len(b.guard)
    made = b.state[0]
    w, h, axis = side, long, 0
    if (b.apart[0] > 0 and turn == 1) or (b.apart[0] == 0 and side > long):
        w, h, axis = long, side, 1
    for k in range(words):
        b.count[made * words + k] = b.count[i * words + k] + b.count[j * words + k]
    slot = slot_of(b, w, h, b.count, made * words)
    if b.slots[slot] >= 0:
        return
    b.slots[slot] = made
    b.wide[made], b.high[made], b.area[made] = w, h, side * long
    b.left[made], b.right[made], b.axis[made] = i, j, axis
    same = b.sole[i] >= 0 and b.sole[i] == b.sole[j]
    b.sole[made] = b.sole[i] if same else -1
    b.mix[made] = 1 if same else b.mix[i] + b.mix[j]
    b.rank[made] = side * long * (1 + b.state[4] * (b.mix[made] - 1))
    b.state[0] = made + 1
    push(b, made)


@compiled
def grow(b: Blocks, width: int, height: int, most_area: int, most_finished: int) -> None:
    """Joins blocks that fit in a rectangle, smallest area first, until a limit is met.

    Two blocks that share a side, and whose pieces exist together, make a third. The block taken off the heap is joined
    with all finished ones, none larger than itself; so once an area is passed every block of that area has been found.
    The table is complete up to there: a proof, not a guess.
    """
    words, apart = len(b.guard), b.apart[0]
    room = b.total.copy()
    most_made = len(b.wide) - 1
    last = b.state[3] + 1
    if width > height and apart == 0:
        width, height = height, width
    while b.state[1] > 0:
        i = b.heap[0]
        if b.rank[i] > most_area or b.state[2] >= most_finished or b.state[0] >= most_made:
            break
        pop(b)
        last = b.area[i]
        b.state[2] += 1
        w, h = b.wide[i], b.high[i]
        b.after[2 * i] = b.head[w]
        b.head[w] = 2 * i
        if apart > 0 or w != h:
            b.after[2 * i + 1] = b.head[h + apart]
            b.head[h + apart] = 2 * i + 1
        for k in range(words):
            room[k] = b.total[k] - b.count[i * words + k]
        for turn in range(2):
            side = w if turn == 0 else h
            other = h if turn == 0 else w
            if turn == 1 and apart == 0 and w == h:
                break
            link = b.head[side + apart * turn]
            while link >= 0 and b.state[0] < most_made:
                j = link // 2
                long = other + (b.high[j] if link % 2 == 0 else b.wide[j])
                link = b.after[link]
                if long * side > most_area:
                    continue
                if apart == 0:
                    if min(side, long) > width or max(side, long) > height:
                        continue
                elif long > (height if turn == 0 else width):
                    continue
                if is_within(b.count, j * words, room, 0, b.guard):
                    join(b, i, j, side, long, turn)
    if b.state[4] == 0:
        if b.state[0] >= most_made:
            b.state[3] = min(most_area, last - 1)
        else:
            b.state[3] = most_area if b.state[1] == 0 else min(most_area, b.area[b.heap[0]] - 1)


@compiled
def prefer_alike(b: Blocks, spread: int) -> None:
    """From here on joins blocks of few kinds first, however large: equal pieces, and pairs that share a long side."""
    b.state[4] = spread
    size = b.state[1]
    b.state[1] = 0
    for at in range(size):
        i = b.heap[at]
        b.rank[i] = b.area[i] * (1 + spread * (b.mix[i] - 1))
        push(b, i)
