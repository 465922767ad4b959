"""The inner loops of ruin and recreate: parts of the sheets are emptied and filled anew, over and over."""

from math import sqrt

from spreadwright.cutting.search.nodes import (
    ASIDE,
    CONTENT,
    HIGH,
    LONGEST_CUT,
    MOST_WORTH,
    NARROWEST,
    OUT,
    PARENT,
    RANDOM,
    REST,
    SHEET,
    STEP,
    USED,
    WIDE,
    Ruins,
    empty,
    largest_rest,
    pieces_below,
    put_in,
    restore,
)
from spreadwright.cutting.search.speed import Floats, compiled

BY_WORTH, BY_SIDE, BY_AREA = range(3)
"""What is small about the best rest for a piece: the loss of its worth, the shorter side left over, or its area."""

BLINKS = 40
"""One place in so many is overlooked, so that the same rests are not always filled alike."""


@compiled
def drawn(r: Ruins, below: int) -> int:
    """A random number from 0."""
    number: int = (r.state[RANDOM] * 1103515245 + 12345) % 2147483648
    r.state[RANDOM] = number
    return (number >> 8) % below


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
