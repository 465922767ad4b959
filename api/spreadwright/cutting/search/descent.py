"""The inner loops that settle a rectangle by a table of blocks, going down from the whole to its parts."""

from typing import NamedTuple

from spreadwright.cutting.search.loops import Blocks, is_within, mixed, slot_of
from spreadwright.cutting.search.speed import Ints, compiled


@compiled
def is_marked(marks: Ints, key: int, w: int, h: int, count: Ints, at: int, words: int) -> bool:
    """Whether exactly this size with exactly these pieces was marked and not overwritten since."""
    base = (key % (len(marks) // (words + 2))) * (words + 2)
    if marks[base] != w or marks[base + 1] != h:
        return False
    same = True
    for k in range(words):
        same = same and marks[base + 2 + k] == count[at + k]
    return same


@compiled
def mark(marks: Ints, key: int, w: int, h: int, count: Ints, at: int, words: int) -> None:
    """Marks this size with these pieces; an older mark may be lost by it."""
    base = (key % (len(marks) // (words + 2))) * (words + 2)
    marks[base] = w
    marks[base + 1] = h
    for k in range(words):
        marks[base + 2 + k] = count[at + k]


class Descent(NamedTuple):
    """A search down through one rectangle, which may be interrupted and taken up again.

    Attributes:
        stack: Five numbers a level: width and height of what is there, next link to try, turn, link taken off; in the
            last level the block that fills the rest stands in the place of the link taken off.
        rest: What is left, packed, level by level.
        marks: Sizes that failed, with the pieces that were left; an older mark may be lost by a newer one.
        state: 0 the level, 1 whether it is new, 2 rectangles that may still be looked at.
    """

    stack: Ints
    rest: Ints
    marks: Ints
    state: Ints


FAILED, INTERRUPTED, SPENT = 0, -1, -2
"""What `settle` says when it has no plan: there is none within the table, ask again, or it has looked at enough."""


@compiled
def settle(b: Blocks, d: Descent, work: int) -> int:
    """How all pieces fill a rectangle: the number of levels on the stack, or why there are none.

    A rectangle with a through cut is two parts, the smaller one at most half of it. So blocks are taken off one after
    the other, each along a whole side and at most half of what is there, until the table knows the rest. When the
    table is complete up to half of the rectangle, "none" is a proof; sizes that failed with the same pieces are marked.

    Returns after `work` looks at blocks at the latest; `d` holds where it stood.
    """
    words, deepest = len(b.guard), len(d.stack) // 5 - 2
    while d.state[0] >= 0:
        depth: int = d.state[0]
        if d.state[1] == 1:
            known = arrive(b, d, depth)
            if known > 0:
                return depth + 1
            if d.state[2] < 0:
                return SPENT
            if known < 0:
                d.state[0] -= 1
                continue
        work -= 1 + take_off(b, d, depth, depth < deepest)
        if d.stack[5 * depth + 4] < 0:
            mark_failed(b, d, depth, words)
            d.state[0] -= 1
        if work < 0:
            return INTERRUPTED
    return FAILED


@compiled
def arrive(b: Blocks, d: Descent, depth: int) -> int:
    """Looks at a rectangle for the first time: 1 if the table knows it, -1 if it cannot be filled, 0 otherwise."""
    base, words = 5 * depth, len(b.guard)
    w, h = d.stack[base], d.stack[base + 1]
    small, large = (h, w) if b.apart[0] == 0 and h < w else (w, h)
    d.state[1] = 0
    known = b.slots[slot_of(b, small, large, d.rest, depth * words)]
    if known >= 0:
        d.stack[base + 4] = known
        return 1
    d.state[2] -= 1
    key = mixed(small, large, d.rest, depth * words, words)
    if w * h <= b.state[3] or is_marked(d.marks, key, small, large, d.rest, depth * words, words):
        return -1
    d.stack[base + 2] = b.head[w]
    d.stack[base + 3] = 0
    return 0


@compiled
def take_off(b: Blocks, d: Descent, depth: int, is_allowed: bool) -> int:
    """Takes the next block off a rectangle and goes down to what is left; how many blocks were looked at for it.

    Where there is none, or none is allowed, -1 stands in its place.
    """
    base, words, apart, looks = 5 * depth, len(b.guard), b.apart[0], 0
    w, h = d.stack[base], d.stack[base + 1]
    link, turn = d.stack[base + 2], d.stack[base + 3]
    other = 0
    while is_allowed:
        along = h if turn == 0 else w
        while link >= 0:
            j = link // 2
            looks += 1
            other = b.high[j] if link % 2 == 0 else b.wide[j]
            if 2 * other <= along and is_within(b.count, j * words, d.rest, depth * words, b.guard):
                break
            link = b.after[link]
        if link >= 0 or turn == 1 or (apart == 0 and w == h):
            break
        turn = 1
        link = b.head[h + apart]
    if link < 0 or not is_allowed:
        d.stack[base + 4] = -1
        return looks
    d.stack[base + 2], d.stack[base + 3], d.stack[base + 4] = b.after[link], turn, link
    d.stack[base + 5] = w if turn == 0 else w - other
    d.stack[base + 6] = h - other if turn == 0 else h
    for k in range(words):
        d.rest[(depth + 1) * words + k] = d.rest[depth * words + k] - b.count[(link // 2) * words + k]
    d.state[0] += 1
    d.state[1] = 1
    return looks


@compiled
def mark_failed(b: Blocks, d: Descent, depth: int, words: int) -> None:
    """Marks that a rectangle cannot be filled with what is left."""
    w, h = d.stack[5 * depth], d.stack[5 * depth + 1]
    small, large = (h, w) if b.apart[0] == 0 and h < w else (w, h)
    key = mixed(small, large, d.rest, depth * words, words)
    mark(d.marks, key, small, large, d.rest, depth * words, words)
