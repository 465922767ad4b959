"""The inner loop that fills rectangles at random, hard pieces first, without any promise to find what exists."""

from typing import NamedTuple

from spreadwright.cutting.search.loops import PRIME, Blocks, is_within, mixed
from spreadwright.cutting.search.speed import Ints, compiled

WAYS = 4
"""Corner blocks tried at most in one rectangle."""

FRAME = 6
"""Numbers a frame: width, height, phase, candidates tried, length of the trail before, row or column first."""

PICKS = 16
"""Numbers for the candidates of a frame, two each."""

DEEPEST_CORNER = 6
"""Rows and columns are started only so deep inside one another."""

NEW, EDGES, CORNERS, REMAINDER = range(4)

EXACT, ABOVE, BESIDE, ROW, COLUMN, TURNED_ROW, TURNED_COLUMN = range(7)
"""What a step of the trail says: the block fills the rectangle; it lies above, or left of, the rest; it starts a row
or a column, whose rest follows in the trail, and then what the row or column leaves."""


class Filling(NamedTuple):
    """What the random filling works with, besides the table.

    Attributes:
        hardness: Of each kind of piece: what is hard to place goes first.
        score: Of each block: the hardness of its hardest piece, less a little for each further one.
        word: The word of the packed count in which a kind stands.
        shift: The lowest bit of its field.
        mask: Its field, at bit 0.
        first: Where the blocks that hold a kind start in `holders`; one more at the end.
        holders: Block numbers, kind by kind.
        free: What is not yet used, packed.
        trail: Pairs of numbers: what was done, and the block.
        frames: The stack of rectangles being filled.
        picks: Room for the candidates of each depth.
        failed: Hashes of what failed lately.
        state: 0 length of the trail, 1 steps left, 2 random number, 3 which try this is, 4 candidates tried in each
            rectangle, 5 noise in 1024ths, 6 shortest side of all pieces.
    """

    hardness: Ints
    score: Ints
    word: Ints
    shift: Ints
    mask: Ints
    first: Ints
    holders: Ints
    free: Ints
    trail: Ints
    frames: Ints
    picks: Ints
    failed: Ints
    state: Ints


