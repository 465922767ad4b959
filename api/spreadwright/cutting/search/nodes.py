"""Sheets as tables of nodes, for inner loops: pieces are put into rests and taken out again.

Every sheet is a tree. A node is a piece, a rest, or cut into children that lie side by side or one above the other,
never the same way as their parent's; no node has two rests among its children, since they can be moved together.
"""

from typing import NamedTuple

from spreadwright.cutting.search.speed import Floats, Ints, Table, compiled

WIDE, HIGH, PARENT, FIRST, NEXT, CONTENT, AXIS, SHEET = range(8)
"""Rows of the table of nodes: size, parent, first child, next sibling, what it is, how its children lie, its sheet."""

REST, CUT, FREE = -1, -2, -3
"""What a node is that is no piece."""

ASIDE, DOWN = range(2)
"""How children lie: side by side, or one above the other."""

OUT, USED, SPARE, STEP, RANDOM = range(5)
"""Of the state: pieces left out, nodes in use at most, the first free node, steps made, the random number."""

LONGEST_CUT, NARROWEST, MOST_WORTH = range(3)
"""Of the limits: the first two allow anything when 0; the last is what a whole sheet is worth as a rest."""


class Ruins(NamedTuple):
    """Pieces, sheets, and the table of nodes that a run writes.

    Attributes:
        wide: Of each piece; `high` likewise.
        turns: 1 where a piece may turn.
        group: Pieces of one group come from one sheet; -1 for none.
        value: What leaving an optional piece out loses; 0 for one that must be cut.
        weight: What leaving a piece out counts beside the worth of rests.
        where: The node of each piece, -1 while it is left out.
        group_sheet: The sheet of each group, as long as `group_count` pieces of it lie there.
        nodes: The table; the first nodes are the sheets.
        out: The pieces left out.
        state: See OUT and those beside it.
        limits: See LONGEST_CUT and those beside it.
    """

    wide: Ints
    high: Ints
    turns: Ints
    group: Ints
    value: Ints
    weight: Floats
    where: Ints
    group_sheet: Ints
    group_count: Ints
    nodes: Table
    out: Ints
    state: Ints
    limits: Ints


@compiled
def add_child(r: Ruins, parent: int, w: int, h: int) -> int:
    """A new rest as a node's first child."""
    n = r.nodes
    node: int = r.state[SPARE]
    r.state[SPARE] = n[NEXT, node]
    r.state[USED] = max(r.state[USED], node + 1)
    n[WIDE, node], n[HIGH, node], n[PARENT, node], n[NEXT, node] = w, h, parent, n[FIRST, parent]
    n[FIRST, node], n[CONTENT, node], n[SHEET, node] = -1, REST, n[SHEET, parent]
    n[FIRST, parent] = node
    return node


@compiled
def drop(r: Ruins, node: int) -> None:
    """Gives a node back."""
    r.nodes[CONTENT, node], r.nodes[NEXT, node] = FREE, r.state[SPARE]
    r.state[SPARE] = node


@compiled
def cut_off(r: Ruins, rest: int, axis: int, extent: int) -> int:
    """The part of so much width or height that is cut off a rest; the rest itself if there is no more of it."""
    n = r.nodes
    w, h, parent = n[WIDE, rest], n[HIGH, rest], n[PARENT, rest]
    side = WIDE if axis == ASIDE else HIGH
    if extent == n[side, rest]:
        return rest
    wide, high = (extent, h) if axis == ASIDE else (w, extent)
    if parent >= 0 and n[AXIS, parent] == axis:
        n[side, rest] -= extent
        return add_child(r, parent, wide, high)
    n[CONTENT, rest], n[AXIS, rest], n[FIRST, rest] = CUT, axis, -1
    if axis == ASIDE:
        add_child(r, rest, w - wide, h)
    else:
        add_child(r, rest, w, h - high)
    return add_child(r, rest, wide, high)


