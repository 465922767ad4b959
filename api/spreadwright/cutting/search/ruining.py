"""The inner loops of ruin and recreate: parts of the sheets are emptied and filled anew, over and over.

Every sheet is a tree. A node is a piece, a rest, or cut into children that lie side by side or one above the other,
never the same way as their parent's; no node has two rests among its children, since they can be moved together.
"""

from math import sqrt
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

BY_WORTH, BY_SIDE, BY_AREA = range(3)
"""What is small about the best rest for a piece: the loss of its worth, the shorter side left over, or its area."""

BLINKS = 40
"""One place in so many is overlooked, so that the same rests are not always filled alike."""


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
def drawn(r: Ruins, below: int) -> int:
    """A random number from 0."""
    number: int = (r.state[RANDOM] * 1103515245 + 12345) % 2147483648
    r.state[RANDOM] = number
    return (number >> 8) % below


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
def ruin(r: Ruins, wanted: int) -> None:
    """Empties nodes that hold pieces chosen at random until about so many pieces more are left out."""
    until = r.state[OUT] + wanted
    for _ in range(4 * wanted):
        left = until - r.state[OUT]
        if left <= 0:
            break
        node = r.where[drawn(r, len(r.wide))]
        if node < 0:
            continue
        while r.nodes[PARENT, node] >= 0 and drawn(r, 3) > 0:
            parent = r.nodes[PARENT, node]
            if pieces_below(r, parent, left) > left:
                break
            node = parent
        empty(r, node)


@compiled
def worth(area: int) -> float:
    """What a rest is worth: one large rest more than two small ones."""
    return area * sqrt(area)


@compiled
def measure(r: Ruins, piece: int, rule: int) -> int:
    """How large a piece is, by one of four measures."""
    w: int = r.wide[piece]
    h: int = r.high[piece]
    longest: int = r.nodes[WIDE, 0] + r.nodes[HIGH, 0]
    if rule == 0:
        return w * h
    if rule == 1:
        return max(w, h) * longest + min(w, h)
    if rule == 2:
        return min(w, h) * longest + max(w, h)
    return w + h


@compiled
def sort_out(r: Ruins) -> None:
    """Sorts the pieces left out, the largest first, by a measure chosen at random."""
    rule = drawn(r, 4)
    for i in range(1, r.state[OUT]):
        piece = r.out[i]
        size = measure(r, piece, rule)
        j = i - 1
        while j >= 0 and measure(r, r.out[j], rule) < size:
            r.out[j + 1] = r.out[j]
            j -= 1
        r.out[j + 1] = piece


@compiled
def recreate(r: Ruins) -> None:
    """Puts the pieces left out where they fit best, one after the other; what finds no place stays out."""
    sort_out(r)
    rule = drawn(r, 3)
    left = 0
    for i in range(r.state[OUT]):
        piece = r.out[i]
        place = best_place(r, piece, rule)
        if place < 0:
            r.out[left] = piece
            left += 1
        else:
            put_in(r, piece, place // 4, place // 2 % 2, place % 2)
    r.state[OUT] = left


@compiled
def best_place(r: Ruins, piece: int, rule: int) -> int:
    """The best rest for a piece, as 4 x node + 2 x turned + first axis, or -1."""
    n, group = r.nodes, r.group[piece]
    sheet = r.group_sheet[group] if group >= 0 and r.group_count[group] > 0 else -1
    best, least = -1, 0.0
    for node in range(r.state[USED]):
        if n[CONTENT, node] != REST or 0 <= sheet != n[SHEET, node] or drawn(r, BLINKS) == 0:
            continue
        w, h = n[WIDE, node], n[HIGH, node]
        for turned in range(1 + r.turns[piece]):
            x = r.high[piece] if turned == 1 else r.wide[piece]
            y = r.wide[piece] if turned == 1 else r.high[piece]
            if x > w or y > h or 0 < w - x < r.limits[NARROWEST] or 0 < h - y < r.limits[NARROWEST]:
                continue
            for axis in range(2):
                lost = loss(r, w, h, x, y, axis, rule)
                if (best < 0 or lost < least) and not is_too_long(r, w, h, x, y, axis):
                    best, least = 4 * node + 2 * turned + axis, lost
    return best


@compiled
def is_too_long(r: Ruins, w: int, h: int, x: int, y: int, axis: int) -> bool:
    """Whether cutting a piece off needs a cut longer than the longest."""
    longest = r.limits[LONGEST_CUT]
    if axis == ASIDE:
        return longest > 0 and ((x < w and h > longest) or (y < h and x > longest))
    return longest > 0 and ((y < h and w > longest) or (x < w and y > longest))


@compiled
def loss(r: Ruins, w: int, h: int, x: int, y: int, axis: int, rule: int) -> float:
    """How bad it is to cut a piece from a rest, by one of three rules."""
    left = worth((w - x) * h) + worth(x * (h - y)) if axis == ASIDE else worth(w * (h - y)) + worth((w - x) * y)
    if rule == BY_WORTH:
        return worth(w * h) - left
    over = min(w - x, h - y) if rule == BY_SIDE else w * h - x * y
    most: int = r.limits[MOST_WORTH]
    return float(over) * most - left


@compiled
def cost(r: Ruins, pull: float) -> float:
    """Weight of the pieces left out, less a share of what the rests are worth."""
    n = r.nodes
    weight, value = 0.0, 0.0
    for i in range(r.state[OUT]):
        weight += r.weight[r.out[i]]
    for node in range(r.state[USED]):
        if n[CONTENT, node] == REST:
            value += worth(n[WIDE, node] * n[HIGH, node])
    return weight - pull * value


@compiled
def is_met(r: Ruins, most_lost: int, larger_than: int) -> bool:
    """Whether all is cut that must be, and less value is left out, or as much beside a larger rest.

    Args:
        most_lost: The value of the optional pieces that may be left out.
        larger_than: What the largest rest has to exceed where just this value is left out, by area.
    """
    lost = 0
    for i in range(r.state[OUT]):
        if r.value[r.out[i]] == 0:
            return False
        lost += r.value[r.out[i]]
    return lost < most_lost or (lost == most_lost and largest_rest(r) > larger_than)


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


@compiled
def improve(
    r: Ruins, kept: Ruins, costs: Floats, steps: int, most: int, pull: float, most_lost: int, larger_than: int
) -> bool:
    """Makes so many steps, each accepted if it costs no more than what was accepted last or a while ago.

    Args:
        r: The sheets as they are, and as they are then.
        kept: Room for the sheets before a step.
        costs: The costs accepted lately; at the end, the last.
        steps: How many; fewer if the goal is met.
        most: Pieces that a step takes out.
        pull: How much gathered rests count.
        most_lost: The goal, with `larger_than`; see `is_met`.
    """
    last = len(costs) - 1
    for _ in range(steps):
        if is_met(r, most_lost, larger_than):
            return True
        restore(kept, r)
        ruin(r, 1 + drawn(r, most))
        recreate(r)
        new, at = cost(r, pull), r.state[STEP] % last
        if new <= costs[at] or new <= costs[last]:
            costs[last] = new
        else:
            restore(r, kept)
        costs[at] = costs[last]
        r.state[STEP] += 1
    return is_met(r, most_lost, larger_than)
