import json
import re
from base64 import b64encode
from dataclasses import replace
from xml.etree.ElementTree import fromstring

import numpy as np
import pytest

from builder import PAPERS, SOUND
from letters import letters
from spreadwright.cutting import cut_sheets, pieces
from spreadwright.document import read_paper_set, read_recipe
from spreadwright.drawing.canvas import Canvas
from spreadwright.drawing.raster import pixels
from spreadwright.drawing.spread import draw_spread, spread_picture
from spreadwright.drawing.svg import inline_markup, markup, svg_bytes
from spreadwright.drawing.theme import MM
from spreadwright.errors import CannotDraw
from spreadwright.geometry import Size
from spreadwright.images import encode_jpeg
from spreadwright.model import Choice, Colourway, Face, Paper, Pattern, Recipe, Side, Spread
from spreadwright.photos import matted_photos
from spreadwright.placing import placed_pieces

RECIPE = read_recipe(json.dumps(SOUND).encode(), "window-seat").model
PAPER_SET = read_paper_set(json.dumps(PAPERS).encode(), "two-and-two").model


def paper(name: str) -> Paper:
    found = PAPER_SET.paper(name)
    assert found is not None
    return found


COLOURWAY = Colourway(
    "two-and-two",
    (("background", Choice(paper("fog"))), ("plain", Choice(paper("slate"))), ("print", Choice(paper("reed")))),
)


def laid(recipe: Recipe, colourway: Colourway = COLOURWAY):
    cut = pieces(cut_sheets(recipe))
    return recipe, placed_pieces(recipe, cut), matted_photos(recipe, cut), colourway


def picture(recipe: Recipe = RECIPE, colourway: Colourway = COLOURWAY, *, prefix: str = "") -> Canvas:
    return spread_picture(*laid(recipe, colourway), papers="Two & Two", prefix=prefix)


def test_pieces_are_drawn_from_the_page_upward():
    roles = [match[1] for line in picture().outline() if (match := re.search(r"data-piece=\S+ data-role=(\w+)", line))]
    order = {page: [p for p in RECIPE.placements if p.page == page] for page in RECIPE.spread.pages}
    by_id = {piece.id: piece.role for piece in pieces(cut_sheets(RECIPE))}
    assert roles == [by_id[placement.piece] for page in order.values() for placement in page]


def test_the_picture_says_what_it_shows():
    title, description = picture().outline()[:2]
    assert "“Window seat, in Two & Two papers: double-page spread with 3 photos”" in title
    assert "background: Fog; plain: Slate; print: Reed" in description


def test_pages_lie_side_by_side_at_full_size():
    root = fromstring(markup(picture()))
    assert root.get("width") == f"{2 * 304.8 + 2 * 304.8 / 16:g}mm"


def test_a_turned_piece_turns_its_print():
    turned = [replace(p, is_turned=True) if p.piece == "block-1" else p for p in RECIPE.placements]
    lines = picture(replace(RECIPE, placements=tuple(turned))).outline()
    assert sum("rotate(90)" in line for line in lines) == 1 + sum("rotate(90)" in line for line in picture().outline())


def test_a_stripe_turned_lies_down():
    striped = Face(Pattern.STRIPE, ("#ffffff", "#ff0000"), 16256)
    plain = replace(paper("reed"), front=striped)
    page = replace(RECIPE, photos=(), placements=tuple(p for p in RECIPE.placements if p.piece == "block-1"))
    turned = replace(page, placements=tuple(replace(p, is_turned=True) for p in page.placements))
    colourway = Colourway("s", (*COLOURWAY.choices[:2], ("print", Choice(plain))))
    rows = [letters(picture(recipe, colourway), 102, {"r": "#f03030", "w": "#f4f0ea"}) for recipe in (page, turned)]
    upright, lying = ({"".join(row[i] for row in r[10:24]) for i in range(58, 76)} for r in rows)
    assert all(len(set(column)) == 1 for column in upright) and any(len(set(column)) > 1 for column in lying)