@compiled
def noisy(f: Filling, value: int) -> int:
    """The value, raised at random by up to the share of noise."""
    f.state[2] = (f.state[2] * 1103515245 + 12345) % 2147483648
    raised: int = value * (1024 * 1024 + f.state[5] * (f.state[2] // 2097152))
    return raised


@compiled
def use(b: Blocks, f: Filling, what: int, block: int) -> None:
    """Takes a block's pieces and writes the trail."""
    words = len(b.guard)
    for k in range(words):
        f.free[k] -= b.count[block * words + k]
    at = f.state[0]
    f.trail[at], f.trail[at + 1] = what, block
    f.state[0] = at + 2


@compiled
def undo(b: Blocks, f: Filling, mark: int) -> None:
    """Gives back everything since a mark in the trail."""
    words = len(b.guard)
    while f.state[0] > mark:
        f.state[0] -= 2
        block = f.trail[f.state[0] + 1]
        for k in range(words):
            f.free[k] += b.count[block * words + k]


@compiled
def hardest(b: Blocks, f: Filling, w: int, h: int) -> int:
    """The hardest kind of which a piece is left that fits, with noise; -1 if none."""
    best, best_value = -1, -1
    small, large = min(w, h), max(w, h)
    for kind in range(len(f.hardness)):
        if (f.free[f.word[kind]] >> f.shift[kind]) & f.mask[kind] == 0:
            continue
        i = f.holders[f.first[kind]]
        if min(b.wide[i], b.high[i]) > small or max(b.wide[i], b.high[i]) > large:
            continue
        value = noisy(f, f.hardness[kind])
        if value > best_value:
            best, best_value = kind, value
    return best


@compiled
def edge_picks(b: Blocks, f: Filling, w: int, h: int, at: int) -> int:
    """Blocks along a whole side, best first, into the picks; or, returned, a block that fills the rectangle."""
    words, apart, wanted = len(b.guard), b.apart[0], f.state[4]
    for k in range(wanted):
        f.picks[at + 2 * k] = -1
    whole, whole_value = -1, -1
    for turn in range(2):
        if turn == 1 and apart == 0 and w == h:
            break
        side = w if turn == 0 else h
        along = h if turn == 0 else w
        link = b.head[side + apart * turn]
        while link >= 0:
            j = link // 2
            other = b.high[j] if link % 2 == 0 else b.wide[j]
            if (other == along or other + f.state[6] <= along) and is_within(b.count, j * words, f.free, 0, b.guard):
                if other == along:
                    value = noisy(f, f.score[j]) if b.left[j] >= 0 else 1 << 60
                    if value > whole_value:
                        whole, whole_value = j, value
                elif whole < 0:
                    value = noisy(f, f.score[j])
                    k = wanted
                    while k > 0 and f.picks[at + 2 * k - 2] < value:
                        k -= 1
                    if k < wanted:
                        for m in range(wanted - 1, k, -1):
                            f.picks[at + 2 * m] = f.picks[at + 2 * m - 2]
                            f.picks[at + 2 * m + 1] = f.picks[at + 2 * m - 1]
                        f.picks[at + 2 * k] = value
                        f.picks[at + 2 * k + 1] = 2 * j + turn
            link = b.after[link]
    return whole


@compiled
def corner_picks(b: Blocks, f: Filling, w: int, h: int, at: int) -> None:
    """Blocks for the corner that hold the hardest piece, small ones first, into the picks: 2 x block + turned."""
    words = len(b.guard)
    for k in range(WAYS):
        f.picks[at + 2 * k] = -1
    kind = hardest(b, f, w, h)
    if kind < 0:
        return
    least = f.state[6]
    for place in range(f.first[kind], f.first[kind + 1]):
        i = f.holders[place]
        if not is_within(b.count, i * words, f.free, 0, b.guard):
            continue
        for turned in range(2):
            if turned == 1 and (b.apart[0] > 0 or b.wide[i] == b.high[i]):
                break
            x = b.wide[i] if turned == 0 else b.high[i]
            y = b.high[i] if turned == 0 else b.wide[i]
            if not ((x == w or x + least <= w) and (y == h or y + least <= h) and (x < w or y < h)):
                continue
            f.state[2] = (f.state[2] * 1103515245 + 12345) % 2147483648
            value = (1 << 60) // (b.area[i] * (400 + f.state[2] // 2097152))
            k = WAYS
            while k > 0 and f.picks[at + 2 * k - 2] < value:
                k -= 1
            if k < WAYS:
                for m in range(WAYS - 1, k, -1):
                    f.picks[at + 2 * m] = f.picks[at + 2 * m - 2]
                    f.picks[at + 2 * m + 1] = f.picks[at + 2 * m - 1]
                f.picks[at + 2 * k] = value
                f.picks[at + 2 * k + 1] = 2 * i + turned


@compiled
def enter(f: Filling, depth: int, w: int, h: int, phase: int) -> None:
    """Opens a rectangle on the stack of frames."""
    at = FRAME * depth
    f.frames[at], f.frames[at + 1], f.frames[at + 2], f.frames[at + 3] = w, h, phase, 0
    f.frames[at + 4] = f.state[0]


@compiled
def is_hopeless(b: Blocks, f: Filling, w: int, h: int) -> bool:
    """Whether no block fills it and none can, or the same failed lately in this try."""
    if w * h <= b.state[3]:
        return True
    key = mixed(w, h, f.free, 0, len(b.guard)) + f.state[3] * PRIME + 1
    failed: bool = f.failed[key % len(f.failed)] == key
    return failed


@compiled
def note_failure(b: Blocks, f: Filling, w: int, h: int) -> None:
    """Remembers that this rectangle could not be filled with what is free."""
    key = mixed(w, h, f.free, 0, len(b.guard)) + f.state[3] * PRIME + 1
    f.failed[key % len(f.failed)] = key


@compiled
def start_edge(b: Blocks, f: Filling, depth: int, w: int, h: int, pick: int) -> None:
    """Lays a block along a whole side and opens the rest."""
    block, turn = pick // 2, pick % 2
    other = b.area[block] // (w if turn == 0 else h)
    use(b, f, ABOVE + turn, block)
    if turn == 0:
        enter(f, depth + 1, w, h - other, NEW)
    else:
        enter(f, depth + 1, w - other, h, NEW)


@compiled
def start_corner(b: Blocks, f: Filling, depth: int, w: int, h: int, pick: int, is_row: bool) -> bool:
    """Lays a block in the corner and opens the rest of its row or column; no when that would be the whole rectangle."""
    block, turned = pick // 2, pick % 2
    x = b.high[block] if turned == 1 else b.wide[block]
    y = b.wide[block] if turned == 1 else b.high[block]
    if (is_row and y == h) or (not is_row and x == w):
        return False
    use(b, f, (ROW if is_row else COLUMN) + 2 * turned, block)
    if is_row:
        enter(f, depth + 1, w - x, y, NEW)
    else:
        enter(f, depth + 1, x, h - y, NEW)
    return True


@compiled
def open_remainder(b: Blocks, f: Filling, depth: int) -> None:
    """Opens what a finished row or column leaves of its rectangle."""
    at = FRAME * depth
    w, h, mark = f.frames[at], f.frames[at + 1], f.frames[at + 4]
    what, block = f.trail[mark], f.trail[mark + 1]
    is_turned = what in (TURNED_ROW, TURNED_COLUMN)
    if what in (ROW, TURNED_ROW):
        enter(f, depth + 1, w, h - (b.wide[block] if is_turned else b.high[block]), NEW)
    else:
        enter(f, depth + 1, w - (b.high[block] if is_turned else b.wide[block]), h, NEW)


@compiled
def fill(b: Blocks, f: Filling, width: int, height: int, is_strip: int) -> int:
    """Fills a rectangle with free pieces: 1 done, written in the trail; 0 not found, nothing changed.

    First a block that fills it whole. Then blocks along a whole side, hard pieces first, each followed by the rest.
    Then a block in the corner that holds the hardest piece, as the start of a row or a column across the rectangle.
    With `is_strip` only such a row or column is made, and what it leaves stays open.

    The rectangles being filled stand on a stack of frames; a frame is in one of these phases:

        NEW       nothing tried yet
        EDGES     the rest behind the last edge block is being filled, or has just failed
        CORNERS   the rest of a row or column is being filled, or has just failed
        REMAINDER what that row or column leaves is being filled, or has just failed

    `done` says how the frame above ended: -1 it has not run, 0 failed, 1 filled.
    """
    depth, done = 0, -1
    enter(f, 0, width, height, NEW)
    if is_strip == 1:
        f.frames[2] = CORNERS
        corner_picks(b, f, width, height, 0)
    while depth >= 0:
        at = FRAME * depth
        w, h, phase, tried, mark = f.frames[at], f.frames[at + 1], f.frames[at + 2], f.frames[at + 3], f.frames[at + 4]
        if phase == NEW:
            f.state[1] -= 1
            done = 0
            if w == 0 or h == 0:
                done = 1
            elif f.state[1] >= 0 and FRAME * (depth + 2) < len(f.frames):
                whole = edge_picks(b, f, w, h, PICKS * depth)
                if whole >= 0:
                    use(b, f, EXACT, whole)
                    done = 1
                elif not is_hopeless(b, f, w, h):
                    f.frames[at + 2] = EDGES
                    done = -1
                    continue
            depth -= 1
            continue
        if done == 1:
            if phase == CORNERS and (is_strip == 0 or depth > 0):
                f.frames[at + 2] = REMAINDER
                open_remainder(b, f, depth)
                depth, done = depth + 1, -1
            else:
                depth -= 1
            continue
        undo(b, f, mark)
        done = -1
        if f.state[1] > 0:
            place = PICKS * depth + 2 * (tried if phase == EDGES else tried // 2)
            if phase == EDGES:
                if tried < f.state[4] and f.picks[place] >= 0:
                    f.frames[at + 3] = tried + 1
                    start_edge(b, f, depth, w, h, f.picks[place + 1])
                    depth += 1
                    continue
                if depth < DEEPEST_CORNER and w * h > 2 * b.state[3]:
                    f.frames[at + 2], f.frames[at + 3] = CORNERS, 0
                    corner_picks(b, f, w, h, PICKS * depth)
                    continue
            elif tried < 2 * WAYS and f.picks[place] >= 0:
                if tried % 2 == 0:
                    f.frames[at + 5] = noisy(f, 1) // 1024 % 2
                f.frames[at + 2], f.frames[at + 3] = CORNERS, tried + 1
                if start_corner(b, f, depth, w, h, f.picks[place + 1], (tried + f.frames[at + 5]) % 2 == 0):
                    depth += 1
                continue
            note_failure(b, f, w, h)
        depth, done = depth - 1, 0
    return done


@compiled
def score_blocks(b: Blocks, hardness: Ints, word: Ints, shift: Ints, mask: Ints, score: Ints, first: Ints) -> int:
    """Fills in each finished block's score and where each kind's holders start; returns how many holders there are."""
    words = len(b.guard)
    kinds = len(hardness)
    for i in range(len(score)):
        hard, pieces = 0, 0
        for kind in range(kinds):
            n = (b.count[i * words + word[kind]] >> shift[kind]) & mask[kind]
            if n > 0:
                hard = max(hard, hardness[kind])
                pieces += n
                first[kind + 1] += 1
        score[i] = max(1, hard - 32 * (pieces - 1))
    for kind in range(kinds):
        first[kind + 1] += first[kind]
    holders: int = first[kinds]
    return holders


@compiled
def list_holders(b: Blocks, word: Ints, shift: Ints, mask: Ints, first: Ints, holders: Ints) -> None:
    """Lists the blocks that hold each kind, smallest first: the single piece leads."""
    words = len(b.guard)
    for kind in range(len(first) - 1):
        at = first[kind]
        for i in range(b.state[0]):
            if at < first[kind + 1] and (b.count[i * words + word[kind]] >> shift[kind]) & mask[kind] > 0:
                holders[at] = i
                at += 1
