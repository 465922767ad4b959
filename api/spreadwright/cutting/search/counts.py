"""How many of each kind of piece, packed into whole numbers so that sums and comparisons are single operations.

Every kind has a field just wide enough for its count, topped by a guard bit. `a` fits inside `b` exactly when no guard
bit of ``(b | guard) - a`` is lost; fields never spill over, since no count exceeds what there is.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from spreadwright.cutting.search import speed


@dataclass(frozen=True, slots=True)
class Packing:
    """Where each kind's count lies: word and shift; `guard` and `total` are one number a word."""

    word: tuple[int, ...]
    shift: tuple[int, ...]
    mask: tuple[int, ...]
    guard: tuple[int, ...]
    total: tuple[int, ...]

    @property
    def words(self) -> int:
        """Numbers that one packed count takes."""
        return len(self.guard)

    def packed(self, counts: Sequence[int]) -> list[int]:
        """The counts of all kinds as words."""
        words = [0] * self.words
        for kind, count in enumerate(counts):
            words[self.word[kind]] |= count << self.shift[kind]
        return words

    def counts(self, words: Sequence[int]) -> list[int]:
        """The count of each kind again."""
        return [(int(words[w]) >> s) & m for w, s, m in zip(self.word, self.shift, self.mask, strict=True)]


def packing(counts: Sequence[int]) -> Packing:
    """Fields for these counts, from the lowest bit of the first word up.

    >>> fields = packing([3, 1])
    >>> fields.counts(fields.packed([2, 1]))
    [2, 1]
    """
    word, shift, mask = [], [], []
    guard, total = [0], [0]
    used = 0
    for count in counts:
        bits = count.bit_length()
        if used + bits + 1 > speed.WORD_BITS:
            guard.append(0)
            total.append(0)
            used = 0
        word.append(len(guard) - 1)
        shift.append(used)
        mask.append((1 << bits) - 1)
        guard[-1] |= 1 << (used + bits)
        total[-1] |= count << used
        used += bits + 1
    return Packing(tuple(word), tuple(shift), tuple(mask), tuple(guard), tuple(total))