def test_a_piece_placed_back_up_shows_the_back():
    backs = tuple(replace(p, side=Side.BACK) if p.piece == "strip-1" else p for p in RECIPE.placements)
    assert "stroke-dasharray=0 9" in "\n".join(picture(replace(RECIPE, placements=backs)).outline())
    assert "stroke-dasharray=0 9" not in "\n".join(picture().outline())


def moves(recipe: Recipe, piece: str, axis: int, **changes: object) -> float:
    """How far the print of one piece is moved across (0) or down (1) its page, mm."""
    only = tuple(replace(p, piece=piece, **changes) for p in RECIPE.placements if p.piece == "block-1")
    lines = "\n".join(picture(replace(recipe, placements=only, photos=(), captions=())).outline())
    inside = lines[lines.index("data-role=print") :]
    move = re.search(r"translate\((\S+) (\S+)\)", inside)
    assert move
    return float(move[axis + 1])


def test_the_back_of_a_piece_is_the_mirrored_place_of_the_sheet():
    front, back = (moves(RECIPE, "block-1", 0, side=side) for side in (Side.FRONT, Side.BACK))
    assert round(front - back, 3) == 152.4  # 6 in of 12 in: what lay left lies right, seen from behind
    front, back = (moves(RECIPE, "block-2", 0, side=side) for side in (Side.FRONT, Side.BACK))
    assert round(back - front, 3) == 152.4


def test_the_print_of_a_turned_piece_runs_as_on_the_sheet():
    first, second = (moves(RECIPE, piece, 1, is_turned=True) for piece in ("block-1", "block-2"))
    assert round(first - second, 3) == 152.4  # the second lay 6 in further right, which is down after the turn


def test_the_same_spread_gives_the_same_bytes():
    assert svg_bytes(picture()) == svg_bytes(picture())


def test_several_spreads_can_lie_in_one_page():
    ids = [name for p in "ab" for e in fromstring(markup(picture(prefix=p))).iter() if (name := e.get("id"))]
    assert len(ids) == len(set(ids))


def test_a_spread_refers_to_nothing_outside():
    svg = markup(picture())
    assert not re.search(r'href="(?!#)|url\((?!#)|<(script|style|image|foreignObject)\b', svg)
    assert all(f'id="{name}"' in svg for name in re.findall(r'(?:url\(#|href="#)([^)"]+)', svg))


def test_a_spread_is_of_a_sensible_size():
    assert len(svg_bytes(picture())) < 250_000


def test_a_spread_looks_as_it_was_placed():
    red = replace(paper("reed"), front=Face(Pattern.PLAIN, ("#c04040",), 0))
    colourway = Colourway("s", (*COLOURWAY.choices[:2], ("print", Choice(red))))
    rows = letters(
        picture(replace(RECIPE, photos=(), captions=()), colourway),
        34,
        {"-": "#d4d8d8", "s": "#40505c", "p": "#c04040", ".": "#f4ead8"},
    )
    assert rows == (
        "..................................",
        ".sssssssss----------------sssssss.",
        ".ssssssssssssssss-ppppppppsssssss.",
        ".ssssssssssssssss-ppppppppsssssss.",
        ".ssssssssssssssss-ppppppppsssssss.",
        ".ssssssssssssssss-ppppppppsssssss.",
        ".ssssssssssssssss-ppppppppsssssss.",
        ".ssssssssssssssss-ppppppppsssssss.",
        ".ssssssssssssssss-ppppppppsssssss.",
        ".ssssssssssssssss-ppppppppppppppp.",
        ".pppppppssssppppppssssppppppppppp.",
        ".pppppppssssppppppssssppppppppppp.",
        ".pppppppssssppppppssssppppppppppp.",
        ".pppppppssssppppppssssppppppppppp.",
        ".-------ssss------ssss---pppppppp.",
        ".-------ssss------ssss---pppppppp.",
        ".-------ssss------ssss---pppppppp.",
        "..................................",
    )


