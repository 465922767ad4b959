from itertools import combinations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from builder import sound
from spreadwright.document import read_recipe
from spreadwright.drawing.callouts import Callout, Spot, callouts
from spreadwright.drawing.placement import Layout, PlacementPlan, layout
from spreadwright.drawing.theme import MM
from spreadwright.geometry import Rect, Size, uncovered
from spreadwright.lengths import TICKS, Unit
from spreadwright.model import INCH_BENCH, Edge, Offset, Piece, Recipe, Side, Spread
from spreadwright.photos import MattedPhoto
from spreadwright.placing import PlacedPiece, PlaceStep
from spreadwright.placing.locate import Located
from spreadwright.store import Collection
from spreadwright.tasks import place

EIGHTH = TICKS[Unit.INCH] // 8
PAGE = Size(96 * EIGHTH, 96 * EIGHTH)
NOWHERE = Offset(Edge.LEFT, 0)


def above(one: PlaceStep, two: PlaceStep) -> bool:
    return (one.placed.layer, one.number) > (two.placed.layer, two.number)


def seen(plan: PlacementPlan, found: Layout, number: int) -> tuple[Rect, ...]:
    """What is seen of a piece, as drawn: neither under later pieces of its page nor under photos of other mats."""
    step = plan.steps[number - 1]
    page = next(page for page in found.pages if page.name == step.placed.page)
    on_page = [other for other in plan.steps if other.placed.page == page.name]
    photos = {photo.on: photo for photo in plan.photos}
    covers = [page.rect(other.placed.rect) for other in on_page if above(other, step)]
    for other in on_page:
        photo = photos.get(other.placed.piece.id)
        if photo and other.number != number:
            covers.append(page.rect(photo.rect_on(other.placed.rect)))
    return uncovered(page.rect(step.placed.rect), covers)


def area_within(box: Rect, parts: tuple[Rect, ...]) -> int:
    return box.area - sum(rest.area for rest in uncovered(box, parts))


def check(plan: PlacementPlan) -> Layout:
    found = layout(plan)
    for callout in found.callouts:
        visible = seen(plan, found, callout.number)
        if callout.leader:
            dot = callout.leader[0]
            assert any(part.contains(Rect(*dot, 0, 0)) for part in visible)
            assert not any(page.whole.overlaps(callout.box) for page in found.pages)
        else:
            assert area_within(callout.box, visible) == callout.box.area
        assert callout.box.left >= 0 and callout.box.right <= 186 * MM
    assert not any(a.box.overlaps(b.box) for a, b in combinations(found.callouts, 2))
    return found


def plan_of(data: bytes) -> PlacementPlan:
    done = place(read_recipe(data), INCH_BENCH)
    return PlacementPlan(done.recipe, done.steps, done.photos, done.bench)


@pytest.mark.parametrize("recipe_id", sorted(Collection().recipes))
def test_labels_of_the_collection_lie_where_their_pieces_are_seen(recipe_id):
    done = place(Collection().recipe(recipe_id), INCH_BENCH)
    found = check(PlacementPlan(done.recipe, done.steps, done.photos, done.bench))
    assert len(found.callouts) == len(done.steps)


def test_label_of_a_piece_with_room_needs_no_line():
    assert not any(callout.leader for callout in check(plan_of(sound())).callouts)


@st.composite
def placements(draw: st.DrawFn) -> PlacementPlan:
    """Up to twelve pieces on two pages, some of them mats."""
    near, side = st.integers(0, 80), st.integers(1, 16)
    steps, photos = [], []
    for number in range(1, draw(st.integers(1, 12)) + 1):
        left, top = draw(near) * EIGHTH, draw(near) * EIGHTH
        rect = Rect(left, top, draw(side) * EIGHTH, draw(side) * EIGHTH)
        piece = Piece(f"p-{number}", "p", f"A{number}", "plain", rect.width, rect.height)
        page = draw(st.sampled_from(["left", "right"]))
        steps.append(
            PlaceStep(
                number,
                Located(
                    PlacedPiece(piece, page, rect, 1, False, Side.FRONT, NOWHERE, NOWHERE),
                    base=None,
                    board=Rect.at(0, 0, PAGE),
                    lies=(),
                    moves=(),
                    lands=rect,
                ),
                sentences=(),
            )
        )
        if min(rect.size.width, rect.size.height) > 4 * EIGHTH and draw(st.booleans()):
            photos.append(MattedPhoto(piece.id, Size(rect.width - 2 * EIGHTH, rect.height - 2 * EIGHTH), EIGHTH))
    recipe = Recipe("r", "R", Unit.INCH, Spread(("left", "right"), PAGE), (), (), ())
    return PlacementPlan(recipe, tuple(steps), tuple(photos), INCH_BENCH)


@given(placements())
@settings(deadline=None)
def test_every_piece_that_is_seen_has_its_label(plan):
    found = check(plan)
    visible = {step.number for step in plan.steps if seen(plan, found, step.number)}
    assert {callout.number for callout in found.callouts} == visible
    assert found.unlabelled == 0


def leaders_of(found: tuple[Callout, ...]) -> list[tuple[tuple[int, int], ...]]:
    return [callout.leader for callout in found if callout.leader]


def crosses(a, b, c, d) -> bool:
    """Whether two segments share a point inside both."""

    def turn(p, q, r):
        return (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0])

    return turn(a, b, c) * turn(a, b, d) < 0 and turn(c, d, a) * turn(c, d, b) < 0


def test_lines_do_not_cross():
    strips = [Spot(n, f"A{n}", (Rect((10 + 2 * n) * MM, 40 * MM, MM, 40 * MM),)) for n in range(1, 31)]
    found = callouts(strips, Rect(0, 0, 100 * MM, 100 * MM))
    assert len(found) == 30
    segments = [(line[i], line[i + 1]) for line in leaders_of(found) for i in range(len(line) - 1)]
    assert not any(crosses(*one, *other) for one, other in combinations(segments, 2))


def test_more_labels_than_the_edges_hold_are_left_out():
    tiles = [Spot(n, f"A{n}", (Rect(n % 20 * 2 * MM, n // 20 * 2 * MM, 2 * MM, 2 * MM),)) for n in range(1, 400)]
    found = callouts(tiles, Rect(0, 0, 40 * MM, 40 * MM))
    assert 0 < len(found) < 60
    assert not any(a.box.overlaps(b.box) for a, b in combinations(found, 2))


def test_hidden_piece_has_no_label():
    assert callouts([Spot(1, "A", ())], Rect(0, 0, MM, MM)) == ()
