from hypothesis import given, settings
from hypothesis import strategies as st

from spreadwright.cutting.search import loops, speed
from spreadwright.cutting.search.counts import packing

COUNTS = st.lists(st.integers(0, 9), min_size=1, max_size=60)


@given(COUNTS)
def test_counts_are_read_back(counts):
    fields = packing(counts)
    assert fields.counts(fields.packed(counts)) == counts
    assert list(fields.total) == fields.packed(counts)


@settings(deadline=None)
@given(COUNTS, st.randoms(use_true_random=False))
def test_within_means_no_kind_exceeds(counts, rng):
    fields = packing(counts)
    part, whole = ([rng.randint(0, n) for n in counts] for _ in range(2))
    packed = (speed.ints(fields.packed(c)) for c in (part, whole))
    guard = speed.ints(list(fields.guard))
    inside = loops.is_within(next(packed), 0, next(packed), 0, guard)
    assert inside == all(a <= b for a, b in zip(part, whole, strict=True))