def test_a_single_page_has_no_fold():
    single = replace(
        RECIPE,
        spread=Spread(("left",), RECIPE.spread.size),
        placements=tuple(p for p in RECIPE.placements if p.page == "left"),
    )
    assert "single page with 2 photos" in picture(single).outline()[0]
    assert markup(picture(single)).count("linearGradient id") < markup(picture()).count("linearGradient id")


def test_a_page_of_unknown_size_is_refused():
    with pytest.raises(CannotDraw, match="Window seat"):
        spread_picture(replace(RECIPE, spread=Spread(("left",), None)), (), (), COLOURWAY)


def test_photographs_lie_in_the_mats_that_have_one_and_the_others_stay_empty():
    jpeg = encode_jpeg(np.full((20, 30, 3), 90, dtype=np.uint8))
    drawn = spread_picture(*laid(RECIPE), pictures={"mat-1": jpeg})
    assert "with 1 photo" in drawn.outline()[0]
    images = [line for line in drawn.outline() if line.strip().startswith("image")]
    assert len(images) == 1 and b64encode(jpeg).decode() in images[0]


def test_a_spread_drawn_within_a_larger_picture_is_the_same_spread():
    canvas = Canvas(Size(100 * MM, 100 * MM), title="More")
    draw_spread(canvas, *laid(RECIPE), at=(5 * MM, 7 * MM))
    papers = [line.strip() for line in picture().outline() if "data-role" in line]
    assert len([line for line in canvas.outline() if "data-role" in line]) == len(papers)
    assert "linearGradient" in markup(canvas)


def test_what_is_the_same_in_two_spreads_is_drawn_once():
    once, twice = (Canvas(Size(100 * MM, 100 * MM), title="") for _ in range(2))
    for canvas, times in ((once, 1), (twice, 2)):
        for _ in range(times):
            draw_spread(canvas, *laid(RECIPE), repeats="x")
    assert len(svg_bytes(twice)) < 1.4 * len(svg_bytes(once))
    drawn = [[line for line in canvas.outline() if "data-role" in line] for canvas in (once, twice)]
    assert drawn[0] == drawn[1]


def test_drawing_repeats_apart_changes_no_pixel():
    plain, apart = (Canvas(Size(620 * MM, 310 * MM), title="") for _ in range(2))
    draw_spread(plain, *laid(RECIPE))
    draw_spread(apart, *laid(RECIPE), repeats="x")
    found = [pixels(svg_bytes(canvas), 400).astype(int) for canvas in (plain, apart)]
    assert np.abs(found[0] - found[1]).mean() < 0.5


def test_a_spread_whose_papers_are_exchanged_shows_each_face_where_it_is_drawn():
    linked = spread_picture(*laid(RECIPE), papers="Two & Two", face_at=lambda choice: f"{choice.id}.svg").outline()
    assert places(linked) == places(picture().outline())
    shown = [match[1] for line in linked if (match := re.search(r"href=([\w~-]+)\.svg", line))]
    assert shown == [up(piece) for page in RECIPE.spread.pages for piece in laid(RECIPE)[1] if piece.page == page]


def places(lines: tuple[str, ...]) -> list[str]:
    """Pieces, photographs and captions, how each print is moved and turned, and the edges around it."""
    kept = re.compile(r"data-|g transform=translate|stroke-width=0.25")
    return [re.sub(r"clip-path=\S+", "", line) for line in lines if kept.search(line)]


def up(piece) -> str:
    return COLOURWAY.choice(piece.piece.role).lying(piece.side).id


def test_a_page_says_itself_what_its_picture_shows():
    drawn = picture(prefix="x-")
    root = fromstring(inline_markup(drawn))
    assert root.find("{*}title") is root.find("{*}desc") is None
    assert root.get("aria-labelledby") is None
    assert "<title" in markup(drawn)
