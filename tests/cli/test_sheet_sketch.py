from itertools import pairwise

from hypothesis import given
from hypothesis import strategies as st

from spreadwright.cli.sheet_sketch import sketch
from spreadwright.geometry import Rect


def test_a_sheet_of_three_parts_is_drawn_to_scale_with_its_names():
    parts = [
        (Rect(0, 0, 60, 120), ["panel"]),
        (Rect(60, 0, 60, 60), ["a name that is far too long for its part", "mat"]),
        (Rect(60, 60, 60, 60), [""]),
    ]
    lines = sketch(parts)
    assert len(lines) == 25 and {len(line) for line in lines} == {49}
    assert lines[0] == "┌" + "─" * 23 + "┬" + "─" * 23 + "┐"
    assert lines[12] == "│" + "panel".center(23) + "├" + "─" * 23 + "┤"
    assert lines[6].split("│")[2].strip() == "mat"


def test_narrow_strips_stay_apart():
    lines = sketch([(Rect(0, 0, 999, 10), []), (Rect(999, 0, 1, 10), [])])
    assert lines[0].index("┬") <= len(lines[0]) - 4


def test_a_sheet_with_too_many_lines_for_a_terminal_is_not_drawn():
    assert sketch([(Rect(n, 0, 1, 10), []) for n in range(60)]) == []


@given(st.lists(st.integers(1, 50), min_size=1, max_size=12))
def test_columns_come_out_in_their_order_and_number(widths):
    edges = [sum(widths[:n]) for n in range(len(widths) + 1)]
    top, *_ = sketch([(Rect(left, 0, right - left, 30), []) for left, right in pairwise(edges)])
    assert top[0] == "┌" and top[-1] == "┐" and top.count("┬") == len(widths) - 1
