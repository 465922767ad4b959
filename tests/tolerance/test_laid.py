"""Laws of laying: whatever goes wrong with cuts and ruler, every move does what its name says with the true edges."""

from collections import Counter
from fractions import Fraction
from itertools import cycle
from random import Random

import pytest

from spreadwright.cutting import cut_sheets, cut_steps, pieces
from spreadwright.model import Axis
from spreadwright.placing import PAGE, End, MoveKind, place_steps, placed_pieces
from spreadwright.store import BENCH_OF_UNIT, Collection
from spreadwright.tolerance import partings, traced
from spreadwright.tolerance.laid import Layout

COLLECTION = Collection()
SOME = ("rain-until-four", "the-long-way-home", "breakfast-on-the-step", "tent-by-the-lake")
each_recipe = pytest.mark.parametrize("recipe_id", list(COLLECTION.recipes))
each_on_a_bench = pytest.mark.parametrize(
    ("recipe_id", "bench_id"), list(zip(COLLECTION.recipes, cycle(COLLECTION.benches), strict=False))
)
"""Benches take turns: the laws know nothing of either."""


class Table:
    """One maker's layout: every cut and every reading is off by its own amount."""

    def __init__(self, recipe_id, bench_id, seed=1):
        self.recipe, self.bench = COLLECTION.recipe(recipe_id).model, COLLECTION.bench(bench_id)
        sheets = cut_sheets(self.recipe)
        self.found = traced(sheets, partings(cut_steps(sheets, self.bench), self.bench.trimmer))
        placed = placed_pieces(self.recipe, pieces(sheets))
        self.steps = place_steps(self.recipe, placed, self.bench)
        self.layout = Layout(placed, self.steps, self.bench)
        self._random, self._errors = Random(seed), {}

    def value(self, deviation):
        for source, _ in deviation.terms:
            self._errors.setdefault(source, self._random.randint(-source.bound, source.bound))
        return deviation.shift + sum((self._errors[source] * times for source, times in deviation.terms), Fraction())

    def edge(self, name, axis, end):
        """Where an edge truly lies."""
        off = self.value(self.layout.edge(name, axis, end, self.found))
        if name == PAGE:
            size = self.recipe.spread.size
            return (size.width if axis is Axis.COLUMNS else size.height) * (end is End.END) + off
        each = self.layout.pieces[name]
        return (each.near(axis) if end is End.START else each.far(axis)) + off

    def line(self, line):
        return self.edge(line.piece, line.axis, line.end)

    def moves(self):
        for step in self.steps:
            for move in step.located.moves:
                for axis in [move.axis] if move.axis else list(Axis):
                    yield step.placed.piece.id, move, axis


@each_on_a_bench
def test_pieces_are_as_long_on_the_page_as_they_were_cut(recipe_id, bench_id):
    table = Table(recipe_id, bench_id)
    for name, each in table.layout.pieces.items():
        for axis in Axis:
            length = table.edge(name, axis, End.END) - table.edge(name, axis, End.START)
            assert length == each.length(axis) + table.value(each.side(axis, table.found))


@each_on_a_bench
def test_every_move_holds_between_true_edges(recipe_id, bench_id):
    table = Table(recipe_id, bench_id)
    half = Fraction(table.bench.ruler.graduation + 1, 2)
    for name, move, axis in table.moves():
        start, end = (table.edge(name, axis, each) for each in End)
        if move.kind in (MoveKind.CENTRE, MoveKind.FRAME):
            first, last = (table.line(line) for line in move.lines if line.axis is axis)
            assert abs((start + end) - (first + last)) <= 2 * half
        elif move.kind is MoveKind.COVER:
            assert start == table.edge(move.lines[0].piece, axis, End.START)
        else:
            laid = start if move.end is End.START else end
            distance = (laid - table.line(move.lines[0])) * move.end.inward
            if move.kind is MoveKind.EQUAL_GAP:
                gap = abs(table.line(move.lines[1]) - table.line(move.lines[2]))
                assert abs(distance - gap) <= half
            elif move.kind in (MoveKind.OFFSET, MoveKind.GAP):
                assert abs(distance - move.reading) <= half
            else:
                assert distance == move.reading


def test_collection_tries_most_kinds_of_move():
    kinds = Counter(move.kind for recipe in SOME for _, move, _ in Table(recipe, "bench-inch").moves())
    assert len(kinds) >= 6


@each_recipe
def test_without_error_everything_lies_where_it_should(recipe_id):
    table = Table(recipe_id, BENCH_OF_UNIT[COLLECTION.recipe(recipe_id).model.unit])
    for name in table.layout.pieces:
        for axis in Axis:
            assert table.layout.edge(name, axis, End.START, table.found).shift == 0


def test_turned_piece_lies_with_its_height_across():
    table = Table("rain-until-four", "bench-inch")
    ribbon = table.layout.pieces["ribbon-1"]
    assert ribbon.side(Axis.ROWS, table.found) == table.found["ribbon-1"].width.deviation
