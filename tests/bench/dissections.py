"""Random dissections of whole sheets by straight through cuts: puzzles with a known answer.

Sides are whole eighths of an inch on a sheet of 96. Four habits of designers take turns: equal divisions, repeated
strips, a narrow strip, and a cut anywhere; three cuts in four divide the longer side. No side gets shorter than 4.
"""

from random import Random

from bench.jobs import Rect

SHEET = 96
SHORTEST = 4


def dissection(sheets: int, pieces: int, seed: int) -> list[Rect]:
    """Sizes of about `pieces` pieces that tile `sheets` sheets, shuffled and turned at random."""
    rng = Random(f"{sheets} {pieces} {seed}")
    parts: list[Rect] = [(SHEET, SHEET)] * sheets
    for _ in range(50 * pieces):
        if len(parts) >= pieces:
            break
        index = rng.choices(range(len(parts)), [w * h for w, h in parts])[0]
        cut = _cut(parts[index], pieces - len(parts) + 1, rng)
        parts[index : index + 1] = cut
    rng.shuffle(parts)
    return [(w, h) if rng.random() < 0.5 else (h, w) for w, h in parts]


def without_some(pieces: list[Rect], share: float, seed: int) -> list[Rect]:
    """The pieces after taking some away at random until about `share` of their area is gone."""
    rng = Random(f"{share} {seed}")
    kept = list(pieces)
    target = sum(w * h for w, h in kept) * share
    gone = 0
    while kept and gone < target:
        w, h = kept.pop(rng.randrange(len(kept)))
        gone += w * h
    return kept


def _cut(part: Rect, most: int, rng: Random) -> list[Rect]:
    w, h = part
    if rng.random() < (0.75 if h > w else 0.25):
        return [(b, a) for a, b in _cut_across((h, w), most, rng)]
    return _cut_across((w, h), most, rng)


def _cut_across(part: Rect, most: int, rng: Random) -> list[Rect]:
    w, h = part
    habit = rng.choice((_equal, _repeated, _narrow, _anywhere))
    widths = habit(w, most, rng) if most > 1 else [w]
    return [(x, h) for x in widths]


def _equal(w: int, most: int, rng: Random) -> list[int]:
    counts = [n for n in range(2, min(6, most) + 1) if w % n == 0 and w // n >= SHORTEST]
    n = rng.choice(counts) if counts else 1
    return [w // n] * n


def _repeated(w: int, most: int, rng: Random) -> list[int]:
    n = rng.randint(2, 4)
    if n >= most or w < (n + 1) * SHORTEST:
        return [w]
    strip = rng.randint(SHORTEST, (w - SHORTEST) // n)
    return [strip] * n + [w - n * strip]


def _narrow(w: int, most: int, rng: Random) -> list[int]:
    strip = rng.randint(SHORTEST, 12)
    return [strip, w - strip] if w - strip >= SHORTEST else [w]


def _anywhere(w: int, most: int, rng: Random) -> list[int]:
    if w < 2 * SHORTEST:
        return [w]
    cut = rng.randint(SHORTEST, w - SHORTEST)
    return [cut, w - cut]
