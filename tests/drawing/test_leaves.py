from hypothesis import given
from hypothesis import strategies as st

from spreadwright.drawing.cautions import Note
from spreadwright.drawing.leaves import bottom_of, leaves
from spreadwright.drawing.tables import ROW, Table


def rows(count: int) -> Table:
    return Table(("No.",), tuple((str(number),) for number in range(count)), frozenset({0, count - 1}), "Note")


@given(st.lists(st.integers(1, 60), min_size=1, max_size=4), st.integers(0, 18), st.integers(6, 20))
def test_every_row_stands_on_one_leaf(counts, first, height):
    tables = [rows(count) for count in counts]
    shared = leaves(tables, first=first * ROW, further=2 * ROW, height=height * ROW)
    shown = [row for leaf in shared for _, block in leaf for row in block.rows]
    assert shown == [row for table in tables for row in table.rows]
    assert all(bottom_of(leaf, 0) <= height * ROW for leaf in shared)
    assert all(leaf for leaf in shared[1:])


@given(st.integers(2, 40), st.integers(2, 30))
def test_a_split_table_keeps_the_signs_of_its_rows(count, room):
    fitting, rest = rows(count).split(room * ROW)
    warned = [part.rows[index] for part in (fitting, rest) if part for index in sorted(part.warned)]
    assert warned == [("0",), (str(count - 1),)]


def test_sentences_stay_together():
    note = Note(("one", "two"), is_caution=True)
    assert note.split(note.height) == (note, None)
    assert note.split(note.height - 1) == (None, note)


def test_no_row_runs_over_alone():
    fitting, rest = rows(10).split(11 * ROW)
    assert fitting is not None and rest is not None
    assert (len(fitting.rows), len(rest.rows)) == (8, 2)