@compiled
def put_in(r: Ruins, piece: int, rest: int, turned: int, axis: int) -> None:
    """Cuts a piece from the corner of a rest, first along one axis, then along the other."""
    x = r.high[piece] if turned == 1 else r.wide[piece]
    y = r.wide[piece] if turned == 1 else r.high[piece]
    part = cut_off(r, rest, axis, x if axis == ASIDE else y)
    part = cut_off(r, part, 1 - axis, y if axis == ASIDE else x)
    r.nodes[CONTENT, part] = piece
    r.where[piece] = part
    if r.group[piece] >= 0:
        r.group_sheet[r.group[piece]] = r.nodes[SHEET, part]
        r.group_count[r.group[piece]] += 1


@compiled
def take_out(r: Ruins, piece: int) -> None:
    """A piece leaves its node, which becomes a rest."""
    r.nodes[CONTENT, r.where[piece]] = REST
    r.where[piece] = -1
    r.out[r.state[OUT]] = piece
    r.state[OUT] += 1
    if r.group[piece] >= 0:
        r.group_count[r.group[piece]] -= 1


@compiled
def empty(r: Ruins, top: int) -> None:
    """A node becomes one rest; all pieces below it are left out."""
    n = r.nodes
    node = top
    while True:
        while n[CONTENT, node] == CUT:
            node = n[FIRST, node]
        if n[CONTENT, node] >= 0:
            take_out(r, n[CONTENT, node])
        if node == top:
            break
        parent = n[PARENT, node]
        n[FIRST, parent] = n[NEXT, node]
        drop(r, node)
        node = parent
        if n[FIRST, node] < 0:
            n[CONTENT, node] = REST
    gather(r, top)


@compiled
def gather(r: Ruins, rest: int) -> None:
    """Joins a rest with the one beside it; where nothing else is left of its parent, that becomes the rest."""
    n = r.nodes
    while n[PARENT, rest] >= 0:
        parent = n[PARENT, rest]
        absorb(r, parent, rest)
        if n[FIRST, parent] != rest or n[NEXT, rest] >= 0:
            return
        drop(r, rest)
        n[CONTENT, parent], n[FIRST, parent] = REST, -1
        rest = parent


@compiled
def absorb(r: Ruins, parent: int, rest: int) -> None:
    """Adds the other rest among a node's children to this one."""
    n = r.nodes
    side = WIDE if n[AXIS, parent] == ASIDE else HIGH
    before, child = -1, n[FIRST, parent]
    while child >= 0:
        after = n[NEXT, child]
        if child != rest and n[CONTENT, child] == REST:
            if before < 0:
                n[FIRST, parent] = after
            else:
                n[NEXT, before] = after
            n[side, rest] += n[side, child]
            drop(r, child)
            return
        before, child = child, after


@compiled
def pieces_below(r: Ruins, top: int, most: int) -> int:
    """How many pieces a node holds; no more than `most` + 1 are counted."""
    n = r.nodes
    count, node = 0, top
    while count <= most:
        while n[CONTENT, node] == CUT:
            node = n[FIRST, node]
        count += n[CONTENT, node] >= 0
        while node != top and n[NEXT, node] < 0:
            node = n[PARENT, node]
        if node == top:
            break
        node = n[NEXT, node]
    return count


@compiled
def largest_rest(r: Ruins) -> int:
    """Area of the largest rest."""
    n, most = r.nodes, 0
    for node in range(r.state[USED]):
        if n[CONTENT, node] == REST:
            most = max(most, n[WIDE, node] * n[HIGH, node])
    return most


@compiled
def restore(r: Ruins, kept: Ruins) -> None:
    """Makes one run like another."""
    most = max(r.state[USED], kept.state[USED])
    r.nodes[:, :most] = kept.nodes[:, :most]
    r.out[: kept.state[OUT]] = kept.out[: kept.state[OUT]]
    r.where[:] = kept.where
    r.group_sheet[:] = kept.group_sheet
    r.group_count[:] = kept.group_count
    r.state[:STEP] = kept.state[:STEP]
