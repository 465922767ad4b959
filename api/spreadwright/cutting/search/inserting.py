"""The inner loop that cuts pieces one after the other from what the pieces before have left.

Every open rectangle is a node. Cutting a piece from its corner makes two new nodes: the rest of the row (or column) in
which the piece lies, and what is left below (or beside) it.
"""

from typing import NamedTuple

from spreadwright.cutting.search.speed import Ints, compiled

ONTO_SHORT, ONTO_AREA, ONTO_LONG = range(3)
"""Which open rectangle is the best fit: least short side, least area, or least long side left over."""

GATHER, HALVE, SHORT_FIRST, LONG_FIRST = range(4)
"""How the rest is divided: into one large and one small part, into like parts, or by which side is shorter."""


class Cutting(NamedTuple):
    """Pieces, sheets, and the nodes that a run writes.

    Attributes:
        wide: Of each piece; `high` likewise.
        turns: 1 where a piece may turn.
        group: Pieces of one group come from one sheet; -1 for none.
        optional: 1 where a piece may be left out and opens no sheet of its own.
        sheet_wide: Of each sheet, in the order in which they are opened; `sheet_high` likewise.
        node_wide: Size of each node; `node_high` likewise.
        node_sheet: The sheet it belongs to.
        node_piece: The piece cut from its corner, -1 if none.
        node_way: 0 piece upright in a row, 1 upright in a column; 2 and 3 the same turned.
        node_next: First of its two child nodes.
        open_nodes: The nodes that nothing is cut from yet.
        group_sheet: The sheet of each group, -1 while none.
        state: 0 open nodes, 1 nodes, 2 sheets opened, 3 pieces left out, 4 random number.
        left_out: The pieces left out.
        limits: 0 the longest cut, 1 the narrowest part that may be left; 0 for anything.
    """

    wide: Ints
    high: Ints
    turns: Ints
    group: Ints
    optional: Ints
    sheet_wide: Ints
    sheet_high: Ints
    node_wide: Ints
    node_high: Ints
    node_sheet: Ints
    node_piece: Ints
    node_way: Ints
    node_next: Ints
    open_nodes: Ints
    group_sheet: Ints
    state: Ints
    left_out: Ints
    limits: Ints


@compiled
def open_node(c: Cutting, w: int, h: int, sheet: int) -> None:
    """Adds a node; one without area counts but stays closed."""
    node = c.state[1]
    c.node_wide[node], c.node_high[node], c.node_sheet[node], c.node_piece[node] = w, h, sheet, -1
    c.state[1] = node + 1
    if w > 0 and h > 0:
        c.open_nodes[c.state[0]] = node
        c.state[0] += 1


@compiled
def misfit(w: int, h: int, x: int, y: int, fit: int) -> int:
    """How badly a piece of x by y fits in w by h."""
    if fit == ONTO_AREA:
        return w * h - x * y
    if fit == ONTO_SHORT:
        return min(w - x, h - y)
    return max(w - x, h - y)


@compiled
def best_node(c: Cutting, piece: int, fit: int, noise: int) -> int:
    """The best place for a piece as 2 x index among the open nodes + turned, or -1."""
    best, best_value = -1, 1 << 60
    bound = -1
    if c.group[piece] >= 0:
        bound = c.group_sheet[c.group[piece]]
    for index in range(c.state[0]):
        node = c.open_nodes[index]
        if bound >= 0 and c.node_sheet[node] != bound:
            continue
        w, h = c.node_wide[node], c.node_high[node]
        for turned in range(1 + c.turns[piece]):
            x = c.high[piece] if turned == 1 else c.wide[piece]
            y = c.wide[piece] if turned == 1 else c.high[piece]
            if x > w or y > h or 0 < w - x < c.limits[1] or 0 < h - y < c.limits[1]:
                continue
            value = misfit(w, h, x, y, fit) * 1024
            if noise > 0:
                c.state[4] = (c.state[4] * 1103515245 + 12345) % 2147483648
                value += value // 1024 * (c.state[4] // 2097152 * noise // 1024)
            if value < best_value:
                best, best_value = 2 * index + turned, value
    return best


@compiled
def is_row_better(w: int, h: int, x: int, y: int, rule: int) -> bool:
    """Whether the piece should lie in a row across the node rather than in a column down it."""
    if rule == GATHER:
        return max((w - x) * y, w * (h - y)) >= max(x * (h - y), (w - x) * h)
    if rule == HALVE:
        return max((w - x) * y, w * (h - y)) < max(x * (h - y), (w - x) * h)
    if rule == SHORT_FIRST:
        return w - x <= h - y
    return w - x > h - y


@compiled
def insert_all(c: Cutting, order: Ints, most_sheets: int, fit: int, rule: int, noise: int) -> None:
    """Cuts the pieces in this order, each from the open rectangle that it fits best.

    A further sheet is opened only when a piece fits nowhere; beyond `most_sheets` the piece is left out.
    """
    c.state[0], c.state[1], c.state[2], c.state[3] = 0, 0, 0, 0
    for k in range(len(c.group_sheet)):
        c.group_sheet[k] = -1
    for at in range(len(order)):
        piece = order[at]
        place = best_node(c, piece, fit, noise)
        while place < 0 and c.optional[piece] == 0 and c.state[2] < most_sheets:
            if c.group[piece] >= 0 and c.group_sheet[c.group[piece]] >= 0:
                break
            sheet = c.state[2]
            c.state[2] = sheet + 1
            open_node(c, c.sheet_wide[sheet], c.sheet_high[sheet], sheet)
            place = best_node(c, piece, fit, noise)
        if place < 0:
            c.left_out[c.state[3]] = piece
            c.state[3] += 1
            continue
        index, turned = place // 2, place % 2
        node = c.open_nodes[index]
        c.state[0] -= 1
        c.open_nodes[index] = c.open_nodes[c.state[0]]
        w, h, sheet = c.node_wide[node], c.node_high[node], c.node_sheet[node]
        x = c.high[piece] if turned == 1 else c.wide[piece]
        y = c.wide[piece] if turned == 1 else c.high[piece]
        is_row = is_row_better(w, h, x, y, rule)
        if 0 < c.limits[0] < w and y < h:
            is_row = False
        elif 0 < c.limits[0] < h and x < w:
            is_row = True
        c.node_piece[node], c.node_way[node] = piece, 2 * turned + (0 if is_row else 1)
        c.node_next[node] = c.state[1]
        if c.group[piece] >= 0:
            c.group_sheet[c.group[piece]] = sheet
        if is_row:
            open_node(c, w - x, y, sheet)
            open_node(c, w, h - y, sheet)
        else:
            open_node(c, x, h - y, sheet)
            open_node(c, w - x, h, sheet)


@compiled
def largest_open(c: Cutting) -> int:
    """Area of the largest open node."""
    most = 0
    for index in range(c.state[0]):
        node = c.open_nodes[index]
        most = max(most, c.node_wide[node] * c.node_high[node])
    return most


@compiled
def squares_of_use(c: Cutting) -> int:
    """Sum over the sheets of the square of the used share, in millionths: high when some are full and one is empty."""
    total = 0
    for sheet in range(c.state[2]):
        free = 0
        for index in range(c.state[0]):
            node = c.open_nodes[index]
            if c.node_sheet[node] == sheet:
                free += c.node_wide[node] * c.node_high[node]
        area = c.sheet_wide[sheet] * c.sheet_high[sheet]
        used = (area - free) * 1000 // area
        total += used * used
    return total
